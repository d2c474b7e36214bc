"""Tiles on pages: one that shows only an edge or a corner of the drawing shares its page with others.

In: tiles as `tiling` makes them, each from its own corner, and the grid they are of. Out: pages of them,
moved, some turned a quarter. Points; x right, y down from the top left of the page's room.

    one page each      +-----+-+      the narrow ones share      +-+ +---+
                       |     | |      a page, their names        | | |   |
                       +-----+-+      above them                 | | +---+
                       +-----+-+                                 +-+
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ...measure.record import record
from ...words.pages.templates import tiles_words
from ..page import Mark, TextMark
from .moving import moved_mark, turned_mark
from .packing import GAP, Cover, Item, pack
from .tile_grid import Grid, Tile

NAME_ROOM: Final = 10.0  # points kept free above a tile for its name
NAME_SIZE: Final = 7.0
NAME_DROP: Final = 3.0  # of its line above the tile

SMALL: Final = 0.7
"""Of a page's width or height: a tile that shows more than that of the drawing both ways has a page alone."""

SHARE_MOST: Final = 60  # small tiles that are tried on pages together


@record
class TilePage:
    """One page of tiles: which they are, and their marks."""

    tiles: tuple[Tile, ...]
    marks: tuple[Mark, ...]

    @property
    def name(self) -> str:
        """`tile 1.1`, `tiles 1.2, 2.2`."""
        return tiles_words([tile.name for tile in self.tiles])


def tile_pages(tiles: Sequence[Tile], grid: Grid) -> list[TilePage]:
    """The tiles on pages of the grid's tile size, in order of each page's first tile. Tiles stand alone and
    without names unless sharing saves a page."""
    small = [tile for tile in tiles if _is_small(tile, grid)]
    alone = [TilePage((tile,), tile.marks) for tile in tiles]
    if not 2 <= len(small) <= SHARE_MOST:
        return alone
    shared = _shared(small, grid)
    if len(shared) == len(small):
        return alone
    pages = [page for page in alone if page.tiles[0] not in small]
    return sorted((*pages, *shared), key=lambda page: (page.tiles[0].row, page.tiles[0].column))


def _size(tile: Tile, grid: Grid) -> tuple[float, float]:
    """What of the tile lies on the drawing: its width and height."""
    return (
        min(grid.tile_width, grid.width - tile.box.left),
        min(grid.tile_height, grid.height - tile.box.top),
    )


def _is_small(tile: Tile, grid: Grid) -> bool:
    wide, tall = _size(tile, grid)
    return wide < SMALL * grid.tile_width or tall < SMALL * grid.tile_height


def _shared(tiles: Sequence[Tile], grid: Grid) -> list[TilePage]:
    """The tiles laid on as few pages as the packer finds, each with its name above it where there is room."""
    items = [Item(tuple(_poses(*_size(tile, grid), grid))) for tile in tiles]
    places = pack(items, grid.tile_width, grid.tile_height, GAP)
    pages: dict[int, list[int]] = {}
    for place in places:
        pages.setdefault(place.page, []).append(place.item)
    found = []
    for numbers in pages.values():
        marks: list[Mark] = []
        for number in numbers:
            place, tile = places[number], tiles[number]
            pose = items[number].poses[place.pose]
            own = tile.marks if not pose.turned else tuple(turned_mark(mark) for mark in tile.marks)
            marks += [moved_mark(mark, place.dx, place.dy) for mark in own]
            if len(numbers) > 1:
                marks.append(_name(tile, pose, place.dx, place.dy))
        found.append(TilePage(tuple(tiles[number] for number in numbers), tuple(marks)))
    return found


def _poses(wide: float, tall: float, grid: Grid) -> list[Cover]:
    """As it is, and turned a quarter to the right; with room for its name above where the page has it."""
    poses = []
    for turned, left, right, height in ((0.0, 0.0, wide, tall), (90.0, -tall, 0.0, wide)):
        top = -min(NAME_ROOM, max(0.0, grid.tile_height - height))
        ring = (left, top), (right, top), (right, height), (left, height)
        poses.append(Cover(turned, (ring,), not turned))
    return poses


def _name(tile: Tile, pose: Cover, dx: float, dy: float) -> TextMark:
    left = pose.rings[0][0][0]
    name = tiles_words([tile.name])
    return TextMark(
        left + dx,
        dy - NAME_DROP,
        name,
        NAME_SIZE,
        True,
        role="tile-name",
        subject=tile.name,
    )
