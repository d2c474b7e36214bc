"""Circles and arcs that touch the block's sides, seams or each other: points of no angle are trimmed too."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.cutting.templates.making import make_templates
from piecewright.geometry.stroke import stroke_of
from shapely.geometry import Point, Polygon
from support.check import draft_block
from support.clipper import flat

ALLOWANCE = 0.25
PAST = 0.5  # inches: what no trimmed cut outline runs past its finished one, at allowances of 1/4in
FLAT = 0.002  # inches: what flattening takes off a curve

TOUCHING = {
    "a circle against one side": "finished 4in\nseam circle around (1/4, 1/2) radius 1in",
    "a circle in a corner": "finished 4in\nseam circle around (1/4, 1/4) radius 1in",
    "a circle from side to side": "finished 4in x 6in\nseam circle around center radius 2in",
    "a circle in its square": "finished 4in\nseam circle around center radius 2in",
    "a circle on each side": "finished 8in\nturn 4 about center { seam circle around (1/2, 1/8) radius 1in }",
    "two circles that kiss": "finished 6in x 4in\nseam circle around (1/4, 1/2) radius 1in\n"
    "seam circle around (7/12, 1/2) radius 1in",
    "a circle within a circle": "finished 6in\nseam circle around center radius 2in\n"
    "seam circle around (1/2, 2/3) radius 1in",
    "a string of circles": "finished 6in x 2in\nseam circle around (1/6, 1/2) radius 1in\n"
    "seam circle around center radius 1in\nseam circle around (5/6, 1/2) radius 1in",
    "half a circle up to the side": "finished 6in\ngrid 4 x 4\nseam A3 ~~ E3 through C1",
    "half a circle up to a seam": "finished 6in\ngrid 6 x 6\nseam A3 -- G3\nseam A5 -- G5\n"
    "seam B5 ~~ F5 through D3",
    "rounded corners": "finished 4in\ngrid 4 x 4\nseam A4 -- A2 ~~ B1 around B2 -- D1 ~~ E2 around D2 -- E4",
    "a leaf": "finished 4in\nseam bottom-left ~~ top-right around bottom-right\n"
    "seam bottom-left ~~ top-right around top-left",
}


def region(outer, holes):
    return Polygon(
        flat([stroke_of(edge) for edge in outer]),
        [flat([stroke_of(edge) for edge in hole]) for hole in holes],
    ).buffer(0)


def check_cut(body):
    """Every template keeps the allowance beside each seam and runs nowhere far past it."""
    outcome = draft_block(body)
    assert outcome.value is not None, outcome.diagnostics
    for template in make_templates(outcome.value[0]).value:
        sewn, cut = region(template.sew, template.sew_holes), region(template.cut, template.cut_holes)
        assert cut.difference(sewn.buffer(PAST)).area < FLAT
        for edge in (*template.sew, *(side for hole in template.sew_holes for side in hole)):
            stroke = stroke_of(edge)
            for share in (0.1, 0.3, 0.5, 0.7, 0.9):
                beside = stroke.at(share) + stroke.direction(share) * -1j * (ALLOWANCE - FLAT)
                assert cut.buffer(FLAT).contains(Point(beside.real, beside.imag))


@pytest.mark.parametrize("body", TOUCHING.values(), ids=TOUCHING)
@pytest.mark.parametrize("trim", ["", "trim square 1/4in"])
def test_touching_curves_are_cut_with_their_allowance_and_no_further(body, trim):
    check_cut(f"{body}\n{trim}")


def test_the_ground_of_a_circle_at_its_side_is_cut_to_the_block_and_its_allowance():
    template = make_templates(draft_block(TOUCHING["a circle against one side"]).value[0]).value[0]
    assert region(template.cut, template.cut_holes).bounds == pytest.approx((-0.25, -0.25, 4.25, 4.25))


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(("left", "top", "right", "bottom")), st.integers(4, 28), st.integers(17, 47))
def test_any_circle_that_touches_a_side_is_cut_well(side, radius, along):
    """In a block of 8in: the radius in eighths of an inch, and how far along the side it touches."""
    radius = Fraction(radius, 8)
    along = min(max(Fraction(along, 8), radius), 8 - radius)
    across = radius if side in ("left", "top") else 8 - radius
    x, y = (across, along) if side in ("left", "right") else (along, across)
    check_cut(f"finished 8in\nseam circle around ({x / 8}, {y / 8}) radius {ruled(radius)}")


@settings(max_examples=60, deadline=None)
@given(st.integers(4, 20), st.integers(4, 20))
def test_any_two_circles_that_touch_are_cut_well(one, two):
    """Side by side in the middle of a block 12in wide, with radii in eighths of an inch."""
    one, two = Fraction(one, 8), Fraction(two, 8)
    start = 6 - one - two
    check_cut(
        f"finished 12in x 6in\nseam circle around ({(start + one) / 12}, 1/2) radius {ruled(one)}\n"
        f"seam circle around ({(start + 2 * one + two) / 12}, 1/2) radius {ruled(two)}"
    )


def ruled(length):
    whole, rest = divmod(length, 1)
    return f"{whole} {rest}in" if whole and rest else f"{whole or rest}in"
