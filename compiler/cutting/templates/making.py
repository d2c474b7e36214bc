"""A draft to its templates: one for each shape, with everything that is printed on it."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf

from ...diagnostics.diagnostic import Diagnostic, Outcome, in_order
from ...diagnostics.source import NOWHERE, Span
from ...drafting.model import Draft, Piece, Shape, Side
from ...drafting.whole_sides import WholeSide
from ...geometry.edge import Edge, Point
from ...geometry.stroke import point_of, ring_edges
from ...measure.tolerance import NEAR, near
from ...words.messages import templates as complain
from ..model import FabricCount, Mark, Template
from .allowance import Outset, outset_rings
from .checks import check_template, covers
from .laying import Laid, evened_cuts, lay, ring_cuts, template_cuts, template_marks, turning_over
from .marks import SeamMark
from .neighbourhood import neighbourhoods
from .outlines import Outlines
from .trimming import Trims


def make_templates(draft: Draft) -> Outcome[tuple[Template, ...]]:
    """The templates in order of their letters, and warnings about allowances that have no room."""
    trims = Trims(Outlines(draft.pieces), draft.trim)
    alike = neighbourhoods(draft)
    templates: list[Template] = []
    said: list[Diagnostic] = []
    for shape in draft.shapes:
        template, remarks = _make_template(draft, lay(draft, shape, trims, alike), shape, trims)
        said.extend(remarks)
        if template is not None:
            templates.append(template)
    return Outcome(tuple(templates) if len(templates) == len(draft.shapes) else None, in_order(said))


def _make_template(
    draft: Draft, laid: Laid, shape: Shape, trims: Trims
) -> tuple[Template | None, list[Diagnostic]]:
    number = laid.first.number
    rings = trims.outlines.rings(number)
    cuts = template_cuts(laid, trims)
    mirror = turning_over(laid, trims, cuts)
    cuts = evened_cuts(laid, trims, cuts, mirror)
    found = [
        outset_rings(
            [side.stroke for side in ring],
            [side.allowance for side in ring],
            ring_cuts(cuts, number, index, len(ring)),
        )
        for index, ring in enumerate(rings)
    ]
    crowded = _crowded_side(rings, found)
    if crowded is not None:
        return None, [_no_room(draft, laid.first, crowded)]
    gaps = (*found[0].rings[1:], *(ring for hole in found[1:] for ring in hole.rings))
    template = Template(
        label=shape.label,
        block_title=draft.title,
        version=draft.version,
        maker=draft.maker,
        block_width=draft.width,
        block_height=draft.height,
        sew=_edges(laid.first.ring, rings[0]),
        sew_holes=tuple(_edges(hole, ring) for hole, ring in zip(laid.first.holes, rings[1:], strict=True)),
        cut=ring_edges(found[0].rings[0]),
        cut_holes=tuple(ring_edges(ring) for ring in gaps),
        dots=_dots(rings) if draft.trim.dots else (),
        dot_width=draft.trim.dots,
        marks=_marks(template_marks(laid, trims, mirror)),
        grain=laid.grain.arrows(),
        counts=_counts(draft, shape),
        reversible=shape.reversible,
        pieces=tuple(member.piece for member in shape.members),
    )
    check_template(template, laid.first)
    return template, _remarks(draft, laid.first, rings, found)


def _crowded_side(rings: Sequence[Sequence[WholeSide]], found: Sequence[Outset]) -> WholeSide | None:
    """A side whose allowance has no room, where the cut outline makes no sense for it: of those that crowd
    out another's, else of those that have none of their cut line left, the most tightly curved, else the
    longest."""
    cut = [each for outset in found for each in outset.rings]
    for ring, outset in zip(rings, found, strict=True):
        if outset.sound and not (outset.overlaps and not covers(cut, [side.stroke for side in ring])):
            continue
        sides = [ring[at] for at in outset.crowding or outset.buried] or list(ring)
        return min(
            sides,
            key=lambda side: (
                -side.allowance,
                side.stroke.radius if side.stroke.sweep < 0 else inf,
                -side.stroke.length,
            ),
        )
    return None


def _no_room(draft: Draft, piece: Piece, side: WholeSide) -> Diagnostic:
    """Told at the `allowance`, or at the seam where none was written."""
    written = [span for width, span in draft.allowances if near(width, side.allowance)]
    sewn = [span for part in side.parts for span in part.origins]
    span = (written[-1:] or sewn[:1] or [_place_of(draft, piece)])[0]
    return complain.no_room(span, piece.name or piece.number, side.allowance, bool(written))


def _place_of(draft: Draft, piece: Piece) -> Span:
    """The writer's words for a piece: its statement, else a seam beside it, else the block's title."""
    if piece.origin is not None:
        return piece.origin
    sewn = [span for side in piece.ring for part in side.parts for span in part.origins]
    return (sewn or [draft.origin or NOWHERE])[0]


def _edges(ring: Sequence[Side], sides: Sequence[WholeSide]) -> tuple[Edge, ...]:
    """The finished ring, in its exact coordinates where no sides were joined."""
    if len(ring) == len(sides) > 1:
        return tuple(side.edge for side in ring)
    return ring_edges([side.stroke for side in sides])


def _dots(rings: Sequence[Sequence[WholeSide]]) -> tuple[Point, ...]:
    """The corners where seams meet; a whole circle has none."""
    return tuple(
        point_of(side.stroke.start)
        for ring in rings
        for side in ring
        if len(ring) > 1 or abs(side.stroke.start - side.stroke.end) > NEAR
    )


def _marks(marks: Sequence[SeamMark]) -> tuple[Mark, ...]:
    return tuple(Mark(point_of(mark.at), point_of(mark.toward), mark.allowance) for mark in marks)


def _counts(draft: Draft, shape: Shape) -> tuple[FabricCount, ...]:
    """How many of each fabric, fabrics in order of first use."""
    counted: dict[str, list[int]] = {}
    for member in shape.members:
        counted.setdefault(draft.pieces[member.piece - 1].fabric, [0, 0])[member.reversed] += 1
    return tuple(FabricCount(fabric, plain, reverse) for fabric, (plain, reverse) in counted.items())


def _remarks(
    draft: Draft, piece: Piece, rings: Sequence[Sequence[WholeSide]], found: Sequence[Outset]
) -> list[Diagnostic]:
    """What to tell the writer about allowances that have no room."""
    span, called = _place_of(draft, piece), piece.name or piece.number
    tight = [
        complain.curve_too_tight(span, called, side.stroke.radius, side.allowance)
        for ring in rings
        for side in ring
        if side.stroke.sweep < 0 and side.stroke.radius <= side.allowance + NEAR and len(ring) > 1
    ]
    if tight or not any(outset.overlaps for outset in found):
        return tight[:1]
    return [complain.allowances_overlap(span, called)]
