"""Curved seams: where they run, what they bound, what they join and touch. Areas by plane geometry."""

from __future__ import annotations

from math import acos, pi, prod, sqrt

import pytest
from piecewright.drafting.model import Draft, Piece
from piecewright.measure.tolerance import near
from support.check import (
    at,
    check_block,
    check_noted,
    clean_drafts,
    codes,
    counts,
    draft_block,
    draft_text,
    named,
    only,
    said,
)


def arcs_of(piece: Piece) -> list[tuple[float, bool]]:
    """Radius and bulge of a piece's curved sides: True where the cloth lies on the centre's side."""
    rings = (piece.ring, *piece.holes)
    return [
        (side.edge.arc.radius, side.edge.arc.clockwise) for ring in rings for side in ring if side.edge.arc
    ]


def lens(one: float, other: float, apart: float) -> float:
    """The area common to two circles (from memory: two circular segments)."""
    if one == other:
        return 2 * one**2 * acos(apart / (2 * one)) - apart / 2 * sqrt(4 * one**2 - apart**2)
    first = one**2 * acos((apart**2 + one**2 - other**2) / (2 * apart * one))
    second = other**2 * acos((apart**2 + other**2 - one**2) / (2 * apart * other))
    sums = (-apart + one + other, apart + one - other, apart - one + other, apart + one + other)
    return first + second - sqrt(prod(sums)) / 2


def test_quarter_circle_by_around_and_by_through_are_one_seam() -> None:
    around = check_block("finished 4in grid 2 x 2 seam B1 ~~ A2 around A1")
    through = check_block("finished 4in grid 2 x 2 seam B1 ~~ A2 through (2in from A1 at 135deg)")
    both = check_block(
        "finished 4in grid 2 x 2 seam B1 ~~ A2 around A1 seam A2 ~~ B1 through (2in from A1 at 135deg)"
    )
    for draft in (around, through, both):
        assert [round(float(piece.area), 9) for piece in draft.pieces] == [round(pi, 9), round(16 - pi, 9)]


def test_a_curved_piece_says_which_way_its_cloth_bulges() -> None:
    draft = check_block(
        "finished 4in grid 2 x 2 seam B1 ~~ A2 around A1 piece melon at A1 in dark piece rest at C3 in pale"
    )
    assert arcs_of(named(draft, "melon")[0]) == [(2.0, True)]
    assert arcs_of(named(draft, "rest")[0]) == [(2.0, False)]


def test_around_takes_the_shorter_way_whichever_end_comes_first() -> None:
    one = check_block("finished 4in grid 2 x 2 seam B1 ~~ A2 around A1")
    other = check_block("finished 4in grid 2 x 2 seam A2 ~~ B1 around A1")
    assert [piece.area for piece in one.pieces] == pytest.approx([piece.area for piece in other.pieces])


def test_tangent_joins_make_one_smooth_seam() -> None:
    """Two quarter circles that meet heading the same way: an S from corner to corner that halves the
    block."""
    draft = check_block("""finished 4in grid 2 x 2
      seam A1 ~~ B2 around A2 ~~ C3 around C2
      piece upper at C1 in dark
      piece lower at A3 in pale""")
    assert [float(piece.area) for piece in draft.pieces] == pytest.approx([8, 8])
    assert counts(draft) == [(2, 0)]


def test_an_arc_and_its_own_tangent_part_only_where_they_bend() -> None:
    """A quarter circle leaves the left side's foot along the bottom edge's parallel: the seam that it is
    tangent
    to leaves in the same direction, and between them lies a horn with a sharp point."""
    draft = check_block("""finished 4in grid 4 x 4
      seam A3 -- E3
      seam A3 ~~ C1 around A1""")
    assert near(at(draft, 1, 1).area, pi)
    assert near(at(draft, 3, 1).area, 8 - pi)
    assert near(at(draft, 2, 3).area, 8)


def test_a_circle_in_a_square_touches_its_four_sides() -> None:
    """Radius half the side: the circle and four corners between it and the sides, all alike."""
    draft = check_block("finished 4in seam circle around center radius 2in")
    assert len(draft.pieces) == 5
    assert near(at(draft, 2, 2).area, 4 * pi)
    assert near(at(draft, 0.2, 0.2).area, (16 - 4 * pi) / 4)
    assert sorted(counts(draft)) == [(1, 0), (4, 0)]


def test_a_circle_through_a_point() -> None:
    draft = check_noted(
        "piece-hole", "finished 6in seam circle around center through (2in from center at 33deg)"
    )
    assert near(at(draft, 3, 3).area, 4 * pi)


