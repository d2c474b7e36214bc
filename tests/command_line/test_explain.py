"""`piecewright explain`: facts of a block, told to people and to programs, and what a code means."""

from __future__ import annotations

import json
import re
from math import acos, degrees, dist, hypot, pi
from pathlib import Path
from typing import Any

import pytest
from piecewright import __version__
from support.block_files import FAULTY, HALVES, VANE, put
from support.command import piecewright

Outline = list[list[float]]

ROUND = """\
edition 1

block "Round" {
  finished 6in
  seam circle around center radius 2in
}
"""

WITH_UNITS = """\
edition 1

block "Pair" {
  finished 3in
  faces top-left
  seam top-right -- bottom-left
  piece shade at top-left in dark
  piece shine at bottom-right in light
}

block "Harbour" version 3 {
  grid 2 x 2 of 3in
  also "Haven"
  note "Mind the corners."
  use "Pair" as pair
  row pair facing top-left, plain pale
  row plain pale, pair facing bottom-right
}
"""


def explained(text: str) -> list[dict[str, Any]]:
    """The blocks that explain tells programs of."""
    ended = piecewright("explain", "-", "--format", "json", stdin=text.encode())
    assert ended.status == 0, ended.err
    told = json.loads(ended.out)
    assert told["piecewright"] == __version__
    return list(told["blocks"])


def area(outline: Outline) -> float:
    """Square inches within an outline, positive where it runs clockwise as seen (shoelace formula)."""
    following = [*outline[1:], outline[0]]
    return sum(x * v - u * y for (x, y), (u, v) in zip(outline, following, strict=True)) / 2


def test_fixed_keys_are_all_there() -> None:
    (vane,) = explained(VANE)
    assert (vane["title"], vane["version"]) == ("Tidewater Vane", 2)
    assert vane["fingerprint"] == "1-4fd3dcaea9df5828"  # as on every machine
    assert vane["finished"] == {"width": 9, "height": 9}
    assert set(vane["pieces"][0]) >= {"number", "name", "fabric", "template", "reversed", "outline", "area"}
    assert set(vane["templates"][0]) >= {
        "label",
        "cut",
        "cut_reversed",
        "fabrics",
        "finished_outline",
        "cut_outline",
        "reversible",
        "method",
    }
    assert set(vane["templates"][0]["method"]) >= {"kind", "width", "height", "yields", "excess", "reason"}


def test_how_templates_are_cut_singly() -> None:
    """3in finished and 7/8in more, cut once: common practice, and worked out in DESIGN's table."""
    pair, harbour = explained(WITH_UNITS)
    for each in pair["templates"]:
        assert each["method"]["kind"] == "half-square triangle"
        assert (each["method"]["width"], each["method"]["height"]) == (3.875, 3.875)
        assert each["method"]["yields"] == 2
    assert {each["method"]["kind"] for each in harbour["templates"]} == {"half-square triangle", "square"}


def test_ruler_decides_what_needs_a_template() -> None:
    """7/8in lies between the marks of a ruler of quarters, and 1/8in over is too much to cut over."""
    text = piecewright("explain", "-", "--ruler", "1/4in", stdin=WITH_UNITS.encode()).out
    assert "half-square triangle: 3 7/8in" not in text
    assert "by its template: " in text
    assert "half-square triangle: 3 7/8in" in piecewright("explain", "-", stdin=WITH_UNITS.encode()).out


QUILT = """
quilt "Haven Steps" version 4 {
  use "Harbour" as harbour with background = pale
  fabric indigo "Indigo print"
  fabric sand
  roles "Sea" dark = indigo, light = sand, pale = sand
  roles "Land" dark = sand, light = indigo, pale = indigo
  set straight 2 across 3 down { alternate harbour, plain sand }
  border 2in in indigo
}
"""


def test_quilts_are_told_in_each_colourway() -> None:
    """2 x 3 cells of 6in and 2in round them: 16in x 22in; 24 half-square triangles in three blocks of two."""
    text = (WITH_UNITS + QUILT).encode()
    told = json.loads(piecewright("explain", "-", "--format", "json", stdin=text).out)
    sea, land = told["quilts"]
    assert [sea["colourway"], land["colourway"]] == ["Sea", "Land"]
    assert sea["finished"] == {"width": 16, "height": 22}
    (block,) = sea["blocks"]
    assert (block["title"], block["version"], block["count"]) == ("Harbour", 3, 3)
    keys = {"fabric", "part", "kind", "width", "height", "cuts", "pieces", "template"}
    assert all(keys <= set(cut) for cut in sea["cutting"])
    halves = [cut for cut in sea["cutting"] if cut["kind"] == "half-square triangle"]
    assert sorted((cut["fabric"], cut["width"], cut["cuts"], cut["pieces"]) for cut in halves) == [
        ("indigo", 3.875, 3, 6),
        ("sand", 3.875, 3, 6),
    ]
    keys = {"name", "usable_width", "used", "strips", "buy", "buy_text"}
    assert all(keys <= set(each) for each in sea["fabrics"])


