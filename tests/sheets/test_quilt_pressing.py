"""How a quilt's booklet presses: its blocks toward the darker of its own cloths, its rows by turns."""

from __future__ import annotations

import pytest
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.chapters.block_steps import block_steps as block_steps_of
from piecewright.sheets.content import Card, Cards, Paragraph
from support.arranged import paths
from support.quilts import lay
from support.works import chapters_of, work_of


def block_steps(body: str, **parts: str) -> tuple[list[Card], str]:
    """The cards of a quilt's one block, and all that is said round them."""
    quilt = lay(
        body,
        fabrics='fabric cream "Cream lawn"  fabric navy "Navy twill"',
        last="binding 2in in navy  backing in cream  batting",
        **parts,
    )
    found = block_steps_of(work_of(quilt).blocks[0], SheetOptions())
    said = " ".join(part.text for part in found.parts if isinstance(part, Paragraph))
    return [card for part in found.parts if isinstance(part, Cards) for card in part.cards], said


@pytest.mark.parametrize("roles", ["dark = navy, pale = cream", "dark = cream, pale = navy"])
def test_a_free_seam_goes_to_the_darker_fabric_whatever_its_role_is_called(roles):
    (card,), said = block_steps(f"roles {roles}\nset straight 2 across 2 down of 4in {{ alternate pair }}")
    assert card.lines[1] == "Press toward A (Navy twill)."
    assert "as suits the fabrics shown" not in said


def test_of_several_dressings_the_most_common_decides_and_the_booklet_says_so():
    (card,), said = block_steps(
        "set straight 3 across 1 down of 4in { row day, night, day }",
        uses="""
        use "Pair" as day with dark = cream, pale = navy
        use "Pair" as night with dark = navy, pale = cream
        """,
    )
    assert "Shown is the most common: dark is Cream lawn, pale is Navy twill, 2 times." in said
    assert "Seams are pressed as suits the fabrics shown" in said
    assert card.lines[1] == "Press toward A (Navy twill)."


def row_cards(body: str) -> list[Card]:
    quilt = lay(body)
    (chapter,) = chapters_of(work_of(quilt), "rows")
    parts = chapter.parts
    return [card for part in parts if isinstance(part, Cards) for card in part.cards]


def test_rows_that_are_alike_are_told_to_be_pressed_by_turns():
    """Every other row the other way, so that seams lie opposite (SOURCES 3.6)."""
    first, last = row_cards("set straight 4 across 4 down of 4in { alternate pair }")
    assert first.title == "R1 · make 4"
    assert first.lines[1] == "Press 2 as the arrows show (in rows 1 and 3) and the other 2 the other way."
    assert last.lines[1] == "Press as the arrows show."


def test_every_seam_of_a_row_has_its_arrow():
    first, last = row_cards("set straight 4 across 4 down of 4in { alternate pair }")
    for card in (first, last):
        heads = [mark for mark in paths(card.picture, "press") if mark.fill]
        assert len(heads) == 3, "three seams join four parts"


@pytest.mark.parametrize(
    "body",
    [
        "set straight 4 across 4 down of 4in { alternate pair }",
        "set straight 4 across 5 down of 4in { alternate pair, sail, sail }",
    ],
)
def test_the_seams_of_a_row_are_all_pressed_one_way_where_nothing_is_darker(body):
    """So that a whole row is pressed in one go (common practice, no published source)."""
    *rows, _ = row_cards(body)
    for card in rows:
        lines = [mark.path for mark in paths(card.picture, "press") if not mark.fill]
        assert len(lines) == 3
        assert len({path[-1][1] > path[0][1] for path in lines}) == 1, card.title
