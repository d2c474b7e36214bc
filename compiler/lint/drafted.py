"""Checks of what is drafted: pieces that are all seam allowance, templates that are nearly one."""

from __future__ import annotations

from cmath import exp, phase
from collections.abc import Iterator, Sequence
from typing import Any, Final

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Span
from ..drafting.congruence import Corner, Figure, figure_of, mirrored
from ..drafting.curves import flattened
from ..drafting.model import Draft, Piece
from ..words.messages import lint as complain
from .linted import Linted

TWINS: Final = 1 / 32
"""Inches. Two templates that nowhere differ by more cannot be told apart in a pile of cut cloth."""

MOST_CORNERS: Final = 60
"""Of figures that are laid upon each other: rounder or rougher ones are no slips of the pen."""


def piece_all_allowance(linted: Linted) -> Iterator[Diagnostic]:
    """Pieces that are nowhere wider than the seam allowance behind them."""
    for draft in linted.drafts:
        for shape in draft.shapes:
            piece = draft.pieces[shape.members[0].piece - 1]
            allowance = min(side.allowance for side in piece.ring)
            if allowance and _area(piece).buffer(-float(allowance) / 2).is_empty:
                span = _place(linted, piece, draft)
                yield complain.piece_all_allowance(
                    span, piece.name or "", piece.number, shape.label, allowance
                )


def template_near_twin(linted: Linted) -> Iterator[Diagnostic]:
    """Pairs of templates that differ by less than 1/32in."""
    for draft in linted.drafts:
        figures = [(shape, draft.pieces[shape.members[0].piece - 1]) for shape in draft.shapes]
        order = sorted(figures, key=lambda each: (float(each[1].area), each[0].label))
        laid = [figure_of(piece) for _, piece in order]
        for number, (shape, piece) in enumerate(order):
            for other in range(number + 1, len(order)):
                twin, twin_piece = order[other]
                if not _near_areas(piece, twin_piece):
                    break
                if near_twins(laid[number], laid[other]):
                    one, two = sorted((shape.label, twin.label), key=lambda label: (len(label), label))
                    later = twin_piece if twin.label == two else piece
                    yield complain.template_near_twin(_place(linted, later, draft), one, two, TWINS)


def _near_areas(piece: Piece, other: Piece) -> bool:
    """Whether outlines so near each other may enclose those areas."""
    around = sum(side.edge.length for side in piece.ring)
    return abs(float(other.area) - float(piece.area)) <= TWINS * (around + 4 * TWINS)


def near_twins(one: Figure, other: Figure) -> bool:
    """Whether a turn, or a mirror and a turn, brings every corner and side within TWINS of the other's."""
    if [len(ring) for ring in one.rings] != [len(ring) for ring in other.rings] or len(one.rings) > 1:
        return False
    first, second = one.rings[0], other.rings[0]
    if len(first) > MOST_CORNERS or _allowances(first) != _allowances(second):
        return False
    return any(
        _within(figure.rings[0], second, step)
        for figure in (one, mirrored(one))
        for step in range(len(second))
    )


def _allowances(ring: Sequence[Corner]) -> list[float]:
    return sorted(corner.allowance for corner in ring)


def _within(ring: Sequence[Corner], other: Sequence[Corner], step: int) -> bool:
    """Whether the ring lies within TWINS of the other, its first corner turned to the other's `step`."""
    far = max(range(len(ring)), key=lambda at: abs(ring[at].at))
    turn = exp(1j * (phase(other[(far + step) % len(other)].at) - phase(ring[far].at)))
    return all(
        abs(mine.at * turn - theirs.at) < TWINS
        and abs(mine.middle * turn - theirs.middle) < TWINS
        and abs(mine.circle - theirs.circle) < TWINS
        for mine, theirs in ((ring[at], other[(at + step) % len(other)]) for at in range(len(ring)))
    )


def _area(piece: Piece) -> Any:
    from shapely.geometry import Polygon

    rings = [
        [(float(p.x), float(p.y)) for side in ring for p in flattened(side.edge)]
        for ring in (piece.ring, *piece.holes)
    ]
    return Polygon(rings[0], rings[1:])


def _place(linted: Linted, piece: Piece, draft: Draft) -> Span:
    """The words that name the piece, where they are in this file; else the block's title."""
    if piece.origin is not None and linted.holds(piece.origin):
        return piece.origin
    assert draft.origin is not None, "a draft of the file's own has a title in it"
    return draft.origin
