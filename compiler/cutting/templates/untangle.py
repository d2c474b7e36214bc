"""A closed ring of strokes that crosses itself, to the rings that bound what it goes round.

The ring is cut wherever it meets itself; a cut piece is kept where only the ground on its right is covered.
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Iterator, Sequence
from math import pi
from typing import Final

from ...geometry.stroke import Stroke, doubled_area
from ...measure.tolerance import ASIDE, CRUMB, LEAST_RING
from .crossing import joined_up, meetings, part_of, winding

MEET: Final = 3 * CRUMB
"""Inches. Ends nearer than this are one corner of the untangled ring: a crumb may have been lost between."""


HALF: Final = 0.5
"""Turns. Winding is a whole number but for rounding, so a half tells 0 from 1."""


def untangled(ring: Sequence[Stroke], hole: bool) -> list[list[Stroke]]:
    """The rings round the ground that the tangled ring covers, largest first.

    Outer rings come out clockwise, and any gap enclosed anticlockwise. Of a `hole` (a ring that runs
    anticlockwise) what comes out is the ground that it leaves uncovered: nothing, where the hole has closed.
    """
    pieces = _cut_at_meetings(ring)
    sign = -1 if hole else 1
    kept: dict[tuple[int, int, int, int, int, int], Stroke] = {}
    for piece in pieces:
        middle, aside = piece.at(0.5), piece.direction(0.5) * 1j * ASIDE
        right, left = winding(ring, middle + aside) * sign, winding(ring, middle - aside) * sign
        if hole:
            right, left = left, right
        if right > HALF and left < HALF:
            kept.setdefault(_place_key(piece), piece)
    rings = [joined_up(chain) for chain in _chained(list(kept.values()))]
    sizes = [(doubled_area(each) * sign / 2, each) for each in rings if len(each) > 0]
    sizes = [(size, each) for size, each in sizes if abs(size) > LEAST_RING]
    return [each for _, each in sorted(sizes, key=lambda pair: -pair[0])]


def crosses_itself(ring: Sequence[Stroke]) -> bool:
    """Whether strokes of the ring meet anywhere but end to start."""
    for at, other, first, second in _meetings_in(ring):
        follows = other == at + 1 and first > 1 - CRUMB and second < CRUMB
        leads = (other + 1) % len(ring) == at and first < CRUMB and second > 1 - CRUMB
        if not (follows or leads):
            return True
    return False


def _meetings_in(ring: Sequence[Stroke]) -> Iterator[tuple[int, int, float, float]]:
    """Where strokes of the ring meet: the numbers of both, and the share of each."""
    for at, one in enumerate(ring):
        for other, two in enumerate(ring[at + 1 :], at + 1):
            if not _apart(one, two):
                yield from ((at, other, *shares) for shares in meetings(one, two))


def _apart(one: Stroke, two: Stroke) -> bool:
    """Whether two strokes are too far apart to meet, by the circles about their ends."""
    between = abs((one.start + one.end) / 2 - (two.start + two.end) / 2)
    return between > _reach(one) + _reach(two) + CRUMB


def _reach(stroke: Stroke) -> float:
    if stroke.center is None:
        return abs(stroke.end - stroke.start) / 2
    return stroke.length


def _cut_at_meetings(ring: Sequence[Stroke]) -> list[Stroke]:
    shares: list[list[float]] = [[0.0, 1.0] for _ in ring]
    for at, other, first, second in _meetings_in(ring):
        shares[at].append(first)
        shares[other].append(second)
    pieces = []
    for stroke, cuts in zip(ring, shares, strict=True):
        steps = sorted(cuts)
        start = steps[0]
        for step in steps[1:]:
            if (step - start) * stroke.length > CRUMB:
                pieces.append(part_of(stroke, start, step))
                start = step
    return pieces


def _place_key(piece: Stroke) -> tuple[int, int, int, int, int, int]:
    """The same for pieces that run together: they are kept once."""
    middle = piece.at(0.5)
    places = (piece.start, middle, piece.end)
    a, b, c = ((round(place.real / MEET), round(place.imag / MEET)) for place in places)
    return (*a, *b, *c)


def _chained(pieces: list[Stroke]) -> list[list[Stroke]]:
    """The pieces as closed chains; where several lead on, the sharpest turn to the right."""
    chains = []
    left = sorted(pieces, key=lambda each: (each.start.real, each.start.imag, each.end.real, each.end.imag))
    while left:
        chain = [left.pop(0)]
        while abs(chain[-1].end - chain[0].start) > MEET:
            following = _following(chain[-1], left)
            if following is None:
                break
            left.remove(following)
            chain.append(following)
        if abs(chain[-1].end - chain[0].start) <= MEET:
            chains.append(chain)
    return chains


def _following(stroke: Stroke, pieces: Sequence[Stroke]) -> Stroke | None:
    near = [piece for piece in pieces if abs(piece.start - stroke.end) <= MEET]
    arriving = stroke.direction(1)

    def turn_left(piece: Stroke) -> float:
        turned = phase(piece.direction(0) / arriving)
        return -turned if turned < pi - CRUMB else pi

    return min(near, key=turn_left, default=None)
