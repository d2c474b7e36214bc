"""Rings: what lies between a round seam and the outside, or between two round seams.

A wheel set in a ground, or a ring of wedges round a hub, has a seam that runs round it smoothly. No seam gets
across it without turning twice where seams run on, so every order along open paths sets in what need not be.
A teacher sews the ring by itself: two halves (or thirds, where they are alike and halves are not), joined by
the last two seams; then what lies within is set in all round, once.

Common practice, no published source.
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from math import pi
from typing import Final, NamedTuple

from ...geometry.stroke import doubled_area
from .chords import Seams
from .fillers import middle_of, reached
from .likeness import PlacedPiece, alike
from .seam_graph import SeamGraph

THIRDS: Final = 3


class RingCut(NamedTuple):
    """A region parted into a ring and what lies within it, and the ring into two.

    `loop` are the halves round what lies within, with the ring on their right; `across` the halves of the two
    seams that close the ring, with `first` on their right; `within`, `first` and `second` are pieces.
    """

    loop: list[int]
    across: tuple[list[int], list[int]]
    within: tuple[int, ...]
    first: tuple[int, ...]
    second: tuple[int, ...]


class Rings:
    """The seams of a graph that run all round smoothly, and how regions are parted along them."""

    def __init__(self, seams: Seams, poses: Sequence[PlacedPiece]) -> None:
        self.seams = seams
        self.graph = seams.graph
        self.poses = poses
        self.loops = sorted(_loops(self.graph), key=lambda loop: (-_size(self.graph, loop), min(loop)))

    def cut(self, pieces: Sequence[int]) -> RingCut | None:
        """The largest ring of a region; None where there is none that two seams or more run across."""
        inside = set(pieces)
        for loop in self.loops:
            if all(self._lies_within(half, inside) for half in loop):
                found = self._parted(loop, inside)
                if found:
                    return found
        return None

    def _lies_within(self, half: int, inside: set[int]) -> bool:
        """Whether a half of a loop lies between two pieces of a region, off all that is taken."""
        link = self.graph.links[half // 2]
        free = not self.seams.cut[half // 2] and not self.seams.edge[self.graph.place_at(half)]
        return free and link.right in inside and link.left in inside

    def _parted(self, loop: list[int], inside: set[int]) -> RingCut | None:
        barred = {half // 2 for half in loop}
        ring = reached(self.seams, self.graph.cloth(loop[0]), barred)
        spokes = [spoke for at in range(len(loop)) for spoke in self._spokes(loop, at, ring)]
        if len(ring) == len(inside) or len(spokes) < 2:
            return None
        barred |= {half // 2 for spoke in spokes for half in spoke}
        sectors = [reached(self.seams, self.graph.cloth(spoke[0] ^ 1), barred) for spoke in spokes]
        if sum(map(len, sectors)) != len(ring) or set().union(*sectors) != ring:
            return None
        pair = min(self._pairs(spokes), key=lambda pair: self._rank(pair, spokes, sectors), default=None)
        if pair is None:
            return None
        first, second = (
            tuple(sorted(part)) for part in (_between(sectors, *pair), _between(sectors, *pair[::-1]))
        )
        back, out = (spokes[at] for at in pair)
        if self._lies_first(second, first):
            first, second, back, out = second, first, out, back
        across = [half ^ 1 for half in reversed(back)], out
        return RingCut(loop, across, tuple(sorted(inside - ring)), first, second)

    def _spokes(self, loop: list[int], at: int, ring: set[int]) -> Iterator[list[int]]:
        """The seams that run from a place of a loop right across the ring to the outside, in the order in
        which the loop goes past them."""
        graph = self.graph
        back = graph.away(loop[at - 1] ^ 1)
        leaving = [
            half
            for half in graph.halves[graph.place_at(loop[at])]
            if graph.cloth(half) in ring and graph.cloth(half ^ 1) in ring and not self.seams.cut[half // 2]
        ]
        on_loop = {graph.place_at(half) for half in loop}
        for first in sorted(leaving, key=lambda half: -(phase(graph.away(half) / back) % (2 * pi))):
            halves = [first]
            while (place := graph.place_at(halves[-1] ^ 1)) not in on_loop and not self.seams.edge[place]:
                following = graph.onward[halves[-1] ^ 1]
                if following < 0 or following in halves:
                    break
                halves.append(following)
            if self.seams.edge[place]:
                yield halves

    def _pairs(self, spokes: Sequence[list[int]]) -> Iterator[tuple[int, int]]:
        """Two spokes each that meet at neither end."""
        for one, two in combinations(range(len(spokes)), 2):
            ends = [
                (self.graph.place_at(spokes[at][0]), self.graph.place_at(spokes[at][-1] ^ 1))
                for at in (one, two)
            ]
            if ends[0][0] != ends[1][0] and ends[0][1] != ends[1][1]:
                yield one, two

    def _rank(
        self, pair: tuple[int, int], spokes: Sequence[list[int]], sectors: Sequence[set[int]]
    ) -> tuple[int, bool, bool, int, float, tuple[int, int]]:
        """Through the fewest natural units; into two alike; into a third of three alike; most evenly; along
        the seams that lie most nearly level."""
        units = {self.seams.naturals.within[half // 2] for at in pair for half in spokes[at]} - {-1}
        one, two = (sorted(_between(sectors, *each)) for each in (pair, pair[::-1]))
        thirds = len(sectors) % THIRDS == 0 and (pair[1] - pair[0]) * THIRDS % len(sectors) == 0
        ends = [self.graph.places[self.graph.place_at(spokes[at][-1] ^ 1)] for at in pair]
        along = ends[1] - ends[0]
        return (
            len(units),
            not self._alike(one, two),
            not (thirds and self._in_thirds(pair, sectors)),
            abs(len(one) - len(two)),
            round(abs(along.imag) / abs(along), 3),
            pair,
        )

    def _alike(self, one: Sequence[int], two: Sequence[int]) -> bool:
        return len(one) == len(two) and alike(one, two, self.poses) is not None

    def _in_thirds(self, pair: tuple[int, int], sectors: Sequence[set[int]]) -> bool:
        """Whether a ring is three alike, counted from a pair's first spoke."""
        third = len(sectors) // THIRDS
        starts = [(pair[0] + each * third) % len(sectors) for each in range(THIRDS + 1)]
        parts = [sorted(_between(sectors, *each)) for each in pairwise(starts)]
        return all(self._alike(parts[0], part) for part in parts[1:])

    def _lies_first(self, one: Sequence[int], two: Sequence[int]) -> bool:
        """Whether the first pieces lie above the second, or else to the left."""
        middles = [middle_of(self.graph, part) for part in (one, two)]
        places = [(round(middle.imag, 6), round(middle.real, 6)) for middle in middles]
        return places[0] < places[1]


def _between(sectors: Sequence[set[int]], one: int, two: int) -> set[int]:
    """The pieces from one spoke round to another."""
    count = (two - one) % len(sectors)
    return set().union(*(sectors[(one + each) % len(sectors)] for each in range(count)))


def _loops(graph: SeamGraph) -> Iterator[list[int]]:
    """The seams that run on into themselves, none coming to a place twice, with what they go round on their
    left."""
    seen: set[int] = set()
    for start in range(2 * len(graph.links)):
        if start // 2 in seen or graph.links[start // 2].rim:
            continue
        loop = [start]
        while (half := graph.onward[loop[-1] ^ 1]) >= 0 and half // 2 not in seen and half != start:
            seen.add(half // 2)
            loop.append(half)
        seen.add(start // 2)
        if half == start and len({graph.place_at(each) for each in loop}) == len(loop):
            if doubled_area([graph.directed(each) for each in loop]) > 0:
                loop = [each ^ 1 for each in reversed(loop)]
            yield loop


def _size(graph: SeamGraph, loop: Sequence[int]) -> float:
    """Twice the area that a loop goes round, in square inches."""
    return round(abs(doubled_area([graph.directed(half) for half in loop])), 6)
