"""`piecewright build` on quilts: what each option makes, on which paper, under what names; the same bytes
everywhere."""

from __future__ import annotations

import csv
import json
import os
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from support.block_files import HALVES, VANE, put
from support.command import Ended, piecewright, process

LETTER = (612, 792)  # points: 8.5in x 11in (ANSI/ASME Y14.1), 72 to the inch (ISO 32000)
A4 = (595.28, 841.89)  # points: 210mm x 297mm (ISO 216)
PARTS = ("picture", "supplies", "counts", "chart", "cutting", "templates")

QUILT = """edition 1
quilt "Harbour Watch" version 2 {
  use "Tidewater Vane" as vane with light = sand, medium = oat, background = oat
  use "Two Halves" as halves with pale = sand
  fabric dark  fabric sand  fabric oat
  set straight 4 across 4 down of 6in { alternate vane, halves }
  border 3in in dark
  binding 2 1/2in in dark  backing in oat  batting
}
"""
BLOCKS = VANE.partition("\n")[2] + HALVES.partition("\n")[2]
COLOURS = QUILT.replace("border", 'roles "Sea" main = dark\n  roles "Ember" main = oat\n  border').replace(
    "3in in dark", "3in in main"
)


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder that we stand in, with `watch.quilt`."""
    monkeypatch.chdir(tmp_path)
    put(tmp_path / "watch.quilt", QUILT + BLOCKS)
    return tmp_path


def build(*more: str, file: str = "watch.quilt", out: str = "out") -> Ended:
    """A build that goes well."""
    ended = piecewright("build", file, "--out", out, *more)
    assert ended.status == 0, ended.err
    return ended


def names(out: str = "out") -> list[str]:
    """Everything in a folder."""
    return sorted(os.listdir(out))


def numbers(out: str = "out") -> dict[str, Any]:
    """The numbers of the quilt, as JSON."""
    found: dict[str, Any] = json.loads(Path(out, "harbour-watch-v2-numbers.json").read_text())
    return found


def page_sizes(pdf: Path) -> list[tuple[float, float]]:
    """Width and height of every page, in points."""
    return [(float(page.mediabox.width), float(page.mediabox.height)) for page in PdfReader(pdf).pages]


def words_of(pdf: Path) -> list[str]:
    """The text of every page."""
    return [page.extract_text() for page in PdfReader(BytesIO(pdf.read_bytes())).pages]


# ---- what is made ------------------------------------------------------------------------------------------


def test_one_pdf_holds_the_whole_quilt(here: Path) -> None:
    ended = build()
    pages = words_of(here / "out" / "harbour-watch-v2.pdf")
    assert names() == ["harbour-watch-v2.pdf"]
    assert ended.out == f"Wrote out/harbour-watch-v2.pdf ({len(pages)} pages).\n"
    for number, page in enumerate(pages, 1):
        assert f"page {number} of {len(pages)}" in page
    text = "\n".join(pages)
    assert all(word in text for word in ("Harbour Watch", "Tidewater Vane", "Two Halves", "Batting"))


def test_each_colourway_is_a_pdf_of_its_own(here: Path) -> None:
    put(here / "watch.quilt", COLOURS + BLOCKS)
    build("--tables")
    stems = {name.partition("-v2")[0] for name in names()}
    assert stems == {"harbour-watch-sea", "harbour-watch-ember"} and len(names()) == 10
    border = {}
    for stem in stems:
        with Path("out", f"{stem}-v2-counts.csv").open(newline="") as stream:
            border[stem] = {row["fabric"] for row in csv.DictReader(stream) if row["of"] == "Borders"}
    assert border == {"harbour-watch-sea": {"dark"}, "harbour-watch-ember": {"oat"}}


def test_two_quilts_in_a_file_are_two_pdfs(here: Path) -> None:
    put(here / "watch.quilt", QUILT + QUILT.partition("\n")[2].replace("Harbour", "Dog") + BLOCKS)
    build()
    assert names() == ["dog-watch-v2.pdf", "harbour-watch-v2.pdf"]


@pytest.mark.parametrize("part", PARTS)
def test_each_part_is_a_file_with_just_its_pages(here: Path, part: str) -> None:
    build()
    build("--parts", part, out="part")
    assert names("part") == [f"harbour-watch-v2-{part}.pdf"]
    whole = {
        page.rpartition("page ")[0].partition("page ")[0]
        for page in words_of(here / "out" / "harbour-watch-v2.pdf")
    }
    alone = words_of(here / "part" / f"harbour-watch-v2-{part}.pdf")
    assert 0 < len(alone) < len(page_sizes(here / "out" / "harbour-watch-v2.pdf"))
    assert {page.rpartition("page ")[0].partition("page ")[0] for page in alone} <= whole


def test_all_parts_together_have_the_pages_of_the_whole(here: Path) -> None:
    build()
    build("--parts", "templates,picture", "--parts", "supplies,counts,chart,cutting,picture", out="parts")
    assert names("parts") == sorted(f"harbour-watch-v2-{part}.pdf" for part in PARTS)
    pages = [page_sizes(here / "parts" / name) for name in names("parts")]
    assert sum(map(len, pages)) == len(page_sizes(here / "out" / "harbour-watch-v2.pdf"))


def test_tables_are_csv_and_json_that_agree(here: Path) -> None:
    ended = build("--tables", "--parts", "picture")
    assert names() == [
        f"harbour-watch-v2-{each}"
        for each in ("counts.csv", "cutting.csv", "fabrics.csv", "numbers.json", "picture.pdf")
    ]
    assert all(f"Wrote out/{name}" in ended.out for name in names())
    told = numbers()
    for table in ("cutting", "counts", "fabrics"):
        with Path("out", f"harbour-watch-v2-{table}.csv").open(newline="") as stream:
            listed = list(csv.DictReader(stream))
        assert len(listed) == len(told[table])
        for row, record in zip(listed, told[table], strict=True):
            assert row == {key: str(record[key]) for key in row}


def test_a_quilt_of_plain_cloth_has_all_its_sheets_and_a_booklet(here: Path) -> None:
    text = QUILT.replace("{ alternate vane, halves }", "{ alternate plain dark, plain sand }")
    put(here / "plain.quilt", "\n".join(line for line in text.splitlines() if " use " not in f" {line} "))
    build("--tables", file="plain.quilt")
    build("--booklet", file="plain.quilt")
    assert len(PdfReader("out/harbour-watch-v2.pdf").pages) >= 4
    assert len(PdfReader("out/harbour-watch-v2-booklet.pdf").pages) >= 5


def test_blocks_written_in_the_quilts_file_are_made_too_when_asked(here: Path) -> None:
    build("--blocks")
    assert names() == ["harbour-watch-v2.pdf", "tidewater-vane-v2.pdf", "two-halves-v1.pdf"]
    build("--block", "two halves", out="one")
    assert names("one") == ["two-halves-v1.pdf"]


def test_block_and_quilt_of_one_title_get_files_of_their_own(here: Path) -> None:
    put(
        here / "watch.quilt",
        (QUILT + BLOCKS)
        .replace('"Two Halves"', '"Harbour Watch"')
        .replace('block "Harbour Watch"', 'block "Harbour Watch" version 2'),
    )
    build("--blocks")
    assert len(names()) == 3 and sum(name.startswith("harbour-watch") for name in names()) == 2


# ---- paper and formats -------------------------------------------------------------------------------------


@pytest.mark.parametrize(("paper", "size"), [("letter", LETTER), ("a4", A4)])
def test_every_page_is_of_the_paper_asked_for(here: Path, paper: str, size: tuple[float, float]) -> None:
    build("--paper", paper)
    for page in page_sizes(here / "out" / "harbour-watch-v2.pdf"):
        assert page == pytest.approx(size, abs=0.01)


def test_pictures_are_one_file_a_page(here: Path) -> None:
    build("--format", "pdf,svg,png", "--dpi", "36")
    pages = len(page_sizes(here / "out" / "harbour-watch-v2.pdf"))
    assert names() == sorted(
        [
            "harbour-watch-v2.pdf",
            *(
                f"harbour-watch-v2-page-{number}.{kind}"
                for number in range(1, pages + 1)
                for kind in ("svg", "png")
            ),
        ]
    )
    from PIL import Image

    for name in names():
        if name.endswith("png"):
            with Image.open(here / "out" / name) as picture:
                assert picture.size == (LETTER[0] / 2, LETTER[1] / 2)


@pytest.mark.parametrize("option", [("--kind", "finished"), ("--kind", "window"), ("--lines", "cut-dashed")])
def test_options_of_templates_change_template_pages_alone(here: Path, option: tuple[str, str]) -> None:
    build("--format", "svg", "--parts", ",".join(PARTS))
    build("--format", "svg", "--parts", ",".join(PARTS), *option, out="other")
    changed = {
        name
        for name in names()
        if not Path("other", name).exists()
        or Path("out", name).read_bytes() != Path("other", name).read_bytes()
    }
    assert changed and all("-templates-" in name for name in changed)


# ---- how it is cut -----------------------------------------------------------------------------------------


def test_ruler_margin_and_shop_change_what_is_cut_and_bought(here: Path) -> None:
    build("--tables", "--parts", "picture")
    inches = {fabric["name"]: fabric for fabric in numbers()["fabrics"]}
    assert all(fabric["buy_text"].endswith(" yd") for fabric in inches.values())

    build("--tables", "--parts", "picture", "--margin", "0in", out="bare")
    bare = {fabric["name"]: fabric for fabric in numbers("bare")["fabrics"]}
    assert all(
        fabric["margin"] == 0 and fabric["used"] == inches[name]["used"] for name, fabric in bare.items()
    )
    assert all(4.5 > fabric["buy"] - fabric["used"] >= 0 for fabric in bare.values())

    build("--tables", "--parts", "picture", "--margin", "100%", out="double")
    double = {fabric["name"]: fabric for fabric in numbers("double")["fabrics"]}
    assert all(fabric["margin"] == pytest.approx(fabric["used"]) for fabric in double.values())

    build("--tables", "--parts", "picture", "--buy", "metres", out="metres")
    metres = {fabric["name"]: fabric for fabric in numbers("metres")["fabrics"]}
    assert all(
        fabric["buy_text"].endswith(" m") and fabric["used"] == inches[name]["used"]
        for name, fabric in metres.items()
    )

    build("--tables", "--parts", "picture", "--ruler", "0.25cm", out="metric")
    told = numbers("metric")
    assert told["ruler_step"] == pytest.approx(0.25 / 2.54)
    assert all(fabric["buy_text"].endswith(" m") for fabric in told["fabrics"])
    for cut in told["cutting"]:
        if cut["kind"] != "template":
            steps = cut["width"] / told["ruler_step"]
            assert steps == pytest.approx(round(steps), abs=1e-6), cut


@pytest.mark.parametrize(
    ("option", "words"),
    [
        (("--parts", "cover"), "'cover'"),
        (("--parts", "picture,"), "picture, supplies"),
        (("--ruler", "1/7in"), "1/7in"),
        (("--margin", "a bit"), "a bit"),
        (("--margin", "900%"), "100%"),
        (("--margin", "-1in"), "-1in"),
        (("--buy", "ells"), "ells"),
        (("--block", "Harbour Watch"), "Harbour Watch"),
        (("--paper", "tabloid"), "tabloid"),
    ],
)
def test_what_is_not_known_is_refused_and_nothing_is_written(
    here: Path, option: tuple[str, str], words: str
) -> None:
    ended = piecewright("build", "watch.quilt", "--out", "out", *option)
    assert ended.status == 2 and words in ended.err and not Path("out").exists()


@pytest.mark.parametrize("option", [("--parts", "cutting"), ("--tables",)])
def test_what_is_for_quilts_is_refused_for_blocks(here: Path, option: tuple[str, ...]) -> None:
    ended = piecewright("build", put(here / "halves.block", HALVES), *option)
    assert ended.status == 2 and "for quilts" in ended.err


# ---- where it is read from ---------------------------------------------------------------------------------


def test_folders_bring_their_quilts_and_blocks(here: Path) -> None:
    put(here / "work" / "watch.quilt", QUILT)
    put(here / "work" / "vane.block", VANE)
    put(here / "work" / "more" / "halves.block", HALVES)
    put(here / "work" / "notes.txt", "quilt")
    put(here / "work" / "halves.block", HALVES.replace("Two Halves", "Three Halves"))
    ended = piecewright("build", "work", "--out", "out")
    assert ended.status == 1 and 'no block "Two Halves"' in ended.err
    assert names() == ["three-halves-v1.pdf", "tidewater-vane-v2.pdf", "two-halves-v1.pdf"]
    ended = piecewright("build", "work", "--out", "out", "--shelf", "work/more")
    assert ended.status == 0 and "harbour-watch-v2.pdf" in names()


def test_standard_input_is_a_quilt_like_any_other(here: Path) -> None:
    build()
    ended = piecewright("build", "-", "--out", "piped", stdin=(QUILT + BLOCKS).encode())
    assert ended.status == 0, ended.err
    one, other = (Path(folder, "harbour-watch-v2.pdf").read_bytes() for folder in ("piped", "out"))
    assert one == other


@pytest.mark.parametrize(
    "around",
    [
        {"TZ": "Pacific/Kiritimati", "LC_ALL": "C", "PYTHONHASHSEED": "1"},
        {
            "TZ": "America/St_Johns",
            "LC_ALL": "tr_TR.UTF-8",
            "LANG": "de_DE.UTF-8",
            "PYTHONHASHSEED": "77",
            "HOME": "/nowhere",
            "XDG_CONFIG_HOME": "/nowhere",
            "SOURCE_DATE_EPOCH": "1",
            "FONTCONFIG_FILE": "/nowhere",
        },
    ],
)
def test_bytes_are_the_same_whatever_is_around(here: Path, around: dict[str, str]) -> None:
    put(here / "watch.quilt", COLOURS + BLOCKS)
    build("--tables")
    ended = process("build", "watch.quilt", "--out", "away", "--tables", env=around, folder=here)
    assert ended.status == 0, ended.err
    assert names("away") == names() and len(names()) == 10
    for name in names():
        assert Path("away", name).read_bytes() == Path("out", name).read_bytes(), name
