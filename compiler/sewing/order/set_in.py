"""Where no seam runs right across: the path that costs the fewest set-in seams.

At a place inside a region some last seam passes through; it turns there, and is set in, unless it takes two
links that run on into each other. A place where no two links do so costs one set-in seam whatever is done
(the Y where three patches meet), so a turn there is free; a turn where links run on into each other is one
too many. Taking a path without such needless turns never makes another path dearer, so whatever order is
found has as few set-in seams as there are Y places, and more only where seams lap round each other like a
pinwheel.

There always is an order. A region is one stretch of cloth without windows (what fills a window is a field of
its own, and so is what hangs in one piece by a corner), and a path from outside to outside leaves two such
regions. Walk round one of its pieces that has an edge on the outside: what it shares with the rest falls into
runs, each from outside to outside. Where there is one run, it is a path that parts this piece from the rest.
Where there are more, each parts off a region of its own, which has an edge on the outside too; of all pieces
on the outside and all that their runs part off, take a smallest such region, and a piece in it with an edge
on the outside. Had that piece two runs, one of them would part off less. So it has one: in every region some
piece can be parted off by one path, and what is left is a region with a piece less.

The cheapest way from place to place may cross itself, as it does where seams lap round a centre. Such a way
is no path. Where all of them are such, ways are looked for again that come to no place twice, and so are the
single pieces that the argument promises.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from heapq import heappop, heappush
from itertools import chain, pairwise
from typing import Final, NamedTuple

from .borders import walk_border
from .chords import Seams
from .fillers import middle_of

WHOLE: Final = 40
"""Pieces. Regions up to this are searched whole; in larger ones a part this near the outside is searched
first, so that a thousand hexagons take ten times as long as a hundred."""

PART: Final = 14
"""Pieces in such a part."""

FEW: Final = 48
"""Places where three patches meet. Up to so many, what meets there is set in piece by piece, as about a star
within a star; where there are more, as between hexagons, halving keeps the cost of a thousand in bounds."""

STARTS: Final = 4
"""Places round the outside from which a halving path is looked for."""

FAIR: Final = 3
"""A halving path ends at most one part in this many of the way round from straight across."""

Cost = tuple[int, int, int]
"""Needless turns, natural units cut through, turns."""


class SeamPath(NamedTuple):
    """Halves from the outside to the outside, and the pieces it parts from the rest."""

    halves: list[int]
    cost: Cost


def find_path(
    seams: Seams, count: int, pieces: Callable[[int], Sequence[int]], edge: int, center: complex
) -> list[int]:
    """The halves of the best path through a region of so many pieces, with a half on its outside.

    `pieces` gives the first so many of them from the outside inward; all of them for 0. `center` is what the
    region is set together about.
    """
    if count > WHOLE:
        found = _best(seams, pieces(PART), count, center)
        if found and found.cost[0] == 0:
            return found.halves
    best = _best(seams, pieces(0), count, center)
    assert best is not None, f"no seam parts {count} pieces"
    return best.halves


def turns_needlessly(seams: Seams, pieces: Sequence[int]) -> bool:
    """Whether every path through a region turns somewhere that it need not."""
    within = frozenset(pieces)
    starts = [half for half in _halves(seams, within) if seams.edge[seams.graph.place_at(half)]]
    return all(path.cost[0] for start in starts for path in _paths_from(seams, start, within))


def halving_path(seams: Seams, pieces: Sequence[int], edge: int) -> list[int] | None:
    """Where many patches meet by threes: a path from side to side without needless turns, as between two rows
    of hexagons; None where there are few such places, or none such path leaves two fair halves."""
    within = frozenset(pieces)
    border = walk_border(seams.graph, seams.cut, edge)
    inner = {
        place: None for half in _halves(seams, within) if not seams.edge[place := seams.graph.place_at(half)]
    }
    if sum(seams.graph.free[place] for place in inner) <= FEW:
        return None
    ends = [half for half in border if _leaving(seams, seams.graph.place_at(half), within)]
    found: list[tuple[int, int, list[int]]] = []
    for share in range(STARTS):
        at = len(ends) * share // STARTS
        place = seams.graph.place_at(ends[at])
        far = {
            seams.graph.place_at(half): abs(2 * ((n - at) % len(ends)) - len(ends))
            for n, half in enumerate(ends)
        }
        for path in (
            path
            for start in _leaving(seams, place, within)
            for path in _paths_from(seams, start, within, True)
        ):
            aside = far.get(seams.graph.place_at(path.halves[-1] ^ 1), len(ends))
            if path.cost[0] == 0 and aside * FAIR <= len(ends):
                found.append((len(path.halves), aside, path.halves))
    return min(found)[2] if found else None


def _leaving(seams: Seams, place: int, within: frozenset[int]) -> list[int]:
    """The halves at a place that are not taken yet and lie within the pieces."""
    return [
        half
        for half in seams.graph.halves[place]
        if not seams.cut[half // 2] and not seams.graph.links[half // 2].rim and _inside(seams, half, within)
    ]


def _best(seams: Seams, pieces: Sequence[int], whole: int, center: complex) -> SeamPath | None:
    """Of all cheapest paths the one that parts off what lies furthest out; of those the one that parts off
    least, then the last in reading order."""
    within = frozenset(pieces)
    starts = [half for half in _halves(seams, within) if seams.edge[seams.graph.place_at(half)]]
    paths = _cheapest(path for start in starts for path in _paths_from(seams, start, within))
    if not paths and len(within) == whole:
        ways = (path for start in starts for path in _paths_from(seams, start, within, never_twice=True))
        paths = _cheapest(chain(ways, _single_pieces(seams, within)))
    return min(paths, key=lambda path: _small_side(seams, path, whole, center), default=None)


def _cheapest(found: Iterable[SeamPath]) -> list[SeamPath]:
    """Of all paths those that cost the least."""
    paths: list[SeamPath] = []
    for path in found:
        if not paths or path.cost <= paths[0].cost:
            if paths and path.cost < paths[0].cost:
                paths.clear()
            paths.append(path)
    return paths


def _single_pieces(seams: Seams, within: frozenset[int]) -> Iterator[SeamPath]:
    """The paths round single pieces of a whole region that one path parts from the rest."""
    graph = seams.graph
    for piece in sorted(within):
        halves = [
            half
            for ring in graph.rings[piece]
            for half in ring
            if not seams.cut[half // 2] and not graph.links[half // 2].rim
        ]
        starts = [at for at, half in enumerate(halves) if _begins_run(seams, halves[at - 1], half)]
        if len(starts) == 1:
            path = halves[starts[0] :] + halves[: starts[0]]
            if _simple(seams, path):
                yield SeamPath(path, _cost_of(seams, path))


def _begins_run(seams: Seams, before: int, half: int) -> bool:
    """Whether a half round a piece does not go on from the one before it within the region."""
    place = seams.graph.place_at(half)
    return seams.edge[place] or seams.graph.place_at(before ^ 1) != place


def _cost_of(seams: Seams, halves: Sequence[int]) -> Cost:
    graph = seams.graph
    turned = [graph.place_at(two) for one, two in pairwise(halves) if graph.onward[one ^ 1] != two]
    units = sum(seams.naturals.held[half // 2] for half in halves)
    return sum(not graph.free[place] for place in turned), units, len(turned)


def _halves(seams: Seams, within: frozenset[int]) -> list[int]:
    """Every half of the uncut links between pieces of a region."""
    found: dict[int, None] = {}
    for piece in sorted(within):
        for ring in seams.graph.rings[piece]:
            for half in ring:
                link = seams.graph.links[half // 2]
                if not seams.cut[half // 2] and not link.rim and link.right in within and link.left in within:
                    found[half & ~1] = found[half | 1] = None
    return list(found)


def _paths_from(
    seams: Seams, start: int, within: frozenset[int], shortest: bool = False, never_twice: bool = False
) -> list[SeamPath]:
    """The cheapest path from a half on the outside to every other place of the outside; of those without
    needless turns the one of fewest links through a whole region, where `shortest`, else the one of fewest
    turns. Where the cheapest way comes to a place twice there is none, but with `never_twice`: then no way
    is followed on to a place where it has been."""
    graph = seams.graph
    queue: list[tuple[Cost, int, int, int]] = [(_cost((0, 0, 0), seams, start), 1, start, -1)]
    came: dict[int, int] = {}
    ends: dict[int, SeamPath] = {}
    while queue:
        cost, steps, half, before = heappop(queue)
        if half in came:
            continue
        came[half] = before
        place = graph.place_at(half ^ 1)
        if seams.edge[place]:
            if place not in ends:
                halves = _walked(came, half)
                if _simple(seams, halves):
                    ends[place] = SeamPath(halves, cost)
            continue
        if never_twice and not _simple(seams, _walked(came, half), place):
            continue
        leaving = graph.halves[place] if shortest else _leaving(seams, place, within)
        free = graph.free[place]
        for following in leaving:
            if following == half ^ 1 or following in came:
                continue
            turns = graph.onward[half ^ 1] != following
            dearer = (cost[0] + (turns and not free), cost[1], cost[2] + (shortest or turns))
            heappush(queue, (_cost(dearer, seams, following), steps + 1, following, half))
    return list(ends.values())


def _inside(seams: Seams, half: int, within: frozenset[int]) -> bool:
    link = seams.graph.links[half // 2]
    return link.right in within and link.left in within


def _cost(cost: Cost, seams: Seams, half: int) -> Cost:
    return cost[0], cost[1] + seams.naturals.held[half // 2], cost[2]


def _walked(came: dict[int, int], half: int) -> list[int]:
    halves = []
    while half >= 0:
        halves.append(half)
        half = came[half]
    return halves[::-1]


def _simple(seams: Seams, halves: Sequence[int], end: int = -1) -> bool:
    """Whether a path, to its end where that lies inside, comes to no place twice; back to its first place is
    allowed where it goes round something."""
    places = [*map(seams.graph.place_at, halves), end]
    return len(set(places)) == len(places)


def _small_side(
    seams: Seams, path: SeamPath, whole: int, center: complex
) -> tuple[float, float, int, int, tuple[int, ...]]:
    """How far out the side with fewer pieces lies; its area; then its highest number first."""
    side = small_side(seams, path.halves, whole)
    area = sum(float(seams.graph.pieces[piece].area) for piece in side)
    away = abs(middle_of(seams.graph, side) - center)
    return -round(away, 3), round(area, 6), -max(side), len(path.halves), tuple(path.halves)


def small_side(seams: Seams, halves: Sequence[int], whole: int) -> list[int]:
    """The pieces on the side of a path that is walked round first; the sides are walked by turns.

    `whole`: how many pieces lie on both sides together.
    """
    barred = {half // 2 for half in halves}
    first = seams.graph.links[halves[0] // 2]
    walks = [_Walk(seams, first.right, barred), _Walk(seams, first.left, barred)]
    while True:
        for walk in walks:
            if walk.step():
                assert len(walk.met) < whole or whole == 1, "a path parts nothing"
                return walk.met


class _Walk:
    """Pieces met one link at a time from a first, never across a taken or barred link."""

    def __init__(self, seams: Seams, piece: int, barred: set[int]) -> None:
        self.seams = seams
        self.barred = barred
        self.met = [piece]
        self.seen = {piece}
        self.at = 0
        self.rest = self._halves(piece)

    def _halves(self, piece: int) -> list[int]:
        return [half // 2 for ring in self.seams.graph.rings[piece] for half in reversed(ring)]

    def step(self) -> bool:
        """Looks across one link; whether all has been walked."""
        if not self.rest:
            self.at += 1
            if self.at == len(self.met):
                return True
            self.rest = self._halves(self.met[self.at])
            return False
        number = self.rest.pop()
        link = self.seams.graph.links[number]
        if not link.rim and not self.seams.cut[number] and number not in self.barred:
            piece = self.seams.graph.beyond(number, self.met[self.at])
            if piece not in self.seen:
                self.seen.add(piece)
                self.met.append(piece)
        return False
