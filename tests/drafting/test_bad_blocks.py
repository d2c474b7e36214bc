"""What drafting says of blocks that ask for too much, for what is not there, or for themselves."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

import pytest
from piecewright.diagnostics.source import Source
from piecewright.drafting import counting
from piecewright.drafting import draft as drafting
from piecewright.words.say import INCHES
from piecewright.words.work.defaults import default_words
from support.check import FILE, check_block, clean_drafts, codes, draft_block, draft_text, only, said, words
from support.texts import GOOSE_SHELF


def block(title: str, *uses: str) -> str:
    lines = [f'use "{each}" as u{at}' for at, each in enumerate(uses)]
    cells = ", ".join(f"u{at}" for at in range(len(uses))) or "plain dark"
    return f'block "{title}" {{ grid {max(len(uses), 1)} x 1 of 2in {" ".join(lines)} row {cells} }}\n'


# ---- units in units ---------------------------------------------------------------------------------------


def test_a_block_that_uses_itself() -> None:
    complaint = only(draft_text("edition 1\n" + block("Harbour", "Harbour")), "use-cycle")
    assert complaint.message == "`Harbour` uses itself."


def test_two_blocks_that_use_each_other() -> None:
    complaint = only(
        draft_text("edition 1\n" + block("Harbour", "Pier") + block("Pier", "Harbour")), "use-cycle"
    )
    assert complaint.message == "`Harbour` uses `Pier`, which uses `Harbour`."


def test_a_ring_of_three_across_files() -> None:
    """Said where the ring closes; and at the `use` that leads to it, since that is in this file."""
    outcome = draft_text(
        "edition 1\n" + block("Harbour", "Pier"),
        pier="edition 1\n" + block("Pier", "Lamp"),
        lamp="edition 1\n" + block("Lamp", "Harbour"),
    )
    assert [(each.code, each.primary.span.source) for each in outcome.diagnostics] == [
        ("unit-failed", FILE),
        ("use-cycle", "lamp.block"),
    ]
    assert outcome.diagnostics[1].message == "`Harbour` uses `Pier`, which uses `Lamp`, which uses `Harbour`."


def test_a_ring_off_the_way_is_told_too() -> None:
    """A block that uses one of a ring is not in the ring: the message names the ring alone."""
    outcome = draft_text(
        "edition 1\n" + block("Outer", "Harbour") + block("Harbour", "Pier") + block("Pier", "Harbour")
    )
    assert only(outcome, "use-cycle").message == "`Harbour` uses `Pier`, which uses `Harbour`."


@pytest.mark.parametrize("backward", [False, True])
def test_units_too_deep_whichever_way_they_are_written(backward: bool) -> None:
    levels = [block(f"Level {at}", f"Level {at + 1}") for at in range(30)] + [block("Level 30")]
    outcome = draft_text("edition 1\n" + "".join(reversed(levels) if backward else levels))
    assert codes(outcome) == ["use-too-deep"]


def test_units_24_deep_work() -> None:
    levels = [block(f"Level {at}", f"Level {at + 1}") for at in range(24)] + [block("Level 24")]
    assert len(clean_drafts("edition 1\n" + "".join(levels))) == 25


def test_a_unit_that_is_not_there_offers_the_nearest() -> None:
    complaint = only(
        draft_block('finished 4in x 2in use "Flying Gose" as goose row goose', **GOOSE_SHELF), "block-unknown"
    )
    assert complaint.help == 'Did you mean "Flying Goose"?'


def test_a_version_that_is_not_there() -> None:
    shelf = {
        "one": 'edition 1 block "Pier" { finished 2in }',
        "two": 'edition 1 block "Pier" version 4 { finished 2in }',
    }
    complaint = only(
        draft_block('finished 2in use "Pier" version 3 as pier row pier', **shelf), "version-unknown"
    )
    assert complaint.help == "It has versions 1 and 4."
    assert clean_drafts(
        'edition 1 block "T" { finished 2in use "Pier" version 4 as pier row pier }', **shelf
    )[0].uses == (("Pier", 4),)


def test_a_use_without_version_takes_the_newest_and_says_which() -> None:
    shelf = {
        "one": 'edition 1 block "Pier" { finished 2in }',
        "two": 'edition 1 block "Pier" version 4 { finished 2in }',
    }
    draft = clean_drafts('edition 1 block "T" { finished 2in use "Pier" as pier row pier }', **shelf)[0]
    told = dict(default_words(INCHES, each) for each in draft.defaults)
    assert told['version of "Pier"'] == "4, the newest in beside"


def test_a_block_of_the_same_file_comes_first() -> None:
    shelf = {"beside": 'edition 1 block "Pier" version 4 { finished 2in }'}
    text = (
        'edition 1 block "T" { finished 2in use "Pier" as pier row pier } '
        'block "Pier" version 2 { finished 2in }'
    )
    assert clean_drafts(text, **shelf)[0].uses == (("Pier", 2),)


# ---- points and lines -------------------------------------------------------------------------------------


def test_points_that_define_each_other_name_the_ring() -> None:
    complaint = only(
        draft_block("finished 6in point a = 1in from b to A1 point b = 1in from a to A1 seam a -- b"),
        "point-cycle",
    )
    assert complaint.message == "`a` needs `b`, which needs `a`."
    complaint = only(draft_block("finished 6in point a = 1in from a to A1"), "point-cycle")
    assert complaint.message == "`a` needs itself."


def test_a_long_ring_of_points_ends() -> None:
    """A chain of 3,000 points, each from the next, and the last from the first."""
    chain = [f"point p{at} = 1/2 from p{(at + 1) % 3000} to top-left" for at in range(3000)]
    outcome = draft_block("finished 6in\n" + "\n".join(chain) + "\nseam p0 -- top")
    assert outcome.value is None and len(outcome.diagnostics) == 1, said(outcome)[:500]


def test_a_long_chain_of_points_works() -> None:
    """Six hundred points, each from the one written after it."""
    chain = [f"point p{at} = 1/64in from p{at + 1} to top" for at in range(128)]
    chain += [f"point p{at} = 1/64in from p{at + 1} to right" for at in range(128, 600)] + [
        "point p600 = left"
    ]
    draft = check_block("finished 20in\n" + "\n".join(chain) + "\nseam p0 -- left  seam p0 -- right")
    assert len(draft.pieces) == 2


def test_a_seam_to_a_point_that_is_not_there_is_one_complaint_a_place() -> None:
    text = "finished 6in grid 2 x 2 turn 4 about center { seam center -- hub seam center -- B1 }"
    outcome = draft_block(text)
    assert codes(outcome) == ["point-unknown"]


def test_lines_that_never_meet() -> None:
    outcome = draft_block("finished 6in seam top -- (meet top--center, left at 0deg)")
    assert codes(outcome) == ["lines-never-meet"]


def test_everything_wrong_is_said_in_one_run() -> None:
    text = """edition 1
