"""Where lines, arcs, circles and outlines meet: by hand formulas, and by shapely on fine polygons."""

from __future__ import annotations

from fractions import Fraction
from math import cos, hypot, pi, radians, sin, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.geometry.edge import Arc, Edge, Point
from piecewright.geometry.meetings import Round, Stroke, places_of_meeting, round_of
from piecewright.measure.tolerance import Number
from shapely.geometry import LineString, MultiPoint
from shapely.geometry import Point as ShapelyPoint
from support.check import check_block, draft_block, only, said


def met(phrase: str, size: str = "12in", points: str = "") -> tuple[Number, Number]:
    """Where a phrase puts its point: the one corner inside a block that a seam through it divides."""
    draft = check_block(f"finished {size} {points} point x = {phrase} seam top-left -- x -- top-right")
    width, height = draft.width, draft.height
    inner = {
        side.edge.start
        for piece in draft.pieces
        for side in piece.ring
        if 0 < side.edge.start.x < width and 0 < side.edge.start.y < height
    }
    assert len(inner) == 1
    return inner.pop()


def close(one: tuple[Number, Number], other: tuple[float, float]) -> bool:
    """Whether two places are one."""
    return hypot(float(one[0]) - other[0], float(one[1]) - other[1]) < 1e-9


def test_a_line_and_a_circle_meet_exactly_where_the_sums_come_out() -> None:
    """3, 4, 5: the line 3in left of the middle meets the circle of 5in 4in above and below it."""
    line = "(3in from top-left to top-right)--(3in from bottom-left to bottom-right)"
    above = met(f"meet {line}, circle around center radius 5in nearest top")
    below = met(f"meet circle around center radius 5in, {line} nearest bottom")
    assert (above, below) == ((3, 2), (3, 10))
    assert all(isinstance(each, Fraction) for each in (*above, *below))


def test_two_circles_meet_exactly_where_the_sums_come_out() -> None:
    """Circles of 5in, 6in apart: each half of the lens is a triangle of 3, 4 and 5."""
    place = met(
        "meet circle around a radius 5in, circle around b radius 5in nearest bottom",
        points="grid 12 x 12 point a = (3, 6) point b = (9, 6)",
    )
    assert place == (6, 10)


def test_an_arc_meets_what_its_circle_meets_where_it_is_drawn() -> None:
    """A quarter of 12in round the bottom left and the diagonal: 12 / sqrt 2 both ways. The centre of the
    circle through (0, 0), (8, 4) and (12, 12) is (a, 12 - a); a^2 + (12 - a)^2 = 2 (8 - a)^2 gives a = -2."""
    place = met("meet top-left ~~ bottom-right around bottom-left, bottom-left--top-right")
    assert close(place, (12 / sqrt(2), 12 - 12 / sqrt(2)))
    wide = met("meet left--right, top-left ~~ bottom-right through (8, 4)", points="grid 12 x 12")
    assert close(wide, (-2 + sqrt(2**2 + 14**2 - 8**2), 6))  # its centre is (-2, 14): 8 below y = 6


def test_touching_is_one_meeting_and_needs_no_choice() -> None:
    assert met("meet circle around center radius 4in, (4in from center to left) parallel to top--bottom") == (
        2,
        6,
    )
    assert met("meet circle around left radius 6in, circle around right radius 6in") == (6, 6)
    inner = met("meet circle around center radius 4in, circle around (1in from center to left) radius 3in")
    assert inner == (2, 6)


def test_a_curve_meets_the_outline() -> None:
    """A circle of 2in round the middle of the top leaves the edge 2in from the corner."""
    draft = check_block(
        "finished 8in point p = meet outline, circle around top radius 2in nearest top-left seam p -- bottom"
    )
    assert sorted(piece.area for piece in draft.pieces) == [
        24,
        40,
    ]  # trapezoids: 8 x 6 / 2, 8 x 10 / 2