def test_the_rows_and_borders_of_a_quilt_are_told_with_their_proof() -> None:
    """Rows of block and square, every other one upside down; then a border at the sides first."""
    text = (WITH_UNITS + QUILT).encode()
    sea = json.loads(piecewright("explain", "-", "--format", "json", stdin=text).out)["quilts"][0]
    made = sea["assembly"]
    assert made["proof"]["closes"] and made["proof"]["sentence"].endswith("closes exactly")
    assert [stage["title"] for stage in made["stages"]] == ["Rows", "Centre", "Border 1"]
    names = {part["name"]: part["what"] for part in made["parts"]}
    (row,) = made["stages"][0]["rows"]
    assert (tuple(names[part] for part in row["parts"]), row["batch"]) == (("Harbour", "plain square"), 3)
    assert made["stages"][1]["rows"][0]["turned"] == [0, 180, 0], "the middle row lies upside down"
    sides, ends = made["stages"][2]["rows"]
    assert sides["unfinished"] == {"width": 16.5, "height": 18.5}
    assert ends["unfinished"] == {"width": 16.5, "height": 22.5} and ends["parts"][1] == sides["name"]
    assert len(made["steps"]) == len({step["makes"] for step in made["steps"]})


def test_quilts_are_told_to_people() -> None:
    text = piecewright("explain", "-", stdin=(WITH_UNITS + QUILT).encode()).out
    sea, land = text.index("Haven Steps, Sea, version 4"), text.index("Haven Steps, Land, version 4")
    assert "Finished 16in x 22in; straight, 2 across and 3 down" in text[sea:land]
    assert re.search(r"3  squares 3 7/8in +6 half-square triangles +Harbour", text[sea:land])
    assert re.search(r"Indigo print +[0-9/ ]+yd", text[sea:land]) and "counted in" in text[sea:land]
    said = " ".join(text[sea:land].split())
    assert "Border 1" in said and "Unfinished 16 1/2in x 22 1/2in, finished 16in x 22in." in said
    assert max(len(line) for line in text.splitlines()) <= 80
    assert land < text.index("\nHarbour, version 3\n"), "the quilt is told first, then its blocks"


def test_vane_has_twenty_one_pieces_of_five_templates() -> None:
    """Four quarter turns of five pieces, two of them one shape, and the middle: 4 x 5 + 1."""
    (vane,) = explained(VANE)
    assert [each["number"] for each in vane["pieces"]] == list(range(1, 22))
    counts = [
        (each["cut"], each["cut_reversed"], each["fabrics"], each["reversible"]) for each in vane["templates"]
    ]
    assert sorted(counts, key=str) == [
        (1, 0, {"medium": 1}, True),
        (4, 0, {"background": 4}, False),
        (4, 0, {"background": 4}, False),
        (4, 0, {"light": 2, "dark": 2}, False),
        (8, 0, {"dark": 4, "background": 4}, True),
    ]
    assert sum(each["area"] for each in vane["pieces"]) == pytest.approx(81, abs=1e-6)


def test_outlines_run_clockwise_without_a_closing_repeat() -> None:
    for block in explained(VANE) + explained(WITH_UNITS) + explained(HALVES):
        outlines = [each["outline"] for each in block["pieces"]]
        for template in block["templates"]:
            outlines += [template["finished_outline"], template["cut_outline"]]
            assert area(template["cut_outline"]) > area(template["finished_outline"])
        for outline in outlines:
            assert outline[0] != outline[-1] and area(outline) > 0
        for piece in block["pieces"]:
            assert area(piece["outline"]) == pytest.approx(piece["area"], abs=1e-6)


def test_lengths_are_numbers_and_whole_ones_whole() -> None:
    ended = piecewright("explain", "-", "--format", "json", stdin=HALVES.encode())
    assert '"finished": {"width": 4, "height": 4}' in ended.out
    (halves,) = explained(HALVES)
    assert halves["allowance"] == 0.25 and halves["pieces"][0]["area"] == 8


