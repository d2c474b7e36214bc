"""What is set in last: the squares and triangles about a star, the outer hexagons of a flower.

A teacher joins the star first and then sets in what lies about it, piece by piece or unit by unit, the
outermost last. Such a filler meets the rest along one path from outside to outside, which turns only where
the seam of some last piece has to turn whatever is done (see set_in), so it costs no set-in seam too many.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence, Set
from itertools import pairwise, product
from typing import Final, NamedTuple

from ...geometry.stroke import place_of
from .chords import Seams
from .seam_graph import SeamGraph

AWAY_DIGITS: Final = 3
"""Decimals of an inch by which fillers are told to lie equally far out."""


class Setting(NamedTuple):
    """What is being set in: about which centre, and the filler found last, which is sewn after the next."""

    center: complex
    last: tuple[int, ...] = ()


class Filler(NamedTuple):
    """Pieces that may be set in last, and the halves along which they are; they lie on its right. `ends`: the
    links at which something is sewn to the ends of the rest of them, last of all that is sewn in them."""

    pieces: tuple[int, ...]
    halves: list[int]
    turns: int
    ends: frozenset[int] = frozenset()


def outermost(seams: Seams, pieces: Sequence[int], setting: Setting, kinds: Sequence[int]) -> Filler | None:
    """The filler of a region that lies furthest from the centre, if it is not innermost; None where there is
    none.

    Of those equally far out: first one like the last, then with the fewest turns, then next to the last, so
    that a round is gone round; then the last in reading order. `kinds` are the pieces' own.
    """
    found = [filler for group in _groups(seams, pieces) if (filler := _filler(seams, group))]
    last = sorted(kinds[piece] for piece in setting.last)
    near = middle_of(seams.graph, setting.last) if setting.last else setting.center

    def rank(filler: Filler) -> tuple[float, bool, int, float, int]:
        middle = middle_of(seams.graph, filler.pieces)
        unlike = sorted(kinds[piece] for piece in filler.pieces) != last
        return (
            -round(abs(middle - setting.center), AWAY_DIGITS),
            unlike,
            filler.turns,
            round(abs(middle - near), AWAY_DIGITS),
            -max(filler.pieces),
        )

    first = min(found, key=rank, default=None)
    if first is None:
        return None
    rest = (middle_of(seams.graph, (piece,)) for piece in pieces if piece not in first.pieces)
    nearest = min(abs(middle - setting.center) for middle in rest)
    if abs(middle_of(seams.graph, first.pieces) - setting.center) < nearest:
        return None
    return min(_arcs(seams, set(pieces), first, found), key=rank, default=first)


def _arcs(seams: Seams, inside: set[int], filler: Filler, found: Sequence[Filler]) -> Iterator[Filler]:
    """An arc with a filler sewn to either end, as the second arc of a melon with its posts: where each of the
    two alone would be set in with one turn, and a curved seam runs from turn to turn, the arc is sewn on with
    both as one seam of two turns.

    Common practice, no published source.
    """
    own = _corner(seams, filler)
    corners = {
        corner.place: corner for each in found if each is not filler and (corner := _corner(seams, each))
    }
    for half in seams.graph.halves[own.place] if own else ():
        run = _curve(seams, half, corners)
        end = corners.get(seams.graph.place_at(run[-1] ^ 1)) if run else None
        if own is None or end is None:
            continue
        for start, last in product(own.legs, end.legs):
            strip = reached(seams, filler.pieces[0], {each // 2 for each in (*start, *run, *last)})
            if strip.issuperset(end.pieces) and strip < inside:
                made = _filler(seams, tuple(sorted(strip)))
                if made and made.turns == 2:
                    within = {each // 2 for leg in (*own.legs, *end.legs) for each in leg}
                    yield made._replace(ends=frozenset(within - {each // 2 for each in made.halves}))


def _curve(seams: Seams, half: int, ends: Container[int]) -> list[int]:
    """The halves of a curved seam from a half to the first of those places; none where it is straight
    somewhere, or does not get there."""
    graph, run = seams.graph, [half]
    while graph.place_at(run[-1] ^ 1) not in ends and (onward := graph.onward[run[-1] ^ 1]) >= 0:
        if onward in run:
            return []
        run.append(onward)
    links = [graph.links[each // 2] for each in run]
    taken = any(link.rim or seams.cut[each // 2] for link, each in zip(links, run, strict=True))
    return [] if taken or any(link.stroke.center is None for link in links) else run


class _Corner(NamedTuple):
    """The one place where a filler's seam turns, the halves on either side of it, and its pieces."""

    place: int
    legs: tuple[list[int], list[int]]
    pieces: tuple[int, ...]


