"""A block drafted by ruler and compass, where that is short.

Points are lettered: those that a compass swung from the corners marks, those that part a side evenly, and
those that only measuring finds. Light lines through them cross in others, which need no letter. Places are
complex numbers in inches, x right and y down from the block's top left.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import combinations, pairwise
from typing import Final, NamedTuple

from ...drafting.frame import rectangle
from ...drafting.model import Draft
from ...drafting.shapes import shape_label
from ...geometry.stroke import place_of
from ...measure.record import record
from ...measure.tolerance import CRUMB, Number
from ...words.pages.construction import (
    CENTER,
    MIDDLES,
    SEAMS,
    arcs_words,
    compass_words,
    even_grid,
    lines_words,
    measured_words,
    outline_words,
    parting_words,
    uneven_grid,
)
from ...words.say import Say
from ..arrange.block_drawing import column_name
from .ruling import arc_centers, corners_of_pieces, edges_of, place_key

LETTERED_MOST: Final = 8
"""Points that are lettered: as many as the compass marks from four corners. A class looks each up in the
picture; of more it loses its place. Common practice, no published source."""

STEPS_MOST: Final = 6
"""Steps, that they stand on one page with a drawing large enough to work from."""

LINES_MOST: Final = 12
"""Light lines in one step: those of an eight-pointed star, right across and from mark to mark."""

OPEN_MOST: Final = 100
"""Points to find, of which a short construction has no more: a dozen lines and the diagonals cross in 91, and
there are those lettered. Nothing is tried for a block of more."""

PARTS_MOST: Final = 12  # of a side that is parted evenly: more are told apart no better than measured
FLAT: Final = 0.05  # sine of the angle under which two crossing lines do not fix a point

LineKey = tuple[float, ...]
"""A line wherever it starts and ends: its way and how far it passes from the block's corner."""


@record
class Construction:
    """A step a sentence, and by their names the points on the drawing: those on the sides and all that a step
    names."""

    steps: tuple[str, ...]
    points: dict[str, complex]


def construction_of(draft: Draft, say: Say) -> Construction | None:
    """The block's construction; None where it is not short, or the block is no rectangle."""
    if draft.outline != rectangle(0, 0, draft.width, draft.height):
        return None
    made = _Constructing(draft, say)
    if len(made.open) > OPEN_MOST:
        return None
    steps = (*made.steps(), SEAMS)
    if made.open or len(made.lettered) > LETTERED_MOST or len(steps) > STEPS_MOST:
        return None
    return Construction(steps, made.shown())


class _Constructing:
    """The points found so far: those of the outline and the grid, those lettered, and those still open."""

    def __init__(self, draft: Draft, say: Say) -> None:
        self.draft, self.say = draft, say
        wide, tall = float(draft.width), float(draft.height)
        self.corners = (0j, complex(wide, 0), complex(wide, tall), complex(0, tall))
        self.start = _start_points(draft)
        self.lettered: dict[str, complex] = {}
        self.said = {CENTER}  # names of those of the grid that a step needs
        self.centers = arc_centers(draft)
        at = {place_key(place) for place in self.start.values()}
        places = {place_key(place): place for place in (*corners_of_pieces(draft), *self.centers)}
        self.open = [place for key, place in places.items() if key not in at]

    def steps(self) -> Iterator[str]:
        """The outline, then every way in which a point is found, the easiest first, and the arcs."""
        yield from _ground_words(self.draft, self.say)
        yield from self._by_compass()
        yield from self._by_parting()
        yield from self._by_lines()
        yield from self._by_measure()
        yield from self._arc_words()

    def shown(self) -> dict[str, complex]:
        """The points that are named on the drawing."""
        ground = {name: at for name, at in self.start.items() if name in self.said or self._on_sides(at)}
        return ground | self.lettered

    def _letter(self, place: complex) -> str:
        """A new name for a place that is found."""
        name = shape_label(len(self.lettered)).lower()
        self.lettered[name] = place
        self.open.remove(place)
        return name

    def _by_compass(self) -> Iterator[str]:
        """Points on the sides, as far from a corner as the corner is from the centre."""
        radius = abs(self.corners[2]) / 2
        found = [
            place
            for place in self.open
            if self._on_sides(place) and any(abs(abs(place - c) - radius) < CRUMB for c in self.corners)
        ]
        if found:
            yield compass_words([self._letter(place) for place in found])

    def _on_sides(self, place: complex) -> bool:
        off = self.corners[2] - place
        return min(map(abs, (place.real, place.imag, off.real, off.imag))) < CRUMB

    def _by_parting(self) -> Iterator[str]:
        """Points that part a side evenly, all of its parts' ends wanted."""
        names = {place_key(place): name for name, place in self.start.items()}
        parted = []
        for one, two in zip(self.corners, (*self.corners[1:], self.corners[0]), strict=True):
            for parts in range(3, PARTS_MOST + 1):
                ends = [one + (two - one) * number / parts for number in range(1, parts)]
                found = [place for end in ends for place in self.open if abs(place - end) < CRUMB]
                if len(found) == len(ends):
                    letters = [self._letter(place) for place in found]
                    parted.append((names[place_key(one)], names[place_key(two)], letters))
                    break
        if parted:
            yield parting_words(parted)

    def _by_lines(self) -> Iterator[str]:
        """The points where two seams' lines cross, each line through two points that are named."""
        lines = _named_lines(self.start | self.lettered, _seam_lines(self.draft))
        fixed = {place: _fixing(place, lines) for place in self.open if place not in self.centers}
        crossed = [place for place, pair in fixed.items() if pair]
        drawn = {line.key() for line in _first_lines(self.draft, self.corners)}
        wanted = dict.fromkeys(line for pair in fixed.values() for line in pair if line.key() not in drawn)
        if crossed and len(wanted) <= LINES_MOST:
            self.open = [place for place in self.open if place not in crossed]
            if wanted:
                ends = [lines[line] for line in wanted]
                self.said.update(*ends)
                yield lines_words(ends)

    def _by_measure(self) -> Iterator[str]:
        """What no other way was found for, inside the block."""
        far = self.corners[2]
        inside = [p for p in self.open if 0 <= p.real <= far.real and 0 <= p.imag <= far.imag]
        if inside:
            yield measured_words(self.say, [(self._letter(place), place) for place in inside])

    def _arc_words(self) -> Iterator[str]:
        """Where the compass stands for each arc, and how wide it is open."""
        names = {place_key(place): name for name, place in (self.start | self.lettered).items()}
        arcs = [
            (names[key], edge.arc.radius)
            for edge in edges_of(self.draft)
            if edge.arc and (key := place_key(place_of(edge.arc.center))) in names
        ]
        self.said.update(name for name, _ in arcs)
        if arcs:
            yield arcs_words(self.say, arcs)


