"""Moving points and edges about: turns, mirrors, scaling to a cell. Exact where the numbers are."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

from ..measure.angle import cosine_sine, direction, heading_of
from ..measure.record import record
from ..measure.tolerance import Number
from .edge import Arc, Edge, Point


@record
class Transform:
    """x' = a x + b y + e;  y' = c x + d y + f."""

    a: Number = 1
    b: Number = 0
    c: Number = 0
    d: Number = 1
    e: Number = 0
    f: Number = 0

    def __call__(self, p: Point) -> Point:
        """Where a point goes. Most are shifted only, or scaled and shifted, and fractions are slow to
        multiply by one and by zero."""
        if self.b == 0 and self.c == 0:
            if self.a == 1 and self.d == 1:
                return Point(p.x + self.e, p.y + self.f)
            return Point(self.a * p.x + self.e, self.d * p.y + self.f)
        if self.a == 0 and self.d == 0:
            return Point(self.b * p.y + self.e, self.c * p.x + self.f)
        return Point(self.a * p.x + self.b * p.y + self.e, self.c * p.x + self.d * p.y + self.f)

    def step(self, right: Number, down: Number) -> tuple[Number, Number]:
        """Where a direction goes."""
        return self.a * right + self.b * down, self.c * right + self.d * down

    def grain(self, heading: Number) -> float:
        """The heading, 0 <= heading < 180, that a line comes to have which had this one: a grain has two
        heads."""
        return heading_of(*self.step(*direction(heading))) % 180

    @property
    def determinant(self) -> Number:
        """Signed change of area; negative where it mirrors."""
        return self.a * self.d - self.b * self.c

    @property
    def mirrors(self) -> bool:
        """Whether left and right change places."""
        return self.determinant < 0

    @property
    def scale(self) -> float:
        """Change of length, where it is the same every way."""
        return sqrt(abs(float(self.determinant)))

    @property
    def turned(self) -> float:
        """Degrees clockwise that it turns, after mirroring left and right if it mirrors."""
        sign = -1 if self.mirrors else 1
        return heading_of(sign * self.a, sign * self.c) - 90.0

    def after(self, first: Transform) -> Transform:
        """The transform that does `first`, then this."""
        return Transform(
            self.a * first.a + self.b * first.c,
            self.a * first.b + self.b * first.d,
            self.c * first.a + self.d * first.c,
            self.c * first.b + self.d * first.d,
            self.a * first.e + self.b * first.f + self.e,
            self.c * first.e + self.d * first.f + self.f,
        )

    def inverse(self) -> Transform:
        """The way back."""
        k = self.determinant
        if isinstance(k, int):
            k = Fraction(k)
        a, b, c, d = self.d / k, -self.b / k, -self.c / k, self.a / k
        return Transform(a, b, c, d, -(a * self.e + b * self.f), -(c * self.e + d * self.f))

    def edge(self, edge: Edge) -> Edge:
        """Where an edge goes. Arcs want the same scale every way."""
        arc = edge.arc
        if arc is not None:
            arc = Arc(self(arc.center), arc.radius * self.scale, arc.clockwise != self.mirrors)
        return Edge(self(edge.start), self(edge.end), arc)

    def shifted(self, right: Number, down: Number) -> Transform:
        """The transform that does this, then shifts."""
        return Transform(self.a, self.b, self.c, self.d, self.e + right, self.f + down)


IDENTITY = Transform()


def turn_about(center: Point, angle: Fraction | float) -> Transform:
    """A turn clockwise as seen, in degrees."""
    cosine, sine = cosine_sine(angle)
    return Transform(
        cosine,
        -sine,
        sine,
        cosine,
        center.x - cosine * center.x + sine * center.y,
        center.y - sine * center.x - cosine * center.y,
    )


def mirror_in(first: Point, second: Point) -> Transform:
    """The mirror image in the line through two different points."""
    dx, dy = second.x - first.x, second.y - first.y
    square = dx * dx + dy * dy
    if isinstance(square, int):
        square = Fraction(square)
    a = (dx * dx - dy * dy) / square
    b = 2 * dx * dy / square
    return Transform(a, b, b, -a, first.x - a * first.x - b * first.y, first.y - b * first.x + a * first.y)


def move_by(right: Number, down: Number) -> Transform:
    """A shift."""
    return Transform(e=right, f=down)


def stretch(across: Number, down: Number) -> Transform:
    """A change of size about the top left."""
    return Transform(a=across, d=down)
