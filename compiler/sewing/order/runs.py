"""Strokes joined to runs: what is one straight or circular edge to the eye, whatever meets it in the
middle."""

from __future__ import annotations

from cmath import phase
from collections.abc import Sequence
from itertools import pairwise
from math import pi
from typing import Final

from ...geometry.edge import Edge, Point
from ...geometry.stroke import Stroke, edge_of, point_of, runs_on, stretches, turn_between
from ...measure.tolerance import EXACT, IN_LINE, NEAR, ONE_WAY
from ..model import Size
from .borders import Ring

EASED: Final = 2.0
"""Inches. A curved run longer than this is pinned at its quarters too, as its templates are marked."""


def joined(strokes: Sequence[Stroke]) -> list[Stroke]:
    """A path's strokes as runs."""
    runs: list[Stroke] = []
    for stretch in stretches(strokes, NEAR):
        runs.append(stretch[0])
        for stroke in stretch[1:]:
            if runs_on(runs[-1], stroke, IN_LINE):
                runs[-1] = runs[-1].through(stroke)
            else:
                runs.append(stroke)
    return runs


def joined_ring(ring: Sequence[tuple[Stroke, float]]) -> list[tuple[Stroke, float]]:
    """A closed ring's strokes as runs of one allowance; starts at a corner, where it has one."""
    runs: list[tuple[Stroke, float]] = []
    for stroke, allowance in ring:
        if runs and runs[-1][1] == allowance and runs_on(runs[-1][0], stroke, IN_LINE):
            runs[-1] = runs[-1][0].through(stroke), allowance
        else:
            runs.append((stroke, allowance))
    if len(runs) > 1 and runs[-1][1] == runs[0][1] and runs_on(runs[-1][0], runs[0][0], IN_LINE):
        last = runs.pop()
        runs[0] = last[0].through(runs[0][0]), last[1]
    return runs


def turning_places(runs: Sequence[Stroke], closed: bool) -> list[complex]:
    """Where a path of runs turns a corner; a path that is closed may turn where it starts, too."""
    if len(runs) < 2:
        return []
    pairs = zip((runs[-1], *runs[:-1]), runs, strict=True) if closed else pairwise(runs)
    return [
        two.start
        for one, two in pairs
        if abs(one.end - two.start) <= NEAR and abs(turn_between(one, two)) > ONE_WAY
    ]


def edges_of(strokes: Sequence[Stroke]) -> tuple[Edge, ...]:
    """The strokes as edges."""
    return tuple(edge_of(stroke) for stroke in strokes)


def eased_places(runs: Sequence[Stroke]) -> tuple[Point, ...]:
    """Where curved runs are pinned between their ends."""
    return tuple(
        point_of(run.at(share))
        for run in runs
        if run.center is not None
        for share in ((0.25, 0.5, 0.75) if run.length > EASED + NEAR else (0.5,))
    )


def is_rectangle(ring: Ring) -> bool:
    """Whether a ring is a rectangle, whatever its allowances."""
    strokes = [stroke for stroke, _ in joined_ring([(stroke, 0.0) for stroke, _ in ring])]
    return (
        len(strokes) == 4
        and all(stroke.center is None for stroke in strokes)
        and all(abs(turn_between(strokes[at - 1], strokes[at]) - pi / 2) < ONE_WAY for at in range(4))
    )


def sizes(ring: Ring) -> tuple[Size, Size]:
    """Finished size, and the size with the allowance on each of the four sides: that of the edges that lie
    along the side, else the widest of those that reach it with a corner or a curve.

    Measured across and down the block where any edge lies so, else along the longest straight side; across
    and down, too, where all edges are slanted and none is such a side, as of a star.
    """
    turn = _frame(ring)
    spots = [
        (
            stroke.center is None,
            allowance,
            [
                place / turn
                for place in (stroke.at(0.0), stroke.at(0.5), stroke.at(1.0), *_bulges(stroke, turn))
            ],
        )
        for stroke, allowance in ring
    ]
    (right, more_right), (left, more_left), (bottom, more_below), (top, more_above) = (
        _end(
            [
                (straight, allowance, [_part(place, way) for place in places])
                for straight, allowance, places in spots
            ]
        )
        for way in (1, -1, 1j, -1j)
    )
    width, height = right + left, bottom + top
    return Size(width, height), Size(width + (more_left + more_right), height + (more_above + more_below))


def _part(place: complex, way: complex) -> float:
    """How far a place lies that way: 1 is right, 1j is down."""
    return place.real * way.real + place.imag * way.imag


def _end(edges: Sequence[tuple[bool, float, Sequence[float]]]) -> tuple[float, float]:
    """How far edges reach (whether each is straight, its allowance, how far its places lie), and the
    allowance there."""
    furthest = max(max(reached) for _, _, reached in edges)
    along = [
        allowance for straight, allowance, reached in edges if straight and furthest - min(reached) <= EXACT
    ]
    touching = [allowance for _, allowance, reached in edges if furthest - max(reached) <= EXACT]
    return furthest, max(along or touching)


def _frame(ring: Ring) -> complex:
    """The direction that is measured as across: 1 where some straight edge lies level or upright, or where
    none is a side, with the whole ring on one side of it."""
    runs = joined_ring([(stroke, 0.0) for stroke, _ in ring])
    edges = [stroke for stroke, _ in runs if stroke.center is None]
    if any(
        min(abs(along.real), abs(along.imag)) <= ONE_WAY * abs(along)
        for along in (stroke.end - stroke.start for stroke in edges)
    ):
        return 1 + 0j
    sides = [stroke.end - stroke.start for stroke in edges if _is_side(stroke, ring)]
    if not sides:
        return 1 + 0j
    for rank in (abs, _rightward, _downward):  # the longest; of those, what runs most to the right; then down
        most = max(rank(along) for along in sides)
        sides = [along for along in sides if most - rank(along) <= EXACT]
    return sides[0] / abs(sides[0])


def _rightward(along: complex) -> float:
    return along.real


def _downward(along: complex) -> float:
    return along.imag


def _is_side(side: Stroke, ring: Ring) -> bool:
    """Whether a ruler laid along a straight edge has the whole ring on the cloth's side of it."""
    turn = side.direction(0)
    edge = (side.start / turn).imag - EXACT
    return all(
        (stroke.start / turn).imag >= edge
        and all((place / turn).imag >= edge for place in _bulges(stroke, turn))
        for stroke, _ in ring
    )


def _bulges(stroke: Stroke, turn: complex) -> list[complex]:
    """The places where an arc reaches furthest up, down, left and right in a frame."""
    if stroke.center is None:
        return []
    found = []
    for quarter in (1, 1j, -1, -1j):
        place = stroke.center + turn * quarter * stroke.radius
        ratio = (place - stroke.center) / (stroke.start - stroke.center)
        turned = phase(ratio if stroke.sweep > 0 else ratio.conjugate()) % (2 * pi)
        if turned <= abs(stroke.sweep):
            found.append(place)
    return found
