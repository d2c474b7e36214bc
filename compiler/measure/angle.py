"""Exact degrees, and their sines. Headings run clockwise as seen from up; x is right and y is down."""

from __future__ import annotations

from fractions import Fraction
from math import atan2, cos, degrees, radians, sin
from typing import Final

from .tolerance import ROUNDED, Number

QUARTERS: Final = ((1, 0), (0, 1), (-1, 0), (0, -1))  # (cosine, sine) of 0, 90, 180, 270 degrees
DIAGONALS: Final = ((1, -1), (1, 1), (-1, 1), (-1, -1))  # directions of headings 45, 135, 225, 315


def cosine_sine(angle: Fraction | float) -> tuple[Number, Number]:
    """Cosine and sine of degrees; whole numbers at the quarter turns."""
    quarter, rest = divmod(angle, 90)
    if rest == 0:
        return QUARTERS[int(quarter) % 4]
    return cos(radians(float(angle))), sin(radians(float(angle)))


def whole_degrees(angle: Fraction | float, slack: float = ROUNDED) -> Fraction | float:
    """The angle; exact where it is nearly a whole number of degrees, so that square pieces keep exact
    corners."""
    return Fraction(round(angle)) if abs(float(angle) - round(angle)) < slack else angle


def direction(heading: Fraction | float) -> tuple[Number, Number]:
    """A step (right, down) along a heading. Whole numbers at multiples of 45 degrees, so not of length 1
    there: for lines, where only the direction counts."""
    eighth, rest = divmod(heading, 45)
    if rest == 0 and eighth % 2:
        return DIAGONALS[int(eighth) % 8 // 2]
    cosine, sine = cosine_sine(heading)
    return sine, -cosine


def heading_of(right: Number, down: Number) -> float:
    """The heading of a step, 0 <= heading < 360."""
    return degrees(atan2(float(right), -float(down))) % 360.0
