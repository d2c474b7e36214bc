"""Boxes cut from pieces of cloth of given size: fat quarters and scraps. Ruler steps."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from .guillotine import DEPTH, Kind, Region, Stock, counted, fill

KEEN: Final = (0.3, 0.7, 1.0, 0.0)
"""How much thick strips are preferred to full ones, tried in turn."""

MORE: Final = 400
"""Fat quarters beyond those there are that are tried before giving up telling how many it takes."""


class Cut(NamedTuple):
    """A scrap, by its number, and how it is cut."""

    scrap: int
    region: Region


class Packed(NamedTuple):
    """The scraps that are cut into, and how many of each kind found no room."""

    cuts: tuple[Cut, ...]
    left: tuple[int, ...]


def pack_scraps(kinds: Sequence[Kind], counts: Sequence[int], scraps: Sequence[tuple[int, int]]) -> Packed:
    """The scraps cut so that as much as may be has room, in as few scraps as may be."""
    best: tuple[tuple[int, int], Packed] | None = None
    for keen in KEEN:
        packed = _pack(kinds, counts, scraps, keen)
        left = sum(count * kind.width * kind.height for count, kind in zip(packed.left, kinds, strict=True))
        worth = (left, len(packed.cuts))
        if best is None or worth < best[0]:
            best = worth, packed
    assert best is not None, "there are ways"
    return best[1]


def _pack(kinds: Sequence[Kind], counts: Sequence[int], scraps: Sequence[tuple[int, int]],
          keen: float) -> Packed:
    stock = Stock(kinds, list(counts), keen)
    cuts: list[Cut] = []
    for number, (width, height) in enumerate(scraps):
        if not stock.open:
            break
        region = fill(stock, width, height, DEPTH)
        if any(counted([region], len(kinds))):
            cuts.append(Cut(number, region))
    return Packed(tuple(cuts), tuple(stock.counts))


def scraps_needed(kinds: Sequence[Kind], counts: Sequence[int],
                  scraps: Sequence[tuple[int, int]]) -> int | None:
    """How many scraps like the largest there would have to be in all; None where no number would do."""
    largest = max(scraps, key=lambda each: each[0] * each[1])
    for more in range(1, MORE):
        packed = _pack(kinds, counts, [*scraps, *[largest] * more], KEEN[0])
        if not any(packed.left):
            return len(scraps) + more
        if len(packed.cuts) < len(scraps) + more:
            return None
    return None
