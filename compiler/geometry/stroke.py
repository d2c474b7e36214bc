"""Edges as complex numbers, for the passes that turn, match and offset outlines.

A place is x + yj in inches, x right and y down, so multiplying by e^(ja) turns clockwise as seen. Everything
is a float: these passes compare within tolerances and never decide where a vertex lies.
"""

from __future__ import annotations

from cmath import exp, phase
from collections.abc import Sequence
from itertools import islice
from math import pi, sin
from typing import Final, NamedTuple

from ..measure.tolerance import NEAR, ONE_WAY, TANGENT, rounded
from .edge import Arc, Edge, Point

CHORD: Final = 0.05
"""The share of the shorter stroke whose chords tell which way a doubled-back corner bends."""


class Stroke(NamedTuple):
    """A directed line from start to end: straight, or round `center` through `sweep` radians clockwise."""

    start: complex
    end: complex
    center: complex | None = None
    sweep: float = 0.0

    @property
    def radius(self) -> float:
        """Inches from the centre of an arc."""
        assert self.center is not None, "a straight stroke has no radius"
        return abs(self.start - self.center)

    @property
    def length(self) -> float:
        """Inches along the stroke."""
        if self.center is None:
            return abs(self.end - self.start)
        return abs(self.sweep) * self.radius

    def at(self, share: float) -> complex:
        """The place at a share of the length, 0 the start and 1 the end."""
        if self.center is None:
            return self.start + (self.end - self.start) * share
        return self.center + (self.start - self.center) * exp(1j * self.sweep * share)

    def direction(self, share: float) -> complex:
        """The unit vector along the stroke at a share of its length."""
        if self.center is None:
            along = self.end - self.start
        else:
            along = (self.at(share) - self.center) * (1j if self.sweep > 0 else -1j)
        return along / abs(along)

    def reversed(self) -> Stroke:
        """The same line the other way."""
        return Stroke(self.end, self.start, self.center, -self.sweep)

    def through(self, last: Stroke) -> Stroke:
        """One stroke from the start of this to the end of another that carries it on."""
        return Stroke(self.start, last.end, self.center, self.sweep + last.sweep)


def place_of(point: Point) -> complex:
    """The point as a complex number."""
    return complex(rounded(point.x), rounded(point.y))


def point_of(place: complex) -> Point:
    """The complex number as a point."""
    return Point(place.real, place.imag)


def stroke_of(edge: Edge) -> Stroke:
    """The edge as a stroke."""
    if edge.arc is None:
        return Stroke(place_of(edge.start), place_of(edge.end))
    return Stroke(place_of(edge.start), place_of(edge.end), place_of(edge.arc.center), edge.sweep)


def ring_strokes(edges: Sequence[Edge]) -> list[Stroke]:
    """The closed ring's edges as strokes; each ends at the very place where the next starts."""
    starts = [place_of(edge.start) for edge in edges]
    strokes = []
    for at, edge in enumerate(edges):
        end = starts[at + 1 - len(edges)]
        if edge.arc is None:
            strokes.append(Stroke(starts[at], end))
        else:
            strokes.append(Stroke(starts[at], end, place_of(edge.arc.center), edge.sweep))
    return strokes


def edge_of(stroke: Stroke) -> Edge:
    """The stroke as an edge."""
    if stroke.center is None:
        return Edge(point_of(stroke.start), point_of(stroke.end))
    arc = Arc(point_of(stroke.center), stroke.radius, stroke.sweep > 0)
    return Edge(point_of(stroke.start), point_of(stroke.end), arc)


def ring_edges(ring: Sequence[Stroke]) -> tuple[Edge, ...]:
    """The ring as edges; a whole circle as two halves: an edge back to its start draws nothing."""
    if len(ring) == 1 and ring[0].center is not None:
        (circle,) = ring
        half = circle.at(0.5)
        ring = (
            Stroke(circle.start, half, circle.center, circle.sweep / 2),
            Stroke(half, circle.end, circle.center, circle.sweep / 2),
        )
    return tuple(edge_of(stroke) for stroke in ring)


def turn_between(one: Stroke, two: Stroke) -> float:
    """Radians turned clockwise where the second stroke follows the first, in [-pi, pi].

    Where the second doubles back on the first, their bends tell a point (pi) from a slit (-pi).
    """
    turned = phase(two.direction(0) / one.direction(1))
    if abs(turned) < pi - ONE_WAY:
        return turned
    step = min(one.length, two.length) * CHORD
    arriving = one.end - one.at(1 - step / one.length)
    leaving = two.at(step / two.length) - two.start
    return abs(turned) if phase(leaving / arriving) >= 0 else -abs(turned)


def runs_on(one: Stroke, two: Stroke, slack: float) -> bool:
    """Whether the second stroke, which starts where the first ends, carries on its line or circle, but for so
    many inches."""
    if (one.center is None) != (two.center is None):
        return False
    if one.center is not None and two.center is not None:
        return (
            (one.sweep > 0) == (two.sweep > 0)
            and abs(one.center - two.center) <= slack
            and abs(one.sweep + two.sweep) <= 2 * pi + ONE_WAY
        )
    chord = two.end - one.start
    if abs(chord) <= slack:
        return False
    aside = ((one.end - one.start) * chord.conjugate()).imag / abs(chord)
    return abs(aside) <= slack and abs(turn_between(one, two)) < pi / 2


def stretches(strokes: Sequence[Stroke], slack: float) -> list[list[Stroke]]:
    """Strokes parted wherever one does not start where the one before it ends, but for so many inches."""
    found: list[list[Stroke]] = []
    for stroke in strokes:
        if found and abs(found[-1][-1].end - stroke.start) <= slack:
            found[-1].append(stroke)
        else:
            found.append([stroke])
    return found


def edges_apart(edges: Sequence[Edge]) -> list[tuple[Edge, ...]]:
    """Edges parted wherever one does not start where the one before it ends."""
    rest = iter(edges)
    strokes = [stroke_of(edge) for edge in edges]
    return [tuple(islice(rest, len(stretch))) for stretch in stretches(strokes, NEAR)]


def is_corner(turned: float) -> bool:
    """Whether two sides make a corner where the second turns so many radians from the first: not where they
    are tangent, running on in one direction or back in it."""
    return TANGENT < abs(turned) < pi - TANGENT


def doubled_area(ring: Sequence[Stroke]) -> float:
    """Twice the area that a closed ring goes round clockwise, in square inches; negative anticlockwise."""
    total = 0.0
    for stroke in ring:
        total += (stroke.start.conjugate() * stroke.end).imag
        if stroke.center is not None:
            total += _doubled_bulge(stroke)
    return total


def _doubled_bulge(stroke: Stroke) -> float:
    """Twice the area between an arc and its chord, positive where the arc bulges out of a clockwise ring."""
    return stroke.radius**2 * (stroke.sweep - sin(stroke.sweep))
