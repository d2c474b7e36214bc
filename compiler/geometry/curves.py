"""Where straight lines and arcs meet, and where a point lies along one. All in inches.

Every answer is exact where all that goes in is exact and straight; else a float good to far below NEAR.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from math import acos, atan2, cos, hypot, pi, sin, sqrt

from ..measure.tolerance import FLATTEN, NEAR, PARALLEL, Number, difference
from .edge import Edge, Point


def distance(p: Point, q: Point) -> float:
    """Inches between two points."""
    return hypot(difference(p.x, q.x), difference(p.y, q.y))


def same_place(p: Point, q: Point) -> bool:
    """Whether two points are one, within NEAR."""
    return distance(p, q) <= NEAR


def ratio(top: Number, bottom: Number) -> Number:
    """top / bottom, exact where both are."""
    if isinstance(top, int) and isinstance(bottom, int):
        return Fraction(top, bottom)
    return top / bottom


def meet_lines(
    p: Point, d: tuple[Number, Number], q: Point, e: tuple[Number, Number]
) -> tuple[Number, Number] | None:
    """How far along each of two lines (in steps of d and e) they meet; None where they are parallel."""
    cross = d[0] * e[1] - d[1] * e[0]
    size = hypot(float(d[0]), float(d[1])) * hypot(float(e[0]), float(e[1]))
    if size == 0 or abs(float(cross)) <= PARALLEL * size:
        return None
    wx, wy = q.x - p.x, q.y - p.y
    return ratio(wx * e[1] - wy * e[0], cross), ratio(wx * d[1] - wy * d[0], cross)


def along(p: Point, d: tuple[Number, Number], steps: Number) -> Point:
    """The point so many steps of d from p."""
    return Point(p.x + steps * d[0], p.y + steps * d[1])


def foot_on(p: Point, q: Point, d: tuple[Number, Number]) -> Point:
    """The foot of p on the line through q along d."""
    return along(q, d, steps_to_foot(p, q, d))


def steps_to_foot(p: Point, q: Point, d: tuple[Number, Number]) -> Number:
    """How far along the line through q (in steps of d) the foot of p lies."""
    square = d[0] * d[0] + d[1] * d[1]
    return ratio((p.x - q.x) * d[0] + (p.y - q.y) * d[1], square)


def bearing(center: Point, p: Point) -> float:
    """Radians from the x axis, growing clockwise as seen."""
    return atan2(difference(p.y, center.y), difference(p.x, center.x))


def share_at(edge: Edge, p: Point) -> float:
    """How far along an edge a point on it (or on its line or circle) lies: 0 at the start, 1 at the end."""
    if edge.arc is None:
        dx, dy = difference(edge.end.x, edge.start.x), difference(edge.end.y, edge.start.y)
        return (difference(p.x, edge.start.x) * dx + difference(p.y, edge.start.y) * dy) / (dx * dx + dy * dy)
    sweep = edge.sweep
    turned = bearing(edge.arc.center, p) - bearing(edge.arc.center, edge.start)
    if sweep < 0:
        turned, sweep = -turned, -sweep
    turned %= 2 * pi
    slack = NEAR / edge.arc.radius
    if turned > 2 * pi - slack:
        turned -= 2 * pi
    return turned / sweep


def at_share(edge: Edge, share: float) -> Point:
    """The point so far along an edge. Floats, save at the ends."""
    if share == 0:
        return edge.start
    if share == 1:
        return edge.end
    if edge.arc is None:
        return Point(
            float(edge.start.x) + share * difference(edge.end.x, edge.start.x),
            float(edge.start.y) + share * difference(edge.end.y, edge.start.y),
        )
    at = bearing(edge.arc.center, edge.start) + share * edge.sweep
    c, r = edge.arc.center, edge.arc.radius
    return Point(float(c.x) + r * cos(at), float(c.y) + r * sin(at))


def distance_to(edge: Edge, p: Point) -> float:
    """Inches from a point to the nearest place on an edge."""
    share = share_at(edge, p)
    slack = NEAR / max(edge.length, NEAR)
    if -slack <= share <= 1 + slack:
        if edge.arc is not None:
            return abs(distance(edge.arc.center, p) - edge.arc.radius)
        dx, dy = difference(edge.end.x, edge.start.x), difference(edge.end.y, edge.start.y)
        away = difference(p.x, edge.start.x) * dy - difference(p.y, edge.start.y) * dx
        return abs(away) / hypot(dx, dy)
    return min(distance(edge.start, p), distance(edge.end, p))


def lies_on(edge: Edge, p: Point) -> bool:
    """Whether a point is on an edge, within NEAR."""
    return distance_to(edge, p) <= NEAR


def line_and_circle(p: Point, d: tuple[Number, Number], center: Point, radius: float) -> list[float]:
    """How far along a line (in steps of d) it meets a circle: none, one where it touches, or two."""
    dx, dy = float(d[0]), float(d[1])
    size = hypot(dx, dy)
    wx, wy = difference(center.x, p.x), difference(center.y, p.y)
    middle = (wx * dx + wy * dy) / (size * size)
    away = abs(wx * dy - wy * dx) / size
    if away > radius + NEAR:
        return []
    if away >= radius - NEAR:
        return [middle]
    half = sqrt(radius * radius - away * away) / size
    return [middle - half, middle + half]


def circles_meet(c: Point, r: float, d: Point, s: float) -> list[Point]:
    """Where two circles meet: none (also when they are one circle), one where they touch, or two."""
    apart = distance(c, d)
    if apart <= NEAR or apart > r + s + NEAR or apart < abs(r - s) - NEAR:
        return []
    middle = (apart * apart + r * r - s * s) / (2 * apart)
    ux, uy = difference(d.x, c.x) / apart, difference(d.y, c.y) / apart
    x, y = float(c.x) + middle * ux, float(c.y) + middle * uy
    height = sqrt(max(r * r - middle * middle, 0.0))
    if apart >= r + s - NEAR or apart <= abs(r - s) + NEAR:
        return [Point(x, y)]
    return [Point(x - height * uy, y + height * ux), Point(x + height * uy, y - height * ux)]


def same_circle(one: Edge, other: Edge) -> bool:
    """Whether two arcs lie on one circle."""
    return (
        one.arc is not None
        and other.arc is not None
        and distance(one.arc.center, other.arc.center) <= NEAR
        and abs(one.arc.radius - other.arc.radius) <= NEAR
    )


def shared_ends(one: Edge, other: Edge) -> list[Point]:
    """The ends of either edge that lie on the other."""
    ends = [p for p in (one.start, one.end) if lies_on(other, p)]
    return ends + [p for p in (other.start, other.end) if lies_on(one, p)]


def crossings(one: Edge, other: Edge) -> list[Point]:
    """Where two edges cross or touch, at least one of them curved; ends that lie on the other included."""
    shared = shared_ends(one, other)
    if same_circle(one, other):
        return shared
    if one.arc is not None and other.arc is not None:
        places = circles_meet(one.arc.center, one.arc.radius, other.arc.center, other.arc.radius)
    else:
        line, curve = (one, other) if one.arc is None else (other, one)
        assert curve.arc is not None
        d = (line.end.x - line.start.x, line.end.y - line.start.y)
        steps = line_and_circle(line.start, d, curve.arc.center, curve.arc.radius)
        places = [along(line.start, d, t) for t in steps]
    return shared + [p for p in places if lies_on(one, p) and lies_on(other, p)]


def flattened(edge: Edge, tolerance: float = FLATTEN) -> list[Point]:
    """The edge as points from its start up to, not including, its end, no chord further off than
    tolerance."""
    if edge.arc is None:
        return [edge.start]
    reach = acos(max(1 - tolerance / edge.arc.radius, -1.0))
    pieces = max(2, int(abs(edge.sweep) / (2 * reach)) + 1)
    return [at_share(edge, step / pieces) for step in range(pieces)]


def area_under(edge: Edge) -> Number:
    """The edge's part of its ring's area, positive for rings that run clockwise as seen."""
    chord = (edge.start.x * edge.end.y - edge.end.x * edge.start.y) / 2
    if edge.arc is None:
        return chord
    sweep = edge.sweep
    return float(chord) + edge.arc.radius**2 * (sweep - sin(sweep)) / 2


def tangent_at_end(edge: Edge) -> tuple[Number, Number]:
    """The direction in which the edge arrives at its end (not of length 1)."""
    if edge.arc is None:
        return edge.end.x - edge.start.x, edge.end.y - edge.start.y
    rx, ry = edge.end.x - edge.arc.center.x, edge.end.y - edge.arc.center.y
    return (-ry, rx) if edge.arc.clockwise else (ry, -rx)


def extremes(edge: Edge) -> list[Point]:
    """The leftmost, rightmost, highest and lowest places of an arc's circle that lie on the arc."""
    if edge.arc is None:
        return []
    c, r = edge.arc.center, edge.arc.radius
    round_it = (Point(c.x + r, c.y), Point(c.x - r, c.y), Point(c.x, c.y + r), Point(c.x, c.y - r))
    return [p for p in round_it if lies_on(edge, p)]