def test_two_halves_have_the_angles_and_sides_of_a_halved_square() -> None:
    (halves,) = explained(HALVES)
    (template,) = halves["templates"]
    assert sorted(template["angles"]) == [45, 45, 90]
    assert sorted(each["length"] for each in template["sides"]) == pytest.approx([4, 4, 4 * 2**0.5])
    assert [each["outside"] for each in template["sides"]].count(False) == 1
    assert template["reversible"] and template["cut"] == 2


def test_angles_are_those_of_the_finished_outline() -> None:
    """Against the law of cosines on the outline's own corners."""
    (vane,) = explained(VANE)
    for template in vane["templates"]:
        corners = template["finished_outline"]
        for at, angle in enumerate(template["angles"]):
            before, here, after = corners[at - 1], corners[at], corners[(at + 1) % len(corners)]
            a, b, c = dist(before, here), dist(here, after), dist(before, after)
            assert angle == pytest.approx(degrees(acos((a * a + b * b - c * c) / (2 * a * b))), abs=1e-4)


def test_arcs_are_flattened_to_a_thousandth_and_told_exactly_beside() -> None:
    disc, frame = sorted(explained(ROUND)[0]["pieces"], key=lambda each: float(each["area"]))
    assert disc["area"] == pytest.approx(4 * pi, abs=1e-6)
    assert all(arc["center"] == [3, 3] and arc["radius"] == 2 for arc in disc["arcs"]) and disc["arcs"]
    outline = disc["outline"]
    for (x, y), (u, v) in zip(outline, [*outline[1:], outline[0]], strict=True):
        assert hypot(x - 3, y - 3) == pytest.approx(2, abs=1e-6)
        assert 2 - hypot((x + u) / 2 - 3, (y + v) / 2 - 3) <= 0.001
    assert frame["holes"] and area(frame["holes"][0]) < 0
    assert frame["area"] == pytest.approx(36 - 4 * pi, abs=1e-6)


def test_cut_arcs_are_offset_by_the_allowance() -> None:
    templates = explained(ROUND)[0]["templates"]
    disc = min(templates, key=lambda each: area(each["finished_outline"]))
    assert {arc["radius"] for arc in disc["cut_arcs"]} == {2.25}
    assert {arc["radius"] for arc in disc["arcs"]} == {2}


def test_units_are_told_as_they_lie() -> None:
    harbour = next(each for each in explained(WITH_UNITS) if each["title"] == "Harbour")
    assert [
        (each["alias"], each["title"], each["turned"], each["mirrored"], each["box"])
        for each in harbour["units"]
    ] == [
        ("pair", "Pair", 0, False, {"left": 0, "top": 0, "right": 3, "bottom": 3}),
        ("pair", "Pair", 180, False, {"left": 3, "top": 3, "right": 6, "bottom": 6}),
    ]
    assert harbour["uses"] == [{"title": "Pair", "version": 1}]
    assert (harbour["also"], harbour["notes"]) == (["Haven"], ["Mind the corners."])
    shades = {each["number"]: each["outline"] for each in harbour["pieces"] if each["name"] == "shade"}
    assert any([0, 0] in outline for outline in shades.values())
    assert any([6, 6] in outline for outline in shades.values())


def test_a_quilt_tells_blocks_from_elsewhere_at_their_sizes_in_it(tmp_path: Path) -> None:
    """A block of 3in that is set at 6in and again at 4in in a border is told at 6in and at 4in."""
    pair = WITH_UNITS.split("\n\nblock ")[1]
    put(tmp_path / "pair.block", "edition 1\nblock " + pair)
    asks = put(
        tmp_path / "twice.quilt",
        """edition 1
quilt "Twice" {
  fabric sand
  fabric rust
  use "Pair" as pair with dark = rust, light = sand
  set straight 2 across 2 down of 6in { alternate pair }
  border 4in of pair corners plain sand
  binding 2 1/2in in rust  backing in sand  batting
}
""",
    )
    blocks = json.loads(piecewright("explain", asks, "--format", "json").out)["blocks"]
    assert [(each["title"], each["finished"]["width"]) for each in blocks] == [("Pair", 6), ("Pair", 4)]


def test_blocks_come_in_the_files_order_and_those_from_elsewhere_last(tmp_path: Path) -> None:
    pair, harbour = WITH_UNITS.split("\n\nblock ")[1:]
    put(tmp_path / "pair.block", "edition 1\nblock " + pair)
    asks = put(tmp_path / "harbour.block", "edition 1\nblock " + harbour + HALVES.partition("\n")[2])
    ended = piecewright("explain", asks, "--format", "json")
    assert [(each["title"], each["from_elsewhere"]) for each in json.loads(ended.out)["blocks"]] == [
        ("Harbour", False),
        ("Two Halves", False),
        ("Pair", True),
    ]


