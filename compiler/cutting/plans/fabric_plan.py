"""One fabric's boxes to its plan: how the cloth is cut, what lies where, and how much of it to buy.
Inches."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from ...diagnostics.diagnostic import Diagnostic
from ...measure.marks import metric
from ...measure.record import record
from ...measure.tolerance import Number
from ...words.messages import cloth as complain
from ..instruction import Boxes
from ..needs import Fabric, Scrap
from ..plan_model import ByLength, ByPiece, ClothPlan, FabricPlan, PlacedCut, Strip
from .edges import Marks, piece_of, to_marks, trimmed
from .guillotine import Box, Kind, Region, boxes_in
from .instructions import Stuff, slices_of
from .lots import Cloth, Lot, kind_of, kinds_of
from .scraps import pack_scraps, scraps_needed
from .strips import length_of, pack_bolt
from .yardage import Margin, length_to_buy


@record
class Ordered:
    """What a fabric is cut into: the boxes, the bare area of their pieces, and the panels of a back."""

    fabric: Fabric
    cloth: Cloth
    lots: tuple[Lot, ...]
    area: float
    panels: tuple[tuple[Number, Number], ...] = ()


def plan_fabric(ordered: Ordered, margin: Margin) -> tuple[FabricPlan | None, list[Diagnostic]]:
    """The plan; None, with the reason, where the cloth is not enough."""
    wide = [lot for lot in ordered.lots if not ordered.cloth.takes(lot)]
    if wide and not ordered.cloth.sizes:
        largest = max(wide, key=lambda lot: min(lot.width, lot.height))
        size = ordered.cloth.size(largest.width, largest.height)
        return None, [complain.piece_too_wide(ordered.fabric, largest.boxes, size, ordered.cloth.step)]
    dealer = _Dealer(ordered)
    return _from_scraps(ordered, dealer) if ordered.cloth.sizes else (_from_bolt(ordered, dealer, margin), [])


class _Dealt(NamedTuple):
    """A box where it lies on the cloth, and what it is for."""

    box: Box
    lot: Lot

    def reaches(self, across: bool) -> bool:
        """Whether it may end at the cloth's edge, past the last mark: so may templates, which are cut out
        round, and strips to be joined that run that way."""
        wider = self.box.width >= self.box.height
        return self.lot.run is not None or (self.lot.joins and wider == across)

    def placed(self, marks: Marks) -> tuple[PlacedCut, ...]:
        """What is cut out of it, in inches from the cloth's corner."""
        lot, box, step = self.lot, self.box, marks.step
        turned = (box.width, box.height) != (lot.width, lot.height)
        left, top, right, bottom = marks.box(box.left, box.top, box.width, box.height)
        if lot.run is None:
            turn = 90.0 if turned != lot.across else 0.0
            return (PlacedCut(lot.cut, left, top, right - left, bottom - top, turn, slant=lot.slant),)
        x, y, thick = float(left), float(top), float(lot.height * step)
        pieces = []
        for laid, (wide, high) in zip(lot.run.laid, lot.run.sizes, strict=True):
            turn = laid.pose.turned + (90.0 if turned else 0.0)
            spot = (
                (x + thick - laid.down - high, y + laid.left, high, wide)
                if turned
                else (x + laid.left, y + laid.down, wide, high)
            )
            pieces.append(PlacedCut(lot.cut, *spot, turn % 360, laid.pose.reversed))
        return tuple(pieces)


class _Dealer:
    """The kinds of boxes there are, and whose box each one that is cut becomes: in the order of the cuts."""

    def __init__(self, ordered: Ordered) -> None:
        self.cloth = ordered.cloth
        self.kinds = [Kind(*each) for each in kinds_of(ordered.lots)]
        self.lots: list[list[Lot]] = [[] for _ in self.kinds]
        for lot in ordered.lots:
            self.lots[self.kinds.index(Kind(*kind_of(lot)))].append(lot)
        self.counts = [sum(lot.count for lot in lots) for lots in self.lots]
        self.dealt = [0] * len(self.kinds)

    @property
    def boxes(self) -> list[Boxes]:
        """What each kind is."""
        return [_boxes_of(lots) for lots in self.lots]

    def next_lot(self, kind: int) -> Lot:
        """The lot that the next box of the kind is for."""
        number = self.dealt[kind]
        self.dealt[kind] += 1
        for lot in self.lots[kind]:
            if number < lot.count:
                return lot
            number -= lot.count
        raise AssertionError(f"more boxes were cut than asked for: {number + 1} too many")

    def deal(self, region: Region, left: int, top: int) -> list[_Dealt]:
        """Every box of a region, and the lot that it is for."""
        return [_Dealt(box, self.next_lot(box.kind)) for box in boxes_in(region, left, top)]


