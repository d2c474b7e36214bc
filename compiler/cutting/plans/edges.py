"""A piece of cloth as large as it is: plans count in marks of the ruler, and a fat quarter of 21in is
53.34cm wide, 213 marks of a quarter centimetre and a little more.

What is left over reaches to the true edge, and so do strips that are joined end to end: they are as long
as the cloth. Any other box at the edge would come out too large, so there the cloth is trimmed to the mark
first. Inches.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace

from ...measure.tolerance import NEAR, Number, near
from ..instruction import TrimPiece
from ..plan_model import ClothPlan, PlacedCut, Slice


@dataclass(frozen=True, slots=True)
class Lying:
    """Cuts by their numbers: those of which strips are joined, and those that are cut round templates."""

    joined: Collection[int]
    templates: Collection[int]


def to_edges(plan: ClothPlan, width: Number, length: Number, lying: Lying) -> ClothPlan:
    """The plan of a piece that is so large, and was planned to the last mark within that."""
    wide: Number | None = None
    high: Number | None = None
    for across, true in ((True, width), (False, length)):
        marked = plan.width if across else plan.length
        if true - marked <= NEAR:
            continue
        ends = [each for each in plan.placed if near(_end(each, across), marked)]
        if all(each.cut in lying.templates or _joins(each, across, lying) for each in ends):
            plan = _grown(plan, across, marked, true, lying)
        elif across:
            wide = marked
        else:
            high = marked
    if wide is None and high is None:
        return plan
    trim = TrimPiece(wide, high)
    if not plan.slices:
        return _trimmed(plan, width, length, trim)
    first = plan.slices[0]
    first = replace(first, instructions=(trim, *first.instructions))
    return replace(plan, slices=(first, *plan.slices[1:]))


def _trimmed(plan: ClothPlan, width: Number, length: Number, trim: TrimPiece) -> ClothPlan:
    """The plan of a piece that holds one box: all that is cut is what it is larger."""
    cuts: list[Slice] = []
    if width - plan.width > NEAR:
        cuts.append(Slice(1, (0, 0, width, length), "along", plan.width, (trim,)))
    if length - plan.length > NEAR:
        region = (0, 0, plan.width, length)
        cuts.append(Slice(len(cuts) + 1, region, "across", plan.length, () if cuts else (trim,)))
    return replace(plan, width=width, length=length, slices=tuple(cuts))


def _end(placed: PlacedCut, across: bool) -> Number:
    return placed.left + placed.width if across else placed.top + placed.height


def _joins(placed: PlacedCut, across: bool, lying: Lying) -> bool:
    """Whether a box is a strip to be joined that runs that way."""
    return placed.cut in lying.joined and (placed.width >= placed.height) == across


def _grown(plan: ClothPlan, across: bool, marked: Number, true: Number, lying: Lying) -> ClothPlan:
    """The plan with all that ends at the last mark ending at the edge."""

    def box(cut: Slice) -> Slice:
        left, top, right, bottom = cut.region
        if across:
            return replace(cut, region=(left, top, true if near(right, marked) else right, bottom))
        return replace(cut, region=(left, top, right, true if near(bottom, marked) else bottom))

    def strip(placed: PlacedCut) -> PlacedCut:
        if not (near(_end(placed, across), marked) and _joins(placed, across, lying)):
            return placed
        if across:
            return replace(placed, width=true - placed.left)
        return replace(placed, height=true - placed.top)

    slices, placed = tuple(map(box, plan.slices)), tuple(map(strip, plan.placed))
    if across:
        return replace(plan, width=true, slices=slices, placed=placed)
    return replace(plan, length=true, slices=slices, placed=placed)
