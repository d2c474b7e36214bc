"""Pages for a template larger than the page: tiles that overlap and are joined, each with a map of all."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ...cutting.model import Template
from ...measure.record import record
from ..drawing.lettering import cap_height
from ..packing.joins import tile_map
from ..packing.moving import moved_mark
from ..packing.packing import useful_turns
from ..packing.tile_grid import Grid, Tile
from ..packing.tile_pages import TilePage, tile_pages
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


@record
class TiledPage:
    """A page of tiles: its name (`tile 1.2`), its marks where they stand on the page, and the map from its
    own corner."""

    name: str
    marks: list[Mark]
    map: tuple[Mark, ...]


def tiled_pages(template: Template, paper: Paper, options: SheetOptions) -> list[TiledPage]:
    """The tiles of a template, turned and laid so that they are fewest; small ones share a page."""
    left, top, right, bottom = paper.body
    tiles, grid = _tiles(template, (right - left, bottom - top), options)
    return pages_of_tiles(template.label, tiles, grid, (left, top))


def pages_of_tiles(
    name: str, tiles: Sequence[Tile], grid: Grid, corner: tuple[float, float]
) -> list[TiledPage]:
    """The pages of the tiles of what has that name; `corner`: the top left of a page's room."""
    return [
        TiledPage(
            page.name,
            [moved_mark(mark, *corner) for mark in page.marks],
            named_map(name, tiles, page),
        )
        for page in tile_pages(tiles, grid)
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


def _tiles(
    template: Template, area: tuple[float, float], options: SheetOptions
) -> tuple[tuple[Tile, ...], Grid]:
    """The tiles of the whole template, its label and arrow in the room of one, clear of every overlap; and
    their grid."""
    turn, plan = _plan(template, area, options)
    cutout = _cut_out(template, turn, plan, area, options)
    if cutout.beside:
        plan = plan_tiles([(cutout.ring, box_ring(cutout.beside.box))], area)
        cutout = _cut_out(template, turn, plan, area, options)
    return tile(cutout_marks(cutout, plan.dx, plan.dy, options), plan.grid, plan.places), plan.grid


def _cut_out(
    template: Template, turn: float, plan: TilePlan, area: tuple[float, float], options: SheetOptions
) -> Cutout:
    avoid = [_moved(band, -plan.dx, -plan.dy) for band in overlap_bands(plan.grid)]
    return cut_out(template, turn, area[0], options, avoid)


def overlap_bands(grid: Grid, inset: float = 0.0) -> list[Ring]:
    """The strips of the drawing that two tiles share; `inset` from both their sides."""
    bands = []
    for column in range(2, grid.columns + 1):
        left = grid.box(1, column).left
        bands.append(box_ring((left + inset, 0.0, left + grid.overlap - inset, grid.height)))
    for row in range(2, grid.rows + 1):
        top = grid.box(row, 1).top
        bands.append(box_ring((0.0, top + inset, grid.width, top + grid.overlap - inset)))
    return bands


def join_bands(grid: Grid) -> list[Ring]:
    """The join lines, as narrow strips: lettering clear of them is whole on one tile."""
    return overlap_bands(grid, grid.overlap / 2 - 1.0)


def _moved(ring: Ring, dx: float, dy: float) -> Ring:
    return tuple(Spot(x + dx, y + dy) for x, y in ring)


def named_map(name: str, tiles: Sequence[Tile], page: TilePage) -> tuple[Mark, ...]:
    """The map of the tiles, and under it whose they are."""
    drop = cap_height(SMALLEST) + 3.0
    marks = tile_map(tiles, page.tiles, MAP_WIDE, MAP_TALL - drop)
    words = f"{name}, {page.name}"
    return (*marks, set_text(0.0, MAP_TALL, words, SMALLEST, role="map", subject=name))
