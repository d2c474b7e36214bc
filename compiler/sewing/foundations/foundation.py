"""Whether a block can be sewn on paper: its sections in order, the joins between them, and cloth for each
patch."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from ...drafting.model import Draft, Piece
from ...geometry.edge import Edge, Point
from ...geometry.stroke import Stroke, edge_of, place_of, stroke_of
from ...measure.marks import mark_up
from ...measure.tolerance import NEAR, Number
from ...words.numbers import ruler_text
from ...words.phrases import one_of
from ..model import Assembly, Step
from ..naming import section_label
from ..order.assembly import assemble
from ..order.folding import Added
from ..order.naturals import Naturals
from ..order.runs import joined_ring
from ..order.seam_graph import SeamGraph
from ..proof.simulated import along_of
from .foundation_model import Foundations, Patch, Section, SectionJoin
from .sections import Parting, Region, Sections

MARGIN: Final = Fraction(1, 4)
"""Inches beyond the allowance on every side of a patch's cloth, so that it need not be laid with care (common
practice, no published source)."""

CUT_STEP: Final = Fraction(1, 4)
"""Inches. Cloth for paper is cut roughly: to the next quarter up."""


def foundations(draft: Draft, assembly: Assembly | None = None, margin: Fraction = MARGIN) -> Foundations:
    """The fewest papers for the block, or why there are none. Its order of sewing may be given if it is
    known."""
    why_not = papers_refused(draft, assembly or assemble(draft))
    if why_not:
        return Foundations(False, why_not, (), (), margin)
    graph = SeamGraph(draft)
    parting = Sections(graph, Naturals(draft, graph)).fewest(frozenset(range(len(draft.pieces))))
    leaves = sorted(_leaves(parting), key=lambda leaf: min(leaf.pieces))
    labels = {leaf.pieces: section_label(index) for index, leaf in enumerate(leaves)}
    sections = tuple(_section(draft, graph, leaf, labels[leaf.pieces], margin) for leaf in leaves)
    joins: list[SectionJoin] = []
    _join(parting, labels, joins)
    return Foundations(True, "", sections, tuple(joins), margin)


# ---- why not -------------------------------------------------------------------------------------


def papers_refused(draft: Draft, assembly: Assembly) -> str:
    """The junction that keeps a block off paper, as a sentence; nothing where it can be sewn so."""
    for step in assembly.steps:
        if step.curved:
            return (
                f"The seam between pieces {_bent_at(draft, step.seam)} is curved, "
                "and paper folds along straight lines only."
            )
    for step in assembly.steps:
        if step.closed:
            return (
                f"The seam round piece {_inside(draft, step)} closes on itself, "
                "so no straight seam reaches it."
            )
        if step.turns:
            return (
                f"Pieces {_meeting_at(draft, step.turns[0])} meet {_spot(step.turns[0])}, "
                "and no seam runs straight across there."
            )
    return ""


def _spot(at: Point) -> str:
    return f"{ruler_text(_plain(at.x))} across and {ruler_text(_plain(at.y))} down"


def _plain(value: Number) -> Number:
    return 0 if abs(float(value)) <= NEAR else value


def _middle(edge: Edge) -> Point:
    place = stroke_of(edge).at(0.5)
    return Point(place.real, place.imag)


def _inside(draft: Draft, step: Step) -> int:
    """The piece of a window's filling that lies against its seam first."""
    place = stroke_of(step.seam[0]).at(0.5)
    numbers = _pieces_at(draft, place)
    return next((number for number in numbers if not draft.pieces[number - 1].holes), numbers[0])


def _meeting_at(draft: Draft, at: Point) -> str:
    return one_of([str(number) for number in _pieces_at(draft, place_of(at))], "and")


def _bent_at(draft: Draft, seam: Sequence[Edge]) -> str:
    """The pieces that the first arc of a seam lies between."""
    arc = next((edge for edge in seam if edge.arc), seam[0])
    place = place_of(_middle(arc))
    numbers = [
        piece.number
        for piece in draft.pieces
        if any(
            side.edge.arc and along_of(stroke_of(side.edge), place) is not None
            for ring in (piece.ring, *piece.holes)
            for side in ring
        )
    ]
    return one_of([str(number) for number in numbers], "and")


def _pieces_at(draft: Draft, place: complex) -> list[int]:
    """The pieces whose outline passes a place."""
    return [
        piece.number
        for piece in draft.pieces
        if any(
            along_of(stroke_of(side.edge), place) is not None
            for ring in (piece.ring, *piece.holes)
            for side in ring
        )
    ]


# ---- sections ------------------------------------------------------------------------------------


def _leaves(parting: Parting) -> list[Parting]:
    """The sections of a parting."""
    if parting.parts is None:
        return [parting]
    return _leaves(parting.parts[0]) + _leaves(parting.parts[1])


def _join(parting: Parting, labels: dict[Region, str], joins: list[SectionJoin]) -> str:
    """The joins of a parting in order of sewing, and what it is called: `A-B`."""
    if parting.parts is None:
        return labels[parting.pieces]
    first, second = (_join(part, labels, joins) for part in parting.parts)
    assert parting.seam is not None, "two parts are joined by a seam"
    joins.append(SectionJoin(first, second, edge_of(parting.seam)))
    return f"{first}-{second}"


def _section(draft: Draft, graph: SeamGraph, leaf: Parting, label: str, margin: Fraction) -> Section:
    patches = tuple(
        _patch(draft, added, f"{label}{number}", margin) for number, added in enumerate(leaf.order, 1)
    )
    return Section(label, patches, _outline(graph, leaf.pieces))


def _patch(draft: Draft, added: Added, label: str, margin: Fraction) -> Patch:
    piece = draft.pieces[added.piece]
    along = _along(piece, added.line)
    width, height = _extent(piece, along)
    over = 2 * (cloth_allowance(draft, piece) + margin)
    return Patch(
        label,
        piece.number,
        piece.fabric,
        added.line and edge_of(added.line),
        mark_up(width + float(over), CUT_STEP),
        mark_up(height + float(over), CUT_STEP),
    )


def cloth_allowance(draft: Draft, piece: Piece) -> Fraction:
    """The allowance that a patch's cloth has on every side: the block's, or the widest of its own sides."""
    return max(draft.allowance, *(side.allowance for side in piece.ring))


def _along(piece: Piece, line: Stroke | None) -> complex:
    """The direction of a patch's line; without one, of its longest side."""
    strokes = [stroke_of(side.edge) for side in piece.ring]
    return (line or max(strokes, key=lambda stroke: round(abs(stroke.end - stroke.start), 6))).direction(0)


def _extent(piece: Piece, along: complex) -> tuple[float, float]:
    """Inches of a piece along a direction and away from it."""
    strokes = [stroke_of(side.edge) for side in piece.ring]
    spots = [stroke.at(share / 8) / along for stroke in strokes for share in range(9 if stroke.center else 1)]
    across, away = [spot.real for spot in spots], [spot.imag for spot in spots]
    return max(across) - min(across), max(away) - min(away)


def _outline(graph: SeamGraph, pieces: Region) -> tuple[Edge, ...]:
    """The finished outline of a section."""
    first = next(graph.planar.bordering(pieces))
    ring = graph.planar.border(first, lambda half: graph.cloth(half ^ 1) in pieces)
    return _edges([graph.directed(each) for each in ring])


def _edges(strokes: Sequence[Stroke]) -> tuple[Edge, ...]:
    return tuple(edge_of(stroke) for stroke, _ in joined_ring([(stroke, 0.0) for stroke in strokes]))
