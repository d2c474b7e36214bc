"""Blocks that are odd to sew, through the command: one piece, windows, arcs, two thousand pieces."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from support.block_files import put
from support.command import piecewright

PAIR = """edition 1
block "Pair" { finished 3in faces top-left
  seam bottom-left -- top-right
  piece near at top-left in dark
  piece far at bottom-right in pale
}
"""

FIELD = (
    PAIR
    + """block "Field" { grid 50 x 20 of 3in
  use "Pair" as pair
  alternate pair, pair turned 90deg
}
"""
)


def explained(text: str) -> Any:
    """The last block that explain tells programs of."""
    ended = piecewright("explain", "-", "--format", "json", stdin=text.encode())
    assert ended.status == 0, ended.err
    return json.loads(ended.out)["blocks"][-1]


def block(body: str) -> str:
    return f'edition 1\nblock "Trial" {{\n{body}\n}}\n'


def test_a_single_piece_has_nothing_to_sew() -> None:
    said = explained(block("finished 6in"))
    assert (said["assembly"]["steps"], said["assembly"]["seams"]) == ([], 0)
    assert said["assembly"]["proof"]["sentence"] == "1 piece, 0 seams, closes exactly"
    assert said["foundations"]["sections"] == [] or said["foundations"]["sections"][0]["order"] == [1]
    assert said["difficulty"]["set_in_seams"] == 0


def test_what_fills_a_window_is_sewn_in_all_round() -> None:
    said = explained(block("finished 6in\ngrid 3 x 3\nseam B2 -- C2 -- C3 -- B3 -- B2\nseam B2 -- C3"))
    first, last = said["assembly"]["steps"]
    assert (first["set_in"], last["set_in"]) == (False, True)
    assert sorted(last["turns"]) == [[2, 2], [2, 4], [4, 2], [4, 4]]
    assert last["seam_length"] == 8
    assert not said["foundations"]["possible"] and said["foundations"]["why_not"]
    assert len(said["assembly"]["steps"][0]["press"]["toward"]) == 1


def test_a_circle_is_sewn_into_its_window_and_pinned() -> None:
    said = explained(block("finished 6in\nseam circle around center radius 2in"))
    (step,) = said["assembly"]["steps"]
    assert step["curved"] and step["set_in"] and len(step["pinned"]) == 3
    assert step["seam_length"] == pytest.approx(12.566371, abs=1e-6)
    assert "curved" in said["foundations"]["why_not"]


def test_arcs_are_sewn_and_pressed_but_not_on_paper() -> None:
    said = explained(
        block(
            """finished 6in
      mirror in top--bottom {
        seam top-left ~~ bottom around bottom-left
        piece petal at left in dark
      }""".replace("finished 6in", "finished 12in x 6in")
        )
    )
    assembly = said["assembly"]
    assert assembly["curved_seams"] == 2 and not assembly["straight_seams_only"]
    assert all(step["press"]["toward"][0] in ("first", "second", "open") for step in assembly["steps"])
    assert said["foundations"] | {"why_not": ""} == {
        "possible": False,
        "why_not": "",
        "sections": [],
        "joins": [],
        "margin": 0.25,
    }
    assert said["foundations"]["why_not"].endswith("paper folds along straight lines only.")


def test_arcs_and_windows_are_built(tmp_path: Path) -> None:
    text = block("finished 6in\nseam circle around center radius 2in")
    ended = piecewright("build", put(tmp_path / "round.block", text), "--out", tmp_path / "out")
    assert ended.status == 0, ended.err
    assert [each.suffix for each in (tmp_path / "out").iterdir() if each.suffix == ".pdf"] == [".pdf"]


def test_two_thousand_pieces_are_sewn_in_batches() -> None:
    made = explained(FIELD)
    assembly = made["assembly"]
    assert made["title"] == "Field" and len(made["pieces"]) == 2000
    assert assembly["proof"]["sentence"] == "2000 pieces, 1999 seams, closes exactly"
    assert (assembly["straight_seams_only"], assembly["set_in_seams"]) == (True, 0)
    first = assembly["steps"][0]
    assert (first["batch"], first["unfinished"]) == (1000, {"width": 3.5, "height": 3.5})
    assert len(assembly["steps"]) < 100, "alike units are told once"
    assert made["foundations"]["possible"]


def test_two_thousand_pieces_are_told_to_people() -> None:
    ended = piecewright("explain", "-", stdin=FIELD.encode())
    assert ended.status == 0, ended.err
    assert "2000 pieces, 1999 seams, closes exactly" in " ".join(ended.out.split())


def test_a_block_that_is_no_rectangle_leaves_no_quilt() -> None:
    text = """edition 1
block "Comb" { outline regular 6 side 3in
  piece all at center in dark
}
quilt "Hive" {
  use "Comb" as comb
  fabric dark
  set straight 2 across 2 down { alternate comb }
  binding 2 1/2in in dark
  backing in dark
  batting
}
"""
    ended = piecewright("check", "-", "--format", "json", stdin=text.encode())
    (said,) = json.loads(ended.out)
    assert said["code"] == "block-no-rectangle"
    assert text.splitlines()[said["line"] - 1][said["column"] - 1 :].startswith("comb }")
    assert ended.status == 1
