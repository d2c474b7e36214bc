"""Where lettering and arrows fit inside an outline.

A line of text asks for a level band of the page. Everything that runs through the band (the outline's sides,
a dot, an arrow) blocks a stretch of it; what is left between, and inside, is a free span:

        band  ---------/#########\\----------         # blocked by the two sides of a point,
             --/######/           \\######\\--           the span between them is free

That is exact for straight sides, needs a few dozen comparisons, and no library. Arrows use the same bands in
a frame turned so that they lie level. Points; x right, y down.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import field
from math import cos, inf, radians, sin
from typing import Final

from ...measure.record import record
from .paths import Ring, Spot

Box = tuple[float, float, float, float]  # left, top, right, bottom


def boxes_meet(one: Box, two: Box) -> bool:
    """Whether two boxes share more than an edge."""
    return one[0] < two[2] and two[0] < one[2] and one[1] < two[3] and two[1] < one[3]


BANDS: Final = 28
"""How many heights are tried over an outline: finer finds little more room on a sheet of paper."""

LEAST_STEP: Final = 1.5
"""Points between heights tried in a small outline."""


@record
class Line:
    """A box that text asks for: how wide, and from where to where below the top of its block."""

    width: float
    top: float
    bottom: float


@record
class Room:
    """An outline (its own ring first, holes after) and convex things inside that nothing may cross."""

    rings: tuple[Ring, ...]
    things: tuple[Ring, ...] = ()
    _reaches: tuple[tuple[float, float, Ring], ...] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        """The things with how far up and down each reaches: most bands pass most of them by."""
        reaches = []
        for thing in self.things:
            ys = [y for _, y in thing]
            reaches.append((min(ys), max(ys), thing))
        object.__setattr__(self, "_reaches", tuple(reaches))

    def beside(self, *things: Ring) -> Room:
        """The same room with more things in it."""
        return Room(self.rings, self.things + things)

    def turned(self, degrees: float) -> Room:
        """The room turned clockwise about the page's corner."""
        c, s = cos(radians(degrees)), sin(radians(degrees))

        def turn(ring: Ring) -> Ring:
            return tuple(Spot(c * x - s * y, s * x + c * y) for x, y in ring)

        return Room(tuple(map(turn, self.rings)), tuple(map(turn, self.things)))

    def bounds(self) -> Box:
        """The box round the outline."""
        xs, ys = zip(*self.rings[0], strict=True)
        return min(xs), min(ys), max(xs), max(ys)


def free_spans(room: Room, top: float, bottom: float) -> list[tuple[float, float]]:
    """The stretches of the band from top to bottom that lie wholly inside the room, clear of its things."""
    middle = (top + bottom) / 2
    blocked: list[tuple[float, float]] = []
    crossings: list[float] = []
    for ring in room.rings:
        x1, y1 = ring[-1]
        for x2, y2 in ring:
            if (y1 < bottom or y2 < bottom) and (y1 > top or y2 > top):
                blocked.append(_shadow(x1, y1, x2, y2, top, bottom))
                if (y1 > middle) != (y2 > middle):
                    crossings.append(x1 + (middle - y1) * (x2 - x1) / (y2 - y1))
            x1, y1 = x2, y2
    for upper, lower, thing in room._reaches:
        if upper < bottom and lower > top:
            shadow = _shadow_of(thing, top, bottom)
            if shadow is not None:
                blocked.append(shadow)
    blocked.sort()
    spans = []
    reached = -inf
    for left, right in blocked:
        if left > reached > -inf and sum(x <= reached for x in crossings) % 2:
            spans.append((reached, left))
        reached = max(reached, right)
    return spans


def _shadow(x1: float, y1: float, x2: float, y2: float, top: float, bottom: float) -> tuple[float, float]:
    """The stretch of a band that a line covers."""
    if y1 > y2:
        x1, y1, x2, y2 = x2, y2, x1, y1
    if y1 < top:
        x1 += (top - y1) * (x2 - x1) / (y2 - y1)
        y1 = top
    if y2 > bottom:
        x2 = x1 + (bottom - y1) * (x2 - x1) / (y2 - y1)
    return (x1, x2) if x1 < x2 else (x2, x1)


def _shadow_of(thing: Ring, top: float, bottom: float) -> tuple[float, float] | None:
    """The stretch of a band that a convex thing covers."""
    least, most = inf, -inf
    x1, y1 = thing[-1]
    for x2, y2 in thing:
        if (y1 < bottom or y2 < bottom) and (y1 > top or y2 > top):
            left, right = _shadow(x1, y1, x2, y2, top, bottom)
            least, most = min(least, left), max(most, right)
        x1, y1 = x2, y2
    return (least, most) if least <= most else None


