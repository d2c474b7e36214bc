"""Outlines as rows of cells, and the room they leave: what the packer searches.

In: polygons, in points. Out: a Mask, one whole number a row, whose bits are the cells that the outline
touches; and a Floor, a page of such cells in one very long number, on which all free places for a mask are
found at once:

    a row's run of cells, 5 long, at bit 3     ...#####...
    cells taken, each smeared over 4 (2 x 2)   the run is free where neither smear, taken at
                                               its first and its last 4 cells, is set

That costs two shifts a row, for every place on the page together. Masks are generous: a cell that is
touched at all is taken, so masks that do not meet mean outlines that do not meet.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import chain
from math import ceil, floor, inf
from operator import itemgetter
from typing import Final

from ...measure.record import record
from ...measure.tolerance import CELL_TOUCH, NO_TRIANGLE, SHORT_SIDE

Ring = Sequence[tuple[float, float]]
Rings = tuple[tuple[tuple[float, float], ...], ...]


MASKS_KEPT: Final = 512
"""A sheet is packed again when a label turns out not to fit inside; the outlines are mostly those of
before."""


@record
class Mask:
    """The cells of an outline, its box's top left corner on a corner of the cells. `runs` are (row, first
    cell, length), the longest first: they soonest show that there is no room. `covered` is how many cells."""

    across: int
    down: int
    runs: tuple[tuple[int, int, int], ...]
    covered: int

    @property
    def rows(self) -> tuple[int, ...]:
        """The cells of each row, as bits. Most masks are only ever looked for room, by their runs."""
        rows = [0] * self.down
        for row, start, length in self.runs:
            rows[row] |= (1 << start + length) - (1 << start)
        return tuple(rows)


@lru_cache(maxsize=MASKS_KEPT)
def mask_of(rings: Rings, cell: float) -> Mask:
    """The cells that any of the polygons touches or holds, measured from the corner of their common box."""
    left, top, right, bottom = box_of(rings)
    across, down = _cells(right - left, cell), _cells(bottom - top, cell)
    if len(rings) == 1 and _is_convex(rings[0]):
        runs = _convex_runs([((x - left) / cell, (y - top) / cell) for x, y in rings[0]], down)
    else:
        rows = [0] * down
        for ring in rings:
            _fill([((x - left) / cell, (y - top) / cell) for x, y in ring], rows)
        runs = [(row, start, length) for row, bits in enumerate(rows) for start, length in _runs(bits)]
    widest_first = tuple(sorted(runs, key=itemgetter(2), reverse=True))
    return Mask(across, down, widest_first, sum([length for _, _, length in runs]))


def _is_convex(ring: Ring) -> bool:
    """Whether the ring turns one way all round, and once."""
    least = most = 0.0
    climbs = 0  # changes from down to up: one in a ring that goes round once
    (x1, y1), (x2, y2) = ring[-2], ring[-1]
    rising = _rises(ring)
    for (x3, y3), up in zip(ring, rising, strict=True):
        if abs(x3 - x2) + abs(y3 - y2) < SHORT_SIDE:
            return False  # which way it turns there cannot be told
        turn = (x2 - x1) * (y3 - y2) - (y2 - y1) * (x3 - x2)
        least, most = min(least, turn), max(most, turn)
        x1, y1, x2, y2 = x2, y2, x3, y3
        climbs += up
    return climbs <= 1 and (least > -NO_TRIANGLE or most < NO_TRIANGLE)


def _rises(ring: Ring) -> list[bool]:
    """For each side that is not level, whether it climbs where the last did not."""
    heights = [y2 - y1 for (_, y1), (_, y2) in zip(ring, (*ring[1:], ring[0]), strict=True)]
    level = [height for height in heights if height]
    found, last = [], level[-1] if level else 1.0
    for height in heights:
        found.append(height > 0 > last)
        last = height or last
    return found


def _convex_runs(ring: Ring, down: int) -> list[tuple[int, int, int]]:
    """One run a row: from the leftmost to the rightmost that any side reaches in it, a cell at least."""
    lefts, rights = [inf] * down, [-inf] * down
    for first, enters, leaves in _through_rows(ring, down):
        lows, highs = (enters, leaves) if enters[0] < leaves[-1] else (leaves, enters)
        rows = slice(first, first + len(enters))
        lefts[rows] = map(min, lefts[rows], lows)
        rights[rows] = map(max, rights[rows], highs)
    return [
        (row, start := int(left + CELL_TOUCH), ceil(right - CELL_TOUCH) - start or 1)
        for row, (left, right) in enumerate(zip(lefts, rights, strict=True))
    ]


def _through_rows(ring: Ring, down: int) -> Iterator[tuple[int, list[float], list[float]]]:
    """For each side the first row it touches, and where it enters and leaves that row and those below."""
    last = down - 1
    for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if y1 > y2:
            x1, y1, x2, y2 = x2, y2, x1, y1
        first = min(floor(y1 + CELL_TOUCH), last)
        final = max(first, min(ceil(y2 - CELL_TOUCH) - 1, last))
        slope = (x2 - x1) / (y2 - y1) if y2 > y1 else 0.0
        borders = [x1 + slope * (row - y1) for row in range(first + 1, final + 1)]
        yield first, [x1, *borders], [*borders, x2]


def _crossed(ring: Ring, down: int) -> list[list[float]]:
    """For each row, where the sides cross its middle line, from left to right."""
    crossed: list[list[float]] = [[] for _ in range(down)]
    for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if y1 > y2:
            x1, y1, x2, y2 = x2, y2, x1, y1
        for row in range(max(ceil(y1 - 0.5), 0), min(ceil(y2 - 0.5), down)):
            crossed[row].append(x1 + (x2 - x1) / (y2 - y1) * (row + 0.5 - y1))
    for places in crossed:
        places.sort()
    return crossed


def box_of(rings: Sequence[Ring]) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of the polygons together."""
    xs = [x for ring in rings for x, _ in ring]
    ys = [y for ring in rings for _, y in ring]
    return min(xs), min(ys), max(xs), max(ys)


