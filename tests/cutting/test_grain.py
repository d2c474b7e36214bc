"""Arrows run along the block's edges, and pieces that need another grain say so."""

from __future__ import annotations

from dataclasses import replace
from math import cos, pi, sin, sqrt

import pytest
from hypothesis import given, settings
from piecewright.cutting.templates.grain import grain_of
from piecewright.cutting.templates.making import make_templates
from piecewright.drafting.shapes import carry
from piecewright.geometry.stroke import stroke_of
from support.random_pieces import draft_of, fan_rings, fans, pieces_of, star_rings


def arrows(pieces):
    return [template.grain for template in make_templates(draft_of(pieces)).value]


QUARTERS = fan_rings((3, 3), [0, 6, 12, 18])
HALVES = [[(0, 0), (3, 0), (0, 3)], [(3, 0), (3, 3), (0, 3)]]
HEXAGON = [
    [
        (4, 4),
        (4 + 4 * sin(k * pi / 3), 4 - 4 * cos(k * pi / 3)),
        (4 + 4 * sin((k + 1) * pi / 3), 4 - 4 * cos((k + 1) * pi / 3)),
    ]
    for k in range(6)
]


def test_quarter_square_triangles_have_their_long_side_straight():
    """Legs of half-square, long sides of quarter-square triangles on the block's edge (SOURCES 3.4)."""
    ((arrow,),) = arrows(pieces_of(QUARTERS))
    assert arrow.pieces == (1, 2, 3, 4) and arrow.heading == 90
    ((arrow,),) = arrows(pieces_of(HALVES))
    assert arrow.pieces == (1, 2) and arrow.heading in (0, 90)


def test_six_triangles_of_a_hexagon_need_one_arrow():
    ((arrow,),) = arrows(pieces_of(HEXAGON))
    assert arrow.pieces == (1, 2, 3, 4, 5, 6)


def test_eight_diamonds_of_a_star_need_one_arrow_along_a_side():
    diamonds = arrows(pieces_of(star_rings(3)))[0]
    assert len(diamonds) == 1 and diamonds[0].heading in (0, 45, 90, 135)


def test_a_piece_within_the_block_follows_the_block_s_sides():
    """The square set on point within has no side along the block's: its arrow still is."""
    economy = [
        [(0, 0), (3, 0), (0, 3)],
        [(3, 0), (6, 0), (6, 3)],
        [(6, 3), (6, 6), (3, 6)],
        [(3, 6), (0, 6), (0, 3)],
        [(3, 0), (6, 3), (3, 6), (0, 3)],
    ]
    assert [[arrow.heading % 90 for arrow in each] for each in arrows(pieces_of(economy))] == [[0], [0]]


def test_one_shape_with_two_grains_carries_two_arrows():
    """SOURCES 3.4: the same shape can need a different grain elsewhere. Quarter-square triangles with long
    sides outside, and half-square triangles of the same size with their legs outside."""
    leg = 3 * sqrt(2)
    ((first, second),) = arrows(
        pieces_of(
            [
                *QUARTERS,
                [(9, 0), (9 + leg, 0), (9, leg)],
                [(9 + leg, 0), (9 + leg, leg), (9, leg)],
            ]
        )
    )
    assert (first.pieces, second.pieces) == ((1, 2, 3, 4), (5, 6))
    assert first.heading == 90 and second.heading % 90 == pytest.approx(45)


def test_the_writer_s_grain_comes_first_and_free_has_no_arrow():
    pieces = pieces_of(QUARTERS)
    assert arrows([replace(piece, grain="free") for piece in pieces]) == [()]
    bias = [replace(piece, grain=45.0) for piece in pieces]
    ((arrow,),) = arrows(bias)
    assert arrow.heading == 45
    mixed = [replace(pieces[0], grain="free"), *pieces[1:]]
    ((arrow,),) = arrows(mixed)
    assert arrow.pieces == (2, 3, 4)


def test_a_reversed_piece_s_grain_is_carried_back_through_the_mirror():
    """Two mirrored scalene triangles, both asked to lie along their longest side."""
    rings = [[(0, 0), (5, 0), (1, 2)], [(20, 0), (15, 0), (19, 2)]]
    headings = (90 + 26.565051, 90 - 26.565051)
    pieces = [
        replace(piece, grain=heading) for piece, heading in zip(pieces_of(rings), headings, strict=True)
    ]
    ((arrow,),) = arrows(pieces)
    assert arrow.pieces == (1, 2)


@settings(max_examples=40, deadline=None)
@given(fans())
def test_no_side_on_the_block_s_edge_is_bias(rings):
    """Cut by its arrow, straight or cross grain, each piece has an outside side on the grain."""
    pieces = pieces_of(rings)
    draft = draft_of(pieces)
    for shape, template in zip(draft.shapes, make_templates(draft).value, strict=True):
        assert sorted(number for arrow in template.grain for number in arrow.pieces) == list(template.pieces)
        ways = {member.piece: carry(shape, pieces, member) for member in shape.members}
        for arrow in template.grain:
            for number in arrow.pieces:
                if shape.turns > 1:
                    continue
                angle = arrow.heading * pi / 180
                along = ways[number].direction(complex(sin(angle), -cos(angle)))
                outside = [stroke_of(s.edge).direction(0) for s in pieces[number - 1].ring if s.outside]
                turns = [
                    abs((along.conjugate() * side).real * (along.conjugate() * side).imag) for side in outside
                ]
                assert min(turns) < 1e-3
                assert grain_of(pieces[number - 1]).firm
