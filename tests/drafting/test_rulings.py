"""LANGUAGE.md, "Rulings", one by one: those about blocks. Each test says which ruling it holds."""

from __future__ import annotations

from math import asin, pi

import pytest
from piecewright.drafting.model import Default, Draft
from piecewright.measure.tolerance import near
from support.check import (
    areas,
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
from support.texts import GOOSE_SHELF, PAIR

# ---- 1: arcs ----------------------------------------------------------------------------------------------


def test_1_around_prints_both_distances() -> None:
    text = "finished 6in grid 2 x 2 seam (1in from A1 to C1) ~~ A2 around A1"
    complaint = only(draft_block(text), "arc-uneven")
    assert "1in" in complaint.message and "3in" in complaint.message


def test_1_half_a_circle_by_around_asks_for_through() -> None:
    complaint = only(draft_block("finished 6in grid 2 x 2 seam A1 ~~ C1 around B1"), "arc-half-circle")
    assert "through" in complaint.help


def test_1_through_passes_its_point_the_long_way_if_need_be() -> None:
    """Over a 6in x 2in block's lower edge, from 2in to 4in: a quarter circle through the near point bulges
    sqrt 2 - 1; through (3, -1 + ...) the other three quarters of that circle."""
    chord = "finished 6in grid 6 x 6 seam C5 ~~ E5 through {via} seam C5 -- E5 seam C5 -- A5 seam E5 -- G5"
    short = check_block(chord.format(via="(1in from D5 to D6)"))
    assert near(at(short, 3, 4.5).area, pi / 2)
    long = check_block(chord.format(via="(2in from D5 to D1)"))
    radius = 1.25  # through (-1, 0), (1, 0) and (0, 2): the centre lies 3/4 up
    segment = pi * radius**2 - (radius**2 * asin(1 / radius) - 0.75)
    assert near(at(long, 3, 3.5).area, segment)


def test_1_an_end_built_to_lie_on_an_arc_joins_it() -> None:
    """A point 3in from the corner at 125deg lies on the quarter circle of 3in round that corner."""
    draft = check_block("""
      finished 6in grid 2 x 2
      seam B1 ~~ A2 around A1
      seam (3in from A1 at 125deg) -- C3""")
    assert len(draft.pieces) == 3
    assert near(at(draft, 1, 1).area, 9 * pi / 4)


def test_1_an_end_short_by_less_than_a_sixty_fourth_nearly_touches() -> None:
    short = "finished 6in point end = {length} from top to bottom seam top -- end"
    assert codes(draft_block(short.format(length="5 99/100in"))) == ["seam-nearly-touches"]
    assert codes(draft_block(short.format(length="5 9/10in"))) == ["seam-hangs"]
    assert len(check_block(short.format(length="6in")).pieces) == 2


# ---- 2: turns and mirrors ---------------------------------------------------------------------------------


def test_2_grid_points_and_sides_turn_too() -> None:
    """`top` inside a quarter turn is also `right`, `bottom` and `left`."""
    draft = check_block("finished 6in turn 4 about center { seam center -- top }")
    assert [piece.area for piece in draft.pieces] == [9, 9, 9, 9]


def test_2_the_outline_stays_and_is_met_afresh_in_each_copy() -> None:
    """In a 6 x 4 block, lines out of the centre by quarter turns: 3in, 2in, 3in and 2in to the edge."""
    draft = check_block(
        "finished 6in x 4in turn 4 about center { seam center -- (1in from center at 0deg) -- outline }"
    )
    assert [piece.area for piece in draft.pieces] == [6, 6, 6, 6]


def test_2_through_is_worked_out_afresh_in_each_copy() -> None:
    draft = check_block("finished 6in x 4in turn 2 of 90deg about center { seam through center at 0deg }")
    assert [piece.area for piece in draft.pieces] == [6, 6, 6, 6]


def test_2_copies_that_leave_the_outline_offer_a_part_turn() -> None:
    complaint = only(draft_block("finished 6in grid 2 x 2 turn 4 about A1 { seam B1 -- A2 }"), "copy-outside")
    assert "turn 6 of 15deg" in complaint.help


# ---- 3: names in faces ------------------------------------------------------------------------------------


def test_3_copies_in_one_face_are_one_claim_when_the_fabric_agrees() -> None:
    draft = check_block("finished 6in turn 4 about center { piece field at top in dark }")
    assert [(piece.name, piece.fabric) for piece in draft.pieces] == [("field", "dark")]


def test_3_copies_in_one_face_clash_when_the_fabric_differs() -> None:
    complaint = only(
        draft_block("finished 6in turn 4 about center { piece field at top in dark, pale }"),
        "piece-fabrics-clash",
    )
    assert "`dark`" in complaint.message and "`pale`" in complaint.message


def test_3_two_statements_in_one_face_clash_even_with_equal_names() -> None:
    outcome = draft_block("finished 6in piece a at top in dark piece a at left in dark")
    assert codes(outcome) == ["piece-clash"]


def test_3_a_point_that_several_faces_touch_offers_a_point_inside_each() -> None:
    body = "finished 6in grid 2 x 2 seam top -- bottom seam left -- right piece leaf at {place} in dark"
    complaint = only(draft_block(body.format(place="center")), "piece-ambiguous")
    offers = complaint.help.split("one at ")[1:]
    assert len(offers) == 4
    faces = set()
    for offer in offers:
        place = offer[: offer.index(")") + 1]
        draft = draft_block(body.format(place=place)).value[0]
        faces.add(named(draft, "leaf")[0].number)
    assert len(faces) == 4


def test_3_a_point_on_the_edge_of_one_face_names_it() -> None:
    assert areas(
        check_block(
            "finished 6in seam top-left -- bottom-right piece up at top-right in dark "
            "piece down at left in dark"
        ),
        "up",
    ) == {18}


# ---- 4: seams that stop, cross, repeat --------------------------------------------------------------------


def test_4_a_seam_that_stops_tells_how_far_the_nearest_seam_is() -> None:
    complaint = only(
        draft_block("finished 6in grid 2 x 2 seam A2 -- C2 seam B1 -- (2 1/2in from B1 to B2)"), "seam-hangs"
    )
    assert "1/2in from the nearest seam" in complaint.message


@pytest.mark.parametrize(
    ("off", "told"), [("1.357in", "about 1 3/8in"), ("0.75in", "3/4in"), ("0.04in", "0.040in")]
)
def test_4_how_far_is_told_as_a_ruler_reads_it(off: str, told: str) -> None:
    draft = draft_block(f"finished 6in grid 2 x 2 seam A2 -- C2 seam B1 -- ({off} from B2 to B1)")
    assert f"inside a piece, {told} from the nearest seam" in only(draft, "seam-hangs").message


def test_4_along_the_outline_nothing_is_said() -> None:
    assert len(check_block("finished 6in grid 3 x 3 seam A1 -- D1 -- D4 seam B1 -- C1").pieces) == 1


def test_4_seams_over_each_other_are_one() -> None:
    draft = check_block("finished 6in grid 2 x 2 seam A2 -- C2 seam A2 -- B2 seam through A2--C2")
    assert len(draft.pieces) == 2


def test_4_crossing_where_no_point_is_named_is_a_note() -> None:
    outcome = draft_block("finished 6in grid 2 x 1 seam A1 -- B2 seam A2 -- B1 seam B1 -- B2")
    assert codes(outcome) == ["crossing-unnamed"] and outcome.value is not None
    named_there = """finished 6in grid 2 x 1
      point cross = meet A1--B2, A2--B1
      seam A1 -- cross -- B2  seam A2 -- B1  seam B1 -- B2"""
    assert len(check_block(named_there).pieces) == 5


def test_4_unnamed_faces_are_noted_when_most_are_named() -> None:
    body = "finished 6in seam top-left -- bottom-right seam top-right -- bottom-left "
    names = "piece a at top in dark piece b at left in dark "
    assert codes(draft_block(body + names + "piece c at right in dark")) == ["piece-unnamed"]
    assert check_block(body).pieces
    assert check_block(body + names).pieces


def test_4_a_point_never_used_is_a_note() -> None:
    assert codes(draft_block("finished 6in point spare = 1in from A1 to B1")) == ["point-unused"]
    assert (
        codes(
            draft_block(
                "finished 6in point spare = 1in from A1 to B1 point other = 1in from spare to "
                "A2 "
                "seam other -- bottom-right -- top-left -- other"
            )
        )
        == []
    )


def odd(rows: str, grid: str = "2 x 2") -> list[str]:
    use = 'use "Two-Triangle Square" as pair'
    text = f'edition 1\n{PAIR}\nblock "Trial" {{ grid {grid} of 2in {use} {rows} }}'
    outcome = draft_text(text)
    assert outcome.value is not None, said(outcome)
    return [each.message for each in outcome.diagnostics if each.code == "unit-odd"]


def test_4_a_unit_that_breaks_the_turns_is_named() -> None:
    assert not odd("row pair, pair turned 90deg  row pair turned 270deg, pair turned 180deg")
    (message,) = odd("row pair, pair turned 90deg  row pair turned 270deg, pair")
    assert "`pair` at 3in across, 3in down" in message


MIRRORED_ROWS = """row pair, plain dark, pair facing top-right
  row pair, plain pale, pair facing {side}
  row pair facing bottom-left, plain dark, pair facing bottom-right"""


def test_4_a_unit_that_breaks_a_mirror_is_named_with_its_counterpart() -> None:
    """The same left and right, and not by quarter turns (the middle column is plain)."""
    assert not odd(MIRRORED_ROWS.format(side="top-right"), "3 x 3")
    (message,) = odd(MIRRORED_ROWS.format(side="top-left"), "3 x 3")
    assert "left and right" in message
    assert "`pair` at 1in across, 3in down and `pair` at 5in across, 3in down" in message


# ---- 5: names ---------------------------------------------------------------------------------------------


def test_5_points_pieces_units_and_roles_are_separate_sets() -> None:
    text = f"""edition 1
{PAIR}
block "Trial" {{
  grid 2 x 1 of 3in
  point pair = center
  use "Two-Triangle Square" as pair with dark = pair
  row pair, plain pair
  seam pair -- bottom
  piece center at (1.5, 0.5) in left
}}"""
    outcome = draft_text(text)
    assert outcome.value is not None, said(outcome)


def test_5_an_outer_point_is_not_hidden_but_siblings_may_share_a_name() -> None:
    hides = """finished 6in point a = 1in from A1 to B1 seam a -- bottom-left
      turn 2 about center { point a = top seam a -- center }"""
    assert "point-hides" in codes(draft_block(hides))
    siblings = """finished 6in
      turn 2 about center { point a = top seam a -- center }
      turn 2 about center { point a = left seam a -- center }"""
    assert len(check_block(siblings).pieces) == 4


def test_5_names_inside_a_turn_are_local() -> None:
    outcome = draft_block(
        "finished 6in turn 2 about center { point a = top seam a -- center } seam a -- left"
    )
    assert codes(outcome) == ["point-unknown"]


def test_5_version_left_out_is_1() -> None:
    (draft,) = clean_drafts('edition 1 block "Trial" { finished 6in }')
    assert draft.version == 1
    assert Default("version", 1) in draft.defaults


# ---- 6: sizes ---------------------------------------------------------------------------------------------


def test_6_lengths_inside_a_unit_scale_with_it() -> None:
    """The bar is 1in of a 4in unit; in a 2in cell it is 1/2in wide."""
    text = """edition 1
block "Bar" { finished 4in
  point a = 1in from top-left to top-right
  seam through a at 180deg
  piece bar at left in dark }
block "Trial" { grid 2 x 1 of 2in use "Bar" as bar row bar, bar }"""
    draft = clean_drafts(text)[1]
    assert areas(draft, "bar") == {1}


# ---- 7: units and seams -----------------------------------------------------------------------------------


def test_7_two_units_on_one_cell() -> None:
    body = 'grid 2 x 2 of 3in use "Flying Goose" as goose place goose in A1..C2 place goose in A1..C2'
    assert codes(draft_block(body, **GOOSE_SHELF)) == ["units-overlap"]


def test_7_a_seam_through_a_unit() -> None:
    body = 'finished 4in x 2in use "Flying Goose" as goose row goose seam top-left -- bottom-right'
    assert codes(draft_block(body, **GOOSE_SHELF)) == ["seam-through-unit"]


def test_7_a_seam_may_cut_a_plain_cell_and_run_along_a_unit() -> None:
    body = """grid 2 x 1 of 4in x 2in use "Flying Goose" as goose
      row goose, plain dark
      seam B1 -- B2 -- C1"""
    draft = clean_drafts(f'edition 1\nblock "Trial" {{ {body} }}', **GOOSE_SHELF)[0]
    assert sorted(piece.area for piece in draft.pieces) == [2, 2, 4, 4, 4]


def test_7_neighbouring_plain_cells_stay_separate() -> None:
    draft = check_block("grid 3 x 1 of 2in row 3 plain dark")
    assert [(piece.area, piece.fabric) for piece in draft.pieces] == [(4, "dark")] * 3


# ---- 8: rows ----------------------------------------------------------------------------------------------


def test_8_too_few_in_a_row_gives_the_sums() -> None:
    complaint = only(draft_block("grid 10 x 1 of 4in row 9 plain dark"), "row-too-short")
    assert "9 make 36in" in complaint.message and "10 make 40in" in complaint.message


def test_8_too_many_in_a_row() -> None:
    assert codes(draft_block("grid 2 x 1 of 4in row 3 plain dark")) == ["row-too-long"]


def test_8_a_row_beyond_the_grid() -> None:
    assert codes(draft_block("grid 2 x 1 of 4in row 2 plain dark row 2 plain dark")) == ["row-off-grid"]


@pytest.mark.parametrize("round_it", ["turn 2 about center", "mirror in top--bottom"])
def test_8_row_inside_a_turn_or_mirror(round_it: str) -> None:
    complaint = only(draft_block(f"grid 2 x 2 of 4in {round_it} {{ row 2 plain dark }}"), "row-in-turn")
    assert round_it.split(" ")[0] in complaint.message


# ---- 9: renamed roles -------------------------------------------------------------------------------------


def test_9_a_swap_works() -> None:
    body = 'finished 3in use "Two-Triangle Square" as flip with dark = pale, pale = dark row flip'
    draft = clean_drafts(f'edition 1\nblock "Trial" {{ {body} }}', **GOOSE_SHELF)[0]
    assert (at(draft, 0.5, 0.5).fabric, at(draft, 2.5, 2.5).fabric) == ("pale", "dark")


def test_9_the_units_word_stands_on_the_left() -> None:
    body = 'finished 3in use "Two-Triangle Square" as pair with indigo = dark row pair'
    complaint = only(draft_block(body, **GOOSE_SHELF), "role-unknown")
    assert "`dark`" in complaint.help and "left" in complaint.help


# ---- 10: regions ------------------------------------------------------------------------------------------


@pytest.mark.parametrize("region", ["A1..A1", "A1..B1", "B1..B3"])
def test_10_regions_are_corners_not_cells(region: str) -> None:
    complaint = only(draft_block(f"grid 2 x 2 of 3in place plain dark in {region}"), "region-no-cells")
    assert region in complaint.message and "corners, not cells" in complaint.message


def test_10_corners_in_either_order() -> None:
    one = check_block("grid 2 x 2 of 3in place plain dark in A1..B2")
    other = check_block("grid 2 x 2 of 3in place plain dark in B2..A1")
    across = check_block("grid 2 x 2 of 3in place plain dark in A2..B1")
    assert [p.area for p in one.pieces] == [p.area for p in other.pieces] == [p.area for p in across.pieces]


# ---- 11: outside ------------------------------------------------------------------------------------------


def test_11_construction_points_may_lie_outside() -> None:
    """A point above the block, by which two points inside it are placed."""
    draft = check_block("""finished 6in
      point above = (0.5, -4/6)
      point on-left = 5in from above to center
      seam (meet left--top-left, top-left--top-right) -- on-left -- top-right""")
    assert len(draft.pieces) == 2


def test_11_seams_may_not() -> None:
    told = only(
        draft_block("finished 6in seam top-left -- (1in from top at 0deg) -- top-right"), "seam-outside"
    )
    assert [each.text for each in told.related] == ["This seam leaves the block at the top by 1in."]


def test_11_names_may_not() -> None:
    assert codes(draft_block("finished 6in piece leaf at (2, 0.5) in dark")) == ["piece-outside"]


# ---- 13: centre -------------------------------------------------------------------------------------------


def test_13_centre_offers_center() -> None:
    complaint = only(draft_block("finished 6in seam top -- centre"), "point-unknown")
    assert complaint.help == "Did you mean `center`?" and complaint.fix is not None
    assert complaint.fix.text == "center"


# ---- 14: next, meet and -- outline ------------------------------------------------------------------------


def test_14_next_is_carried_along_with_the_first_copy() -> None:
    """Quarter turns that join each tip to the next: a square on its corner, 4in across."""
    draft = check_noted(
        "piece-hole",
        "finished 6in turn 4 about center { point tip = 2in from center to top seam tip -- next tip }",
    )
    assert sorted(piece.area for piece in draft.pieces) == [8, 28]


def test_14_next_inside_a_mirror_is_mirrored_too() -> None:
    """Eighth turns of a mirrored zigzag close up on themselves: the ring is the same left and right."""
    body = """finished 8in
      turn 4 about center {
        point tip = 3in from center to top
        mirror in center--top { seam tip -- next tip }
        seam tip -- top
      }"""
    draft = draft_block(body)
    assert draft.value is not None, said(draft)
    middle = at(draft.value[0], 4, 4)
    assert near(middle.area, 18)


def test_14_previous_is_the_copy_before() -> None:
    forth = check_block("finished 6in turn 4 about center { point t = top seam t -- next t }")
    back = check_block("finished 6in turn 4 about center { point t = top seam t -- previous t }")
    assert [p.area for p in forth.pieces] == [p.area for p in back.pieces]


def test_14_meet_outline_is_the_first_meeting_beyond_the_point() -> None:
    """From the middle of the left side along it: the corner; from the top left corner at 135deg: the far
    one."""
    draft = check_block("finished 6in point far = meet top-left at 135deg, outline seam top-left -- far")
    assert [piece.area for piece in draft.pieces] == [18, 18]


def test_14_outline_as_first_hop_is_an_error() -> None:
    assert codes(draft_block("finished 6in seam center -- outline")) == ["outline-no-direction"]


def test_14_outline_after_an_arc_follows_the_tangent() -> None:
    """A quarter circle from the left side up to the middle arrives heading right."""
    draft = check_block("finished 6in grid 3 x 3 seam A3 ~~ B2 around B3 -- outline")
    upper = at(draft, 1, 1)
    assert near(upper.area, 6 * 2 + 4 - pi)


# ---- 15: rounds -------------------------------------------------------------------------------------------


def strips(corners: str) -> dict[str, float]:
    draft = check_block(
        "grid 4 x 4 of 1in piece middle at center in background "
        f"rounds 1 of 1in about B2..D4 in north, east, south, west {corners}"
    )
    return {piece.fabric: float(piece.area) for piece in draft.pieces}


def test_15_rounds_lap_in_order() -> None:
    """Round 2in: the top strip is 2 long, then each laps the last: 3, 3 and 4."""
    assert strips("") == {"north": 2, "east": 3, "south": 3, "west": 4, "background": 4}


def test_15_butted_sides_first() -> None:
    assert strips("butted") == {"east": 2, "west": 2, "north": 4, "south": 4, "background": 4}


def test_15_mitred() -> None:
    assert strips("mitred") == {"north": 3, "east": 3, "south": 3, "west": 3, "background": 4}


def test_15_roles_start_afresh_each_round() -> None:
    draft = check_noted("piece-unnamed", "grid 6 x 6 of 1in rounds 2 of 1in about C3..E5 in red, blue, green")
    fabrics = [piece.fabric for piece in draft.pieces]
    assert fabrics.count("red") == 4 and fabrics.count("blue") == 2 and fabrics.count("green") == 2
    assert at(draft, 2.5, 0.5).fabric == at(draft, 2.5, 1.5).fabric == "red"


# ---- 16: alternate ----------------------------------------------------------------------------------------


def test_16_alternate_fills_what_nothing_else_covers() -> None:
    draft = check_block("grid 3 x 3 of 2in alternate plain dark, plain pale place plain red in B2..C3")
    assert at(draft, 3, 3).fabric == "red"
    assert [piece.fabric for piece in draft.pieces].count("dark") == 4
    assert [piece.fabric for piece in draft.pieces].count("pale") == 4


def test_16_alternate_goes_by_across_and_down() -> None:
    draft = check_block("grid 3 x 2 of 2in alternate plain red, plain blue, plain green")
    assert [piece.fabric for piece in draft.pieces] == ["red", "blue", "green", "blue", "green", "red"]


def test_16_uncovered_cells_are_cloth_like_any_other() -> None:
    draft = check_block("grid 2 x 2 of 2in row plain dark, plain dark piece rest at bottom in pale")
    assert areas(draft, "rest") == {8}


# ---- 17: outlines -----------------------------------------------------------------------------------------


def test_17_a_path_in_the_box_leaves_top_and_center_to_the_box() -> None:
    draft = check_block("finished 6in x 8in outline top -- bottom-right -- bottom-left seam top -- bottom")
    assert (draft.width, draft.height) == (6, 8)
    assert [piece.area for piece in draft.pieces] == [12, 12]


def test_17_without_finished_its_own_box_serves() -> None:
    draft = check_block("outline start -- (3in from start at 90deg) -- (4in from start at 180deg)")
    assert (draft.width, draft.height) == (3, 4)
    assert draft.pieces[0].area == 6


def test_17_it_closes_unless_its_last_point_is_its_first() -> None:
    open_path = check_block("finished 6in outline top-left -- top-right -- bottom-right")
    closed = check_block("finished 6in outline top-left -- top-right -- bottom-right -- top-left")
    assert open_path.outline == closed.outline and len(closed.outline) == 3


def test_17_finished_and_grid_of_must_agree() -> None:
    assert codes(draft_block("finished 6in grid 3 x 3 of 3in")) == ["size-disagrees"]
    assert check_block("finished 9in grid 3 x 3 of 3in").width == 9


def test_17_a_path_that_leaves_the_box() -> None:
    assert codes(draft_block("finished 6in outline top-left -- top-right -- (7in from top to bottom)")) == [
        "outline-outside"
    ]


# ---- 18: holes --------------------------------------------------------------------------------------------


def test_18_a_ring_is_legal_and_noted() -> None:
    outcome = draft_block("finished 6in seam circle around center radius 2in")
    assert codes(outcome) == ["piece-hole"] and outcome.value is not None
    ring = next(piece for piece in outcome.value[0].pieces if piece.holes)
    assert near(ring.area, 36 - 4 * pi) and len(ring.holes) == 1


# ---- 19: poses --------------------------------------------------------------------------------------------


def lies(cell: str, size: str = "3in") -> tuple[str, ...]:
    """The cloths at the four corners of a posed pair, clockwise from the top left."""
    use = f'finished {size} use "Two-Triangle Square" as pair'
    draft = clean_drafts(f'edition 1 block "Trial" {{ {use} row {cell} }}', **GOOSE_SHELF)[0]
    return tuple(at(draft, x, y).fabric for x, y in ((0.5, 0.5), (2.5, 0.4), (2.5, 2.5), (0.4, 2.5)))


def test_19_mirrored_moves_what_a_unit_faces() -> None:
    """Mirrored, the pair faces the top right; so asked to face the top left it turns back by a quarter."""
    assert lies("pair facing top-left")[0] == "dark"
    assert lies("pair mirrored facing top-left")[0] == "dark"
    draft = clean_drafts(
        'edition 1 block "Trial" { finished 3in use "Two-Triangle Square" as pair '
        "row pair mirrored facing top-left }",
        **GOOSE_SHELF,
    )[0]
    assert (draft.units[0].mirrored, draft.units[0].turned) == (True, 270)


def test_19_a_side_asked_of_a_unit_that_faces_a_corner() -> None:
    body = 'finished 3in use "Two-Triangle Square" as pair row pair facing top'
    assert codes(draft_block(body, **GOOSE_SHELF)) == ["facing-wrong-kind"]


def test_poses_apply_left_to_right() -> None:
    """The goose's own piece has its long edge at the bottom. Turned 90deg that edge is on the left; mirrored
    after, on the right; mirrored before the turn, still on the left."""

    def goose(poses: str) -> Draft:
        body = f'finished 2in x 4in use "Flying Goose" as goose row goose {poses}'
        return clean_drafts(f'edition 1 block "Trial" {{ {body} }}', **GOOSE_SHELF)[0]

    turned, then_mirrored, mirrored_first = (
        goose("turned 90deg"),
        goose("turned 90deg mirrored"),
        goose("mirrored turned 90deg"),
    )
    assert at(turned, 0.2, 0.8).fabric == "dark" and at(turned, 1.8, 0.8).fabric == "pale"
    assert at(then_mirrored, 1.8, 0.8).fabric == "dark" and at(then_mirrored, 0.2, 0.8).fabric == "pale"
    assert at(mirrored_first, 0.2, 0.8).fabric == "dark" and at(mirrored_first, 1.8, 0.8).fabric == "pale"


def test_stretched() -> None:
    body = 'finished 3in x 6in use "Two-Triangle Square" as pair row pair{pose}'
    assert codes(draft_block(body.format(pose=""), **GOOSE_SHELF)) == ["unit-proportions"]
    draft = clean_drafts(f'edition 1 block "Trial" {{ {body.format(pose=" stretched")} }}', **GOOSE_SHELF)[0]
    assert [piece.area for piece in draft.pieces] == [9, 9]


def test_next_next_is_two_copies_on_also_in_a_mirror() -> None:
    """A hexagram: each corner of six to the one after the next leaves 13 pieces."""
    star = check_noted(
        "crossing-unnamed",
        "outline regular 6 side 4in turn 6 about center { seam corner1 -- next next corner1 }",
    )
    assert len(star.pieces) == 13
    back = check_noted(
        "crossing-unnamed",
        "outline regular 6 side 4in mirror in top--bottom { turn 6 about center {"
        " seam corner1 -- previous previous corner1 } }",
    )
    assert counts(back) == counts(star)


def test_a_seam_runs_in_a_direction_to_the_edge() -> None:
    """45deg up and right from 2in, 3in down: 3in across, 3in up, at the top."""
    draft = check_block(
        "finished 6in point low = 2in from left to right seam left -- low at 45deg -- outline"
        " piece sail at top-left in dark piece rest at bottom in light"
    )
    assert areas(draft, "sail") == {10.5}  # 2 x 3, and half of 3 x 3
    assert (
        len(check_block("finished 6in turn 8 about center { seam center at 22.5deg -- outline }").pieces) == 8
    )
