"""The order of sewing: straight wherever straight can be, batches, set-in seams, units before rows."""

from __future__ import annotations

import math

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from piecewright.cutting.templates.making import make_templates
from piecewright.sewing.order.assembly import assemble
from piecewright.sewing.proof.resew import prove
from support.check import check_block, check_noted, draft_block, draft_text
from support.joining import fewest_set_in
from support.library import library_drafts
from support.random_blocks import random_blocks
from support.tilings import draft_lines, generic_layouts, lines_of, sewn_by_trying, tilings

PINWHEELS = {((1, 1, 2), (3, 4, 2), (3, 5, 5)), ((1, 2, 2), (1, 3, 4), (5, 5, 4))}
LIBRARY = dict(library_drafts())


def test_all_tilings_of_nine_cells_but_two_sew_straight():
    """OEIS A116694 and A222659: 322 tilings, 320 of them by straight cuts."""
    every = list(tilings(3, 3))
    assert len(every) == 322
    crooked = {
        cells for cells in every if not assemble(draft_lines(3, 3, lines_of(cells))).straight_seams_only
    }
    assert crooked == PINWHEELS


def test_the_pinwheel_tiling_takes_one_set_in_seam_or_one_left_partly_open():
    for cells in PINWHEELS:
        made = assemble(draft_lines(3, 3, lines_of(cells)))
        assert (made.set_in_seams, made.partial_seams, made.seams) == (1, 1, 4)
        (step,) = [each for each in made.steps if each.set_in]
        assert step.step == 4, "the partly open seam is closed last"
        assert step.partial is not None and step.partial.opened == 1, "the first seam is the one left open"
        assert step.partial.at == step.turns[0]


def test_generic_layouts_of_four_seams():
    """Ackerman, Barequet, Pinter, SODA 2004: Baxter number 92, Schroeder number 90."""
    every = generic_layouts(4)
    assert [len(generic_layouts(seams)) for seams in (1, 2, 3)] == [2, 6, 22]
    straight = [assemble(draft_lines(5, 5, lines)).straight_seams_only for lines in every]
    assert (len(every), sum(straight)) == (92, 90)


@given(st.integers(0, 10**9), st.integers(3, 4), st.integers(3, 4))
@settings(max_examples=40, deadline=None)
def test_a_straight_order_is_found_exactly_where_trying_everything_finds_one(seed, across, down):
    from random import Random

    cells = random_tiling(Random(seed), across, down)
    assert assemble(draft_lines(across, down, lines_of(cells))).straight_seams_only == sewn_by_trying(cells)


@given(random_blocks(curves=False, names=False))
@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
def test_no_order_has_fewer_set_in_seams(block):
    drafted = draft_text(block.text()).value
    assume(drafted is not None and 3 <= len(drafted[0].pieces) <= 8)
    assume(not any(piece.holes for piece in drafted[0].pieces))
    assert assemble(drafted[0]).set_in_seams == fewest_set_in(drafted[0])


def random_tiling(random, across, down):
    cells = {}
    for number in range(1, across * down + 1):
        free = next(((x, y) for y in range(down) for x in range(across) if (x, y) not in cells), None)
        if free is None:
            break
        left, top = free
        right = left
        while right + 1 < across and (right + 1, top) not in cells and random.random() < 0.5:
            right += 1
        bottom = top + (random.random() < 0.5 and top + 1 < down)
        cells.update(
            dict.fromkeys([(x, y) for x in range(left, right + 1) for y in range(top, bottom + 1)], number)
        )
    return tuple(tuple(cells[x, y] for x in range(across)) for y in range(down))


@pytest.mark.parametrize("title", LIBRARY)
def test_every_block_of_the_library_comes_together_of_all_its_pieces(title):
    draft = LIBRARY[title]
    made = assemble(draft)
    assert sum(step.batch for step in made.steps) == len(draft.pieces) - 1
    if made.units:
        assert sorted(made.units[-1].pieces) == [piece.number for piece in draft.pieces]
    used = [part for step in made.steps for part in step.parts for _ in range(step.batch)]
    for unit in made.units[:-1]:
        assert used.count(unit.id) == len(unit.copies), f"every {unit.id} that is made is used"
        assert all(
            set(one.pieces).isdisjoint(two.pieces) for one in unit.copies for two in unit.copies if one != two
        )
        fabrics = {tuple(draft.pieces[piece - 1].fabric for piece in copy.pieces) for copy in unit.copies}
        assert len(fabrics) == 1, "copies are of the same cloth"


