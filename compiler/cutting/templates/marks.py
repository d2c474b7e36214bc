"""Match marks: where two pieces are pinned together along a seam.

Every mark comes from a seam's own run between two pieces, so both pieces get theirs at the same places:
the middle of a long or curved run, its quarters where it is longer, and where a neighbour's corner meets the
middle of a side (the neighbour has a dot there).
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from ...drafting.whole_sides import WholeSide
from ...measure.tolerance import NEAR

LONG: Final = 4.0
"""Inches. A straight seam longer than this is marked at its middle (common practice, no published source)."""

VERY_LONG: Final = 8.0
"""Inches. A straight seam longer than this is marked at its quarters too: pins then stand over 2in apart."""

CURVED: Final = 1.0
"""Inches. A curved seam longer than this is marked at its middle; a shorter one is pinned at its ends."""

CURVED_LONG: Final = 2.0
"""Inches. A curved seam longer than this is marked at its quarters too: one edge has to be eased."""

TOGETHER: Final = 1 / 32
"""Inches. Marks nearer than this are drawn once: their ticks would run together in print."""


class SeamMark(NamedTuple):
    """A place on the sewing line, the outward unit normal there, and the allowance in inches."""

    at: complex
    toward: complex
    allowance: float


def side_marks(side: WholeSide) -> Iterator[SeamMark]:
    """The marks of a whole side, from its start to its end."""
    total = side.stroke.length
    if len(side.parts) == 1 and not _shares_within(side, total, side.parts[0].neighbour):
        return
    runs = seam_runs(side)
    for index, (first, last, neighbour) in enumerate(runs):
        if index:
            yield _mark_at(side, first / total)
        for share in _shares_within(side, last - first, neighbour):
            yield _mark_at(side, (first + (last - first) * share) / total)


def seam_runs(side: WholeSide) -> list[tuple[float, float, int | None]]:
    """Where along the side, in inches from its start, each neighbour begins and ends."""
    runs: list[tuple[float, float, int | None]] = []
    at = 0.0
    for part in side.parts:
        end = at + part.edge.length
        if runs and runs[-1][2] == part.neighbour:
            runs[-1] = (runs[-1][0], end, part.neighbour)
        else:
            runs.append((at, end, part.neighbour))
        at = end
    return runs


def _shares_within(side: WholeSide, length: float, neighbour: int | None) -> tuple[float, ...]:
    """The shares of one seam's length that are marked: the same from either end."""
    if neighbour is None:
        return ()
    long, very_long = (LONG, VERY_LONG) if side.stroke.center is None else (CURVED, CURVED_LONG)
    if length > very_long + NEAR:
        return (0.25, 0.5, 0.75)
    return (0.5,) if length > long + NEAR else ()


def _mark_at(side: WholeSide, share: float) -> SeamMark:
    return SeamMark(side.stroke.at(share), side.stroke.direction(share) * -1j, side.allowance)
