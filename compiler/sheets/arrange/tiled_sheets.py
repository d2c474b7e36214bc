"""Pages for a template larger than the page: tiles that overlap and are joined, each with a map of all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from ...cutting.model import Template
from ..joins import tile_map
from ..lettering import cap_height
from ..page import Mark
from ..tile_grid import Grid, Tile, grid_for
from ..tiling import moved_mark, tile
from .beside import box_of
from .cutout import cut_out, cutout_marks, outline_of
from .furniture import MAP_TALL, MAP_WIDE, Paper
from .options import SheetOptions
from .paths import Ring, Spot, closed
from .room import Box, box_ring
from .style import CUT, SMALLEST, line_mark, set_text

PAD: Final = 1.0
"""Points about a tiled template, so that half its line's thickness is not cut away with the rest."""

TURNS: Final = (0.0, 90.0, 180.0, 270.0)

MANY_TILES: Final = 60
"""Tiles in the whole rectangle beyond which the bare ones are not counted turn by turn."""


@dataclass(frozen=True, slots=True)
class TilePage:
    """One tile: its name (`1.2`), its marks where they stand on the page, and the map from its own corner."""

    name: str
    count: int  # of tiles
    marks: list[Mark]
    map: tuple[Mark, ...]


def tiled_pages(template: Template, paper: Paper, options: SheetOptions) -> list[TilePage]:
    """The tiles of a template, in the quarter turn that takes the fewest."""
    left, top, right, bottom = paper.body
    area = (right - left, bottom - top)
    turn = min(TURNS, key=lambda each: _tile_count(outline_of(template, each, options), area))
    tiles = _tiles(template, turn, area, options)
    return [
        TilePage(
            each.name,
            len(tiles),
            [moved_mark(mark, left, top) for mark in each.marks],
            _map(template, tiles, each),
        )
        for each in tiles
    ]


def _tiles(
    template: Template, turn: float, area: tuple[float, float], options: SheetOptions
) -> tuple[Tile, ...]:
    """The tiles of the whole template, its label and arrow in the room of one, clear of every overlap."""
    box = box_of(outline_of(template, turn, options))
    dx, dy = PAD - box[0], PAD - box[1]
    avoid = [_moved(band, -dx, -dy) for band in _overlaps(_grid(box, area))]
    cutout = cut_out(template, turn, area[0], options, avoid)
    if cutout.beside:
        beside = cutout.beside.box
        box = (box[0], box[1], max(box[2], beside[2]), max(box[3], beside[3]))
    return tile(cutout_marks(cutout, dx, dy, options), _grid(box, area))


def _grid(box: Box, area: tuple[float, float]) -> Grid:
    left, top, right, bottom = box
    return grid_for(right - left + 2 * PAD, bottom - top + 2 * PAD, area)


def _tile_count(ring: Ring, area: tuple[float, float]) -> int:
    """How many tiles the outline takes; those that it leaves bare are not printed."""
    box = box_of(ring)
    grid = _grid(box, area)
    if grid.rows * grid.columns > MANY_TILES:
        return grid.rows * grid.columns
    path = closed((x - box[0] + PAD, y - box[1] + PAD) for x, y in ring)
    return len(tile([line_mark(path, "cut", CUT)], grid))


def _overlaps(grid: Grid) -> list[Ring]:
    """The strips of the drawing that two tiles share."""
    bands = []
    for column in range(2, grid.columns + 1):
        left = grid.box(1, column).left
        bands.append(box_ring((left, 0.0, left + grid.overlap, grid.height)))
    for row in range(2, grid.rows + 1):
        top = grid.box(row, 1).top
        bands.append(box_ring((0.0, top, grid.width, top + grid.overlap)))
    return bands


def _moved(ring: Ring, dx: float, dy: float) -> Ring:
    return tuple(Spot(x + dx, y + dy) for x, y in ring)


def _map(template: Template, tiles: Sequence[Tile], here: Tile) -> tuple[Mark, ...]:
    """The map of the tiles, and under it whose they are."""
    drop = cap_height(SMALLEST) + 3.0
    marks = tile_map(tiles, here, MAP_WIDE, MAP_TALL - drop)
    words = f"{template.label}, tile {here.name}"
    return (*marks, set_text(0.0, MAP_TALL, words, SMALLEST, role="map", subject=template.label))
