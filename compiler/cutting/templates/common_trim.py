"""One trim for a template whose pieces have different neighbours: what every piece needs is left."""

from __future__ import annotations

from collections.abc import Sequence

from ...measure.tolerance import NEAR
from .corners import Trim
from .outlines import Corner
from .trimming import whole_reach


def common_cuts(corner: Corner, choices: Sequence[tuple[Trim, ...]]) -> tuple[Trim, ...]:
    """The cuts that leave what every choice leaves: the straight-sided outline round all the trimmed tips."""
    distinct = _distinct(choices)
    if len(distinct) < 2:
        return distinct[0] if distinct else ()
    aside = (corner.aside(False), corner.aside(True))
    tips = [aside[after] - corner.into(bool(after)) * whole_reach(corner, bool(after)) for after in (0, 1)]
    places = [place for cuts in distinct for place in _clipped([aside[0], *tips, aside[1]], cuts)]
    hull = _hull([0j, *aside, *places])
    trims = []
    for start, end in zip(hull, [*hull[1:], hull[0]], strict=True):
        normal = (end - start) / abs(end - start) * -1j
        distance = (start * normal.conjugate()).real
        on_side = any(
            abs((place * normal.conjugate()).real - distance) <= NEAR
            and abs((tip * normal.conjugate()).real - distance) <= NEAR
            for place, tip in zip(aside, tips, strict=True)
        )
        if distance > NEAR and not on_side:
            trims.append(Trim(normal, distance))
    return tuple(trims)


def differing(one: Sequence[Trim], other: Sequence[Trim]) -> bool:
    """Whether two trims of a corner are not the same cuts."""
    return not _same_cuts(one, other)


def _distinct(choices: Sequence[tuple[Trim, ...]]) -> list[tuple[Trim, ...]]:
    kept: list[tuple[Trim, ...]] = []
    for cuts in choices:
        if not any(_same_cuts(cuts, other) for other in kept):
            kept.append(cuts)
    return kept


def _same_cuts(one: Sequence[Trim], other: Sequence[Trim]) -> bool:
    return len(one) == len(other) and all(
        any(
            abs(cut.normal - each.normal) <= NEAR and abs(cut.distance - each.distance) <= NEAR
            for each in other
        )
        for cut in one
    )


def _clipped(chain: list[complex], cuts: Sequence[Trim]) -> list[complex]:
    """The open chain of places, about the corner, with what lies beyond each cut replaced by the cut."""
    for cut in cuts:
        over = [(place * cut.normal.conjugate()).real - cut.distance for place in chain]
        kept: list[complex] = []
        for at, place in enumerate(chain):
            if at and (over[at - 1] > 0) != (over[at] > 0):
                share = over[at - 1] / (over[at - 1] - over[at])
                kept.append(chain[at - 1] + (place - chain[at - 1]) * share)
            if over[at] <= NEAR / 4:
                kept.append(place)
        chain = kept
    return chain


def _hull(places: Sequence[complex]) -> list[complex]:
    """The corners of the smallest convex outline round the places, clockwise as seen."""
    ordered = sorted(places, key=lambda place: (place.real, place.imag))

    def chain(row: Sequence[complex]) -> list[complex]:
        kept: list[complex] = []
        for place in row:
            while len(kept) > 1 and _turn(kept[-2], kept[-1], place) <= NEAR * NEAR:
                kept.pop()
            if not kept or abs(kept[-1] - place) > NEAR:
                kept.append(place)
        return kept

    return chain(ordered)[:-1] + chain(ordered[::-1])[:-1]


def _turn(a: complex, b: complex, c: complex) -> float:
    return ((b - a).conjugate() * (c - b)).imag
