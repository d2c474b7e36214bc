"""The trade's cutting numbers, measured on compiled templates: mitred outlines, points untrimmed.

DESIGN's trade table is common practice with no published source, unless a test names one.
"""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest
from piecewright.cutting.model import Template
from piecewright.cutting.templates.making import make_templates
from piecewright.geometry.stroke import stroke_of
from piecewright.measure.marks import mark_up
from support.check import clean_drafts

EXACT = 1e-6  # inches
OTHER_WAY = "seam through bottom-left--top-right"
SQUARE, HALF, QUARTER = 0.5, (2 + sqrt(2)) / 4, (1 + sqrt(2)) / 2


def templates(body: str, trim: str = "none") -> tuple[Template, ...]:
    (draft,) = clean_drafts(f'edition 1\nblock "Trial" {{\n  trim {trim}\n{body}\n}}\n')
    made = make_templates(draft)
    assert not made.diagnostics
    return made.value


def sides(template: Template) -> list[float]:
    """The cut sides' lengths, longest first, in inches."""
    return sorted((stroke_of(edge).length for edge in template.cut), reverse=True)


def height(template: Template) -> float:
    """The width of the strip that the template fits, laid along its first cut side."""
    along = stroke_of(template.cut[0]).direction(0)
    across = [
        ((stroke_of(e).start - stroke_of(template.cut[0]).start) * along.conjugate()).imag
        for e in template.cut
    ]
    return max(across) - min(across)


def test_a_six_inch_block_halved_is_three_inches():
    (square,) = templates("finished 6in grid 2 x 2\n seam top -- bottom\n seam left -- right")
    assert [stroke_of(edge).length for edge in square.sew] == [3, 3, 3, 3]
    assert sides(square) == pytest.approx([3 + SQUARE] * 4, abs=EXACT)
    assert square.cut_count == 4 and (square.block_width, square.block_height) == (6, 6)


@pytest.mark.parametrize(("length", "width"), [("4in", "2in"), ("7 1/8in", "3/4in"), ("10cm", "25mm")])
def test_a_rectangle_cuts_a_half_inch_more_each_way(length, width):
    (template,) = templates(f"finished {length} x {width}")
    inches = {"4in": 4, "2in": 2, "7 1/8in": 7.125, "3/4in": 0.75, "10cm": 10 / 2.54, "25mm": 2.5 / 2.54}
    long, short = inches[length] + SQUARE, inches[width] + SQUARE
    assert sides(template) == pytest.approx([long, long, short, short], abs=EXACT)


@pytest.mark.parametrize("leg", [2, 3, 4.5])
def test_two_triangle_square_cuts_its_leg_and_seven_eighths_less_a_little(leg):
    (triangle,) = templates(f"finished {leg}in\n seam top-left -- bottom-right")
    assert sides(triangle)[1:] == pytest.approx([leg + HALF] * 2, abs=EXACT)
    assert 0 < 7 / 8 - HALF < 0.0215  # SOURCES 1.1: the rule is too big by 0.021447


@pytest.mark.parametrize("long", [3, 4, 6])
def test_quarter_square_triangle_cuts_its_long_side_and_an_inch_and_a_quarter_less_a_little(long):
    (triangle,) = templates(f"finished {long}in\n seam through top-left--bottom-right\n {OTHER_WAY}")
    assert sides(triangle)[0] == pytest.approx(long + QUARTER, abs=EXACT)
    assert 0 < 1.25 - QUARTER < 0.0430  # SOURCES 1.1: 0.042893


def test_equilateral_triangle_from_a_strip():
    """Strip: finished height and 3/4in; side and 0.866025in (SOURCES 1.1)."""
    (triangle,) = templates("outline regular 3 side 4in")
    assert height(triangle) == pytest.approx(4 * sqrt(3) / 2 + 0.75, abs=EXACT)
    assert sides(triangle) == pytest.approx([4 + 0.8660254] * 3, abs=EXACT)


STAR = """
  finished 12in
  point tip = meet center at 22.5deg, outline
  point crook = meet tip parallel to center--top-right, center--top
  turn 8 about center {
    seam center -- crook -- tip -- next crook
    piece diamond at between center, tip in dark, medium
  }
"""


def test_eight_pointed_star():
    """Strip: side x sin 45 and 1/2in; cut side and 0.707107in (SOURCES 1.1); block: side x 3.4142."""
    diamond = next(t for t in templates(STAR) if t.cut_count == 8)
    side = stroke_of(diamond.sew[0]).length
    assert side * (2 + sqrt(2)) == pytest.approx(12, abs=EXACT)
    assert height(diamond) == pytest.approx(side / sqrt(2) + 0.5, abs=EXACT)
    assert sides(diamond) == pytest.approx([side + 0.70710678] * 4, abs=EXACT)


