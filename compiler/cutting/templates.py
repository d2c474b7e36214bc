"""A draft to its templates: one for each shape, with everything that is printed on it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ..diagnostics.diagnostic import Diagnostic, Outcome, in_order
from ..drafting.congruence import figure_of, unit
from ..drafting.model import Draft, Edge, Piece, Point, Shape
from ..drafting.shapes import Carry, symmetries
from ..drafting.stroke import WholeSide, edge_of, point_of
from ..measure.fractions import ruler_text
from ..measure.tolerance import NEAR, near
from . import complaints as complain
from .allowance import Cut, Outset, outset_rings
from .checks import check_template
from .common_trim import common_cuts
from .grain import GrainGroups
from .marks import TOGETHER, SeamMark, side_marks
from .model import FabricCount, Mark, Template
from .outlines import Outlines
from .trimming import Trims


@dataclass(frozen=True, slots=True)
class _Laid:
    """A shape's pieces with how the template lies on each."""

    shape: Shape
    first: Piece
    pieces: tuple[Piece, ...]
    ways: tuple[Carry, ...]


def make_templates(draft: Draft) -> Outcome[tuple[Template, ...]]:
    """The templates in order of their letters, and warnings about allowances that have no room."""
    trims = Trims(Outlines(draft.pieces), draft.trim)
    templates: list[Template] = []
    said: list[Diagnostic] = []
    for shape in draft.shapes:
        template, remarks = _make_template(draft, shape, trims)
        templates.append(template)
        said.extend(remarks)
    return Outcome(tuple(templates), in_order(said))


def _make_template(draft: Draft, shape: Shape, trims: Trims) -> tuple[Template, list[Diagnostic]]:
    grain = GrainGroups()
    laid = _lay(draft, shape, grain)
    rings = trims.outlines.rings(laid.first.number)
    cuts = [_ring_cuts(laid, trims, ring) for ring in range(len(rings))]
    found = [
        outset_rings([side.stroke for side in ring], [side.allowance for side in ring], ring_cuts)
        for ring, ring_cuts in zip(rings, cuts, strict=True)
    ]
    assert found[0].rings, f"template {shape.label} has no cut outline: its area is {laid.first.area}"
    gaps = (*found[0].rings[1:], *(ring for hole in found[1:] for ring in hole.rings))
    template = Template(
        label=shape.label, block_title=draft.title, version=draft.version, maker=draft.maker,
        finished_size=block_size(draft),
        sew=_edges(laid.first.ring, rings[0]),
        sew_holes=tuple(_edges(hole, ring) for hole, ring in zip(laid.first.holes, rings[1:], strict=True)),
        cut=tuple(edge_of(stroke) for stroke in found[0].rings[0]),
        cut_holes=tuple(tuple(edge_of(stroke) for stroke in ring) for ring in gaps),
        dots=_dots(rings) if draft.trim.dots else (), dot_width=draft.trim.dots,
        marks=_marks(laid, trims.outlines), grain=grain.arrows(), counts=_counts(laid),
        reversible=shape.reversible, pieces=tuple(member.piece for member in shape.members),
    )
    check_template(template, laid.first)
    return template, _remarks(draft, laid.first, rings, found)


def block_size(draft: Draft) -> str:
    """The finished block's size: `6in`, `6in x 9in`."""
    if near(draft.width, draft.height):
        return ruler_text(draft.width)
    return f"{ruler_text(draft.width)} x {ruler_text(draft.height)}"


def _lay(draft: Draft, shape: Shape, grain: GrainGroups) -> _Laid:
    """Every piece of the shape with the template laid on it so that the grain agrees where it can."""
    pieces = tuple(draft.pieces[member.piece - 1] for member in shape.members)
    origin = figure_of(pieces[0]).origin
    own_ways = symmetries(pieces[0]) if shape.turns > 1 or shape.reversible else ((0.0, False),)
    ways = []
    for member, piece in zip(shape.members, pieces, strict=True):
        plain = Carry(origin, unit(member.turned), member.reversed, _middle(piece))
        ways.append(grain.place(piece, [_after(plain, unit(turned), over) for turned, over in own_ways]))
    return _Laid(shape, pieces[0], pieces, tuple(ways))