# ---- the block's own points ------------------------------------------------------------------------


def _start_points(draft: Draft) -> dict[str, complex]:
    """The crossings of the block's grid by their names on the drawing, its corners among them, and the centre
    and the sides' middles where they are none of these."""
    named = {
        f"{column_name(across)}{down + 1}": complex(float(x), float(y))
        for across, x in enumerate(draft.rules_across)
        for down, y in enumerate(draft.rules_down)
    }
    wide, tall = float(draft.width), float(draft.height)
    places = (
        complex(wide / 2, tall / 2),
        complex(wide / 2, 0),
        complex(wide, tall / 2),
        complex(wide / 2, tall),
        complex(0, tall / 2),
    )
    middles = dict(zip((CENTER, *MIDDLES), places, strict=True))
    on_grid = {place_key(place) for place in named.values()}
    return named | {name: place for name, place in middles.items() if place_key(place) not in on_grid}


def _ground_words(draft: Draft, say: Say) -> Iterator[str]:
    """The outline, its middles, and the grid where it has one."""
    yield outline_words(say, draft.width, draft.height)
    across, down = len(draft.rules_across) - 1, len(draft.rules_down) - 1
    if max(across, down) > 1:
        if _even(draft.rules_across) and _even(draft.rules_down):
            yield even_grid(say, across, down)
        else:
            yield uneven_grid(say, draft.rules_across, draft.rules_down)


def _even(rules: Sequence[Number]) -> bool:
    gaps = [float(far) - float(near) for near, far in pairwise(rules)]
    return max(gaps) - min(gaps) < CRUMB


# ---- lines -----------------------------------------------------------------------------------------


class _Line(NamedTuple):
    """A line through a place; its way is a unit vector, to the right or straight down."""

    place: complex
    way: complex

    def key(self) -> LineKey:
        return (*place_key(self.way), round((self.way.conjugate() * self.place).imag, 4) + 0.0)

    def passes(self, place: complex) -> bool:
        return abs((self.way.conjugate() * (place - self.place)).imag) < CRUMB


def _line(start: complex, end: complex) -> _Line:
    way = (end - start) / abs(end - start)
    return _Line(start, -way if way.real < -CRUMB or (abs(way.real) <= CRUMB and way.imag < 0) else way)


def _seam_lines(draft: Draft) -> Iterator[_Line]:
    """The lines of the straight seams and of the outline, each once."""
    straight = (edge for edge in edges_of(draft) if edge.arc is None)
    lines = (_line(place_of(edge.start), place_of(edge.end)) for edge in straight)
    yield from {line.key(): line for line in lines}.values()


def _first_lines(draft: Draft, corners: Sequence[complex]) -> Iterator[_Line]:
    """The lines that are drawn first: the outline, its diagonals and the grid."""
    yield from (_line(one, two) for one, two in combinations(corners, 2))
    yield from (_Line(complex(float(x), 0), 1j) for x in draft.rules_across)
    yield from (_Line(complex(0, float(y)), 1 + 0j) for y in draft.rules_down)


def _named_lines(known: Mapping[str, complex], lines: Iterable[_Line]) -> dict[_Line, tuple[str, str]]:
    """Those of the lines that pass two known points or more, by the names of the furthest two."""
    named = {}
    for line in lines:
        way = line.way.conjugate()
        names = sorted(
            (name for name, place in known.items() if line.passes(place)), key=lambda n: (way * known[n]).real
        )
        if len(names) > 1:
            named[line] = (names[0], names[-1])
    return named


def _fixing(place: complex, lines: Iterable[_Line]) -> tuple[_Line, ...]:
    """Two of the lines that cross in a place; nothing where there are none."""
    pairs = combinations([line for line in lines if line.passes(place)], 2)
    return next((pair for pair in pairs if abs((pair[0].way.conjugate() * pair[1].way).imag) > FLAT), ())
