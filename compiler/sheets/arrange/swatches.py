"""The strip of swatches that names the fabrics of a drawing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from ...drafting.model import Draft
from ...measure.record import record
from ..page import Mark, PathMark
from .fills import Fill, fills_for, texture_mark
from .paths import box_path
from .style import BLACK, LABEL, measure, set_text, shorten

WIDE: Final = 24.0
TALL: Final = 13.0
SWATCH_ROW: Final = 19.0
NAME_WIDE: Final = 150.0  # the widest name of a fabric, in points
AFTER_SWATCH: Final = 6.0
AFTER_NAME: Final = 18.0


def fabric_order(draft: Draft) -> tuple[str, ...]:
    """The roles of a block in order of first use."""
    return tuple(dict.fromkeys(piece.fabric for piece in draft.pieces))


def fills_of(draft: Draft) -> dict[str, Fill]:
    """The fill of each of its fabrics: those of the quilt whose cloths it is in, else of its own roles."""
    order = fabric_order(draft)
    if draft.dress is None:
        return fills_for(order)
    fills, names = (
        fills_for(draft.dress.cloths, dict(draft.dress.titles), dict(draft.dress.looks)),
        dict(draft.dress.names),
    )
    return {fabric: fills[names[fabric]] for fabric in order}


@record
class Strip:
    """Swatches in rows: each fabric with its distance from the left and its row; and those left over."""

    places: tuple[tuple[str, float, int], ...]
    left_over: tuple[str, ...]

    @property
    def tall(self) -> float:
        """Points that the rows take."""
        return SWATCH_ROW * (self.places[-1][2] + 1) if self.places else 0.0


def strip_of(fabrics: Sequence[str], width: float, most_rows: int) -> Strip:
    """As many of the fabrics as go into so many rows of that width (points)."""
    places: list[tuple[str, float, int]] = []
    x, row = 0.0, 0
    for number, fabric in enumerate(fabrics):
        wide = WIDE + AFTER_SWATCH + measure(shorten(fabric, NAME_WIDE, LABEL), LABEL)
        if x and x + wide > width:
            x, row = 0.0, row + 1
        if row == most_rows:
            return Strip(tuple(places), tuple(fabrics[number:]))
        places.append((fabric, x, row))
        x += wide + AFTER_NAME
    return Strip(tuple(places), ())


def strip_marks(strip: Strip, fills: Mapping[str, Fill], left: float, top: float) -> list[Mark]:
    """The strip from its top left corner."""
    marks: list[Mark] = []
    for fabric, x, row in strip.places:
        marks.extend(_swatch(fabric, fills[fabric], left + x, top + row * SWATCH_ROW))
    return marks


def _swatch(fabric: str, fill: Fill, x: float, y: float) -> Iterator[Mark]:
    box = (x, y, x + WIDE, y + TALL)
    path = box_path(*box)
    yield PathMark(path, None, 0.0, (), fill.ground, "swatch", fabric)
    texture = texture_mark(fill, box, path, fabric)
    if texture:
        yield texture
    yield PathMark(path, BLACK, 0.5, (), None, "swatch", fabric)
    yield set_text(x + WIDE + AFTER_SWATCH, y + TALL / 2 + 3, shorten(fabric, NAME_WIDE, LABEL))
