"""Lengths with units, in and out. A length is a Fraction of an inch; an inch is 2.54cm exactly."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

UNITS: Final[dict[str, Fraction]] = {
    "in": Fraction(1),
    "cm": Fraction(50, 127),  # 1in = 2.54cm exactly (CSS Values and Units 3, absolute lengths)
    "mm": Fraction(5, 127),
}

POINTS_PER_INCH: Final = 72  # ISO 32000: default user space is 1/72 inch


def exact_number(text: str) -> Fraction | None:
    """The exact value of `3`, `1.25`, `3/4`, `1 1/2` or a negative of these; None where it divides by
    zero."""
    sign = -1 if text.strip().startswith("-") else 1
    total = Fraction(0)
    for part in text.strip().lstrip("-").split():
        top, slash, bottom = part.partition("/")
        if slash and int(bottom) == 0:
            return None
        total += Fraction(top) / int(bottom) if slash else Fraction(top)
    return sign * total


def exact_root(square: Fraction) -> Fraction | float:
    """The square root, a Fraction where it has one."""
    from math import isqrt, sqrt

    top, bottom = isqrt(square.numerator), isqrt(square.denominator)
    if top * top == square.numerator and bottom * bottom == square.denominator:
        return Fraction(top, bottom)
    return sqrt(square)


def change_percent(drafted: float, washed: float) -> float:
    """The dimensional change of ISO 5077: (washed - drafted) / drafted x 100, so negative where it shrank."""
    return (washed - drafted) / drafted * 100
