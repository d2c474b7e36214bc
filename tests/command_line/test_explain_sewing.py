"""`piecewright explain` on how blocks go together: as programs are told it, and as people are."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from typing import Any

from support.block_files import HALVES, VANE
from support.command import piecewright
from support.library import library_sources

ATTIC_WINDOW = """\
edition 1
block "Attic Window" {
  finished 6in
  grid 3 x 3
  seam A3 -- C3 -- C1
  seam C3 -- bottom-right
}
"""

PINWHEEL_TILING = """\
edition 1
block "Round About" {
  finished 9in
  grid 3 x 3
  seam A2 -- C2
  seam C1 -- C3
  seam D3 -- B3
  seam B4 -- B2
}
"""

MOON_OVER_ROOFS = """\
edition 1
block "Moon over Roofs" {
  finished 8in
  seam circle around center radius 2in
  seam top-left -- center -- top
  seam center -- top-right
}
"""
"""A circle parted in three on one side: of the three seams that meet on it, two always lie the same way."""

CURVED = 'edition 1\nblock "Bow" { finished 6in\n  seam top-left ~~ bottom-right around bottom-left }\n'


def explained(text: str) -> Any:
    ended = piecewright("explain", "-", "--format", "json", stdin=text.encode())
    assert ended.status == 0, ended.err
    (block,) = json.loads(ended.out)["blocks"]
    return block


def words_of(text: str) -> Sequence[str]:
    ended = piecewright("explain", "-", stdin=text.encode())
    assert ended.status == 0, ended.err
    assert all(len(line) <= 80 for line in ended.out.splitlines())
    return ended.out.splitlines()


def sentences_of(text: str) -> str:
    """The same as one line, however it is broken."""
    return " ".join(" ".join(words_of(text)).split())


def test_steps_for_programs() -> None:
    block = explained(HALVES)
    assembly = block["assembly"]
    assert assembly["straight_seams_only"] is True and assembly["set_in_seams"] == 0
    (step,) = assembly["steps"]
    fixed = {key: step[key] for key in ("step", "makes", "from", "batch", "set_in", "unfinished")}
    assert fixed == {
        "step": 1,
        "makes": "u1",
        "from": ["1", "2"],
        "batch": 1,
        "set_in": False,
        "unfinished": {"width": 4.5, "height": 4.5},
    }
    assert abs(step["seam_length"] - 32**0.5) < 1e-6
    assert sorted(step["seam"]) == [[0, 0], [4, 4]], "the seam is told from end to end"
    assert assembly["proof"]["sentence"] == "2 pieces, 1 seam, closes exactly"
    names = [piece["name"] for piece in block["pieces"]]
    dark = "first" if names[int(step["from"][0]) - 1] == "one" else "second"
    assert step["press"] == {"toward": [dark], "reason": "darker"}


def test_batches_and_copies_for_programs() -> None:
    steps = explained(VANE)["assembly"]["steps"]
    made = {step["makes"]: step["batch"] for step in steps}
    for step in steps:
        for part in step["from"]:
            assert part in made or 1 <= int(part) <= 21
        assert len(step["copies"]) == len(step["press"]["toward"]) == step["batch"]
    assert sum(made.values()) == 20, "one seam fewer than pieces"


def test_foundations_for_programs() -> None:
    found = explained(VANE)["foundations"]
    assert (found["possible"], found["why_not"]) == (True, "")
    assert [section["label"] for section in found["sections"]] == ["A", "B", "C"]
    numbers = sorted(number for section in found["sections"] for number in section["order"])
    assert numbers == list(range(1, 22))
    assert [(join["first"], join["second"]) for join in found["joins"]] == [("B", "C"), ("B-C", "A")]


def test_curves_are_no_foundation() -> None:
    block = explained(CURVED)
    assert block["foundations"]["possible"] is False and block["foundations"]["sections"] == []
    assert "curved" in block["foundations"]["why_not"]
    assert block["assembly"]["curved_seams"] == 1 and block["assembly"]["steps"][0]["pinned"]


def test_set_in_seams_for_programs() -> None:
    block = explained(ATTIC_WINDOW)
    assert block["assembly"]["set_in_seams"] == 1 and not block["assembly"]["straight_seams_only"]
    first, second = block["assembly"]["steps"]
    assert (first["stops"], second["turns"]) == ([[4, 4]], [[4, 4]])
    assert "4in across and 4in down" in block["foundations"]["why_not"]


def test_steps_for_people() -> None:
    said = sentences_of(VANE)
    assert "21 pieces, 20 seams, closes exactly." in said
    first = said.partition("Step 1 · unit 1, make 4: ")[2].partition("Step 2 ")[0]
    assert re.match(r"Sew [A-E] \(\w+\) to [A-E] \(\w+\)\. Press toward [A-E] \(\w+\)\. ", first)
    assert "nfinished " in first and "Piece 1 to piece 2: the seam 4.243in long" in first
    assert said.index("Join B to C along the edges") < said.index("Join B-C to A along the edges")
    assert "and lie opposite" in said


def test_set_in_and_partial_seams_for_people() -> None:
    last = sentences_of(ATTIC_WINDOW).partition("Step 2 · ")[2]
    assert "Set in, 1 turn. Stop at the dot with the needle down, lift the foot, turn the cloth" in last
    said = sentences_of(PINWHEEL_TILING)
    first, fourth = (said.partition(f"Step {step} · ")[2].partition(" long")[0] for step in (1, 4))
    assert "leave the rest open at the dot: closed after step 4." in first
    assert "Then close the seam of step 1, which was left open." in fourth


def test_a_block_of_one_piece_needs_no_seam() -> None:
    text = 'edition 1\nblock "Plain" { finished 6in }\n'
    assert explained(text)["assembly"]["steps"] == []
    assert "1 piece, 0 seams, closes exactly." in sentences_of(text)


def library_text(title: str) -> str:
    return next(source.text for source in library_sources() if f'block "{title}"' in source.text)


def test_where_seams_cannot_lie_opposite_people_and_programs_are_told_what_is_pressed_open() -> None:
    said = sentences_of(MOON_OVER_ROOFS)
    assert "lie opposite at 1. They cannot at the rest: press open in step 4." in said
    assembly = explained(MOON_OVER_ROOFS)["assembly"]
    apart = assembly["meetings"]["apart"]
    assert len(apart) == 3 - 1 and all(4 in each["steps"] for each in apart)
    assert "open" in assembly["steps"][4 - 1]["press"]["toward"]


def test_copies_that_are_pressed_differently_are_told_by_place() -> None:
    said = sentences_of(library_text("Jacob's Ladder")).partition("Step 3 · ")[2].partition("Step 4 · ")[0]
    assert "Sew B (medium) to B (light). Press 2 toward B (medium) (top and left) and" in said
    assert "and 2 toward B (light) (right and bottom)." in said and "Piece 3 to piece 4: " in said
