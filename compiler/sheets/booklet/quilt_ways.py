"""What a quilt's booklet says more where blocks are sewn on foundations, or over papers by hand: tools, how
often papers are printed, and the cloth that foundations take beyond the cutting chart's."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import ceil
from typing import Final

from ...cutting.plan_model import CuttingPlan
from ...diagnostics.wording import count_of, one_of
from ...quilt.model import Quilt
from ...sewing.foundation_model import Foundations
from ..quilts.tables import block_name, fabric_titles, need_of
from .content import List, Paragraph, Part, Section
from .envelope_chapters import CutOut
from .needs_chapters import FOUNDATION_TOOLS, PAPER_TOOLS, cut_box

INSTEAD: Final = (
    "The sizes of its cloth, below, take the place of the block’s rows in the cutting chart, which cuts it "
    "for sewing without paper."
)


def copies_words(cut_out: CutOut, times: int) -> str:
    """How often papers are printed and cloth is cut for a block that a quilt has so many times."""
    if cut_out == "paper shape":
        again = f" The quilt has {times}: print them for each, or use them again." if times > 1 else ""
        return f"These are the papers of one block.{again}"
    again = f" The quilt has {times}: print the papers and cut the cloth for each." if times > 1 else ""
    return f"This is for one block.{again} {INSTEAD}"


def way_parts(
    quilt: Quilt, plan: CuttingPlan, cut_outs: Sequence[CutOut], found: Mapping[int, Foundations]
) -> Iterator[Part]:
    """What is needed besides. `cut_outs`: by block; `found`: the foundations of those that are sewn so."""
    names: dict[CutOut, list[str]] = {}
    for index, cut_out in enumerate(cut_outs):
        names.setdefault(cut_out, []).append(block_name(quilt, index))
    if "" in names:
        yield Section("For foundations", one_of(names[""], "and"))
        yield List(FOUNDATION_TOOLS)
        yield Paragraph(_cloth_words(quilt, plan, found))
    if "paper shape" in names:
        yield Section("For sewing over papers", one_of(names["paper shape"], "and"))
        yield List(PAPER_TOOLS)


def _cloth_words(quilt: Quilt, plan: CuttingPlan, found: Mapping[int, Foundations]) -> str:
    """How much cloth foundations take beyond what is reckoned above: their pieces have a margin to trim."""
    titles, more = fabric_titles(quilt), _more_cloth(quilt, plan, found)
    told = [f"about {ceil(area):,} sq in of {titles[name]}" for name, area in more.items() if area > 0]
    words = "The fabric above is reckoned for cutting as the chart has it."
    if not told:
        return f"{words} These foundations take no more."
    blocks = count_of(sum(quilt.block_counts[index] for index in found), "block")
    more_words = f"For {blocks} on foundations buy more: {one_of(told, 'and')}."
    return f"{words} {more_words} A fat quarter is 378 sq in."


def _more_cloth(quilt: Quilt, plan: CuttingPlan, found: Mapping[int, Foundations]) -> dict[str, float]:
    """Square inches by fabric: of all patches, less those of the chart's cuts of the same blocks."""
    more = {fabric.name: 0.0 for fabric in quilt.fabrics}
    for placed in quilt.placed:
        if placed.block in found:
            fabrics = dict(placed.fabrics)
            for section in found[placed.block].sections:
                for patch in section.patches:
                    more[fabrics[patch.fabric]] += float(patch.width * patch.height)
    for cut in plan.cuts:
        need = need_of(quilt, cut)
        if need is not None and need.block in found:
            more[cut.fabric] -= cut_box(cut).area
    return more
