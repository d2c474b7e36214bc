"""A block parted by straight seams into the fewest sections that each go on one paper."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ...geometry.stroke import Stroke
from ...measure.record import record
from ...measure.tolerance import ONE_WAY
from ..order.folding import Added, Papers
from ..order.naturals import Naturals
from ..order.runs import joined
from ..order.seam_graph import SeamGraph

TRIES: Final = 1500
"""Regions looked at in the search for the fewest sections: every way of parting a grid of 6 x 6 has fewer.
After so many the best parting known stands."""

LOOKED_AT: Final = 60_000
"""Pieces looked at in all these regions: what keeps a block of a thousand pieces to a second."""

SMALL: Final = 150
"""Pieces. In larger regions the halves are kept fair, which bounds how deep the search goes."""

Region = frozenset[int]


@record
class Parting:
    """A section with its order, or two partings joined along a straight seam."""

    pieces: Region
    order: tuple[Added, ...] = ()
    parts: tuple[Parting, Parting] | None = None
    seam: Stroke | None = None
    count: int = 1


class Sections:
    """Partings of regions of a graph, each found once."""

    def __init__(self, graph: SeamGraph, naturals: Naturals) -> None:
        self.graph = graph
        self.naturals = naturals
        self.papers = Papers(graph)
        self.known: dict[Region, Parting] = {}
        self.tries = min(TRIES, LOOKED_AT // len(graph.pieces))

    def fewest(self, pieces: Region) -> Parting:
        """The parting of a region into the fewest sections. It must sew with straight seams alone."""
        known = self.known.get(pieces)
        if known is None:
            order = self.papers.order(pieces)
            known = Parting(pieces, tuple(order)) if order else self._parted(pieces)
            self.known[pieces] = known
        return known

    def _parted(self, pieces: Region) -> Parting:
        best: Parting | None = None
        for seam, one, two in self._seams_across(pieces):
            if best and (best.count == 2 or len(self.known) > self.tries):
                break
            first, second = self.fewest(one), self.fewest(two)
            if best is None or first.count + second.count < best.count:
                best = Parting(pieces, (), (first, second), seam, first.count + second.count)
        assert best is not None, f"no straight seam parts {len(pieces)} pieces"
        return best

    def _seams_across(self, pieces: Region) -> list[tuple[Stroke, Region, Region]]:
        """Every straight seam right across a region, and what lies right and left of it; those first that run
        through the fewest natural units, then those that promise the fewest papers, rows before columns."""
        edge = self._edge_places(pieces)
        found: dict[
            frozenset[int], tuple[tuple[int, int, int, bool, int], tuple[Stroke, Region, Region]]
        ] = {}
        for place in sorted(edge):
            for half in self.graph.halves[place]:
                path = self._follow(half, pieces, edge)
                key = frozenset(each // 2 for each in path)
                if path and key not in found:
                    one, two = self._sides(path, pieces)
                    units = len({self.naturals.within[each // 2] for each in path} - {-1})
                    (seam,) = joined([self.graph.directed(each) for each in path])
                    rank = (units, *self._fairness(one, two), _upright(seam), min(path))
                    found[key] = rank, (seam, one, two)
        return [each for _, each in sorted(found.values(), key=lambda each: each[0])]

    def _fairness(self, one: Region, two: Region) -> tuple[int, int]:
        """The less, the better: in a small region, a seam that leaves a whole paper on one side, and the
        more on it the better; else fair halves."""
        if len(one) + len(two) <= SMALL:
            whole = max((len(side) for side in (one, two) if self.papers.order(side)), default=0)
            if whole:
                return 0, -whole
        return 1, abs(len(one) - len(two))

    def _edge_places(self, pieces: Region) -> set[int]:
        return {
            self.graph.place_at(end)
            for half in self.graph.planar.bordering(pieces)
            for end in (half, half ^ 1)
        }

    def _within(self, half: int, pieces: Region) -> bool:
        link = self.graph.links[half // 2]
        return link.right in pieces and link.left in pieces and link.stroke.center is None

    def _follow(self, half: int, pieces: Region, edge: set[int]) -> list[int]:
        """The halves of a straight seam from one place of the outside to the next; none where it does not
        run so."""
        path: list[int] = []
        while half >= 0 and self._within(half, pieces):
            path.append(half)
            if self.graph.place_at(half ^ 1) in edge:
                return path
            half = self.graph.onward[half ^ 1]
        return []

    def _sides(self, path: Sequence[int], pieces: Region) -> tuple[Region, Region]:
        """The pieces right and left of a seam."""
        barred = {half // 2 for half in path}
        first = self.graph.cloth(path[0])
        met, seen = [first], {first}
        for piece in met:
            for half in (half for ring in self.graph.rings[piece] for half in ring):
                other = self.graph.beyond(half // 2, piece)
                if half // 2 not in barred and other in pieces and other not in seen:
                    seen.add(other)
                    met.append(other)
        return frozenset(seen), pieces - seen


def _upright(seam: Stroke) -> bool:
    """Whether a seam does not run level."""
    return abs(seam.direction(0).imag) > ONE_WAY
