"""A writer's notes on pages: in lines, the first on the block's or quilt's page, the rest after it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...words.pages.furniture import NOTES_GO_ON, note_words
from ..page import Mark
from .room import Box
from .style import LABEL, break_lines, set_text

NOTE_LINE: Final = 11.0  # points from line to line
MOST_LINES: Final = 8  # on the page of the block or the quilt, which is for its picture
WORD_LETTERS: Final = 60  # of a word; a longer one goes on in another line


def breakable(note: str) -> str:
    """The note with words that fit a line: nothing of it is cut short."""
    words = note.split()
    return " ".join(
        word[at : at + WORD_LETTERS] for word in words for at in range(0, len(word), WORD_LETTERS)
    )


def note_lines(notes: Sequence[str], width: float) -> list[str]:
    """All the notes in lines, each note beginning one."""
    return [line for note in notes for line in break_lines(note_words(breakable(note)), width, LABEL)]


def first_lines(lines: Sequence[str]) -> tuple[list[str], list[str]]:
    """What stands on the first page, and what goes on after it."""
    if len(lines) <= MOST_LINES:
        return list(lines), []
    return [*lines[: MOST_LINES - 1], NOTES_GO_ON], list(lines[MOST_LINES - 1 :])


def note_marks(lines: Sequence[str], left: float, top: float) -> list[Mark]:
    """The lines from their top left corner."""
    return [set_text(left, top + 8 + row * NOTE_LINE, line, role="note") for row, line in enumerate(lines)]


def note_pages(lines: Sequence[str], body: Box) -> Iterator[list[Mark]]:
    """Pages of lines, as many as it takes."""
    left, top, _, bottom = body
    most = int((bottom - top) / NOTE_LINE)
    for start in range(0, len(lines), most):
        yield note_marks(lines[start : start + most], left, top)
