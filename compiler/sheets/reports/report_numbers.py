"""Numbers and counts as JSON has them. Inches."""

from __future__ import annotations

from fractions import Fraction
from typing import Any, Final

from ...measure.tolerance import Number

DECIMALS: Final = 9
"""Decimals of a length: a billionth of an inch, a thousandth of NEAR. The rest is a float's rounding, which
may differ from machine to machine."""

Record = dict[str, Any]


def number(value: Number) -> int | float:
    """The value as a JSON number: whole where it is whole, never a negative nought."""
    if isinstance(value, Fraction | int) and value.denominator == 1:
        return int(value)
    rounded = round(float(value), DECIMALS)
    return int(rounded) if rounded.is_integer() else rounded


def counts(as_drawn: int, turned: int) -> Record:
    """How many are cut, in the words of every list: as drawn, reversed, and both together."""
    return {"as_drawn": as_drawn, "reversed": turned, "in_all": as_drawn + turned}
