r"""Shapes cut from a strip by slanted cuts: 60deg triangles, diamonds, parallelograms, trapezoids, hexagons.

    ____________________
   /    /    /    /    /   the strip is as wide as the shape is high with its
  /____/____/____/____/    allowances, and the cuts lie `width` apart, square across
Inches.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import sqrt

from ...measure.marks import mark_up
from ...measure.tolerance import Number
from ..handling import CutEnds, SlantedCuts, Zigzag
from ..reasons import AcrossFinished, OffAngle, OnRuler, SlantedEnds, Sum
from ..shapes import Kind
from .method import Method, Ruled, cut_corners, excess_of, on_mark, to_corner, unmarked
from .recognise import Figure, angle_at, is_ruled


def _upright(figure: Figure) -> tuple[float, float]:
    """Distances across a slanted shape: between its sides on the grain, and between the others."""
    base, slant = figure.side(0), figure.side(1)
    cross = abs((base.conjugate() * slant).imag)
    return cross / abs(base), cross / abs(slant)


def equilateral(figure: Figure, step: Fraction, whole: Number | None, setting: bool) -> Ruled:
    """A strip cut at 60deg, one way and the other."""
    height = abs(figure.side(0)) * sqrt(3) / 2
    exact = height + 3 * figure.allowances[0]
    if not on_mark(exact, step):
        return unmarked(height, exact, step, None)
    strip = mark_up(exact, step)
    return Method(
        "equilateral-triangle",
        float(strip) * 2 / sqrt(3),
        strip,
        1,
        excess_of(((strip, exact),)),
        Sum(height, exact - height, strip, "strip"),
        strip,
        60.0,
        _spread(figure, (float(strip) - exact, 0, 0)),
        (Zigzag(),),
    )


def slanted(figure: Figure, step: Fraction, whole: Number | None, setting: bool) -> Ruled:
    """A strip cut at one slant: diamonds and parallelograms."""
    high, wide = _upright(figure)
    strip = high + figure.allowances[0] + figure.allowances[2]
    spacing = wide + figure.allowances[1] + figure.allowances[3]
    for exact, size in ((strip, high), (spacing, wide)):
        if not on_mark(exact, step):
            return unmarked(size, exact, step, None)
    tall, across = mark_up(strip, step), mark_up(spacing, step)
    over = (float(tall) - strip, float(across) - spacing)
    angle = round(figure.angle, 2)
    kind: Kind = "diamond" if tall == across and figure.kind == "diamond" else "parallelogram"
    return Method(
        kind,
        across,
        tall,
        1,
        excess_of(((tall, strip), (across, spacing))),
        OnRuler(angle),
        tall,
        angle,
        _spread(figure, (*over, 0, 0)),
        (SlantedCuts(angle, across),),
    )


def trapezoid(figure: Figure, step: Fraction, whole: Number | None, setting: bool) -> Ruled:
    """A strip whose pieces have slanted ends."""
    corners = cut_corners(figure)
    base = figure.side(0) / abs(figure.side(0))
    high = abs((base.conjugate() * (figure.corners[2] - figure.corners[0])).imag)
    strip = high + figure.allowances[0] + figure.allowances[2]
    long = abs(corners[1] - corners[0])
    ends = [angle_at(figure, 0), angle_at(figure, 1)]
    off = [angle for angle in ends if not is_ruled(angle)]
    if off:
        return OffAngle("ends", off[0])
    if not on_mark(strip, step):
        return unmarked(high, strip, step, whole)
    if not (on_mark(long, step) or on_mark(abs(figure.side(0)), step)):
        return unmarked(abs(figure.side(0)), long, step, whole)
    tall, across = mark_up(strip, step), mark_up(long, step)
    over = (float(tall) - strip, float(across) - long)
    return Method(
        "trapezoid",
        across,
        tall,
        1,
        excess_of(((tall, strip), (across, long))),
        SlantedEnds(across, (ends[0], ends[1])),
        tall,
        round(min(ends), 2),
        _lengthened(figure, over),
        (CutEnds((ends[0], ends[1])),),
    )


def hexagon(figure: Figure, step: Fraction, whole: Number | None, setting: bool) -> Ruled:
    """60deg diamonds from a strip, their two points cut off."""
    across = abs(figure.side(0)) * sqrt(3)
    exact = across + 2 * figure.allowances[0]
    if not on_mark(exact, step):
        return unmarked(across, exact, step, None)
    strip = mark_up(exact, step)
    over = (float(strip) - exact) / 2
    grown = figure._replace(allowances=tuple(each + over for each in figure.allowances))
    return Method(
        "hexagon",
        strip,
        strip,
        1,
        excess_of(((strip, exact),)),
        AcrossFinished(across),
        strip,
        60.0,
        to_corner(cut_corners(grown)),
        (SlantedCuts(60.0, strip, strip / 2),),
    )


def _spread(figure: Figure, over: Sequence[float]) -> tuple[complex, ...]:
    """The cut corners with sides moved out further, so that the cut measures what the ruler shows."""
    grown = figure._replace(
        allowances=tuple(each + more for each, more in zip(figure.allowances, over, strict=True))
    )
    return to_corner(cut_corners(grown))


def _lengthened(figure: Figure, over: tuple[float, float]) -> tuple[complex, ...]:
    """A trapezoid's cut corners at the strip's width and with its long side at the mark."""
    corners = list(_spread(figure, (0, 0, over[0], 0)))
    base = (corners[1] - corners[0]) / abs(corners[1] - corners[0])
    corners[1] += base * over[1]
    corners[2] += base * over[1]
    return to_corner(corners)
