"""Points of a draft found by ruler and compass, the easiest way first: each way a sentence.

The ways: a corner's compass opened to the centre; circles about the centre or a corner, parted evenly; lines
parted evenly; crossings of two lines between known points. What none of them finds is measured.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations
from math import pi
from typing import Final

from ....diagnostics.wording import one_of
from ....drafting.model import Draft
from ....drafting.shapes import shape_label
from ....drafting.stroke import place_of
from ....measure.fractions import RULER_STEP, ruler_text
from ...quilts.words import about
from .construction import (
    SAME,
    corners_of,
    edges_of,
    ground_words,
    on_ruling,
    place_key,
    start_points,
    vertices,
)

KNOWN_MOST: Final = 48
"""Points through which lines are tried: the likely ones come first."""

UNKNOWN_MOST: Final = 160  # points to construct; a block of more is drafted from its picture
FLAT: Final = 0.05  # sine of the angle under which two crossing lines do not fix a point
TRIED: Final = 12  # lines through a place that are paired
PARTS_MOST: Final = 12  # of a line that is parted evenly
CIRCLE_PARTS: Final = (8, 12, 16, 24, 32, 48)
"""Even parts of a circle that a compass gives: quarters halved, or the radius stepped round and halved."""

Known = Sequence[tuple[str, complex]]


@dataclass(frozen=True, slots=True)
class Construction:
    """The points of a draft with their names, those to be found last, and a sentence for every way of
    finding."""

    known: dict[str, complex]
    found: dict[str, complex]
    steps: tuple[str, ...]
    measured: int  # of those found: how many could only be measured


def construct(draft: Draft) -> Construction:
    """A way to find every point that is not on the block's own grid."""
    return _Constructing(draft).result()


class _Constructing:
    """The points found so far, and the words of how."""

    def __init__(self, draft: Draft) -> None:
        self.draft = draft
        self.known = dict(start_points(draft))
        self.start = dict(self.known)
        self.steps = list(ground_words(draft))
        at = {place_key(place) for place in self.known.values()}
        self.open = [place for place in vertices(draft) if place_key(place) not in at]
        self.names = 0
        self.drawn = set(_drawn_lines(draft))

    def result(self) -> Construction:
        """Everything found; what no way was found for is measured."""
        if len(self.open) <= UNKNOWN_MOST:
            while self.open and any(way() for way in self._ways()):
                pass
        measured = [f"{self._add(place)} {_measures(place)}" for place in list(self.open)[:UNKNOWN_MOST]]
        if measured:
            self.steps.append(f"Measure from the left and from the top: {'; '.join(measured)}.")
        found = {name: place for name, place in self.known.items() if name not in self.start}
        return Construction(self.start, found, tuple(self.steps), len(measured))

    def _ways(self) -> Iterator[Callable[[], bool]]:
        """The ways of finding, the easiest first."""
        yield from (self._by_compass, self._by_circles, self._by_parting, self._by_lines)

    def _add(self, place: complex) -> str:
        """A new name for a place that is found."""
        name = shape_label(self.names).lower()
        self.names += 1
        self.known[name] = place
        self.open.remove(place)
        return name

    def _by_compass(self) -> bool:
        """Points on the block's sides, as far from a corner as the corner is from the centre; marked at
        once."""
        corners = corners_of(self.draft)
        center = sum(corners) / 4
        radius = abs(corners[0] - center)
        found = [
            place
            for place in self.open
            if self._on_side(place) and any(abs(abs(place - c) - radius) < SAME for c in corners)
        ]
        if not found:
            return False
        names = [self._add(place) for place in found]
        self.steps.append(
            "Put the compass on a corner, open it to the center, and mark the two sides that meet there; "
            f"so from each corner. That gives {one_of(names, 'and')}."
        )
        return True

    def _on_side(self, place: complex) -> bool:
        wide, tall = float(self.draft.width), float(self.draft.height)
        return (
            min(abs(place.real), abs(place.real - wide)) < SAME
            or min(abs(place.imag), abs(place.imag - tall)) < SAME
        )

    def _by_circles(self) -> bool:
        """Two points or more on one circle about the centre or a corner, its radius on a mark of the
        ruler."""
        for name, pivot in list(self.start.items())[:5]:
            circles: dict[float, list[complex]] = {}
            for place in self.open:
                radius = abs(place - pivot)
                if radius > SAME and on_ruling(radius, RULER_STEP):
                    circles.setdefault(round(radius, 4), []).append(place)
            for radius, places in sorted(circles.items(), reverse=True):
                parts = max(CIRCLE_PARTS, key=lambda n: len(_even(places, pivot, n)))  # the first of the best
                if len(_even(places, pivot, parts)) > 1:
                    names = [self._add(place) for place in _even(places, pivot, parts)]
                    self.steps.append(_circle_words(name, radius, parts, names))
                    return True
        return False

    def _by_parting(self) -> bool:
        """Points that part a line between known points evenly."""
        found: dict[tuple[str, str, int], list[tuple[int, complex]]] = {}
        known = list(self.known.items())[:KNOWN_MOST]
        for place in self.open:
            way = _parted(place, known, self.drawn)
            if way:
                found.setdefault(way[:3], []).append((way[3], place))
        if not found:
            return False
        words = [
            self._parting_words(*line, sorted(places, key=lambda each: each[0]))
            for line, places in found.items()
        ]
        self.steps.append(f"Divide lines evenly: {'; '.join(words)}.")
        return True

    def _parting_words(self, one: str, two: str, parts: int, places: Sequence[tuple[int, complex]]) -> str:
        """Which of a line's even parts end where."""
        names = [(number, self._add(place)) for number, place in places]
        if len(names) == parts - 1 > 1:
            return f"{one}–{two} into {parts} equal parts, at {one_of([name for _, name in names], 'and')}"
        if parts == 2:
            return f"{names[0][1]} is the middle of {one}–{two}"
        return ", ".join(
            f"{name} is {Fraction(number, parts)} of the way from {one} to {two}" for number, name in names
        )

    def _by_lines(self) -> bool:
        """Points where two lines between known points cross."""
        lines = _lines(list(self.known.items())[:KNOWN_MOST])
        found = []
        for place in self.open:
            through = sorted(
                (line for line in lines if _through(line, place)), key=lambda line: line.key not in self.drawn
            )
            pair = next(
                (
                    (one, two)
                    for one, two in combinations(through[:TRIED], 2)
                    if abs((one.way.conjugate() * two.way).imag) > FLAT
                ),
                None,
            )
            if pair:
                found.append((place, pair))
        if not found:
            return False
        words = [f"{self._add(place)}, where {one.name} crosses {two.name}" for place, (one, two) in found]
        self.steps.append(f"Draw light lines. They give {'; '.join(words)}.")
        return True


