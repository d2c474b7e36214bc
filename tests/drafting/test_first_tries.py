"""LANGUAGE.md, "First-try mistakes seen": each has its own message, or shows where no message can be."""

from __future__ import annotations

from support.check import at, clean_drafts, codes, draft_block, draft_text, only, said
from support.texts import GOOSE_SHELF, PAIR


def test_a_unit_turned_the_wrong_way_is_silent_so_the_draft_tells_how_each_lies() -> None:
    """Nothing is wrong with it; `units` gives alias, words, box, turn and mirroring of every placement."""
    draft = clean_drafts(
        """edition 1
      block "Row" { grid 3 x 1 of 4in x 2in
        use "Flying Goose" as goose
        row goose, goose facing bottom, goose mirrored turned 180deg }""",
        **GOOSE_SHELF,
    )[0]
    assert [
        (unit.title, unit.alias, unit.poses, unit.box, unit.turned, unit.mirrored) for unit in draft.units
    ] == [
        ("Flying Goose", "goose", (), (0, 0, 4, 2), 0, False),
        ("Flying Goose", "goose", ("facing bottom",), (4, 0, 8, 2), 180, False),
        ("Flying Goose", "goose", ("mirrored", "turned 180deg"), (8, 0, 12, 2), 180, True),
    ]


def test_units_inside_a_turn_tell_how_they_lie_in_the_block() -> None:
    draft = clean_drafts(
        """edition 1
      block "Corners" { grid 3 x 3 of 3in
        use "Two-Triangle Square" as pair
        piece cross at center in pale
        turn 4 about center { place pair facing bottom-right in A1..B2 } }""",
        **GOOSE_SHELF,
    )[0]
    assert [(unit.box, unit.turned) for unit in draft.units] == [
        ((0, 0, 3, 3), 180),
        ((6, 0, 9, 3), 270),
        ((6, 6, 9, 9), 0),
        ((0, 6, 3, 9), 90),
    ]
    assert [at(draft, x, y).fabric for x, y in ((2.5, 2.5), (6.5, 2.5), (6.5, 6.5), (2.5, 6.5))] == [
        "dark"
    ] * 4


def test_roles_inside_out_show_in_the_pieces() -> None:
    draft = clean_drafts(
        'edition 1 block "Trial" { finished 3in use "Two-Triangle Square" as pair with dark '
        "= pale, "
        "pale = dark row pair }",
        **GOOSE_SHELF,
    )[0]
    assert [(piece.name, piece.fabric, piece.unit) for piece in draft.pieces] == [
        ("first", "pale", "Two-Triangle Square"),
        ("second", "dark", "Two-Triangle Square"),
    ]


def test_a_name_on_a_corner_lists_a_place_inside_each_piece() -> None:
    """Where two seams meet on the top side, three pieces touch."""
    outcome = draft_block("""finished 6in grid 2 x 1
      seam A2 -- B1 -- C2
      piece peak at top in dark""")
    complaint = only(outcome, "piece-ambiguous")
    assert "3 pieces" in complaint.message and complaint.help.count("(") == 3


def test_one_name_where_two_fabrics_were_meant() -> None:
    """One statement over two faces with two roles, but nothing turns: the second role says so."""
    complaint = only(
        draft_block("finished 6in seam top -- bottom piece side at left, right in dark, pale"),
        "roles-without-turn",
    )
    assert "two statements" in complaint.help


def test_a_missing_seam_names_both_pieces() -> None:
    complaint = only(
        draft_block("finished 6in piece handle at top in dark piece hub at bottom in pale"), "piece-clash"
    )
    assert "`hub`" in complaint.message and "`handle`" in complaint.message and "seam" in complaint.help


def test_a_stray_seam_is_a_sliver_or_hangs() -> None:
    halved = "finished 6in grid 2 x 2 seam top -- bottom "
    near_miss = draft_block(halved + "seam (1/32in from B1 to C1) -- (1/32in from B3 to C3)")
    assert codes(near_miss) == ["piece-sliver"]
    assert codes(draft_block(halved + "seam A2 -- (1in from A2 to B2)")) == ["seam-hangs"]


def test_corners_are_not_cells() -> None:
    complaint = only(draft_block("grid 3 x 1 of 2in place plain dark in B1..C1"), "region-no-cells")
    assert "A1..B2" in complaint.help


def test_a_row_that_does_not_exist() -> None:
    assert codes(draft_block("finished 6in grid 6 x 6 seam E0 -- E7")) == ["grid-row-zero"]
    complaint = only(draft_block("finished 6in grid 3 x 3 seam A1 -- E2"), "grid-point-off")
    assert "D4" in complaint.message and "one more each way" in complaint.help


def test_turn_6_for_six_in_a_quarter() -> None:
    """Six copies all the way round a corner leave the block; the message offers the part turn."""
    outcome = draft_block("""finished 6in turn 6 about top-left {
      seam (1in from top-left at 90deg) -- (2in from top-left at 105deg) -- (1in from top-left at 120deg)
        -- (1in from top-left at 90deg) }""")
    assert "turn 6 of 15deg" in only(outcome, "copy-outside").help


def test_a_half_circle_by_around() -> None:
    assert (
        "through"
        in only(draft_block("finished 6in seam left ~~ right around center"), "arc-half-circle").help
    )


def test_half_a_front_left_unplaced_is_noted() -> None:
    """Two of three rows of a 3 x 3 block: the rest is one piece without a name."""
    text = f"""edition 1
{PAIR}
block "Front" {{ grid 3 x 3 of 3in
  use "Two-Triangle Square" as pair
  row pair, pair, pair
  row pair, pair, pair
}}"""
    outcome = draft_text(text)
    assert codes(outcome) == ["piece-unnamed"], said(outcome)
    assert "1 piece has no name, at 4 1/2in across" in outcome.diagnostics[0].message


def test_a_whole_row_too_short_after_a_turn() -> None:
    """Geese of 2in x 4in stand up to 4in x 2in cells only if they lie down."""
    body = 'grid 2 x 1 of 4in x 2in use "Flying Goose" as goose row 2 goose turned 90deg'
    complaint = only(draft_block(body, **GOOSE_SHELF), "unit-proportions")
    assert "2in x 4in" in complaint.message and "4in x 2in" in complaint.message
