"""A finished outline to the kind of its shape, from geometry alone.

The outline lies as it is cut: straight of grain up and down. Which side lies on the grain tells a half-square
triangle (its legs do) from a quarter-square triangle (its long side does). Inches; places are complex
numbers, x right and y down, corners clockwise (see geometry.stroke).
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Sequence
from math import degrees, pi
from typing import Final, NamedTuple

from ...geometry.edge import Edge
from ...geometry.stroke import ring_strokes
from ...measure.tolerance import ALIKE, Number
from ..shapes import FigureKind

SAME_ANGLE: Final = 0.01
"""Degrees. Angles and headings nearer than this are one: over a yard they part by a hundredth of an inch."""

RULED_ANGLES: Final = (30.0, 45.0, 60.0, 90.0)
"""Degrees. The lines that a rotary cutter's ruler bears (common practice, no published source)."""


class Figure(NamedTuple):
    """A straight-sided outline made ready: true corners, and each side's allowance.

    `on_grain`: the side that the rotary way is laid by lies on the grain. `angle` is the sharper angle of a
    slanted shape in degrees.
    """

    kind: FigureKind
    corners: tuple[complex, ...]
    allowances: tuple[float, ...]  # of the side from each corner to the next
    on_grain: bool
    angle: float = 90.0

    def side(self, at: int) -> complex:
        """The step along a side."""
        return self.corners[(at + 1) % len(self.corners)] - self.corners[at % len(self.corners)]

    @property
    def even(self) -> bool:
        """Whether every side has the same allowance."""
        return max(self.allowances) - min(self.allowances) <= ALIKE


def recognise(outline: Sequence[Edge], allowances: Sequence[Number]) -> Figure:
    """The figure that a finished outline is."""
    strokes = ring_strokes(outline)
    widths = [float(each) for each in allowances]
    if any(stroke.center is not None for stroke in strokes):
        return Figure("curved-shape", tuple(stroke.start for stroke in strokes), tuple(widths), False)
    corners, kept, split = _true_corners([stroke.start for stroke in strokes], widths)
    bare = Figure("many-sided-shape", corners, kept, False)
    if split:
        return bare._replace(kind="seam")
    if any(_turn(bare, at) <= 0 for at in range(len(corners))):
        return bare
    of_sides = {3: _triangle, 4: _four_sided, 6: _six_sided}
    return of_sides[len(corners)](bare) if len(corners) in of_sides else bare


def _true_corners(
    places: Sequence[complex], widths: Sequence[float]
) -> tuple[tuple[complex, ...], tuple[float, ...], bool]:
    """The corners that turn, each with the allowance of the side after it; and whether a straight side had to
    stay in two because its parts have different allowances."""
    count = len(places)
    turning = []
    split = False
    for at in range(count):
        before, after = places[at] - places[at - 1], places[(at + 1) % count] - places[at]
        straight = abs(degrees(phase(after / before))) <= SAME_ANGLE
        split = split or (straight and abs(widths[at] - widths[at - 1]) > ALIKE)
        if not straight or abs(widths[at] - widths[at - 1]) > ALIKE:
            turning.append(at)
    return tuple(places[at] for at in turning), tuple(widths[at] for at in turning), split


def _turn(figure: Figure, at: int) -> float:
    """Degrees turned clockwise at a corner."""
    return degrees(phase(figure.side(at) / figure.side(at - 1)))


def angle_at(figure: Figure, at: int) -> float:
    """Degrees of cloth at a corner."""
    return 180 - _turn(figure, at)


def is_ruled(angle: float) -> bool:
    """Whether a ruler bears the line of that angle."""
    return any(_is(min(angle, 180 - angle), each) for each in RULED_ANGLES)


def lies_on_grain(step: complex) -> bool:
    """Whether a side runs along or straight across the grain."""
    off = degrees(phase(step)) % 90
    return min(off, 90 - off) <= SAME_ANGLE


def _same(one: float, other: float) -> bool:
    return abs(one - other) <= ALIKE


def _is(angle: float, wanted: float) -> bool:
    return abs(angle - wanted) <= SAME_ANGLE


def _parallel(one: complex, other: complex) -> bool:
    off = abs(phase(one / other))
    return min(off, pi - off) <= SAME_ANGLE * pi / 180


def _rolled(figure: Figure, first: int) -> Figure:
    """The same figure, its corners listed from another one on."""
    return figure._replace(
        corners=figure.corners[first:] + figure.corners[:first],
        allowances=figure.allowances[first:] + figure.allowances[:first],
    )


def _triangle(figure: Figure) -> Figure:
    """Right triangles are listed from the right angle on."""
    lengths = [abs(figure.side(at)) for at in range(3)]
    if max(lengths) - min(lengths) <= ALIKE:
        base = next((at for at in range(3) if lies_on_grain(figure.side(at))), None)
        return _rolled(figure, base or 0)._replace(
            kind="equilateral-triangle", on_grain=base is not None, angle=60.0
        )
    right = next((at for at in range(3) if _is(angle_at(figure, at), 90)), None)
    if right is None:
        return figure._replace(kind="triangle")
    figure = _rolled(figure, right)
    legs_on = lies_on_grain(figure.side(0))
    if not _same(abs(figure.side(0)), abs(figure.side(2))):
        return figure._replace(kind="half-rectangle-triangle", on_grain=legs_on)
    if lies_on_grain(figure.side(1)):
        return figure._replace(kind="quarter-square-triangle", on_grain=True, angle=45.0)
    return figure._replace(kind="half-square-triangle", on_grain=legs_on, angle=45.0)


def _four_sided(figure: Figure) -> Figure:
    lengths = [abs(figure.side(at)) for at in range(4)]
    angles = [angle_at(figure, at) for at in range(4)]
    if all(_is(angle, 90) for angle in angles):
        kind: FigureKind = "square" if _same(lengths[0], lengths[1]) else "rectangle"
        return figure._replace(kind=kind, on_grain=lies_on_grain(figure.side(0)))
    base = next((at for at in range(4) if lies_on_grain(figure.side(at))), None)
    sharp = min(angles)
    pairs = [_parallel(figure.side(at), figure.side(at + 2)) for at in range(2)]
    if all(pairs):
        kind = "diamond" if _same(lengths[0], lengths[1]) else "parallelogram"
        return _rolled(figure, base or 0)._replace(kind=kind, on_grain=base is not None, angle=sharp)
    if any(pairs):
        return _trapezoid(figure, 0 if pairs[0] else 1)
    if any(
        _same(lengths[at], lengths[at - 1]) and _same(lengths[at - 2], lengths[at - 3]) for at in range(2)
    ):
        return figure._replace(kind="kite", angle=sharp)
    return figure._replace(kind="four-sided-shape", angle=sharp)


def _trapezoid(figure: Figure, first: int) -> Figure:
    """Listed from its long side on."""
    long = first if abs(figure.side(first)) > abs(figure.side(first + 2)) else first + 2
    figure = _rolled(figure, long)
    ends = [angle_at(figure, 0), angle_at(figure, 1)]
    return figure._replace(kind="trapezoid", on_grain=lies_on_grain(figure.side(0)), angle=min(ends))


def _six_sided(figure: Figure) -> Figure:
    lengths = [abs(figure.side(at)) for at in range(6)]
    if max(lengths) - min(lengths) > ALIKE or not all(_is(angle_at(figure, at), 120) for at in range(6)):
        return figure
    base = next((at for at in range(6) if lies_on_grain(figure.side(at))), None)
    return _rolled(figure, base or 0)._replace(kind="hexagon", on_grain=base is not None, angle=60.0)
