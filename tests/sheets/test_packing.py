"""Templates lie on the page without touching, with room for scissors, and without wasting paper.

Overlap and distance are measured with shapely on the outlines themselves, not on the packer's cells.
"""

from itertools import combinations
from math import cos, hypot, pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.sheets.packing.packing import Cover, Item, fits, pack, useful_turns
from shapely.affinity import rotate, translate
from shapely.geometry import MultiPolygon, Polygon

WIDTH, HEIGHT = 540.0, 582.0  # points: a Letter page's room between its head and its foot
GAP = 9.0  # points, 1/8in: SHEETS.md
INCH = 72.0
ROUNDING = 1e-4  # points


def square(side):
    return ((0.0, 0.0), (side, 0.0), (side, side), (0.0, side))


def half_square(leg):
    return ((0.0, 0.0), (leg, 0.0), (0.0, leg))


def diamond(side):
    """A 45deg diamond standing on its point."""
    a, b = side * cos(pi / 8), side * sin(pi / 8)
    return ((0.0, a), (b, 0.0), (0.0, -a), (-b, 0.0))


def turned_poses(ring, turns=(0, 180, 90, 270)):
    """Poses of one polygon, turned clockwise about the origin; half turns keep the grain's direction."""
    rings = (rotate(Polygon(ring), turn, origin=(0, 0)).exterior.coords[:-1] for turn in turns)
    return tuple(
        Cover(turn, (tuple(turned),), turn % 180 == 0) for turn, turned in zip(turns, rings, strict=True)
    )


def fill_ratio(items, places):
    """Area of the placed outlines / area of the paper they take up: whole pages, and of the last the upright
    box around what lies on it."""
    used = sum(Polygon(items[place.item].poses[place.pose].rings[0]).area for place in places)
    last = max(place.page for place in places)
    on_last = [
        translate(Polygon(ring), place.dx, place.dy)
        for place in places
        if place.page == last
        for ring in items[place.item].poses[place.pose].rings
    ]
    left, top, right, bottom = MultiPolygon(on_last).bounds
    return used / (last * WIDTH * HEIGHT + (right - left) * (bottom - top))


def item(ring):
    return Item(turned_poses(ring, useful_turns(ring)))


def lies(items, place):
    rings = items[place.item].poses[place.pose].rings
    return [translate(Polygon(ring), place.dx, place.dy) for ring in rings]


def check_laid_well(items, places, width=WIDTH, height=HEIGHT, gap=GAP):
    assert [place.item for place in places] == list(range(len(items)))
    for place in places:
        for shape in lies(items, place):
            left, top, right, bottom = shape.bounds
            assert min(left, top) >= -ROUNDING
            assert right <= width + ROUNDING and bottom <= height + ROUNDING
    for one, other in combinations(places, 2):
        if one.page == other.page:
            near = min(a.distance(b) for a in lies(items, one) for b in lies(items, other))
            assert near >= gap - ROUNDING, (one, other)


spans = st.floats(20, 250)


@st.composite
def rings(draw):
    """Polygons, convex or not, of 3 to 9 corners about a middle."""
    corners = draw(st.integers(3, 9))
    reach = draw(spans)
    around = [2 * pi * (n + draw(st.floats(0.1, 0.9))) / corners for n in range(corners)]
    away = [reach * draw(st.floats(0.3, 1.0)) for _ in around]
    return tuple((r * sin(a), -r * cos(a)) for r, a in zip(away, around, strict=True))


@settings(max_examples=60, deadline=None)
@given(st.lists(rings(), min_size=1, max_size=9), st.sampled_from([6.0, 9.0, 13.0]))
def test_nothing_overlaps_or_leaves_the_room(outlines, gap):
    items = [Item(turned_poses(ring)) for ring in outlines]
    check_laid_well(items, pack(items, WIDTH, HEIGHT, gap), gap=gap)


