"""What other programs ask for: texts, files and folders compiled, looked through and written."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction
from pathlib import Path

import piecewright
import pytest
from pypdf import PdfReader
from support.block_files import VANE, put
from support.command import piecewright as command
from support.sample_quilts import BABY

FAULTY = VANE.replace("seam A1 -- B2", "seam A1 -- Z9")


def test_a_block_to_pdf_in_three_lines(tmp_path: Path) -> None:
    work = piecewright.compile_text(VANE)
    paths = work.write(tmp_path / "vane.pdf")
    assert paths == [tmp_path / "vane.pdf"] and PdfReader(paths[0]).metadata.title == "Tidewater Vane"


def test_a_quilt_to_its_chart_in_three_lines() -> None:
    work = piecewright.compile_text(BABY)
    chart = {cut.key + cut.fabric: (cut.cuts, cut.width, cut.height) for cut in work.quilts[0].cuts}
    assert len(chart) == len(work.quilts[0].cuts) > 3 and all(cuts > 0 for cuts, *_ in chart.values())


def test_all_that_is_cut_for_a_quilts_top_is_counted_in_it() -> None:
    (quilt,) = piecewright.compile_text(BABY).quilts
    top = [cut for cut in quilt.cuts if cut.part not in ("binding", "backing")]
    assert sum(cut.pieces for cut in top) == sum(count.pieces for count in quilt.counts) == quilt.pieces
    assert {cut.fabric for cut in quilt.cuts} == {cloth.name for cloth in quilt.cloths}
    made = sum(part.count for part in quilt.assembly.parts if part.block is not None)
    assert made == sum(block.count for block in quilt.blocks)
    assert quilt.steps[-1].rows[-1].finished.width == pytest.approx(float(quilt.finished.width))


def test_importing_loads_nothing_of_the_compiler() -> None:
    program = "import sys, piecewright; print([n for n in sys.modules if n.startswith('piecewright.')])"
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout == "[]\n"


def test_a_blocks_numbers_are_exact_and_typed() -> None:
    (block,) = piecewright.compile_text(VANE).blocks
    assert (block.title, block.version, len(block.pieces)) == ("Tidewater Vane", 2, 4 * (3 + 2) + 1)
    assert block.finished.width == Fraction(9) and isinstance(block.finished.width, Fraction)
    assert sum(piece.area for piece in block.pieces) == 81
    assert sum(template.in_all for template in block.templates) == len(block.pieces)
    assert sum(step.batch for step in block.steps) == block.assembly.seams
    assert block.difficulty.pieces == 21 and block.units == ()


@pytest.mark.parametrize("text", [VANE, BABY], ids=["block", "quilt"])
def test_json_is_what_explain_prints(tmp_path: Path, text: str) -> None:
    path = put(tmp_path / "one.quilt", text)
    (written,) = piecewright.compile_file(path).write(tmp_path / "one.json")
    assert written.read_text() == command("explain", path, "--format", "json").out


def test_a_file_with_an_error_has_diagnostics_and_cannot_be_written(tmp_path: Path) -> None:
    work = piecewright.compile_text(FAULTY, "vane.block")
    assert not work.ok and work.blocks == () and work.quilts == ()
    (error,) = [each for each in work.diagnostics if each.severity == "error"]
    line = FAULTY.splitlines()[error.line - 1]
    assert (error.file, error.code) == ("vane.block", "grid-point-off")
    assert line[error.column - 1 : error.end_column - 1] == "Z9" and error.end_line == error.line
    with pytest.raises(piecewright.CompileError) as wrong:
        work.write(tmp_path / "vane.pdf")
    assert wrong.value.diagnostics == work.diagnostics and "grid-point-off" in str(wrong.value)
    assert list(tmp_path.iterdir()) == []


def test_a_mend_that_is_offered_mends_the_text() -> None:
    text = VANE.removeprefix("edition 1\n")
    said = piecewright.compile_text(text).diagnostics
    (mend,) = [each.fix for each in said if each.code == "edition-missing" and each.fix]
    assert (mend.line, mend.column) == (mend.end_line, mend.end_column) == (1, 1)
    assert piecewright.compile_text(mend.text + text).diagnostics == ()


@pytest.mark.parametrize(
    "ending, head",
    [(".svg", b"<svg"), (".png", b"\x89PNG"), (".html", b"<!DOCTYPE html>"), (".pdf", b"%PDF")],
)
def test_the_ending_says_what_is_written(tmp_path: Path, ending: str, head: bytes) -> None:
    paths = piecewright.compile_text(VANE).write(tmp_path / f"vane{ending}", dpi=40)
    assert paths and sorted(paths) == sorted(tmp_path.iterdir())
    assert all(head in path.read_bytes()[:100] for path in paths)
    if ending in (".svg", ".png"):
        names = ["vane" + ending] if len(paths) == 1 else [f"vane-page-{n}{ending}" for n in (1, len(paths))]
        assert {paths[0].name, paths[-1].name} == set(names)


def test_a_file_is_what_build_makes(tmp_path: Path) -> None:
    path = put(tmp_path / "vane.block", VANE)
    choices = ("--paper", "a4", "--booklet", "--sew", "foundation", "--measured", "0.97in")
    assert command("build", path, *choices, "--out", tmp_path / "built").status == 0
    work = piecewright.compile_file(path, paper="a4", sewing="foundation", measured="0.97in")
    (booklet,) = work.blocks[0].write(tmp_path / "own.pdf", booklet=True)
    assert [booklet.read_bytes()] == [each.read_bytes() for each in (tmp_path / "built").iterdir()]
    (again,) = work.write_all(tmp_path / "again", booklet=True)
    assert again.name == "tidewater-vane-v2-booklet.pdf" and again.read_bytes() == booklet.read_bytes()


def test_several_blocks_are_several_files_of_one_write(tmp_path: Path) -> None:
    put(tmp_path / "in" / "a.block", VANE)
    put(tmp_path / "in" / "b.block", VANE.replace("Tidewater Vane", "Ebb Vane"))
    work = piecewright.compile_folder(tmp_path / "in")
    assert [block.title for block in work.blocks] == ["Tidewater Vane", "Ebb Vane"]
    assert [path.name for path in work.write(tmp_path / "all.pdf", parts=["card"])] == [
        "all-tidewater-vane-v2.pdf",
        "all-ebb-vane-v1.pdf" if "version" not in VANE else "all-ebb-vane-v2.pdf",
    ]


def test_one_part_or_format_needs_no_list(tmp_path: Path) -> None:
    work = piecewright.compile_text(VANE)
    (alone,) = work.write(tmp_path / "alone.pdf", parts="card")
    (listed,) = work.write(tmp_path / "listed.pdf", parts=["card"])
    assert alone.read_bytes() == listed.read_bytes()
    assert {path.suffix for path in work.write_all(tmp_path / "all", formats="svg", parts="card")} == {".svg"}


def test_nothing_is_written_where_one_of_several_cannot_be(tmp_path: Path) -> None:
    work = piecewright.compile_text(VANE + VANE.removeprefix("edition 1\n").replace("Tidewater", "Ebb"))
    (tmp_path / "all-ebb-vane-v2.pdf").mkdir()
    with pytest.raises(piecewright.MachineFailed, match="Is a directory"):
        work.write(tmp_path / "all.pdf")
    assert [path.name for path in tmp_path.iterdir()] == ["all-ebb-vane-v2.pdf"]


@pytest.mark.parametrize(
    "asked, told",
    [
        (lambda: piecewright.compile_text(VANE, paper="legal"), "letter, a4"),
        (lambda: piecewright.compile_text(VANE, ruler="1/7in"), "1/8in, 1/16in, 1/4in, 0.25cm"),
        (lambda: piecewright.compile_text(VANE, papers="a4"), "there are paper, kind"),
        (lambda: piecewright.compile_text(VANE, sewing={"Tidewater Vane": "glue"}), "templates, foundation"),
        (lambda: piecewright.compile_text(VANE, measured="3in"), "print it again at actual size"),
        (lambda: piecewright.compile_text(VANE, blocks=["Ebb Vane"]), "no block 'Ebb Vane'"),
        (lambda: piecewright.compile_text(VANE).write("vane.doc"), ".pdf, .png, .svg, .html, "),
        (lambda: piecewright.compile_text(VANE).write("vane.pdf", parts=["chapters"]), "picture, supplies"),
        (lambda: piecewright.compile_text(VANE).write("vane.pdf", parts=["cutting"]), "a block has needs"),
        (lambda: piecewright.compile_file("no-such.block"), "no-such.block"),
    ],
)
def test_a_choice_that_is_none_is_told_with_those_there_are(asked, told: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError) as wrong:
        asked()
    assert told.lower() in str(wrong.value).lower()


PAIR = """\
edition 1

