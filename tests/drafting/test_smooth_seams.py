"""`seam smooth`: it passes its points, turns no corner, and is made of arcs, as every page needs them."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import atan2, cos, hypot, pi, radians, sin

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from piecewright.geometry.biarcs import smooth
from piecewright.geometry.curves import at_share, flattened
from piecewright.geometry.edge import Edge, Point
from piecewright.measure.tolerance import NEAR, TANGENT
from shapely.geometry import Polygon
from support.check import areas, check_block, check_noted, draft_block, named, only

places = st.tuples(st.integers(0, 96), st.integers(0, 96)).map(
    lambda p: Point(Fraction(p[0], 8), Fraction(p[1], 8))
)


def heading(edge: Edge, share: float) -> float:
    """The direction of an edge at a share of its way, measured by two places close to each other."""
    near = 1e-5
    one, other = at_share(edge, max(share - near, 0)), at_share(edge, min(share + near, 1))
    return atan2(float(other.y) - float(one.y), float(other.x) - float(one.x))


def turn_between(one: Edge, other: Edge) -> float:
    """Radians between the directions in which one arrives and the other leaves, with the half of what each
    turns within the measured stretch taken off."""
    measured = heading(other, 0) - heading(one, 1)
    stretch = (abs(one.sweep) + abs(other.sweep)) * 1e-5
    return max(abs((measured + pi) % (2 * pi) - pi) - stretch, 0)


@settings(max_examples=150, deadline=None)
@given(st.lists(places, min_size=3, max_size=7, unique=True), st.booleans())
def test_it_passes_its_points_and_turns_no_corner(points: list[Point], closed: bool) -> None:
    wanted = [*points, points[0]] if closed else points
    edges = smooth(wanted)
    assert len(edges) == 2 * (len(wanted) - 1)
    assert [edge.start for edge in edges[::2]] == wanted[:-1]
    assert edges[-1].end == wanted[-1]
    joins = list(pairwise(edges)) + ([(edges[-1], edges[0])] if closed else [])
    for one, other in joins:
        assert hypot(float(one.end.x - other.start.x), float(one.end.y - other.start.y)) < NEAR
        assume(min(one.length, other.length) > 0.05)  # a measured direction of less is noise
        assert turn_between(one, other) < TANGENT


@given(st.integers(0, 359), st.lists(st.integers(20, 100), min_size=2, max_size=3))
def test_points_of_a_circle_give_that_circle(first: int, steps: list[int]) -> None:
    turns = [first]
    for step in steps:
        turns.append(turns[-1] + step)
    points = [Point(6 + 4 * cos(radians(each)), 6 + 4 * sin(radians(each))) for each in turns]
    for edge in smooth(points):
        assert edge.arc is not None
        assert hypot(float(edge.arc.center.x) - 6, float(edge.arc.center.y) - 6) < 1e-6
        assert abs(edge.arc.radius - 4) < 1e-6


@settings(max_examples=60, deadline=None)
@given(st.lists(places, min_size=3, max_size=6, unique=True))
def test_it_is_the_same_from_either_end(points: list[Point]) -> None:
    there, back = smooth(points), [edge.reversed() for edge in reversed(smooth(points[::-1]))]
    for one, other in zip(there, back, strict=True):
        middle, again = at_share(one, 0.5), at_share(other, 0.5)
        assert hypot(float(middle.x) - float(again.x), float(middle.y) - float(again.y)) < 1e-6


def test_points_on_a_line_give_the_line() -> None:
    assert [edge.arc for edge in smooth([Point(0, 0), Point(2, 1), Point(4, 2)])] == [None] * 4


POND = "finished 12in grid 12 x 12 seam smooth G2, K4, J9, F11, C8, D3, G2 piece pond at center in dark"


def test_a_closed_one_bounds_the_area_that_shapely_measures() -> None:
    """Chords within 1/1000in of the arcs, along 30in of outline: less than 0.03 square inches apart."""
    draft = check_noted("piece-hole", f"{POND} piece field at bottom in light")
    pond = named(draft, "pond")[0]
    chords = [(float(p.x), float(p.y)) for side in pond.ring for p in flattened(side.edge)]
    assert all(side.edge.arc for side in pond.ring)
    assert abs(Polygon(chords).area - float(pond.area)) < 0.03
    assert abs(float(pond.area) + float(named(draft, "field")[0].area) - 144) < 1e-6


def test_it_turns_and_mirrors_with_its_copy() -> None:
    """Four leaves from the middle, each its mirror image in its own diagonal: alike, and one template."""
    draft = check_block(
        "finished 8in turn 4 about center {"
        " point bulge = 1in from (1/2 from center to top-right) at 135deg"
        " seam smooth center, bulge, top-right"
        " seam smooth center, (bulge mirrored in center--top-right), top-right"
        " piece leaf at (1/2 from center to top-right) in dark"
        " piece ground at top in light }"
    )
    assert len({round(float(each), 6) for each in areas(draft, "leaf")}) == 1
    assert len(draft.shapes) == 2


@pytest.mark.parametrize(
    ("seam", "code"),
    [
        ("seam smooth left, right", "smooth-needs-more"),
        ("seam smooth left, center, left", "smooth-needs-more"),
        ("seam smooth left, left, right", "seam-no-length"),
        ("seam smooth left, (2in from top at 0deg), right", "seam-outside"),
    ],
)
def test_mistakes_of_it(seam: str, code: str) -> None:
    only(draft_block(f"finished 6in {seam}"), code)


def test_smooth_is_a_name_where_a_name_is_due() -> None:
    check_block(
        "finished 6in point smooth = center seam smooth -- top seam smooth -- bottom seam left -- smooth"
    )
