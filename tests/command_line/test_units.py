"""One choice of units: what is written in centimetres is told in them to the last word, and what is in inches
in those; only the check marks of a page are in both."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path
from typing import Final

import pytest
from pypdf import PdfReader
from support.block_files import VANE, put
from support.command import piecewright

STAR: Final = """\
edition 1

block "Sound Star" version 1 {
  finished 24cm
  grid 4 x 4
  allowance 0.75cm
  turn 4 about center {
    seam B1 -- C2 -- D1
    seam B1 -- B2 -- C2
    piece beam at between B1, B2, C2 in dark
    piece sky at between B1, C2, D1 in light
  }
  piece middle at center in medium
}

block "Bow" version 1 {
  finished 24cm
  allowance 0.75cm
  seam (8cm from A1 to B1) ~~ (8cm from A1 to A2) around A1
  piece pie at A1 in dark
  piece rest at B2 in light
}
"""
THROW: Final = """\
edition 1

quilt "Sound Throw" version 1 {
  use "Sound Star" version 1 as star
  use "Bow" version 1 as bow
  fabric dark "Navy" width 110cm
  fabric light "Oat" width 110cm shrinks 3%
  fabric medium "Rust" width 110cm
  allowance 7.5mm
  set straight 3 across 3 down of 24cm { alternate star, bow }
  sashing 4cm in light posts in dark
  border 8cm in dark mitred
  border 5cm in medium
  binding 6cm in dark
  backing in light 10cm over
  batting 10cm over
}
"""
NUMBER: Final = "[0-9\u00bc-\u00be\u2150-\u215e]"
INCH: Final = re.compile(rf"{NUMBER}+(?:in|yd)\b|{NUMBER} ?(?:yd|inch)|\binch|\byard|sq in\b")
CENTIMETRE: Final = re.compile(rf"{NUMBER} ?(?:cm|mm|metre)\b|centimetre|millimetre|sq cm")
CHECKED: Final = re.compile(r"\b1in\b|5cm\b|2\.54cm")
"""What the page is checked by, printed in both on purpose."""


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Sheets and booklets of a block and a quilt in centimetres, and of a block in inches."""
    folder = tmp_path_factory.mktemp("units")
    put(folder / "star.block", STAR)
    put(folder / "throw.quilt", THROW)
    put(folder / "vane.block", VANE)
    for name, kind in (("star.block", "cm"), ("throw.quilt", "cm"), ("vane.block", "in")):
        for more in ((), ("--booklet", "--format", "pdf,html"), ("--kind", "finished", "--booklet")):
            out = folder / kind / f"{name}-{len(more)}"
            assert piecewright("build", folder / name, "--out", out, *more).status == 0
    for way in ("foundation", "papers"):
        out = folder / "cm" / way
        assert (
            piecewright("build", folder / "star.block", "--booklet", "--sew", way, "--out", out).status == 0
        )
    return folder


def words_in(folder: Path) -> list[str]:
    """Every line of every page, without what the page is checked by."""
    lines = [
        line
        for path in sorted(folder.rglob("*.pdf"))
        for page in PdfReader(path).pages
        for line in page.extract_text().splitlines()
    ]
    for path in sorted(folder.rglob("*.html")):
        text = re.sub(r"(?s)<style.*?</style>|<script.*?</script>", "", path.read_text(encoding="utf-8"))
        lines += [unescape(each) for each in re.sub(r"<[^>]*>", "\n", text).splitlines()]
    assert len(lines) > 200
    return [CHECKED.sub("", line) for line in lines]


def test_no_page_of_what_is_written_in_centimetres_tells_an_inch(made: Path) -> None:
    assert [line for line in words_in(made / "cm") if INCH.search(line)] == []


def test_no_page_of_what_is_written_in_inches_tells_a_centimetre(made: Path) -> None:
    assert [line for line in words_in(made / "in") if CENTIMETRE.search(line)] == []


@pytest.mark.parametrize("command", [("explain",), ("resize",), ("check",)])
def test_commands_tell_it_in_centimetres_too(made: Path, command: tuple[str, ...]) -> None:
    ended = piecewright(*command, made / "star.block")
    assert ended.status == 0 and not INCH.search(ended.out + ended.err)


def test_the_choice_wins_over_the_file_and_goes_with_the_ruler(made: Path) -> None:
    told = piecewright("explain", made / "vane.block", "--units", "cm").out
    assert "22.86cm" in told and not INCH.search(told)
    told = piecewright("explain", made / "star.block", "--units", "in").out
    assert "about 9 1/2in" in told or "9.449in" in told
    ended = piecewright("explain", made / "star.block", "--units", "cm", "--ruler", "1/8in")
    assert ended.status == 2 and "choose one of the two" in ended.err


@pytest.mark.parametrize("ruler", ["1mm", "2.5mm", "5mm"])
def test_cuts_lie_on_the_marks_of_a_metric_ruler(made: Path, ruler: str) -> None:
    told = piecewright("explain", made / "throw.quilt", "--ruler", ruler).out
    assert f"marked every {float(ruler[:-2]) / 10:g}cm" in told and not INCH.search(told)


def test_a_message_tells_lengths_in_the_units_of_the_file(tmp_path: Path) -> None:
    wide = STAR.replace("allowance 0.75cm", "allowance 9cm", 1)
    ended = piecewright("check", put(tmp_path / "wide.block", wide))
    assert ended.status == 1 and "9cm" in ended.out and not INCH.search(ended.out)
