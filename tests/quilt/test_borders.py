"""Borders with answers worked out by hand: plain, to a size, mitred, pieced; medallions."""

from __future__ import annotations

from collections import Counter
from math import isclose

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.quilt.model import Quilt
from support.quilts import codes, compile_text, lay, needed, pieces_called, polygon_of, size_of, try_quilt

INSIDE = "set straight 4 across 5 down { alternate pair }\n"
"""16in x 20in."""


def boxes(quilt: Quilt) -> Counter[tuple[float, float]]:
    """The boxes of the border's strips."""
    return Counter(size_of(each) for each in pieces_called(quilt, "border-strip"))


def test_butted_borders_go_on_at_the_sides_first() -> None:
    """Ruling 12; widths are finished."""
    quilt = lay(INSIDE + "border 2in in indigo")
    assert (quilt.width, quilt.height) == (20, 24)
    assert boxes(quilt) == {(2, 20): 2, (20, 2): 2}
    assert lay(INSIDE + "border 2in in indigo butted").pieces == quilt.pieces


def test_borders_go_on_from_the_inside_out() -> None:
    quilt = lay(INSIDE + "border 2in in indigo\nborder 3in in sand")
    assert (quilt.width, quilt.height) == (26, 30)
    by_cloth = {
        cloth: Counter(size_of(each) for each in pieces_called(quilt, "border-strip") if each.fabric == cloth)
        for cloth in ("indigo", "sand")
    }
    assert by_cloth == {"indigo": {(2, 20): 2, (20, 2): 2}, "sand": {(3, 24): 2, (26, 3): 2}}


def test_mitred_borders_are_as_long_as_the_side_and_twice_the_width() -> None:
    """SOURCES 2.9: at least side + 2 x width, here 16 + 4 and 20 + 4; the joins run at 45 degrees."""
    quilt = lay(INSIDE + "border 2in in indigo mitred")
    assert (quilt.width, quilt.height) == (20, 24)
    assert boxes(quilt) == {(2, 24): 2, (20, 2): 2}
    for strip in pieces_called(quilt, "border-strip"):
        assert len(strip.outline) == 4
        assert sorted(round(edge.length, 4) for edge in strip.outline)[:2] == [2.8284, 2.8284]


def test_the_strips_grain_runs_along_them() -> None:
    quilt = lay(INSIDE + "border 2in in indigo mitred")
    for need in quilt.needs:
        if need.what == "border-strip":
            ys = [edge.start.y for edge in need.outline]
            xs = [edge.start.x for edge in need.outline]
            assert max(ys) - min(ys) > max(xs) - min(xs), "straight of grain lies up and down"


@pytest.mark.parametrize(
    ("to", "sides", "ends"),
    [
        ("24in x 30in", {(4, 20): 2}, {(24, 5): 2}),
        ("16in x 24in", {}, {(16, 2): 2}),
        ("20in x 20in", {(2, 20): 2}, {}),
    ],
)
def test_a_border_to_a_size_is_as_wide_as_it_takes(
    to: str, sides: dict[tuple[float, float], int], ends: dict[tuple[float, float], int]
) -> None:
    quilt = lay(INSIDE + f"border to {to} in indigo")
    width, height = (int(each.removesuffix("in")) for each in to.split(" x "))
    assert (quilt.width, quilt.height) == (width, height)
    assert boxes(quilt) == {**sides, **ends}


def test_a_border_to_one_length_makes_a_square() -> None:
    quilt = lay(INSIDE + "border to 24in in indigo")
    assert (quilt.width, quilt.height) == (24, 24)
    assert boxes(quilt) == {(4, 20): 2, (24, 2): 2}


def test_a_border_to_a_size_rounds_an_on_point_centre_off() -> None:
    quilt = lay("""set on point 3 across 3 down of 12in with triangles in sand { alternate sail, pair }
                   border to 63in in indigo""")
    assert (quilt.width, quilt.height) == (63, 63)
    widths = {size_of(each)[0] for each in pieces_called(quilt, "border-strip")}
    assert isclose(min(widths), (63 - 50.9117) / 2, abs_tol=0.001)


# ---- pieced -----------------------------------------------------------------------------------------------


def peaks(quilt: Quilt) -> list[tuple[float, float]]:
    """The tip of each goose: the corner between its two equal sides."""
    found = []
    for goose in pieces_called(quilt, "goose"):
        edges = goose.outline
        longest = max(range(3), key=lambda at: edges[at].length)
        tip = edges[(longest + 2) % 3].start
        found.append((round(float(tip.x), 4), round(float(tip.y), 4)))
    return found


def test_a_pieced_border_without_corners_laps_the_sides() -> None:
    """5 geese of 4in along each side of 20in; top and bottom are 16in and 2 x 2in: 5 each."""
    quilt = lay(INSIDE + "border 2in of goose")
    assert (quilt.width, quilt.height) == (20, 24)
    assert dict(zip([b.draft.title for b in quilt.blocks], quilt.block_counts, strict=True))["Goose"] == 20
    assert {each.part for each in quilt.pieces if each.what == "goose"} == {"border"}


def test_a_pieced_borders_units_face_outward() -> None:
    """Ruling 20: every goose points at the quilt's edge."""
    quilt = lay(INSIDE + "border 2in of goose")
    assert len(peaks(quilt)) == 20
    for x, y in peaks(quilt):
        assert 0 in (x, y) or x == 20 or y == 24, (x, y)


