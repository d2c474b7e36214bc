"""`piecewright show`: blocks as pictures."""

from __future__ import annotations

import os
import re
import struct
from pathlib import Path

import pytest
from support.block_files import FAULTY, HALVES, VANE, put
from support.command import piecewright


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder that we stand in, with two blocks in one file."""
    put(tmp_path / "two.block", VANE + HALVES.partition("\n")[2])
    monkeypatch.chdir(tmp_path)
    return tmp_path


def dots(png: Path) -> tuple[int, int]:
    """Width and height of a PNG (PNG specification, IHDR)."""
    width, height = struct.unpack(">II", png.read_bytes()[16:24])
    return width, height


def test_every_block_is_drawn(here: Path) -> None:
    ended = piecewright("show", "two.block")
    assert (ended.status, ended.err) == (0, "")
    assert ended.out == "Wrote tidewater-vane-v2-picture.png.\nWrote two-halves-v1-picture.png.\n"


def test_formats_folder_and_title_are_chosen(here: Path) -> None:
    ended = piecewright(
        "show", "two.block", "--format", "svg,pdf", "--block", "Two Halves", "--out", "pictures"
    )
    assert ended.status == 0
    assert sorted(os.listdir(here / "pictures")) == ["two-halves-v1-picture.pdf", "two-halves-v1-picture.svg"]
    assert (here / "pictures" / "two-halves-v1-picture.svg").read_text().lstrip().startswith("<")
    assert (here / "pictures" / "two-halves-v1-picture.pdf").read_bytes().startswith(b"%PDF-")


def test_size_and_dpi_set_the_dots(here: Path) -> None:
    for folder, size, dpi in (("a", "4in", "50"), ("b", "8in", "50"), ("c", "4in", "100")):
        assert piecewright("show", "two.block", "--size", size, "--dpi", dpi, "--out", folder).status == 0
    once, larger, finer = (dots(here / name / "two-halves-v1-picture.png") for name in "abc")
    assert finer == pytest.approx((2 * once[0], 2 * once[1]), abs=2)
    assert larger[0] > 1.5 * once[0]


@pytest.mark.parametrize(
    "arguments",
    [
        ("--size", "4"),
        ("--size", "0in"),
        ("--size", "500in"),
        ("--dpi", "1"),
        ("--size", "40in", "--dpi", "1200"),
        ("--format", "gif"),
        ("--block", "Nobody"),
    ],
)
def test_what_show_cannot_draw_is_refused(here: Path, arguments: tuple[str, ...]) -> None:
    ended = piecewright("show", "two.block", *arguments)
    assert ended.status == 2 and ended.out == ""
    assert os.listdir(here) == ["two.block"]


def test_faulty_file_is_drawn_as_far_as_it_is_sound(here: Path) -> None:
    ended = piecewright("show", "-", stdin=FAULTY.encode())
    assert ended.status == 1 and "<stdin>:5:18:" in ended.err and "-unfinished.png" in ended.out
    assert sorted(os.listdir(here)) == ["gate-test-v1-unfinished.png", "two.block"]


def test_a_drawing_without_letters_and_a_page_to_colour(here: Path) -> None:
    for option in ("unlettered", "colouring"):
        ended = piecewright("show", "two.block", "--format", "svg", "--block", "Two Halves", f"--{option}")
        assert (ended.status, ended.out) == (0, f"Wrote two-halves-v1-{option}.svg.\n")
    piecewright("show", "two.block", "--format", "svg", "--block", "Two Halves")
    lettered, bare, lines = (
        (here / f"two-halves-v1-{kind}.svg").read_text("utf-8")
        for kind in ("picture", "unlettered", "colouring")
    )
    colours = [set(re.findall("#[0-9a-f]{6}", text)) - {"#000000", "#ffffff"} for text in (bare, lines)]
    assert len(lettered) > len(bare) > len(lines)
    assert colours[0] and not colours[1]


def test_all_pictures_stand_on_one_sheet(here: Path) -> None:
    ended = piecewright("show", "two.block", "--side-by-side", "--dpi", "100")
    assert (ended.status, ended.out) == (0, "Wrote tidewater-vane-v2-side-by-side.png.\n")
    width, height = dots(here / "tidewater-vane-v2-side-by-side.png")
    assert max(width, height) == 400 and width > height
