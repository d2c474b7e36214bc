"""A folder's settings file: what it says holds for every command given there, and options win over it."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path

import pytest
from support.block_files import HALVES, VANE, VANE_FILE, put, titled
from support.command import piecewright


def settings(folder: Path, text: str) -> Path:
    return put(folder / "piecewright.toml", text)


def page_of(path: Path) -> str:
    told = subprocess.run(["pdfinfo", path], capture_output=True, text=True, check=True).stdout
    return next(line for line in told.splitlines() if line.startswith("Page size"))


def words_of(path: Path) -> str:
    return subprocess.run(["pdftotext", path, "-"], capture_output=True, text=True, check=True).stdout


def test_paper_and_maker_of_the_folder_are_printed_and_an_option_wins(here: Path) -> None:
    settings(here, 'paper = "a4"\nmaker = "Wren Halloway"\n')
    assert piecewright("build", VANE_FILE).status == 0
    pdf = here / "tidewater-vane-v2.pdf"
    assert "(A4)" in page_of(pdf) and "Wren Halloway" in words_of(pdf)
    assert piecewright("build", VANE_FILE, "--paper", "letter").status == 0
    assert "(letter)" in page_of(pdf)
    assert "[default: a4]" in " ".join(piecewright("build", "--help").out.split())


def test_a_maker_that_the_file_names_and_a_block_from_elsewhere_keep_theirs(here: Path) -> None:
    settings(here, 'maker = "Wren Halloway"\n')
    own = VANE.replace("finished 9in", 'finished 9in\n  maker "Tam Orrin"')
    put(here / "own.block", own)
    assert piecewright("build", "own.block", "Ohio Star").status == 0
    assert "Wren" not in words_of(here / "tidewater-vane-v2.pdf")
    assert "Wren" not in words_of(here / "ohio-star-v1.pdf")


def test_shelves_and_ruler_of_the_folder_serve_every_command(here: Path, tmp_path: Path) -> None:
    put(tmp_path / "guild" / "barge.block", titled("Barge"))
    settings(here, 'shelves = ["../guild"]\nruler = "0.25cm"\n')
    assert piecewright("explain", "Barge").out.startswith("Barge, version 1")
    assert "Barge" in piecewright("find", "barge").out
    put(here / "halves.block", HALVES.replace("finished 4in", "finished 8cm  allowance 0.75cm"))
    assert "cut to 0.25cm" in piecewright("resize", "halves.block").out


@pytest.mark.parametrize(
    "text, code, place",
    [
        ('papre = "a4"\n', "setting-unknown", "1:1"),
        ('paper = "a4"\nruler = "1/7in"\n', "setting-wrong", "2:1"),
        ("paper = 4\n", "setting-wrong", "1:1"),
        ('shelves = "guild"\n', "setting-wrong", "1:1"),
        ('shelves = ["nowhere"]\n', "setting-wrong", "1:1"),
        ('maker = ""\n', "setting-wrong", "1:1"),
        ('measured = "4in"\n', "setting-wrong", "1:1"),
        ("paper = a4\n", "settings-damaged", "1:9"),
        ('paper = "\xff"\n'.encode("latin-1").decode("latin-1"), "setting-wrong", "1:1"),
    ],
)
def test_settings_with_a_mistake_stop_every_command_but_the_help(
    here: Path, text: str, code: str, place: str
) -> None:
    settings(here, text)
    ended = piecewright("build", VANE_FILE)
    assert ended.status == 1 and f"error[{code}]" in ended.err and f"piecewright.toml:{place}:" in ended.err
    assert sorted(each.name for each in here.iterdir()) == ["piecewright.toml"]
    assert piecewright("build", "--help").status == 0


def test_a_mistyped_setting_offers_the_nearest(here: Path) -> None:
    settings(here, 'papre = "a4"\n')
    assert "did you mean `paper`" in piecewright("check", VANE_FILE).err.lower()


def test_explain_tells_the_settings_among_the_defaults(here: Path) -> None:
    settings(here, 'paper = "a4"\nruler = "0.25cm"\n')
    out = piecewright("explain", VANE_FILE).out
    defaults = out[out.index("Defaults in force") :]
    assert "- paper: a4, by this folder's piecewright.toml" in defaults
    told = json.loads(piecewright("explain", VANE_FILE, "--format", "json").out)
    assert told["settings"] == {"paper": "a4", "ruler": "0.25cm"}
