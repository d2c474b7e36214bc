"""Simulated cloth held against what is printed: outlines, sizes, corners. Inches."""

from __future__ import annotations

from cmath import phase
from collections.abc import Sequence
from math import pi

from ..geometry.stroke import Stroke, doubled_area, turn_between
from ..measure.tolerance import EXACT, NEAR, ONE_WAY
from .proof.misfit import Misfit
from .proof.simulated import Hem, distance_to, joined_hems, spend, spots_on

EASED = 2.0
"""Inches. A curve longer than this is pinned at its quarters, as a class is told."""


def stray_between(ring: Sequence[Hem], printed: Sequence[Stroke]) -> float:
    """How far a sewn ring strays from a printed one; a Misfit where it is another ring altogether."""
    if any(abs(printed[at - 1].end - stroke.start) > EXACT for at, stroke in enumerate(printed)):
        raise Misfit("its-outline-open")
    around = sum(stroke.length for stroke, _ in ring)
    wanted = sum(stroke.length for stroke in printed)
    if abs(around - wanted) > EXACT * max(4, len(printed)):
        raise Misfit("its-length-round", lengths=(around, wanted))
    if abs(doubled_area([stroke for stroke, _ in ring]) - doubled_area(printed)) > EXACT * (wanted + 1):
        raise Misfit("its-area")
    for index, along in spots_on(ring, printed[0].start):
        stray = _stray_from(ring, index, along, printed)
        if stray is not None:
            return stray
    raise Misfit("its-outline")


def _stray_from(ring: Sequence[Hem], index: int, along: float, printed: Sequence[Stroke]) -> float | None:
    """How far a printed ring strays that is followed from one place of a sewn one; None where it leaves
    it."""
    turned = [*ring[index:], *ring[:index], ring[index]]
    at, offset, furthest = 0, along, 0.0
    for run in printed:
        spent = spend(turned, at, offset, run)
        if spent is None:
            return None
        at, offset, _, stray = spent
        furthest = max(furthest, stray)
    return furthest


def allowance_at(ring: Sequence[Hem], place: complex) -> float:
    """The allowance of a ring where it passes a place."""
    return min((distance_to(stroke, place), width) for stroke, width in ring)[1]


def measure(ring: Sequence[Hem]) -> tuple[float, float, tuple[float, float], tuple[float, float]]:
    """Finished width and height as a ruler laid along the cloth reads them, and the allowances at the two
    ends of each; -1 where one can't be measured."""
    across = _ruler_direction(ring)
    ends = [_reach(ring, across * quarter) for quarter in (1, -1, 1j, -1j)]
    width, height = ends[0][0] + ends[1][0], ends[2][0] + ends[3][0]
    return width, height, (ends[0][1], ends[1][1]), (ends[2][1], ends[3][1])


def _ruler_direction(ring: Sequence[Hem]) -> complex:
    """Level where any straight edge is level or upright; else along the longest that nothing reaches out
    beyond, whatever its allowances; of equals the one that runs most to the right, then down."""
    hems = joined_hems([(stroke, 0.0) for stroke, _ in ring])
    edges = [stroke for stroke, _ in hems if stroke.center is None]
    if any(abs(phase(stroke.direction(0) ** 4)) <= 4 * ONE_WAY for stroke in edges):
        return 1 + 0j
    sides = [stroke for stroke in edges if _lies_along(ring, stroke)]
    if not sides:
        return 1 + 0j
    longest = _foremost(sides, [stroke.length for stroke in sides])
    rightmost = _foremost(longest, [(stroke.end - stroke.start).real for stroke in longest])
    return _foremost(rightmost, [(stroke.end - stroke.start).imag for stroke in rightmost])[0].direction(0)


def _lies_along(ring: Sequence[Hem], side: Stroke) -> bool:
    """Whether nothing of a ring reaches out beyond a straight stretch of it."""
    outward = side.direction(0) * -1j
    return _reach(ring, outward)[0] <= (side.start * outward.conjugate()).real + EXACT


def _foremost(strokes: Sequence[Stroke], ranks: Sequence[float]) -> list[Stroke]:
    """Those of the highest rank, as near as can be measured."""
    return [stroke for stroke, rank in zip(strokes, ranks, strict=True) if max(ranks) - rank <= EXACT]


def _reach(ring: Sequence[Hem], direction: complex) -> tuple[float, float]:
    """How far a ring reaches in a direction, and the widest allowance there: of the edges square to it, else
    of all that come so far."""
    furthest = max(_furthest(stroke, direction) for stroke, _ in ring)
    square = [
        width
        for stroke, width in ring
        if stroke.center is None and furthest + _furthest(stroke, -direction) <= EXACT
    ]
    there = square or [width for stroke, width in ring if furthest - _furthest(stroke, direction) <= EXACT]
    return furthest, -1.0 if min(there) < 0 else max(there)


def _furthest(stroke: Stroke, direction: complex) -> float:
    places = [stroke.start, stroke.end]
    if stroke.center is not None:
        places.append(_outermost(stroke, direction))
    return max((place * direction.conjugate()).real for place in places)


def _outermost(arc: Stroke, direction: complex) -> complex:
    assert arc.center is not None, "only arcs bulge"
    place = arc.center + direction * arc.radius
    turned = phase((place - arc.center) / (arc.start - arc.center)) * (1 if arc.sweep > 0 else -1)
    return place if turned % (2 * pi) <= abs(arc.sweep) else arc.start


def corners_along(seam: Sequence[Stroke], closed: bool) -> list[complex]:
    """Where a seam turns."""
    pairs = [(seam[at - 1], seam[at]) for at in range(0 if closed else 1, len(seam))]
    if len(seam) == 1:
        return []
    return [
        after.start
        for before, after in pairs
        if abs(before.end - after.start) <= EXACT and abs(turn_between(before, after)) > ONE_WAY
    ]


def pins_along(seam: Sequence[Stroke]) -> list[complex]:
    """Where curved edges are pinned: the middle of each, and its quarters where it is longer than EASED."""
    curves = [stroke for stroke in seam if stroke.center is not None]
    return [
        stroke.at(quarter / 4)
        for stroke in curves
        for quarter in ((1, 2, 3) if stroke.length > EASED + NEAR else (2,))
    ]


def is_rectangular(ring: Sequence[Hem]) -> bool:
    """Whether a sewn ring has four straight sides square to each other, whatever their allowances."""
    sides = [stroke for stroke, _ in ring if stroke.center is None]
    if len(sides) != len(ring):
        return False
    turns = [turn_between(sides[at - 1], side) for at, side in enumerate(sides)]
    corners = [turn for turn in turns if abs(turn) > ONE_WAY]
    return len(corners) == 4 and all(abs(turn - pi / 2) <= ONE_WAY for turn in corners)
