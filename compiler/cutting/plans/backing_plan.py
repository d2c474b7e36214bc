"""A back from panels of the cloth's width, joined side by side or one under the other: whichever takes less.

Both ways are reckoned (SOURCES 2.8: 65 x 78in takes 130in one way and 156in the other). Inches.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from ...measure.record import record
from ...measure.tolerance import NEAR, Number
from ..handling import Upright
from ..needs import BackingNeed
from ..plan_model import Cut
from ..reasons import Panels
from .lots import JOIN, PANEL, Cloth, Lot

Size = tuple[Number, Number]
"""Width and length in inches."""


@record
class Joined:
    """Panels of one way of joining: how many whole widths, the last one's width, all of one length."""

    whole: int
    last: Fraction
    length: Fraction
    upright: bool  # the seams run down the back

    def cloth(self) -> Fraction:
        """Inches off the bolt."""
        return (self.whole + 1) * self.length


def panels_for(across: Number, down: Number, cloth: Cloth, upright: bool) -> Joined:
    """Panels side by side to `across`, each `down` long."""
    span = cloth.inches(cloth.spans[-1])
    count = max(1, ceil((float(across) - float(JOIN) - NEAR) / float(span - JOIN)))
    last = cloth.steps(float(across) - (count - 1) * float(span - JOIN))
    return Joined(count - 1, cloth.inches(last), cloth.inches(cloth.steps(down)), upright)


def best_panels(need: BackingNeed, cloth: Cloth) -> Joined:
    """The way that takes less cloth; seams down the back where both take the same, or where the print runs
    along."""
    down = panels_for(need.width, need.height, cloth, True)
    across = panels_for(need.height, need.width, cloth, False)
    return across if cloth.turnable and across.cloth() < down.cloth() else down


def backing_cuts(need: BackingNeed, index: int, cloth: Cloth) -> tuple[list[Cut], list[Lot], list[Size]]:
    """The cuts (whole widths, then the last panel), their boxes, and every panel's width and length."""
    panels = best_panels(need, cloth)
    span = cloth.inches(cloth.spans[-1])
    cuts, lots = [], []
    sizes: list[Size] = []
    reason = Panels(("down" if panels.upright else "across") if panels.whole else "")
    for width, count in ((span, panels.whole), (panels.last, 1)):
        if not count:
            continue
        cuts.append(
            Cut(
                index,
                need.fabric,
                "backing",
                "rectangle",
                width,
                panels.length,
                count,
                count,
                1,
                0.0,
                reason,
                lies=None if cloth.turnable else Upright(),
            )
        )
        lots.append(
            Lot(index + len(cuts) - 1, cloth.steps(width), cloth.steps(panels.length), count, False, PANEL)
        )
        sizes += [(width, panels.length)] * count
    return cuts, lots, sizes