def test_two_circles_crossing() -> None:
    """Radius 2in, centres 2in apart: two moons and a lens, floating in the block."""
    outcome = draft_block("""finished 8in grid 4 x 4
      point left-eye = (1.5, 2)
      point right-eye = (2.5, 2)
      point above = 1in from center to top
      seam circle around left-eye radius 2in
      seam circle around right-eye radius 2in""")
    assert outcome.value is not None, said(outcome)
    draft = outcome.value[0]
    common = lens(2, 2, 2)
    assert near(at(draft, 4, 4).area, common)
    assert near(at(draft, 1.5, 4).area, 4 * pi - common)
    assert near(at(draft, 0.2, 0.2).area, 64 - 8 * pi + common)
    assert set(codes(outcome)) == {"crossing-unnamed", "piece-hole", "point-unused"}


def test_circles_of_two_sizes_crossing() -> None:
    outcome = draft_block("""finished 8in grid 8 x 8
      seam circle around D5 radius 2in
      seam circle around F5 radius 1 1/2in""")
    assert outcome.value is not None, said(outcome)
    assert near(at(outcome.value[0], 4, 4).area, lens(2, 1.5, 2))


QUARTER = """edition 1
block "Quarter" { finished 2in  faces top-left
  seam top-right ~~ bottom-left around top-left
  piece fan at top-left in dark
  piece ground at bottom-right in pale }
"""


def test_quarter_circle_units_make_a_circle() -> None:
    """Four fans about the middle; the unit's 2in radius becomes 3in as it is drafted to 3in cells."""
    draft = clean_drafts(
        """edition 1
      block "Circle" { grid 2 x 2 of 3in
        use "Quarter" as fan
        row fan facing bottom-right, fan facing bottom-left
        row fan facing top-right, fan facing top-left }""",
        quarter=QUARTER,
    )[0]
    fans = named(draft, "fan")
    assert len(fans) == 4 and all(near(fan.area, 9 * pi / 4) for fan in fans)
    assert {round(radius, 9) for fan in fans for radius, _ in arcs_of(fan)} == {3.0}
    assert sorted(counts(draft)) == [(4, 0), (4, 0)]


def test_curved_units_mirror() -> None:
    draft = clean_drafts(
        """edition 1
      block "Wave" { grid 2 x 1 of 3in
        use "Quarter" as fan
        row fan, fan mirrored }""",
        quarter=QUARTER,
    )[0]
    left, right = named(draft, "fan")
    assert arcs_of(left) == arcs_of(right) == [(3.0, True)]


def test_orange_peel() -> None:
    """Four arcs, each about a corner, from corner to corner: petals that meet in the middle of each pair."""
    outcome = draft_block("""finished 4in
      seam top-right ~~ bottom-left around top-left
      seam top-right ~~ bottom-left around bottom-right
      seam top-left ~~ bottom-right around top-right
      seam top-left ~~ bottom-right around bottom-left""")
    assert outcome.value is not None, said(outcome)
    draft = outcome.value[0]
    shares = [1 - sqrt(3) + pi / 3, 1 - sqrt(3) / 4 - pi / 6, -1 + sqrt(3) / 2 + pi / 12]  # from memory
    assert len(draft.pieces) == 9
    assert near(at(draft, 2, 2).area, 16 * shares[0])
    assert near(at(draft, 2, 0.1).area, 16 * shares[1])
    assert near(at(draft, 0.8, 0.8).area, 16 * shares[2])


def test_four_petals_on_one_circle_each() -> None:
    """The traditional orange peel: petals along the sides of a square set in the circle round it. Each petal
    lies
    between two arcs of radius 2in through neighbouring middles of sides."""
    draft = check_block("""finished 4in
      turn 4 about center {
        seam top ~~ right around top-right
        seam top ~~ right around center
      }""")
    petal = lens(2, 2, 2 * sqrt(2))
    assert near(at(draft, 3, 1).area, petal)
    assert near(at(draft, 2, 2).area, 16 - 4 * pi)
    assert near(at(draft, 3.9, 0.1).area, 4 - pi)
    assert len(draft.pieces) == 9 and sorted(counts(draft)) == [(1, 0), (4, 0), (4, 0)]


def test_arcs_on_the_outline() -> None:
    """A fan: a quarter circle's outline, cut in three by lines out of its centre."""
    draft = check_block("""
      point pivot = 3in from start at 180deg
      outline start ~~ (3in from pivot at 90deg) around pivot -- pivot -- start
      turn 2 of 30deg about bottom-left { seam bottom-left -- (1in from bottom-left at 30deg) -- outline }""")
    assert [float(piece.area) for piece in draft.pieces] == pytest.approx([9 * pi / 12] * 3)
    assert counts(draft) == [(3, 0)]
    assert (float(draft.width), float(draft.height)) == pytest.approx((3, 3))


def test_a_round_block() -> None:
    """A circle's outline of two halves, quartered."""
    draft = check_block(
        "finished 6in outline left ~~ right through top ~~ left through bottom "
        "turn 4 about center { seam center -- top piece wedge at (1in from center at 45deg) "
        "in dark }"
    )
    assert [float(piece.area) for piece in draft.pieces] == pytest.approx([9 * pi / 4] * 4)
    assert counts(draft) == [(4, 0)]


