"""A quilt, or a block alone as a quilt of one, planned: how it is cut, from how much cloth, on which
foundations."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cached_property
from math import ceil, hypot
from typing import TYPE_CHECKING, Final

from .diagnostics.diagnostic import Diagnostic, Outcome
from .measure.record import record
from .words.say import INCHES, Say

if TYPE_CHECKING:
    from .cutting.needs import SizedBlock
    from .cutting.plan_model import CuttingPlan
    from .cutting.plans.yardage import Margin
    from .quilt.alone import WholeBlock
    from .quilt.assembly_model import QuiltAssembly
    from .quilt.model import Quilt
    from .sewing.foundations.foundation_model import Foundations


BESIDE: Final = Fraction(8)
"""Inches. More than any cut has beyond the longest line in its block: the widest allowances, twice, at a
corner."""


@record
class Cutting:
    """How quilts are to be cut: the marks of the maker's ruler, cloth bought over what the plan takes, and
    which blocks are cut for paper foundations; and in which units all of it is told."""

    ruler: Fraction
    margin: Margin
    on_paper: Callable[[SizedBlock], bool] = lambda block: False
    say: Say = INCHES


class PlannedQuilt:
    """A quilt in one colourway, with how it is cut and how it goes together; and the foundations of the
    blocks that it is cut for, by the block's index. `plan` may be what makes the plan: it is made when it is
    asked for, since template sheets of a block never ask."""

    def __init__(
        self,
        quilt: Quilt,
        plan: CuttingPlan | Callable[[], CuttingPlan],
        assembly: QuiltAssembly,
        papers: Mapping[int, Foundations],
    ) -> None:
        self.quilt, self.assembly, self.papers = quilt, assembly, papers
        self._plan = plan

    @cached_property
    def plan(self) -> CuttingPlan:
        """How it is cut."""
        return self._plan() if callable(self._plan) else self._plan


def plan_quilts(
    quilts: Sequence[Quilt], assemblies: Sequence[QuiltAssembly], cutting: Cutting
) -> Outcome[tuple[PlannedQuilt, ...]]:
    """Every quilt with its plan; none where cloth is not enough for one of them."""
    from .cutting.plans.plan import plan_cutting
    from .quilt.on_papers import cut_for_papers, papers_of

    planned: list[PlannedQuilt] = []
    said: list[Diagnostic] = []
    for quilt, assembly in zip(quilts, assemblies, strict=True):
        papers = papers_of(quilt, assembly, cutting.on_paper)
        cut = cut_for_papers(quilt, papers)
        outcome = plan_cutting(cut, cutting.ruler, cutting.margin)
        said += outcome.diagnostics
        if outcome.value is not None:
            planned.append(PlannedQuilt(cut, outcome.value, assembly, papers))
    whole = len(planned) == len(quilts)
    return Outcome(tuple(planned) if whole else None, tuple(said))


def plan_block(block: WholeBlock, cutting: Cutting) -> PlannedQuilt:
    """A block alone, each of its roles cut from a cloth of its own: off the bolt, and, where less is enough,
    from the smallest piece that shops sell cut. Cloth is as wide as its widest piece wants."""
    from .quilt.alone import assembly_of_one, quilt_of_one

    quilt = quilt_of_one(block.draft, block.templates)
    assembly = assembly_of_one(quilt, block)
    papers: Mapping[int, Foundations] = {}
    if cutting.on_paper(quilt.blocks[0]):
        from .quilt.on_papers import cut_for_papers, papers_of

        papers = papers_of(quilt, assembly, cutting.on_paper)
        quilt = cut_for_papers(quilt, papers)
    if hypot(quilt.width, quilt.height) + BESIDE > quilt.fabrics[0].usable_width:
        quilt = _on_wide_cloth(quilt, cutting)
    return PlannedQuilt(quilt, lambda: _plan_of_one(quilt, cutting), assembly, papers)


def _on_wide_cloth(quilt: Quilt, cutting: Cutting) -> Quilt:
    """The block on cloth that holds its widest piece."""
    from .cutting.plans.plan import cuts_of
    from .quilt.alone import on_cloth_of

    narrowest = max(ceil(min(cut.width, cut.height)) for cut in cuts_of(quilt, cutting.ruler))
    if narrowest > quilt.fabrics[0].usable_width:
        return on_cloth_of(quilt, Fraction(narrowest))
    return quilt


def _plan_of_one(quilt: Quilt, cutting: Cutting) -> CuttingPlan:
    from .cutting.plans.plan import plan_cutting
    from .cutting.plans.sold import sold_piece

    plan = plan_cutting(quilt, cutting.ruler, cutting.margin).value
    assert plan is not None, "the cloth of a block alone is as wide as it wants"
    fabrics = tuple(
        replace(each, piece=sold_piece(quilt, plan, fabric))
        for each, fabric in zip(plan.fabrics, quilt.fabrics, strict=True)
    )
    return replace(plan, fabrics=fabrics)
