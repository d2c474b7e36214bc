"""The strip of swatches that names the fabrics of a drawing."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ...drafting.model import Draft
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


def swatch_rows(draft: Draft, width: float) -> int:
    """How many rows the strip takes in that width (points)."""
    return max((row for _, _, row in _places(draft, width)), default=0) + 1


def swatch_marks(draft: Draft, left: float, right: float, top: float) -> list[Mark]:
    """The strip from its top left corner, in rows as wide as there is room."""
    fills = fills_for(fabric_order(draft))
    marks: list[Mark] = []
    for fabric, x, row in _places(draft, right - left):
        marks.extend(_swatch(fabric, fills[fabric], left + x, top + row * SWATCH_ROW))
    return marks


def _places(draft: Draft, width: float) -> Iterator[tuple[str, float, int]]:
    """Each fabric with its distance from the left, and its row."""
    x, row = 0.0, 0
    for fabric in fabric_order(draft):
        wide = WIDE + AFTER_SWATCH + measure(shorten(fabric, NAME_WIDE, LABEL), LABEL)
        if x and x + wide > width:
            x, row = 0.0, row + 1
        yield fabric, x, row
        x += wide + AFTER_NAME


def _swatch(fabric: str, fill: Fill, x: float, y: float) -> Iterator[Mark]:
    box = (x, y, x + WIDE, y + TALL)
    path = box_path(*box)
    yield PathMark(path, None, 0.0, (), fill.ground, "swatch", fabric)
    texture = texture_mark(fill, box, path, fabric)
    if texture:
        yield texture
    yield PathMark(path, BLACK, 0.5, (), None, "swatch", fabric)
    yield set_text(x + WIDE + AFTER_SWATCH, y + TALL / 2 + 3, shorten(fabric, NAME_WIDE, LABEL))
