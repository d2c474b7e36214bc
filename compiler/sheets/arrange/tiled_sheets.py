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
from .furniture import MAP_TALL, MAP_WIDE, Paper
from .label import fit_label
from .options import SheetOptions
from .paths import Placement, Ring, closed, flat_ring
from .room import box_ring
from .style import CUT, SMALLEST, line_mark, set_text
from .template_marks import headings_of, inner_room, outer_rings, template_marks

PAD: Final = 1.0
"""Points about a tiled template, so that half its line's thickness is not cut away with the rest."""

TURNS: Final = (0.0, 90.0, 180.0, 270.0)


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
    turn = min(TURNS, key=lambda each: _tile_count(_ring(template, each, options), area))
    ring = _ring(template, turn, options)
    grid = _grid(ring, area)
    box = box_of(ring)
    tiles = tile(_drawing(template, Placement(turn, PAD - box[0], PAD - box[1]), grid, options), grid)
    return [
        TilePage(
            each.name,
            len(tiles),
            [moved_mark(mark, left, top) for mark in each.marks],
            _map(template, tiles, each),
        )
        for each in tiles
    ]


def _ring(template: Template, turn: float, options: SheetOptions) -> Ring:
    return flat_ring(outer_rings(template, options)[0], Placement(turn))


def _grid(ring: Ring, area: tuple[float, float]) -> Grid:
    left, top, right, bottom = box_of(ring)
    return grid_for(right - left + 2 * PAD, bottom - top + 2 * PAD, area)


def _tile_count(ring: Ring, area: tuple[float, float]) -> int:
    """How many tiles the outline takes; those that it leaves bare are not printed."""
    left, top, _, _ = box_of(ring)
    path = closed((x - left + PAD, y - top + PAD) for x, y in ring)
    return len(tile([line_mark(path, "cut", CUT)], _grid(ring, area)))


def _drawing(template: Template, placement: Placement, grid: Grid, options: SheetOptions) -> list[Mark]:
    """The whole template; its label and arrow in the room of one tile, clear of every overlap."""
    room = inner_room(template, placement).beside(*_overlaps(grid))
    label = fit_label(template, room, headings_of(template, placement))
    return template_marks(template, placement, label, options)


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


def _map(template: Template, tiles: Sequence[Tile], here: Tile) -> tuple[Mark, ...]:
    """The map of the tiles, and under it whose they are."""
    drop = cap_height(SMALLEST) + 3.0
    marks = tile_map(tiles, here, MAP_WIDE, MAP_TALL - drop)
    words = f"{template.label}, tile {here.name}"
    return (*marks, set_text(0.0, MAP_TALL, words, SMALLEST, role="map", subject=template.label))
