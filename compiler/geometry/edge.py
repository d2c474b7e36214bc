"""Points, straight and curved edges.

x right, y down, in inches. Fractions where the drafting is exact, floats elsewhere (see measure.tolerance).
"""

from __future__ import annotations

from math import atan2, pi, sqrt
from typing import NamedTuple

from ..measure.record import record
from ..measure.tolerance import NO_TURN, Number, difference


class Point(NamedTuple):
    """A place, in inches from the top left."""

    x: Number
    y: Number


@record
class Arc:
    """The circle an edge follows. `clockwise` is as seen, from the edge's start to its end."""

    center: Point
    radius: float
    clockwise: bool


@record
class Edge:
    """A directed straight or curved line from start to end."""

    start: Point
    end: Point
    arc: Arc | None = None

    @property
    def sweep(self) -> float:
        """Radians that an arc turns through, positive clockwise as seen; 0 for a straight edge."""
        if self.arc is None:
            return 0.0
        c = self.arc.center
        first = atan2(difference(self.start.y, c.y), difference(self.start.x, c.x))
        last = atan2(difference(self.end.y, c.y), difference(self.end.x, c.x))
        turn = (last - first) % (2 * pi)
        if turn < NO_TURN:  # a whole circle, either way round
            return 2 * pi if self.arc.clockwise else -2 * pi
        return turn if self.arc.clockwise else turn - 2 * pi

    @property
    def length(self) -> float:
        """Inches along the edge."""
        if self.arc is not None:
            return abs(self.sweep) * self.arc.radius
        dx, dy = difference(self.end.x, self.start.x), difference(self.end.y, self.start.y)
        return sqrt(dx * dx + dy * dy)

    def reversed(self) -> Edge:
        """The same line the other way."""
        arc = self.arc and Arc(self.arc.center, self.arc.radius, not self.arc.clockwise)
        return Edge(self.end, self.start, arc)
