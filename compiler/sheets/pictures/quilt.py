"""A whole quilt as a drawing: its fabrics by fill, its seams, its blocks' outlines, its size on dimension
lines.

One path a fabric, whatever the number of pieces: three thousand cost little more than thirty.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import chain
from typing import Final

from ...cutting.needs import Looks
from ...quilt.model import Quilt
from ...words.say import Say
from ..arrange.block_drawing import dimension_marks, top_marks
from ..arrange.fills import Fill, fills_for, texture_mark
from ..arrange.paths import Placement, Spot, box_path, ring_path
from ..arrange.style import BLACK, WHITE, line_mark
from ..page import Mark, PathMark, Segment
from .seams import seams_of

AROUND: Final = (4.0, 26.0, 42.0, 24.0)
"""Points kept left, above, right and below a drawing for 'top' and the dimension lines."""

OUTLINE: Final = 1.1
SEAM: Final = 0.35
"""Points of a piece's seam: a whole quilt has many, and heavy ones would be all that is seen."""

BLOCK: Final = 0.7  # points of a block's outline


def fabric_names(quilt: Quilt) -> tuple[str, ...]:
    """Every fabric of the quilt, in order of mention: so it keeps its fill on all pages and in all
    colourways."""
    used = dict.fromkeys(piece.fabric for piece in quilt.pieces)
    return tuple(dict.fromkeys((*(fabric.name for fabric in quilt.fabrics), *used)))


def quilt_fills(quilt: Quilt) -> dict[str, Fill]:
    """The fill of every fabric."""
    return fills_for(fabric_names(quilt), dict(own_titles(quilt)), stated_looks(quilt))


def stated_looks(quilt: Quilt) -> dict[str, Looks]:
    """How its fabrics are said to look, those of which anything is said."""
    return {each.name: each.looks for each in quilt.fabrics if any(each.looks)}


def own_titles(quilt: Quilt) -> tuple[tuple[str, str], ...]:
    """The titles of its fabrics, by which their looks are read."""
    return tuple((fabric.name, fabric.title) for fabric in quilt.fabrics)


def shown_fabrics(quilt: Quilt) -> tuple[str, ...]:
    """The fabrics that the top shows, in order of mention."""
    shown = {piece.fabric for piece in quilt.pieces}
    return tuple(name for name in fabric_names(quilt) if name in shown)


def draw_quilt(quilt: Quilt, placement: Placement) -> list[Mark]:
    """The quilt's top where the placement puts it."""
    fills = quilt_fills(quilt)
    far = placement.spot_at(quilt.width, quilt.height)
    return [
        *_fill_marks(quilt, placement, fills),
        *_block_marks(quilt, placement),
        *_seam_marks(quilt, placement, fills),
        line_mark(box_path(placement.x, placement.y, far.x, far.y), "outline", OUTLINE),
    ]


def _fill_marks(quilt: Quilt, placement: Placement, fills: Mapping[str, Fill]) -> Iterator[Mark]:
    """For each fabric one path of all its pieces, filled, and its texture clipped to them."""
    far = placement.spot_at(quilt.width, quilt.height)
    paths: dict[str, list[Segment]] = {fabric: [] for fabric in shown_fabrics(quilt)}
    for piece in quilt.pieces:
        for ring in piece.rings:
            paths[piece.fabric].extend(ring_path(ring, placement))
    for fabric, segments in paths.items():
        path = tuple(segments)
        yield PathMark(path, None, 0.0, (), fills[fabric].ground, "fill", fabric)
        texture = texture_mark(fills[fabric], (placement.x, placement.y, far.x, far.y), path, fabric)
        if texture:
            yield texture


def _block_marks(quilt: Quilt, placement: Placement) -> Iterator[Mark]:
    """The outlines of the blocks, a little heavier than the seams that lie over them."""
    path = tuple(chain(*(ring_path(each.outline, placement) for each in quilt.placed)))
    if path:
        yield PathMark(path, BLACK, BLOCK, (), None, "block")


def _seam_marks(quilt: Quilt, placement: Placement, fills: Mapping[str, Fill]) -> Iterator[Mark]:
    """Every seam once: black, but white between two fabrics on which black would be lost."""
    dark = [fills[piece.fabric].dark for piece in quilt.pieces]
    black: list[Segment] = []
    white: list[Segment] = []
    for seam in seams_of([tuple(chain(*piece.rings)) for piece in quilt.pieces], placement):
        lost = len(seam.pieces) > 1 and all(dark[piece] for piece in seam.pieces)
        (white if lost else black).extend(seam.path)
    for path, colour, width in ((black, BLACK, SEAM), (white, WHITE, SEAM * 1.4)):
        if path:
            yield PathMark(tuple(path), colour, width, (), None, "seam")


def quilt_surround(quilt: Quilt, placement: Placement, say: Say) -> list[Mark]:
    """What stands about a drawing: 'top', and the finished size on dimension lines right and below."""
    corner, far = placement.spot_at(0, 0), placement.spot_at(quilt.width, quilt.height)
    return [
        *top_marks((corner.x + far.x) / 2, corner.y - 12),
        *dimension_marks(Spot(corner.x, far.y), far, say.length(quilt.width)),
        *dimension_marks(Spot(far.x, corner.y), far, say.length(quilt.height)),
    ]
