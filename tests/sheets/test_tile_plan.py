"""Tiles: no more than needed, and everything of the outline on one of them."""

from __future__ import annotations

from math import cos, pi, sin

import pytest
import shapely
from piecewright.sheets.packing.tile_plan import TilePlan, hang_together, plan_tiles

AREA = (540.0, 582.0)  # a Letter page's body


def turned(ring: tuple[tuple[float, float], ...], degrees: float) -> tuple[tuple[float, float], ...]:
    c, s = cos(degrees * pi / 180), sin(degrees * pi / 180)
    return tuple((x * c - y * s, x * s + y * c) for x, y in ring)


def box(wide: float, tall: float) -> tuple[tuple[float, float], ...]:
    return ((0.0, 0.0), (wide, 0.0), (wide, tall), (0.0, tall))


WEDGE = ((0.0, 0.0), (620.0, 0.0), (0.0, 620.0))
STAR = tuple(
    (700 * cos(pi * n / 5) * (1 if n % 2 else 0.4), 700 * sin(pi * n / 5) * (1 if n % 2 else 0.4))
    for n in range(10)
)
HOOK = ((0.0, 0.0), (900.0, 0.0), (900.0, 150.0), (150.0, 150.0), (150.0, 1000.0), (0.0, 1000.0))
SHAPES = {
    "wedge": WEDGE,
    "star": STAR,
    "hook": HOOK,
    "strip": box(900.0, 100.0),
    "sheet": box(1200.0, 1100.0),
}


def shown(plan: TilePlan) -> shapely.Geometry:
    return shapely.union_all([shapely.box(*plan.grid.box(*place)) for place in plan.places])


@pytest.mark.parametrize("degrees", [0, 17, 45, 90])
@pytest.mark.parametrize("name", SHAPES)
def test_every_spot_is_on_a_printed_tile_and_the_tiles_join(name: str, degrees: float) -> None:
    ring = turned(SHAPES[name], degrees)
    plan = plan_tiles([(ring,)], AREA)
    lying = shapely.Polygon([(x + plan.dx, y + plan.dy) for x, y in ring])
    assert lying.difference(shown(plan)).area < 1e-6
    assert hang_together(plan.places)
    assert plan.places == tuple(sorted(set(plan.places)))


@pytest.mark.parametrize("name", SHAPES)
def test_no_tile_could_be_spared(name: str) -> None:
    plan = plan_tiles([(SHAPES[name],)], AREA)
    lying = shapely.Polygon([(x + plan.dx, y + plan.dy) for x, y in SHAPES[name]])
    for place in plan.places:
        others = [each for each in plan.places if each != place]
        rest = shapely.union_all([shapely.box(*plan.grid.box(*each)) for each in others])
        assert lying.difference(rest).area > 1e-6 or not hang_together(others)


def test_a_triangle_an_eighth_too_wide_loses_its_corner_tiles() -> None:
    """620pt legs would take 2 x 2 tiles by their box; laid on its long side, two."""
    assert len(plan_tiles([(WEDGE,), (turned(WEDGE, 135.0),)], AREA).places) == 2


def test_of_equal_plans_the_first_pose_is_taken() -> None:
    assert plan_tiles([(box(900.0, 100.0),), (box(100.0, 900.0),)], AREA).pose == 0


def test_a_narrow_waist_may_lie_across_an_overlap_by_shifting() -> None:
    """Two 500pt squares joined by a bar: shifted on the grid, each square has a tile of its own."""
    bell = (
        (0, 0),
        (500, 0),
        (500, 240),
        (640, 240),
        (640, 0),
        (900, 0),
        (900, 500),
        (640, 500),
        (640, 260),
        (500, 260),
        (500, 500),
        (0, 500),
    )
    assert len(plan_tiles([(bell,)], AREA).places) == 2


def test_tiles_that_meet_at_a_corner_alone_do_not_hang_together() -> None:
    assert not hang_together([(1, 1), (2, 2)])
    assert hang_together([(1, 1), (1, 2), (2, 2)])
    assert hang_together([])