def _middle(piece: Piece) -> complex:
    return figure_of(piece).origin


def _after(carry: Carry, turn: complex, over: bool) -> Carry:
    """The carry that first lays the shape upon itself by one of its symmetries."""
    turned = carry.turn * (turn.conjugate() if carry.mirrors else turn)
    return Carry(carry.origin, turned, carry.mirrors != over, carry.to)


def _edges(ring: Sequence, sides: Sequence[WholeSide]) -> tuple[Edge, ...]:  # type: ignore[type-arg]
    """The finished ring, in its exact coordinates where no sides were joined."""
    if len(ring) == len(sides):
        return tuple(side.edge for side in ring)
    return tuple(edge_of(side.stroke) for side in sides)


def _dots(rings: Sequence[Sequence[WholeSide]]) -> tuple[Point, ...]:
    """The corners where seams meet; a whole circle has none."""
    return tuple(
        point_of(side.stroke.start) for ring in rings for side in ring
        if len(ring) > 1 or abs(side.stroke.start - side.stroke.end) > NEAR
    )


def _ring_cuts(laid: _Laid, trims: Trims, ring: int) -> list[tuple[Cut, ...]]:
    """The trims of each corner of the template that every piece's neighbours allow."""
    number = laid.first.number
    found: list[tuple[Cut, ...]] = []
    for at in range(len(trims.outlines.rings(number)[ring])):
        corner = trims.outlines.corner((number, ring, at))
        if corner is None or not corner.sharp:
            found.append(())
            continue
        choices = [
            _cuts_back(trims, piece, way, way.place(corner.at))
            for piece, way in zip(laid.pieces, laid.ways, strict=True)
        ]
        found.append(common_cuts(corner, choices))
    return found


def _cuts_back(trims: Trims, piece: Piece, way: Carry, at: complex) -> tuple[Cut, ...]:
    """The trims of the piece's corner at a place, as they lie on the template."""
    key = trims.outlines.nearest_corner(piece.number, at)
    return tuple(Cut(way.direction_back(cut.normal), cut.distance) for cut in trims.cuts(key))


def _marks(laid: _Laid, outlines: Outlines) -> tuple[Mark, ...]:
    """The match marks of every piece, drawn once each where they lie on the template."""
    kept: list[SeamMark] = []
    for piece, way in zip(laid.pieces, laid.ways, strict=True):
        for ring in outlines.rings(piece.number):
            for side in ring:
                for mark in side_marks(side):
                    at = way.place_back(mark.at)
                    if all(abs(at - other.at) > TOGETHER for other in kept):
                        kept.append(SeamMark(at, way.direction_back(mark.toward), mark.allowance))
    return tuple(Mark(point_of(mark.at), point_of(mark.toward), mark.allowance) for mark in kept)


def _counts(laid: _Laid) -> tuple[FabricCount, ...]:
    """How many of each fabric, fabrics in order of first use."""
    counted: dict[str, list[int]] = {}
    for member, piece in zip(laid.shape.members, laid.pieces, strict=True):
        counted.setdefault(piece.fabric, [0, 0])[member.reversed] += 1
    return tuple(FabricCount(fabric, plain, reverse) for fabric, (plain, reverse) in counted.items())


def _remarks(draft: Draft, piece: Piece, rings: Sequence[Sequence[WholeSide]], found: Sequence[Outset]
             ) -> list[Diagnostic]:
    """What to tell the writer about allowances that have no room."""
    tight = [
        complain.curve_too_tight(draft, piece, side.stroke.radius, side.allowance)
        for ring in rings for side in ring
        if side.stroke.sweep < 0 and side.stroke.radius <= side.allowance + NEAR and len(ring) > 1
    ]
    closed = [
        complain.window_closes(draft, piece, max(side.allowance for side in ring))
        for ring, outset in zip(rings[1:], found[1:], strict=True) if not outset.rings
    ]
    if tight or closed or not any(outset.overlaps for outset in found):
        return tight[:1] + closed
    return [complain.allowances_overlap(draft, piece)]
