"""Two drafts side by side: which plastic serves on, and how far outlines moved."""

from __future__ import annotations

import pytest
from piecewright.cutting.comparison import Comparison, Side, compare
from piecewright.diagnostics.source import Source
from support.block_files import VANE
from support.check import compile_source
from support.library import LibraryShelf, compiled, library_sources

STRIPS = """\
edition 1

block "Strips" version 1 {
  finished 6in
  seam (2in from top-left to top-right) -- (2in from bottom-left to bottom-right)
  seam (2in from left to center) -- left
  piece wide at right in dark
  piece upper at top-left in light
  piece lower at bottom-left in pale
}
"""


def side(text: str) -> Side:
    """The one block of a text."""
    outcome = compile_source(Source("block.block", text), LibraryShelf())
    assert outcome.value is not None, outcome.diagnostics
    return Side(outcome.value[0].draft, outcome.value[0].templates)


def compared(old: str, new: str) -> Comparison:
    """The blocks of two texts side by side."""
    return compare(side(old), side(new))


def told(comparison: Comparison) -> list[tuple[str, str, str]]:
    """What became of each template, with its letters."""
    return [
        (each.kind, each.old.label if each.old else "", each.new.label if each.new else "")
        for each in comparison.matches
    ]


@pytest.mark.parametrize("source", library_sources(), ids=lambda source: source.name)
def test_a_block_beside_itself_keeps_every_template(source: Source) -> None:
    for block in compiled(source).value or ():
        found = compare(Side(block.draft, block.templates), Side(block.draft, block.templates))
        assert {each.kind for each in found.matches} == {"same"} and not found.redrawn
        assert found.distance == pytest.approx(0, abs=1e-9)


def test_other_names_and_fabrics_change_no_template() -> None:
    new = VANE.replace("sail", "arm").replace("light, dark", "rose, rose").replace("version 2", "version 3")
    assert {each.kind for each in compared(VANE, new).matches} == {"same"}


def test_a_mirrored_block_needs_its_templates_turned_over() -> None:
    found = compared(VANE, VANE.replace("from B1 to C1", "from C1 to B1"))
    assert told(found) == [
        ("same", "A", "A"),
        ("same", "D", "B"),
        ("same", "C", "C"),
        ("same", "B", "D"),
        ("same", "E", "E"),
    ]
    assert [each.new.label for each in found.matches if each.mirrored and each.new] == ["B", "C", "D"]
    assert found.redrawn and found.unversioned


def test_more_of_one_shape_change_its_count_alone() -> None:
    cells = 'edition 1\n\nblock "Cells" {\n  grid 2 x 1 of 3in\n  row 2 plain dark\n}\n'
    found = compared(cells, cells.replace("2 x 1", "3 x 1").replace("row 2", "row 3"))
    assert told(found) == [("count", "A", "A")]


def test_pieces_that_become_one_leave_a_template_over() -> None:
    new = STRIPS.replace("  seam (2in from left to center) -- left\n", "")
    new = new.replace("  piece lower at bottom-left in pale\n", "")
    found = compared(STRIPS, new)
    assert sorted(told(found)) == [("changed", "A", "A"), ("same", "B", "B")]


def test_templates_of_another_place_are_new_and_gone() -> None:
    moon = (
        'edition 1\n\nblock "Moon" {\n  finished 6in\n'
        "  seam circle around (1/6 from center to top-left) radius 1/2in\n}\n"
    )
    found = compared(
        moon,
        moon.replace("1/6 from center to top-left) radius 1/2in", "2/3 from center to right) radius 3/4in"),
    )
    assert sorted(each.kind for each in found.matches) == ["changed", "gone", "new"]


def test_a_moved_seam_tells_how_far() -> None:
    found = compared(
        STRIPS,
        STRIPS.replace("(2in from top-left", "(2 1/4in from top-left")
        .replace("(2in from bottom-left", "(2 1/4in from bottom-left")
        .replace("(2in from left", "(2 1/4in from left"),
    )
    assert {each.kind for each in found.matches} == {"changed"}
    assert found.distance == pytest.approx(0.25)
    # Middle upon middle, a strip 1/4in wider reaches 1/8in further on each side.
    assert [each.distance for each in found.matches] == [pytest.approx(0.125)] * len(found.matches)


def test_another_allowance_takes_other_templates() -> None:
    found = compared(VANE, VANE.replace("grid 3 x 3", "grid 3 x 3  allowance 3/8in"))
    assert {each.kind for each in found.matches} == {"changed"} and found.redrawn
    assert all(each.distance == pytest.approx(0, abs=1e-9) and not each.trimmed for each in found.matches)


def test_other_points_are_told_from_another_outline() -> None:
    found = compared(VANE, VANE.replace("grid 3 x 3", "grid 3 x 3  trim none"))
    assert any(each.trimmed for each in found.matches)
    assert not found.redrawn and {each.kind for each in found.matches} <= {"same", "changed"}


def test_a_round_seam_moved_outward_tells_by_how_much() -> None:
    round_one = (
        'edition 1\n\nblock "Moon" {\n  finished 6in\n  seam circle around center radius 2in\n'
        "  piece moon at center in light\n}\n"
    )
    found = compared(round_one, round_one.replace("radius 2in", "radius 2 1/8in"))
    assert found.distance == pytest.approx(0.125, abs=1e-3)
