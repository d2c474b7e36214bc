"""The words on a template, and where they stand: inside the sewing line with the grain arrow, or beside.

Larger settings are tried before smaller ones, and a setting counts only when a readable arrow fits too. Where
the words do not fit, the letter stays inside and the rest is set beside, by whoever lays out the page.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot
from typing import Final, NamedTuple

from ...cutting.model import Template
from ...measure.record import record
from ...measure.tolerance import ROUNDED
from ...words.say import Say
from ..drawing.lettering import ascent, cap_height, descent
from .label_words import words_of
from .paths import Ring, Spot
from .room import Line, Room, box_ring, middle_of, place_arrow, place_lines
from .style import HEAD_WIDE, LABEL, LEADING, LETTER, SMALLEST, measure

SETTINGS: Final = (
    (LETTER, LABEL, 150.0),
    (LETTER, LABEL, 92.0),
    (20.0, 8.0, 84.0),
    (16.0, 7.5, 70.0),
    (13.0, SMALLEST, 60.0),
)
"""Size of the letter, size of the words, and the widest line, in points, best first."""

LETTERS: Final = (LETTER, 20.0, 16.0, 12.0, 9.0, SMALLEST)
"""Sizes of a letter that stands alone."""

BESIDE_WIDE: Final = 120.0
"""The widest line of words set beside a template, in points."""

CLEAR: Final = 4.0
"""Points kept between lettering and everything else."""

TIGHT: Final = 2.0
"""Points kept about a lone letter or a short arrow in a small piece."""

LONG_ARROW: Final = 108.0  # 1 1/2in: longer says nothing more
GOOD_ARROW: Final = 36.0  # 1/2in: can be laid along a thread without doubt
SHORT_ARROW: Final = 15.0  # both heads and a shaft between
TAG_LONG: Final = 13.0  # points beyond an arrow's head for its number
TAG_HIGH: Final = 4.0  # half the height of a number there, and a little air


@record
class SetLine:
    """One line of a label: its baseline counts from the top of the label."""

    text: str
    size: float
    bold: bool
    baseline: float

    def asks(self) -> Line:
        """The box it needs."""
        rise = cap_height(self.size, True) if self.size > LABEL else ascent(self.size, self.bold)
        fall = 0.0 if self.size > LABEL else descent(self.size, self.bold)
        return Line(measure(self.text, self.size, self.bold), self.baseline - rise, self.baseline + fall)


class Arrow(NamedTuple):
    """A grain arrow, and the middle of its number where there are several."""

    first: Spot
    last: Spot
    tag: Spot | None = None

    def moved(self, dx: float, dy: float) -> Arrow:
        """The arrow, so far to the right and down."""
        first, last = (Spot(x + dx, y + dy) for x, y in (self.first, self.last))
        return Arrow(first, last, self.tag and Spot(self.tag.x + dx, self.tag.y + dy))


@record
class Label:
    """What stands inside a template, and the words left over for beside it."""

    lines: tuple[SetLine, ...]
    top: Spot | None  # the middle of the label's upper edge; None: nothing inside
    arrows: tuple[Arrow, ...]
    beside: tuple[SetLine, ...] = ()  # set to the right of their own top left
    arrows_beside: int = 0


def stacked(
    letter: str, words: Sequence[tuple[str, bool]], letter_size: float, size: float
) -> tuple[SetLine, ...]:
    """The letter with the words under it."""
    baseline = cap_height(letter_size, True)
    lines = [SetLine(letter, letter_size, True, baseline)]
    baseline += 2.0
    for text, bold in words:
        baseline += size * LEADING
        lines.append(SetLine(text, size, bold, baseline))
    return tuple(lines)


def beside_lines(template: Template, say: Say) -> tuple[SetLine, ...]:
    """The whole label as it is set beside a template: the letter leads the first line."""
    first, *rest = words_of(template, BESIDE_WIDE, LABEL, say)
    words = [(f"{template.label}  {first[0]}", True), *rest]
    rise = ascent(LABEL, True)
    return tuple(
        SetLine(text, LABEL, bold, rise + row * LABEL * LEADING) for row, (text, bold) in enumerate(words)
    )


def fit_label(template: Template, room: Room, headings: Sequence[float], say: Say) -> Label:
    """The best label for the room inside the sewing line, with arrows along the headings (on the page)."""
    home = middle_of(room.rings[0])
    for lines in _settings(template, room, say):
        found = _with_arrows(lines, room, home, headings, GOOD_ARROW)
        if found:
            return found
    beside = beside_lines(template, say)
    for least, clear in ((GOOD_ARROW, CLEAR), (SHORT_ARROW, TIGHT)):
        for size in LETTERS:
            letter = (SetLine(template.label, size, True, cap_height(size, True)),)
            found = _with_arrows(letter, room, home, headings, least, clear)
            if found:
                return Label(found.lines, found.top, found.arrows, beside)
    return _bare(template, room, home, headings, beside)


def _settings(template: Template, room: Room, say: Say) -> Iterator[tuple[SetLine, ...]]:
    """Whole labels, best first, that are not plainly larger than the room."""
    left, top, right, bottom = room.bounds()
    for letter_size, size, wide in SETTINGS:
        lines = stacked(template.label, words_of(template, wide, size, say), letter_size, size)
        asked = [line.asks() for line in lines]
        if max(line.width for line in asked) < right - left and asked[-1].bottom < bottom - top:
            yield lines


def _with_arrows(
    lines: tuple[SetLine, ...],
    room: Room,
    home: Spot,
    headings: Sequence[float],
    least: float,
    clear: float = CLEAR,
) -> Label | None:
    """The label with its arrows about it; else about its arrows; None where they do not fit together."""
    asked = [line.asks() for line in lines]
    top = place_lines(room, asked, home, clear)
    if top is None:
        return None
    arrows = _place_arrows(room.beside(*boxes_of(asked, top)), headings, least, clear)
    if arrows is not None:
        return Label(lines, top, arrows)
    arrows = _place_arrows(room, headings, least, clear)
    if arrows is None:
        return None
    top = place_lines(room.beside(*(_whole(arrow) for arrow in arrows)), asked, home, clear)
    return Label(lines, top, arrows) if top else None


def _place_arrows(
    room: Room, headings: Sequence[float], least: float, clear: float
) -> tuple[Arrow, ...] | None:
    """An arrow for every heading, each clear of those before; None where one does not fit. Several are
    numbered, and keep room for their numbers beyond their heads."""
    arrows: list[Arrow] = []
    extra = TAG_LONG if len(headings) > 1 else 0.0
    for heading in headings:
        found = place_arrow(room, heading, (least + extra, LONG_ARROW + extra), clear + extra / 8)
        if found is None:
            return None
        arrows.append(_tagged(*found) if extra else Arrow(*found))
        room = room.beside(arrow_ring(*found, TAG_HIGH if extra else HEAD_WIDE))
    return tuple(arrows)


def _whole(arrow: Arrow) -> Ring:
    """What an arrow keeps others off, its number included."""
    if arrow.tag is None:
        return arrow_ring(arrow.first, arrow.last)
    beyond = Spot(
        arrow.tag.x + (arrow.tag.x - arrow.last.x) / 2, arrow.tag.y + (arrow.tag.y - arrow.last.y) / 2
    )
    return arrow_ring(arrow.first, beyond, TAG_HIGH)


def _tagged(first: Spot, last: Spot) -> Arrow:
    """The arrow, shortened at its last end by the room for its number."""
    dx, dy = last.x - first.x, last.y - first.y
    share = TAG_LONG / hypot(dx, dy)
    tip = Spot(last.x - dx * share, last.y - dy * share)
    return Arrow(first, tip, Spot(last.x - dx * share * 0.4, last.y - dy * share * 0.4))


def _bare(
    template: Template, room: Room, home: Spot, headings: Sequence[float], beside: tuple[SetLine, ...]
) -> Label:
    """For the smallest pieces: the letter or the arrow inside if either fits, all else beside."""
    for size in LETTERS:
        lines = (SetLine(template.label, size, True, cap_height(size, True)),)
        top = place_lines(room, [lines[0].asks()], home, TIGHT)
        if top:
            return Label(lines, top, (), beside, len(headings))
    arrows = _place_arrows(room, headings, SHORT_ARROW, TIGHT)
    return Label((), None, arrows or (), beside, 0 if arrows else len(headings))


def boxes_of(lines: Sequence[Line], top: Spot) -> list[tuple[Spot, ...]]:
    """The boxes of centred lines that stand at `top`."""
    return [
        box_ring((top.x - line.width / 2, top.y + line.top, top.x + line.width / 2, top.y + line.bottom))
        for line in lines
    ]


def arrow_ring(first: Spot, last: Spot, half: float = HEAD_WIDE) -> Ring:
    """A thin shape from one place to another, as wide as an arrow's head or as asked (half of it)."""
    (x1, y1), (x2, y2) = first, last
    length = max(hypot(x2 - x1, y2 - y1), ROUNDED)
    ux, uy = (x2 - x1) / length * half, (y2 - y1) / length * half
    return (Spot(x1 - uy, y1 + ux), Spot(x2 - uy, y2 + ux), Spot(x2 + uy, y2 - ux), Spot(x1 + uy, y1 - ux))
