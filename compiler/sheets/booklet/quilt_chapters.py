"""A quilt's tables as chapters: what you need, the counts, the cutting chart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from ...cutting.plan_model import ClothPlan, Cut, CuttingPlan
from ...quilt.model import Quilt
from ...words.phrases import count_of
from ...words.say import Say, by_ruler
from ...words.work.cloth import bought_words
from ..arrange.leaves import Leaf
from ..quilts.chart import COLUMNS as CHART_COLUMNS
from ..quilts.chart import INTRO as CHART_INTRO
from ..quilts.chart import chart_print_words, chart_rows
from ..quilts.counts import COLUMNS as COUNT_COLUMNS
from ..quilts.counts import FABRIC_COLUMNS, count_row, group_words, total_row
from ..quilts.counts import INTRO as COUNTS_INTRO
from ..quilts.cutting import cloth_title, cut_words, print_words
from ..quilts.flow import Row
from ..quilts.steps import step_lines
from ..quilts.supplies import COLUMNS as SUPPLY_COLUMNS
from ..quilts.supplies import buy_words, rest_words, thread_words
from ..quilts.tables import count_groups, fabric_cuts, fabric_titles, fabric_totals
from ..quilts.tools import tool_words
from .content import Chapter, List, Paragraph, Part, Section, Table
from .envelope_chapters import CutOut
from .needs_chapters import CHART_NOTE

ROUND_PAPERS: Final = (
    "Of blocks that are sewn over papers, ‘round the template’ is round the paper, with the cloth 1/4in "
    "larger on every side."
)


def is_over_papers(quilt: Quilt, cut: Cut, cut_outs: Sequence[CutOut]) -> bool:
    """Whether a cut is for a block that is sewn over papers."""
    block = quilt.needs[cut.need].block if cut.need >= 0 else None
    return block is not None and cut_outs[block] == "paper shape"


def sewn_singly(quilt: Quilt, plan: CuttingPlan, cut_outs: Sequence[CutOut]) -> CuttingPlan:
    """The plan without offers to sew many units at a time by machine for blocks that are sewn over papers."""
    return replace(plan, cuts=tuple(
        replace(cut, offers=()) if cut.offers and is_over_papers(quilt, cut, cut_outs) else cut
        for cut in plan.cuts))  # fmt: skip


def supplies_chapter(quilt: Quilt, plan: CuttingPlan, cut_outs: Sequence[CutOut]) -> Chapter:
    """What to buy and to have at hand. `cut_outs`: for each block what there is one of for each shape."""
    cuts, step = fabric_cuts(quilt, plan), plan.ruler_step
    by_templates = [block for block, each in zip(quilt.blocks, cut_outs, strict=True) if each == "template"]
    templates = tuple(template for block in by_templates for template in block.templates)
    kept = tuple(cut for cut in plan.cuts
                 if cut.kind != "template" or not is_over_papers(quilt, cut, cut_outs))  # fmt: skip
    rows = tuple(
        Row((each.title, bought_words(each.plan), buy_words(each, step)), each.plan.fabric) for each in cuts
    )
    return Chapter("What you need", (
        Section("Fabric", "in the order of the pattern"), Table(SUPPLY_COLUMNS, rows, "Fabric to buy"),
        Section("Batting, backing and binding"), List(tuple(rest_words(quilt, cuts, step))),
        Section("Thread", "an estimate"), List(tuple(thread_words(quilt))),
        Section("Tools", "what these ways of cutting and sewing need"),
        List(tuple(tool_words(templates, replace(plan, cuts=kept)))),
    ))  # fmt: skip


def counts_chapter(quilt: Quilt, plan: CuttingPlan) -> Chapter:
    """How many pieces of which fabric, for each block and each part of the setting."""
    return Chapter("Counts", tuple(_counts(quilt, plan)))


def _counts(quilt: Quilt, plan: CuttingPlan) -> Iterator[Part]:
    titles, groups = fabric_titles(quilt), count_groups(quilt, plan)
    yield Paragraph(COUNTS_INTRO)
    totals, whole = fabric_totals(groups), sum(group.pieces for group in groups)
    shown = [fabric for fabric in quilt.fabrics if fabric.name in totals]
    rows = [Row((titles[each.name], f"{totals[each.name]:,}"), f"fabric {each.name}") for each in shown]
    yield Section("The whole top", f"{count_of(sum(quilt.block_counts), 'block')}, {whole:,} pieces")
    yield Table(
        FABRIC_COLUMNS, (*rows, Row(("in all", f"{whole:,}"), "whole", total=True)), "Pieces by fabric"
    )
    for number, group in enumerate(groups):
        yield Section(group.title, group_words(group))
        rows = [count_row(row, titles, f"{number}") for row in group.rows]
        rows.append(total_row(group, f"total {number}"))
        yield Table(COUNT_COLUMNS, tuple(rows), f"Pieces of {group.title}", title=group.title)


def chart_chapter(quilt: Quilt, plan: CuttingPlan, cut_outs: Sequence[CutOut]) -> Chapter:
    """Every cut, fabric by fabric."""
    parts: list[Part] = [Paragraph(CHART_INTRO)]
    if any(cut.kind == "template" and is_over_papers(quilt, cut, cut_outs) for cut in plan.cuts):
        parts.append(Paragraph(ROUND_PAPERS))
    for cuts in fabric_cuts(quilt, plan):
        parts.append(Section(cuts.title, f"buy {bought_words(cuts.plan)}{chart_print_words(cuts.fabric)}"))
        rows = tuple(chart_rows(cuts, plan.ruler_step))
        parts.append(Table(CHART_COLUMNS, rows, f"Cuts of {cuts.title}", title=cuts.title))
    return Chapter("Cutting chart", tuple(parts), note=CHART_NOTE)


def cutting_chapter(quilt: Quilt, plan: CuttingPlan, sheets: Sequence[Leaf]) -> Chapter:
    """The cutting pictures, and the steps beside them once more for those who do not see them."""
    told = tuple(_cutting_steps(quilt, plan))
    return Chapter("Cutting pictures", (), tuple(sheets), true_size=False, told=told)


def _cutting_steps(quilt: Quilt, plan: CuttingPlan) -> Iterator[Part]:
    for cuts in fabric_cuts(quilt, plan):
        yield Section(cuts.title, cut_words(cuts, plan) + print_words(cuts.fabric))
        for number, cloth in enumerate(cuts.plan.cloths, 1):
            title = cloth_title(cuts, cloth, number)
            if title:
                yield Paragraph(f"{title}:")
            yield List(tuple(_told_steps(by_ruler(plan.ruler_step), cloth)), "number")


def _told_steps(say: Say, cloth: ClothPlan) -> Iterator[str]:
    """The steps, each with the strips that it is done to where they change."""
    over = ""
    for number, text in step_lines(say, cloth):
        if number:
            yield f"{over}{text}"
        over = "" if number else f"{text} "
