"""Cut outlines against an independent offsetting library (pyclipper), and against exact geometry."""

from __future__ import annotations

from cmath import phase
from math import cos, hypot, pi, sin, sqrt, tan

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from piecewright.cutting.templates.allowance import outset, outset_rings
from piecewright.geometry.edge import Point
from piecewright.geometry.stroke import Stroke, doubled_area, stroke_of
from shapely.geometry import LinearRing, LineString, MultiPoint
from shapely.geometry import Point as ShapelyPoint
from support.clipper import apart, clipper_outset, flat
from support.random_pieces import ring_edges, star_polygons

PRINTED = 0.001  # inches: the promised tolerance
EXACT = 1e-6
CUT_OFF = 7.2  # degrees: a sharper needle's mitre is squared off 16 allowances from the point
LEAST_AREA = 1e-4  # square inches: a gap smaller than this is a pinhole that either library may lose


def corners(edges):
    return [(float(edge.start.x), float(edge.start.y)) for edge in edges]


def cut(shape, width=0.25):
    ring = ring_edges(shape)
    return outset(ring, [width] * len(ring))


def rings_of(shape, widths):
    return outset_rings([stroke_of(edge) for edge in ring_edges(shape)], widths).rings


def agrees_with_clipper(shape, width):
    ring = ring_edges(shape)
    ours = rings_of(shape, [width] * len(ring))
    theirs = clipper_outset([flat([stroke_of(edge) for edge in ring])], width)
    theirs = [path for path in theirs if abs(_area(path)) > LEAST_AREA]
    ours = [each for each in ours if abs(doubled_area(each) / 2) > LEAST_AREA]
    total = sum(doubled_area(each) / 2 for each in ours)
    assert total == pytest.approx(abs(sum(_area(path) for path in theirs)), abs=PRINTED)
    assert apart([flat(each) for each in ours], theirs) < PRINTED


def _area(path):
    return sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in zip(path, path[1:] + path[:1], strict=True)) / 2


def sharpest(shape):
    """Degrees of the sharpest corner."""
    places = [complex(*place) for place in shape]
    around = zip(places[-1:] + places[:-1], places, places[1:] + places[:1], strict=True)
    return min(abs(phase((before - at) / (after - at))) for before, at, after in around) * 180 / pi


@settings(max_examples=150, deadline=None)
@given(star_polygons(3, 9, 32), st.sampled_from([0.125, 0.25, 0.5]))
def test_random_outlines_agree_with_clipper(shape, width):
    assume(sharpest(shape) > CUT_OFF)
    agrees_with_clipper(shape, width)


@settings(max_examples=100, deadline=None)
@given(st.lists(st.tuples(st.integers(-24, 24), st.integers(-24, 24)), min_size=3, max_size=12))
def test_random_convex_outlines_agree_with_clipper(places):
    hull = MultiPoint([(x / 4, y / 4) for x, y in places]).convex_hull
    if hull.geom_type == "Polygon" and hull.area > 0.5:
        shape = list(hull.exterior.coords)[:-1]
        if sharpest(shape) > CUT_OFF:
            agrees_with_clipper(shape, 0.25)


BITES = {
    "narrow notch": [(0, 0), (4, 0), (4, 4), (2.2, 4), (2, 1), (1.8, 4), (0, 4)],
    "notch as wide as two allowances": [
        (0, 0),
        (4, 0),
        (4, 4),
        (2.25, 4),
        (2.25, 1),
        (1.75, 1),
        (1.75, 4),
        (0, 4),
    ],
    "mouth that closes round a room": [
        (0, 0),
        (6, 0),
        (6, 6),
        (3.1, 6),
        (3.1, 5),
        (5, 5),
        (5, 1),
        (1, 1),
        (1, 5),
        (2.9, 5),
        (2.9, 6),
        (0, 6),
    ],
    "step lower than the allowance": [(0, 0), (4, 0), (4, 2), (2, 2), (2, 2.1), (0, 2.1)],
    "arrow": [(0, 0), (5, 2), (0, 4), (3.5, 2)],
    "saw": [(0, 0), (1, 3), (2, 0), (3, 3), (4, 0), (4, 5), (0, 5)],
}


@pytest.mark.parametrize("name", BITES)
def test_outlines_that_bite_their_own_allowance_agree_with_clipper(name):
    agrees_with_clipper(BITES[name], 0.25)


