"""Blocks that were found, as a table of text."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from ...searching.block_facts import HALF_TURN, NOTHING, QUARTER_TURN, BlockFacts
from ...words.pages.catalogue import titled
from ...words.pages.finding import HEADS, NO_SYMMETRY, below_words, role_words, sharpest_words, size_words
from ...words.say import INCHES
from ..setting.text import plain_table


def table_of(blocks: Sequence[BlockFacts], standing: Sequence[tuple[str, str]]) -> list[str]:
    """A line of numbers a block; below it its family, how it is made and looks the same, its other names; its
    roles; and of `standing` its file and the line that uses it."""
    told = zip(blocks, standing, strict=True)
    under = (((_below(facts), role_words(facts.fabrics)), where) for facts, where in told)
    return plain_table(HEADS, map(_cells, blocks), under)


def _cells(facts: BlockFacts) -> tuple[str, ...]:
    return (
        titled(facts.title, facts.version),
        f"{facts.across} x {facts.down}",
        size_text(facts),
        str(facts.pieces),
        str(facts.templates),
        sharpest_words(facts.smallest_angle),
    )


def _below(facts: BlockFacts) -> str:
    return below_words(facts.family, facts.methods, same_text(facts), facts.also)


def same_text(facts: BlockFacts) -> str:
    """`quarter-turn, mirror`: how the block looks the same again."""
    told = [word for word in facts.symmetries if word != HALF_TURN or QUARTER_TURN not in facts.symmetries]
    return ", ".join(NO_SYMMETRY if word == NOTHING else word for word in told)


@lru_cache(maxsize=1024)
def _size_text(width: float, height: float) -> str:
    """The same few sizes come again and again on a large shelf."""
    return size_words(INCHES, width, height)


def size_text(facts: BlockFacts) -> str:
    """`12in`, or `8in x 4in`."""
    return _size_text(facts.width, facts.height)
