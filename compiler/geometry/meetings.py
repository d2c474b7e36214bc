"""Where lines, arcs, circles and outlines meet. All in inches.

A place is exact where all that goes in is exact and its root is a fraction (as at 3in and 4in from the middle
of a circle of 5in); else a float good to far below NEAR. Figures that touch meet once.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import hypot, sqrt
from typing import NamedTuple

from ..measure.length import exact_root
from ..measure.tolerance import NEAR, Number
from .curves import (
    along,
    at_share,
    distance,
    foot_on,
    lies_on,
    line_and_circle,
    meet_lines,
    ratio,
    same_circle,
    same_place,
    steps_to_foot,
)
from .edge import Edge, Point

Ray = tuple[Point, tuple[Number, Number]]
"""A line: a point on it and a step along it (of any length)."""


class Round(NamedTuple):
    """A circle, or the arc of it that is drawn. `square` is its radius times itself."""

    center: Point
    square: Number
    arc: Edge | None = None

    @property
    def radius(self) -> float:
        """Inches from its middle."""
        return sqrt(float(self.square))


Stroke = Ray | Edge | Round
"""A line without end, a straight edge, or a circle or arc."""


def round_of(arc: Edge) -> Round:
    """The stroke of a curved edge."""
    assert arc.arc is not None
    return Round(arc.arc.center, square_between(arc.arc.center, arc.start), arc)


def stroke_of(edge: Edge) -> Stroke:
    """The stroke of an edge of either kind."""
    return edge if edge.arc is None else round_of(edge)


def square_between(p: Point, q: Point) -> Number:
    """The distance between two points, times itself; exact where they are."""
    return (q.x - p.x) ** 2 + (q.y - p.y) ** 2


def places_of_meeting(ones: Sequence[Stroke], others: Sequence[Stroke]) -> list[Point] | None:
    """Every place where two figures meet, each once; None where they run along each other."""
    found: list[Point] = []
    for one in ones:
        for other in others:
            met = _meet(one, other)
            if met is None:
                return None
            found += [p for p in met if _holds(one, p) and _holds(other, p)]
    return one_of_each(found)


def one_of_each(places: Iterable[Point]) -> list[Point]:
    """The places, those left out that are where another is."""
    kept: list[Point] = []
    for place in places:
        if not any(same_place(place, each) for each in kept):
            kept.append(place)
    return kept


def whole(stroke: Stroke) -> Stroke:
    """The whole circle of an arc; any other stroke as it is."""
    return Round(stroke.center, stroke.square) if isinstance(stroke, Round) else stroke


def _holds(stroke: Stroke, place: Point) -> bool:
    """Whether a place on a stroke's line or circle lies on what is drawn of it."""
    edge = stroke.arc if isinstance(stroke, Round) else stroke if isinstance(stroke, Edge) else None
    return edge is None or lies_on(edge, place)


def _meet(one: Stroke, other: Stroke) -> list[Point] | None:
    """Where the lines and circles of two strokes meet."""
    if isinstance(one, Round) and isinstance(other, Round):
        return _rounds_meet(one, other)
    if isinstance(one, Round):
        one, other = other, one
    line = _line(one)
    if isinstance(other, Round):
        return _line_meets(line, other)
    following = _line(other)
    met = meet_lines(*line, *following)
    if met is not None:
        return [along(*line, met[0])]
    if not same_place(foot_on(following[0], *line), following[0]):
        return []
    ends = [p for each in (one, other) if isinstance(each, Edge) for p in (each.start, each.end)]
    shared = one_of_each(p for p in ends if _holds(one, p) and _holds(other, p))
    return shared if len(shared) == 1 else None if shared or not ends else []


def _line(stroke: Stroke) -> Ray:
    """A straight stroke's line."""
    if isinstance(stroke, Edge):
        return stroke.start, (stroke.end.x - stroke.start.x, stroke.end.y - stroke.start.y)
    assert not isinstance(stroke, Round)
    return stroke


def _line_meets(line: Ray, circle: Round) -> list[Point]:
    """Where a line meets a whole circle."""
    foot = foot_on(circle.center, *line)
    away = distance(foot, circle.center)
    if away > circle.radius + NEAR:
        return []
    if away >= circle.radius - NEAR:
        return [foot]
    step = line[1]
    left = circle.square - square_between(foot, circle.center)
    half = _root(ratio(left, step[0] * step[0] + step[1] * step[1]))
    return [along(foot, step, -half), along(foot, step, half)]


def _root(square: Number) -> Number:
    """The square root, exact where it can be; of what rounding left below nothing, nothing."""
    if isinstance(square, float):
        return sqrt(max(square, 0.0))
    return exact_root(Fraction(square))


def _rounds_meet(one: Round, other: Round) -> list[Point] | None:
    """Where two whole circles meet; of two arcs of one circle, where an end of both is."""
    apart, r, s = distance(one.center, other.center), one.radius, other.radius
    if apart <= NEAR and abs(r - s) <= NEAR:
        return _ends_shared(one, other)
    if apart <= NEAR or apart > r + s + NEAR or apart < abs(r - s) - NEAR:
        return []
    across = (other.center.x - one.center.x, other.center.y - one.center.y)
    square = across[0] * across[0] + across[1] * across[1]
    middle = along(one.center, across, ratio(square + one.square - other.square, 2 * square))
    if apart >= r + s - NEAR or apart <= abs(r - s) + NEAR:
        return [middle]
    half = _root(ratio(one.square - square_between(one.center, middle), square))
    aside = (-across[1], across[0])
    return [along(middle, aside, half), along(middle, aside, -half)]


def _ends_shared(one: Round, other: Round) -> list[Point] | None:
    """Where two arcs of one circle meet end to end; None where they run along each other."""
    if one.arc is None or other.arc is None:
        return None
    assert same_circle(one.arc, other.arc)
    inner = [*_inside(one.arc, other.arc), *_inside(other.arc, one.arc)]
    if any(inner):
        return None
    return [p for p in (one.arc.start, one.arc.end) if lies_on(other.arc, p)]


def _inside(arc: Edge, other: Edge) -> list[bool]:
    """Whether an arc's ends and middle lie on another one, off its ends."""
    ends = (other.start, other.end)
    return [
        lies_on(other, p) and not any(same_place(p, end) for end in ends)
        for p in (arc.start, at_share(arc, 0.5), arc.end)
    ]


def first_meeting(ray: Ray, edges: tuple[Edge, ...]) -> Point | None:
    """The nearest place beyond the ray's own point where it meets an edge."""
    ahead = meetings(ray, edges)
    unit = hypot(float(ray[1][0]), float(ray[1][1]))
    beyond = [steps for steps in ahead if float(steps) * unit > NEAR]
    return along(*ray, min(beyond)) if beyond else None


def meetings(ray: Ray, edges: tuple[Edge, ...]) -> list[Number]:
    """How far along a line (in its own steps, before and behind) it meets each edge, in order."""
    found: list[Number] = []
    for edge in edges:
        if edge.arc is not None:
            steps: list[Number] = list(line_and_circle(*ray, edge.arc.center, edge.arc.radius))
        else:
            met = meet_lines(*ray, *_line(edge))
            steps = [met[0]] if met else _ends_along(ray, edge)
        found += [each for each in steps if lies_on(edge, along(*ray, each))]
    return sorted(found)


def _ends_along(ray: Ray, edge: Edge) -> list[Number]:
    """Where a line meets an edge that it is parallel to: at both ends, if it runs along it."""
    ends = ((steps_to_foot(p, *ray), p) for p in (edge.start, edge.end))
    return [steps for steps, p in ends if same_place(along(*ray, steps), p)]