# The counts of set-in seams are common practice, no published source.
SET_IN = {
    "Eight-pointed Star": 8,
    "Six-pointed Star": 6,
    "Spools": 4,
    "Star of Bethlehem": 8,
    "Rising Sun": 8,
    "Ohio Star": 0,
    "Nine Patch": 0,
    "Pinwheel Square": 0,
    "Log Cabin": 0,
    "Pineapple": 0,
    "Courthouse Steps": 0,
    "Storm at Sea": 0,
    "Churn Dash": 0,
    "Bear's Paws": 0,
    "Snowball": 0,
    "Dutchman's Puzzle": 0,
    "Rocky Road to Kansas": 0,
    "Drunkard's Path": 0,
    "Flying Goose": 0,
    "Lady of the Lake": 0,
    "Bright Hopes": 1,
    "Attic Windows": 1,
    "Necktie": 4,
    "Grandmother's Flower Garden": 6 * 3**2,  # wherever three hexagons meet, in three rings of them
    "Friendship Star": 0,
    "Sister's Choice": 0,
    "Jacob's Ladder": 0,
    "Snail's Trail": 0,
    "Economy": 0,
    "Martha Washington's Star": 0,
    "Fifty-Four Forty or Fight": 0,
    "Chimneys and Cornerstones": 0,
    "Trip Around the World": 0,
    "Friendship Braid": 0,
}

PARTIAL = {"Bright Hopes": 1}
"""Sewn straight by leaving the first seam round the middle square partly open. Common practice, as above."""


@pytest.mark.parametrize("title", SET_IN)
def test_blocks_known_to_want_set_in_seams_or_none(title):
    made = assemble(LIBRARY[title])
    assert (made.set_in_seams, made.partial_seams) == (SET_IN[title], PARTIAL.get(title, 0))
    assert made.straight_seams_only == (not SET_IN[title] and title != "Drunkard's Path")


def test_a_nine_patch_is_sewn_in_rows():
    made = assemble(LIBRARY["Nine Patch"])
    last = made.steps[-1]
    assert last.seam_length == pytest.approx(9) and last.seam[0].start.y == last.seam[0].end.y
    rows = [unit for unit in made.units if unit.unfinished.width == 9.5 and unit.unfinished.height == 3.5]
    assert sum(len(unit.copies) for unit in rows) == 3


def test_squares_of_two_triangles_are_made_first_and_in_a_batch():
    made = assemble(LIBRARY["Bear's Paws"])
    first = made.steps[0]
    assert first.batch == 16 and first.seam_length == pytest.approx(8**0.5)
    assert (first.unfinished.width, first.unfinished.height) == (2.5, 2.5)


def test_units_as_the_block_was_written_stay_whole():
    draft = LIBRARY["Dutchman's Puzzle"]
    made = assemble(draft)
    geese = [unit for unit in made.units if len(unit.pieces) == 3]
    assert [len(unit.copies) for unit in geese] == [4, 4], "four of each colouring"


def test_a_hexagon_rosette_takes_as_many_set_in_seams_as_patches_around():
    """Common practice, no published source: each of six places where three patches meet is one."""
    draft = check_block("""
      finished 12in
      outline regular 6 side 6in
      point a = 1/2 from center to corner1
      turn 6 about center {
        seam a -- next a
        seam a -- corner1
      }""")
    made = assemble(draft)
    assert (made.set_in_seams, sum(len(step.turns) for step in made.steps), made.partial_seams) == (6, 6, 0)


def test_an_attic_window_takes_one_set_in_seam_where_its_three_pieces_meet():
    """Common practice, no published source."""
    draft = check_block("finished 6in\ngrid 3 x 3\nseam A3 -- C3 -- C1\nseam C3 -- bottom-right")
    made = assemble(draft)
    (step,) = [each for each in made.steps if each.set_in]
    assert made.set_in_seams == 1
    assert [(float(at.x), float(at.y)) for at in step.turns] == [(4, 4)]
    first = made.steps[0]
    assert not first.set_in and len(first.stops) == 1, "the seam before it stops at the dot"


def test_a_piece_with_a_window_is_sewn_after_what_fills_it():
    draft = check_noted(
        "piece-hole",
        """
      finished 6in
      grid 3 x 3
      seam B2 -- C2 -- C3 -- B3 -- B2
      seam B2 -- C3""",
    )
    made = assemble(draft)
    assert [step.closed for step in made.steps] == [False, True]
    assert made.set_in_seams == 4 and made.units[-1].holes == ()


def test_a_circle_set_into_a_square_is_one_curved_closed_seam():
    made = assemble(draft_block("finished 6in\nseam circle around center radius 2in").value[0])
    (step,) = made.steps
    assert (step.closed, step.curved, step.set_in_count, len(step.eased)) == (True, True, 1, 3)


def test_a_quarter_circle_is_a_curved_seam_pinned_between_its_ends():
    made = assemble(LIBRARY["Drunkard's Path Patch"])
    (step,) = made.steps
    assert step.curved and not step.set_in and step.eased
    assert made.curved_seams == 1 and not made.straight_seams_only


