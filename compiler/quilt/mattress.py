"""Sizes of mattresses, and the quilt that a bed wants.

The four grown-up sizes are one class list (SOURCES 4.5: 39 x 75, 54 x 75, 60 x 80 and 76 x 80in, read from
the sizes of covers with a 12in drop; others say 38in for the twin and 53in for the double). The crib is the
inside of a full-size crib by 16 CFR 1508.3 (28 x 52 3/8in).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final, Literal

from ..measure.record import record
from ..measure.tolerance import Number


@record
class Mattress:
    """Width and length in inches, and the list it is from, whose name is in words."""

    width: Fraction
    length: Fraction
    source: Literal["class-list", "crib-rule"]


MATTRESSES: Final[dict[str, Mattress]] = {
    "crib": Mattress(Fraction(28), Fraction(419, 8), "crib-rule"),
    "twin": Mattress(Fraction(39), Fraction(75), "class-list"),
    "single": Mattress(Fraction(39), Fraction(75), "class-list"),
    "double": Mattress(Fraction(54), Fraction(75), "class-list"),
    "full": Mattress(Fraction(54), Fraction(75), "class-list"),
    "queen": Mattress(Fraction(60), Fraction(80), "class-list"),
    "king": Mattress(Fraction(76), Fraction(80), "class-list"),
}

MISS_MOST: Final = Fraction(1)
"""Inches by which a quilt may miss its bed before it is worth a remark."""


def covered_size(mattress: Mattress, drop: Number) -> tuple[Number, Number]:
    """Width and length of a quilt with that drop on two sides and the foot."""
    return mattress.width + 2 * drop, mattress.length + drop
