"""The smallest piece of cloth that shops sell cut of those that hold all that is cut from one fabric."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from ..needs import FAT_QUARTER, Fabric, Quilt, Scrap
from ..plan_model import Cut, CuttingPlan
from .fabric_plan import plan_fabric
from .plan import Order
from .yardage import Margin

SOLD: Final = (
    Scrap(Fraction(5), Fraction(5)),
    Scrap(Fraction(10), Fraction(10)),
    Scrap(Fraction(21), Fraction(9)),
    FAT_QUARTER,
)
"""Squares of 5in and 10in, fat eighth and fat quarter, by area (common practice; fat eighth and fat quarter:
SOURCES 2.4)."""


def sold_piece(quilt: Quilt, plan: CuttingPlan, fabric: Fabric) -> Scrap | None:
    """The piece; None where a length off the bolt is less cloth, or nothing smaller holds it all."""
    (bolt,) = (each for each in plan.fabrics if each.fabric == fabric.name)
    cuts = [cut for cut in plan.cuts if cut.fabric == fabric.name]
    for piece in SOLD:
        area = piece.width * piece.height
        large = any(_over(cut, piece) for cut in cuts)
        if not large and bolt.area <= area <= bolt.buy * fabric.usable_width:
            cloth = replace(fabric, scraps=(piece,))
            order = Order(cloth, plan.ruler_step)
            for cut in cuts:
                order.add_cut(cut, quilt.needs[cut.need])
            if plan_fabric(order.ordered(), Margin())[0] is not None:
                return piece
    return None


def _over(cut: Cut, piece: Scrap) -> bool:
    """Whether a cut is larger than a piece of cloth, whichever way it lies."""
    short, long = sorted((cut.width, cut.height))
    return short > min(piece.width, piece.height) or long > max(piece.width, piece.height)
