"""Blocks that were found, as a table of text; and as records for other programs."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import Any, Final

from ...diagnostics.visible import visible
from ...words.numbers import degrees_text
from ...words.pages.catalogue import titled
from ...words.pages.finding import HEADS, NO_SYMMETRY, below_words, role_words, size_words
from ...words.say import INCHES
from ..block_facts import HALF_TURN, NOTHING, QUARTER_TURN, BlockFacts, record_of
from ..setting.text_table import table, wrapped

UNDER: Final = "      "


def table_of(blocks: Sequence[BlockFacts], standing: Sequence[tuple[str, str]]) -> list[str]:
    """A line of numbers a block; below it its family, how it is made and looks the same, its other names, its
    roles; and of `standing` its file and the line that uses it, which is never broken."""
    head, *rows = table(HEADS, [_cells(facts) for facts in blocks])
    lines = [head]
    for facts, row, (file, use) in zip(blocks, rows, standing, strict=True):
        lines += [row, *wrapped(_below(facts), UNDER, UNDER)]
        lines += [
            *wrapped(role_words(facts.fabrics), UNDER, UNDER),
            UNDER + visible(file),
            UNDER + visible(use),
        ]
    return lines


def _cells(facts: BlockFacts) -> tuple[str, ...]:
    return (
        titled(facts.title, facts.version),
        f"{facts.across} x {facts.down}",
        size_text(facts),
        str(facts.pieces),
        str(facts.templates),
        angle_text(facts),
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


def angle_text(facts: BlockFacts) -> str:
    """`22.5°`; a dash where no piece has a corner."""
    return degrees_text(facts.smallest_angle) if facts.smallest_angle < 180 else "-"


def block_record(facts: BlockFacts) -> dict[str, Any]:
    """The block for other programs: lengths in inches."""
    told = record_of(facts)
    grid = {"across": told.pop("across"), "down": told.pop("down")}
    finished = {"width": told.pop("width"), "height": told.pop("height")}
    symmetry = {"turns": told.pop("turns"), "mirror": told.pop("mirrors")}
    return {**told, "grid": grid, "finished": finished, "symmetry": symmetry}
