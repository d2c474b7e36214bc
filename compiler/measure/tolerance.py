"""The tolerances, and the only functions that compare floats.

A `Number` is a Fraction where the drafting is exact and a float where a square root or a sine came in;
Python's own arithmetic keeps the one and falls to the other. Lengths are in inches.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

Number = Fraction | float

NEAR: Final = 1e-6
"""Inches. Two places nearer than this are one place: a thousandth of the promised thousandth of an inch,
and still ten thousand times the rounding of a float at the size of a quilt."""

NEARLY: Final = Fraction(1, 64)
"""Inches. Ends nearer than this but further than NEAR 'nearly touch', and are complained of: no ruler shows
a sixty-fourth, so nobody means it."""

SLIVER: Final = Fraction(1, 16)
"""Inches. A piece narrower than this cannot be cut or sewn."""

WHOLE_TURN: Final = 1e-9
"""Degrees. A turn nearer than this to a whole one is none: a hundred thousand times what rounding leaves."""

TANGENT: Final = 1e-3
"""Radians within which two sides that meet go on, or come back, in one direction, as tangent arcs do: that is
no corner. It is a seventeenth of a degree, far less than a protractor shows."""

FAR: Final = 10_000
"""Inches, across or down from a block's top left corner, and of a radius: ten times the longest length that
may be written. An arc of that radius leaves an 8in seam by less than FLATTEN, and squares of such numbers
still keep NEAR as floats."""

EXACT_BITS: Final = 1_024
"""Bits above or below the line of a fraction: 300 digits, far more than any drafted place has. Points built
on points on points may double their digits at every step; past this they go on as floats."""

FLATTEN: Final = 0.001
"""Inches. The greatest distance between an arc and the chords drawn for it: the printed tolerance."""


def near(a: Number, b: Number, tolerance: float = NEAR) -> bool:
    """Whether two lengths are the same length, within the tolerance in inches."""
    return abs(float(a) - float(b)) <= tolerance


def kept_short(a: Number) -> Number:
    """The number itself, as a float where its fraction has more than EXACT_BITS."""
    if isinstance(a, Fraction) and max(a.numerator.bit_length(), a.denominator.bit_length()) > EXACT_BITS:
        return float(a)
    return a


def rounded(a: Number) -> float:
    """`float(a)`, in a third of the time for a Fraction: `float` asks it for each number in turn."""
    if type(a) is float:
        return a
    top, under = a.as_integer_ratio()
    return top / under


def difference(a: Number, b: Number) -> float:
    """a - b, rounded once, just as `float(a - b)` is but three times as soon: no fraction is made or
    reduced."""
    if type(a) is float or type(b) is float:
        return float(a) - float(b)
    top, under = a.as_integer_ratio()
    other_top, other_under = b.as_integer_ratio()
    return (top * other_under - other_top * under) / (under * other_under)
