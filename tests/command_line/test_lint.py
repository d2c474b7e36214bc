"""`piecewright lint`: what it says, mends and refuses; and the commit hooks that run it."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from piecewright.lint.checks import NAMES
from support.block_files import FAULTY, VANE, put
from support.command import piecewright
from support.said import GOOD

HOOKS = Path(__file__).parents[2] / ".pre-commit-hooks.yaml"
BARE = GOOD.replace(" version 1", "").replace("  family strip\n", "").replace("6in", "6.5in")


def test_a_good_file_leaves_nothing_to_better(tmp_path: Path) -> None:
    ended = piecewright("lint", put(tmp_path / "good.block", GOOD))
    assert (ended.status, ended.out, ended.err) == (0, "Nothing to improve in 1 file.\n", "")


def test_findings_are_warnings_and_make_the_status_1(tmp_path: Path) -> None:
    bare = put(tmp_path / "bare.block", BARE)
    ended = piecewright("lint", bare, "--format", "short")
    assert ended.status == 1
    assert re.findall(r"warning\[([a-z-]+)]", ended.out) == [
        "family-missing",
        "version-missing",
        "length-decimal",
    ]
    told = json.loads(piecewright("lint", bare, "--format", "json").out)
    assert [each["code"] for each in told] == ["family-missing", "version-missing", "length-decimal"]
    assert "3 warnings in 1 file." in piecewright("lint", bare).out
    options = ("--allow", "family-missing", "--allow", "version-missing", "--allow", "length-decimal")
    assert piecewright("lint", bare, *options).status == 0


def test_mending_writes_the_file_and_changes_no_outline(tmp_path: Path) -> None:
    bare = put(tmp_path / "bare.block", BARE.replace("\n", "\r\n"))
    old = put(tmp_path / "old" / "bare.block", BARE)
    ended = piecewright("lint", "--mend", bare)
    assert ended.status == 1 and "2 places mended.\n1 warning in 1 file." in ended.out
    wanted = BARE.replace('"Trial"', '"Trial" version 1').replace("6.5in", "6 1/2in")
    assert bare.read_bytes() == wanted.replace("\n", "\r\n").encode()
    assert "Every line lies where it lay." in piecewright("compare", old, bare).out


def test_a_file_with_an_error_is_left_alone(tmp_path: Path) -> None:
    gate = put(tmp_path / "gate.block", FAULTY)
    ended = piecewright("lint", "--mend", gate)
    assert ended.status == 1 and "error[point-unknown]" in ended.out
    assert gate.read_text("utf-8") == FAULTY


def test_standard_input_is_told_of_and_not_mended() -> None:
    ended = piecewright("lint", "--mend", "-", "--format", "short", stdin=VANE.encode())
    assert ended.status == 1 and "family-missing" in ended.out and "edition 1" not in ended.out


def test_checks_are_listed_and_unknown_ones_refused() -> None:
    listed = piecewright("lint", "--list")
    assert listed.status == 0 and [line.split()[0] for line in listed.out.splitlines()] == list(NAMES)
    assert "no check 'famly'" in piecewright("lint", "--only", "famly", "-").err


@pytest.mark.parametrize("name", NAMES)
def test_every_check_is_explained_here_and_in_the_reference(name: str) -> None:
    assert piecewright("explain", name).out.startswith(f"{name}: ")
    page = (HOOKS.parent / "grammar" / "REFERENCE.md").read_text("utf-8")
    assert f"`{name}`" in page.partition("## Looking after files")[2]


def test_every_commit_hook_is_a_command_that_takes_files(tmp_path: Path) -> None:
    text = HOOKS.read_text("utf-8")
    entries = re.findall(r"^  entry: piecewright (.+)$", text, re.MULTILINE)
    assert len(entries) == text.count("- id: ") == 4
    page = (HOOKS.parent / "grammar" / "REFERENCE.md").read_text("utf-8")
    for name in re.findall(r"- id: (\S+)", text):
        assert f"- id: {name}\n" in page
    for entry in entries:
        assert piecewright(*entry.split(), "--help").status == 0


def test_the_use_of_a_block_from_elsewhere_that_nothing_calls_is_taken_away(tmp_path: Path) -> None:
    use = '  use "Ohio Star" version 1 as star\n'
    good = put(tmp_path / "good.block", GOOD.replace("}\n", f"{use}}}\n"))
    assert piecewright("lint", good).status == 1
    ended = piecewright("lint", "--mend", good)
    assert (ended.status, good.read_text()) == (0, GOOD), ended.out
