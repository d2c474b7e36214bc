"""What you need: fabric by fabric what to buy and what is counted in; batting, binding, thread, tools."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from ...cutting.needs import BindingNeed, Fabric, Scrap
from ...cutting.plan_model import FabricPlan
from ...measure.length import UNITS
from ...measure.marks import RULER_STEP, mark_up, metric
from ...measure.tolerance import Number
from ...quilt.model import Quilt
from ...words.pages import needs as words
from ...words.phrases import one_of
from ...words.say import Say
from ...words.work.cloth import bought_words, step_words
from ..arrange.options import SheetOptions
from ..content import Chapter, Column, List, Paragraph, Part, Row, Section, Table
from ..quilts.tables import FabricCuts, fabric_titles, size_text
from ..quilts.thread import (
    HAND_SHARE,
    MACHINE_SHARE,
    binding_inches,
    seam_inches,
    thread_metres,
    thread_yards,
)
from ..quilts.tools import tool_words
from ..work import CutOut, Work

COLUMNS: Final = (
    Column(words.FABRIC, 140.0, bold=True),
    Column(words.BUY, 84.0, bold=True),
    Column(words.COUNTED, 0.0),
)

YARD: Final = 36


def needs(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """What to buy and to have at hand."""
    yield Chapter(words.TITLE, tuple(_parts(work)))


def _parts(work: Work) -> Iterator[Part]:
    quilt, say = work.quilt, work.say
    if work.alone:
        yield Paragraph(words.for_one(size_text(say, quilt.width, quilt.height)))
    rows = tuple(
        Row((each.title, bought(each.plan, say), buy_words(each, say)), each.plan.fabric)
        for each in work.cuts
    )
    yield Section(words.FABRICS, words.FABRICS_ALONE if work.alone else words.FABRICS_UNDER)
    yield Table(COLUMNS, rows, words.TO_BUY, title=words.FABRICS)
    if not work.alone:
        yield Section(words.REST)
        yield List(tuple(rest_words(quilt, work.cuts, say)))
        yield Section(words.THREAD, words.THREAD_UNDER)
        yield List(tuple(thread_words(quilt, say)))
    yield from _tools(work)


def _tools(work: Work) -> Iterator[Part]:
    """The tools of the ruler and the templates, and those of blocks that are sewn otherwise."""
    own: dict[CutOut, tuple[str, ...]] = {"": words.FOUNDATION_TOOLS, "paper-shape": words.PAPER_TOOLS}
    titles: dict[CutOut, str] = {"": words.FOR_FOUNDATIONS, "paper-shape": words.FOR_PAPERS}
    yield Section(words.TOOLS, words.TOOLS_UNDER)
    if work.alone:
        yield List(own.get(work.blocks[0].cut_out) or _cutting_tools(work))
        return
    yield List(_cutting_tools(work))
    for cut_out, texts in own.items():
        names = [block.name for block in work.blocks if block.cut_out == cut_out]
        if names:
            yield Section(titles[cut_out], one_of(names, "and"))
            yield List(texts)


def _cutting_tools(work: Work) -> tuple[str, ...]:
    """Those to cut with."""
    by_template = [block for block in work.blocks if block.cut_out == "template"]
    templates = tuple(template for block in by_template for template in block.templates)
    kept = tuple(cut for cut in work.plan.cuts if cut.kind != "template" or not work.is_over_papers(cut))
    return tuple(tool_words(templates, replace(work.plan, cuts=kept), work.say))


def bought(plan: FabricPlan, say: Say) -> str:
    """What to buy: `1 1/8 yd`, `2 fat quarters`; the smallest piece that is sold cut, for a block alone."""
    return (
        words.sold_words(say, int(plan.piece.width), int(plan.piece.height))
        if plan.piece
        else bought_words(plan)
    )


def buy_words(cuts: FabricCuts, say: Say) -> str:
    """How the amount to buy comes about."""
    plan, fabric = cuts.plan, cuts.fabric
    if plan.piece:
        return words.piece_words(say, float(plan.area), bought_words(plan))
    also = words.also_counted(
        [part for part in ("binding", "backing") if any(row.cut.part == part for row in cuts.rows)]
    )
    if fabric.scraps:
        used = [fabric.scraps[cloth.scrap] for cloth in plan.cloths if cloth.scrap is not None]
        return f"{words.scraps_after(scraps_words(used, say), _unwashed_scraps(fabric, used, say))}.{also}"
    sum_of = words.sum_of_cloth(
        say.on_ruler(plan.used),
        say.up_on_ruler(plan.margin),
        float(fabric.shrinkage) * 100,
        step_words(plan),
        say.on_ruler(plan.usable_width),
        _unwashed(fabric, fabric.usable_width, say),
    )
    return f"{sum_of}{words.print_words(fabric.one_way, fabric.striped)}.{also}"


def _unwashed(fabric: Fabric, length: Fraction, say: Say) -> str:
    """What to ask for to have a length after washing, up to a mark."""
    mark = UNITS["cm"] / 2 if metric(say.ruler) else RULER_STEP
    return say.on_ruler(mark_up(fabric.unwashed(length), mark))


def _unwashed_scraps(fabric: Fabric, used: list[Scrap], say: Say) -> list[str]:
    """`21 3/4in x 18 5/8in`: what quarters and scraps must measure as bought; none where nothing shrinks."""
    if not fabric.shrinkage:
        return []
    sizes = (f"{_unwashed(fabric, each.width, say)} x {_unwashed(fabric, each.height, say)}" for each in used)
    return list(dict.fromkeys(sizes))


def scraps_words(scraps: list[Scrap], say: Say) -> str:
    """`3 of 21in x 18in`: the pieces of cloth, equal ones together."""
    sizes: dict[str, int] = {}
    for scrap in scraps:
        size = _size(scrap.width, scrap.height, say)
        sizes[size] = sizes.get(size, 0) + 1
    return words.scraps_words(list(sizes.items()))


def _size(width: Number, height: Number, say: Say) -> str:
    return f"{say.on_ruler(width)} x {say.on_ruler(height)}"


def rest_words(quilt: Quilt, cuts: tuple[FabricCuts, ...], say: Say) -> Iterator[str]:
    """Batting, backing and binding, a line each."""
    titles, backing, binding = fabric_titles(quilt), quilt.backing, quilt.binding
    if quilt.batting:
        yield words.batting_words(_size(quilt.batting.width, quilt.batting.height, say))
    if backing:
        panels = next((each.plan.backing_panels for each in cuts if each.plan.fabric == backing.fabric), ())
        yield words.backing_words(
            _size(backing.width, backing.height, say),
            titles[backing.fabric],
            [_size(wide, tall, say) for wide, tall in panels],
        )
    if binding:
        yield words.binding_words(
            binding_length(binding, say),
            binding.bias,
            say.on_ruler(mark_up(binding.strip_width, say.ruler)),
            titles[binding.fabric],
            say.on_ruler(binding.slack),
        )
    parts = (("binding", binding), ("backing", backing), ("batting", quilt.batting))
    missing = [word for word, need in parts if need is None]
    if missing:
        yield words.missing_words(missing)


def binding_length(binding: BindingNeed, say: Say) -> str:
    """Its length, up to the next whole centimetre on a metric ruler, else to the next 1/8in: nobody measures
    it finer."""
    return say.on_ruler(mark_up(binding.length, UNITS["cm"] if metric(say.ruler) else RULER_STEP))


def thread_words(quilt: Quilt, say: Say) -> Iterator[str]:
    """The estimate, and what it supposes."""
    bound, seams = bool(binding_inches(quilt)), seam_inches(quilt) / YARD
    yards, metres = thread_yards(quilt, MACHINE_SHARE), thread_metres(quilt, MACHINE_SHARE)
    yield words.machine_thread(say, yards, metres, bound, seams, MACHINE_SHARE)
    yards, metres = thread_yards(quilt, HAND_SHARE), thread_metres(quilt, HAND_SHARE)
    yield words.hand_thread(say, yards, metres, HAND_SHARE)
    yield words.SHARES
