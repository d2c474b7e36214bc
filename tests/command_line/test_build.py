"""`piecewright build`: what is written, under what names, and what keeps it from being written."""

from __future__ import annotations

import errno
import os
import resource
import struct
from io import BytesIO
from pathlib import Path

import pytest
from piecewright.door import writing
from pypdf import PdfReader
from support.block_files import FAULTY, HALVES, VANE, VANE_FILE, put, titled
from support.command import piecewright, process

LETTER = (612, 792)  # points: 8.5in x 11in (ANSI/ASME Y14.1), 72 to the inch (ISO 32000)
A4 = (595.28, 841.89)  # points: 210mm x 297mm (ISO 216)


def names_in(folder: Path) -> list[str]:
    """Everything in a folder, hidden files too."""
    return sorted(os.listdir(folder))


def page_sizes(pdf: Path) -> list[tuple[float, float]]:
    """Width and height of every page, in points, to a hundredth."""
    return [
        (round(float(page.mediabox.width), 2), round(float(page.mediabox.height), 2))
        for page in PdfReader(BytesIO(pdf.read_bytes())).pages
    ]


def test_build_writes_one_pdf_where_we_are_and_says_so(here: Path) -> None:
    ended = piecewright("build", VANE_FILE)
    pages = len(page_sizes(here / "tidewater-vane-v2.pdf"))
    assert (ended.status, ended.err) == (0, "")
    assert ended.out == f"Wrote tidewater-vane-v2.pdf ({pages} pages).\n"
    assert names_in(here) == ["tidewater-vane-v2.pdf"]


@pytest.mark.parametrize("paper, size", [("letter", LETTER), ("a4", A4), ("A4", A4)])
def test_paper_is_the_one_asked_for(here: Path, paper: str, size: tuple[float, float]) -> None:
    assert piecewright("build", VANE_FILE, "--paper", paper).status == 0
    for width, height in page_sizes(here / "tidewater-vane-v2.pdf"):
        assert (width, height) == pytest.approx(size, abs=0.01)


def test_png_and_svg_are_one_file_a_page_at_the_resolution_asked_for(here: Path) -> None:
    ended = piecewright("build", VANE_FILE, "--format", "png,svg", "--dpi", "72", "--out", "sheets/new")
    made = names_in(here / "sheets" / "new")
    pages = len(made) // 2
    assert ended.status == 0
    assert made == sorted(
        f"tidewater-vane-v2-page-{n}.{kind}" for n in range(1, pages + 1) for kind in ("png", "svg")
    )
    for name in made[::2]:
        data = (here / "sheets" / "new" / name).read_bytes()
        assert struct.unpack(">II", data[16:24]) == LETTER
    assert f"Wrote sheets/new/tidewater-vane-v2-page-1.png to tidewater-vane-v2-page-{pages}.png" in ended.out


def test_formats_may_be_repeated(here: Path) -> None:
    assert piecewright("build", VANE_FILE, "--format", "pdf", "--format", "svg,pdf").status == 0
    assert {name.rpartition(".")[2] for name in names_in(here)} == {"pdf", "svg"}


def test_two_builds_have_the_same_bytes(here: Path) -> None:
    for folder in ("one", "two"):
        assert (
            piecewright("build", VANE_FILE, "--format", "pdf,png,svg", "--dpi", "50", "--out", folder).status
            == 0
        )
    assert names_in(here / "one") == names_in(here / "two") != []
    for name in names_in(here / "one"):
        assert (here / "one" / name).read_bytes() == (here / "two" / name).read_bytes(), name


@pytest.mark.parametrize(
    "option",
    [("--kind", "finished"), ("--kind", "window"), ("--lines", "cut-dashed"), ("--measured", "0.97in")],
)
def test_options_change_the_sheets(here: Path, option: tuple[str, str]) -> None:
    assert piecewright("build", VANE_FILE, "--out", "plain").status == 0
    assert piecewright("build", VANE_FILE, "--out", "other", *option).status == 0
    plain, other = ((here / name / "tidewater-vane-v2.pdf").read_bytes() for name in ("plain", "other"))
    assert plain != other


@pytest.mark.parametrize(
    "one, other",
    [
        ("0.96in", "4.8cm"),
        ("1in", "2.54cm"),
        ("1in", "25.4mm"),
        ("15/16in", "0.9375in"),
        ("square=0.84in", "bar=4.2cm"),
        ("Bar=4.9cm", "0.98in"),
    ],
)
def test_square_may_be_measured_in_any_unit_or_the_bar_instead(here: Path, one: str, other: str) -> None:
    for folder, length in (("one", one), ("other", other)):
        assert piecewright("build", VANE_FILE, "--out", folder, "--measured", length).status == 0
    assert (here / "one" / "tidewater-vane-v2.pdf").read_bytes() == (
        here / "other" / "tidewater-vane-v2.pdf"
    ).read_bytes()


