"""Where two moved sides meet: mitres, inner corners, and points cut off."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import cos, inf, pi, sin
from typing import Final, NamedTuple

from ...geometry.stroke import Stroke, turn_between
from ...measure.tolerance import NEAR, SMOOTH
from .crossing import (
    carrier_meetings,
    meetings,
    part_of,
    share_of,
)

NEEDLE: Final = 16.0
"""Allowances past a corner, along its sides, where a longer mitre is squared off before it is trimmed: 4in at
1/4in, the mitre of a 7deg point. A cusp between two curves has no end at all."""

STRAY: Final = 3.0
"""How many times further than the mitre of two straight sides the crossing of bent ones may lie: beyond
that the curves would meet half-way round the circle, and their tangents are mitred instead."""


class Trim(NamedTuple):
    """A straight trim of a corner: away goes what lies further than `distance` inches from the finished
    corner along the unit vector `normal`."""

    normal: complex
    distance: float


class CornerJoin(NamedTuple):
    """How one moved side leads into the next: up to a share of the one, along straight strokes, and on from
    a share of the other."""

    leave: float
    between: tuple[Stroke, ...]
    enter: float
    tangled: bool = False  # only untangling tells what is left here


def moved_side(stroke: Stroke, width: float) -> Stroke:
    """The side moved outward by its allowance. An inner curve tighter than its allowance comes out beyond its
    centre, running backward as seen; untangling drops it."""
    if stroke.center is None:
        aside = stroke.direction(0) * -1j * width
        return Stroke(stroke.start + aside, stroke.end + aside)
    radius = stroke.radius
    grown = (radius + (width if stroke.sweep > 0 else -width)) / radius
    if abs(grown) * radius <= NEAR:
        grown = -2 * NEAR / radius
    start = stroke.center + (stroke.start - stroke.center) * grown
    return Stroke(start, stroke.center + (stroke.end - stroke.center) * grown, stroke.center, stroke.sweep)


def join(ring: Sequence[Stroke], moved: Sequence[Stroke], widths: Sequence[float], at: int) -> CornerJoin:
    """How the side before a corner leads into the side after it."""
    one, two = moved[at - 1], moved[at]
    turned = turn_between(ring[at - 1], ring[at])
    if abs(turned) <= SMOOTH:
        return CornerJoin(1.0, (Stroke(one.end, two.start),), 0.0)
    if turned < 0:
        return _inner_join(one, two, ring[at].start)
    ahead, behind = ring[at - 1].direction(1), ring[at].direction(0)
    before, after = widths[at - 1], widths[at]
    reach, reach_back = mitre_reach(turned, before, after), mitre_reach(turned, after, before)
    longest = NEEDLE * max(before, after)
    if turned > pi / 2 and max(reach, reach_back) > longest:
        tip = (one.end + ahead * longest, two.start - behind * longest)
        return CornerJoin(1.0, (Stroke(one.end, tip[0]), Stroke(*tip), Stroke(tip[1], two.start)), 0.0)
    if min(reach, reach_back) < -max(before, after):
        return CornerJoin(1.0, (Stroke(one.end, two.start),), 0.0)
    return _mitre(one, two, one.end + ahead * reach, min(reach, reach_back) >= 0)


def mitre_reach(turned: float, own: float, other: float) -> float:
    """Inches past a corner, along one side, to where its cut line meets the other side's; infinite at a cusp.

    `turned` is in radians clockwise; the allowances are this side's own and the other's.
    """
    if pi - abs(turned) <= SMOOTH:
        return inf if own + other else 0.0
    return (other - own * cos(turned)) / sin(turned)


def _mitre(one: Stroke, two: Stroke, tip: complex, ahead: bool) -> CornerJoin:
    """The crossing of the two moved sides carried on; `tip` is that of their tangents, `ahead` of both or
    not. Where it is, a circle that curls back and crosses the other side short of its end is none: it would
    take cloth from the allowance beside that end."""
    best: tuple[float, CornerJoin] | None = None
    allowed = STRAY * (abs(tip - one.end) + abs(tip - two.start)) + NEAR
    for place in carrier_meetings(one, two):
        leave, enter = share_of(one, place), share_of(two, place)
        walk = abs(leave - 1) * one.length + abs(enter) * two.length
        short = max((1 - leave) * one.length, enter * two.length) > NEAR
        if walk <= allowed and not (ahead and short) and (best is None or walk < best[0]):
            best = walk, CornerJoin(leave, (), enter)
    if best is not None:
        return best[1]
    if not ahead:
        return CornerJoin(1.0, (Stroke(one.end, two.start),), 0.0)
    return CornerJoin(1.0, (Stroke(one.end, tip), Stroke(tip, two.start)), 0.0)


def _inner_join(one: Stroke, two: Stroke, corner: complex) -> CornerJoin:
    """The crossing of the two moved sides themselves, the nearest to the corner."""
    crossings = meetings(one, two)
    if not crossings:
        return through_corner(one, two, corner)
    leave, enter = min(crossings, key=lambda shares: abs(one.at(shares[0]) - corner))
    return CornerJoin(leave, (), enter)


def through_corner(one: Stroke, two: Stroke, corner: complex) -> CornerJoin:
    """Both moved sides whole, tied to the finished corner, so that untangling leaves what they cover."""
    return CornerJoin(1.0, (Stroke(one.end, corner), Stroke(corner, two.start)), 0.0, tangled=True)


def trimmed(join: CornerJoin, one: Stroke, two: Stroke, corner: complex, cuts: Sequence[Trim]) -> CornerJoin:
    """The join with its tip cut back; the moved sides themselves are never cut into."""
    leave, enter = min(join.leave, 1.0), max(join.enter, 0.0)
    tip = [part_of(one, leave, join.leave), *join.between, part_of(two, join.enter, enter)]
    tip = [stroke for stroke in tip if stroke.length > NEAR]
    for cut in cuts:
        tip = clipped(tip, corner, cut)
    return CornerJoin(leave, tuple(_straightened(tip, one, two)), enter, join.tangled)


def _straightened(tip: Sequence[Stroke], one: Stroke, two: Stroke) -> list[Stroke]:
    """The tip with what is left of a curve that no longer runs on from its own side drawn straight: nothing
    is sewn along it, and it has a trim's length at most."""
    last = len(tip) - 1
    return [
        stroke
        if stroke.center is None
        or (at == 0 and stroke.center == one.center)
        or (at == last and stroke.center == two.center)
        else Stroke(stroke.start, stroke.end)
        for at, stroke in enumerate(tip)
    ]


def clipped(tip: list[Stroke], corner: complex, cut: Trim) -> list[Stroke]:
    """The open chain of strokes with what lies beyond the cut replaced by the cut itself."""
    foot = corner + cut.normal * cut.distance
    line = Stroke(foot, foot + cut.normal * 1j)
    away = None
    back = None
    for at, stroke in enumerate(tip):
        steps = sorted(
            {
                0.0,
                1.0,
                *(
                    share
                    for share in (share_of(stroke, place) for place in carrier_meetings(stroke, line))
                    if 0 < share < 1
                ),
            }
        )
        for first, last in pairwise(steps):
            beyond = ((stroke.at((first + last) / 2) - foot) * cut.normal.conjugate()).real > NEAR / 4
            if beyond and away is None:
                away = at, first
            if beyond:
                back = at, last
    if away is None or back is None:
        return tip
    start, end = tip[away[0]].at(away[1]), tip[back[0]].at(back[1])
    chain = [
        *tip[: away[0]],
        part_of(tip[away[0]], 0.0, away[1]),
        Stroke(start, end),
        part_of(tip[back[0]], back[1], 1.0),
        *tip[back[0] + 1 :],
    ]
    return [stroke for stroke in chain if stroke.length > NEAR]
