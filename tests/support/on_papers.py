"""Quilts whose blocks are sewn on foundations, and their booklets, each block as its maker chose."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import cache

from piecewright.cutting.needs import SizedBlock
from piecewright.cutting.plan_model import CuttingPlan
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.quilt.assembly_model import QuiltAssembly
from piecewright.quilt.model import Quilt
from piecewright.quilt.on_papers import cut_for_papers, papers_of
from piecewright.sewing.foundations.foundation_model import Foundations
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.booklet.quilt_book import QuiltBook, WayFor

from .quilts import assemble_quilt


@cache
def assembled(quilt: Quilt) -> QuiltAssembly:
    """How the quilt goes together."""
    made = assemble_quilt(quilt).value
    assert made is not None
    return made


def papers_in(
    quilt: Quilt, on_paper: Callable[[SizedBlock], bool] = lambda block: True
) -> dict[int, Foundations]:
    """The foundations of those blocks that can be sewn so; of all, unless they are chosen."""
    return papers_of(quilt, assembled(quilt), on_paper)


def cut_on_papers(quilt: Quilt) -> Quilt:
    """The quilt with every block on foundations that can be."""
    return cut_for_papers(quilt, papers_in(quilt))


def plan_of(quilt: Quilt, step: Fraction = Fraction(1, 8)) -> CuttingPlan:
    """Its plan."""
    outcome = plan_cutting(quilt, step)
    assert outcome.value is not None, [each.message for each in outcome.diagnostics]
    return outcome.value


def book_maker(quilt: Quilt, way_for: WayFor) -> QuiltBook:
    """What makes its booklet, the plan cut as the blocks are sewn."""
    papers = papers_in(quilt, lambda block: way_for(block) == "foundation")
    cut = cut_for_papers(quilt, papers)
    return QuiltBook(cut, plan_of(cut), assembled(quilt), SheetOptions(), way_for, papers)