block "Pair" {
  finished 18in x 9in
  grid 2 x 1
  use "Tidewater Vane" as vane
  row vane, vane
}
"""


def test_a_shelf_is_looked_on(tmp_path: Path) -> None:
    put(tmp_path / "shelf" / "vane.block", VANE)
    assert "block-unknown" in {each.code for each in piecewright.compile_text(PAIR).diagnostics}
    pair, vane = piecewright.compile_text(PAIR, shelves=[tmp_path / "shelf"]).blocks
    assert (pair.title, vane.title, vane.from_elsewhere) == ("Pair", "Tidewater Vane", True)
    assert [unit.box.left for unit in pair.units] == [0, 9]
    assert {unit.title for unit in pair.units} == {vane.title}


def test_a_text_is_laid_out_and_a_faulty_one_is_not() -> None:
    loose = VANE.replace("  grid", "grid").replace("finished 9in", "finished   9in")
    assert piecewright.format_text(loose) == VANE
    with pytest.raises(piecewright.CompileError):
        piecewright.format_text("block {")


def test_what_could_be_better_is_said() -> None:
    codes = {each.code for each in piecewright.lint_text(VANE)}
    assert "family-missing" in codes
    assert "family-missing" not in {
        each.code for each in piecewright.lint_text(VANE, allow=["family-missing"])
    }
    with pytest.raises(ValueError, match="family-missing"):
        piecewright.lint_text(VANE, only=["tidiness"])


def test_a_text_is_drafted_at_another_size() -> None:
    (block,) = piecewright.compile_text(piecewright.resize_text(VANE, "6in")).blocks
    assert block.finished.width == 6 and sum(piece.area for piece in block.pieces) == 36
    with pytest.raises(ValueError, match="9in or 24cm"):
        piecewright.resize_text(VANE, "six")


def test_what_changed_is_told_template_by_template() -> None:
    old = piecewright.compile_text(VANE)
    new = piecewright.compile_text(VANE.replace("1 1/4in from", "1 1/2in from"))
    (change,) = piecewright.compare_works(old, new)
    assert change.redrawn and change.unversioned and 0 < change.distance < 0.25  # as far as the gate moved
    kinds = {each.new: each.kind for each in change.templates}
    assert "changed" in kinds.values() and "same" in kinds.values()
    assert {each.kind for each in piecewright.compare_works(old, old)[0].templates} == {"same"}


def test_blocks_are_found_on_a_shelf(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PIECEWRIGHT_CACHE", "off")
    monkeypatch.setattr("piecewright.door.compiling.library_folder", lambda: None)
    put(tmp_path / "vane.block", VANE)
    (found,) = piecewright.find_blocks("tide", shelves=[tmp_path], pieces="20..", grid="3x3", size="9in")
    assert (found.facts.title, found.line, found.facts.pieces) == ("Tidewater Vane", 3, 21)
    assert piecewright.find_blocks("tide", shelves=[tmp_path], methods=["foundation"], pieces="..20") == ()
    with pytest.raises(ValueError, match=r"5\.\.20"):
        piecewright.find_blocks(pieces="many")


def test_a_program_with_types_reads_right(tmp_path: Path) -> None:
    """mypy, strict, over a program that asks for everything."""
    mypy = pytest.importorskip("mypy.api")
    root = Path(__file__).parents[2]
    (tmp_path / "piecewright").symlink_to(root / "compiler")
    program = put(tmp_path / "program.py", (root / "tests/door/sample_program.py").read_text())
    asked = ["--strict", "--config-file", str(root / "pyproject.toml"), str(program)]
    out, err, status = mypy.run(asked)
    assert status == 0, out + err
    put(program, program.read_text().replace("cloth.buy_text", "cloth.buy"))
    assert "program.py:18: error" in mypy.run(asked)[0]