@pytest.mark.parametrize(
    "arguments, words",
    [
        (["--paper", "tabloid"], "tabloid"),
        (["--format", "tiff"], "tiff"),
        (["--format", "pdf,"], "pdf, png, svg"),
        (["--kind", "x"], "'x'"),
        (["--lines", "x"], "'x'"),
        (["--dpi", "5"], "5"),
        (["--dpi", "9e9"], "9e9"),
        (["--measured", "1"], "unit"),
        (["--measured", "3cm"], "Which mark was measured"),
        (["--measured", "0.85in"], "Which mark was measured"),
        (["--measured", "4.2cm"], "bar would be at 84%"),
        (["--measured", "bar=0.97in"], "actual size"),
        (["--measured", "circle=1in"], "square, bar"),
        (["--measured", "square="], "unit"),
        (["--measured", "3in"], "actual size"),
        (["--measured", "0in"], "actual size"),
        (["--measured", "1/0in"], "unit"),
        (["--measured", "-1in"], "unit"),
        (["--measured", "9" * 99 + "in"], "unit"),
        (["--shelf", "nowhere"], "nowhere"),
        (["--colour"], "--colour"),
        (["--block", "Nobody"], "Nobody"),
    ],
)
def test_what_build_does_not_know_is_refused_and_nothing_written(
    here: Path, arguments: list[str], words: str
) -> None:
    ended = piecewright("build", VANE_FILE, *arguments)
    assert ended.status == 2 and words in ended.err and ended.out == ""
    assert names_in(here) == []


def test_file_with_an_error_makes_nothing_and_other_files_still_do(here: Path) -> None:
    put(here.parent / "files" / "gate.block", VANE.partition("\n")[2] + FAULTY.partition("\n")[2])
    ended = piecewright("build", "../files")
    assert ended.status == 1
    assert "../files/gate.block:" in ended.err and ended.err.endswith("in 1 of 2 files.\n")
    assert names_in(here) == ["tidewater-vane-v2.pdf"]
    assert "error" not in ended.out


def test_error_leaves_the_older_sheet_as_it_was(here: Path) -> None:
    old = put(here / "gate-test-v1.pdf", b"old")
    assert piecewright("build", "-", stdin=FAULTY.encode()).status == 1
    assert old.read_bytes() == b"old" and names_in(here) == [old.name]


def test_blocks_are_picked_by_title_whatever_the_capitals(here: Path) -> None:
    both = VANE + HALVES.partition("\n")[2]
    ended = piecewright("build", "-", "--block", "two HALVES", stdin=both.encode())
    assert ended.status == 0 and names_in(here) == ["two-halves-v1.pdf"]
    ended = piecewright("build", "-", "--block", "Two Halfs", stdin=both.encode())
    assert ended.status == 2 and "Did you mean 'Two Halves'?" in ended.err


@pytest.mark.parametrize(
    "title",
    [
        "../../etc/passwd",
        "/etc/passwd",
        "a/b",
        ".hidden",
        "..",
        'say "hi"',
        "<b>bold</b> & co",
        "🧵🪡",
        "מרובע ים",
        "C:\\x",
        "%s %n",
        "$(rm x)",
    ],
)
def test_title_never_leads_out_of_the_folder(here: Path, title: str) -> None:
    before = sorted(here.parent.rglob("*"))
    ended = piecewright("build", "-", "--out", "sheets", stdin=titled(title).encode())
    assert ended.status == 0, ended.err
    (name,) = names_in(here / "sheets")
    assert name.isascii() and not name.startswith(".") and name.endswith("-v1.pdf")
    assert sorted(here.parent.rglob("*")) == sorted([*before, here / "sheets", here / "sheets" / name])


def test_titles_that_read_alike_get_files_of_their_own(here: Path) -> None:
    more = (titled("Sea-Star"), titled("sea star", 2))
    text = titled("Sea Star") + "".join(each.partition("\n")[2] for each in more)
    ended = piecewright("build", "-", stdin=text.encode())
    assert ended.status == 0, ended.err
    assert len(names_in(here)) == 3


def test_page_left_from_a_longer_build_is_pointed_at(here: Path) -> None:
    assert piecewright("build", VANE_FILE, "--format", "svg").status == 0
    pages = len(names_in(here))
    left = put(here / f"tidewater-vane-v2-page-{pages + 1}.svg", b"old")
    ended = piecewright("build", VANE_FILE, "--format", "svg")
    assert ended.status == 0 and left.name in ended.err and "earlier build" in ended.err
    assert left.read_bytes() == b"old"


# ---- the machine's failures -------------------------------------------------------------------------------


