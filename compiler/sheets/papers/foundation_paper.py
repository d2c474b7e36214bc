"""One section of a foundation as it lies on paper: mirrored, for the cloth goes on the back.

Inches; x right, y down, mirrored in the block's own left side, so x runs from minus the block's width to 0.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import pairwise
from math import cos, pi, sin, sqrt
from typing import Final

from ...cutting.model import Mark
from ...cutting.templates.allowance import outset_rings
from ...cutting.templates.corners import Trim
from ...drafting.model import Draft, Piece
from ...geometry.edge import Edge, Point
from ...geometry.motion import stretch
from ...geometry.stroke import Stroke, doubled_area, place_of, ring_edges, stroke_of, turn_between
from ...measure.record import record
from ...measure.tolerance import ALIKE, ROUNDING, TOGETHER
from ...sewing.foundations.foundation import cloth_allowance
from ...sewing.foundations.foundation_model import Foundations, Patch, Section
from ...sewing.naming import JOIN
from ...sewing.proof.simulated import along_of

MIRROR: Final = stretch(-1, 1)

POINT_ROOM: Final = 2.0
"""Allowances beyond a section's finished corner where its paper is squared off: a sharp corner's mitre would
reach far over the page, and the cloth is trimmed there anyway (common practice, no published source). It is
squared off sooner where cloth, which has a margin beyond the allowance, would not cover it."""

LEAST_APART: Final = 0.3  # inches between two match marks on one seam: nearer ones cannot be told apart


@record
class EdgeName:
    """The name of a join, in the allowance beside the middle of its edge."""

    text: str
    at: Point


@record
class PatchPaper:
    """One patch on the paper: its outline, a place well inside it, and the inches that its cloth has beyond
    it on every side: allowance and margin."""

    patch: Patch
    ring: tuple[Edge, ...]
    inside: Point
    over: float


@record
class SectionPaper:
    """A section ready to be drawn."""

    section: Section
    sew: tuple[Edge, ...]
    cut: tuple[Edge, ...]
    ticks: tuple[Mark, ...]
    names: tuple[EdgeName, ...]
    lines: tuple[tuple[Patch, Edge], ...]  # sewn inside the section
    patches: tuple[PatchPaper, ...]


def section_papers(draft: Draft, found: Foundations) -> tuple[SectionPaper, ...]:
    """Every section's paper."""
    corners = [place_of(side.edge.start) for piece in draft.pieces for side in piece.ring]
    return tuple(_paper(draft, found, section, corners) for section in found.sections)


def mirrored_ring(ring: Sequence[Edge]) -> tuple[Edge, ...]:
    """The ring as seen from behind, clockwise again."""
    return tuple(MIRROR.edge(edge).reversed() for edge in reversed(ring))


def join_name(number: int) -> str:
    """J1, J2, ... for 0, 1, ...: of the joins in order of sewing."""
    return f"{JOIN}{number + 1}"


def _paper(draft: Draft, found: Foundations, section: Section, corners: Sequence[complex]) -> SectionPaper:
    pieces = [draft.pieces[number - 1] for number in section.order]
    widths = [_allowance_on(edge, pieces, draft) for edge in section.outline]
    sew, back = mirrored_ring(section.outline), list(reversed(widths))
    ticks: list[Mark] = []
    names: list[EdgeName] = []
    for number, join in enumerate(found.joins):
        for edge, width in zip(section.outline, widths, strict=True):
            shared = _shared(edge, join.seam)
            if shared:
                marked = _marked(corners, shared)
                ticks += _ticks(marked, shared, width)
                names.append(_name(join_name(number), marked, shared, width))
    patches = tuple(_patch(draft, patch, found.margin) for patch in section.patches)
    return SectionPaper(
        section, sew, _cut(sew, back, float(found.margin)), tuple(ticks), tuple(names),
        tuple((patch, MIRROR.edge(patch.line)) for patch in section.patches if patch.line), patches,
    )  # fmt: skip


def _patch(draft: Draft, patch: Patch, margin: Fraction) -> PatchPaper:
    piece = draft.pieces[patch.piece - 1]
    over = float(cloth_allowance(draft, piece) + margin)
    return PatchPaper(patch, mirrored_ring([side.edge for side in piece.ring]), MIRROR(piece.inside), over)


