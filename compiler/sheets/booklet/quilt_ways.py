"""What a quilt's booklet says more where blocks are sewn on foundations, or over papers by hand: tools, and
how often papers are printed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...quilt.model import Quilt
from ...words.phrases import one_of
from ..chapters.envelope_chapters import CutOut
from ..content import List, Part, Section
from ..quilts.tables import block_name
from .needs_chapters import FOUNDATION_TOOLS, PAPER_TOOLS

MIRRORED: Final[dict[CutOut, str]] = {
    "": "For a mirrored block trace the lines through onto the back of its papers, and sew from that side.",
    "paper shape": "For a mirrored block lay the papers with the print on the cloth.",
}
"""How papers, which are printed mirrored, serve a block that lies mirrored in the quilt."""


def copies_words(cut_out: CutOut, times: int, mirrored: int) -> Iterator[str]:
    """How often papers are printed, and what cuts the cloth, for a block that a quilt has so many times, some
    of them mirrored."""
    if cut_out == "paper shape":
        again = f" The quilt has {times}: print them for each, or use them again." if times > 1 else ""
        yield f"These are the papers of one block.{again}"
    elif times == 1:
        yield "The quilt has one of this block; the cutting chart cuts the cloth for its patches."
    else:
        yield f"Print the papers for each block: the cutting chart cuts the cloth for all {times}."
    if mirrored:
        yield MIRRORED[cut_out]


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
