"""The marks of a ruler: the nearest, and the next one up."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final

from .length import UNITS
from .tolerance import NEAR, Number

RULER_STEP: Final = Fraction(1, 8)
"""Inches between the marks that rotary cutting goes by (common practice, no published source)."""

HALF_MILLIMETRE: Final = 0.05 / 2.54
"""Inches. The finest that a centimetre ruler can be read to, and that metric drafts are drawn in."""


def nearest_mark(length: Number, step: Fraction = RULER_STEP) -> Fraction:
    """The ruler mark nearest to the length. For showing, never for a cut."""
    return round(Fraction(length) / step) * step


def mark_up(length: Number, step: Fraction = RULER_STEP) -> Fraction:
    """The first ruler mark not under the length. A cut is never rounded down."""
    return ceil((Fraction(length) - Fraction(NEAR)) / step) * step


def metric(step: Fraction) -> bool:
    """Whether a ruler is marked in centimetres: its step is no binary part of an inch."""
    bottom = step.denominator
    return bottom & (bottom - 1) != 0


def to_trim(inches: Fraction, step: Fraction) -> Fraction:
    """So much over, in the round figures of who measures by that ruler: 2in or 5cm, 6in or 15cm."""
    five = 5 * UNITS["cm"]
    return round(inches / five) * five if metric(step) else inches