CURVES = {
    "quarter round": [(0, 0), (3, 0, (0, 0), True), (0, 3)],
    "bite out of a square": [(3, 0), (3, 3), (0, 3), (0, 2, (0, 0), False), (2, 0)],
    "leaf": [(0, 0, (0, 3), True), (3, 3, (3, 0), True)],
    "bar with round ends": [(0, 0), (4, 0, (4, 1), True), (4, 2), (0, 2, (0, 1), True)],
    "melon and rim": [(-3, 0, (0, 4), True), (3, 0, (0, 0), True)],
    "crescent": [(-3, 0, (0, 0), True), (3, 0, (0, 1), False)],
}


@pytest.mark.parametrize("name", ["bar with round ends", "bite out of a square", "quarter round"])
def test_curves_that_meet_straight_sides_squarely_agree_with_clipper(name):
    """The library carries an arc on beyond a corner by its last chord, we by its circle: their tips differ by
    up to (1/4in)^2 / 2r; everywhere else the outlines agree as printed."""
    ring = ring_edges(CURVES[name])
    ours = flat([stroke_of(edge) for edge in outset(ring, [0.25] * len(ring))])
    theirs = clipper_outset([flat([stroke_of(edge) for edge in ring], 1e-6)], 0.25)
    assert apart([ours], theirs) < 1.1 * 0.25**2 / (2 * 1.75)
    sewn = MultiPoint(corners(ring))

    def clear_of_tips(place):
        return ShapelyPoint(place).distance(sewn) > 0.5

    for some, others in ((ours, theirs[0]), (theirs[0], ours)):
        line = LinearRing(others)
        clear = [place for place in some if clear_of_tips(place)]
        assert clear and all(ShapelyPoint(place).distance(line) < PRINTED for place in clear)


@pytest.mark.parametrize("name", CURVES)
def test_every_curve_keeps_its_distance(name):
    """Each cut edge lies its allowance away from the finished outline, all along, tips apart."""
    ring = ring_edges(CURVES[name])
    sewn = LineString([*flat([stroke_of(edge) for edge in ring]), corners(ring)[0]])
    cut_strokes = [stroke_of(edge) for edge in outset(ring, [0.25] * len(ring))]
    assert len(cut_strokes) == len(ring)
    for stroke in cut_strokes:
        middle = stroke.at(0.5)
        assert ShapelyPoint(middle.real, middle.imag).distance(sewn) == pytest.approx(0.25, abs=1e-4)
    for x, y in flat(cut_strokes):
        assert ShapelyPoint(x, y).distance(sewn) > 0.25 - 1e-4


def test_a_quarter_round_s_corners_are_exact():
    """Circle of radius 3 1/4in meets the straight sides carried on 1/4in outside their seams."""
    edges = cut(CURVES["quarter round"])
    reach = sqrt(3.25**2 - 0.25**2)
    wanted = {(-0.25, -0.25), (reach, -0.25), (-0.25, reach)}
    assert all(min(hypot(x - u, y - v) for x, y in corners(edges)) < EXACT for u, v in wanted)
    (arc,) = [edge.arc for edge in edges if edge.arc]
    assert arc.radius == pytest.approx(3.25, abs=EXACT) and arc.clockwise


def test_a_smooth_join_stays_smooth():
    edges = cut(CURVES["bar with round ends"])
    assert len(edges) == 4
    for edge in edges:
        if edge.arc:
            assert edge.arc.radius == pytest.approx(1.25, abs=EXACT)


def test_an_inner_curve_tighter_than_its_allowance_vanishes():
    """The two sides beside it meet instead, as when its arc is drawn with many short chords."""
    scooped = [(0, 0), (4, 0), (4, 3), (2.1, 3, (2, 3), False), (1.9, 3), (0, 3)]
    ring = ring_edges(scooped)
    edges = outset(ring, [0.25] * len(ring))
    assert all(edge.arc is None for edge in edges)
    assert sorted(corners(edges)) == [(-0.25, -0.25), (-0.25, 3.25), (4.25, -0.25), (4.25, 3.25)]