def test_a_round_unit_stays_inside_its_cell() -> None:
    """What lies between the round unit and its cell is cloth like any other."""
    text = """edition 1
      block "Disc" { finished 6in outline left ~~ right through top ~~ left through bottom
        piece disc at center in dark }
      block "Two Discs" { grid 2 x 1 of 2in use "Disc" as disc row disc, disc }"""
    outcome = draft_text(text)
    assert outcome.value is not None, said(outcome)
    discs = named(outcome.value[1], "disc")
    assert [float(disc.area) for disc in discs] == pytest.approx([pi, pi])


def test_concentric_rings() -> None:
    outcome = draft_block("""finished 8in
      seam circle around center radius 3in
      seam circle around center radius 2in
      seam circle around center radius 1in""")
    assert outcome.value is not None and set(codes(outcome)) == {"piece-hole"} and len(codes(outcome)) == 3
    areas = sorted(float(piece.area) for piece in outcome.value[0].pieces)
    assert areas == pytest.approx(sorted([pi, 3 * pi, 5 * pi, 64 - 9 * pi]))


def test_circles_that_touch_inside_each_other() -> None:
    """A 1in circle inside a 2in one, touching it at its right: a moon whose horns meet, and no hole in it."""
    outcome = draft_block(
        "finished 8in grid 8 x 8 seam circle around E5 radius 2in seam circle around F5 radius 1in"
    )
    assert outcome.value is not None, said(outcome)
    draft = outcome.value[0]
    assert near(at(draft, 5, 4).area, pi)
    moon = at(draft, 3, 4)
    assert near(moon.area, 3 * pi) and not moon.holes
    assert sum(side.edge.length for side in moon.ring) == pytest.approx(6 * pi)


def test_circles_that_touch_side_by_side() -> None:
    outcome = draft_block(
        "finished 8in grid 8 x 8 seam circle around D5 radius 1in seam circle around F5 radius 1in"
    )
    assert outcome.value is not None, said(outcome)
    assert near(at(outcome.value[0], 3, 4).area, pi) and near(at(outcome.value[0], 5, 4).area, pi)


def test_an_end_built_on_an_arc_joins_it_at_any_angle() -> None:
    """Spokes at every 7deg from the corner to a quarter circle: each ends on it, so every wedge is one
    piece."""
    draft = check_block("""finished 6in grid 2 x 2
      seam C1 ~~ A3 around A1
      turn 11 of 7deg about A1 { seam (1in from A1 at 97deg) -- (6in from A1 at 97deg) }
      seam (1in from A1 at 90deg) ~~ (1in from A1 at 180deg) around A1""")
    wedge = (36 - 1) * pi / 360 * 7
    assert sum(near(piece.area, wedge) for piece in draft.pieces) == 11


def test_an_end_near_an_arc_but_not_on_it() -> None:
    body = "finished 6in grid 2 x 2 seam B1 ~~ A2 around A1 seam ({length} from A1 at 135deg) -- C3"
    assert codes(draft_block(body.format(length="3 1/100in"))) == ["seam-nearly-touches"]
    assert codes(draft_block(body.format(length="3 1/10in"))) == ["seam-hangs"]
    only(draft_block(body.format(length="2 99/100in")), "seam-nearly-touches")


def test_a_line_tangent_to_a_circle_touches_it_at_one_place() -> None:
    """A line along the circle's top joins it there: the circle floats no more."""
    outcome = draft_block("finished 8in grid 8 x 8 seam circle around E5 radius 2in seam through A3--I3")
    assert outcome.value is not None and "piece-hole" not in codes(outcome), said(outcome)
    draft = outcome.value[0]
    assert [round(float(piece.area), 6) for piece in draft.pieces] == [
        16,
        round(48 - 4 * pi, 6),
        round(4 * pi, 6),
    ]


def test_arcs_of_one_circle_that_overlap_are_one_line() -> None:
    """Two arcs of one circle that share a stretch: drawn twice, sewn once."""
    draft = check_block("""finished 4in grid 2 x 2
      seam B1 ~~ (2in from A1 at 150deg) around A1
      seam (2in from A1 at 120deg) ~~ A2 around A1""")
    assert [round(float(piece.area), 9) for piece in draft.pieces] == [round(pi, 9), round(16 - pi, 9)]


def both_sides(draft: Draft) -> None:
    lengths: dict[tuple[int, int], float] = {}
    for piece in draft.pieces:
        for side in piece.ring:
            for part in side.parts:
                if part.neighbour:
                    key = (piece.number, part.neighbour)
                    lengths[key] = lengths.get(key, 0.0) + part.edge.length
    assert lengths and all(near(length, lengths[other, one]) for (one, other), length in lengths.items())


def test_both_sides_of_a_curved_seam_are_one_length() -> None:
    draft = check_block("""finished 6in
      turn 4 about center { seam top ~~ right around top-right seam top ~~ right around center }""")
    both_sides(draft)
    petal = at(draft, 4.5, 1.5)
    assert sum(side.edge.length for side in petal.ring) == pytest.approx(2 * 3 * pi / 2)