@pytest.mark.parametrize("out", ["taken", "taken/sheets", "/proc/nowhere", "x" * 300])
def test_folder_that_cannot_be_written_to_is_told_in_one_line(here: Path, out: str) -> None:
    put(here / "taken", b"a file")
    ended = piecewright("build", VANE_FILE, "--out", out)
    assert ended.status == 1 and ended.out == ""
    assert ended.err.count("\n") == 1 and ended.err.strip()
    assert names_in(here) == ["taken"]


def test_folder_in_the_place_of_the_sheet_is_told(here: Path) -> None:
    (here / "tidewater-vane-v2.pdf").mkdir()
    ended = piecewright("build", VANE_FILE)
    assert ended.status == 1 and ended.err == "tidewater-vane-v2.pdf: Is a directory.\n"
    assert names_in(here) == ["tidewater-vane-v2.pdf"]


@pytest.mark.parametrize(
    "number, words",
    [
        (errno.ENOSPC, "No space left on device."),
        (errno.EROFS, "Read-only file system."),
        (errno.EDQUOT, "Disk quota exceeded."),
    ],
)
def test_full_disk_is_told_and_leaves_the_old_sheet(
    here: Path, monkeypatch: pytest.MonkeyPatch, number: int, words: str
) -> None:
    old = put(here / "tidewater-vane-v2.pdf", b"old")
    real = os.write

    def full(handle: int, data: bytes) -> int:
        if len(data) < 2_000:
            return real(handle, data)
        real(handle, data[:1_000])
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(writing.os, "write", full)
    ended = piecewright("build", VANE_FILE)
    assert ended.status == 1 and ended.out == ""
    assert ended.err == f"tidewater-vane-v2.pdf: {words}\n"
    assert old.read_bytes() == b"old" and names_in(here) == [old.name]


def test_file_larger_than_the_system_allows_leaves_nothing(here: Path) -> None:
    """A real failure of write(2), by the limit on the size of a file."""
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (2_000, before[1]))
    try:
        ended = process("build", VANE_FILE, folder=here)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
    assert ended.status == 1 and ended.err == "tidewater-vane-v2.pdf: File too large.\n"
    assert names_in(here) == []


def test_mistake_while_laying_out_names_the_block(here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from piecewright.door import drawn_files

    def broken(*_given: object) -> None:
        raise KeyError("no such corner")

    monkeypatch.setattr(drawn_files, "made_of_block", broken)
    ended = piecewright("build", VANE_FILE)
    assert ended.status == 3 and ended.err.count("\n") == 1
    assert "vane.block, block 'Tidewater Vane': This is a mistake in Piecewright" in ended.err
    assert names_in(here) == []


def test_whole_process_builds_from_standard_input(here: Path) -> None:
    ended = process("build", "-", "--out", "sheets", stdin=VANE.encode(), folder=here)
    assert ended.status == 0 and ended.err == ""
    assert names_in(here) == ["sheets"] and names_in(here / "sheets") == ["tidewater-vane-v2.pdf"]


def test_a_block_of_more_pages_than_anybody_prints_fails_its_own_file_alone(here: Path) -> None:
    put(here / "sea.block", titled("Wide Sea").replace("4in", "1000in"))
    wider = titled("Wider Sea").partition("\n")[2].replace("4in", "999in")
    put(here / "two.block", titled("Halves") + wider)
    ended = piecewright("build", "sea.block", "two.block", VANE_FILE)
    assert ended.status == 1
    assert "error[pages-too-many]: The templates take at least 8,262 pages" in ended.err
    assert "--> sea.block:3:7" in ended.err and "--> two.block:10:7" in ended.err
    assert "help: Make it smaller, or look at the units of its lengths." in ended.err
    assert "2 errors in 2 of 3 files." in ended.err
    assert names_in(here) == ["sea.block", "tidewater-vane-v2.pdf", "two.block"]


def test_nothing_is_kept_of_a_build_and_the_option_against_it_is_gone(here: Path) -> None:
    ended = piecewright("build", VANE_FILE, "--no-cache")
    assert ended.status == 2 and "--no-cache" in ended.err and names_in(here) == []


def test_open_shows_the_first_pdf_and_says_where_nothing_can(here: Path, tmp_path: Path) -> None:
    shown = tmp_path / "shown"
    opener = put(tmp_path / "bin" / "xdg-open", f'#!/bin/sh\necho "$1" > {shown}\n')
    opener.chmod(0o755)
    path = {"PATH": str(opener.parent) + os.pathsep + os.environ["PATH"]}
    ended = process("build", VANE_FILE, "--format", "svg,pdf", "--open", env=path, folder=here)
    assert ended.status == 0
    assert Path(shown.read_text().strip()) == here / "tidewater-vane-v2.pdf"
    ended = process("build", VANE_FILE, "--open", env={"PATH": str(tmp_path)}, folder=here)
    assert ended.status == 0 and "nothing here opens such files" in ended.err
