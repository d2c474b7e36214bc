"""What a catalogue shows of each block."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...drafting.model import Draft
from ...measure.length import POINTS_PER_INCH
from ...measure.record import record
from ...searching.block_facts import BlockFacts
from ...words.pages import catalogue as words
from ...words.pages.finding import sharpest_words
from ..arrange.block_drawing import portray
from ..arrange.paths import Placement
from ..page import Mark
from ..reports.find_table import size_text


@record
class Entry:
    """A block, its facts, and the title of the shelf it stands on."""

    draft: Draft
    facts: BlockFacts
    shelf: str


def in_order(entries: Iterable[Entry]) -> list[Entry]:
    """By title, capitals counting for nothing; the newest version of a title first."""
    return sorted(entries, key=lambda each: (each.facts.title.casefold(), -each.facts.version, each.shelf))


def picture_of(draft: Draft, wide: float, tall: float, x: float = 0.0, y: float = 0.0) -> list[Mark]:
    """The block as it looks when it is sewn, in the middle of a box in points, as large as it goes."""
    across, down = float(draft.width) * POINTS_PER_INCH, float(draft.height) * POINTS_PER_INCH
    scale = min(wide / across, tall / down)
    placement = Placement(0.0, x + (wide - across * scale) / 2, y + (tall - down * scale) / 2, scale)
    return portray(draft, placement)


def titled(facts: BlockFacts) -> str:
    """`Vane`, or `Vane, version 2`."""
    return words.titled(facts.title, facts.version)


def numbers_of(facts: BlockFacts) -> tuple[str, ...]:
    """`12in`, `4 x 4 grid`, `17 pieces`, `4 templates`, `sharpest 45°`."""
    sharpest = sharpest_words(facts.smallest_angle) if facts.smallest_angle < 180 else ""
    grid = (facts.across, facts.down)
    return words.numbers_words(size_text(facts), grid, facts.pieces, facts.templates, sharpest)


def borne(entries: Sequence[Entry]) -> dict[str, list[Entry]]:
    """Every name with the blocks that bear it, in order of the alphabet."""
    found: dict[str, list[Entry]] = {}
    for entry in entries:
        for name in dict.fromkeys(entry.facts.names):
            found.setdefault(name, []).append(entry)
    return {name: found[name] for name in sorted(found, key=str.casefold)}
