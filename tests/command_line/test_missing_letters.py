"""Letters that the sheets' typeface lacks are told at the words, and print alike in every kind of file."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from piecewright.sheets.drawing.lettering import lost_letters, printable
from support.command import piecewright
from support.pdf_reading import read_pages

TEXT = """\
edition 1
block "Sea 海 Star" {
  finished 6in
  also "Ａ Ṩ"
  maker "Wren 🌊"
  note "Straße, Привет, Ωmega"
  note "שלום"
  seam top -- bottom
}
quilt "Bay 湾" {
  use "Sea 海 Star" as sea
  fabric background "Ткань 布"
  roles "Tide" background = background
  set straight 2 across 2 down { alternate sea }
}
"""


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "sea.block").write_text(TEXT[: TEXT.index("quilt")], encoding="utf-8")
    (tmp_path / "bay.quilt").write_text(TEXT, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def told(name: str) -> list[tuple[int, int]]:
    ended = piecewright("check", name, "--format", "json")
    assert ended.status == 0
    said = [each for each in json.loads(ended.out) if each["code"] == "letter-missing"]
    return [(each["line"], each["column"]) for each in said]


def test_each_text_with_such_letters_is_told_at_its_words(here: Path) -> None:
    """The Greek and Cyrillic note is printed as it is; the title after `use` is told where it is written."""
    assert told("sea.block") == [(2, 7), (4, 8), (5, 9), (7, 8)]
    assert told("bay.quilt") == [(2, 7), (4, 8), (5, 9), (7, 8), (10, 7), (12, 21)]


def test_the_warning_shows_what_is_printed_and_the_build_goes_on(here: Path) -> None:
    ended = piecewright("build", "sea.block")
    assert ended.status == 0 and "letter-missing" in ended.err
    assert "printed as \u201cSea ☐ Star\u201d" in ended.err and "printed as \u201cA S\u201d" in ended.err
    assert piecewright("check", "sea.block", "--strict").status == 1


def test_what_is_shown_is_what_every_kind_of_file_prints(here: Path) -> None:
    assert piecewright("build", "sea.block", "--format", "pdf,svg").status == 0
    [pdf] = here.glob("*.pdf")
    assert any("Sea ☐ Star" in text.text for page in read_pages(pdf.read_bytes()) for text in page.texts)
    svg = "".join(path.read_text(encoding="utf-8") for path in here.glob("*.svg"))
    assert "Sea ☐ Star" in svg and "Wren ☐" in svg and "Straße, Привет, Ωmega" in svg
    assert not set("海🌊Ａש") & set(svg)


@pytest.mark.parametrize(
    "text, printed, lost",
    [
        ("plain", "plain", ""),
        ("Straße", "Straße", ""),
        ("e\u0301", "é", ""),
        ("㎝ Ａ", "cm A", "㎝Ａ"),
        ("🌊\ufe0f", "☐", "🌊"),
        ("a\u200db", "ab", ""),
        ("a\u0489", "a", "\u0489"),
        ("\u202eab", "ab", ""),
    ],
)
def test_letters_that_are_printed_otherwise_are_named(text: str, printed: str, lost: str) -> None:
    assert (printable(text), "".join(lost_letters(text))) == (printed, lost)
    assert printable(printed) == printed
