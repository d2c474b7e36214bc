"""How a reader is spoken to: in which units lengths are put into sentences."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal

from ..measure.length import UNITS
from ..measure.tolerance import Number
from .numbers import exact_text, ruler_text

CENTIMETRE_DIGITS: Final = 2
"""Decimals of a centimetre that are told: a tenth of a millimetre, finer than any tape."""

FINE_DIGITS: Final = 3
"""Decimals of lengths that no ruler shows."""


@dataclass(frozen=True, slots=True)
class Say:
    """Puts numbers into words. Lengths come in as inches, whatever they are told in."""

    unit: Literal["in", "cm"] = "in"

    def length(self, inches: Number) -> str:
        """`3 7/8in`; `9.84cm`."""
        if self.unit == "in":
            return ruler_text(inches)
        shown = f"{float(inches / UNITS['cm']):.{CENTIMETRE_DIGITS}f}".rstrip("0").rstrip(".")
        return f"{'0' if shown == '-0' else shown}cm"

    def fine(self, inches: Number) -> str:
        """A length too small for a ruler: `0.012in`; `0.030cm`."""
        return f"{float(inches / UNITS[self.unit]):.{FINE_DIGITS}f}{self.unit}"

    def whole(self, inches: Number) -> str:
        """A length that is a bound and no measure: `10,000in`; `25,400cm`."""
        return f"{round(inches / UNITS[self.unit]):,}{self.unit}"

    def exact(self, inches: Fraction) -> str:
        """`1/64in`: exactly, whatever its denominator; centimetres as any other length."""
        return f"{exact_text(inches)}in" if self.unit == "in" else self.length(inches)

    def size(self, width: Number, height: Number) -> str:
        """`8in x 8in`."""
        return f"{self.length(width)} x {self.length(height)}"


INCHES: Final = Say("in")
CENTIMETRES: Final = Say("cm")
