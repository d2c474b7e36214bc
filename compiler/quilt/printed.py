"""What is printed of all that a quilt's top is sewn of: blocks by their unfinished size, cloth as it is to be
cut. Inches.

The proof by re-sewing sews with these, and asks the layout that they came from nothing but where the first of
each kind lies.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from ..cutting.model import FabricCount, Template
from ..cutting.needs import Need, SizedBlock
from ..cutting.templates.allowance import outset
from ..drafting.model import Draft, Part, Piece, Shape, Side
from ..drafting.shapes import carry, match_shapes
from ..geometry.edge import Edge, Point
from ..geometry.pose import Motion
from ..geometry.stroke import edge_of, stroke_of
from ..measure.tolerance import Number, near
from ..sewing.model import Size
from .model import PlacedBlock
from .top import Top


def printed_templates(
    top: Top, needs: Sequence[Need], blocks: Sequence[SizedBlock], sizes: Sequence[Size]
) -> tuple[Template, ...]:
    """Each kind of piece as a template of the top's draft. `sizes`: of each block, unfinished.

    Cloth that is not to be cut in its size has no template; re-sewing misses it.
    """
    made: list[Template] = []
    for shape, first in zip(top.draft.shapes, top.firsts, strict=True):
        if isinstance(first, PlacedBlock):
            block, size = blocks[first.block].draft, sizes[first.block]
            made.append(_block_template(top.draft, shape, first, block, size))
            continue
        piece = top.draft.pieces[shape.members[0].piece - 1]
        alike = [
            need
            for need in needs
            if (need.fabric, need.part, need.what) == (first.fabric, first.part, first.what)
        ]
        found = [(need, way) for need in alike if (way := _way_onto(piece, need)) is not None]
        if found:
            made.append(_cloth_template(top.draft, shape, found))
    return tuple(made)


def _block_template(top: Draft, shape: Shape, first: PlacedBlock, block: Draft, size: Size) -> Template:
    """A block as it lies in its first place, with as much cloth round it as its unfinished size has over."""
    aside, above = (size.width - float(block.width)) / 2, (size.height - float(block.height)) / 2
    around = [aside if near(edge.start.x, edge.end.x) else above for edge in block.outline]
    if first.mirrored:
        around.reverse()
    title = top.pieces[shape.members[0].piece - 1].fabric
    return _template(top, shape, first.outline, around, FabricCount(title, len(shape.members), 0))


def _way_onto(piece: Piece, need: Need) -> Motion | None:
    """How a need's outline lies on a piece of the top; None where it is of another shape."""
    sides = tuple(
        Side(edge, (Part(edge, None),), allowance)
        for edge, allowance in zip(need.outline, need.allowances, strict=True)
    )
    both = (
        Piece(1, need.what, need.fabric, sides, (), 0, Point(Fraction(0), Fraction(0))),
        replace(piece, number=2),
    )
    shapes = match_shapes(both)
    return carry(shapes[0], both, shapes[0].members[1]) if len(shapes) == 1 else None


def _cloth_template(top: Draft, shape: Shape, found: Sequence[tuple[Need, Motion]]) -> Template:
    """The needs of one shape as they lie in its first place: on a print with a direction there is one for
    each way that its pieces lie in the quilt."""
    need, way = found[0]
    laid = [way.stroke(each) for each in map(stroke_of, need.outline)]
    widths = list(need.allowances)
    if way.mirrors:
        laid = [each.reversed() for each in reversed(laid)]
        widths.reverse()
    hands = [
        (each.reversed, each.count) if lies.mirrors else (each.count, each.reversed) for each, lies in found
    ]
    counts = tuple(map(sum, zip(*hands, strict=True)))
    return _template(top, shape, tuple(map(edge_of, laid)), widths, FabricCount(need.fabric, *counts))


def _template(
    top: Draft, shape: Shape, sew: tuple[Edge, ...], allowances: Sequence[Number], count: FabricCount
) -> Template:
    return Template(
        label=shape.label,
        block_title=top.title,
        version=top.version,
        maker=top.maker,
        block_width=top.width,
        block_height=top.height,
        sew=sew,
        sew_holes=(),
        cut=outset(sew, allowances),
        cut_holes=(),
        dots=(),
        dot_width=Fraction(0),
        marks=(),
        grain=(),
        counts=(count,),
        reversible=shape.reversible,
        pieces=tuple(member.piece for member in shape.members),
    )
