"""Pages for a template larger than the page: tiles that overlap and are joined, each with a map of all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from ...cutting.model import Template
from ..drawing.lettering import cap_height
from ..packing.joins import tile_map
from ..packing.moving import moved_mark
from ..packing.packing import useful_turns
from ..packing.tile_grid import Grid, Tile
from ..packing.tile_plan import TilePlan, plan_tiles
from ..packing.tiling import tile
from ..page import Mark
from .cutout import Cutout, cut_out, cutout_marks, outline_of
from .furniture import MAP_TALL, MAP_WIDE, Paper
from .options import SheetOptions
from .paths import Ring, Spot
from .room import box_ring
from .style import SMALLEST, set_text

TURNS_MOST: Final = 28
"""Turns tried: four, and those that lay a long side level or upright, as far as they go."""

MANY_CORNERS: Final = 12  # of an outline; one of more, with an arc as chords, is tried in quarter turns only


@dataclass(frozen=True, slots=True)
class TilePage:
    """One tile: its name (`1.2`), its marks where they stand on the page, and the map from its own corner."""

    name: str
    count: int  # of tiles
    marks: list[Mark]
    map: tuple[Mark, ...]


def tiled_pages(template: Template, paper: Paper, options: SheetOptions) -> list[TilePage]:
    """The tiles of a template, turned and laid so that they are fewest."""
    left, top, right, bottom = paper.body
    tiles = _tiles(template, (right - left, bottom - top), options)
    return [
        TilePage(
            each.name,
            len(tiles),
            [moved_mark(mark, left, top) for mark in each.marks],
            named_map(template.label, tiles, each),
        )
        for each in tiles
    ]


def tiles_of(template: Template, paper: Paper, options: SheetOptions) -> int:
    """How many tiles the template takes, or hardly fewer than that: words beside it may add one."""
    left, top, right, bottom = paper.body
    return len(_plan(template, (right - left, bottom - top), options)[1].places)


def _plan(template: Template, area: tuple[float, float], options: SheetOptions) -> tuple[float, TilePlan]:
    """The turn, and the plan of its tiles."""
    level = outline_of(template, 0.0, options)
    turns = useful_turns(level)[: TURNS_MOST if len(level) <= MANY_CORNERS else 4]
    plan = plan_tiles([(outline_of(template, turn, options),) for turn in turns], area)
    return turns[plan.pose], plan


def _tiles(template: Template, area: tuple[float, float], options: SheetOptions) -> tuple[Tile, ...]:
    """The tiles of the whole template, its label and arrow in the room of one, clear of every overlap."""
    turn, plan = _plan(template, area, options)
    cutout = _cut_out(template, turn, plan, area, options)
    if cutout.beside:
        plan = plan_tiles([(cutout.ring, box_ring(cutout.beside.box))], area)
        cutout = _cut_out(template, turn, plan, area, options)
    return tile(cutout_marks(cutout, plan.dx, plan.dy, options), plan.grid, plan.places)


def _cut_out(
    template: Template, turn: float, plan: TilePlan, area: tuple[float, float], options: SheetOptions
) -> Cutout:
    avoid = [_moved(band, -plan.dx, -plan.dy) for band in overlap_bands(plan.grid)]
    return cut_out(template, turn, area[0], options, avoid)


def overlap_bands(grid: Grid) -> list[Ring]:
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


def named_map(name: str, tiles: Sequence[Tile], here: Tile) -> tuple[Mark, ...]:
    """The map of the tiles, and under it whose they are."""
    drop = cap_height(SMALLEST) + 3.0
    marks = tile_map(tiles, here, MAP_WIDE, MAP_TALL - drop)
    words = f"{name}, tile {here.name}"
    return (*marks, set_text(0.0, MAP_TALL, words, SMALLEST, role="map", subject=name))
