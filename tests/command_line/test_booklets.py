"""`piecewright build --booklet`, `--parts` of a block, `--sew`: what is written and what is refused."""

from __future__ import annotations

import csv
import os
from io import BytesIO
from pathlib import Path

import pytest
from piecewright.command_line import booklets
from piecewright.sheets.booklet.block_book import BLOCK_PARTS, WAYS
from pypdf import PdfReader
from support.block_files import VANE_FILE, put
from support.command import piecewright

CABIN = "Log Cabin"


def marks_of(pdf: Path) -> list[str]:
    """The bookmarks of the first level."""
    outline = PdfReader(BytesIO(pdf.read_bytes())).outline
    return [str(each.title) for each in outline if not isinstance(each, list)]


def test_the_command_line_knows_the_parts_and_ways_there_are() -> None:
    assert booklets.PARTS == BLOCK_PARTS and booklets.WAYS == WAYS


def test_a_booklet_is_one_pdf_and_one_page_of_html(here: Path) -> None:
    ended = piecewright("build", VANE_FILE, "--booklet", "--format", "pdf,html")
    assert (ended.status, ended.err) == (0, "")
    assert sorted(os.listdir(here)) == ["tidewater-vane-v2-booklet.html", "tidewater-vane-v2-booklet.pdf"]
    assert "Wrote tidewater-vane-v2-booklet.html." in ended.out
    cover, contents, *_ = marks_of(here / "tidewater-vane-v2-booklet.pdf")
    assert cover == "Cover" and contents.startswith("Contents")
    html = (here / "tidewater-vane-v2-booklet.html").read_text()
    assert html.startswith("<!DOCTYPE html>") and "<h1>Tidewater Vane</h1>" in html


def test_two_booklets_have_the_same_bytes(here: Path) -> None:
    for folder in ("one", "two"):
        asked = ("build", VANE_FILE, "--booklet", "--format", "pdf,html", "--out", folder)
        assert piecewright(*asked).status == 0
    for name in os.listdir(here / "one"):
        assert (here / "one" / name).read_bytes() == (here / "two" / name).read_bytes()


@pytest.mark.parametrize(
    "way, chapter",
    [
        ("foundation", "Foundations"),
        ("papers", "Paper pieces"),
        ("Tidewater Vane=papers", "Paper pieces"),
        ("templates", "Templates"),
    ],
)
def test_the_maker_chooses_how_a_block_is_sewn(here: Path, way: str, chapter: str) -> None:
    assert piecewright("build", VANE_FILE, "--booklet", "--sew", way).status == 0
    assert chapter in marks_of(here / "tidewater-vane-v2-booklet.pdf")


def test_the_last_word_for_a_title_counts_and_goes_before_that_for_all(here: Path) -> None:
    ways = ("--sew", "tidewater vane=papers", "--sew", "foundation")
    assert piecewright("build", VANE_FILE, "--booklet", *ways).status == 0
    assert "Paper pieces" in marks_of(here / "tidewater-vane-v2-booklet.pdf")


@pytest.mark.parametrize("part", BLOCK_PARTS)
def test_every_part_of_a_block_can_be_had_alone(here: Path, part: str) -> None:
    ended = piecewright("build", VANE_FILE, "--parts", part)
    assert ended.status == 0 and os.listdir(here) == [f"tidewater-vane-v2-{part}.pdf"]


@pytest.mark.parametrize("options, words", [
    (("--format", "html"), "--format html is for booklets: add --booklet."),
    (("--sew", "glue", "--booklet"), "'glue' is not one of templates, foundation, papers"),
    (("--sew", "Log Cabin=papers", "--booklet"), "there is no block 'Log Cabin' in what was read"),
    (("--parts", "cutting"), "a block has needs, chart"),
    (("--parts", "sleeves"), "'sleeves' is not one of"),
])  # fmt: skip
def test_what_cannot_be_is_refused(here: Path, options: tuple[str, ...], words: str) -> None:
    ended = piecewright("build", VANE_FILE, *options)
    assert ended.status == 2 and words in " ".join(ended.err.split())


QUILT = """edition 1
quilt "Heron Reach" version 1 {
  use "Ohio Star" as star with background = light
  use "Shoo Fly" as fly
  fabric light
  fabric dark
  roles background = light
  set straight 2 across 2 down of 6in {
    row star, fly
    row fly, star
  }
  border 2in in dark
}
"""


def test_a_quilt_has_a_booklet_with_each_block_as_its_maker_chose(here: Path) -> None:
    put(here / "heron.quilt", QUILT)
    ended = piecewright(
        "build",
        "heron.quilt",
        "--booklet",
        "--format",
        "pdf,html",
        "--sew",
        "Shoo Fly=foundation",
        "--out",
        "out",
    )
    assert ended.status == 0, ended.err
    assert sorted(os.listdir("out")) == ["heron-reach-v1-booklet.html", "heron-reach-v1-booklet.pdf"]
    names = marks_of(Path("out/heron-reach-v1-booklet.pdf"))
    assert "Shoo Fly: foundations" in names and "Ohio Star: templates" in names


def cuts_of(folder: str) -> list[tuple[str, str, str]]:
    """Kind, count and purpose of every cut of the quilt's table."""
    with open(f"{folder}/heron-reach-v1-cutting.csv", newline="") as file:
        return [(row["kind"], row["cuts"], row["for"]) for row in csv.DictReader(file)]


def test_a_quilts_cloth_is_cut_as_its_blocks_are_sewn_whatever_was_made_before(here: Path) -> None:
    """Two Shoo Flies: a centre and corners of two triangles, four sides; 13 patches each."""
    put(here / "heron.quilt", QUILT)
    for folder, way in (("one", "templates"), ("two", "Shoo Fly=foundation"), ("three", "templates")):
        ended = piecewright("build", "heron.quilt", "--booklet", "--tables", "--sew", way, "--out", folder)
        assert ended.status == 0, ended.err
    assert cuts_of("one") == cuts_of("three") != cuts_of("two")
    flies = [row for row in cuts_of("two") if row[2].startswith("Shoo Fly")]
    assert all("patch" in purpose for *_, purpose in flies)
    assert sum(int(count) for _, count, _ in flies) == 2 * 13
    assert [row for row in cuts_of("two") if row not in flies] == [
        row for row in cuts_of("one") if not row[2].startswith("Shoo Fly")
    ]


def test_sheets_with_templates_are_cut_by_them(here: Path) -> None:
    put(here / "heron.quilt", QUILT)
    for folder, more in (("one", ()), ("two", ("--booklet", "--sew", "templates"))):
        assert piecewright("build", "heron.quilt", "--tables", *more, "--out", folder).status == 0
    assert cuts_of("one") == cuts_of("two")
    for way in ("foundation", "Shoo Fly=papers"):
        refused = piecewright("build", "heron.quilt", "--sew", way, "--out", "three")
        said = " ".join(refused.err.split())
        assert refused.status == 2 and "--sew is for booklets and their parts" in said
    assert not Path("three").exists()


def test_a_quilt_has_the_parts_of_both(here: Path) -> None:
    put(here / "heron.quilt", QUILT)
    ended = piecewright("build", "heron.quilt", "--parts", "steps,picture,papers", "--out", "out")
    assert ended.status == 0, ended.err
    parts = ("papers", "picture", "steps")
    assert sorted(os.listdir("out")) == [f"heron-reach-v1-{part}.pdf" for part in parts]
