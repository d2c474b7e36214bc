"""What is printed on a template, and what the writer is told where an allowance has no room."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from piecewright.cutting.templates.making import make_templates
from piecewright.drafting.model import TrimRule
from piecewright.geometry.stroke import doubled_area, stroke_of
from support.random_pieces import draft_of, pieces_of

SCALENE = [(0, 0), (5, 0), (1, 2)]
MIRRORED = [(20, 0), (15, 0), (19, 2)]


def made(pieces, **changes):
    outcome = make_templates(replace(draft_of(pieces), **changes))
    return outcome.value, [each.code for each in outcome.diagnostics]


def test_counts_are_per_fabric_in_order_of_first_use():
    rings = [SCALENE, MIRRORED, [(30, 0), (35, 0), (31, 2)], [(50, 0), (45, 0), (49, 2)]]
    ((template,), said) = made(pieces_of(rings, fabrics=["light", "dark", "dark", "light"]))
    assert [(each.fabric, each.cut, each.reversed) for each in template.counts] == [
        ("light", 1, 1),
        ("dark", 1, 1),
    ]
    assert (template.cut_count, template.reversed_count, template.reversible) == (2, 2, False)
    assert template.pieces == (1, 2, 3, 4) and said == []


def test_a_template_carries_the_block_s_title_version_maker_and_size():
    (template,), _ = made(
        pieces_of([[(0, 0), (6, 0), (6, 9), (0, 9)]]), title="Tidewater Vane", version=3, maker="E.B."
    )
    assert (template.label, template.block_title, template.version) == ("A", "Tidewater Vane", 3)
    assert (template.maker, template.block_width, template.block_height) == ("E.B.", 6, 9)


def test_the_template_lies_where_its_first_piece_lies():
    (template,), _ = made(pieces_of([[(2, 1), (5, 1), (5, 4), (2, 4)]]))
    assert {(edge.start.x, edge.start.y) for edge in template.sew} == {(2, 1), (5, 1), (5, 4), (2, 4)}
    assert {(edge.start.x, edge.start.y) for edge in template.cut} == {
        (1.75, 0.75),
        (5.25, 0.75),
        (5.25, 4.25),
        (1.75, 4.25),
    }


def test_exact_coordinates_stay_exact_on_the_sewing_line():
    third = Fraction(1, 3)
    (template,), _ = made(pieces_of([[(0, 0), (third, 0), (third, 3), (0, 3)]]))
    assert {edge.start.x for edge in template.sew} == {0, third}


def test_a_side_that_the_outline_s_corner_divides_is_one_side_with_no_dot_there():
    (template,), _ = made(pieces_of([[(0, 0), (1, 0), (4, 0), (4, 4), (0, 4)]]))
    assert len(template.sew) == 4 and len(template.dots) == 4 and len(template.cut) == 4


def test_no_dots_where_the_writer_wants_none():
    (template,), _ = made(pieces_of([SCALENE]), trim=TrimRule(dots=Fraction(0)))
    assert template.dots == () and template.dot_width == 0


def test_a_round_window_has_its_own_cut_ring_within():
    frame = [(0, 0), (6, 0), (6, 6), (0, 6)]
    disc = [(4, 3, (3, 3), True), (2, 3, (3, 3), True)]
    (template, round_one), said = made(pieces_of([frame, disc], holes={0: [disc]}))
    (window,) = template.cut_holes
    assert all(half.arc.radius == pytest.approx(0.75) and not half.arc.clockwise for half in window)
    assert all(half.arc.radius == pytest.approx(1.25) and half.arc.clockwise for half in round_one.cut)
    assert len(template.dots) == 4 and round_one.dots == () and said == []


def test_a_window_too_small_to_sew_is_refused():
    frame, hole = [(0, 0), (6, 0), (6, 6), (0, 6)], [(3, 3), (3.4, 3), (3.4, 3.4), (3, 3.4)]
    outcome = make_templates(draft_of(pieces_of([frame, hole], holes={0: [hole]})))
    assert outcome.value is None and [each.code for each in outcome.diagnostics] == ["allowance-no-room"]


def test_an_inner_curve_tighter_than_the_allowance_is_complained_of():
    bitten = [(0, 0), (4, 0), (4, 3), (2.2, 3, (2, 3), False), (1.8, 3), (0, 3)]
    (template,), said = made(pieces_of([bitten]))
    assert said == ["curve-tighter-than-allowance"]
    assert doubled_area([stroke_of(edge) for edge in template.cut]) / 2 == pytest.approx(4.5 * 3.5, abs=1e-6)


def test_a_notch_narrower_than_its_two_allowances_is_complained_of():
    notched = [(0, 0), (6, 0), (6, 4), (3.1, 4), (3, 1), (2.9, 4), (0, 4)]
    _, said = made(pieces_of([notched]))
    assert said == ["allowances-overlap"]


def test_what_is_said_names_the_piece_as_the_writer_does():
    notched = [(0, 0), (6, 0), (6, 4), (3.1, 4), (3, 1), (2.9, 4), (0, 4)]
    pieces = [replace(each, name="saddle") for each in pieces_of([notched])]
    (remark,) = make_templates(draft_of(pieces)).diagnostics
    assert "`saddle`" in remark.message and len(remark.message) < 100 and remark.help


def test_the_allowance_of_each_side_is_its_own():
    pieces = pieces_of(
        [[(0, 0), (3, 0), (3, 3), (0, 3)], [(3, 0), (6, 0), (6, 3), (3, 3)]], outer_allowance=Fraction(1, 2)
    )
    templates, _ = made(pieces)
    assert len(templates) == 1  # the second is the first turned half round
    corners = {(float(edge.start.x), float(edge.start.y)) for edge in templates[0].cut}
    assert corners == {(-0.5, -0.5), (3.25, -0.5), (3.25, 3.5), (-0.5, 3.5)}


def test_a_broken_invariant_is_a_bug_and_is_said_with_numbers():
    (piece,) = pieces_of([SCALENE])
    with pytest.raises(AssertionError, match="encloses"):
        make_templates(draft_of([replace(piece, area=6)]))


def test_compiling_twice_gives_the_same_templates():
    pieces = pieces_of([SCALENE, MIRRORED, [(0, 8), (4, 8), (4, 12), (0, 12)]])
    assert make_templates(draft_of(pieces)) == make_templates(draft_of(pieces))