def test_text_tells_every_piece_template_unit_and_default_in_eighty_columns() -> None:
    for text in (VANE, WITH_UNITS, HALVES, ROUND):
        ended = piecewright("explain", "-", stdin=text.encode())
        assert ended.status == 0 and max(map(len, ended.out.splitlines())) <= 80
        assert "Defaults in force" in ended.out and "1/4in" in ended.out
    vane = piecewright("explain", "-", stdin=VANE.encode()).out
    assert "Tidewater Vane, version 2" in vane and "Finished 9in x 9in; 21 pieces, 5 templates." in vane
    assert "Cut 2 of light, 2 of dark. This side up." in vane
    assert "90°, 67.4°, 22.6°" in vane
    units = piecewright("explain", "-", stdin=WITH_UNITS.encode()).out
    assert "turned 180° (facing bottom-right)" in units


def test_long_and_odd_titles_stay_in_their_columns() -> None:
    text = WITH_UNITS.replace('"Pair"', '"' + "中" * 60 + '"').replace("shade", "s" * 40)
    ended = piecewright("explain", "-", stdin=text.encode())
    assert ended.status == 0
    for line in ended.out.splitlines():
        assert len(line) + line.count("中") <= 80, line


def test_faulty_file_is_not_explained() -> None:
    for form in ("text", "json"):
        ended = piecewright("explain", "-", "--format", form, stdin=FAULTY.encode())
        assert ended.status == 1 and ended.out == "" and "<stdin>:5:18:" in ended.err


def test_code_is_explained_with_both_examples() -> None:
    ended = piecewright("explain", "seam-hangs")
    assert ended.status == 0 and ended.out.startswith("seam-hangs: ")
    assert "This gives the message:" in ended.out and "This is right:" in ended.out
    told = json.loads(piecewright("explain", "seam-hangs", "--format", "json").out)
    assert told["code"] == "seam-hangs" and told["wrong"].startswith("edition 1\n")


def test_unknown_code_offers_the_nearest() -> None:
    ended = piecewright("explain", "seam-hang")
    assert ended.status == 2 and "seam-hangs" in ended.err


def test_file_whose_name_looks_like_a_code_is_a_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    put(tmp_path / "seam-hangs", HALVES)
    assert piecewright("explain", "seam-hangs").out.startswith("Two Halves, version 1")


ON_POINT = """edition 1
block "Slant" {
  finished 6in
  seam top -- left
  seam right -- bottom
  piece near at top-left in pale
  piece far at bottom-right in pale
  piece band at center in dark
  grain along top -- left on band
}
"""


def test_a_strip_on_point_is_measured_along_its_grain() -> None:
    """From corner to corner 6√2in; across, 6√2in less two corners of 3/√2in. Its box on the block, 6in x 6in,
    is no size that anybody cuts."""
    told = piecewright("explain", "-", stdin=ON_POINT.encode()).out
    assert "finished: 8.485in along the grain x 4.243in, 27 square inches" in told
    assert "finished: 3in x 3in, 4 1/2 square inches" in told  # the corners' grain runs with the block


def test_pieces_of_one_template_are_measured_alike_however_they_lie(tmp_path: Path) -> None:
    """Eight diamonds of a star: upright, level and on the slant, each 3in along its sides."""
    block = put(
        tmp_path / "star.block",
        """edition 1
block "Skerry Star" {
  finished 10in
  point tip = meet center at 22.5deg, outline
  point crook = meet tip parallel to center--top-right, top--bottom
  turn 8 about center {
    seam center -- crook -- tip -- next crook
    piece ray at between center, tip in dark, light
  }
}
""",
    )
    text = piecewright("explain", str(block)).out
    rays = [line for line in text[text.index("\nPieces") :].splitlines() if " ray " in line]
    assert len(rays) == 8 and "along x across grain" in text
    assert len({tuple(line.split()[4:7]) for line in rays}) == 1


def test_parts_that_are_set_in_are_told_so_to_programs() -> None:
    """Four plain rectangles lapped round a square: no seam goes straight through."""
    text = """edition 1
quilt "Four Sills" {
  fabric sand  fabric dark
  set straight 3 across 3 down of 4in { alternate plain sand
    place plain dark in A1..C2  place plain dark in C1..D3
    place plain dark in B3..D4  place plain dark in A2..B4 }
  binding 2 1/2in in dark  backing in sand  batting
}
"""
    (quilt,) = json.loads(piecewright("explain", "-", "--format", "json", stdin=text.encode()).out)["quilts"]
    ways = [row["way"] for stage in quilt["assembly"]["stages"] for row in stage["rows"]]
    assert ways == ["down", "across", "down", "set in"]
