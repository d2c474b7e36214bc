"""The finished block, small and in outline, with those copies of a unit shaded that are meant. Points."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import chain
from typing import Final

from ...drafting.model import Draft
from ...geometry.edge import Edge
from ...measure.length import POINTS_PER_INCH
from ...sewing.model import Copy, Unit
from ..arrange.beside import box_of
from ..arrange.block_drawing import piece_rings
from ..arrange.paths import Placement, flat_ring, ring_path
from ..arrange.style import BLACK
from ..page import Mark, PathMark, Segment
from .step_picture import SHADE, THIN

LONG: Final = 62.0  # the block's longer side: its words beside it are about as tall
SEEN: Final = 3.0  # the least that a shaded copy measures, across or down
OUTLINE: Final = (0.5, 0.5, 0.5)  # of the block's pieces
HAIR: Final = 0.4


def draw_places(
    draft: Draft, unit: Unit, copies: Sequence[Copy]
) -> tuple[tuple[Mark, ...], float, float] | None:
    """The marks from the top left corner, and how wide and tall it is, with those copies of the unit shaded.
    None where one would be too small to see."""
    wide, tall = float(draft.width), float(draft.height)
    per_inch = LONG / max(wide, tall)
    scale = per_inch / POINTS_PER_INCH
    shaded = [_path((unit.outline, *unit.holes), _place(copy, scale)) for copy in copies]
    if any(min(_size(unit, _place(copy, scale))) < SEEN for copy in copies):
        return None
    every = chain(*map(piece_rings, draft.pieces))
    marks = [PathMark(path, None, 0.0, (), SHADE, "place") for path in shaded]
    marks.append(PathMark(_path(every, Placement(scale=scale)), OUTLINE, HAIR, (), None, "outline"))
    marks += [PathMark(path, BLACK, THIN, (), None, "edge") for path in shaded]
    return tuple(marks), wide * per_inch, tall * per_inch


def _place(copy: Copy, scale: float) -> Placement:
    """How the unit's first copy lies where this one lies."""
    by = POINTS_PER_INCH * scale
    return Placement(copy.turned, float(copy.to.x) * by, float(copy.to.y) * by, scale)


def _path(rings: Iterable[tuple[Edge, ...]], placement: Placement) -> tuple[Segment, ...]:
    return tuple(chain(*(ring_path(ring, placement) for ring in rings)))


def _size(unit: Unit, placement: Placement) -> tuple[float, float]:
    left, top, right, bottom = box_of(flat_ring(unit.outline, placement))
    return right - left, bottom - top
