"""Which way each template is laid, where there are several: the ones that together take the least cloth.

A row that is full in itself may leave room that nothing else fits, and a few single pieces may fill what
another strip leaves. Ruler steps.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Final

from .guillotine import Kind
from .lots import Cloth, Lot, kind_of
from .scraps import pack_scraps
from .strips import about_length
from .yardage import YARD

ROUNDS: Final = 2
"""How often every template's ways are tried anew after another's has changed."""

PACKED_MOST: Final = 80
"""Times that a cloth is packed for trying; what is tried first saves most."""

JOIN_SAVES: Final = YARD / 4
"""Inches of cloth that every seam in a strip must save: nobody pieces a border to save less (common
practice, no published source)."""

EFFORT: Final = 3000
"""Divided by the square of the number of kinds of boxes: how often a cloth of many kinds is packed for
trying. One packing takes about that square in time, and many kinds fill each other's gaps by themselves."""

FULL: Final = 1.025
"""Length of cloth beside its boxes' area from which nothing more is tried."""


def best_lots(ways: Sequence[Sequence[Sequence[Lot]]], cloth: Cloth) -> tuple[Lot, ...]:
    """The boxes of one way of each cut. Each way in turn is taken if cloth is saved by it."""
    chosen = [each[0] for each in ways]
    open_cuts = sorted(
        (at for at, each in enumerate(ways) if len(each) > 1),
        key=lambda at: -sum(lot.width * lot.height * lot.count for lot in ways[at][0]),
    )
    if not open_cuts or not all(cloth.takes(lot) for lots in chosen for lot in lots):
        return _together(chosen)
    least = cloth_taken(chosen, cloth)
    most = min(PACKED_MOST, EFFORT // len({kind_of(lot) for lot in _together(chosen)}) ** 2)
    tried = 0
    for _ in range(0 if _full(chosen, least, cloth) else ROUNDS):
        before = least
        for at in open_cuts:
            for way in ways[at]:
                if way is chosen[at] or tried >= most:
                    continue
                tried += 1
                other = [*chosen[:at], way, *chosen[at + 1 :]]
                taken = cloth_taken(other, cloth)
                if taken < least:
                    chosen, least = other, taken
        if least == before:
            break
    return _together(chosen)


def _full(chosen: Sequence[Sequence[Lot]], least: tuple[int, int], cloth: Cloth) -> bool:
    """Whether a length off the bolt has next to nothing left over."""
    area = sum(lot.width * lot.height * lot.count for lot in _together(chosen))
    return not cloth.sizes and least[1] * cloth.spans[-1] <= FULL * area


def _together(chosen: Sequence[Sequence[Lot]]) -> tuple[Lot, ...]:
    return tuple(lot for lots in chosen for lot in lots)


def cloth_taken(chosen: Sequence[Sequence[Lot]], cloth: Cloth) -> tuple[int, int]:
    """What finds no room, in area, and about what length of cloth, or how many scraps, the rest takes."""
    counts = Counter[tuple[int, int, bool]]()
    for lot in _together(chosen):
        counts[kind_of(lot)] += lot.count
    kinds = [Kind(*kind) for kind in counts]
    if not cloth.sizes:
        seams = sum(lot.seams for lot in _together(chosen))
        length = about_length(kinds, list(counts.values()), cloth.spans[-1])
        return 0, length + seams * cloth.steps(JOIN_SAVES)
    packed = pack_scraps(kinds, list(counts.values()), cloth.sizes)
    left = sum(count * kind.width * kind.height for count, kind in zip(packed.left, kinds, strict=True))
    return left, len(packed.cuts)