@dataclass(frozen=True, slots=True)
class _Line:
    """A line through two known points."""

    name: str
    start: complex
    way: complex  # a unit vector
    key: LineKey


LineKey = tuple[float, ...]
"""A line wherever it starts and ends: its way and how far it passes from the block's corner."""


def _lines(known: Sequence[tuple[str, complex]]) -> list[_Line]:
    """Lines between known points, each once, those between the points named first before others."""
    lines: dict[LineKey, _Line] = {}
    for (one, start), (two, end) in combinations(known, 2):
        key = line_key(start, end)
        if key not in lines:
            lines[key] = _Line(f"{one}–{two}", start, (end - start) / abs(end - start), key)
    return list(lines.values())


def line_key(start: complex, end: complex) -> LineKey:
    """The line through two places."""
    way = (end - start) / abs(end - start)
    if way.real < -SAME or (abs(way.real) <= SAME and way.imag < 0):
        way = -way
    off = (way.conjugate() * start).imag
    return (*place_key(way), round(off, 4) + 0.0)


def _drawn_lines(draft: Draft) -> Iterator[LineKey]:
    """The lines of the seams and of the outline: those that the drawing needs in any case."""
    for edge in edges_of(draft):
        if edge.arc is None:
            yield line_key(place_of(edge.start), place_of(edge.end))


def _through(line: _Line, place: complex) -> bool:
    return abs((line.way.conjugate() * (place - line.start)).imag) < SAME


def _measures(place: complex) -> str:
    return f"{about(place.real)} and {about(place.imag)}"


def _even(places: Sequence[complex], pivot: complex, parts: int) -> list[complex]:
    """Those of the places that lie on rays which part the circle evenly, straight up among them."""
    from cmath import phase

    def off(place: complex) -> float:
        turns = phase(place - pivot) / (2 * pi) * parts
        return abs(turns - round(turns)) * 2 * pi / parts * abs(place - pivot)

    return [place for place in places if off(place) < SAME]


def _circle_words(name: str, radius: float, parts: int, names: Sequence[str]) -> str:
    """How a circle is drawn and parted."""
    way = "halve its quarters" if parts % 3 else "step the radius round it"
    again = {
        8: "",
        12: " and halve the parts",
        16: " twice",
        24: " and halve the parts twice",
        32: " three times",
        48: " and halve the parts three times",
    }[parts]
    return (
        f"Put the compass on {name}, open it to {ruler_text(radius)} and draw the circle as far as the block "
        f"goes; {way}{again}, for {parts} parts of the whole. That gives {one_of(names, 'and')}."
    )


def _parted(place: complex, known: Known, drawn: Collection[LineKey]) -> tuple[str, str, int, int] | None:
    """The two known points between which the place parts the line in the fewest even parts, on a line that
    is drawn in any case before others; how many parts, and how many of them lie before it."""
    best: tuple[str, str, int, int] | None = None
    liked = False
    for (one, start), (two, end) in combinations(known, 2):
        share, length = (place - start) / (end - start), abs(end - start)
        if abs(share.imag) * length > SAME or not 0 < share.real < 1:
            continue
        on_drawn = line_key(start, end) in drawn
        most = best[2] - (liked or not on_drawn) if best else PARTS_MOST
        for parts in range(2, most + 1):
            number = round(share.real * parts)
            if abs(share.real - number / parts) * length < SAME:
                best, liked = (one, two, parts, number), on_drawn
                break
    return best
