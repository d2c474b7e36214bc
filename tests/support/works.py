"""Works to make sheets of: quilts cut as their blocks are sewn, and blocks alone."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Any

from piecewright.cutting.plan_model import CuttingPlan
from piecewright.cutting.plans.yardage import Margin
from piecewright.cutting.templates.making import make_templates
from piecewright.drafting.model import Draft
from piecewright.measure.marks import RULER_STEP
from piecewright.pipeline import CompiledBlock
from piecewright.planning import Cutting, PlannedQuilt, plan_block
from piecewright.quilt.model import Quilt
from piecewright.quilt.on_papers import cut_for_papers
from piecewright.sewing.order.assembly import assemble
from piecewright.sewing.proof.resew import prove
from piecewright.sheets import booklets, documents
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.chapters.block_steps import block_steps
from piecewright.sheets.content import Chapter
from piecewright.sheets.page import Document
from piecewright.sheets.work import Needle, Way, WayFor, Work, WorkBlock, with_templates

from .on_papers import assembled, papers_in, plan_of


def work_of(quilt: Quilt, way_for: WayFor = with_templates) -> Work:
    """A quilt, the plan cut as the blocks are sewn."""
    papers = papers_in(quilt, lambda block: way_for(block) == "foundation")
    cut = cut_for_papers(quilt, papers)
    return Work(PlannedQuilt(cut, plan_of(cut), assembled(quilt), papers), way_for)


def cut_work(quilt: Quilt, plan: CuttingPlan) -> Work:
    """A quilt to cut by its plan: nobody asks how it goes together."""
    unasked: Any = None
    return Work(PlannedQuilt(quilt, plan, unasked, {}))


def quilt_sheets(quilt: Quilt, plan: CuttingPlan, part: str = "") -> Document:
    """A quilt's sheets, or one part of them."""
    return documents.sheets(cut_work(quilt, plan), part, SheetOptions())


def work_of_block(block: CompiledBlock, way: Way = "templates") -> Work:
    """A block alone."""
    cutting = Cutting(RULER_STEP, Margin(), lambda block: way == "foundation")
    planned = plan_block(block, cutting)
    return Work(planned, lambda block: way)


@cache
def block_of(draft: Draft, way: Way = "templates") -> WorkBlock:
    """A draft as the block of a work of its own."""
    templates, assembly = make_templates(draft).value, assemble(draft)
    assert templates is not None
    proof = prove(draft, templates, assembly).value
    assert proof is not None
    return work_of_block(CompiledBlock(draft, templates, assembly, proof), way).blocks[0]


def chapters_of(work: Work, names: str | Iterable[str], options: SheetOptions | None = None) -> list[Chapter]:
    """The chapters of those names, as the booklet has them: `rows`, `blocks`, ..."""
    wanted = (names,) if isinstance(names, str) else names
    return [
        chapter for name in wanted for chapter in getattr(booklets, name)(work, options or SheetOptions())
    ]


def steps_of_draft(draft: Draft, needle: Needle = "machine") -> Chapter:
    """The chapter of a draft's steps, sewn so."""
    way: Way = "papers" if needle == "papers" else "templates"
    options = SheetOptions(kind="finished" if needle == "hand" else "allowance")
    return block_steps(block_of(draft, way), options)