def test_regular_hexagon():
    (hexagon,) = templates("outline regular 6 side 3in")
    assert sides(hexagon) == pytest.approx([3 + 0.28867513] * 6, abs=EXACT)


ON_POINT = [
    (4, "7", "3 3/4"),
    (5, "8 3/8", "4 1/2"),
    (6, "9 3/4", "5 1/8"),
    (7, "11 1/4", "5 7/8"),
    (8, "12 5/8", "6 5/8"),
    (9, "14", "7 1/4"),
    (10, "15 1/2", "8"),
    (12, "18 1/4", "9 3/8"),
    (14, "21 1/8", "10 7/8"),
    (15, "22 1/2", "11 1/2"),
    (16, "23 7/8", "12 1/4"),
]


def inches(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


@pytest.mark.parametrize(("block", "side_square", "corner_square"), ON_POINT)
def test_setting_triangles_of_blocks_on_point(block, side_square, corner_square):
    """SOURCES 1.3 (Marcia Hohn, 2002), every row: 1.414 x block + 1 1/4 and block / 1.414 + 7/8, up to 1/8.
    Never under what the template needs, and over by less than its own slack and one step of the ruler."""
    (side,) = templates(f"outline regular 4 side {block}in\n seam corner4 -- corner2")
    (corner,) = templates(
        f"outline regular 4 side {block}in\n seam through corner4--corner2\n seam through corner1--corner3"
    )
    need_side, need_corner = sides(side)[0], sides(corner)[1]
    assert need_side == pytest.approx(block * sqrt(2) + QUARTER, abs=EXACT)
    assert need_corner == pytest.approx(block / sqrt(2) + HALF, abs=EXACT)
    for need, rule, published in (
        (need_side, 1.414 * block + 1.25, side_square),
        (need_corner, block / 1.414 + 0.875, corner_square),
    ):
        assert mark_up(rule) == inches(published)
        assert need <= inches(published) < need + 0.043 + 0.125


TWENTY_ONE_PIECES = """
  finished 9in
  grid 3 x 3
  point gate = 1 1/4in from B1 to C1
  turn 4 about center {
    seam B1 -- B2 -- C2 -- C1
    seam B2 -- gate -- C2
    seam A1 -- B2
  }
"""


@pytest.mark.parametrize("trim", ["none", "matched", "square 1/4in"])
def test_four_quarter_turns_of_five_pieces_and_a_middle_are_five_templates(trim):
    """Common practice: each shape of a quarter is cut 4, but a corner square's halves are one triangle (8).
    The three slanted triangles have no mirror line and serve one way up, halves and middle either way."""
    made = templates(TWENTY_ONE_PIECES, trim)
    assert sum(len(template.pieces) for template in made) == 21
    counts = sorted((template.cut_count, template.reversed_count, template.reversible) for template in made)
    assert counts == [(1, 0, True), (4, 0, False), (4, 0, False), (4, 0, False), (8, 0, True)]


def test_the_sky_of_a_flying_goose_is_one_triangle_either_side_up():
    made = templates("finished 4in x 2in\n seam bottom-left -- top -- bottom-right")
    sky = next(template for template in made if len(template.pieces) == 2)
    assert sky.reversible and (sky.cut_count, sky.reversed_count) == (2, 0)


def test_a_half_rectangle_and_its_mirror_image():
    """A long triangle and its reverse: 'cut 1 and 1 reversed', this side up."""
    (long,) = [
        t
        for t in templates("finished 4in x 3in\n seam bottom-left -- top -- bottom-right")
        if len(t.pieces) == 2
    ]
    assert (long.cut_count, long.reversed_count, long.reversible) == (1, 1, False)


def test_trimmed_triangles_are_as_long_as_the_squares_beside_them():
    """A trimmed half-square triangle's leg measures what the square's side measures: finished and 1/2in."""
    made = templates(
        "finished 6in\n grid 2 x 2\n seam top -- bottom\n seam left -- right\n seam A1 -- B2\n seam B2 -- C3",
        "matched",
    )
    square, triangle = sorted(made, key=lambda template: len(template.cut))
    assert len(square.cut) == 4 and len(triangle.cut) == 5
    assert sides(square)[0] == pytest.approx(3.5, abs=EXACT)
    assert sides(triangle)[1:3] == pytest.approx([3.5, 3.5], abs=EXACT)
