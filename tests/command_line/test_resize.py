"""`piecewright resize`: the sizes that suit a block, and its file at another."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Final

import pytest
from support.command import piecewright

LOFT: Final = """\
edition 1

block "Pair" {
  finished 2in
  faces top-left
  seam top-right -- bottom-left
  piece half at top-left in dark
  piece rest at bottom-right in pale
}

block "Loft Square" version 2 {
  finished 6in   # as in the old sampler
  grid 3 x 3
  use "Pair" as pair
  place pair in A1..B2
  point gate = 5cm from D1 to D4
  seam C1 -- C4
  seam C2 -- (1/2 from D1 to D2)
  allowance 1/4in  # the needle's
  allowance 1/2in on A4 -- C4
  trim matched 1/4in dots 1/16in
  seam A4 -- C3
  seam C3 -- gate
}
"""

NINE: Final = 'edition 1\nblock "Nine" { finished 9in  grid 3 x 3  alternate plain dark, plain light }\n'


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder that we stand in, with two block files."""
    (tmp_path / "loft.block").write_text(LOFT)
    (tmp_path / "nine.block").write_text(NINE)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_sizes_cut_by_the_ruler_are_told_first(here: Path) -> None:
    out = piecewright("resize", "nine.block").out
    assert "At 3, 6, 9, 12, 15, 18, 21 and 24in all cuts are to the 1/8in." in out
    assert "They are at every 3/8in from 3in to 24in." in out
    assert "Tried: sizes from 3in to 24in, 1/8in apart." in out
    assert out.index("At 3, 6") < out.index("Other sizes") < out.index("  4in")


def test_what_happens_at_the_size_asked_for(here: Path) -> None:
    ended = piecewright("resize", "nine.block", "--to", "7in")
    assert ended.status == 0 and "At 7in x 7in 1 cut falls off the ruler." in ended.out
    told = " ".join(ended.out.split())
    assert "becomes a template: one third of 7in is about 2 3/8in, between the ruler's marks (off" in told
    good = piecewright("resize", "nine.block", "--to", "12in").out
    assert "At 12in x 12in all cuts are on the ruler." in good
    assert "A: square, cut 4 1/2in x 4 1/2in" in good


def test_a_file_is_written_with_every_drafted_length_in_proportion(here: Path) -> None:
    ended = piecewright("resize", "loft.block", "--to", "9in", "--out", "kept/loft9.block")
    assert ended.status == 0 and ended.out.endswith("Wrote kept/loft9.block.\n")
    text = (here / "kept" / "loft9.block").read_text()
    changed = LOFT.replace("finished 6in", "finished 9in").replace("5cm from", "7 1/2cm from")
    assert text == changed.replace('"Loft Square" version 2', '"Loft Square" version 3')
    assert piecewright("check", "kept/loft9.block").status == 0
    assert (here / "loft.block").read_text() == LOFT


def test_a_new_size_is_never_told_by_an_old_title_and_version(here: Path) -> None:
    (here / "kept.block").write_text(NINE.replace('"Nine"', '"Nine" version 4'))
    assert piecewright("resize", "nine.block", "--to", "6in", "--out", "six.block").status == 0
    assert 'block "Nine" version 5 { finished 6in' in (here / "six.block").read_text()
    assert piecewright("resize", "nine.block", "--to", "9in", "--out", "same.block").status == 0
    assert (here / "same.block").read_text() == NINE
    titled = ("--to", "3in", "--title", 'Small "Nine"', "--out", "three.block")
    assert piecewright("resize", "nine.block", *titled).status == 0
    assert r'block "Small \"Nine\"" { finished 3in' in (here / "three.block").read_text()
    ended = piecewright("resize", "nine.block", "--title", "Small")
    assert ended.status == 2 and "--to" in ended.err


def test_pieces_keep_their_shape_and_the_needle_its_allowance(here: Path) -> None:
    assert piecewright("resize", "loft.block", "--to", "9in", "--out", "nine-inch.block").status == 0
    old, new = (
        json.loads(piecewright("explain", name, "--format", "json").out)["blocks"][1]
        for name in ("loft.block", "nine-inch.block")
    )
    assert [each["area"] * 2.25 for each in old["pieces"]] == pytest.approx(
        [each["area"] for each in new["pieces"]]
    )
    assert (old["allowance"], old["trim"]) == (new["allowance"], new["trim"])


def test_a_unit_is_resized_where_it_is_asked_for_by_its_title(here: Path) -> None:
    out = piecewright("resize", "loft.block", "--to", "3in", "--block", "Pair", "--format", "block").out
    changed = LOFT.replace("finished 2in", "finished 3in").replace('block "Pair"', 'block "Pair" version 2')
    assert out == changed


def test_json_says_the_same(here: Path) -> None:
    told = json.loads(piecewright("resize", "nine.block", "--to", "7in", "--format", "json").out)
    block = told["blocks"][0]
    assert [each["width"] for each in block["on_ruler"]] == [each * 0.375 for each in range(8, 65)]
    assert not block["asked"]["on_ruler"] and block["asked"]["cuts"][0]["off"] == pytest.approx(0.041667)
    assert all(not each["on_ruler"] for each in block["others"])


def test_a_ruler_in_centimetres_has_sizes_in_centimetres(here: Path) -> None:
    """A third of 24cm and 1.5cm for its seams are 9.5cm; with 1/4in seams no size in centimetres is even."""
    (here / "metric.block").write_text(NINE.replace("finished 9in", "finished 24cm  allowance 0.75cm"))
    out = piecewright("resize", "metric.block", "--ruler", "0.25cm").out
    assert "9, 12, 15, 18, 21, 24, 27" in out and "all cuts are to the 0.25cm" in out


@pytest.mark.parametrize(
    "arguments",
    [
        ("--out", "x.block"),
        ("--format", "block"),
        ("--to", "9"),
        ("--to", "1/2in"),
        ("--to", "500in"),
        ("--block", "Nobody"),
    ],
)
def test_what_cannot_be_resized_so_is_refused(here: Path, arguments: tuple[str, ...]) -> None:
    ended = piecewright("resize", "nine.block", *arguments)
    assert ended.status == 2 and ended.out == "" and not (here / "x.block").exists()


def test_a_washed_block_is_to_be_drafted_first(here: Path) -> None:
    (here / "old.block").write_text(NINE.replace("grid", "washed 8 7/8in  grid"))
    ended = piecewright("resize", "old.block", "--to", "7in")
    assert ended.status == 2 and "draft it first" in ended.err


def test_a_size_at_which_pieces_become_slivers_is_an_error_of_that_size(here: Path) -> None:
    fine = 'edition 1\nblock "Fine" { finished 30in  grid 60 x 1  seam B1 -- B2 }\n'
    (here / "fine.block").write_text(fine)
    ended = piecewright("resize", "fine.block", "--to", "3in", "--out", "small.block")
    assert ended.status == 1 and "piece-sliver" in ended.err and not (here / "small.block").exists()
