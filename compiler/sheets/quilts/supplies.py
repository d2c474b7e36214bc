"""What to buy and what to have at hand: fabric by fabric with what is counted in, batting, binding,
thread, tools."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from ...cutting.model import Template
from ...cutting.needs import BindingNeed, Fabric, Scrap
from ...cutting.plan_model import CuttingPlan
from ...measure.length import UNITS
from ...measure.marks import RULER_STEP, mark_up, metric
from ...quilt.model import Quilt
from ...words.phrases import count_of, one_of
from ...words.rulers import length_text, length_up
from ...words.work.cloth import bought_words, step_words
from ..arrange.furniture import Paper
from ..arrange.leaves import Leaf
from .flow import Column, Item, Row, bullets, flow, gap, going_on, section, table_items
from .frame import READ_ONLY, open_body, open_leaf
from .tables import FabricCuts, fabric_cuts, fabric_titles
from .thread import HAND_SHARE, MACHINE_SHARE, binding_inches, seam_inches, thread_metres, thread_yards
from .tools import by_rotary, safety_words, tool_words

COLUMNS: Final = (
    Column("fabric", 140.0, bold=True),
    Column("buy", 84.0, bold=True),
    Column("counted in", 0.0),
)

YARD: Final = 36


def supplies_leaves(quilt: Quilt, plan: CuttingPlan, paper: Paper) -> list[Leaf]:
    """The pages of the supply list."""
    box = open_body(paper)
    width = box[2] - box[0]
    cuts = fabric_cuts(quilt, plan)
    rows = [
        Row((each.title, bought_words(each.plan), buy_words(each, plan.ruler_step)), each.plan.fabric)
        for each in cuts
    ]
    rest, tools = list(rest_words(quilt, cuts, plan.ruler_step)), list(tool_words(all_templates(quilt), plan))
    items: list[Item] = [
        section("Fabric", "in the order of the pattern", width),
        *table_items(COLUMNS, rows, width, "Fabric"), gap(4),
    ]  # fmt: skip
    for title, under, texts in (
        ("Batting, backing and binding", "", rest),
        ("Thread", "an estimate", list(thread_words(quilt))),
        ("Tools", "what these ways of cutting and sewing need", tools),
        ("Safety", "", list(safety_words(by_rotary(plan)))),
    ):
        items += [section(title, under, width), *going_on(bullets(texts, width), title)]
    return [
        open_leaf(quilt, paper, "what you need", "", marks, READ_ONLY, "What you need")
        for marks in flow(items, box)
    ]


def all_templates(quilt: Quilt) -> tuple[Template, ...]:
    """The templates of all its blocks, but those that are cut for foundations."""
    on_paper = {need.block for need in quilt.needs if need.is_patch}
    return tuple(
        template
        for index, block in enumerate(quilt.blocks)
        if index not in on_paper
        for template in block.templates
    )


def buy_words(cuts: FabricCuts, step: Fraction) -> str:
    """How the amount to buy comes about."""
    plan, fabric = cuts.plan, cuts.fabric
    parts = [part for part in ("binding", "backing") if any(row.cut.part == part for row in cuts.rows)]
    also = f" {' and '.join(parts).capitalize()} counted in." if parts else ""
    if fabric.scraps:
        used = [fabric.scraps[cloth.scrap] for cloth in plan.cloths if cloth.scrap is not None]
        ask = _unwashed_scraps(fabric, used, step)
        return f"{scraps_words(used, step)}, as they are after washing{ask}.{also}"
    margin = length_up(plan.margin, step)
    sums = [f"{length_text(plan.used, step)} to cut", f"{margin} for safety"]
    if fabric.shrinkage:
        sums.append(f"{float(fabric.shrinkage) * 100:g}% for shrinking")
    words = f"{', '.join(sums)}; up to the next {step_words(plan)}. "
    words += f"Usable width {length_text(plan.usable_width, step)}"
    if fabric.shrinkage:
        wide = _unwashed(fabric, fabric.usable_width, step)
        words += f" after washing: ask for {wide} between the selvages"
    if fabric.is_directional:
        words += "; a one-way print" if fabric.one_way else "; a stripe"
    return f"{words}.{also}"


def _unwashed(fabric: Fabric, length: Fraction, step: Fraction) -> str:
    """What to ask for to have a length after washing, up to a mark."""
    mark = UNITS["cm"] / 2 if metric(step) else RULER_STEP
    return length_text(mark_up(fabric.unwashed(length), mark), step)


def _unwashed_scraps(fabric: Fabric, used: list[Scrap], step: Fraction) -> str:
    """`: before it at least 21 3/4in x 18 5/8in`: what quarters and scraps must measure as bought."""
    if not fabric.shrinkage:
        return ""
    sizes = dict.fromkeys(
        f"{_unwashed(fabric, scrap.width, step)} x {_unwashed(fabric, scrap.height, step)}" for scrap in used
    )
    return f": before it at least {one_of(list(sizes), 'and')}"


def scraps_words(scraps: list[Scrap], step: Fraction) -> str:
    """`3 of 21in x 18in`: the pieces of cloth, equal ones together."""
    sizes: dict[str, int] = {}
    for scrap in scraps:
        size = f"{length_text(scrap.width, step)} x {length_text(scrap.height, step)}"
        sizes[size] = sizes.get(size, 0) + 1
    return ", ".join(f"{count} of {size}" for size, count in sizes.items())


def rest_words(quilt: Quilt, cuts: tuple[FabricCuts, ...], step: Fraction) -> Iterator[str]:
    """Batting, backing and binding, a line each."""
    titles = fabric_titles(quilt)
    if quilt.batting:
        size = " x ".join(length_text(each, step) for each in (quilt.batting.width, quilt.batting.height))
        yield f"Batting: a piece {size}, larger than the top all round."
    if quilt.backing:
        size = " x ".join(length_text(each, step) for each in (quilt.backing.width, quilt.backing.height))
        panels = next(
            (each.plan.backing_panels for each in cuts if each.plan.fabric == quilt.backing.fabric), ()
        )
        made = count_of(len(panels), "panel")
        joined = f", joined from {made}" if len(panels) > 1 else ""
        sizes = " and ".join(
            dict.fromkeys(f"{length_text(wide, step)} x {length_text(tall, step)}" for wide, tall in panels)
        )
        yield f"Backing: {size} of {titles[quilt.backing.fabric]}{joined}{f' ({sizes})' if sizes else ''}."
    if quilt.binding:
        way = "bias" if quilt.binding.bias else "straight"
        yield (
            f"Binding: {binding_length(quilt.binding, step)} of {way} strip "
            f"{length_text(mark_up(quilt.binding.strip_width, step), step)} wide, "
            f"of {titles[quilt.binding.fabric]}: the quilt’s four sides, and "
            f"{length_text(quilt.binding.slack, step)} for the corners and the last join."
        )
    parts = (("binding", quilt.binding), ("backing", quilt.backing), ("batting", quilt.batting))
    missing = [
        word for word, need in parts
        if need is None
    ]  # fmt: skip
    if missing:
        yield f"Not in this pattern, and not counted: {', '.join(missing)}."


def binding_length(binding: BindingNeed, step: Fraction) -> str:
    """Its length, up to the next whole centimetre on a metric ruler, else to the next 1/8in: nobody measures
    it finer."""
    return length_text(mark_up(binding.length, UNITS["cm"] if metric(step) else RULER_STEP), step)


def thread_words(quilt: Quilt) -> Iterator[str]:
    """The estimate, and what it supposes."""
    seams = seam_inches(quilt) / YARD
    bound = " and to sew the binding on" if binding_inches(quilt) else ""
    yield (
        f"Sewn by machine, about {thread_yards(quilt, MACHINE_SHARE):,} yd "
        f"({thread_metres(quilt, MACHINE_SHARE):,} m) "
        f"to piece the top{bound}: its seams are {seams:,.0f} yd long, and a machine takes "
        f"{MACHINE_SHARE} times that, "
        "top and bobbin together."
    )
    yield (
        f"Sewn by hand, about {thread_yards(quilt, HAND_SHARE):,} yd "
        f"({thread_metres(quilt, HAND_SHARE):,} m): "
        f"{HAND_SHARE} times the seams."
    )
    yield "These shares are common practice, with no published source. Quilting and basting are not counted."
