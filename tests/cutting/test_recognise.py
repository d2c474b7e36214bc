"""The trade's words for shapes, from geometry alone."""

from __future__ import annotations

from cmath import exp
from fractions import Fraction
from math import pi, radians, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from piecewright.cutting.methods.recognise import recognise
from support.needs import box, half_square, quarter_square
from support.random_pieces import ring_edges

QUARTER = Fraction(1, 4)


def turned(corners, degrees):
    places = [complex(float(x), float(y)) * exp(1j * radians(degrees)) for x, y in corners]
    return [(place.real, place.imag) for place in places]


def figure(corners, allowances=None):
    edges = ring_edges(corners)
    return recognise(edges, allowances or (QUARTER,) * len(edges))


def regular(sides, side):
    reach = side / 2 / abs((exp(1j * pi / sides)).imag)
    places = [reach * exp(1j * (pi / sides * (2 * at + 1) + pi / 2)) for at in range(sides)]
    return [(place.real, place.imag) for place in places]


def diamond(side, angle):
    slant = side * exp(1j * radians(angle))
    return [(0, 0), (side, 0), (side + slant.real, slant.imag), (slant.real, slant.imag)]


SHAPES = {
    "square": box(3, 3),
    "rectangle": box(2, 4),
    "half-square-triangle": half_square(3),
    "quarter-square-triangle": quarter_square(4),
    "half-rectangle-triangle": [(0, 0), (2, 0), (0, 4)],
    "equilateral-triangle": [(0, 0), (3, 0), (1.5, 1.5 * sqrt(3))],
    "diamond": diamond(3, 45),
    "parallelogram": [(0, 0), (4, 0), (6, 2), (2, 2)],
    "trapezoid": [(0, 2), (2, 0), (4, 0), (6, 2)],
    "hexagon": regular(6, 2),
    "kite": [(0, 0), (2, 1), (0, 5), (-2, 1)],
}


@pytest.mark.parametrize("kind", SHAPES)
def test_each_shape_has_its_word(kind):
    assert figure(SHAPES[kind]).kind == kind


@pytest.mark.parametrize("kind", [each for each in SHAPES if "square-tri" not in each])
@given(degrees=st.floats(1, 89))
def test_turning_a_shape_keeps_its_word_but_takes_it_off_the_grain(kind, degrees):
    found = figure(turned(SHAPES[kind], degrees))
    assert found.kind == kind
    if kind in ("square", "rectangle"):
        assert not found.on_grain


def test_the_grain_tells_half_square_from_quarter_square():
    """Common practice (and Beyer's rule, SOURCES 3.4): legs, or the long side, lie on the grain."""
    assert figure(turned(half_square(3), 45)).kind == "quarter-square-triangle"
    assert figure(turned(quarter_square(3), 45)).kind == "half-square-triangle"
    assert not figure(turned(half_square(3), 30)).on_grain


def test_sixty_degree_diamond_and_its_angle():
    assert figure(diamond(3, 60)).kind == "diamond" and figure(diamond(3, 60)).angle == pytest.approx(60)
    assert figure(diamond(3, 45)).angle == pytest.approx(45)


def test_a_corner_in_the_middle_of_a_straight_side_is_none():
    assert figure([(0, 0), (1, 0), (3, 0), (3, 3), (0, 3)]).kind == "square"


def test_a_straight_side_with_two_allowances_is_no_square():
    widths = (QUARTER, Fraction(1, 2), QUARTER, QUARTER, QUARTER)
    assert figure([(0, 0), (1, 0), (3, 0), (3, 3), (0, 3)], widths).kind == "seam"


@pytest.mark.parametrize(
    "corners",
    [
        [(0, 0), (3, 0), (1, 2)],  # no right angle
        [(0, 0), (3, 0), (4, 2), (0, 3)],
        [(0, 0), (2, 1), (4, 0), (2, 4)],  # an inner corner
    ],
)
def test_shapes_without_a_word(corners):
    assert figure(corners).kind in ("triangle", "four-sided-shape", "many-sided-shape")