def _cells(length: float, cell: float) -> int:
    return max(1, ceil(length / cell - CELL_TOUCH))


def _fill(ring: Ring, rows: list[int]) -> None:
    """Takes every cell that a side touches, and every one between the sides on the middle line of a row.

    A point inside that is in neither would reach, straight up or down, the middle line or a side, within its
    own cell.
    """
    touched: list[list[float]] = [[] for _ in rows]
    for first, enters, leaves in _through_rows(ring, len(rows)):
        for row, through in enumerate(zip(enters, leaves, strict=True), first):
            touched[row] += through
    crossed = _crossed(ring, len(rows))
    for row, (sides, middles) in enumerate(zip(touched, crossed, strict=True)):
        if len(sides) == 4 and len(middles) == 2:  # one side in, one out, and all between: nearly every row
            rows[row] |= _bits(min(sides), max(sides))
            continue
        for a, b in chain(_pairs(sides), _pairs(middles)):
            rows[row] |= _bits(min(a, b), max(a, b))


def _pairs(numbers: list[float]) -> Iterable[tuple[float, float]]:
    """The numbers, two by two."""
    return zip(numbers[::2], numbers[1::2], strict=True)


def _bits(start: float, end: float) -> int:
    """The cells from start to end, one at least."""
    first = int(start + CELL_TOUCH)
    return (1 << (ceil(end - CELL_TOUCH) - first or 1)) - 1 << first


def _runs(bits: int) -> Iterable[tuple[int, int]]:
    """Where each unbroken stretch of set bits starts, and its length."""
    start = 0
    while bits:
        skipped = (bits & -bits).bit_length() - 1
        bits >>= skipped
        length = (~bits & bits + 1).bit_length() - 1
        yield start + skipped, length
        bits >>= length
        start += skipped + length


def spread(mask: Mask, gap: float) -> tuple[int, tuple[int, ...]]:
    """How many cells the mask grows on each side, and its rows when grown by every cell that has a point
    nearer than `gap` cells; their corner lies that much up and left of the mask's."""
    reach = ceil(gap - CELL_TOUCH)
    stride = mask.across + 2 * reach
    near = _end_to_end(mask.rows, stride)
    grown = 0
    for away in range(reach + 1):
        clear = max(away - 1, 0)  # whole cells that lie between
        beside = ceil((gap * gap - clear * clear) ** 0.5 - CELL_TOUCH)
        smeared = _smeared(near << reach - beside, 2 * beside)
        grown |= smeared << (reach + away) * stride | smeared << (reach - away) * stride
    row = (1 << stride) - 1
    return reach, tuple(grown >> stride * number & row for number in range(mask.down + 2 * reach))


def _end_to_end(rows: Sequence[int], stride: int) -> int:
    """The rows as one number, each so many bits after the last."""
    laid = 0
    for bits in reversed(rows):
        laid = laid << stride | bits
    return laid


def _smeared(bits: int, by: int) -> int:
    """Every bit repeated over the next `by` bits up."""
    done = 1
    while done <= by:
        step = min(done, by + 1 - done)
        bits |= bits << step
        done += step
    return bits


@dataclass(slots=True)
class Floor:
    """A page's cells, taken and free. `width`, `height` in cells; the last column and row may be part
    cells."""

    width: int
    height: int
    taken: int = 0
    smears: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._smear()

    def take(self, rows: Sequence[int], x: int, y: int) -> None:
        """Takes the cells of the rows with their corner at (x, y), which may lie off the page."""
        edge = (1 << self.width) - 1
        on_page = [
            (bits << x if x >= 0 else bits >> -x) & edge for bits in rows[max(-y, 0) : self.height - y]
        ]
        self.taken |= _end_to_end(on_page, self.width) << max(y, 0) * self.width
        self._smear()

    def _smear(self) -> None:
        """For each power of two, the cells from which that many onward are not all free."""
        self.smears = [self.taken]
        length = 1
        while length < self.width:
            self.smears.append(self.smears[-1] | self.smears[-1] >> length)
            length *= 2

    def free(self, mask: Mask, right: int, bottom: int) -> int:
        """The places for the mask's corner, as bits: x up to `right`, y up to `bottom`, row after row."""
        if not self.taken:
            return _window(self.width, right, bottom)
        free, width, smears = _window(self.width, right, bottom), self.width, self.smears
        for row, start, length in mask.runs:
            power = length.bit_length() - 1
            smear = smears[power]
            at = row * width + start
            free ^= free & (smear >> at | smear >> at + length - (1 << power))
            if not free:
                return 0
        return free


def _window(width: int, right: int, bottom: int) -> int:
    """Bits 0..right of each of the rows 0..bottom."""
    window, rows = (1 << right + 1) - 1, 1
    total = bottom + 1
    while rows < total:
        step = min(rows, total - rows)
        window |= window << step * width
        rows += step
    return window