def box_of(edges: Sequence[Edge]) -> tuple[Number, Number, Number, Number]:
    """Left, top, right, bottom of a ring of edges; the bulge of an arc counts."""
    points = [edge.start for edge in edges]
    for edge in edges:
        points += extremes(edge)
    return (
        min(p.x for p in points),
        min(p.y for p in points),
        max(p.x for p in points),
        max(p.y for p in points),
    )


def inside_ring(p: Point, ring: tuple[Edge, ...]) -> bool:
    """Whether a point that is not on the ring lies inside it, arcs included."""
    turned = 0.0
    for edge in ring:
        turned += _angle_seen(p, edge)
    return abs(turned) > pi


def _angle_seen(p: Point, edge: Edge) -> float:
    """The angle, signed, through which an eye at p turns as it follows the edge."""
    if edge.arc is not None:
        steps = [at_share(edge, k / 8) for k in range(9)]  # an eighth of a circle at most: never half a turn
        if abs(distance(edge.arc.center, p) - edge.arc.radius) < edge.arc.radius / 50:
            steps = [at_share(edge, k / 64) for k in range(65)]
    else:
        steps = [edge.start, edge.end]
    total = 0.0
    for a, b in pairwise(steps):
        ax, ay = difference(a.x, p.x), difference(a.y, p.y)
        bx, by = difference(b.x, p.x), difference(b.y, p.y)
        total += atan2(ax * by - ay * bx, ax * bx + ay * by)
    return total


def ring_area(ring: tuple[Edge, ...]) -> Number:
    """Square inches inside a ring, positive if it runs clockwise as seen."""
    total = area_under(ring[0])
    for edge in ring[1:]:
        total = total + area_under(edge)
    return total
