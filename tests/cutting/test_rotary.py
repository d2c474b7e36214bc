"""Rotary rules against the trade's tables, and the words for shapes that have none."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from piecewright.cutting.methods.method import cut_corners
from piecewright.cutting.methods.recognise import recognise
from piecewright.cutting.methods.rotary import choose_cut, template_method_of
from piecewright.cutting.needs import Way
from piecewright.cutting.templates.making import make_templates
from support import told
from support.check import clean_drafts
from support.needs import box, fabric, half_square, need, quarter_square

EIGHTH, SIXTEENTH = Fraction(1, 8), Fraction(1, 16)
QUARTER_CM = Fraction(25, 254)  # 0.25cm


def cut(corners, count=1, step=EIGHTH, **facts):
    return choose_cut(need(corners, count, **facts), step)


@pytest.mark.parametrize(
    ("finished", "across"), [(3, 3.5), (Fraction(9, 2), 5), (Fraction(29, 8), Fraction(33, 8))]
)
def test_squares_cut_a_half_inch_more(finished, across):
    """SOURCES 1.1: exact."""
    found = cut(box(finished, finished), 12)
    assert (found.kind, found.width, found.height, found.cuts, found.pieces) == (
        "square",
        across,
        across,
        12,
        12,
    )
    assert found.excess == 0


def test_half_square_and_quarter_square_triangles_of_three_inches():
    """SOURCES 1.2, North Hampshire Quilters: 3in finished: cut 3 7/8 and 4 1/4."""
    half, quarter = cut(half_square(3), 20), cut(quarter_square(3), 20)
    assert (half.kind, half.width, half.cuts, half.yields) == ("half-square-triangle", 3.875, 10, 2)
    assert (quarter.kind, quarter.width, quarter.cuts, quarter.yields) == (
        "quarter-square-triangle",
        4.25,
        5,
        4,
    )
    assert half.excess == pytest.approx(0.021447, abs=1e-6)  # SOURCES 1.1
    assert quarter.excess == pytest.approx(0.042893, abs=1e-6)


SETTING_TABLE = {  # SOURCES 1.3, Marcia Hohn: block, side square, corner square
    4: ("7", "3 3/4"),
    5: ("8 3/8", "4 1/2"),
    6: ("9 3/4", "5 1/8"),
    7: ("11 1/4", "5 7/8"),
    8: ("12 5/8", "6 5/8"),
    9: ("14", "7 1/4"),
    10: ("15 1/2", "8"),
    12: ("18 1/4", "9 3/8"),
    14: ("21 1/8", "10 7/8"),
    15: ("22 1/2", "11 1/2"),
    16: ("23 7/8", "12 1/4"),
}


@pytest.mark.parametrize("block", SETTING_TABLE)
def test_setting_triangles_of_every_row(block):
    """The rule: block x 1.414 + 1 1/4 and block / 1.414 + 7/8, up to 1/8 (SOURCES 1.3, all 11 rows)."""
    side = cut(quarter_square(block * sqrt(2)), part="setting", what="side-triangle")
    corner = cut(half_square(block / sqrt(2)), part="setting", what="corner-triangle")
    wanted = [sum(Fraction(word) for word in text.split()) for text in SETTING_TABLE[block]]
    assert [side.width, corner.width] == wanted
    assert (side.yields, corner.yields) == (4, 2) and side.excess >= 0 and corner.excess >= 0


def test_a_third_of_eight_inches_goes_to_a_template():
    """SOURCES 1.7: a star on a 3 x 3 grid at 8in needs a corner square of one third of 8in."""
    (draft,) = clean_drafts(
        'edition 1\nblock "Star" { finished 8in grid 3 x 3\n'
        + "".join(f" seam A{n} -- D{n}\n seam {c}1 -- {c}4\n" for n, c in ((2, "B"), (3, "C")))
        + "}"
    )
    (template,) = make_templates(draft).value
    method = template_method_of(draft, template)
    assert (method.kind, told.reason(method)) == (
        "template",
        "one third of 8in is about 2 5/8in, between the ruler's marks",
    )


def test_equilateral_triangle_from_a_strip():
    """DESIGN: finished height and 3/4in (common practice, no published source)."""
    side = 2 * 3 / sqrt(3)
    found = cut([(0, 0), (side, 0), (side / 2, 3)], 10)
    assert (found.kind, found.strip, found.angle, found.cuts) == ("equilateral-triangle", 3.75, 60, 10)


def test_star_diamond_from_a_strip():
    """DESIGN: side x sin 45 + 1/2, to the 1/8; a 12in eight-pointed star has diamonds of 12 / 3.4142."""
    side = 12 / (2 + sqrt(2))
    found = cut(
        [(0, 0), (side, 0), (side + side / sqrt(2), side / sqrt(2)), (side / sqrt(2), side / sqrt(2))]
    )
    assert (found.kind, found.strip, found.width, found.angle) == ("diamond", 3, 3, 45)
    assert found.excess == pytest.approx(3 - side / sqrt(2) - 0.5, abs=1e-9)


def test_parallelogram_trapezoid_and_hexagon():
    lean = cut([(0, 0), (3 * sqrt(2), 0), (3 * sqrt(2) + 2, 2), (2, 2)])
    assert (lean.kind, lean.strip, lean.width, lean.angle) == ("parallelogram", 2.5, 3.5, 45)
    trapezoid = cut([(0, 2), (2, 0), (4, 0), (6, 2)])
    assert (trapezoid.kind, trapezoid.strip, trapezoid.width) == ("trapezoid", 2.5, 7.25)
    half = 1.5 * 2 / sqrt(3)
    hexagon = cut([(0, 0), (half, 0), (half * 1.5, 1.5), (half, 3), (0, 3), (-half / 2, 1.5)])
    assert (hexagon.kind, hexagon.strip) == ("hexagon", 3.5)


@pytest.mark.parametrize(
    ("corners", "reason"),
    [
        ([(0, 0), (3, 0), (3, 3, (0, 3), True), (0, 0)][:3], "its sides are curved"),
        ([(0, 0), (2, 1), (0, 5), (-2, 1)], "a kite cannot be cut with ruler and rotary cutter alone"),
        ([(0, 0), (3, 0), (1, 2)], "its shape cannot be cut with ruler and rotary cutter alone"),
        ([(0, 0), (1, 1), (0, 2), (-1, 1)], "its sides lie off the straight grain"),
        ([(0, 0), (5, 0), (8, 4), (3, 4)], "its points are 53.1°, and no ruler bears that line"),
    ],
)
def test_why_a_template(corners, reason):
    found = cut(corners, 3)
    assert (found.kind, told.reason(found), found.cuts, found.yields) == ("template", reason, 3, 1)
    assert found.outline


def test_a_size_between_marks_says_how_far_off_the_ruler_is():
    found = cut(box(sqrt(2), sqrt(2)))
    assert told.reason(found) == "its cut would lie between 1 7/8in and 2in on the ruler"


def test_half_rectangle_triangles_need_one_square_cut_way_for_each_hand():
    ratio = Fraction(3, 4)  # 3, 4 and 5: the exact cut is 3 7/8... worked in whole eighths
    found = cut([(0, 0), (0, 4), (4 * ratio, 0)], 5, back=3)
    exact = 3 + Fraction(1, 4) * (1 + Fraction(5, 4) + Fraction(3, 4))
    assert (found.kind, found.width, found.height) == ("half-rectangle-triangle", exact, 5)
    assert found.cuts == 3 + 2 and "3 of the rectangles" in told.then(found)


def test_unequal_allowances_are_cut_with():
    wide = cut(box(3, 3), allowances=(Fraction(1, 4), Fraction(1, 2), Fraction(1, 4), Fraction(1, 4)))
    assert (wide.kind, float(wide.width) + float(wide.height)) == ("rectangle", 3.75 + 3.5)
    triangle = cut(half_square(3), allowances=(Fraction(1, 2), Fraction(1, 4), Fraction(1, 2)))
    assert triangle.width == Fraction(35, 8) and triangle.excess == pytest.approx(4.375 - 4.353553, abs=1e-6)


@pytest.mark.parametrize("step", [EIGHTH, SIXTEENTH])
def test_the_ruler_step_is_the_makers(step):
    assert cut(half_square(3), step=step).width == Fraction(31, 8)


def test_no_rule_where_the_ruler_is_too_coarse_for_it():
    """The next quarter, 4in, is 0.146in over: triangles cut so would not meet their neighbours."""
    found = cut(half_square(3), step=Fraction(1, 4))
    assert found.kind == "template" and "4in" in told.reason(found, Fraction(1, 4))


def test_centimetres():
    """0.75cm of allowance (common practice): 10cm square 11.5cm; leg 10cm 12.75cm; long side 10cm 13.75cm."""
    ten, seam = Fraction(10 * 50, 127), Fraction(3 * 50, 4 * 127)
    for corners, centimetres in (
        (box(ten, ten), 11.5),
        (half_square(ten), 12.75),
        (quarter_square(ten), 13.75),
    ):
        found = cut(corners, step=QUARTER_CM, allowances=seam)
        assert found.kind != "template"
        assert float(found.width) * 2.54 == pytest.approx(centimetres)
        assert "cm" in told.reason(found, QUARTER_CM)


def test_prints_with_a_direction():
    """Triangles that all lie one way take half of a square on a one-way print, a quarter of one cut twice; a
    stripe looks the same turned half round (common practice, no published source)."""
    one_way, striped = fabric(one_way=True), fabric(striped=True)
    half, quarter = need(half_square(3), 20), need(quarter_square(4), 20)
    assert choose_cut(half, EIGHTH, fabric=one_way).slants == (("rising", 20),)
    assert choose_cut(half, EIGHTH, fabric=striped).slants == (("rising", 10),)
    assert choose_cut(quarter, EIGHTH, fabric=one_way).slants == (("both", 20),)
    assert choose_cut(quarter, EIGHTH, fabric=striped).slants == (("both", 10),)


@pytest.mark.parametrize(("turns", "one_way", "striped"), [
    ((5, 0, 5, 0), (5, 0), (5, 0)), ((5, 0, 2, 0), (5, 0), (4, 0)), ((5, 3, 5, 1), (5, 3), (5, 2)),
    ((0, 4, 0, 4), (0, 4), (0, 4)),
])  # fmt: skip
def test_both_halves_of_a_square_serve_where_the_quilt_has_both(turns, one_way, striped):
    """Half-square triangles turned by quarters: so many squares cut rising, and falling."""
    ways = tuple(Way(90 * at, False, count) for at, count in enumerate(turns) if count)
    wanted = replace(need(half_square(3), sum(turns)), ways=ways)
    for cloth, squares in ((fabric(one_way=True), one_way), (fabric(striped=True), striped)):
        found = dict(choose_cut(wanted, EIGHTH, fabric=cloth).slants)
        assert (found.get("rising", 0), found.get("falling", 0)) == squares


def test_a_square_cut_twice_gives_a_triangle_for_each_of_four_sides():
    ways = tuple(Way(90 * at, False, count) for at, count in enumerate((4, 3, 2, 5)))
    wanted = replace(need(quarter_square(4), 14), ways=ways)
    cut = choose_cut(wanted, EIGHTH, fabric=fabric(one_way=True))
    assert cut.slants == (("both", 5),) and told.then(cut).endswith("6 triangles are left over.")
    assert choose_cut(wanted, EIGHTH, fabric=fabric(striped=True)).slants == (("both", 4),)


@given(
    width=st.integers(4, 80),
    height=st.integers(4, 80),
    seams=st.lists(st.integers(1, 4), min_size=4, max_size=4),
    step=st.sampled_from([EIGHTH, SIXTEENTH, Fraction(1, 4)]),
)
def test_a_rule_is_never_under_the_exact_cut(width, height, seams, step):
    sides = [Fraction(each, 8) for each in seams]
    w, h = Fraction(width, 8), Fraction(height, 8)
    for corners in (box(w, h), half_square(w), quarter_square(w), [(0, 0), (w, 0), (0, h)]):
        wanted = need(corners, 2, allowances=sides[: len(corners)])
        found = choose_cut(wanted, step)
        assert found.excess >= 0
        if found.kind == "template":
            continue
        exact = cut_corners(recognise(wanted.outline, wanted.allowances))
        across = max(p.real for p in exact) - min(p.real for p in exact)
        assert float(found.width) >= across - 1e-6
        assert Fraction(found.width) % step == 0