def test_a_block_of_one_piece_has_no_steps():
    made = assemble(check_block("finished 6in"))
    assert (made.steps, made.seams, made.straight_seams_only) == ((), 0, True)


def test_same_draft_same_order():
    assert assemble(LIBRARY["Rolling Star"]) == assemble(LIBRARY["Rolling Star"])


def test_many_hexagons_take_one_set_in_seam_for_each_place_where_three_meet():
    """Halved like rows rather than parted one by one, a large honeycomb has no set-in seam too many."""
    wide, high = 6, 9
    seams = []
    for row in range(1, high):
        zigzag = " -- ".join(f"({x}, {3 * row + (x + row + 1) % 2})" for x in range(2 * wide + 1))
        seams.append(f"seam {zigzag}")
    for row in range(high):
        for x in range(1, 2 * wide):
            if (x + row) % 2 == 0:
                top = 3 * row + 1 if row else 0
                seams.append(f"seam ({x}, {top}) -- ({x}, {3 * row + 3})")
    size = f"finished {2 * wide}in x {3 * high}in\ngrid {2 * wide} x {3 * high}"
    draft = draft_block("\n".join([size, *seams])).value[0]
    threes = (high - 1) * (2 * wide - 1)
    made = assemble(draft)
    assert len(draft.pieces) > 40 and made.set_in_seams == threes
    assert max(len(step.seam) for step in made.steps) > 8, "rows are joined along their zigzag"


@pytest.mark.parametrize("onward, pieces", [("corner1", 19), ("outline", 19), ("next fork", 20)])
def test_seams_that_lap_round_a_centre_and_cross_themselves_are_sewn(onward, pieces):
    """The cheapest way between any two places of the outside crosses itself here, and parts nothing."""
    draft = draft_block(f"""
      outline regular 6 side 6in
      point inner = 1/3 from center to corner5
      point fork = 2/3 from center to corner1
      turn 6 about center {{ seam next inner -- inner -- fork -- {onward} }}""").value[0]
    made = assemble(draft)
    assert made.seams == len(draft.pieces) - 1 == pieces - 1
    assert made.units[0].copies[1:], "what is alike in the turns is made in batches"


def test_fillings_that_touch_are_set_in_from_where_they_touch():
    """Two circles side by side in one window: what is left of its edge is one line from the place they
    share."""
    made = assemble(
        draft_block("""
      finished 8in
      seam circle around (1 1/2in from center at 270deg) radius 1 1/2in
      seam circle around (1 1/2in from center at 90deg) radius 1 1/2in""").value[0]
    )
    assert [step.closed for step in made.steps] == [True, True]
    assert [(step.seam[0].start.x, step.seam[0].start.y) for step in made.steps] == [(4, 4), (4, 4)]


def test_a_filling_with_others_hanging_on_it_waits_for_all_but_one():
    """A square with a triangle at each of three corners: its own edge of the window is broken until two are
    in."""
    draft = draft_block("""
      finished 12in
      grid 12 x 12
      seam (4, 4) -- (8, 4) -- (8, 8) -- (4, 8) -- (4, 4)
      seam (4, 4) -- (2, 3) -- (3, 2) -- (4, 4)
      seam (8, 8) -- (10, 9) -- (9, 10) -- (8, 8)
      seam (4, 8) -- (3, 10) -- (2, 9) -- (4, 8)""").value[0]
    made = assemble(draft)
    square = next(str(piece.number) for piece in draft.pieces if piece.area == 16)
    assert all(step.closed for step in made.steps)
    assert next(step.step for step in made.steps if square in step.parts) >= 3
    assert prove(draft, make_templates(draft).value, made).value is not None


def test_a_star_from_corner_to_corner_is_as_wide_as_its_block():
    """No ruler lies along an edge that the star reaches out beyond: it is measured across and down."""
    made = assemble(LIBRARY["Arkansas Snowflake"])
    star = next(unit for unit in made.units if len(unit.pieces) == 4)
    assert (star.finished.width, star.finished.height) == (8, 8)
    assert (star.unfinished.width, star.unfinished.height) == (8.5, 8.5)


@pytest.mark.parametrize("title", LIBRARY)
def test_a_unit_is_measured_along_a_side_of_its_own_or_with_the_block(title):
    """Never wider than the block is across, unless a ruler along a straight side of the unit reads so."""
    made = assemble(LIBRARY[title])
    for unit in made.units:
        block = made.units[-1].finished
        if unit.finished.width > block.width + 1e-6 or unit.finished.height > block.height + 1e-6:
            assert max(
                math.dist((edge.start.x, edge.start.y), (edge.end.x, edge.end.y))
                for edge in unit.outline
                if not edge.arc
            ) == pytest.approx(unit.finished.width)
