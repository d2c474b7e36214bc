"""A quilt to its cutting plan: a cut for every need, and for every fabric how the cloth is cut and how much
to buy."""

from __future__ import annotations

from cmath import exp, phase
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from ...diagnostics.diagnostic import Diagnostic, Outcome, in_order
from ...geometry.stroke import place_of
from ...measure.marks import RULER_STEP
from ...measure.tolerance import ALIKE
from ...words.messages import cloth as complain
from ..handling import JoinStrips, LongWay
from ..methods.method import flat_corners, polygon_area, to_corner
from ..methods.offers import with_offers
from ..methods.rotary import choose_cut, exact_area
from ..model import Template
from ..needs import Fabric, Need, Quilt
from ..plan_model import Cut, CuttingPlan, FabricPlan
from .backing_plan import backing_cuts
from .binding_plan import binding_cut
from .choosing import best_lots
from .fabric_plan import Ordered, plan_fabric
from .lots import JOIN, Cloth, Lot, cloth_of, join_of, joined_over, lots_of
from .yardage import Margin

MARGIN: Final = Margin()


def plan_cutting(
    quilt: Quilt, ruler_step: Fraction = RULER_STEP, margin: Margin = MARGIN
) -> Outcome[CuttingPlan]:
    """The plan, and what there is to say about cloth that is not enough. A ruler in centimetres buys by the
    metre."""
    orders = {fabric.name: Order(fabric, ruler_step) for fabric in quilt.fabrics}
    cuts: list[Cut] = []
    for index, need in enumerate(quilt.needs):
        order = orders[need.fabric]
        cut, area = need_cut(quilt, need, index, order.fabric, ruler_step)
        cuts.append(cut)
        order.add_cut(cut, need, area)
    said: list[Diagnostic] = []
    _bind(quilt, orders, cuts)
    said += _back(quilt, orders, cuts)
    plans: list[FabricPlan] = []
    for order in orders.values():
        if order.ways:
            ordered = order.ordered()
            plan, remarks = plan_fabric(ordered, margin)
            said += remarks
            plans += [plan] if plan is not None else []
            cuts = [_joined(cut, ordered.lots, at, ruler_step) for at, cut in enumerate(cuts)]
    outcome = Outcome(
        CuttingPlan(with_offers(quilt, cuts, ruler_step), tuple(plans), ruler_step), in_order(said)
    )
    return Outcome(None, outcome.diagnostics) if outcome.failed else outcome


class Order:
    """What one fabric is cut into, gathered."""

    def __init__(self, fabric: Fabric, step: Fraction) -> None:
        self.fabric = fabric
        self.cloth: Cloth = cloth_of(fabric, step)
        self.ways: list[Sequence[Sequence[Lot]]] = []  # of each cut, what it may be cut as
        self.area = 0.0
        self.panels: list[tuple[Fraction | float, Fraction | float]] = []

    def add(self, ways: Sequence[Sequence[Lot]], area: float) -> None:
        """Boxes to cut, in one way or another, and the bare area of what they are for."""
        self.ways.append(ways)
        self.area += area

    def add_cut(self, cut: Cut, need: Need, area: float = 0.0) -> None:
        """The boxes of a need's cut."""
        self.add(lots_of(cut.need, cut, need, self.cloth), area)

    def ordered(self) -> Ordered:
        """Everything gathered."""
        return Ordered(
            self.fabric, self.cloth, best_lots(self.ways, self.cloth), self.area, tuple(self.panels)
        )


def cuts_of(quilt: Quilt, ruler_step: Fraction = RULER_STEP) -> tuple[Cut, ...]:
    """A cut for every need, with no cloth planned."""
    fabrics = {fabric.name: fabric for fabric in quilt.fabrics}
    return tuple(
        need_cut(quilt, need, index, fabrics[need.fabric], ruler_step)[0]
        for index, need in enumerate(quilt.needs)
    )


def need_cut(quilt: Quilt, need: Need, index: int, fabric: Fabric, step: Fraction) -> tuple[Cut, float]:
    """The cut for one need, and the area of its pieces with their allowances."""
    template = _template_of(quilt, need)
    whole = quilt.blocks[need.block].draft.width if need.block is not None else None
    cut = choose_cut(need, step, index, fabric, whole)
    pieces = need.count + need.reversed
    if cut.kind != "template" or template is None:
        return cut, pieces * exact_area(need)
    corners = laid_template(template, need)
    if corners is None:
        return cut, pieces * exact_area(need)
    width, height = max(place.real for place in corners), max(place.imag for place in corners)
    outline = tuple((place.real, place.imag) for place in corners)
    return replace(cut, width=width, height=height, outline=outline), pieces * polygon_area(corners)


def _template_of(quilt: Quilt, need: Need) -> Template | None:
    if need.block is None:
        return None
    return next((each for each in quilt.blocks[need.block].templates if each.label == need.label), None)


def laid_template(template: Template, need: Need) -> tuple[complex, ...] | None:
    """The template's cut outline, its points trimmed, turned to lie as the need does."""
    drawn, lying = ([place_of(edge.start) for edge in edges] for edges in (template.sew, need.outline))
    if len(drawn) != len(lying) or len(drawn) < 2:
        return None
    turn = exp(1j * phase((lying[1] - lying[0]) / (drawn[1] - drawn[0])))
    if any(abs((a - lying[0]) - (b - drawn[0]) * turn) > ALIKE for a, b in zip(lying, drawn, strict=True)):
        return None
    return to_corner([place * turn for place in flat_corners(template.cut)])


def _bind(quilt: Quilt, orders: dict[str, Order], cuts: list[Cut]) -> None:
    binding = quilt.binding
    if binding is None:
        return
    order = orders[binding.fabric]
    cut, lots = binding_cut(binding, len(cuts), order.cloth)
    cuts.append(replace(cut, need=-1))
    order.add([lots], float(binding.length) * float(binding.strip_width))


def _back(quilt: Quilt, orders: dict[str, Order], cuts: list[Cut]) -> list[Diagnostic]:
    backing = quilt.backing
    if backing is None:
        return []
    order = orders[backing.fabric]
    if order.cloth.sizes:
        return [complain.backing_not_off_bolt(order.fabric)]
    made, lots, panels = backing_cuts(backing, len(cuts), order.cloth)
    cuts += [replace(cut, need=-1) for cut in made]
    order.add([lots], float(backing.width) * float(backing.height))
    order.panels += panels
    return []


def _joined(cut: Cut, lots: Sequence[Lot], at: int, step: Fraction) -> Cut:
    """The cut with the number of strips it is joined from, where its strips are longer than the cloth is
    wide."""
    own = [lot for lot in lots if lot.cut == at]
    if cut.kind != "strip" or cut.part == "binding" or not own or not any(lot.joins for lot in own):
        return cut
    lies = cut.lies
    if isinstance(lies, LongWay) and cut.height > cut.width:
        lies = replace(lies, shorter=True)
    join = JoinStrips(join_of(min(cut.width, cut.height)) > JOIN, joined_over(cut, step))
    return replace(cut, joined=sum(lot.count for lot in own), lies=lies, then=(join, *cut.then))
