"""Templates laid near each other: nowhere over each other, all of them, in less cloth than side by side."""

from __future__ import annotations

from cmath import exp
from math import pi

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from piecewright.cutting.methods.method import to_corner
from piecewright.cutting.plans.interlocked import lay_runs
from piecewright.cutting.plans.poses import posed
from piecewright.cutting.plans.profiles import across, apart, down
from piecewright.cutting.plans.runs import cloth_in, ends, hands
from shapely import STRtree, intersection
from shapely.affinity import translate
from shapely.geometry import Polygon

ROUNDING = 1e-7
TALL = 17.0


def shape(places) -> Polygon:
    return Polygon([(place.real, place.imag) for place in places])


@st.composite
def outlines(draw):
    """Stars round a point: convex, or with inner corners. No needles, that nobody sews."""
    turns = sorted(draw(st.lists(st.integers(0, 23), min_size=3, max_size=8, unique=True)))
    places = [draw(st.integers(8, 30)) / 10 * exp(1j * turn * pi / 12) for turn in turns]
    assume(shape(places).is_valid and shape(places).area > 0.5)
    return to_corner(places)


@given(outlines(), outlines(), st.floats(-2, 2))
@settings(deadline=None, max_examples=80)
def test_outlines_come_near_and_not_over(one, two, aside):
    """Against shapely: a hair further on they do not overlap."""
    for profile, moved in ((across, lambda on: (on, aside)), (down, lambda on: (aside, on))):
        on = apart(profile(one), profile(two), aside)
        if on > float("-inf"):
            there = translate(shape(two), *moved(on + ROUNDING))
            assert intersection(shape(one), there, grid_size=ROUNDING).area < 1e-5


CHOICES = [[hands(0.0), hands(90.0)], [hands(0.0)], [ends(0.0, True)]]


@given(outlines(), st.integers(0, 40), st.integers(0, 12), st.sampled_from(CHOICES))
@settings(deadline=None, max_examples=50)
def test_every_template_lies_on_its_strip_and_over_no_other(outline, plain, back, choices):
    """On plain cloth, on a print with a direction, and with some pieces one end up and some the other."""
    assume(plain + back)
    for runs in lay_runs(outline, (plain, back), choices, 24, TALL):
        laid = [each.pose for run in runs for each in run.laid]
        assert any(
            sum(map(laid.count, one)) == plain and sum(map(laid.count, two)) == back for one, two in choices
        )
        for run in runs:
            assert run.length <= 24 + ROUNDING and run.thick <= TALL + ROUNDING
            shapes = [translate(shape(posed(outline, laid.pose)), laid.left, laid.down) for laid in run.laid]
            for each in shapes:
                left, top, right, bottom = each.bounds
                assert min(left, top) > -ROUNDING
                assert right < run.length + ROUNDING and bottom < run.thick + ROUNDING
            for first, second in zip(*STRtree(shapes).query(shapes), strict=True):
                if first < second:
                    over = intersection(shapes[first], shapes[second], grid_size=ROUNDING)
                    assert over.area < 1e-4


CHEVRON = (0j, 2 + 1j, 4 + 0j, 4 + 1j, 2 + 2j, 1j)


@pytest.mark.parametrize(
    ("outline", "count", "cloth", "singly"),
    [
        ((1.5 + 0j, 3 + 3j, 1.5 + 6j, 3j), 27, 42 * 9, 2 * 42 * 6 - 3 * 6),  # 13 come up between 14
        (CHEVRON, 30, 40 * 4, 3 * 40 * 2),  # three rows, each pointing 1in into the hollows of the last
    ],
)
def test_rows_reach_into_each_other(outline, count, cloth, singly):
    """Exact geometry, worked by hand: square inches of the strips, and of as many strips of single rows."""
    ways = lay_runs(outline, (count, 0), [hands(0.0)], 42)
    assert cloth_in(ways[0]) == pytest.approx(cloth, abs=1e-4)
    rows = [runs for runs in ways if not any(laid.down for run in runs for laid in run.laid)]
    assert cloth_in(rows[0]) == pytest.approx(singly, abs=1e-4)


def test_a_short_row_is_offered_in_parts():
    """Thirteen squares of 4in: a row of ten and one of three; the three also singly, or two and one."""
    square = (0j, 4 + 0j, 4 + 4j, 4j)
    ways = lay_runs(square, (13, 0), [hands(0.0)], 42)
    assert [sorted({len(run.laid) for run in runs}) for runs in ways] == [[3, 10], [1, 10], [1, 2, 10]]