def test_a_circle_grows_and_a_round_window_shrinks_or_closes():
    circle = [Stroke(3 + 0j, 3 + 0j, 0j, 2 * pi)]
    window = [circle[0].reversed()]
    assert outset_rings(circle, [0.25]).rings[0][0].radius == pytest.approx(3.25)
    assert outset_rings(window, [0.25]).rings[0][0].radius == pytest.approx(2.75)
    assert outset_rings(window, [3]).rings == ()


def test_a_circle_is_printed_as_two_halves():
    """An edge that ends where it starts would draw nothing."""
    halves = outset(ring_edges([(3, 0, (0, 0), True)]), [0.25])
    assert [half.length for half in halves] == [pytest.approx(3.25 * pi)] * 2


def test_a_window_shrinks_and_a_small_one_closes():
    def window(size):
        square = ring_edges([(0, 0), (size, 0), (size, size), (0, size)])
        return outset([edge.reversed() for edge in reversed(square)], [0.25] * 4)

    assert sorted(corners(window(2))) == [(0.25, 0.25), (0.25, 1.75), (1.75, 0.25), (1.75, 1.75)]
    assert window(0.5) == () and window(0.4) == ()


def test_a_window_that_is_pinched_by_its_allowance_becomes_two():
    waist = [(0, 0), (2, 0.9), (4, 0), (4, 2), (2, 1.1), (0, 2)]
    ring = [stroke_of(edge).reversed() for edge in reversed(ring_edges(waist))]
    left = outset_rings(ring, [0.25] * len(ring)).rings
    assert len(left) == 2
    theirs = clipper_outset([flat([stroke_of(edge) for edge in ring_edges(waist)])], -0.25)
    assert apart([flat(each) for each in left], theirs) < PRINTED


def test_each_side_has_its_own_width():
    edges = outset(ring_edges([(0, 0), (4, 0), (4, 3), (0, 3)]), [0.5, 0.25, 0.125, 0])
    assert sorted(corners(edges)) == [(0, -0.5), (0, 3.125), (4.25, -0.5), (4.25, 3.125)]


def test_sides_in_one_line_with_unlike_widths_meet_in_a_step():
    edges = outset(ring_edges([(0, 0), (2, 0), (4, 0), (4, 3), (0, 3)]), [0.5, 0.25, 0.25, 0.25, 0.25])
    assert (2, -0.5) in corners(edges) and (2, -0.25) in corners(edges)


@pytest.mark.parametrize("bend", [0.02, 0.2, -0.02, -0.2])
def test_sides_nearly_in_one_line_with_unlike_widths_stay_near_their_corner(bend):
    """A mitre there would run far along a side and take its allowance away."""
    edges = outset(ring_edges([(0, 0), (2, -bend), (4, 0), (4, 3), (0, 3)]), [0.5, 0.25, 0.25, 0.25, 0.25])
    near = [place for place in corners(edges) if hypot(place[0] - 2, place[1] + bend) < 0.8]
    assert len(near) >= 2
    assert all(-0.8 < x < 4.8 and -1.3 < y < 3.8 for x, y in corners(edges))


@pytest.mark.parametrize(
    ("angle", "distance", "along"), [(45, 0.6533, 0.6036), (90, 0.3536, 0.25), (22.5, 1.2815, 1.2568)]
)
def test_untrimmed_points_reach_as_far_as_published(angle, distance, along):
    """SOURCES 1.1, derived: s / sin(angle / 2) from the finished point, s / tan(angle / 2) along the edge."""
    turn = angle * pi / 180
    edges = cut([(0, 0), (5, 0), (5 * cos(turn), 5 * sin(turn))])
    x, y = min(corners(edges), key=lambda place: hypot(*place) if place[0] < 0 else 99)
    assert hypot(x, y) == pytest.approx(distance, abs=5e-5)
    assert hypot(x, y) == pytest.approx(0.25 / sin(turn / 2), abs=EXACT)
    assert -x == pytest.approx(along, abs=5e-5)
    assert -x == pytest.approx(0.25 / tan(turn / 2), abs=EXACT)


def test_the_cut_outline_runs_clockwise_without_a_break():
    for shape in (*BITES.values(), *CURVES.values()):
        edges = cut(shape)
        assert doubled_area([stroke_of(edge) for edge in edges]) > 0
        for edge, after in zip(edges, edges[1:] + edges[:1], strict=True):
            assert edge.end == after.start and isinstance(edge.end, Point)
