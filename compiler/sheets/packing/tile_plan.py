"""Which tiles a large outline takes: the turn, and the place on the grid, at which they are fewest.

In: the outlines as they lie in each turn that may be tried, and the page's room, in points. Out: a TilePlan.

Each way along, the tiles part the drawing into strips: those that one tile alone shows, and between them
those that two neighbours share.

    tile 1  |--- own ---|=shared=|                     strips are counted 0, 1, 2, ... so that
    tile 2              |=shared=|--- own ---|          tile n shows 2n - 3 to 2n - 1
    strip         0          1          2

A tile of which every strip that holds something is shown by another kept tile, too, is left out, unless the
others would then no longer hang together by their joins. What holds something is asked of cells (`raster`),
which take whatever an outline touches: a tile that is needed is never left out.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import reduce
from itertools import pairwise
from math import ceil, floor
from operator import or_
from typing import Final, NamedTuple

from .raster import Mask, Rings, box_of, mask_of
from .tile_grid import Grid, grid_for

PAD: Final = 1.0
"""Points about a tiled outline, so that half its line's thickness is not cut away with the rest."""

CELL: Final = 3.0  # points, 1/24in
CELLS_MOST: Final = 400  # along the longest side: a larger outline has larger cells

SHIFTS: Final = (0.0, 0.5, 1.0, 0.25, 0.75)
"""How much of the room left over on the grid lies before the outline; earlier ones win ties."""

NUDGE: Final = 6.0
"""Points of the room left over that lie before the outline in any case: lines a whole number of quarter
inches from its edge, as most are, then do not fall on the join lines."""

MANY_TILES: Final = 60
"""Tiles of a whole grid beyond which the outline is not shifted about on it: it would save hardly one."""

Place = tuple[int, int]  # row, column, counted from 1


class TilePlan(NamedTuple):
    """Which of the turned outlines, moved by how much, on which grid; and the tiles to print, row by row."""

    pose: int
    dx: float
    dy: float
    grid: Grid
    places: tuple[Place, ...]


def plan_tiles(poses: Sequence[Rings], area: tuple[float, float]) -> TilePlan:
    """The plan of fewest tiles, the first of those found; poses listed earlier win ties."""
    plans = (plan for number, rings in enumerate(poses) for plan in _plans(number, rings, area))
    return min(plans, key=lambda plan: len(plan.places))


def _plans(pose: int, rings: Rings, area: tuple[float, float]) -> Iterator[TilePlan]:
    """The plans of one pose, shifted each way over what its grid leaves free."""
    left, top, right, bottom = box_of(rings)
    wide, tall = right - left + 2 * PAD, bottom - top + 2 * PAD
    grid = grid_for(wide, tall, area)
    cell = max(CELL, max(wide, tall) / CELLS_MOST)
    mask = mask_of(rings, cell)
    step_x, step_y = area[0] - grid.overlap, area[1] - grid.overlap
    free_x = grid.columns * step_x + grid.overlap - wide
    free_y = grid.rows * step_y + grid.overlap - tall
    shifts = SHIFTS if grid.rows * grid.columns <= MANY_TILES else SHIFTS[:1]
    for down in dict.fromkeys(max(min(NUDGE, free_y), share * free_y) for share in shifts):
        bands = _bands(mask, _strips(grid.rows, area[1], grid.overlap, PAD + down), cell)
        for across in dict.fromkeys(max(min(NUDGE, free_x), share * free_x) for share in shifts):
            columns = _strips(grid.columns, area[0], grid.overlap, PAD + across)
            held = _held(bands, columns, cell)
            places = _needed(held, grid.rows, grid.columns)
            shifted = grid_for(wide + across, tall + down, area)
            yield TilePlan(pose, PAD + across - left, PAD + down - top, shifted, places)


def _strips(count: int, tile: float, overlap: float, start: float) -> list[tuple[float, float]]:
    """Where each strip begins and ends, measured from the outline's own box, which starts at `start`."""
    step = tile - overlap
    edges = [0.0]
    for number in range(1, count):
        edges += [number * step, number * step + overlap]
    edges.append((count - 1) * step + tile)
    return [(low - start, high - start) for low, high in pairwise(edges)]


def _bands(mask: Mask, strips: Sequence[tuple[float, float]], cell: float) -> list[int]:
    """For each strip of rows, the cells that are taken in any of them."""
    rows = mask.rows
    return [
        reduce(or_, rows[max(0, floor(low / cell)) : max(0, ceil(high / cell))], 0) for low, high in strips
    ]


def _held(bands: Sequence[int], strips: Sequence[tuple[float, float]], cell: float) -> set[Place]:
    """The crossings of strips, (down, across), that hold something."""
    spans = [(max(0, floor(low / cell)), max(0, ceil(high / cell))) for low, high in strips]
    masks = [(1 << last) - (1 << first) if last > first else 0 for first, last in spans]
    return {
        (down, across) for down, band in enumerate(bands) for across, mask in enumerate(masks) if band & mask
    }


def _needed(held: set[Place], rows: int, columns: int) -> tuple[Place, ...]:
    """The tiles to print; those that show least are the first to be left out."""
    shows = {
        place: _shown(place, held)
        for place in ((row, column) for row in range(1, rows + 1) for column in range(1, columns + 1))
    }
    kept = {place: shown for place, shown in shows.items() if shown}
    for place in sorted(kept, key=lambda each: (len(kept[each]), each)):
        others = {each: shown for each, shown in kept.items() if each != place}
        elsewhere = {spot for each in _around(place) for spot in others.get(each, ())}
        if all(spot in elsewhere for spot in kept[place]) and hang_together(others):
            kept = others
    return tuple(sorted(kept))


def _shown(place: Place, held: set[Place]) -> tuple[Place, ...]:
    """The crossings that hold something and that the tile shows."""
    row, column = place
    return tuple(
        (down, across)
        for down in range(2 * row - 3, 2 * row)
        for across in range(2 * column - 3, 2 * column)
        if (down, across) in held
    )


def _around(place: Place) -> Iterator[Place]:
    """The eight places around one."""
    row, column = place
    return ((row + down, column + across) for down in (-1, 0, 1) for across in (-1, 0, 1) if down or across)


def hang_together(places: Iterable[Place]) -> bool:
    """Whether every tile can be reached from every other over sides that two share."""
    known = set(places)
    open_ends = sorted(known)[:1]
    while open_ends:
        row, column = open_ends.pop()
        if (row, column) in known:
            known.remove((row, column))
            open_ends += [(row - 1, column), (row + 1, column), (row, column - 1), (row, column + 1)]
    return not known
