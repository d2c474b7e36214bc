r"""Rows of templates that reach into each other, cut out as one wide strip.

   /\    /\    /\
  /  \/\/  \/\/  \      every other row is moved along, and up as far as the outlines allow; it lies
  \  /\/\  /\/\  /      the same way as the first or turned half round
   \/    \/    \/
Inches.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import ceil, floor, inf
from operator import sub
from typing import Final, NamedTuple

from ...geometry.pose import Pose
from ...measure.tolerance import NEAR
from .poses import Shapes
from .runs import (
    Counts,
    Laid,
    Loop,
    Run,
    Sorts,
    cloth_in,
    length_of,
    loops_of,
    run_of,
    single_rows,
    slices_of,
)

PLACES: Final = 48
"""Places along a row's repeat at which the next row is tried."""

TRIED: Final = 4
"""Lattices that are tried with the pieces there are."""

FEW: Final = (1, 2, 3, 4, 6)
"""Pieces to a run where a short row is parted."""

ROWS_MOST: Final = 24
"""Rows in one strip; more are cut as another strip."""

WORTH: Final = 0.98
"""Share of the cloth of single rows below which a strip of several is cut: it is the harder to handle."""


class Row(NamedTuple):
    """An endless row: poses, how far along each starts, and after how many inches they come again."""

    poses: tuple[Pose, ...]
    starts: tuple[float, ...]
    period: float


class Lattice(NamedTuple):
    """Two rows over and over: the second moved along by `aside` and down by `first`, the third down by
    `both`."""

    upper: Row
    lower: Row
    aside: float
    first: float
    both: float

    def row(self, number: int) -> tuple[Row, float, float]:
        """A row of the lattice, how far along it is moved, and how far down."""
        times, odd = divmod(number, 2)
        return self.lower if odd else self.upper, odd * self.aside, times * self.both + odd * self.first


def lay_runs(
    outline: Sequence[complex], counts: Counts, choices: Sequence[Sorts], width: float, tall: float = inf
) -> list[tuple[Run, ...]]:
    """The pieces in runs no longer than `width` and no thicker than `tall`: first the way that takes least
    cloth, then others, as one may fit better beside what else is cut; none where a piece is too long.
    `choices`: the poses that the pieces may have, of which one is chosen for all.
    """
    ways: list[tuple[Run, ...]] = []
    for sorts in choices:
        there = [sort for sort, count in zip(sorts, counts, strict=True) if count]
        shapes = Shapes(outline, [pose for sort in there for pose in sort])
        if not there or max(wide for wide, _ in shapes.sizes.values()) > width + NEAR:
            continue
        single = single_rows(shapes, counts, sorts, width)
        several = _in_lattices(shapes, counts, sorts, (width, tall))
        ways += [several, single] if cloth_in(several) < WORTH * cloth_in(single) else [single]
    ways.sort(key=lambda runs: round(cloth_in(runs), 6))
    return list(dict.fromkeys(way for runs in ways for way in (runs, *_parted(runs))))


def _parted(runs: Sequence[Run]) -> Iterator[tuple[Run, ...]]:
    """The same with the shortest run cut into runs of a few pieces, that fit beside other strips."""
    shortest = min(runs, key=lambda run: run.length)
    if any(laid.down for laid in shortest.laid):
        return
    at = list(runs).index(shortest)
    for few in FEW:
        if few < len(shortest.laid):
            yield (*runs[:at], *slices_of(shortest, few), *runs[at + 1 :])


def _in_lattices(shapes: Shapes, counts: Counts, sorts: Sorts, room: tuple[float, float]) -> tuple[Run, ...]:
    """What fills lattices, and the rest in single rows."""
    runs: list[Run] = []
    over = (0, 0)
    for loop in loops_of(shapes, counts, sorts):
        options = [
            _blocks(shapes, lattice, loop.counts, sorts, room)
            for lattice in _good_lattices(shapes, loop, sorts)
        ]
        _, blocks, rest = min(options, key=lambda each: each[0])
        runs += blocks
        over = (over[0] + rest[0], over[1] + rest[1])
    return (*runs, *single_rows(shapes, over, sorts, room[0]))


class Trial(NamedTuple):
    """How a lattice is made: poses of its two rows, and at what share of the repeat the second lies."""

    upper: tuple[Pose, ...]
    lower: tuple[Pose, ...]
    share: float


def _row(shapes: Shapes, poses: tuple[Pose, ...]) -> Row:
    starts = [0.0]
    for one, two in pairwise(poses):
        starts.append(starts[-1] + shapes.gap(one, two))
    return Row(poses, tuple(starts), length_of(shapes, poses))


def _good_lattices(shapes: Shapes, loop: Loop, sorts: Sorts) -> list[Lattice]:
    """The densest lattices, each of other rows: of the loop's own, or of rows of one of its poses."""
    uppers = [loop.poses] if all(loop.counts) else [loop.poses, *((pose,) for pose in loop.poses)]
    trials = [
        min(_trials(shapes, poses, lower), key=lambda each: each[0])
        for poses in dict.fromkeys(uppers)
        for lower in _lowers(poses, sorts)
    ]
    return [_lattice(shapes, trial) for _, trial in sorted(trials, key=lambda each: each[0])[:TRIED]]


