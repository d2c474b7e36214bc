"""Lengths as the maker's own ruler shows them: in inches and their parts, or in centimetres."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final, Literal

from ..measure.length import UNITS
from ..measure.marks import mark_up, metric
from ..measure.tolerance import NEAR, Number, near
from .numbers import number_text

FINEST: Final = 32
"""Marks to the inch that a ruler may show; other lengths are given in decimals, thirds too."""

DIGITS: Final = 3
"""Decimals of a length that lies on no mark."""


def length_text(length: Number, step: Fraction) -> str:
    """`3 7/8in`, or `9.75cm` for a ruler in centimetres."""
    return number_on(length, step) + unit_on(step)


def number_on(length: Number, step: Fraction) -> str:
    """The number of it alone: `3 7/8`, or `9.75` for a ruler in centimetres."""
    if metric(step):
        return _decimals(float(length) / float(UNITS["cm"]), DIGITS)
    if abs(float(length) * FINEST - round(float(length) * FINEST)) > NEAR * FINEST:
        return _decimals(float(length), DIGITS)
    return number_text(length)


def unit_on(step: Fraction) -> Literal["in", "cm"]:
    """What a ruler is marked in."""
    return "cm" if metric(step) else "in"


def length_up(length: Number, step: Fraction) -> str:
    """The length as it is where the ruler has a mark for it, else in decimals, never less than it is."""
    mark = mark_up(length, step if metric(step) else Fraction(1, FINEST))
    return length_text(mark, step) if near(mark, length) else part_text(part_up(length, step), step)


def part_up(length: Number, step: Fraction, digits: int = DIGITS) -> Fraction:
    """Inches up to so many decimals of what the ruler is marked in."""
    part = _unit(step) / Fraction(10**digits)
    return ceil((Fraction(length) - Fraction(NEAR) / 10) / part) * part


def part_text(length: Fraction, step: Fraction, digits: int = DIGITS) -> str:
    """A length in so many decimals, unless it lies on a mark."""
    if near(mark_up(length, step), length):
        return length_text(length, step)
    return _decimals(float(length / _unit(step)), digits) + unit_on(step)


def _unit(step: Fraction) -> Fraction:
    return UNITS[unit_on(step)]


def _decimals(value: float, digits: int) -> str:
    return f"{value:.{digits}f}".rstrip("0").rstrip(".")