@settings(max_examples=30, deadline=None)
@given(st.lists(rings(), min_size=2, max_size=7), st.randoms(use_true_random=False))
def test_order_of_the_templates_changes_nothing(outlines, chance):
    items = [Item(turned_poses(ring)) for ring in outlines]
    shuffled = items[:]
    chance.shuffle(shuffled)
    found = pack(items, WIDTH, HEIGHT)
    again = pack(shuffled, WIDTH, HEIGHT)
    assert [places_of(items, found)] == [places_of(shuffled, again)]


def places_of(items, places):
    return sorted((each.page, each.dx, each.dy, items[each.item].poses[each.pose].rings) for each in places)


def test_a_square_as_wide_as_the_room_fits_exactly():
    one = item(square(541.3))
    assert fits(one, 541.3, 600.0)
    assert not fits(one, 541.2, 600.0)
    check_laid_well([one], pack([one], 541.3, 600.0), 541.3, 600.0)


def test_what_does_not_fit_is_an_oversight_of_the_caller():
    with pytest.raises(AssertionError, match="tiled"):
        pack([item(square(700))], WIDTH, HEIGHT)


def test_nothing_to_place():
    assert pack([], WIDTH, HEIGHT) == ()


def test_squares_stand_exactly_the_scissors_gap_apart():
    items = [item(square(3.5 * INCH)), item(square(3.5 * INCH))]
    first, second = pack(items, WIDTH, HEIGHT)
    assert hypot(second.dx - first.dx, second.dy - first.dy) == pytest.approx(3.5 * INCH + GAP)


def test_equal_triangles_nest():
    """Two half-squares laid long side to long side take little more than their square."""
    items = [item(half_square(4 * INCH))] * 2
    assert fill_ratio(items, pack(items, WIDTH, HEIGHT)) > 0.85


def test_words_beside_a_template_keep_their_room():
    words = ((200.0, 0.0), (290.0, 0.0), (290.0, 40.0), (200.0, 40.0))
    items = [Item((Cover(0.0, (half_square(180.0), words)),)), *[item(square(100.0)) for _ in range(6)]]
    check_laid_well(items, pack(items, WIDTH, HEIGHT))


def test_grain_runs_one_way_where_turning_saves_nothing():
    items = [item(square(side)) for side in (60.0, 90.0, 120.0)] + [item(half_square(120.0))]
    places = pack(items, WIDTH, HEIGHT)
    assert all(items[place.item].poses[place.pose].along for place in places)


def test_more_than_a_page_goes_on_the_next():
    items = [item(square(4 * INCH)) for _ in range(5)]
    places = pack(items, WIDTH, HEIGHT)
    check_laid_well(items, places)
    assert sorted({place.page for place in places}) == list(range(1 + max(place.page for place in places)))
    assert max(place.page for place in places) > 0


def test_two_hundred_templates_are_laid_well():
    triangles = [half_square(130.0 + n % 7 * 20) for n in range(100)]
    items = [item(ring) for ring in (*triangles, *(diamond(80.0 + n % 5 * 15) for n in range(100)))]
    places = pack(items, WIDTH, HEIGHT)
    check_laid_well(items, places)
    assert fill_ratio(items, places) >= 0.60  # on full pages the far edges cost more


@pytest.mark.parametrize("outlines", [
    [square(3.5 * INCH), half_square(3.875 * INCH), half_square(2.875 * INCH), square(2.5 * INCH)],
    [diamond(3 * INCH), square(3 * INCH), half_square(3.5 * INCH), half_square(3.5 * INCH)],
    [square(4.5 * INCH), square(2.5 * INCH), square(1.5 * INCH), half_square(2.875 * INCH)],
    [half_square(5 * INCH), half_square(3.5 * INCH), square(2 * INCH), square(2 * INCH), square(3 * INCH)],
])  # fmt: skip
def test_usual_shapes_leave_little_paper_over(outlines):
    items = [item(ring) for ring in outlines]
    places = pack(items, WIDTH, HEIGHT)
    check_laid_well(items, places)
    assert fill_ratio(items, places) >= 0.70  # DESIGN.md's aim
