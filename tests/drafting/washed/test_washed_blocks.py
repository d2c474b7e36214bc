"""Measured drafts as a quilter writes them: what each reading becomes, and what is said."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.diagnostics.source import Source
from piecewright.drafting.washed.written import drafted_source
from piecewright.words.work.washed import remarks
from support.check import clean_drafts, codes, draft_text, only
from support.washed_blocks import measure

EIGHT = "finished 8in  washed 7 3/4in x 7 7/8in"


def block(body: str) -> str:
    return f'edition 1\nblock "Old" {{\n{body}\n}}\n'


def drafted(body: str) -> list[Fraction | float]:
    """What each reading was drafted as, in inches."""
    return [each.length for each in measure(block(body)).snapped]


def kept(text: str) -> str:
    """The drafted block as text."""
    return drafted_source(Source("old.block", text), [measure(text)], remarks)


# ---- what a reading becomes -------------------------------------------------------------------------------


def test_a_reading_is_drafted_as_the_ruler_shows_it() -> None:
    assert drafted(f"{EIGHT}  point a = 1 15/16in from top-left to top-right") == [2]


def test_thirds_are_found_where_the_ruler_has_none() -> None:
    assert drafted(
        f"{EIGHT}  point a = 2 9/16in from top-left to top-right\n"
        "point b = 5 3/16in from top-left to top-right"
    ) == [Fraction(8, 3), Fraction(16, 3)]


def test_each_direction_has_its_own_shrinkage() -> None:
    """The same reading is another measure down than across where the block shrank in one direction only."""
    body = "finished 12in  washed 11 1/4in x 12in  "
    assert drafted(body + "point a = 5 5/8in from top-left to top-right") == [6]
    fitted = measure(block(body + "point a = 5 5/8in from top-left to top-right")).shrinkage
    assert fitted.across == pytest.approx(0.9375, abs=0.002) and fitted.down == pytest.approx(1, abs=0.002)


def test_a_slanted_reading_takes_both_shrinkages_by_their_parts() -> None:
    """A 3:4:5 triangle: 5in on the slant shrank by 6% across and not down, to sqrt((3 x 0.94)^2 + 4^2)."""
    body = (
        "finished 6in x 8in  washed 5 5/8in x 8in  grid 2 x 2\n"
        "point a = 4 7/8in from top-left to bottom-right"
    )
    assert drafted(body) == [5]


def test_a_written_grid_comes_first() -> None:
    measured = measure(
        block(f"{EIGHT}  grid 4 x 4\npoint a = 1 15/16in from A1 to E1\npoint b = 5 7/8in from A1 to A5")
    )
    assert (measured.grids[0].across, measured.grids[0].down) == (4, 4)


def test_grids_are_offered_in_order_of_likelihood_with_their_misfit() -> None:
    measured = measure(
        block(
            "finished 9in  washed 8 13/16in\n"
            + "\n".join(
                f"point p{n} = {text}in from top-left to {to}"
                for n, (text, to) in enumerate([("2 15/16", "top-right"), ("5 7/8", "bottom-left")])
            )
        )
    )
    costs = [each.cost for each in measured.grids]
    assert (measured.grids[0].across, measured.grids[0].down) == (3, 3)
    assert costs == sorted(costs) and all(0 <= each.misfit < 0.2 for each in measured.grids)


def test_inside_a_turn_the_first_copy_was_read() -> None:
    draft = draft_text(
        block(
            "finished 6in  washed 5 3/4in\nturn 4 about center {\n"
            "point gate = 15/16in from top to top-right\nseam center -- gate\n"
            "seam center -- top }"
        )
    )
    assert draft.value is not None and codes(draft) == ["washed-drafted"]
    areas = sorted(float(each.area) for each in draft.value[0].pieces)
    assert areas == pytest.approx([1.5] * 4 + [7.5] * 4)


def test_readings_that_start_where_others_end_are_settled_in_turn() -> None:
    body = "finished 12in  washed 11 1/2in\n" + "\n".join(
        f"point p{n} = 1 7/8in from {'top-left' if not n else f'p{n - 1}'} to top-right" for n in range(5)
    )
    assert drafted(body) == [2] * 5


def test_a_reading_at_an_angle_lies_on_the_ruler() -> None:
    assert drafted(f"{EIGHT}  point a = 2 7/16in from center at 22.5deg") == [Fraction(5, 2)]


def test_a_block_in_centimetres_is_drafted_in_centimetres() -> None:
    text = block(
        "finished 20cm  washed 19.4cm x 19.5cm read to 1mm\n"
        "point a = 4.9cm from top-left to top-right\nseam a -- bottom-left"
    )
    assert "point a = 5cm from" in kept(text)


def test_lengths_of_seams_and_strips_are_as_drafted() -> None:
    text = block(
        f"{EIGHT}  grid 8 x 8\nrounds 1 of 1in about B2..H8 in dark\npoint a = 1 15/16in from A1 to A9"
    )
    assert "rounds 1 of 1in" in kept(text) and "point a = 2in" in kept(text)


# ---- what is said -----------------------------------------------------------------------------------------


def test_what_changed_and_by_how_much_is_said_at_the_reading() -> None:
    said = only(
        draft_text(block(f"{EIGHT}  point a = 1 15/16in from top-left to top-right\nseam a -- bottom-left")),
        "washed-drafted",
    )
    assert [each.text for each in said.related] == ["drafted as 2in, 1/16in more"]


def test_a_reading_that_contradicts_the_others_is_named() -> None:
    text = block(
        f"{EIGHT}  point a = 1 15/16in from top-left to top-right\n"
        "point b = 5 13/16in from top-left to top-right\n"
        "point c = 4 3/8in from bottom-left to bottom-right\nseam a -- c  seam b -- c"
    )
    found = [each for each in draft_text(text).diagnostics if each.code == "reading-disagrees"]
    assert [text[each.primary.span.start : each.primary.span.end] for each in found] == ["4 3/8in"]
    assert "grown by 9.4%" in found[0].primary.text and "shrunk by 3.1%" in found[0].related[0].text


@given(st.integers(1, 40), st.integers(40, 320), st.integers(40, 320))
@settings(max_examples=60, deadline=None)
def test_any_sizes_end_in_a_draft_or_in_a_complaint(size: int, width: int, height: int) -> None:
    outcome = draft_text(
        block(
            f"finished {size}in  washed {width}/16in x {height}/16in\n"
            "point a = 1in from top-left to top-right\nseam a -- bottom-left"
        )
    )
    far = max(abs(side / 16 / size - 1) for side in (width, height)) > 0.2
    assert ("washed-too-far" in codes(outcome)) == far


# ---- the drafted file -------------------------------------------------------------------------------------


def test_the_drafted_block_is_a_file_of_its_own_with_its_readings_in_remarks() -> None:
    text = block(
        "finished 8in\n  washed 7 3/4in x 7 7/8in   # with the good tape\n"
        "  point a = 2 9/16in from top-left to top-right  # twice\n  seam a -- bottom-left"
    )
    new = kept(text)
    draft = clean_drafts(new)[0]
    assert (draft.width, draft.height) == (8, 8) and "washed 7" not in new
    assert "point a = 1/3 from top-left to top-right  # twice" in new and "# with the good tape" in new
    assert "# a: read 2 9/16in, drafted 1/3 of the way (2 2/3in), 0.104in more" in new
    assert any("Drafted from a block of 7 3/4in x 7 7/8in" in each for each in draft.notes)


def test_a_washed_statement_among_others_on_its_line_leaves_them_whole() -> None:
    text = block("finished 8in  washed 7 3/4in  seam top -- bottom  seam left -- right")
    assert len(clean_drafts(kept(text))[0].pieces) == 4


def test_the_drafted_block_has_the_pieces_that_the_washed_one_compiles_to() -> None:
    text = block(
        "finished 8in  washed 7 3/4in x 7 7/8in\n  point a = 2 9/16in from top-left to top-right\n"
        "  point b = 5 1/4in from top-left to bottom-left\n  seam a -- b  seam b -- right"
    )
    washed = draft_text(text).value
    assert washed is not None
    again = clean_drafts(kept(text))[0]
    assert [each.area for each in washed[0].pieces] == [each.area for each in again.pieces]


@pytest.mark.parametrize("uses_grid", ["seam A1 -- B2", "seam (0, 0) -- (1, 1)"])
def test_no_grid_is_written_where_it_would_change_what_is_drawn(uses_grid: str) -> None:
    new = kept(block(f"{EIGHT}\n  point a = 2 9/16in from top-left to top-right\n  {uses_grid}"))
    assert "\n  grid" not in new and len(clean_drafts(new.replace("point a", "# point a"))[0].pieces) == 2
