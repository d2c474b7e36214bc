"""A block's title in the place of a file: here, on a shelf and in the library that ships."""

from __future__ import annotations

from pathlib import Path

import pytest
from support.block_files import HALVES, VANE, put, titled
from support.command import piecewright


def test_library_block_is_built_shown_explained_and_resized_by_title(here: Path) -> None:
    assert "Wrote ohio-star-v1.pdf" in piecewright("build", "Ohio Star").out
    assert "Wrote ohio-star-v1-picture.png" in piecewright("show", "ohio star").out
    assert piecewright("explain", "Ohio Star").out.startswith("Ohio Star, version 1")
    assert "Ohio Star, version 1" in piecewright("resize", "Ohio Star").out
    assert piecewright("check", "Ohio Star").status == 0
    assert sorted(each.name for each in here.iterdir()) == ["ohio-star-v1-picture.png", "ohio-star-v1.pdf"]


def test_another_name_of_one_block_serves_and_one_of_several_blocks_is_told(tmp_path: Path) -> None:
    for name, title in (("a", "First"), ("b", "Second"), ("c", "Third")):
        also = "Shared" if name != "c" else "Alone"
        text = titled(title).replace("finished 4in", f'also "{also}"\n  finished 4in')
        put(tmp_path / f"{name}.block", text)
    ended = piecewright("check", "Alone", "--shelf", tmp_path)
    assert ended.status == 0
    ended = piecewright("check", "Shared", "--shelf", tmp_path)
    assert ended.status == 2 and "another name of 'First' and 'Second'" in ended.err


def test_file_here_comes_before_the_title_and_the_near_before_the_far(here: Path, tmp_path: Path) -> None:
    put(tmp_path / "shelf" / "star.block", titled("Ohio Star"))
    assert "Two Halves" not in piecewright("explain", "Ohio Star", "--shelf", tmp_path / "shelf").out
    assert "2 pieces" in piecewright("explain", "Ohio Star", "--shelf", tmp_path / "shelf").out
    put(here / "Ohio Star", VANE)
    assert "Tidewater Vane" in piecewright("explain", "Ohio Star").out


def test_newest_version_or_the_one_asked_for(here: Path) -> None:
    put(here / "old.block", titled("Barge", 1))
    put(here / "new.block", titled("Barge", 3))
    assert piecewright("explain", "Barge").out.startswith("Barge, version 3")
    assert piecewright("explain", "Barge@1").out.startswith("Barge, version 1")
    ended = piecewright("explain", "Barge@2")
    assert ended.status == 2 and "There are versions 1 and 3." in ended.err


def test_only_the_block_named_is_made_of_a_file_of_several(here: Path) -> None:
    others = HALVES + VANE.replace("edition 1\n", "")
    put(here / "both.block", others)
    ended = piecewright("build", "Two Halves")
    assert ended.status == 0 and [each.name for each in here.glob("*.pdf")] == ["two-halves-v1.pdf"]


@pytest.mark.parametrize("command", ["build", "check", "show", "explain", "resize"])
def test_misspelt_title_offers_the_nearest(here: Path, command: str) -> None:
    ended = piecewright(command, "Ohoi Star")
    assert ended.status == 2 and "Did you mean 'Ohio Star'?" in ended.err


def test_mistyped_command_and_a_file_without_one_are_led_on(here: Path) -> None:
    assert "Did you mean 'build'?" in piecewright("biuld", "x.block").err
    ended = piecewright("../files/vane.block")
    assert ended.status == 2 and "'piecewright build ../files/vane.block' makes its sheets" in ended.err
