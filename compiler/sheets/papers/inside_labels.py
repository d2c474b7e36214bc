"""A letter with a few words inside an outline, as large as fits; names that fit nowhere stand in a column
beside, each with a leader. Points."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ...measure.record import record
from ..arrange.beside import AWAY, box_of
from ..arrange.label import stacked
from ..arrange.paths import Ring, Spot, straight
from ..arrange.room import Box, Room, box_ring, middle_of, place_lines
from ..arrange.style import LEADER, SMALLEST, line_mark, measure, set_text
from ..arrange.template_marks import centred_marks
from ..page import Mark, TextMark

SIZES: Final = (20.0, 16.0, 13.0, 10.5, 8.5, SMALLEST)
"""Sizes of the letter, the largest that fits."""

PLAIN: Final = 10.5  # points of a letter that is read at a glance
CLEAR: Final = 3.0  # points about the lettering
TIGHT: Final = 1.2  # points about a letter that stands alone in a narrow piece
COLUMN_LINE: Final = 10.0  # points from name to name in a column beside
LEADER_GAP: Final = 2.0


@record
class Outside:
    """A name that found no room inside: its text, and the place inside that its leader points to."""

    text: str
    at: Spot


def label_marks(
    room: Room, letter: str, words: Sequence[str], subject: str, sizes: Sequence[float] = SIZES
) -> list[TextMark] | None:
    """The letter over as many of the words as fit at any size; None where not even the letter does."""
    left, top, right, bottom = room.bounds()
    home = middle_of(room.rings[0])
    tries = [
        (stacked(letter, [(word, False) for word in words[:count]], size, SMALLEST), CLEAR)
        for count in range(len(words), -1, -1)
        for size in sizes
    ]
    tries.append((stacked(letter, (), sizes[-1], SMALLEST), TIGHT))
    for lines, clear in tries:
        asked = [line.asks() for line in lines]
        if max(line.width for line in asked) > right - left or asked[-1].bottom > bottom - top:
            continue
        spot = place_lines(room, asked, home, clear)
        if spot:
            return centred_marks(lines, spot, subject)
    return None


def clear_label(
    room: Room, avoid: Sequence[Sequence[Ring]], letter: str, words: Sequence[str], subject: str
) -> list[TextMark] | None:
    """The label clear of the first set of rings that leaves room for a plain one; else the largest of all,
    clear of none if need be."""
    small = []
    for rings in avoid:
        label = label_marks(room.beside(*rings), letter, words, subject)
        if label and label[0].size >= PLAIN:
            return label
        if label:
            small.append(label)
    return max(small, key=lambda each: each[0].size) if small else label_marks(room, letter, words, subject)


def beside_column(ring: Ring, names: Sequence[Outside]) -> tuple[list[Mark], Ring]:
    """The names in a column right of the outline, in the order of their places down the page, with leaders;
    and the ring that they cover."""
    _, top, right, bottom = box_of(ring)
    tall = COLUMN_LINE * len(names)
    x, y = right + AWAY, max(top, min((top + bottom - tall) / 2, bottom - tall))
    marks: list[Mark] = []
    for row, name in enumerate(sorted(names, key=lambda each: (round(each.at.y, 3), -round(each.at.x, 3)))):
        middle = y + COLUMN_LINE * (row + 0.5)
        path = straight((x - LEADER_GAP, middle), name.at)
        marks.append(line_mark(path, "leader", LEADER, (), name.text))
        marks.append(set_text(x, middle + 2.5, name.text, SMALLEST, True, role="label", subject=name.text))
    wide = max(measure(name.text, SMALLEST, True) for name in names)
    box: Box = (x, y, x + wide, y + tall)
    return marks, box_ring(box)
