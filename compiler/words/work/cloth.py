"""How much cloth to buy."""

from __future__ import annotations

from typing import assert_never

from ...cutting.plan_model import ByLength, ByPiece, FabricPlan
from ...cutting.plans.yardage import YARD
from ...measure.length import UNITS
from ...measure.tolerance import Number
from ..numbers import number_text
from ..phrases import count_of


def bought_words(plan: FabricPlan) -> str:
    """`1 1/8 yd`, `1.2 m`, `2 fat quarters`."""
    match plan.sold:
        case ByLength(unit):
            return length_words(plan.buy, metric=unit == "metres")
        case ByPiece(count, fat_quarters):
            return count_of(count, "fat quarter" if fat_quarters else "scrap")
    assert_never(plan.sold)


def length_words(length: Number, metric: bool) -> str:
    """A length off the bolt."""
    if metric:
        return f"{float(length / UNITS['cm'] / 100):.1f} m"
    return f"{number_text(length / YARD)} yd"


def step_words(plan: FabricPlan) -> str:
    """The steps by which cloth is sold."""
    return "10cm" if plan.sold == ByLength("metres") else "1/8 yd"
