"""`repeat`: what is drawn once and set again along a line or round an arc. Areas by hand."""

from __future__ import annotations

from fractions import Fraction
from math import pi

import pytest
from piecewright.language.tokens import RESERVED
from support.check import areas, at, check_block, draft_block, named, only, said

TEETH = (
    "finished 12in seam bottom-left -- top-right"
    " repeat 6 along bottom-left--top-right {"
    " point tip = 1in from bottom-left to top-left"
    " seam bottom-left -- tip -- next bottom-left"
    " piece tooth at between bottom-left, tip, next bottom-left in dark, light }"
    " piece sky at top-left in pale piece sea at bottom-right in blue"
)


def test_teeth_on_a_slant_share_it_out_and_take_their_roles_in_turn() -> None:
    """Each tooth stands on a sixth of the slant: 2in across and 2in up, 1in high at its lower end. Its area
    is base times height: 1 x 2 / 2, exact."""
    draft = check_block(TEETH)
    teeth = sorted(named(draft, "tooth"), key=lambda piece: piece.inside.x)
    assert [piece.fabric for piece in teeth] == ["dark", "light"] * 3
    assert areas(draft, "tooth") == {Fraction(1)}
    assert areas(draft, "sky") == {72 - 6}
    assert len(draft.shapes) == 3  # one template for all teeth


def test_next_of_the_last_copy_is_where_one_more_would_stand() -> None:
    draft = check_block(
        "finished 8in x 2in repeat 3 along top-left--(6in from top-left to top-right) {"
        " seam top-left -- (2in from bottom-left to bottom-right) -- next top-left }"
    )
    assert at(draft, 6.5, 1).fabric == at(draft, 0.2, 1.5).fabric == "background"
    corners = {side.edge.start for piece in draft.pieces for side in piece.ring}
    assert {(0, 0), (2, 0), (4, 0), (6, 0), (2, 2), (4, 2), (6, 2)} <= corners


def test_copies_along_an_arc_turn_with_it() -> None:
    """Six blades of a quarter ring between 3in and 8in: each has a sixth of pi (64 - 9) / 4."""
    draft = check_block(
        "finished 8in repeat 6 along top-left ~~ bottom-right around bottom-left {"
        " point heel = 3in from bottom-left to top-left"
        " seam heel -- top-left  seam heel ~~ next heel around bottom-left"
        " seam top-left ~~ next top-left around bottom-left"
        " piece blade at between top-left, heel, next heel in dark, light }"
        " seam (3in from bottom-left to bottom-right) -- bottom-right"
        " piece hub at bottom-left in light piece sky at top-right in pale"
    )
    blades = named(draft, "blade")
    assert [round(float(each.area), 9) for each in blades] == [round(pi * 55 / 24, 9)] * 6
    assert len(draft.shapes) == 3


def test_a_repeat_stands_in_a_turn_and_a_turn_in_a_repeat() -> None:
    sawtooth = check_block(
        "finished 8in grid 8 x 8 seam B2 -- H2 -- H8 -- B8 -- B2 turn 4 about center {"
        " repeat 6 along B1--H1 { seam B1 -- B2 seam B2 -- next B1 } seam H1 -- H2 }"
    )
    assert {piece.area for piece in sawtooth.pieces} == {Fraction(1, 2), Fraction(1), Fraction(36)}


def test_a_row_of_windmills_by_a_turn_in_a_repeat() -> None:
    draft = check_block(
        "finished 6in x 2in grid 3 x 1 seam B1 -- B2 seam C1 -- C2 repeat 3 along A1--D1 {"
        " turn 4 about (0.5, 0.5) { seam (0.5, 0.5) -- A1  piece vane at (0.5, 0.25) in dark, light } }"
    )
    assert [piece.area for piece in draft.pieces] == [1] * 12
    assert sorted(piece.fabric for piece in named(draft, "vane")) == ["dark"] * 6 + ["light"] * 6


@pytest.mark.parametrize(
    ("body", "code", "words"),
    [
        ("repeat 3 along top-left--top-left { seam top -- bottom }", "line-one-point", "different points"),
        (
            "repeat 3 along left--(12in from left to right) { seam top -- bottom }",
            "copy-outside",
            "along a shorter line",
        ),
        ("repeat 3 along top-left--top-right { row plain dark }", "row-in-turn", "`repeat 3`"),
        ("seam next top -- bottom", "next-outside-turn", "turn or repeat"),
    ],
)
def test_mistakes_are_told_in_words_of_the_repeat(body: str, code: str, words: str) -> None:
    outcome = draft_block(f"finished 6in {body}")
    assert only(outcome, code)
    assert words in said(outcome)


def test_repeat_is_a_name_wherever_a_name_is_due() -> None:
    assert "repeat" not in RESERVED
    check_block(
        "finished 6in point repeat = 2in from top-left to top-right family star, repeat\n"
        "seam repeat -- bottom seam top -- bottom piece repeat at top-left in repeat\n"
        "repeat 2 along repeat--top { seam repeat -- bottom }"
    )
