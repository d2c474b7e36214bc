"""Both pieces of a seam carry marks at the same places along it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from piecewright.cutting.templates.laying import lay
from piecewright.cutting.templates.making import make_templates
from piecewright.cutting.templates.marks import side_marks
from piecewright.cutting.templates.outlines import Outlines
from piecewright.cutting.templates.trimming import Trims
from piecewright.drafting.shapes import carry
from piecewright.drafting.whole_sides import whole_sides
from piecewright.geometry.stroke import place_of
from support.random_pieces import draft_of, fan_rings, fans, pieces_of, star_rings

CLOSE = 1 / 32  # inches: marks nearer than this are drawn once


def marks_on(draft):
    """Per piece, the places in the block of its template's marks and dots."""
    trims = Trims(Outlines(draft.pieces), draft.trim)
    found = {}
    for shape, template in zip(draft.shapes, make_templates(draft).value, strict=True):
        laid = lay(draft, shape, trims, range(len(draft.pieces)))
        for number, way in zip(template.pieces, laid.ways, strict=True):
            marks = [way(place_of(mark.at)) for mark in template.marks]
            dots = [way(place_of(dot)) for dot in template.dots]
            found[number] = (marks, dots)
    return found


def all_partners(draft):
    places = marks_on(draft)
    for piece in draft.pieces:
        for ring in (piece.ring, *piece.holes):
            for side in whole_sides(ring):
                for mark in side_marks(side):
                    assert any(abs(mark.at - place) <= CLOSE for place in places[piece.number][0])
                    partners = {part.neighbour for part in side.parts} - {None}
                    assert any(
                        abs(mark.at - place) <= CLOSE
                        for number in partners
                        for row in places[number]
                        for place in row
                    )


@settings(max_examples=40, deadline=None)
@given(fans())
def test_every_mark_has_a_partner_on_the_neighbour_s_template(rings):
    all_partners(draft_of(pieces_of(rings)))


BRICKS = [
    [(0, 0), (9, 0), (9, 2), (0, 2)],
    [(0, 2), (3, 2), (3, 5), (0, 5)],
    [(3, 2), (9, 2), (9, 5), (3, 5)],
]
ROUND = [[(0, 0), (3, 0, (0, 0), True), (0, 3)], [(3, 0), (5, 0), (5, 5), (0, 5), (0, 3, (0, 0), False)]]


@pytest.mark.parametrize("rings", [BRICKS, ROUND, star_rings(6), fan_rings((3, 3), [0, 6, 12, 18])])
def test_partners_in_blocks_of_every_kind(rings):
    all_partners(draft_of(pieces_of(rings)))


def marks_of(rings, number):
    return sorted(
        (round(float(m.at.x), 6), round(float(m.at.y), 6))
        for t in make_templates(draft_of(pieces_of(rings))).value
        if number in t.pieces
        for m in t.marks
    )


def test_a_neighbour_s_corner_in_the_middle_of_a_side_is_marked():
    """And the 6in seam beyond it at its own middle, the 3in one not: both 3in from an end, so that the
    rectangle may be turned over."""
    assert marks_of(BRICKS, 1) == [(3, 2), (6, 2)]
    assert marks_of(BRICKS, 3) == [(6, 2)]


def test_a_curved_seam_is_marked_at_its_quarters_on_both_pieces():
    wanted = [(1.148050, 2.771639), (2.121320, 2.121320), (2.771639, 1.148050)]
    assert marks_of(ROUND, 1) == [pytest.approx(place) for place in wanted]
    assert marks_of(ROUND, 2) == [pytest.approx(place) for place in wanted]


def test_a_side_on_the_outside_needs_no_mark():
    assert marks_of([[(0, 0), (9, 0), (9, 9), (0, 9)]], 1) == []


def test_a_mark_points_out_of_the_piece_across_its_allowance():
    (template, *_) = make_templates(draft_of(pieces_of(ROUND))).value
    for mark in template.marks:
        at, toward = place_of(mark.at), place_of(mark.toward)
        assert abs(toward - at / abs(at)) < 1e-9 and mark.allowance == 0.25


def test_dots_stand_at_the_sewing_corners_of_ring_and_window():
    frame = pieces_of(
        [[(0, 0), (6, 0), (6, 6), (0, 6)], [(2, 2), (4, 2), (4, 4), (2, 4)]],
        holes={0: [[(2, 2), (4, 2), (4, 4), (2, 4)]]},
    )
    template = make_templates(draft_of(frame)).value[0]
    assert len(template.dots) == 8
    assert {(float(x), float(y)) for x, y in template.dots} >= {(0, 0), (6, 6), (2, 2), (4, 4)}


def test_a_mark_carried_from_another_piece_lies_on_the_sewing_line():
    from shapely.geometry import LinearRing, Point
    from support.clipper import flat

    draft = draft_of(pieces_of(star_rings(6)))
    for template in make_templates(draft).value:
        from piecewright.geometry.stroke import stroke_of

        line = LinearRing(flat([stroke_of(edge) for edge in template.sew]))
        assert template.marks
        for mark in template.marks:
            assert line.distance(Point(float(mark.at.x), float(mark.at.y))) < 1e-5


def test_members_are_carried_as_shapes_say():
    """The marks of a shape with one way to lie are where `carry` puts them."""
    draft = draft_of(pieces_of(BRICKS))
    for shape in draft.shapes:
        for member in shape.members:
            way = carry(shape, draft.pieces, member)
            first = whole_sides(draft.pieces[shape.members[0].piece - 1].ring)[0].stroke.start
            corners = [s.stroke.start for s in whole_sides(draft.pieces[member.piece - 1].ring)]
            assert min(abs(way(first) - corner) for corner in corners) < 1e-6
