"""Blocks that were found, as a table of text; and as records for other programs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from typing import Any, Final

from ...diagnostics.visible import visible
from ...words.numbers import ruler_text
from ...words.phrases import count_of
from ..block_facts import HALF_TURN, QUARTER_TURN, BlockFacts, record_of
from ..setting.text_table import table, wrapped

HEADS: Final = ("Title", "Grid", "Finished", "Pieces", "Templates", "Sharpest")
UNDER: Final = "      "


def table_of(blocks: Sequence[BlockFacts]) -> list[str]:
    """A line of numbers a block; below it its family, how it is made and looks the same, its other names."""
    head, *rows = table(HEADS, [_cells(facts) for facts in blocks])
    lines = [head]
    for facts, row in zip(blocks, rows, strict=True):
        lines += [row, *wrapped(_below(facts), UNDER, UNDER)]
    return lines


def _cells(facts: BlockFacts) -> tuple[str, ...]:
    version = f", version {facts.version}" if facts.version != 1 else ""
    return (
        facts.title + version,
        f"{facts.across} x {facts.down}",
        size_text(facts),
        str(facts.pieces),
        str(facts.templates),
        angle_text(facts),
    )


def _below(facts: BlockFacts) -> str:
    parts = [*facts.family[:1], ", ".join(facts.methods) or "templates only", same_text(facts)]
    if facts.also:
        parts.append(f"also {', '.join(visible(name) for name in facts.also)}")
    return "; ".join(parts)


def same_text(facts: BlockFacts) -> str:
    """`quarter-turn, mirror`: how the block looks the same again."""
    told = [word for word in facts.symmetries if word != HALF_TURN or QUARTER_TURN not in facts.symmetries]
    return ", ".join(told).replace("none", "no symmetry")


def size_text(facts: BlockFacts) -> str:
    """`12in`, or `8in x 4in`."""
    width, height = _length(facts.width), _length(facts.height)
    return width if width == height else f"{width} x {height}"


def angle_text(facts: BlockFacts) -> str:
    """`22.5°`; a dash where no piece has a corner."""
    return f"{facts.smallest_angle:.1f}".removesuffix(".0") + "°" if facts.smallest_angle < 180 else "-"


@lru_cache(maxsize=1024)
def _length(value: float) -> str:
    """The same few sizes come again and again on a large shelf."""
    return ruler_text(value)


def count_text(found: int, among: int) -> str:
    """`12 of 124 blocks.`"""
    return f"{found} of {count_of(among, 'block')}."


def shared_text(shared: Mapping[str, Iterable[str]]) -> list[str]:
    """A line for every name that several blocks bear."""
    return [f"{visible(name)} is a name of {', '.join(map(visible, of))}." for name, of in shared.items()]


def block_record(facts: BlockFacts) -> dict[str, Any]:
    """The block for other programs: lengths in inches."""
    told = record_of(facts)
    grid = {"across": told.pop("across"), "down": told.pop("down")}
    finished = {"width": told.pop("width"), "height": told.pop("height")}
    symmetry = {"turns": told.pop("turns"), "mirror": told.pop("mirrors")}
    return {**told, "grid": grid, "finished": finished, "symmetry": symmetry}