def _corner(seams: Seams, filler: Filler) -> _Corner | None:
    if filler.turns != 1:
        return None
    graph, halves = seams.graph, filler.halves
    at = next(at for at in range(1, len(halves)) if graph.onward[halves[at - 1] ^ 1] != halves[at])
    return _Corner(graph.place_at(halves[at]), (halves[:at], halves[at:]), filler.pieces)


def reached(seams: Seams, piece: int, barred: Set[int]) -> set[int]:
    """The pieces that hang together with one, never across a taken or barred link."""
    graph = seams.graph
    found, waiting = {piece}, [piece]
    while waiting:
        here = waiting.pop()
        for half in (half for ring in graph.rings[here] for half in ring):
            if half // 2 in barred or seams.cut[half // 2] or graph.links[half // 2].rim:
                continue
            other = graph.beyond(half // 2, here)
            if other not in found:
                found.add(other)
                waiting.append(other)
    return found


def middle_of(graph: SeamGraph, pieces: Sequence[int]) -> complex:
    """The middle of pieces by their cloth, each taken to lie about the point well inside it."""
    areas = [float(graph.pieces[piece].area) for piece in pieces]
    insides = [place_of(graph.pieces[piece].inside) for piece in pieces]
    return sum(inside * area for inside, area in zip(insides, areas, strict=True)) / sum(areas)


def _groups(seams: Seams, pieces: Sequence[int]) -> list[tuple[int, ...]]:
    """Natural units that lie whole within the pieces but are not all of them, and single other pieces."""
    naturals, inside = seams.naturals, set(pieces)
    found: dict[tuple[int, ...], None] = {}
    for piece in pieces:
        group = naturals.groups[naturals.group_of[piece]] if piece in naturals.group_of else (piece,)
        whole = len(group) < len(pieces) and inside.issuperset(group)
        found[group if whole else (piece,)] = None
    return list(found)


def _filler(seams: Seams, group: tuple[int, ...]) -> Filler | None:
    halves = _path(seams, set(group))
    if not halves:
        return None
    graph, turns = seams.graph, 0
    for before, half in pairwise(halves):
        if seams.edge[graph.place_at(half)]:
            return None
        if graph.onward[before ^ 1] != half:
            if not graph.free[graph.place_at(half)]:
                return None
            turns += 1
    return Filler(group, halves, turns) if turns else None


def _path(seams: Seams, group: set[int]) -> list[int]:
    """The halves between a group, on their right, and the rest of its region; none where they are no single
    path from outside to outside."""
    graph = seams.graph
    open_halves = [
        half
        for piece in sorted(group)
        for ring in graph.rings[piece]
        for half in ring
        if not (seams.cut[half // 2] or graph.links[half // 2].rim)
        and graph.beyond(half // 2, piece) not in group
    ]
    by_start = {graph.place_at(half): half for half in open_halves}
    ends = {graph.place_at(half ^ 1) for half in open_halves}
    starts = [half for half in open_halves if graph.place_at(half) not in ends]
    if len(starts) != 1 or len(by_start) != len(open_halves):
        return []
    path = [starts[0]]
    while (onward := by_start.get(graph.place_at(path[-1] ^ 1))) is not None:
        path.append(onward)
    return path if len(path) == len(open_halves) else []
