"""One block of a sampler changed for another, or for plain cloth: only what depends on it changes."""

from __future__ import annotations

from collections import Counter

import pytest
from piecewright.cutting.needs import Need
from piecewright.quilt.model import Quilt, QuiltPiece
from support.quilts import area_of, lay

BEFORE = "sail"

SAMPLER = """
    set straight 3 across 3 down {{
      row pair, sail, pair turned 90deg
      row sail mirrored, {cell}, sail
      row pair, sail, pair facing bottom-right
    }}
    sashing 1in in sand posts in indigo around
    border 2in in indigo mitred
    border 1in of plain sand
"""

CORNER = 1 + 2 + 1 + 4 + 1
"""Inches from the quilt's top and left to the middle block: two borders, sashing, a block, sashing."""


def sampler(cell: str) -> Quilt:
    """The sampler with that in the middle."""
    return lay(SAMPLER.format(cell=cell))


def in_the_middle(piece: QuiltPiece) -> bool:
    """Whether a piece lies in the cell that is changed, which is 4in square."""
    return all(
        CORNER - 1e-6 <= float(each) <= CORNER + 4 + 1e-6
        for edge in piece.outline
        for p in (edge.start, edge.end)
        for each in p
    )


def key(need: Need) -> tuple[str, str, str, str]:
    """What tells the needs of a quilt apart."""
    return need.fabric, need.part, need.what, need.template


def table(quilt: Quilt) -> dict[tuple[str, str, str, str], tuple[int, int]]:
    """The counts table."""
    return {key(each): (each.count, each.reversed) for each in quilt.needs}


def changes(before: Quilt, after: Quilt) -> dict[tuple[str, str, str, str], tuple[int, int]]:
    """By how much each line of the counts table changed, those that did not left out."""
    old, new = table(before), table(after)
    found = {}
    for each in {**old, **new}:
        a, b = old.get(each, (0, 0)), new.get(each, (0, 0))
        if a != b:
            found[each] = (b[0] - a[0], b[1] - a[1])
    return found


@pytest.mark.parametrize("cell", ["pair", "sail turned 90deg", "sail mirrored", "plain sand", "plain dark"])
def test_only_the_pieces_of_the_changed_cell_change(cell: str) -> None:
    before, after = sampler(BEFORE), sampler(cell)
    assert (before.width, before.height) == (after.width, after.height)

    def around(quilt: Quilt) -> list[tuple[object, ...]]:
        return [
            (each.outline, each.fabric, each.part, each.what, each.template, each.reversed)
            for each in quilt.pieces
            if not in_the_middle(each)
        ]

    assert around(before) == around(after)
    assert [each for each in before.pieces if in_the_middle(each)] != [
        each for each in after.pieces if in_the_middle(each)
    ]
    assert before.binding == after.binding and before.backing == after.backing
    assert before.batting == after.batting and before.fabrics == after.fabrics


def test_another_block_changes_the_counts_of_both_blocks_alone() -> None:
    assert changes(sampler("sail"), sampler("pair")) == {
        **{name: (-1, 0) for name in table(sampler("sail")) if name[3].startswith("Sail")},
        **{name: (1, 0) for name in table(sampler("sail")) if name[3].startswith("Pair")},
    }
    assert sampler("sail").block_counts != sampler("pair").block_counts


def test_plain_cloth_takes_away_the_block_and_adds_one_square() -> None:
    before, after = sampler("sail"), sampler("plain sand")
    assert changes(before, after) == {
        **{name: (-1, 0) for name in table(before) if name[3].startswith("Sail")},
        ("sand", "setting", "plain-square", ""): (1, 0),
    }


def test_a_mirrored_block_moves_three_pieces_to_the_reversed_column() -> None:
    before, after = sampler("sail"), sampler("sail mirrored")
    assert set(changes(before, after).values()) == {(-1, 1)}
    assert {name[3].split()[0] for name in changes(before, after)} == {"Sail"}


def test_a_turned_block_changes_no_count() -> None:
    assert changes(sampler("sail"), sampler("sail turned 180deg")) == {}


def test_the_cloth_of_each_fabric_changes_by_the_block_alone() -> None:
    def areas(quilt: Quilt) -> dict[str, float]:
        return {
            cloth: round(area_of([p for p in quilt.pieces if p.fabric == cloth]), 6)
            for cloth in Counter(p.fabric for p in quilt.pieces)
        }

    before, after = areas(sampler("sail")), areas(sampler("plain sand"))
    assert after["sand"] - before["sand"] == 16
    assert after["indigo"] == before["indigo"]
    assert round(before["dark"] + before["pale"] - after["dark"] - after["pale"], 6) == 16