block "One" {
  finished 6in
  grid 2 x 2
  point gate = 1 1/4in from B1 to C1
  seam gate -- gaet
  seam A1 -- F9
  seam gate ~~ left around top-left
  seam center -- (9in from center at 0deg) -- center
  place plain dark in A1..A1
}
block "Two" {
  finished 6in
  seam A1 -- nowhere
}
block "Three" {
  grid 2 x 1 of 2in
  row 3 plain dark
}
"""
    outcome = draft_text(text)
    assert codes(outcome) == [
        "point-unknown",
        "grid-point-off",
        "arc-uneven",
        "seam-outside",
        "region-no-cells",
        "point-unknown",
        "row-too-long",
    ]
    assert [words(each, text) for each in outcome.diagnostics][:2] == ["gaet", "F9"]
    lines = [Source(FILE, text).place(each.primary.span.start)[0] for each in outcome.diagnostics]
    assert lines == sorted(lines)


# ---- too much ---------------------------------------------------------------------------------------------


def test_a_million_cells_are_refused() -> None:
    complaint = only(
        draft_block("finished 500in grid 1000 x 1000 alternate plain dark, plain pale"), "block-too-large"
    )
    assert "Divide it" in complaint.help


def test_a_grid_of_a_thousand_by_itself_costs_nothing() -> None:
    assert len(check_block("finished 500in grid 1000 x 1000 seam A1 -- ALM1001").pieces) == 2


def nested(copies: int, deep: int, inner: str) -> Iterator[str]:
    for _ in range(deep):
        yield f"turn {copies} about center {{ "
    yield inner
    yield "} " * deep


def test_turns_in_turns_that_explode_are_refused() -> None:
    """8 in 8 in 8 ...: 8 to the 8th is sixteen million copies."""
    outcome = draft_block("finished 6in " + "".join(nested(8, 8, "seam center -- top")))
    assert codes(outcome) == ["block-too-large"]


def test_turns_in_turns_around_nothing_drawn_explode_no_less() -> None:
    outcome = draft_block("finished 6in " + "".join(nested(360, 8, "piece field at center in dark")))
    assert codes(outcome) == ["block-too-large"]
    outcome = draft_block("finished 6in " + "".join(nested(360, 12, "point p = center")))
    assert codes(outcome) == ["block-too-large"]


def test_a_whole_turn_of_360_with_many_seams_works() -> None:
    """A wheel of 360 spokes between two circles: ring pieces wide enough to sew."""
    draft = check_block("""finished 100in
      seam circle around center radius 40in
      seam circle around center radius 50in
      seam circle around center radius 30in
      turn 360 about center {
        seam (30in from center at 0deg) -- (40in from center at 0deg)
        seam (40in from center at 1/2deg) -- (50in from center at 1/2deg) }""")
    assert len(draft.pieces) == 2 * 360 + 4 + 1
    assert sorted(len(shape.members) for shape in draft.shapes) == [1, 4, 360, 360]


def test_a_block_of_ten_thousand_pieces_works() -> None:
    draft = check_block("finished 100in grid 100 x 100 alternate plain dark, plain pale")
    assert len(draft.pieces) == 10_000 and len(draft.shapes) == 1
    assert {piece.area for piece in draft.pieces} == {Fraction(1)}


def test_units_that_multiply_are_refused() -> None:
    """Ten by ten of ten by ten of ten by ten: a million pieces."""
    cells = "grid 10 x 10 alternate"
    text = f"""edition 1
block "A" {{ finished 10in {cells} plain dark, plain pale }}
block "B" {{ finished 100in {cells} a, a turned 90deg use "A" as a }}
block "C" {{ finished 1000in {cells} b, b turned 90deg use "B" as b }}
"""
    assert codes(draft_text(text)) == ["block-too-large"]


def test_a_grid_too_fine_to_sew_is_slivers() -> None:
    outcome = draft_block("grid 4 x 1 of 1/64in x 1in alternate plain dark, plain pale")
    assert set(codes(outcome)) == {"piece-sliver"}


def test_bounds_leave_room_for_real_blocks() -> None:
    """A block of 20,000 pieces draws at most four lines for each."""
    assert counting.LINES_MOST >= 4 * 20_000 and drafting.USE_DEPTH_MOST >= 8