def _lowers(poses: tuple[Pose, ...], sorts: Sorts) -> list[tuple[Pose, ...]]:
    """What may lie in every other row: the same, or the same turned half round, where a sort allows that."""
    turned = []
    for pose in poses:
        sort = next(each for each in sorts if pose in each)
        others = (each for each in sort if each.reversed == pose.reversed and each != pose)
        turned.append(next(others, None))
    there = tuple(pose for pose in turned if pose is not None)
    return [poses, there] if len(there) == len(poses) else [poses]


def _trials(
    shapes: Shapes, uppers: tuple[Pose, ...], lowers: tuple[Pose, ...]
) -> Iterator[tuple[float, Trial]]:
    """Square inches to two rows' repeat, roughly, and how they lie: at every place along."""
    row = _row(shapes, uppers)
    upper, lower = _skyline(shapes, row), _skyline(shapes, _row(shapes, lowers))
    firsts, seconds = _steps(upper.bottoms, lower.tops), _steps(lower.bottoms, upper.tops)
    same = max(_steps(each.bottoms, each.tops)[0] for each in (upper, lower))
    for place, first in enumerate(firsts):
        both = max(first + seconds[-place % PLACES], same)
        yield both * row.period / len(uppers), Trial(uppers, lowers, place / PLACES)


class Skyline(NamedTuple):
    """How high and how low an endless row reaches in each of the places along its repeat."""

    tops: list[float]
    bottoms: list[float]


def _skyline(shapes: Shapes, row: Row) -> Skyline:
    tops, bottoms = [float("inf")] * PLACES, [float("-inf")] * PLACES
    step = row.period / PLACES
    for pose, start in zip(row.poses, row.starts, strict=True):
        for slab in shapes.below[pose]:
            for place in range(floor((start + slab.start) / step), ceil((start + slab.end) / step)):
                part = slab.cut(
                    max(slab.start, place * step - start), min(slab.end, (place + 1) * step - start)
                )
                tops[place % PLACES] = min(tops[place % PLACES], *part.least)
                bottoms[place % PLACES] = max(bottoms[place % PLACES], *part.greatest)
    return Skyline(tops, bottoms)


def _steps(bottoms: Sequence[float], tops: Sequence[float]) -> list[float]:
    """How far down a row must start below another, moved along by each number of places."""
    return [
        max(0.0, *map(sub, bottoms, (*tops[-place:], *tops[:-place]) if place else tops))
        for place in range(PLACES)
    ]


def _lattice(shapes: Shapes, trial: Trial) -> Lattice:
    """The lattice with distances as the outlines have them."""
    upper, lower = (_row(shapes, poses) for poses in (trial.upper, trial.lower))
    aside = trial.share * upper.period
    first = _drop(shapes, upper, lower, aside)
    same = max(_drop(shapes, row, row, 0.0) for row in (upper, lower))
    return Lattice(upper, lower, aside, first, max(first + _drop(shapes, lower, upper, -aside), same))


def _drop(shapes: Shapes, upper: Row, lower: Row, aside: float) -> float:
    """How far down an endless row may start below another that is moved along by `aside`."""
    most = 0.0
    for one, start in zip(upper.poses, upper.starts, strict=True):
        for two, other in zip(lower.poses, lower.starts, strict=True):
            off = other + aside - start
            first = ceil((-shapes.sizes[two][0] - off) / upper.period)
            last = floor((shapes.sizes[one][0] - off) / upper.period)
            for turn in range(first, last + 1):
                most = max(most, shapes.drop(one, two, off + turn * upper.period))
    return most


def _places(shapes: Shapes, lattice: Lattice, number: int, width: float) -> list[Laid]:
    """The places in one row of a lattice, from the left."""
    row, aside, down = lattice.row(number)
    places = []
    for turn in range(-1, int(width / row.period) + 2):
        for pose, start in zip(row.poses, row.starts, strict=True):
            left = start + aside + turn * row.period
            if left >= -NEAR and left + shapes.sizes[pose][0] <= width + NEAR:
                places.append(Laid(pose, max(0.0, left), down))
    return places


def _blocks(
    shapes: Shapes, lattice: Lattice, counts: Counts, sorts: Sorts, room: tuple[float, float]
) -> tuple[float, list[Run], Counts]:
    """Square inches of cloth for all; strips of as many rows as take the least; and how many pieces are left
    for single rows."""
    block = _places(shapes, lattice, 0, room[0])
    best: tuple[float, list[Run], Counts] | None = None
    for many in range(2, ROWS_MOST + 1):
        block += _places(shapes, lattice, many - 1, room[0])
        if not block or run_of(block, shapes).thick > room[1] + NEAR:
            break
        runs, left = _filled(shapes, block, counts, sorts)
        cloth = cloth_in(runs) + cloth_in(single_rows(shapes, left, sorts, room[0]))
        if best is None or cloth < best[0] - NEAR:
            best = cloth, runs, left
        if not runs or (len(runs) == 1 and len(runs[0].laid) < len(block)):
            break
    return best or (cloth_in(single_rows(shapes, counts, sorts, room[0])), [], counts)


def _filled(shapes: Shapes, block: Sequence[Laid], counts: Counts, sorts: Sorts) -> tuple[list[Run], Counts]:
    """Strips laid like the block while any sort lasts that it has room for."""
    left = list(counts)
    runs: list[Run] = []
    while True:
        laid = []
        for place in block:
            sort = place.pose in sorts[1]
            if left[sort]:
                left[sort] -= 1
                laid.append(place)
        if not laid:
            return runs, (left[0], left[1])
        runs.append(run_of(laid, shapes))
