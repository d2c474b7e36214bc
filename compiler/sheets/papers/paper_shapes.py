"""Shapes of paper at true size, packed on pages, or tiled where they are larger than one.

A shape draws itself in any turn, so that its lettering stays level with the page.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from ...measure.record import record
from ..arrange.furniture import Paper
from ..arrange.page_bound import pages_under, refuse_too_many
from ..arrange.paths import Ring, Spot
from ..arrange.tiled_sheets import join_bands, overlap_bands, pages_of_tiles
from ..packing.moving import moved_mark
from ..packing.packing import Cover, Item, Placement, fits, pack
from ..packing.tile_plan import plan_tiles
from ..packing.tiling import tile
from ..page import Mark

GAP: Final = 11.0  # points between shapes: 1/8in for scissors, and what the lines' thickness takes
TURNS: Final = (0.0, 90.0, 180.0, 270.0)
MANY: Final = 60  # shapes; beyond, only the first two turns are tried, for each costs time


@record
class Drawn:
    """A shape's marks about the block's own corner, and the polygons they cover, its outline first."""

    marks: tuple[Mark, ...]
    rings: tuple[Ring, ...]


@record
class PaperShape:
    """`draw` gives the shape turned so many degrees clockwise, lettered clear of one of several sets of
    rings if it can be, the first of them rather than the others."""

    name: str  # 'section A'
    draw: Callable[[float, Sequence[Sequence[Ring]]], Drawn]


@record
class ShapePage:
    """One page: which shapes are on it (counted from 0), and which tiles of its one shape (`tile 1.2`), if
    any."""

    shapes: tuple[int, ...]
    marks: list[Mark]
    tile: str = ""
    map: tuple[Mark, ...] = ()


def lay_out(shapes: Sequence[PaperShape], paper: Paper) -> list[ShapePage]:
    """Every shape once, on as few pages as the packer finds, in the order of each page's first shape."""
    left, top, right, bottom = paper.body
    size = (right - left, bottom - top)
    turns = TURNS if len(shapes) <= MANY else TURNS[:2]
    drawn = [[shape.draw(turn, ()) for turn in turns] for shape in shapes]
    refuse_too_many(pages_under((poses[0].rings[0] for poses in drawn), paper), "templates-at-least")
    items = [
        Item(tuple(Cover(turn, each.rings, turn % 180 == 0) for turn, each in zip(turns, poses, strict=True)))
        for poses in drawn
    ]
    packed = [number for number, item in enumerate(items) if fits(item, *size)]
    pages = _packed_pages(packed, drawn, pack([items[number] for number in packed], *size, GAP), left, top)
    for number in range(len(shapes)):
        if number not in packed:
            pages += _tiled_pages(number, shapes[number], drawn[number], size, left, top)
    refuse_too_many(len(pages))
    return sorted(pages, key=lambda page: page.shapes[0])


def _packed_pages(
    packed: Sequence[int],
    drawn: Sequence[Sequence[Drawn]],
    places: Sequence[Placement],
    left: float,
    top: float,
) -> list[ShapePage]:
    """The packed shapes' pages."""
    pages: list[ShapePage] = []
    for page in range(max((place.page for place in places), default=-1) + 1):
        here = [place for place in places if place.page == page]
        marks = [
            moved_mark(mark, place.dx + left, place.dy + top)
            for place in here
            for mark in drawn[packed[place.item]][place.pose].marks
        ]
        pages.append(ShapePage(tuple(sorted(packed[place.item] for place in here)), marks))
    return pages


def _tiled_pages(
    number: int, shape: PaperShape, poses: Sequence[Drawn], size: tuple[float, float], left: float, top: float
) -> list[ShapePage]:
    """The tiles of a shape larger than the page."""
    plan = plan_tiles([pose.rings for pose in poses], size)
    kept_clear = [
        [tuple(Spot(x - plan.dx, y - plan.dy) for x, y in band) for band in bands]
        for bands in (overlap_bands(plan.grid), join_bands(plan.grid))
    ]
    marks = shape.draw(TURNS[plan.pose], kept_clear).marks
    tiles = tile([moved_mark(mark, plan.dx, plan.dy) for mark in marks], plan.grid, plan.places)
    return [
        ShapePage((number,), page.marks, page.name, page.map)
        for page in pages_of_tiles(shape.name, tiles, plan.grid, (left, top))
    ]
