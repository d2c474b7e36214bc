"""Boxes cut from pieces of cloth of given size: fat quarters and scraps. Ruler steps."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from .guillotine import DEPTH, Kind, Region, Stock, boxes_in, counted, fill
from .strips import length_of, pack_bolt

KEEN: Final = (0.3, 0.7, 1.0, 0.0)
"""How much thick strips are preferred to full ones, tried in turn."""

WAYS: Final = (*((keen,) for keen in KEEN), KEEN)
"""What the scraps are filled with: one way for all, or for each the fullest of all ways."""

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
    """The scraps cut so that as much as may be has room, in as few scraps as may be; of the last, as much as
    may be is kept whole."""
    best: tuple[tuple[int, int], Packed] | None = None
    for ways in WAYS:
        packed = _pack(kinds, counts, scraps, ways)
        worth = (_area(packed.left, kinds), len(packed.cuts))
        if best is None or worth < best[0]:
            best = worth, packed
        if best[0] <= (0, _fewest(kinds, counts, scraps)):
            break
    assert best is not None, "there are ways"
    *others, last = best[1].cuts or (None,)
    return best[1]._replace(cuts=(*others, _gathered(kinds, last))) if last else best[1]


def _area(counts: Sequence[int], kinds: Sequence[Kind]) -> int:
    return sum(count * kind.width * kind.height for count, kind in zip(counts, kinds, strict=True))


def _fewest(kinds: Sequence[Kind], counts: Sequence[int], scraps: Sequence[tuple[int, int]]) -> int:
    """How many scraps have the boxes' area."""
    area, fewest = _area(counts, kinds), 0
    for width, height in sorted(scraps, key=lambda each: -each[0] * each[1]):
        if area > 0:
            area -= width * height
            fewest += 1
    return fewest


def _gathered(kinds: Sequence[Kind], cut: Cut) -> Cut:
    """The same scrap cut in strips from its top, as on the bolt, where that leaves more of it whole."""
    width, height = cut.region.width, cut.region.height
    counts = counted([cut.region], len(kinds))
    if not all(_fits(kind, width) for kind, count in zip(kinds, counts, strict=True) if count):
        return cut
    strips = pack_bolt(kinds, counts, width)
    used = length_of(strips)
    if used >= _used(cut.region):
        return cut
    return Cut(cut.scrap, Region(width, height, "across", (*strips, Region(width, height - used))))


def _fits(kind: Kind, width: int) -> bool:
    return kind.width <= width or (kind.turnable and kind.height <= width)


def _used(region: Region) -> int:
    """How far down a scrap is cut."""
    if region.axis != "across":
        return region.height
    return sum(part.height for part in region.parts if any(boxes_in(part)))


def _pack(
    kinds: Sequence[Kind], counts: Sequence[int], scraps: Sequence[tuple[int, int]], ways: Sequence[float]
) -> Packed:
    left = list(counts)
    cuts: list[Cut] = []
    for number, (width, height) in enumerate(scraps):
        if not any(left):
            break
        filled = [_filled(kinds, left, width, height, keen) for keen in ways]
        region, left = min(filled, key=lambda each: _area(each[1], kinds))
        if any(boxes_in(region)):
            cuts.append(Cut(number, region))
    return Packed(tuple(cuts), tuple(left))


def _filled(
    kinds: Sequence[Kind], counts: Sequence[int], width: int, height: int, keen: float
) -> tuple[Region, list[int]]:
    """A scrap cut up, and how many of each kind are left after it."""
    stock = Stock(kinds, list(counts), keen)
    return fill(stock, width, height, DEPTH), stock.counts


def scraps_needed(
    kinds: Sequence[Kind], counts: Sequence[int], scraps: Sequence[tuple[int, int]]
) -> int | None:
    """How many scraps like the largest there would have to be in all; None where no number would do."""
    largest = max(scraps, key=lambda each: each[0] * each[1])
    packed = _pack(kinds, counts, [*scraps, *[largest] * MORE], WAYS[0])
    return None if any(packed.left) else packed.cuts[-1].scrap + 1