def _cut(sew: Sequence[Edge], widths: Sequence[float], margin: float) -> tuple[Edge, ...]:
    """The outline with its allowances, sharp corners squared off: nowhere further from the section than its
    cloth, which goes `margin` inches beyond the allowance."""
    strokes = [stroke_of(edge) for edge in sew]
    cuts = [
        _squared(strokes[at - 1], stroke, max(widths[at - 1], widths[at]), margin)
        for at, stroke in enumerate(strokes)
    ]
    rings = outset_rings(strokes, widths, cuts).rings
    return ring_edges(max(rings, key=doubled_area))


def _squared(one: Stroke, two: Stroke, width: float, margin: float) -> tuple[Trim, ...]:
    """The trim of the corner between two sides; none at an inner one, or at a blunt one that cloth covers.

    The corner's mitre reaches width / sin(half) out. Cut off at d from the finished corner, it leaves two
    corners on lines `width` from the sides: they are as far away as the cloth goes where d is
    width sin(half) + s cos(half), s being how far along such a line it goes.
    """
    turned = turn_between(one, two)
    half, over = (pi - turned) / 2, width + margin
    reach = sqrt(max(over * over - width * width, 0.0))
    far = width * sin(half) + reach * cos(half)
    if turned > pi / 2 + ROUNDING:
        far = min(far, POINT_ROOM * width)
    elif turned <= 0 or width <= over * sin(half):
        return ()
    out = one.direction(1) - two.direction(0)
    return (Trim(out / abs(out), far),)


def _allowance_on(edge: Edge, pieces: Iterable[Piece], draft: Draft) -> float:
    """The widest allowance of any piece's side along an outline's edge."""
    stroke = stroke_of(edge)
    widths = [
        float(side.allowance)
        for piece in pieces
        for side in piece.ring
        if along_of(stroke, stroke_of(side.edge).at(0.5)) is not None
    ]
    return max(widths, default=float(draft.allowance))


def _shared(edge: Edge, seam: Edge) -> tuple[complex, complex] | None:
    """The stretch that an outline's edge and a join's seam have in common, along the edge; None: none."""
    if edge.arc is not None:
        return None
    start, end = place_of(edge.start), place_of(edge.end)
    way = (end - start) / abs(end - start)
    ends = [(place_of(point) - start) / way for point in (seam.start, seam.end)]
    if max(abs(each.imag) for each in ends) > ALIKE:
        return None
    low = max(0.0, min(each.real for each in ends))
    high = min(abs(end - start), max(each.real for each in ends))
    return (start + way * low, start + way * high) if high - low > ALIKE else None


def _marked(corners: Sequence[complex], shared: tuple[complex, complex]) -> list[float]:
    """How far along the stretch seams of either side meet it; its middle where none does."""
    first, last = shared
    way = (last - first) / abs(last - first)
    length = abs(last - first)
    far = [(corner - first) / way for corner in corners]
    met = sorted(
        {
            round(each.real, 4)
            for each in far
            if abs(each.imag) < ALIKE and TOGETHER < each.real < length - TOGETHER
        }
    )
    kept: list[float] = []
    for each in met:
        if min(each - (kept[-1] if kept else 0.0), length - each) >= LEAST_APART:
            kept.append(each)
    return kept or [length / 2]


def _ticks(marked: Sequence[float], shared: tuple[complex, complex], width: float) -> list[Mark]:
    """Match marks across the stretch."""
    first, last = shared
    way = (last - first) / abs(last - first)
    out = way * -1j
    toward = Point(-out.real, out.imag)
    return [Mark(MIRROR(_point(first + way * each)), toward, width) for each in marked]


def _name(text: str, marked: Sequence[float], shared: tuple[complex, complex], width: float) -> EdgeName:
    """The join's name beside the stretch, in the middle between two match marks, the widest apart."""
    first, last = shared
    way = (last - first) / abs(last - first)
    stops = (0.0, *marked, abs(last - first))
    gaps = [(round(to - start, 4), -at) for at, (start, to) in enumerate(pairwise(stops))]
    at = -max(gaps)[1]
    along, aside = (stops[at] + stops[at + 1]) / 2, width / 2
    return EdgeName(text, MIRROR(_point(first + way * (along - 1j * aside))))


def _point(place: complex) -> Point:
    return Point(place.real, place.imag)
