"""Simulated cloth with mitres that are still open: strips sewn on from dot to dot, their ends lying edge to
edge until all are on."""

from __future__ import annotations

from collections.abc import Sequence

from ...drafting.stroke import Stroke
from .misfit import Misfit
from .simulated import EXACT, Hem, SewnCloth, along_of, joined_hems


def parted(seam: Sequence[Stroke], outline: Sequence[Stroke]) -> tuple[list[Stroke], list[Stroke]]:
    """A seam's runs from dot to dot; and its mitres, which come out at the outline of what is mitred."""
    mitres = [
        run
        for run in seam
        if any(along_of(edge, place) is not None for place in (run.start, run.end) for edge in outline)
    ]
    sides = [run for run in seam if run not in mitres]
    if not sides:
        raise Misfit("no-plain-side")
    return sides, mitres


def closed(cloth: SewnCloth) -> tuple[SewnCloth, int]:
    """The cloth with its open mitres sewn from the dot out, and how many there were."""
    ring, count = list(cloth.rings[0]), 0
    while True:
        at = next((at for at in range(len(ring)) if _lie_together(ring[at - 1], ring[at])), None)
        if at is None:
            break
        if min(ring[at - 1][1], ring[at][1]) >= 0 and abs(ring[at - 1][1] - ring[at][1]) > EXACT:
            raise Misfit("mitre-allowances")
        ring = ring[: at - 1] + ring[at + 1 :] if at else ring[1:-1]
        count += 1
    return SewnCloth((tuple(joined_hems(ring)), *cloth.rings[1:])) if count else cloth, count


def _lie_together(one: Hem, two: Hem) -> bool:
    """Whether the first of two edges leads to a dot and the second back along it."""
    return abs(one[0].start - two[0].end) <= EXACT and abs(one[0].end - two[0].start) <= EXACT
