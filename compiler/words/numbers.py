"""Numbers and lengths in words: 1.125 is `1 1/8in`."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from ..measure.marks import HALF_MILLIMETRE
from ..measure.tolerance import NEAR, Number

READABLE: Final = (1, 2, 4, 8, 16, 32, 3)
"""Denominators that a reader takes in at a glance, in the order they are tried."""

DECIMALS: Final = 3
"""Of a number that is no such fraction."""


def ruler_text(length: Number, unit: str = "in") -> str:
    """`3 7/8in`, `1/2in`, `6in`; `20cm` where that is the whole measure; else three decimals: `2.828in`."""
    if unit == "in" and not _readable(length) and (halves := _half_millimetres(length)) is not None:
        return f"{halves / 20:g}cm"
    return number_text(length) + unit


def reads_in_inches(length: Number) -> bool:
    """Whether a length is a fraction of an inch that a reader takes in at a glance."""
    return _readable(length)


def reads_exactly(length: Number) -> bool:
    """Whether `ruler_text` gives the length as it is, in a fraction of an inch or in centimetres."""
    return _readable(length) or _half_millimetres(length) is not None


def _readable(value: Number) -> bool:
    """Whether a number is shown as a fraction that a reader takes in at a glance, or as a whole number."""
    plain = float(value)
    in_parts = any(abs(plain - round(plain * each) / each) <= NEAR for each in READABLE)
    return in_parts or round(plain, DECIMALS).is_integer()


def _half_millimetres(length: Number) -> int | None:
    """How many of them a length is; None where it is no whole number of them."""
    halves = float(length) / HALF_MILLIMETRE
    return round(halves) if abs(halves - round(halves)) * HALF_MILLIMETRE <= NEAR else None


def number_text(value: Number) -> str:
    """The number alone: `3 7/8`, `-1/2`, `6`, `2.828`."""
    if value < 0:
        return "-" + number_text(-value)
    for denominator in READABLE:
        top = round(float(value) * denominator)
        if abs(float(value) - top / denominator) <= NEAR:
            whole, rest = divmod(Fraction(top, denominator), 1)
            if rest == 0:
                return str(whole)
            return f"{whole} {rest}" if whole else str(rest)
    return f"{float(value):.{DECIMALS}f}".rstrip("0").rstrip(".")


def exact_text(value: Fraction) -> str:
    """The number exactly, whatever its denominator: `2 2/3`, `-1/7`."""
    if value < 0:
        return "-" + exact_text(-value)
    whole, rest = divmod(value, 1)
    return f"{whole} {rest}" if whole and rest else str(whole or rest)


def degrees_text(angle: float) -> str:
    """`45°`, `22.5°`."""
    return f"{angle:.1f}".rstrip("0").rstrip(".") + "°"
