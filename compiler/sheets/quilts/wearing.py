"""A quilt's blocks in its own cloths: their sheets then say `Navy twill` where the block's file says `dark`.

In: a laid-out quilt. Out: each block with the fabrics of its pieces, its templates' counts and its colours as
the quilt's other pages have them.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from ...cutting.model import FabricCount
from ...cutting.needs import SizedBlock
from ...drafting.model import Draft, Dress
from ...quilt.model import Quilt
from .drawing import fabric_names
from .tables import fabric_titles

TOLD_MOST: Final = 2  # cloths of one role that a label names: more are told by the chart


def worn_block(quilt: Quilt, index: int) -> SizedBlock:
    """The block with every role called what it is cut from in the quilt."""
    block, words = quilt.blocks[index], worn_words(quilt, index)
    times = quilt.block_counts[index]
    share = f"one block of {times}" if times > 1 else ""
    templates = (replace(each, counts=_merged(each.counts, words), share=share) for each in block.templates)
    return SizedBlock(_worn_draft(quilt, index, words), tuple(templates))


def worn_words(quilt: Quilt, index: int) -> dict[str, str]:
    """What the quilt's pages call each role of a block: `Navy twill`; `Navy twill or Rust dots` where it is
    set in both; `dark (5 fabrics)` where it is in more."""
    titles = fabric_titles(quilt)
    return {
        role: " or ".join(titles[name] for name in names)
        if len(names) <= TOLD_MOST
        else f"{role} ({len(names)} fabrics)"
        for role, names in _cloths(quilt, index).items()
    }


def choices_of(quilt: Quilt, index: int) -> dict[tuple[tuple[str, str], ...], int]:
    """Every choice of fabrics in which a quilt uses a block, role by role, with how often; the first placed
    first."""
    found: dict[tuple[tuple[str, str], ...], int] = {}
    for placed in quilt.placed:
        if placed.block == index:
            found[placed.fabrics] = found.get(placed.fabrics, 0) + 1
    return found


def _cloths(quilt: Quilt, index: int) -> dict[str, tuple[str, ...]]:
    """The fabrics that each role of a block is cut from, in order of mention."""
    order = fabric_names(quilt)
    found: dict[str, set[str]] = {}
    for choice in choices_of(quilt, index):
        for role, fabric in choice:
            found.setdefault(role, set()).add(fabric)
    return {role: tuple(name for name in order if name in names) for role, names in found.items()}


def _worn_draft(quilt: Quilt, index: int, words: Mapping[str, str]) -> Draft:
    draft = quilt.blocks[index].draft
    names = {words[role]: names[0] for role, names in _cloths(quilt, index).items()}
    pieces = tuple(replace(piece, fabric=words[piece.fabric]) for piece in draft.pieces)
    return replace(draft, pieces=pieces, dress=Dress(fabric_names(quilt), tuple(names.items())))


def _merged(counts: Sequence[FabricCount], words: Mapping[str, str]) -> tuple[FabricCount, ...]:
    """Roles of one cloth are counted together."""
    found: dict[str, FabricCount] = {}
    for count in counts:
        word = words[count.fabric]
        so_far = found.get(word, FabricCount(word, 0, 0))
        found[word] = FabricCount(word, so_far.cut + count.cut, so_far.reversed + count.reversed)
    return tuple(found.values())
