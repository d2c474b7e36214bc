"""Outlines in inches become paths in points: the one place where a true size is multiplied by 72.

Straight lines are exact. An arc becomes cubic curves, as many as keep within CURVE_ERROR of the circle.

    inches, as drafted  --turn, then move-->  points, on the page
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import acos, ceil, cos, hypot, pi, sin, tan
from typing import Final, NamedTuple

from ...geometry.edge import Edge, Point
from ...geometry.pose import turning
from ...measure.length import POINTS_PER_INCH
from ...measure.record import record
from ...measure.tolerance import CURVE_ERROR, ROUNDED, Number, rounded
from ..page import Segment

CHORD_ERROR: Final = 0.02
"""Inches between an arc and the chords that stand for it when lettering looks for room; well inside the
clearance that lettering keeps."""


class Spot(NamedTuple):
    """A place on the page, in points."""

    x: float
    y: float


Ring = tuple[Spot, ...]


@record
class Placement:
    """How drafted inches lie on the page: turned clockwise about the origin, then moved; scale 1 is true."""

    turned: float = 0.0
    x: float = 0.0
    y: float = 0.0
    scale: float = 1.0

    def matrix(self) -> tuple[float, float]:
        """What carries a drafted vector over: (a, b) of x' = ax - by, y' = bx + ay, in points an inch."""
        turn = turning(self.turned) * (POINTS_PER_INCH * self.scale)
        return turn.real, turn.imag

    def spot(self, point: Point) -> Spot:
        """Where a drafted point lies on the page."""
        a, b = self.matrix()
        x, y = rounded(point.x), rounded(point.y)
        return Spot(a * x - b * y + self.x, b * x + a * y + self.y)

    def spot_at(self, x: Number, y: Number) -> Spot:
        """Where the drafted place (x, y) lies on the page."""
        return self.spot(Point(x, y))

    def spots(self, points: Iterable[Point]) -> Ring:
        """Where drafted points lie on the page."""
        a, b = self.matrix()
        dx, dy = self.x, self.y
        places = [(rounded(x), rounded(y)) for x, y in points]
        return tuple(Spot(a * x - b * y + dx, b * x + a * y + dy) for x, y in places)

    def direction(self, vector: Point) -> Spot:
        """A drafted unit vector, turned as the placement turns."""
        a, b = self.matrix()
        x, y, size = float(vector.x), float(vector.y), hypot(a, b)
        return Spot((a * x - b * y) / size, (b * x + a * y) / size)


def ring_path(edges: Sequence[Edge], placement: Placement) -> tuple[Segment, ...]:
    """A closed path round the edges."""
    segments = open_path(edges, placement)
    last = edges[-1]
    return (*segments, ("Z",)) if last.arc else (*segments[:-1], ("Z",))


def open_path(edges: Sequence[Edge], placement: Placement) -> tuple[Segment, ...]:
    """A path along edges that follow each other."""
    first = placement.spot(edges[0].start)
    segments: list[Segment] = [("M", first.x, first.y)]
    for edge in edges:
        if edge.arc is None:
            end = placement.spot(edge.end)
            segments.append(("L", end.x, end.y))
        else:
            segments.extend(_curves(edge, placement))
    return tuple(segments)


def _curves(edge: Edge, placement: Placement) -> Iterable[Segment]:
    """The cubic curves along an arc. The last ends on the edge's own end, so that rings close exactly."""
    arc = edge.arc
    assert arc is not None
    count = curves_needed(arc.radius * placement.scale, abs(edge.sweep))
    step = edge.sweep / count
    handle = 4 / 3 * tan(step / 4)
    cx, cy = float(arc.center.x), float(arc.center.y)
    x, y = float(edge.start.x), float(edge.start.y)
    cosine, sine = cos(step), sin(step)
    for number in range(count):
        rx, ry = x - cx, y - cy
        nx, ny = cx + rx * cosine - ry * sine, cy + rx * sine + ry * cosine
        if number == count - 1:
            nx, ny = float(edge.end.x), float(edge.end.y)
        leave, arrive = (
            Point(x - handle * ry, y + handle * rx),
            Point(nx + handle * (ny - cy), ny - handle * (nx - cx)),
        )
        one, two, end = placement.spots((leave, arrive, Point(nx, ny)))
        yield ("C", one.x, one.y, two.x, two.y, end.x, end.y)
        x, y = nx, ny


def curves_needed(radius: float, sweep: float) -> int:
    """How many cubic curves follow an arc of that radius (inches) and sweep (radians) within CURVE_ERROR.

    The greatest error of one curve is 2/27 r sin^6(t/4) / cos^2(t/4): the maximum of the cubic's own radius,
    worked out by hand and tested against points along the curve.
    """
    count = max(1, ceil(sweep / (pi / 2) - ROUNDED))
    while 2 / 27 * radius * sin(sweep / count / 4) ** 6 / cos(sweep / count / 4) ** 2 > CURVE_ERROR:
        count += 1
    return count


def flat_ring(edges: Sequence[Edge], placement: Placement) -> Ring:
    """The corners of a ring on the page, arcs as chords within CHORD_ERROR: to find room, not to draw."""
    points: list[Point] = []
    for edge in edges:
        points.append(edge.start)
        if edge.arc is not None:
            points.extend(_along(edge))
    return placement.spots(points)


def _along(edge: Edge) -> Iterable[Point]:
    """Points along an arc between its ends."""
    arc = edge.arc
    assert arc is not None
    most = 2 * acos(1 - CHORD_ERROR / arc.radius) if arc.radius > CHORD_ERROR else pi / 4
    count = ceil(abs(edge.sweep) / most)
    cx, cy = float(arc.center.x), float(arc.center.y)
    rx, ry = float(edge.start.x) - cx, float(edge.start.y) - cy
    for number in range(1, count):
        turn = edge.sweep * number / count
        yield Point(cx + rx * cos(turn) - ry * sin(turn), cy + rx * sin(turn) + ry * cos(turn))


def straight(*spots: tuple[float, float]) -> tuple[Segment, ...]:
    """An open path through the places."""
    (x, y), *rest = spots
    return (("M", x, y), *(("L", px, py) for px, py in rest))


def closed(spots: Iterable[tuple[float, float]]) -> tuple[Segment, ...]:
    """A closed path round the places."""
    return (*straight(*spots), ("Z",))


def box_path(left: float, top: float, right: float, bottom: float) -> tuple[Segment, ...]:
    """A closed rectangle."""
    return closed(((left, top), (right, top), (right, bottom), (left, bottom)))


def circle_path(x: float, y: float, radius: float) -> tuple[Segment, ...]:
    """A circle as four cubic curves: at the size of a dot, far inside any tolerance."""
    k = radius * 4 / 3 * tan(pi / 8)
    r = radius
    return (
        ("M", x + r, y),
        ("C", x + r, y + k, x + k, y + r, x, y + r),
        ("C", x - k, y + r, x - r, y + k, x - r, y),
        ("C", x - r, y - k, x - k, y - r, x, y - r),
        ("C", x + k, y - r, x + r, y - k, x + r, y),
        ("Z",),
    )
