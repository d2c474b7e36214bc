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

from ...measure.tolerance import ONE_WAY
from .naturals import Naturals
from .seam_graph import SeamGraph

PARALLEL_DIGITS: Final = 3
"""Decimals of a radian: seams nearer in direction than this are rows or columns of one set."""


class Chord:
    """A seam right across: halves from end to end. `dead` once another seam has crossed it."""

    __slots__ = ("curved", "dead", "from_edges", "halves", "heading", "key", "middle", "units")

    def __init__(
        self,
        halves: list[int],
        middle: complex,
        heading: float,
        curved: bool,
        units: int,
        ends: Sequence[tuple[bool, bool]],
    ) -> None:
        self.halves = halves
        self.dead = False
        self.curved = curved
        self.units = units  # natural ones that it cuts through
        self.middle = middle
        self.heading = heading  # radians clockwise from rightward, 0 <= heading < pi
        self.judge(ends)

    def judge(self, ends: Sequence[tuple[bool, bool]]) -> None:
        """Takes in how both ends meet what they meet: whether they square no part off, and whether they come
        to the middle of an edge."""
        slanted, new = (sum(each) for each in zip(*ends, strict=True))
        self.from_edges = new == 2
        self.key = int(self.curved), self.units, slanted, int(new > 0)


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
        for place in {self.graph.place_at(halves[0]), self.graph.place_at(halves[-1] ^ 1)}:
            self._look_again(place)
        return [chord for place in inner for chord in self.free_from(place)]

    def take_round(self, loop: Sequence[int]) -> list[Chord]:
        """Cuts along halves that close on themselves, and returns the seams that this sets free."""
        start = self.graph.place_at(loop[0])
        self.edge[start] = True
        return [*self.take(loop), *self.free_from(start)]

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
        heading = round(phase(last - first) % pi, PARALLEL_DIGITS) % round(pi, PARALLEL_DIGITS)
        chord = Chord(halves, (first + last) / 2, heading, curved, len(units), self._ends(halves))
        for half in halves:
            old = self.chord_of.get(half // 2)
            if old:
                old.dead = True
            self.chord_of[half // 2] = chord
        return chord

    def _look_again(self, place: int) -> None:
        """Judges the ends of known seams anew where another has come to end beside them."""
        for half in self.graph.halves[place]:
            chord = self.chord_of.get(half // 2)
            if chord and half in (chord.halves[0], chord.halves[-1] ^ 1):
                chord.judge(self._ends(chord.halves))

    def _ends(self, halves: Sequence[int]) -> list[tuple[bool, bool]]:
        return [self._end(halves[0]), self._end(halves[-1] ^ 1)]

    def _end(self, half: int) -> tuple[bool, bool]:
        """Of a seam's end: whether no part beside it is square there or runs straight on; and whether it
        comes to the middle of an edge."""
        graph = self.graph
        own = graph.away(half)
        turned = sorted(
            phase(graph.away(other) / own) % (2 * pi)
            for other in graph.halves[graph.place_at(half)]
            if other != half and (graph.links[other // 2].rim or self.cut[other // 2])
        )
        beside = (turned[0], 2 * pi - turned[-1])
        square = any(min(abs(angle - pi / 2), abs(angle - pi)) <= ONE_WAY for angle in beside)
        return not square, abs(sum(beside) - pi) <= ONE_WAY


def choices(chords: Sequence[Chord], heading: float | None, frame: float) -> list[list[Chord]]:
    """The seams worth taking, the best set of parallel ones first, each in order across.

    Straight before curved; through the fewest natural units; square to the outside; from corner to corner.
    Sets that go on as the last seam went come first, then rows, then columns. Where all else runs slantwise,
    the corner opposite one that was cut off comes before what is square to the outside.
    """
    best = min(chord.key for chord in chords)
    if all(_slants(chord, frame) for chord in chords if chord.key == best):
        onward = [
            chord
            for chord in chords
            if chord.key[:2] == best[:2] and chord.heading == heading and chord.from_edges
        ]
        best = min((chord.key for chord in onward), default=best)
        chords = onward or chords
    sets: dict[float, list[Chord]] = {}
    for chord in chords:
        if chord.key == best:
            sets.setdefault(0.0 if chord.curved else chord.heading, []).append(chord)
    order = sorted(sets, key=lambda each: (each != heading, each != 0, abs(each - pi / 2) > 0.01, each))
    return [sorted(sets[each], key=_place) for each in order]


def _slants(chord: Chord, frame: float) -> bool:
    """Whether a seam runs slantwise in a region and is not square at both ends."""
    aside = (chord.heading - frame) % (pi / 2)
    return chord.key[2] > 0 and min(aside, pi / 2 - aside) > 10**-PARALLEL_DIGITS


def _place(chord: Chord) -> tuple[float, float, int]:
    """Where a seam lies across its own heading, from the left or the top; then along it."""
    along = chord.middle * complex(cos(chord.heading), -sin(chord.heading))
    return across(chord.middle, chord.heading), round(along.real, 6), len(chord.halves)


def across(place: complex, heading: float) -> float:
    """Inches by which a place lies across a heading, from the left or the top."""
    found = (place * complex(cos(heading), -sin(heading))).imag
    return round(found if heading == 0 else -found, 6)
