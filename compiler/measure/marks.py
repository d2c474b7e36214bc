"""The marks of a ruler: the nearest, and the next one up."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final

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