def _plan_of(region: Region, dealer: _Dealer, scrap: Scrap | None, marked: bool = False) -> ClothPlan:
    """How a cloth is cut, strip by strip; None off the bolt. `marked`: a scrap that is cut as if it ended
    at its last marks."""
    parts, axis = region.parts or (region,), region.axis or "across"
    strips: list[tuple[int, int, list[_Dealt]]] = []
    end = 0
    for part in parts:
        start = end
        end += part.height if axis == "across" else part.width
        left, top = (0, start) if axis == "across" else (start, 0)
        strips.append((start, end, dealer.deal(part, left, top)))
    marks, trim = to_marks(dealer.cloth.step, (region.width, region.height)), None
    if scrap is not None and not marked:
        dealt = [each for _, _, boxes in strips for each in boxes]
        across = all(each.reaches(True) for each in dealt if each.box.right == region.width)
        down = all(each.reaches(False) for each in dealt if each.box.bottom == region.height)
        marks, trim = piece_of(marks, scrap.width, scrap.height, (across, down))
    plan = ClothPlan(
        marks.width,
        marks.height,
        slices_of(region, Stuff(marks, dealer.boxes, scrap is not None)),
        tuple(
            Strip(
                number if boxes or number == 1 else 0,
                marks.edge(start, axis),
                marks.edge(end, axis),
                tuple(placed for each in boxes for placed in each.placed(marks)),
            )
            for number, (start, end, boxes) in enumerate(strips, 1)
        ),
        axis,
    )
    return plan if trim is None or scrap is None else trimmed(plan, trim, scrap.width, scrap.height)


def _boxes_of(lots: Sequence[Lot]) -> Boxes:
    """What boxes of one size are, whichever cuts they are for."""
    if len({lot.boxes for lot in lots}) > 1 and any(lot.run for lot in lots):
        return Boxes("strip", "template") if all(lot.run for lot in lots) else Boxes("piece")
    return lots[0].boxes


def _from_bolt(ordered: Ordered, dealer: _Dealer, margin: Margin) -> FabricPlan:
    cloth, fabric = ordered.cloth, ordered.fabric
    strips = pack_bolt(dealer.kinds, dealer.counts, cloth.spans[-1])
    whole = Region(cloth.spans[-1], length_of(strips), "across", tuple(strips))
    used = cloth.inches(whole.height)
    plan = _plan_of(whole, dealer, None)
    by_metre = metric(cloth.step) if margin.sold is None else margin.sold == "metres"
    over = margin.of(used, by_metre)
    buy = length_to_buy(used, over, fabric.shrinkage, by_metre)
    return FabricPlan(
        fabric.name,
        fabric.usable_width,
        (plan,),
        len(strips),
        used,
        ordered.area,
        over,
        buy,
        ByLength("metres" if by_metre else "yards"),
        ordered.panels,
    )


def _from_scraps(ordered: Ordered, dealer: _Dealer) -> tuple[FabricPlan | None, list[Diagnostic]]:
    cloth, fabric = ordered.cloth, ordered.fabric
    said = _small_scraps(ordered, dealer)
    packed = pack_scraps(dealer.kinds, dealer.counts, cloth.sizes)
    if any(packed.left):
        missing = [
            (boxes, count, cloth.size(kind.width, kind.height))
            for boxes, count, kind in zip(dealer.boxes, packed.left, dealer.kinds, strict=True)
            if count
        ]
        needed = scraps_needed(dealer.kinds, dealer.counts, cloth.sizes)
        return None, [*said, complain.cloth_short(fabric, missing, needed, cloth.step)]
    plans = tuple(
        replace(
            _plan_of(cut.region, dealer, fabric.scraps[cut.scrap], marked=bool(fabric.shrinkage)),
            scrap=cut.scrap,
        )
        for cut in packed.cuts
    )
    used = sum((plan.length for plan in plans), cloth.inches(0))
    scraps = [fabric.scraps[cut.scrap] for cut in packed.cuts]
    quarters = all(scrap.fat_quarter for scrap in scraps)
    strips = sum(len(cut.region.parts) if cut.region.axis == "across" else 1 for cut in packed.cuts)
    buy = sum((scrap.height for scrap in scraps), cloth.inches(0))
    return FabricPlan(
        fabric.name,
        max(scrap.width for scrap in fabric.scraps),
        plans,
        strips,
        used,
        ordered.area,
        cloth.inches(0),
        buy,
        ByPiece(len(scraps), quarters),
    ), said


def _small_scraps(ordered: Ordered, dealer: _Dealer) -> list[Diagnostic]:
    """Remarks on scraps, each size once, that hold no piece at all."""
    said: dict[tuple[Number, Number], Diagnostic] = {}
    smallest = min(dealer.kinds, key=lambda kind: kind.width * kind.height, default=None)
    for scrap, (width, height) in zip(ordered.fabric.scraps, ordered.cloth.sizes, strict=True):
        fits = any(
            (kind.width <= width and kind.height <= height)
            or (kind.turnable and kind.height <= width and kind.width <= height)
            for kind in dealer.kinds
        )
        if not fits and smallest is not None:
            least = ordered.cloth.size(smallest.width, smallest.height)
            remark = complain.scrap_too_small(ordered.fabric, scrap, least, ordered.cloth.step)
            said.setdefault((scrap.width, scrap.height), remark)
    return list(said.values())
