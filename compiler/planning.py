"""A quilt, or a block alone as a quilt of one, planned: how it is cut, from how much cloth, on which
foundations."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from .diagnostics.diagnostic import Diagnostic, Outcome

if TYPE_CHECKING:
    from .cutting.needs import SizedBlock
    from .cutting.plan_model import CuttingPlan
    from .cutting.plans.yardage import Margin
    from .quilt.alone import WholeBlock
    from .quilt.assembly_model import QuiltAssembly
    from .quilt.model import Quilt
    from .sewing.foundations.foundation_model import Foundations


@dataclass(frozen=True, slots=True)
class Cutting:
    """How quilts are to be cut: the marks of the maker's ruler, cloth bought over what the plan takes, and
    which blocks are cut for paper foundations."""

    ruler: Fraction
    margin: Margin
    on_paper: Callable[[SizedBlock], bool] = lambda block: False


@dataclass(frozen=True, slots=True)
class PlannedQuilt:
    """A quilt in one colourway, with how it is cut and how it goes together; and the foundations of the
    blocks that it is cut for, by the block's index."""

    quilt: Quilt
    plan: CuttingPlan
    assembly: QuiltAssembly
    papers: Mapping[int, Foundations]


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


def plan_block(block: WholeBlock, cutting: Cutting) -> Outcome[PlannedQuilt]:
    """A block alone, each of its roles cut from a cloth of its own: off the bolt, and, where less is enough,
    from the smallest piece that shops sell cut. Cloth is as wide as its widest piece wants."""
    from .cutting.plans.plan import cuts_of, plan_cutting
    from .cutting.plans.sold import sold_piece
    from .quilt.alone import assembly_of_one, on_cloth_of, quilt_of_one
    from .quilt.on_papers import cut_for_papers, papers_of

    quilt = quilt_of_one(block.draft, block.templates)
    assembly = assembly_of_one(quilt, block)
    papers = papers_of(quilt, assembly, cutting.on_paper)
    quilt = cut_for_papers(quilt, papers)
    narrowest = max(ceil(min(cut.width, cut.height)) for cut in cuts_of(quilt, cutting.ruler))
    if narrowest > quilt.fabrics[0].usable_width:
        quilt = on_cloth_of(quilt, Fraction(narrowest))
    outcome = plan_cutting(quilt, cutting.ruler, cutting.margin)
    if outcome.value is None:
        return Outcome(None, outcome.diagnostics)
    plans = tuple(
        replace(plan, piece=sold_piece(quilt, outcome.value, fabric))
        for plan, fabric in zip(outcome.value.fabrics, quilt.fabrics, strict=True)
    )
    planned = PlannedQuilt(quilt, replace(outcome.value, fabrics=plans), assembly, papers)
    return Outcome(planned, outcome.diagnostics)
