"""Room for lettering: against shapely, which knows nothing of bands."""

from __future__ import annotations

from math import cos, pi, radians, sin
from random import Random

from piecewright.geometry.edge import Arc, Edge, Point
from piecewright.sheets.arrange.paths import Placement, Spot, curves_needed, open_path
from piecewright.sheets.arrange.room import Line, Room, free_spans, place_arrow, place_lines
from shapely.geometry import LineString, Polygon, box


def star(random: Random, count: int) -> tuple[Spot, ...]:
    """A random outline without crossings: points round a middle, at any distance."""
    turns = sorted(random.uniform(0, 2 * pi) for _ in range(count))
    return tuple(Spot(200 + r * cos(t), 200 + r * sin(t)) for t in turns for r in (random.uniform(30, 190),))


def test_free_spans_are_inside_and_as_long_as_can_be():
    random = Random(3)
    for _ in range(200):
        ring = star(random, random.randint(4, 12))
        outline = Polygon(ring)
        if not outline.is_valid:
            continue
        top = random.uniform(20, 360)
        bottom = top + random.uniform(3, 30)
        for left, right in free_spans(Room((ring,)), top, bottom):
            assert outline.buffer(1e-6).contains(box(left, top, right, bottom))
            for wider in (box(left - 0.5, top, right, bottom), box(left, top, right + 0.5, bottom)):
                assert not outline.contains(wider)


def test_lines_are_placed_clear_of_outline_and_things():
    random = Random(4)
    placed = 0
    for _ in range(100):
        ring = star(random, 8)
        thing = (Spot(190, 190), Spot(214, 196), Spot(200, 220))
        lines = [Line(26, 0, 18), Line(70, 20, 29), Line(50, 31, 40)]
        top = place_lines(Room((ring,), (thing,)), lines, Spot(200, 200), 4.0)
        if top is None:
            continue
        placed += 1
        for line in lines:
            words = box(top.x - line.width / 2, top.y + line.top, top.x + line.width / 2, top.y + line.bottom)
            assert Polygon(ring).exterior.distance(words) >= 3.99 and Polygon(ring).contains(words)
            assert Polygon(thing).distance(words) > 1.0
    assert placed > 20


def test_lines_that_fit_only_exactly_are_placed():
    ring = (Spot(0, 0), Spot(100, 0), Spot(100, 40), Spot(0, 40))
    assert place_lines(Room((ring,)), [Line(92, 0, 32)], Spot(50, 20), 4.0) == Spot(50, 4)
    assert place_lines(Room((ring,)), [Line(93, 0, 32)], Spot(50, 20), 4.0) is None


def test_a_hole_is_no_room():
    ring = (Spot(0, 0), Spot(100, 0), Spot(100, 100), Spot(0, 100))
    hole = (Spot(20, 20), Spot(20, 80), Spot(80, 80), Spot(80, 20))
    assert place_lines(Room((ring, hole)), [Line(30, 0, 30)], Spot(50, 50), 2.0) is None


def test_arrows_lie_along_their_heading_inside():
    random = Random(5)
    for _ in range(60):
        ring, heading = star(random, 7), random.uniform(0, 180)
        arrow = place_arrow(Room((ring,)), heading, (20, 108), 4.0)
        if arrow is None:
            continue
        (x1, y1), (x2, y2) = arrow
        line = LineString(arrow)
        assert Polygon(ring).contains(line) and Polygon(ring).exterior.distance(line) >= 3.99
        assert 19.99 <= line.length <= 108.01
        across = (x2 - x1) * cos(radians(heading)) + (y2 - y1) * sin(radians(heading))
        assert abs(across) < 1e-6


def test_curves_follow_arcs_within_half_a_thousandth_of_an_inch():
    random = Random(6)
    for _ in range(60):
        radius, first, sweep = random.uniform(0.2, 12), random.uniform(0, 2 * pi), random.uniform(0.1, 6.2)
        ends = [Point(5 + radius * cos(t), 3 + radius * sin(t)) for t in (first, first + sweep)]
        path = open_path([Edge(*ends, Arc(Point(5, 3), radius, True))], Placement(30.0, 10, 20))
        middle = Placement(30.0, 10, 20).spot(Point(5, 3))
        x0, y0 = path[0][1:]
        for _, x1, y1, x2, y2, x3, y3 in path[1:]:
            for step in range(1, 40):
                t = step / 40
                a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
                x, y = a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3
                assert abs(((x - middle.x) ** 2 + (y - middle.y) ** 2) ** 0.5 / 72 - radius) <= 0.0005
            x0, y0 = x3, y3
        assert len(path) - 1 == curves_needed(radius, sweep)
