"""The room and the line at the foot of pages that need not be true to size."""

from __future__ import annotations

from typing import Final

from ..arrange.furniture import BODY_TOP, Heading, Paper
from ..arrange.leaves import Leaf
from ..arrange.room import Box
from ..arrange.style import MARGIN, SMALLEST, break_lines, grey_text
from ..page import Mark

NOTE_LINE: Final = 8.5  # points from line to line at the foot
NOTE_ROOM: Final = 14.0  # points kept free over the first
MOST_NOTES: Final = 3


def open_body(paper: Paper, notes: int = 1) -> Box:
    """The room between the head and so many lines at the foot."""
    bottom = paper.height - MARGIN - notes * NOTE_LINE - NOTE_ROOM
    return MARGIN, BODY_TOP, paper.width - MARGIN, bottom


def note_lines(paper: Paper, note: str) -> list[str]:
    """The words at the foot in lines."""
    return break_lines(note, paper.width - 2 * MARGIN, SMALLEST)[:MOST_NOTES]


def plain_leaf(
    title: str, under: str, paper: Paper, what: str, below: str, marks: list[Mark], note: str, part: str
) -> Leaf:
    """A page that need not be true to size, with its words at the foot."""
    lines = note_lines(paper, note)
    base = paper.height - MARGIN
    foot = [
        grey_text(MARGIN, base - NOTE_LINE * (len(lines) - 1 - row), line, SMALLEST)
        for row, line in enumerate(lines)
    ]
    return Leaf(Heading(title, under, what, below), (*marks, *foot), what, part)
