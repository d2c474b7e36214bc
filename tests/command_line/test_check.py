"""`piecewright check`: every way of showing what is wrong, and the exit statuses."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from piecewright.command_line.commands import check as check_module
from piecewright.diagnostics.diagnostic import Diagnostic, Severity
from piecewright.diagnostics.diagnostic import Label as Place
from piecewright.diagnostics.source import Source, Span
from piecewright.door.compiling import Compiled
from piecewright.door.inputs import Input
from support.block_files import FAULTY, HALVES, VANE, put
from support.command import piecewright, process


@pytest.fixture
def says(monkeypatch: pytest.MonkeyPatch) -> list[Severity]:
    """Severities that every file compiled is given, to be filled by the test."""
    wanted: list[Severity] = []

    def fake(given: Input, *_: object) -> Compiled:
        said = tuple(
            Diagnostic("thing-odd", each, "This is odd.", Place(Span(given.name, 0, 7))) for each in wanted
        )
        return Compiled(given.name, (), said, {given.name: Source(given.name, VANE)})

    monkeypatch.setattr(check_module, "compile_input", fake)
    return wanted


def test_clean_file_says_so_and_makes_nothing(tmp_path: Path) -> None:
    vane = put(tmp_path / "vane.block", VANE)
    ended = piecewright("check", vane)
    assert (ended.status, ended.out, ended.err) == (0, "No mistakes in 1 file.\n", "")
    assert [path.name for path in tmp_path.iterdir()] == ["vane.block"]


def test_error_is_told_on_standard_output_with_place_words_and_count(tmp_path: Path) -> None:
    gate = put(tmp_path / "gate.block", FAULTY)
    ended = piecewright("check", gate)
    assert ended.status == 1 and ended.err == ""
    assert f"--> {gate}:5:18:" in ended.out
    assert " 5 |   seam center -- gaet\n   |                  ^^^^" in ended.out
    assert ended.out.endswith("1 error in 1 file.\n")


def test_folder_stands_for_its_block_files_in_order(tmp_path: Path) -> None:
    for name, text in (("b.block", FAULTY), ("a.block", FAULTY), ("c.block", HALVES), ("notes.txt", "x")):
        put(tmp_path / name, text)
    ended = piecewright("check", tmp_path, "--format", "short")
    assert [line.partition(":")[0] for line in ended.out.splitlines()] == [
        f"{tmp_path}/a.block",
        f"{tmp_path}/b.block",
    ]
    assert piecewright("check", tmp_path).out.endswith("2 errors in 2 of 3 files.\n")


def test_file_named_twice_is_checked_once(tmp_path: Path) -> None:
    gate = put(tmp_path / "gate.block", FAULTY)
    assert piecewright("check", gate, gate, "--format", "short").out.count("\n") == 1


def test_short_is_one_line_for_each(tmp_path: Path) -> None:
    gate = put(tmp_path / "gate.block", FAULTY)
    (line,) = piecewright("check", gate, "--format", "short").out.splitlines()
    assert line.startswith(f"{gate}:5:18: error[")


def test_json_is_one_list_whatever_is_found(tmp_path: Path) -> None:
    gate, vane = put(tmp_path / "gate.block", FAULTY), put(tmp_path / "vane.block", VANE)
    assert json.loads(piecewright("check", vane, "--format", "json").out) == []
    ended = piecewright("check", gate, vane, put(tmp_path / "more.block", FAULTY), "--format", "json")
    records = json.loads(ended.out)
    assert ended.status == 1
    assert [each["file"] for each in records] == [str(gate), str(tmp_path / "more.block")]
    assert set(records[0]) == {
        "code",
        "severity",
        "message",
        "file",
        "line",
        "column",
        "end_line",
        "end_column",
        "help",
    }
    assert (records[0]["line"], records[0]["column"], records[0]["end_column"]) == (5, 18, 22)


def test_github_gets_one_annotation_line_for_each(tmp_path: Path) -> None:
    gate = put(tmp_path / "gate,test.block", FAULTY)
    (line,) = piecewright("check", gate, "--format", "github").out.splitlines()
    assert line.startswith(f"::error file={tmp_path}/gate%2Ctest.block,line=5,col=18,")


@pytest.mark.parametrize(
    "severities, plain, strict",
    [
        ([], 0, 0),
        ([Severity.NOTE], 0, 0),
        ([Severity.WARNING], 0, 1),
        ([Severity.ERROR], 1, 1),
        ([Severity.NOTE, Severity.WARNING], 0, 1),
    ],
)
@pytest.mark.parametrize("form", ["people", "short", "json", "github"])
def test_status_follows_the_worst_thing_said(
    tmp_path: Path, says: list[Severity], severities: list[Severity], plain: int, strict: int, form: str
) -> None:
    says.extend(severities)
    vane = put(tmp_path / "vane.block", VANE)
    assert piecewright("check", vane, "--format", form).status == plain
    assert piecewright("check", vane, "--format", form, "--strict").status == strict


def test_summary_counts_each_severity(tmp_path: Path, says: list[Severity]) -> None:
    says.extend([Severity.ERROR, Severity.ERROR, Severity.WARNING, Severity.NOTE])
    ended = piecewright("check", put(tmp_path / "vane.block", VANE))
    assert ended.out.endswith("2 errors, 1 warning and 1 note in 1 file.\n")


def test_notes_alone_count_as_no_faulty_file(tmp_path: Path, says: list[Severity]) -> None:
    says.append(Severity.NOTE)
    ended = piecewright("check", put(tmp_path / "a.block", VANE), put(tmp_path / "b.block", VANE))
    assert ended.out.endswith("2 notes in 2 files.\n")


def test_standard_input_is_named_in_places() -> None:
    ended = piecewright("check", "-", "--format", "short", stdin=FAULTY.encode())
    assert ended.status == 1 and ended.out.startswith("<stdin>:5:18: error[")
    assert piecewright("check", "-", stdin=VANE.encode()).status == 0


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"\x00\x01\x02\xff" * 400,
        b"%PDF-1.7\n\xe2\xe3\xcf\xd3",
        b"\xff\xfe{\x00",
        b"{" * 20_000,
        b'edition 1\nblock "A" {',
        b"\xef\xbb\xbf",
        b"\n" * 10_000,
    ],
)
def test_any_bytes_end_in_diagnostics(tmp_path: Path, data: bytes) -> None:
    ended = piecewright("check", put(tmp_path / "odd.block", data), "--format", "json")
    assert ended.status == 1 and ended.err == ""
    assert all(each["severity"] == "error" for each in json.loads(ended.out)[:1])


def test_used_block_is_found_beside_and_on_shelves_given_either_way(tmp_path: Path) -> None:
    asks = put(
        tmp_path / "asks" / "asks.block",
        'edition 1\nblock "Asks" {\n  grid 1 x 1 of 4in\n  use "Two Halves" as half\n  row half\n}\n',
    )
    assert piecewright("check", asks).status == 1
    put(tmp_path / "given" / "halves.block", HALVES)
    assert piecewright("check", asks, "--shelf", tmp_path / "given").status == 0
    assert piecewright("check", asks, env={"PIECEWRIGHT_SHELVES": f"/nowhere:{tmp_path}/given"}).status == 0
    assert piecewright("check", asks).status == 1
    put(tmp_path / "asks" / "halves.block", HALVES)
    assert piecewright("check", asks).status == 0


def test_faulty_file_beside_that_has_the_title_is_pointed_at(tmp_path: Path) -> None:
    asks = put(
        tmp_path / "asks.block",
        'edition 1\nblock "Asks" {\n  grid 1 x 1 of 4in\n  use "Two Halves" as half\n  row half\n}\n',
    )
    put(tmp_path / "halves.block", HALVES.rstrip("}\n"))
    ended = piecewright("check", asks, "--format", "short")
    assert ended.status == 1
    assert f"{tmp_path}/halves.block:" in ended.out and "note[shelf-file-faulty]" in ended.out


def test_mistake_of_our_own_names_the_file_and_other_files_go_on(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from piecewright.door import compiling

    real = compiling._compile_bytes

    def broken(given: Input, *rest: object) -> Compiled:
        assert "bad" not in given.name, "the pieces sum to 35 square inches, the outline to 36"
        return real(given, *rest)  # type: ignore[arg-type]

    monkeypatch.setattr(compiling, "_compile_bytes", broken)
    bad, gate = put(tmp_path / "bad.block", VANE), put(tmp_path / "gate.block", FAULTY)
    ended = piecewright("check", bad, gate)
    assert ended.status == 3
    assert f"{bad}: This is a mistake in Piecewright, not in your file." in ended.err
    assert "35 square inches" in ended.err and ended.err.count("\n") == 1
    assert "1 error in 1 file." in ended.out


def test_process_shows_no_colour_where_nobody_looks(tmp_path: Path) -> None:
    gate = put(tmp_path / "gate.block", FAULTY)
    ended = process("check", gate.name, folder=tmp_path)
    assert ended.status == 1 and "\x1b" not in ended.out + ended.err
    assert "--> gate.block:5:18:" in ended.out
