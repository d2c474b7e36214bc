"""What `explain` says of a quilt for people: its blocks, what to buy, every cut, every default."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol

from ...cutting.plan_model import CuttingPlan
from ...diagnostics.visible import visible, width_of
from ...quilt.assembly_model import QuiltAssembly
from ...quilt.model import Quilt
from ...words.numbers import ruler_text
from ...words.phrases import count_of
from ...words.rulers import length_text
from ...words.say import by_ruler
from ...words.work.cloth import bought_words
from ...words.work.cuts import why_words
from ...words.work.offers import making_words
from ..quilts.tables import CutRow, FabricCuts, fabric_cuts, measured_shape, size_text, template_name
from ..quilts.words import size_words, yield_words
from .quilt_assembly_report import quilt_assembly_lines
from .report_text import default_lines
from .text_table import ROOM, table, told, wrapped


class Planned(Protocol):
    """A quilt in one colourway, and how it is cut."""

    @property
    def quilt(self) -> Quilt:
        """The quilt."""
        ...

    @property
    def plan(self) -> CuttingPlan:
        """Its cutting plan."""
        ...

    @property
    def assembly(self) -> QuiltAssembly:
        """How it goes together."""
        ...


def quilts_text(planned: Iterable[Planned]) -> str:
    """Every quilt, one after the other."""
    return "\n\n\n".join("\n".join(quilt_lines(each)) for each in planned)


def quilt_lines(planned: Planned) -> list[str]:
    """The head, the blocks, what to buy, the cuts of each fabric, the sewing and the defaults of one
    quilt."""
    quilt, plan = planned.quilt, planned.plan
    cuts = fabric_cuts(quilt, plan)
    lines = [*head_lines(quilt), "", "Blocks", *block_table(quilt)]
    lines += ["", "Fabric to buy", *buy_table(cuts, plan)]
    for each in cuts:
        lines += ["", f"Cutting: {visible(each.title)}"]
        for row in each.rows:
            lines += cut_lines(quilt, row, plan)
    lines += quilt_assembly_lines(planned.assembly)
    return lines + default_lines(quilt.defaults)


def head_lines(quilt: Quilt) -> list[str]:
    """Title, colourway, size and counts, then what the writer says of it."""
    colours = f", {visible(quilt.colourway)}" if quilt.colourway else ""
    title = f"{visible(quilt.title)}{colours}, version {quilt.version}"
    size = f"{ruler_text(quilt.width)} x {ruler_text(quilt.height)}"
    pieces = count_of(len(quilt.pieces), "piece")
    lines = [
        *wrapped(title),
        "=" * min(width_of(title), ROOM),
        *wrapped(f"Finished {size}; {quilt.setting}; {pieces} in the top."),
    ]
    said = (("Maker", quilt.maker), *(("Note", note) for note in quilt.notes))
    return lines + [line for what, value in said if value for line in told(what, value, indent="")]


def block_table(quilt: Quilt) -> list[str]:
    """Every block at every size, with how many there are."""
    rows = [
        (
            block.draft.title,
            str(block.draft.version),
            size_text(block.draft.width, block.draft.height),
            str(count),
        )
        for block, count in zip(quilt.blocks, quilt.block_counts, strict=True)
    ]
    return table(("block", "version", "finished", "how many"), rows)


def buy_table(cuts: Iterable[FabricCuts], plan: CuttingPlan) -> list[str]:
    """Every fabric: what its plan takes, and what to buy."""
    rows = [
        (
            each.title,
            length_text(each.plan.usable_width, plan.ruler_step),
            length_text(each.plan.used, plan.ruler_step),
            bought_words(each.plan),
        )
        for each in cuts
    ]
    return table(("fabric", "usable width", "to cut", "buy"), rows)


def cut_lines(quilt: Quilt, row: CutRow, plan: CuttingPlan) -> list[str]:
    """One cut of the chart: how many of what size, what they give and are for, and why so."""
    cut, say = row.cut, by_ruler(plan.ruler_step)
    shape = measured_shape(cut) if cut.cuts == 1 else f"{measured_shape(cut)}s"
    lines = wrapped(
        f"{row.key:<3}{cut.cuts} {shape} {size_words(cut, plan.ruler_step)}: "
        f"{yield_words(cut)} for {visible(row.purpose)}",
        "  ",
        " " * 5,
    )
    said = [
        ("template", template_name(quilt, row)),
        ("why", why_words(say, cut)),
        *(("or", making_words(say, offer.made)) for offer in cut.offers),
    ]
    for what, value in said:
        if value:
            lines += wrapped(visible(value), f"     {what:<10}", " " * 15)
    return lines
