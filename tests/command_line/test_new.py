"""`piecewright new`: a file begun from a few answers builds as it stands."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest
from support.block_files import FAULTY, HALVES, put
from support.command import piecewright


@pytest.mark.parametrize("size", ["9in", "24cm", "7 1/2in"])
@pytest.mark.parametrize("grid", ["3x3", "1x1", "5x4"])
def test_a_block_begun_builds_as_it_stands_in_the_house_style(here: Path, size: str, grid: str) -> None:
    ended = piecewright("new", "block", "Pebble Path", "--size", size, "--grid", grid)
    assert ended.status == 0 and "Wrote pebble-path.block." in ended.out
    text = (here / "pebble-path.block").read_text()
    assert f"finished {size}" in text and "#" in text
    assert piecewright("check", "--strict", "pebble-path.block").out == "No mistakes in 1 file.\n"
    assert piecewright("fmt", "--check", "pebble-path.block").status == 0
    assert piecewright("build", "pebble-path.block").status == 0


def test_a_quilt_begun_has_a_fabric_for_every_role_and_builds(here: Path) -> None:
    put(here / "halves.block", HALVES)
    uses = ("--use", "Ohio Star", "--use", "Two Halves", "--use", "Ohio Star")
    ended = piecewright("new", "quilt", 'The "Harbour" Throw', *uses, "--set", "3x3", "--size", "24cm")
    assert ended.status == 0
    text = (here / "the-harbour-throw.quilt").read_text()
    assert text.count("use ") == 2 and "width 110cm" in text and "3 across 3 down of 24cm" in text
    assert piecewright("check", "the-harbour-throw.quilt").status == 0
    assert piecewright("fmt", "--check", "the-harbour-throw.quilt").status == 0
    assert piecewright("build", "the-harbour-throw.quilt").status == 0


def test_what_is_here_stays_and_what_is_wrong_is_told(here: Path) -> None:
    put(here / "tide.block", "mine")
    put(here / "faulty.block", FAULTY)
    for arguments, told in (
        (("block", "Tide"), "stays as it is"),
        (("block",), "title"),
        (("block", "x" * 200), ""),
        (("block", "Tide Two", "--size", "9"), "is not a length"),
        (("block", "Tide Two", "--grid", "0x3"), ""),
        (("block", "Tide Two", "--use", "Ohio Star"), "--use is not for a block"),
        (("quilt", "Tide Two"), "--use"),
        (("quilt", "Tide Two", "--use", "Ohoi Star"), "Did you mean 'Ohio Star'?"),
        (("quilt", "Tide Two", "--use", "Gate Test"), "has a mistake"),
        (("quilt", "Tide Two", "--use", "tide.block"), "is a file"),
    ):
        ended = piecewright("new", *arguments)
        assert ended.status in (1, 2) and ended.out == "" and told in ended.err, arguments
    assert sorted(each.name for each in here.iterdir()) == ["faulty.block", "tide.block"]
    assert (here / "tide.block").read_text() == "mine"


def test_on_a_terminal_it_asks_and_asks_again(here: Path) -> None:
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "piecewright", "new", "block"]
    running = subprocess.Popen(
        command, stdin=theirs, stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=here
    )
    os.write(ours, b"Tide Pool\n24cm\nfour\n4x4\n")
    out, err = running.communicate(timeout=60)
    os.close(ours)
    os.close(theirs)
    assert running.returncode == 0 and b"Wrote tide-pool.block." in out and b"'four' is not a grid" in err
    assert "grid 4 x 4" in (here / "tide-pool.block").read_text()