def heights(first: float, last: float, home: float) -> list[float]:
    """Heights to try from first to last, those nearest to home first."""
    if last < first:
        return []
    step = max((last - first) / BANDS, LEAST_STEP)
    count = int((last - first) / step)
    start = min(max(home, first), last)
    tried = [start] + [first + number * step for number in range(count + 1)]
    return sorted(tried, key=lambda height: abs(height - start))


def place_lines(room: Room, lines: Sequence[Line], home: Spot, clear: float) -> Spot | None:
    """Where the top middle of a block of centred lines may stand, near home; None where it fits nowhere.

    `clear` is kept between the lines and everything else. `home` is where the block's own middle would like
    to be. The widest lines are tried first: they fail first.
    """
    _, upper, _, lower = room.bounds()
    tall = max(line.bottom for line in lines)
    asked = sorted(lines, key=lambda line: -line.width)
    best, found = inf, None
    for top in heights(upper + clear, lower - clear - tall, home.y - tall / 2):
        down = abs(top + tall / 2 - home.y)
        if down >= best:
            break
        middle = _middle_for(room, asked, top, home.x, clear)
        if middle is not None and down + abs(middle - home.x) < best:
            best, found = down + abs(middle - home.x), Spot(middle, top)
    return found


def _middle_for(room: Room, lines: Sequence[Line], top: float, home: float, clear: float) -> float | None:
    """The middle nearest to home on which every line fits when the block starts at `top`."""
    fits = [(-inf, inf)]
    for line in lines:
        reach = line.width / 2 + clear
        spans = free_spans(room, top + line.top - clear, top + line.bottom + clear)
        fits = [
            (max(low, left + reach), min(high, right - reach))
            for low, high in fits
            for left, right in spans
            if max(low, left + reach) <= min(high, right - reach)
        ]
        if not fits:
            return None
    return min((min(max(home, low), high) for low, high in fits), key=lambda x: abs(x - home))


def place_arrow(
    room: Room, heading: float, asked: tuple[float, float], clear: float
) -> tuple[Spot, Spot] | None:
    """The ends of an arrow along the heading (degrees clockwise from up), as far from all else as it can be.

    `asked` is the least and the most length in points. Wide bands are tried before narrow ones, so an arrow
    stands off the lines where there is room; `clear` is the least distance. None where even the least length
    fits nowhere.
    """
    least, most = asked
    level = room.turned(90 - heading)
    outer_left, upper, outer_right, lower = level.bounds()
    never_most = outer_right - outer_left - 2 * clear < most
    home = (upper + lower) / 2
    enough: tuple[float, float, float] | None = None  # the first place for the least, should no more fit
    for reach in (3.5 * clear, 2 * clear, clear):
        for middle in heights(upper + reach, lower - reach, home):
            spans = free_spans(level, middle - reach, middle + reach)
            left, right = max(spans, key=lambda span: span[1] - span[0], default=(0.0, 0.0))
            length = min(right - left - 2 * clear, most)
            if length >= most:
                return _ends_of(length, (left + right) / 2, middle, heading)
            if enough is None and length >= least:
                enough = length, (left + right) / 2, middle
                if never_most:
                    return _ends_of(*enough, heading)
    return _ends_of(*enough, heading) if enough else None


def _ends_of(length: float, x: float, y: float, heading: float) -> tuple[Spot, Spot]:
    """The ends of a level line about (x, y), turned back to its heading on the page."""
    c, s = cos(radians(heading - 90)), sin(radians(heading - 90))
    ends = ((x - length / 2, y), (x + length / 2, y))
    first, last = (Spot(c * px - s * py, s * px + c * py) for px, py in ends)
    return first, last


def around(spot: Spot, reach: float) -> Ring:
    """A square about a place: what a dot asks for."""
    x, y = spot
    return (
        Spot(x - reach, y - reach),
        Spot(x + reach, y - reach),
        Spot(x + reach, y + reach),
        Spot(x - reach, y + reach),
    )


def box_ring(box: Box) -> Ring:
    """The corners of a box."""
    left, top, right, bottom = box
    return (Spot(left, top), Spot(right, top), Spot(right, bottom), Spot(left, bottom))


def middle_of(ring: Ring) -> Spot:
    """The middle of a ring's area (its centroid)."""
    area = x = y = 0.0
    ox, oy = ring[0]
    x1, y1 = ring[-1][0] - ox, ring[-1][1] - oy
    for px, py in ring:
        x2, y2 = px - ox, py - oy
        cross = x1 * y2 - x2 * y1
        area, x, y = area + cross, x + (x1 + x2) * cross, y + (y1 + y2) * cross
        x1, y1 = x2, y2
    return Spot(ox + x / (3 * area), oy + y / (3 * area)) if area else ring[0]
