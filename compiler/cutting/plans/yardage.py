"""From the length that a plan takes to the length to buy. Inches."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final, Literal

from ...measure.length import UNITS
from ...measure.marks import RULER_STEP, mark_up
from ...measure.record import record
from ...measure.tolerance import NEAR, Number

YARD: Final = Fraction(36)
YARD_STEP: Final = YARD / 8  # cloth is sold by the eighth of a yard
METRE_STEP: Final = 10 * UNITS["cm"]  # or by ten centimetres


@record
class Margin:
    """Cloth over what the plan takes, for squaring up and mistakes: a share of it, and at least so many
    inches.

    Five in a hundred and an inch: common practice, no published source. `sold`: what the length to buy is
    counted in; None: as the maker's ruler is.
    """

    share: Fraction = Fraction(1, 20)
    least: Fraction = Fraction(1)
    sold: Literal["yards", "metres"] | None = None

    def of(self, used: Number, metric: bool = False) -> Fraction:
        """The margin on a length, up to the figure that is printed: a whole eighth of an inch or half
        centimetre."""
        least = max(Fraction(used) * self.share, self.least) if used else Fraction(0)
        return mark_up(least, UNITS["cm"] / 2 if metric else RULER_STEP)


def length_to_buy(used: Number, margin: Number, shrinkage: Fraction, metric: bool) -> Fraction:
    """The length to ask for: to have L after washing, L / (1 - shrinkage), up to the step it is sold by.

    Dividing, not multiplying (ISO 5077's change is a share of what was bought; SOURCES 9).
    """
    step = METRE_STEP if metric else YARD_STEP
    needed = (Fraction(used) + Fraction(margin)) / (1 - shrinkage)
    return ceil((needed - Fraction(NEAR)) / step) * step
