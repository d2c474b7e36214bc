"""What a quilt's booklet says more where blocks are sewn on foundations, or over papers by hand: tools, and
how often papers are printed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...diagnostics.wording import one_of
from ...quilt.model import Quilt
from ..quilts.tables import block_name
from .content import List, Part, Section
from .envelope_chapters import CutOut
from .needs_chapters import FOUNDATION_TOOLS, PAPER_TOOLS


def copies_words(cut_out: CutOut, times: int) -> str:
    """How often papers are printed, and what cuts the cloth, for a block that a quilt has so many times."""
    if cut_out == "paper shape":
        again = f" The quilt has {times}: print them for each, or use them again." if times > 1 else ""
        return f"These are the papers of one block.{again}"
    if times == 1:
        return "The quilt has one of this block; the cutting chart cuts the cloth for its patches."
    return (
        f"This is for one block. The quilt has {times}: print the papers for each. "
        "The cutting chart cuts the cloth for all of them."
    )


def way_parts(quilt: Quilt, cut_outs: Sequence[CutOut]) -> Iterator[Part]:
    """What is needed besides. `cut_outs`: by block."""
    names: dict[CutOut, list[str]] = {}
    for index, cut_out in enumerate(cut_outs):
        names.setdefault(cut_out, []).append(block_name(quilt, index))
    if "" in names:
        yield Section("For foundations", one_of(names[""], "and"))
        yield List(FOUNDATION_TOOLS)
    if "paper shape" in names:
        yield Section("For sewing over papers", one_of(names["paper shape"], "and"))
        yield List(PAPER_TOOLS)