def test_units_of_a_pieced_border_lie_as_they_are_posed() -> None:
    """`facing bottom` turns the geese inward: the tips lie on the seam to the blocks."""
    for x, y in peaks(lay(INSIDE + "border 2in of goose facing bottom")):
        assert x in (2, 18) or y in (2, 22), (x, y)


def test_corner_blocks_close_a_pieced_border() -> None:
    quilt = lay(INSIDE + "border 2in of goose corners plain sand")
    assert dict(zip([b.draft.title for b in quilt.blocks], quilt.block_counts, strict=True))["Goose"] == 18
    assert Counter(size_of(each) for each in pieces_called(quilt, "plain-square")) == {(2, 2): 4}
    assert needed(quilt, "plain-square") == 4


def test_corner_blocks_are_turned_round_the_quilt() -> None:
    """The pair's dark half, at its top left as drawn, lies at the quilt's own corner each time."""
    quilt = lay("set straight 1 across 1 down of 8in { row sail }\nborder 4in of plain sand corners pair")
    dark = [polygon_of(each) for each in quilt.pieces if each.what == "half"]
    corners = {(0.0, 0.0), (16.0, 0.0), (16.0, 16.0), (0.0, 16.0)}
    assert len(dark) == 4
    assert {point for face in dark for point in face.exterior.coords} >= corners


def test_a_plain_cell_of_a_pieced_border_is_a_square_of_its_width() -> None:
    """Ruling 20. On 16in: goose, plain, goose, plain, goose make 4 + 2 + 4 + 2 + 4."""
    quilt = lay("""set straight 4 across 4 down { alternate pair }
                   border 2in of goose, plain sand corners pair""")
    assert Counter(size_of(each) for each in pieces_called(quilt, "plain-square")) == {(2, 2): 8}
    assert dict(zip([b.draft.title for b in quilt.blocks], quilt.block_counts, strict=True))["Goose"] == 12


def test_a_plain_strip_border_with_corner_squares_is_made_of_squares() -> None:
    quilt = lay("set straight 1 across 1 down { row pair }\nborder 2in of plain indigo corners plain sand")
    assert Counter((size_of(each), each.fabric) for each in pieces_called(quilt, "plain-square")) == {
        ((2, 2), "indigo"): 8,
        ((2, 2), "sand"): 4,
    }


@pytest.mark.parametrize(
    ("border", "words"),
    [
        ("border 3in of pair", "The top is 22in long: 7 units make 21in, 8 make 24in."),
        ("border 3in of goose corners pair", "The top is 16in long: 2 units make 12in, 3 make 18in."),
        ("border 1 1/2in of goose, plain sand", "The top is 19in long: 8 units make 18in, 9 make 21in."),
    ],
)
def test_a_pieced_border_that_does_not_come_out_is_told_with_the_sums(border: str, words: str) -> None:
    outcome = try_quilt(INSIDE + border)
    assert codes(outcome) == ["border-unfit"]
    assert words in [each.message for each in outcome.diagnostics]


def test_a_medallion() -> None:
    """A centre of 8in; 8 + 2 x 2 = 12; with geese of 2in, 12 + 2 x 2 = 16: three geese a side and corners; a
    plain border to 20in; pairs of 4in round it: 5 a side and 4 corners."""
    quilt = lay("""
        set straight 1 across 1 down of 8in { row sail }
        border 2in in sand mitred
        border 2in of goose corners plain indigo
        border to 20in in sand
        border 4in of pair corners sail mirrored
    """)
    assert (quilt.width, quilt.height) == (28, 28)
    counts = Counter[str]()
    for block, count in zip(quilt.blocks, quilt.block_counts, strict=True):
        counts[block.draft.title] += count
    assert counts == {"Sail": 1 + 4, "Goose": 12, "Pair": 20}
    centre = next(each for each in quilt.placed if each.part == "blocks")
    assert [(edge.start.x, edge.start.y) for edge in centre.outline] == [
        (10, 10),
        (18, 10),
        (18, 18),
        (10, 18),
    ]
    assert all(
        need.count == 1 or need.reversed == 4 for need in quilt.needs if need.template.startswith("Sail")
    )


def test_the_pieces_of_a_pieced_borders_units_are_cut_as_in_any_block() -> None:
    """Not as strips, which are cut to the mark above and trimmed: a third of 4in and its allowances is no
    mark of the ruler, so the patch has a template; half of 4in is one."""
    text = """edition 1
        block "Thirds" { grid 3 x 3 of 3in  alternate plain dark, plain sand }
        block "Halves" { grid 2 x 2 of 2in  alternate plain dark, plain sand }
        quilt "Trial" {
          use "Thirds" as thirds  use "Halves" as halves
          fabric dark  fabric sand
          set straight 2 across 2 down of 8in { alternate plain sand }
          border 4in of thirds, halves corners plain sand
          binding 2in in dark  backing in sand  batting
        }"""
    made = compile_text(text)
    assert made.value is not None, made.diagnostics
    plan = plan_cutting(made.value.quilts[0]).value
    assert plan is not None
    cuts = {cut.template: (cut.kind, round(float(cut.width), 4)) for cut in plan.cuts if cut.template}
    assert cuts == {"Thirds A": ("template", 1.8333), "Halves A": ("square", 2.5)}