def test_two_places_are_told_with_the_distance_between_them() -> None:
    text = "finished 12in point p = meet left--right, circle around center radius 5in seam top -- p -- bottom"
    told = said(draft_block(text))
    assert only(draft_block(text), "meet-twice")
    assert "twice, 10in apart: at 1in across, 6in down and at 11in across, 6in down" in told
    assert "nearest" in told


def test_a_point_as_near_to_both_does_not_choose() -> None:
    text = "finished 12in point p = meet left--right, circle around center radius 5in nearest top seam top--p"
    assert "as near to" in only(draft_block(text), "meet-twice").message


@pytest.mark.parametrize(
    ("phrase", "words"),
    [
        ("meet top-left ~~ center around top, top--right", "an arc ends before it"),
        ("meet circle around center radius 1in, circle around top radius 1in", "do not meet anywhere"),
        (
            "meet circle around center radius 1in, circle around center through (1in from center to top)",
            "along",
        ),
        ("meet circle around center through center, left--right", "A circle needs two"),
    ],
)
def test_figures_that_have_no_meeting_are_told_why(phrase: str, words: str) -> None:
    assert words in said(draft_block(f"finished 12in point p = {phrase} seam top -- p -- bottom"))


def test_a_meeting_turns_with_its_copy() -> None:
    """A quatrefoil: arcs round the middles of the sides meet on the diagonals, each copy its own."""
    draft = check_block(
        "finished 8in turn 4 about center {"
        " point tip = meet circle around top radius 4in, circle around right radius 4in nearest top-right"
        " seam center -- tip  piece leaf at (1in from center to top) in dark, light }"
    )
    assert [float(piece.area) for piece in draft.pieces] == [16.0] * 4


spans = st.integers(-80, 80).map(lambda eighths: Fraction(eighths, 8))
radii = st.integers(4, 64).map(lambda eighths: Fraction(eighths, 8))


def fine(center: Point, radius: float, start: float = 0, sweep: float = 360) -> LineString:
    """A circle's arc as shapely's line of short chords."""
    steps = 4000
    turns = [radians(start + sweep * step / steps) for step in range(steps + 1)]
    return LineString([(float(center.x) + radius * cos(t), float(center.y) + radius * sin(t)) for t in turns])


def found_by_shapely(one: LineString, other: LineString) -> list[ShapelyPoint]:
    """The places where two lines of chords cross."""
    shared = one.intersection(other)
    return list(shared.geoms) if isinstance(shared, MultiPoint) else [] if shared.is_empty else [shared]


@settings(max_examples=60, deadline=None)
@given(spans, spans, radii, st.integers(0, 359), st.integers(20, 340), spans, spans, radii)
def test_arcs_and_circles_meet_where_shapely_says(
    x: Fraction, y: Fraction, r: Fraction, start: int, sweep: int, u: Fraction, v: Fraction, s: Fraction
) -> None:
    """Chords of 4000 stray from the arc by less than r (1 - cos(pi / 4000)): below 3e-6in; the crossing of
    two, under a small angle, by more. Grazing pairs, where chords cannot tell, are passed over."""
    center, other = Point(x, y), Point(u, v)
    apart = hypot(float(x - u), float(y - v))
    if min(abs(apart - float(r + s)), abs(apart - abs(float(r - s)))) < 0.05:
        return
    ends = [
        Point(float(x) + float(r) * cos(radians(turn)), float(y) + float(r) * sin(radians(turn)))
        for turn in (start, start + sweep)
    ]
    arc: Stroke = round_of(Edge(*ends, Arc(center, float(r), True)))
    if any(abs(hypot(float(p.x - u), float(p.y - v)) - float(s)) < 0.05 for p in ends):
        return
    ours = places_of_meeting([arc], [Round(other, s * s)])
    assert ours is not None
    theirs = found_by_shapely(fine(center, float(r), start, sweep), fine(other, float(s), start + pi))
    assert len(ours) == len(theirs)
    for place in ours:
        assert min(hypot(float(place.x) - p.x, float(place.y) - p.y) for p in theirs) < 1e-3
