"""A smooth curve through points, in arcs that join with one direction.

The direction at each point is that of the circle through it and its two neighbours, so that points of one
circle give that circle. Between two points lie two arcs that leave and arrive in those directions: of all
such pairs, the one whose arms are of equal length, which is the positive root of a quadratic (K. M. Bolton,
'Biarc curves', Computer-Aided Design 7, 1975).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import hypot, sqrt
from typing import Final

from ..measure.tolerance import FAR, PARALLEL, difference
from .curves import same_place
from .edge import Arc, Edge, Point

SMOOTH_POINTS_LEAST: Final = 3
"""Different places, of which the curve is known: through two, any arc would do."""

Vector = tuple[float, float]


def smooth(points: Sequence[Point]) -> list[Edge]:
    """The curve through the points in order; closed where the last is the first. No two that follow each
    other are one place, and three or more are different."""
    closed = same_place(points[0], points[-1])
    headings = _headings(points[:-1], closed=True) if closed else _headings(points, closed=False)
    if closed:
        headings.append(headings[0])
    found: list[Edge] = []
    for (start, end), (leaving, arriving) in zip(pairwise(points), pairwise(headings), strict=True):
        found += _biarc(start, leaving, end, arriving)
    return found


def _headings(points: Sequence[Point], *, closed: bool) -> list[Vector]:
    """The direction of the curve at each point, of length 1."""
    count = len(points)
    inner = range(count) if closed else range(1, count - 1)
    found = {each: _turning(points[each - 1], points[each], points[(each + 1) % count]) for each in inner}
    if not closed:
        found[0] = _mirrored(found[1], points[0], points[1])
        found[count - 1] = _mirrored(found[count - 2], points[count - 2], points[count - 1])
    return [found[each] for each in range(count)]


def _turning(before: Point, at: Point, after: Point) -> Vector:
    """The direction at the middle one of three points, on the circle through them: each chord's direction
    weighs as the other's length over its own."""
    one, other = _between(before, at), _between(at, after)
    a, b = hypot(*one), hypot(*other)
    right, down = one[0] * b / a + other[0] * a / b, one[1] * b / a + other[1] * a / b
    size = hypot(right, down)
    if size <= PARALLEL * (a + b):  # there and back
        return -one[1] / a, one[0] / a
    return right / size, down / size


def _mirrored(heading: Vector, start: Point, end: Point) -> Vector:
    """The direction at one end of an arc that has the other's at the other end: mirrored in the chord."""
    chord = _between(start, end)
    twice = 2 * (heading[0] * chord[0] + heading[1] * chord[1]) / (chord[0] ** 2 + chord[1] ** 2)
    return twice * chord[0] - heading[0], twice * chord[1] - heading[1]


def _between(start: Point, end: Point) -> Vector:
    return difference(end.x, start.x), difference(end.y, start.y)


def _biarc(start: Point, leaving: Vector, end: Point, arriving: Vector) -> list[Edge]:
    """Two arcs from start to end, in those directions at the ends and in one where they join."""
    chord = _between(start, end)
    square = chord[0] ** 2 + chord[1] ** 2
    both = (leaving[0] + arriving[0], leaving[1] + arriving[1])
    ahead = chord[0] * both[0] + chord[1] * both[1]
    bend = 2 * (1 - leaving[0] * arriving[0] - leaving[1] * arriving[1])
    root = sqrt(ahead * ahead + bend * square)  # of bend arm^2 + 2 ahead arm - square = 0
    if ahead + root > PARALLEL * sqrt(square):
        arm = square / (ahead + root)
    else:  # they leave and arrive at right angles to the way, alike: two half circles
        middle = Point(float(start.x) + chord[0] / 2, float(start.y) + chord[1] / 2)
        return [_arc(start, leaving, middle), _arc_into(middle, end, arriving)]
    middle = Point(
        (float(start.x) + float(end.x) + arm * (leaving[0] - arriving[0])) / 2,
        (float(start.y) + float(end.y) + arm * (leaving[1] - arriving[1])) / 2,
    )
    return [_arc(start, leaving, middle), _arc_into(middle, end, arriving)]


def _arc(start: Point, leaving: Vector, end: Point) -> Edge:
    """The arc that leaves in a direction; straight where its radius is beyond FAR."""
    chord = _between(start, end)
    aside = chord[1] * leaving[0] - chord[0] * leaving[1]  # to the right of the direction: clockwise
    square = chord[0] ** 2 + chord[1] ** 2
    if abs(aside) * 2 * FAR <= square:
        return Edge(start, end)
    radius = square / (2 * aside)
    center = Point(float(start.x) - leaving[1] * radius, float(start.y) + leaving[0] * radius)
    return Edge(start, end, Arc(center, abs(radius), radius > 0))


def _arc_into(start: Point, end: Point, arriving: Vector) -> Edge:
    """The arc that arrives in a direction."""
    return _arc(end, (-arriving[0], -arriving[1]), start).reversed()
