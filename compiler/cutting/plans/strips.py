"""A length of cloth off the bolt, and the strips it is cut into: the shortest of several ways. Ruler
steps."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from ...measure.tolerance import BETTER
from .guillotine import DEPTH, Kind, Region, Stock, Strip, best_strip, cut_strip

LEADS: Final = 14
"""Kinds that are tried as the lead of the next strip; the largest first."""


class Way(NamedTuple):
    """How the next strip is chosen: `thick` counts its thickness beside its fullness; `keen` is for
    leftovers; `largest`: only kinds of the greatest thickness lead."""

    thick: float
    keen: float
    largest: bool


WAYS: Final = (
    Way(0.0, 0.3, True),
    Way(0.0, 0.7, True),
    Way(0.0, 0.3, False),
    Way(0.3, 0.3, False),
    Way(0.6, 0.5, False),
    Way(1.0, 0.7, False),
)
"""Tried in this order; the shortest cloth is kept, the first of equals."""


def pack_bolt(kinds: Sequence[Kind], counts: Sequence[int], width: int) -> list[Region]:
    """Strips across the cloth that hold every box, thickest first. Every kind fits the width in some pose."""
    upright = [kind._replace(turnable=kind.turnable and kind.width > width) for kind in kinds]
    best = _pack(upright, counts, width, WAYS[0])  # for a few boxes the fullest strips may not be the fewest
    for way in reversed(WAYS):
        strips = _pack(kinds, counts, width, way)
        if length_of(strips) <= length_of(best):
            best = strips
    return sorted(best, key=lambda strip: -strip.height)


def about_length(kinds: Sequence[Kind], counts: Sequence[int], width: int) -> int:
    """About how long the cloth will be: the shortest of a few ways, nothing cut anew."""
    return min(length_of(_pack(kinds, counts, width, way)) for way in WAYS[:3:2])


def length_of(strips: Sequence[Region]) -> int:
    """Ruler steps of cloth that the strips take."""
    return sum(strip.height for strip in strips)


def _pack(kinds: Sequence[Kind], counts: Sequence[int], width: int, way: Way) -> list[Region]:
    stock = Stock(kinds, list(counts), way.keen)
    thickness = [
        min((thick for run, thick in stock.lyings(kind, True) if run <= width), default=0)
        for kind in range(len(kinds))
    ]
    strips: list[Region] = []
    while stock.open:
        strip = _next_strip(stock, width, way, thickness)
        before = list(stock.counts)
        region = cut_strip(stock, strip, width, DEPTH)
        taken = [old - new for old, new in zip(before, stock.counts, strict=True)]
        more = min(left // each for left, each in zip(stock.counts, taken, strict=True) if each)
        for kind, each in enumerate(taken):
            stock.counts[kind] -= more * each
        strips += [region] * (more + 1)
    return strips


def _next_strip(stock: Stock, width: int, way: Way, thickness: Sequence[int]) -> Strip:
    """The strip worth most. `thickness`: of each kind, the least strip that holds it."""
    best: Strip | None = None
    most = -1.0
    kinds = sorted(stock.open, key=lambda kind: (-thickness[kind], kind))[:LEADS]
    tallest = thickness[kinds[0]]
    if way.largest:
        kinds = [kind for kind in kinds if thickness[kind] == tallest]
    for kind in kinds:
        for lying in stock.lyings(kind, True):
            run, thick = lying
            if run > width:
                continue
            full = 1 + way.thick * min(1.0, thick / tallest)
            strip = best_strip(stock, width, kind, lying, True) if full > most * BETTER else None
            if strip is not None:
                worth = strip.area / (width * thick) * full
                if worth > most * BETTER:
                    best, most = strip, worth
    assert best is not None, "every kind fits the width"
    return best
