"""Two files with a block of one title and version: no plastic of one is taken for the other's unsaid."""

from __future__ import annotations

from pathlib import Path

import pytest
from support.block_files import HALVES, put
from support.command import piecewright

PAIR = """\
edition 1

block "Row of Two" {
  grid 2 x 1 of 4in
  use "Two Halves" as halves
  row halves, halves
}
"""
SLANTED = HALVES.replace("seam top-left", "seam (1in from top-left to top-right)")
RENAMED = HALVES.replace("in dark", "in navy").replace("piece one", "piece first")


@pytest.fixture
def pair(here: Path) -> Path:
    return put(here / "pair.block", PAIR)


def test_other_outlines_on_one_shelf_are_an_error_where_one_is_used(pair: Path) -> None:
    put(pair.parent / "a.block", HALVES)
    put(pair.parent / "b.block", SLANTED)
    for command in ("check", "build", "show"):
        ended = piecewright(command, "pair.block")
        assert ended.status == 1
        assert "error[block-drawn-twice]" in ended.out + ended.err
        assert "stands in `a.block` and in `b.block`" in ended.out + ended.err
    (made,) = [each.name for each in pair.parent.iterdir() if each.suffix != ".block"]
    assert made.endswith("-unfinished.png")  # what `show` makes of a block with an error in its units


def test_same_outlines_are_a_warning(pair: Path) -> None:
    put(pair.parent / "a.block", HALVES)
    put(pair.parent / "b.block", RENAMED)
    ended = piecewright("check", "pair.block")
    assert ended.status == 0 and "warning[block-on-shelf-twice]" in ended.out


def test_a_nearer_block_with_other_outlines_is_taken_and_told(pair: Path, tmp_path: Path) -> None:
    put(pair.parent / "a.block", SLANTED)
    put(tmp_path / "shelf" / "b.block", HALVES)
    ended = piecewright("check", "pair.block", "--shelf", tmp_path / "shelf")
    assert ended.status == 0 and "warning[block-hides-another]" in ended.out
    put(pair.parent / "a.block", RENAMED)
    assert piecewright("check", "pair.block", "--shelf", tmp_path / "shelf").out == "No mistakes in 1 file.\n"


def test_one_that_is_used_by_title_at_the_command_line(here: Path) -> None:
    put(here / "a.block", HALVES)
    put(here / "b.block", SLANTED)
    for command in (("build", "Two Halves"), ("compare", "Two Halves@1", "a.block")):
        ended = piecewright(*command)
        assert ended.status == 1 and "error[block-drawn-twice]" in ended.err


def test_blocks_that_use_each_other_from_file_to_file_end(here: Path) -> None:
    for name in ("a", "b"):
        put(here / f"{name}.block", HALVES + PAIR.replace("edition 1\n", ""))
    top = PAIR.replace("Row of Two", "Top").replace("Two Halves", "Row of Two")
    top = top.replace("2 x 1 of 4in", "1 x 2 of 8in x 4in").replace(
        "row halves, halves", "row halves\n  row halves"
    )
    put(here / "top.block", top)
    ended = piecewright("check", "top.block")
    assert ended.status == 0 and "block-on-shelf-twice" in ended.out
