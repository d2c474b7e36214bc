"""Where no seam runs right across: the path that costs the fewest set-in seams.

At a place inside a region some last seam passes through; it turns there, and is set in, unless it takes two
links that run on into each other. A place where no two links do so costs one set-in seam whatever is done
(the Y where three patches meet), so a turn there is free; a turn where links run on into each other is one
too many. Taking a path without such needless turns never makes another path dearer, so whatever order is
found has as few set-in seams as there are Y places, and more only where seams lap round each other like a
pinwheel.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from heapq import heappop, heappush
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


class Path(NamedTuple):
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


def halving_path(seams: Seams, pieces: Sequence[int], edge: int) -> list[int] | None:
    """Where many patches meet by threes: a path from side to side without needless turns, as between two rows
    of hexagons; None where there are few such places, or none such path leaves two fair halves."""
    within = frozenset(pieces)
    border = walk_border(seams.graph, seams.cut, edge)
    inner = {
        place: None
        for half in _halves(seams, within)
        if not seams.edge[place := seams.graph.place_at(half)]
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
        for path in (path for start in _leaving(seams, place, within)
                     for path in _paths_from(seams, start, within, True)):
            aside = far.get(seams.graph.place_at(path.halves[-1] ^ 1), len(ends))
            if path.cost[0] == 0 and aside * FAIR <= len(ends):
                found.append((len(path.halves), aside, path.halves))
    return min(found)[2] if found else None


def _leaving(seams: Seams, place: int, within: frozenset[int]) -> list[int]:
    """The halves at a place that are not taken yet and lie within the pieces."""
    return [
        half
        for half in seams.graph.halves[place]
        if not seams.cut[half // 2]
        and not seams.graph.links[half // 2].rim
        and _inside(seams, half, within)
    ]


def _best(seams: Seams, pieces: Sequence[int], whole: int, center: complex) -> Path | None:
    """Of all cheapest paths the one that parts off what lies furthest out; of those the one that parts off
    least, then the last in reading order."""
    within = frozenset(pieces)
    starts = [half for half in _halves(seams, within) if seams.edge[seams.graph.place_at(half)]]
    paths: list[Path] = []
    for start in starts:
        for path in _paths_from(seams, start, within):
            if not paths or path.cost <= paths[0].cost:
                if paths and path.cost < paths[0].cost:
                    paths.clear()
                paths.append(path)
    if not paths:
        return None
    return min(paths, key=lambda path: _small_side(seams, path, whole, center))


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


def _paths_from(seams: Seams, start: int, within: frozenset[int], shortest: bool = False) -> list[Path]:
    """The cheapest path from a half on the outside to every other place of the outside; of those without
    needless turns the one of fewest links through a whole region, where `shortest`, else the one of fewest
    turns."""
    graph = seams.graph
    queue: list[tuple[Cost, int, int, int]] = [(_cost((0, 0, 0), seams, start), 1, start, -1)]
    came: dict[int, int] = {}
    ends: dict[int, Path] = {}
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
                    ends[place] = Path(halves, cost)
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


def _simple(seams: Seams, halves: Sequence[int]) -> bool:
    """Whether a path comes to no place twice; back to its first place is allowed where it goes round
    something."""
    places = [seams.graph.place_at(half) for half in halves]
    return len(set(places)) == len(places)


def _small_side(
    seams: Seams, path: Path, whole: int, center: complex
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
