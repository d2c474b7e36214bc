"""Tiles that show only an edge or a corner of a drawing share a page, whole and true to size."""

from __future__ import annotations

from itertools import combinations
from math import hypot

import pytest
from piecewright.sheets.packing.tile_grid import grid_for
from piecewright.sheets.packing.tile_pages import TilePage, tile_pages
from piecewright.sheets.packing.tiling import tile
from piecewright.sheets.page import PathMark, TextMark
from shapely.geometry import box

AREA = (540.0, 580.0)
GAP = 9.0  # 1/8in: what scissors need


def drawing(wide: float, tall: float) -> PathMark:
    return PathMark(
        (("M", 0.0, 0.0), ("L", wide, 0.0), ("L", wide, tall), ("L", 0.0, tall), ("Z",)), role="cut"
    )


def pages_for(wide: float, tall: float) -> list[TilePage]:
    grid = grid_for(wide, tall, AREA)
    return tile_pages(tile((drawing(wide, tall),), grid), grid)


def spots_of(mark: PathMark) -> list[tuple[float, float]]:
    return [segment[1:] for segment in mark.path if segment[0] != "Z"]


def cut_lines(page: TilePage) -> list[PathMark]:
    return [mark for mark in page.marks if isinstance(mark, PathMark) and mark.role == "cut"]


@pytest.mark.parametrize("side", [612.0, 684.0])  # blocks of 8 1/2in and 9 1/2in on Letter paper
def test_an_edge_and_a_corner_share_the_second_page(side):
    assert [page.name for page in pages_for(side, side)] == ["tile 1.1", "tiles 1.2, 2.1, 2.2"]


def test_tiles_that_show_much_have_a_page_each():
    pages = pages_for(1000.0, 1000.0)
    assert [page.name for page in pages] == ["tile 1.1", "tile 1.2", "tile 2.1", "tile 2.2"]
    assert not any(isinstance(mark, TextMark) and mark.role == "tile-name" for mark in pages[0].marks)


def test_every_tile_is_on_one_page_and_its_name_above_it():
    for side in (600.0, 700.0, 760.0, 1200.0, 1500.0):
        pages = pages_for(side, side / 2)
        names = [each.name for page in pages for each in page.tiles]
        grid = grid_for(side, side / 2, AREA)
        assert sorted(names) == sorted(each.name for each in tile((drawing(side, side / 2),), grid))
        for page in pages:
            shown = [mark.text for mark in page.marks if getattr(mark, "role", "") == "tile-name"]
            if len(page.tiles) > 1:
                assert shown == [f"tile {each.name}" for each in page.tiles]


@pytest.mark.parametrize("side", [612.0, 684.0])
def test_shared_tiles_stay_apart_on_the_page_and_measure_as_before(side):
    one, shared = pages_for(side, side)
    rooms = []
    for mark in cut_lines(shared):
        xs, ys = zip(*spots_of(mark), strict=True)
        rooms.append(box(min(xs), min(ys), max(xs), max(ys)))
        assert min(xs) >= -0.01 and max(xs) <= AREA[0] + 0.01
        assert min(ys) >= -0.01 and max(ys) <= AREA[1] + 0.01
    assert all(a.distance(b) >= GAP - 0.01 for a, b in combinations(rooms, 2))
    steps = [
        hypot(x2 - x1, y2 - y1)
        for page in (one, shared)
        for mark in cut_lines(page)
        for (x1, y1), (x2, y2) in zip(spots_of(mark), spots_of(mark)[1:], strict=False)
    ]
    overlaps = 4 * 36.0  # each side crosses one overlap, which both tiles show
    assert sum(steps) == pytest.approx(4 * side + overlaps, abs=0.01)


def test_the_letters_of_a_join_stand_off_a_line_that_runs_along_it():
    """A seam as far from the join line as its letters would stand: they stand beside their diamonds."""
    side = 684.0
    grid = grid_for(side, side, AREA)
    join = AREA[1] - grid.overlap / 2
    seam = PathMark((("M", 0.0, join - 14.0), ("L", side, join - 14.0)), role="sew")
    tiles = tile((drawing(side, side), seam), grid)
    (upper,) = [each for each in tiles if each.name == "1.1"]
    (line,) = [mark for mark in upper.marks if isinstance(mark, PathMark) and mark.role == "sew"]
    height = line.path[0][2]
    letters = [mark for mark in upper.marks if isinstance(mark, TextMark) and mark.role == "join"]
    assert len(letters) == 4
    assert all(mark.y < height or mark.y - 0.75 * mark.size > height for mark in letters)
