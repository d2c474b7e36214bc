"""Seams that run right across a region: found as they come free, and the one chosen that a quilter would sew
last.

A seam comes free when both of its ends lie on seams already taken, or on the outside. Taking one never
prevents another, so any order finds a whole order of straight seams wherever there is one.
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Sequence
from math import cos, pi, sin
from typing import Final

from .naturals import Naturals
from .seam_graph import SMOOTH, SeamGraph

PARALLEL_DIGITS: Final = 3
"""Decimals of a radian: seams nearer in direction than this are rows or columns of one set."""


class Chord:
    """A seam right across: halves from end to end. `dead` once another seam has crossed it."""

    __slots__ = ("curved", "dead", "halves", "heading", "key", "middle", "offset")

    def __init__(self, halves: list[int], middle: complex, heading: float, key: tuple[int, int, int]) -> None:
        self.halves = halves
        self.dead = False
        self.curved = bool(key[0])
        self.middle = middle
        self.heading = heading  # radians clockwise from rightward, 0 <= heading < pi
        self.key = key  # curved; natural units cut through; ends that are not square to what they meet
        self.offset = 0.0


class Seams:
    """The state of a graph as seams are taken from it."""

    def __init__(self, graph: SeamGraph, naturals: Naturals) -> None:
        self.graph = graph
        self.naturals = naturals
        self.cut = [False] * len(graph.links)
        self.edge = [False] * len(graph.places)  # whether a place lies on the outside or on a taken seam
        self.chord_of: dict[int, Chord] = {}
        for link in graph.links:
            if link.rim:
                self.edge[link.start] = self.edge[link.end] = True

    def free_from(self, place: int) -> list[Chord]:
        """The seams right across that start at a place on the outside, those known before left out."""
        found = []
        for half in self.graph.halves[place]:
            link = half // 2
            if not self.cut[link] and not self.graph.links[link].rim:
                chord = self._follow(half)
                if chord:
                    found.append(chord)
        return found

    def take(self, halves: Sequence[int]) -> list[Chord]:
        """Cuts along halves from end to end, and returns the seams that this sets free."""
        for half in halves:
            self.cut[half // 2] = True
            old = self.chord_of.pop(half // 2, None)
            if old:
                old.dead = True
        inner = [self.graph.place_at(half) for half in halves[1:]]
        for place in inner:
            self.edge[place] = True
        return [chord for place in inner for chord in self.free_from(place)]

    def _follow(self, half: int) -> Chord | None:
        """The seam from a half to the next place on the outside, if it gets there without turning."""
        graph = self.graph
        first, halves = half, []
        while True:
            halves.append(half)
            place = graph.place_at(half ^ 1)
            if self.edge[place]:
                break
            half = graph.onward[half ^ 1]
            if half < 0:
                return None
        if place == graph.place_at(first):
            return None
        known = self.chord_of.get(first // 2)
        if known and len(known.halves) == len(halves) and not known.dead:
            return None
        return self._chord(halves)

    def _chord(self, halves: list[int]) -> Chord:
        graph = self.graph
        curved = any(graph.links[half // 2].stroke.center is not None for half in halves)
        first, last = graph.places[graph.place_at(halves[0])], graph.places[graph.place_at(halves[-1] ^ 1)]
        units = {self.naturals.within[half // 2] for half in halves} - {-1}
        slanted = (not self._square(halves[0])) + (not self._square(halves[-1] ^ 1))
        heading = round(phase(last - first) % pi, PARALLEL_DIGITS) % round(pi, PARALLEL_DIGITS)
        chord = Chord(halves, (first + last) / 2, heading, (int(curved), len(units), slanted))
        for half in halves:
            old = self.chord_of.get(half // 2)
            if old:
                old.dead = True
            self.chord_of[half // 2] = chord
        return chord

    def _square(self, half: int) -> bool:
        """Whether a half leaves its place square to the outside there."""
        graph = self.graph
        own = graph.away(half)
        for other in graph.halves[graph.place_at(half)]:
            if other == half or not (graph.links[other // 2].rim or self.cut[other // 2]):
                continue
            between = abs(phase(graph.away(other) / own))
            if min(abs(between - pi / 2), abs(between - pi)) > SMOOTH:
                return False
        return True


def choices(chords: Sequence[Chord], heading: float | None, in_rows: bool) -> list[list[Chord]]:
    """The seams worth taking, the best set of parallel ones first, of each the middle one or two.

    Straight before curved; through the fewest natural units; square to the outside. Of a set of parallel
    seams the middle one; sets that go on as the last seam went come first, then rows, then columns.
    `in_rows`: what goes on as the last seam went comes before what is square to the outside.
    """
    best = min(chord.key for chord in chords)
    if in_rows:
        onward = [chord for chord in chords if chord.key[:2] == best[:2] and chord.heading == heading]
        best = min((chord.key for chord in onward), default=best)
        chords = onward or chords
    sets: dict[float, list[Chord]] = {}
    for chord in chords:
        if chord.key == best:
            sets.setdefault(0.0 if chord.curved else chord.heading, []).append(chord)
    order = sorted(sets, key=lambda each: (each != heading, each != 0, abs(each - pi / 2) > 0.01, each))
    found = []
    for each in order:
        rows = sorted(sets[each], key=_across)
        middle = len(rows) // 2
        found.append([rows[middle]] if len(rows) % 2 else [rows[middle], rows[middle - 1]])
    return found


def _across(chord: Chord) -> tuple[float, float, int]:
    """Where a seam lies across its own heading, from the left or the top; then along it."""
    along = chord.middle * complex(cos(chord.heading), -sin(chord.heading))
    return (
        round(along.imag if chord.heading == 0 else -along.imag, 6),
        round(along.real, 6),
        len(chord.halves),
    )
