"""`piecewright draft`: readings off an old quilt to a block file to keep."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Final

import pytest
from support.command import piecewright

OLD: Final = """\
edition 1

block "Loft Vane" {
  finished 8in
  washed 7 7/8in x 8 1/8in read to 1/16in  # the north corner
  turn 4 about center {
    point gate = 2 5/8in from top to top-right
    seam gate -- next gate
    piece sail at top-right in light, dark
  }
  piece keel at center in pale
}
"""


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder that we stand in, with a washed block."""
    (tmp_path / "old.block").write_text(OLD)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_the_drafted_file_goes_to_standard_output_and_what_changed_beside_it(here: Path) -> None:
    ended = piecewright("draft", "old.block")
    assert ended.status == 0
    assert "point gate = 2/3 from top to top-right" in ended.out and "washed 7" not in ended.out
    assert "# gate: read 2 5/8in, drafted 2/3 of the way (2 2/3in), 0.042in more" in ended.out
    assert "shrank by 1.6% across and grew by 1.6% down; 1 of 1 reading changed" in ended.err
    (here / "vane.block").write_text(ended.out)
    again = piecewright("check", "vane.block")
    assert (again.status, again.out + again.err) == (0, "No mistakes in 1 file.\n")


def test_the_drafted_block_has_the_templates_of_the_washed_one(here: Path) -> None:
    assert piecewright("draft", "old.block", "--out", "vane.block").status == 0
    old, new = (
        json.loads(piecewright("explain", name, "--format", "json").out)["blocks"][0]
        for name in ("old.block", "vane.block")
    )
    assert old["templates"] == new["templates"] and old["fingerprint"] == new["fingerprint"]


def test_a_file_is_written_and_the_readings_told(here: Path) -> None:
    ended = piecewright("draft", "old.block", "--out", "kept/vane.block")
    assert ended.status == 0 and ended.out.endswith("\nWrote kept/vane.block.\n")
    assert "gate" in ended.out and "Grids, the likeliest first" in ended.out
    assert (here / "kept" / "vane.block").read_text() == piecewright("draft", "old.block").out
    assert (here / "old.block").read_text() == OLD


def test_json_says_it_all_by_iso_5077(here: Path) -> None:
    told = json.loads(piecewright("draft", "old.block", "--format", "json").out)
    block = told["blocks"][0]
    assert block["change_percent"]["across"] == pytest.approx((7.875 - 8) / 8 * 100, abs=0.1)
    assert block["change_percent"]["down"] == pytest.approx((8.125 - 8) / 8 * 100, abs=0.1)
    assert [(each["point"], each["read"], each["share"], each["line"]) for each in block["readings"]] == [
        ("gate", 2.625, "2/3", 7)
    ]
    assert block["grids"][0]["off"] == 0 and told["text"] == piecewright("draft", "old.block").out


def test_readings_are_not_written_over(here: Path) -> None:
    ended = piecewright("draft", "old.block", "--out", "./old.block")
    assert ended.status == 2 and "keep your readings" in ended.err
    assert (here / "old.block").read_text() == OLD


def test_a_file_without_a_washed_block_is_not_drafted(here: Path) -> None:
    (here / "plain.block").write_text(OLD.replace("  washed", "  # washed"))
    ended = piecewright("draft", "plain.block")
    assert ended.status == 2 and "no 'washed' block" in ended.err and ended.out == ""


def test_a_block_with_a_mistake_is_not_drafted(here: Path) -> None:
    (here / "old.block").write_text(OLD.replace("8 1/8in read", "8 1/8cm read"))
    ended = piecewright("draft", "old.block")
    assert ended.status == 1 and "washed-too-far" in ended.err and ended.out == ""


def test_other_blocks_and_quilts_in_the_file_stay_as_they_are(here: Path) -> None:
    more = OLD + '\nblock "Plain" { finished 3in  piece all at center in dark }  # mine\n'
    (here / "old.block").write_text(more)
    out = piecewright("draft", "old.block").out
    assert out.endswith('\nblock "Plain" { finished 3in  piece all at center in dark }  # mine\n')


def test_standard_input_is_drafted_too() -> None:
    ended = piecewright("draft", "-", stdin=OLD.encode())
    assert ended.status == 0 and "point gate = 2/3" in ended.out
