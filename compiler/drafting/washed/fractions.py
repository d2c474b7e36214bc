"""A length to the simplest drafting fraction that fits it: marks of the ruler, or a share of the way."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from ...measure.length import UNITS
from ...measure.tolerance import Number
from .model import Reading, Ruler

INCHES: Final = Ruler("in", (1, 2, 4, 8, 16), (1, 2, 4, 8))
CENTIMETRES: Final = Ruler("cm", (1, 2, 4, 5, 10, 20), (1, 2, 4, 5, 10))

FOLDS: Final = (2, 3, 4)
"""Parts into which a line is folded: halves, thirds, quarters."""

FINEST: Final = 32
"""Parts of a unit that a length is rounded to where no simpler fraction fits."""

SHARE_MOST: Final = 1000
"""Parts of a share that a float of sixteen digits still tells from its neighbours, and more than any grid."""


def ruler_for(size: Number) -> Ruler:
    """The ruler that a block of that size in inches was drafted with. Nobody writes whole centimetres as
    fractions of an inch."""
    metric = isinstance(size, Fraction) and size.denominator % UNITS["cm"].denominator == 0
    return CENTIMETRES if metric else INCHES


def simplest(
    reading: Reading, length: float, tolerance: float, ruler: Ruler
) -> tuple[Number, Fraction | None]:
    """The drafted length of a reading on no grid, and the share of the way where that is simpler."""
    unit = float(UNITS[ruler.unit])
    for parts in range(1, max(ruler.marks) + 1):
        part = round(length / unit * parts)
        if parts in ruler.marks and part > 0 and abs(part * unit / parts - length) <= tolerance:
            return Fraction(part, parts) * UNITS[ruler.unit], None
        if parts in FOLDS and reading.reach is not None:
            reach = float(reading.reach)
            part = round(length / reach * parts)
            if 0 < part < parts and abs(part * reach / parts - length) <= tolerance:
                return Fraction(part, parts) * reading.reach, Fraction(part, parts)
    return Fraction(max(round(length / unit * FINEST), 1), FINEST) * UNITS[ruler.unit], None


def as_written(reading: Reading, length: Number, ruler: Ruler) -> tuple[Number, Fraction | None]:
    """A length on the grid, and the share of the way where the ruler does not show the length."""
    if isinstance(length, Fraction) and (length / UNITS[ruler.unit]).denominator in ruler.easy:
        return length, None
    if reading.reach is None:
        return length if isinstance(length, Fraction) else _exactly(length), None
    if isinstance(length, Fraction) and isinstance(reading.reach, Fraction):
        return length, length / reading.reach
    return length, _exactly(float(length) / float(reading.reach))


def _exactly(number: float) -> Fraction:
    """The fraction that a float was made from."""
    return Fraction(number).limit_denominator(SHARE_MOST)
