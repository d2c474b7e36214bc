"""Whole quilts, compiled and planned, against the trade's numbers: what is cut, how much cloth it takes, how
large a bed wants it. Sources by SOURCES.md's numbers; DESIGN's table is common practice with no published
source, unless one is named."""

from __future__ import annotations

from fractions import Fraction
from math import isclose, sqrt
from typing import Any

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.door.records.reports import quilt_report
from support.needs import NO_MARGIN
from support.quilts import compile_text

Record = dict[str, Any]

PAIR = """
block "Halves" { finished 3in  seam top-right -- bottom-left  piece a at top-left in dark
  piece b at bottom-right in pale }
block "Quarters" { finished 3in  seam through top-left--bottom-right  seam through top-right--bottom-left
  piece a at top, bottom in dark  piece b at left, right in pale }
"""

LAST = "binding 2 1/2in in edge  backing in edge  batting"


def made(
    body: str, fabrics: str = "fabric dark  fabric pale", *, last: str = LAST, more: str = "fabric edge"
) -> Record:
    """The numbers of a quilt, cloth counted without a margin."""
    text = f"""edition 1
quilt "Trial" {{ use "Halves" as halves  use "Quarters" as quarters  {fabrics}  {more}
{body}
{last} }}{PAIR}"""
    compiled = compile_text(text)
    assert compiled.value is not None, compiled.diagnostics
    (quilt,) = compiled.value.quilts
    plan = plan_cutting(quilt, margin=NO_MARGIN)
    assert plan.value is not None, plan.diagnostics
    return quilt_report(quilt, plan.value)


def cuts(record: Record, fabric: str, kind: str = "") -> list[tuple[float, float, int, int]]:
    """What is cut of a fabric: width, height, how many, and how many pieces they make."""
    return [
        (cut["width"], cut["height"], cut["cuts"], cut["pieces"])
        for cut in record["cutting"]
        if cut["fabric"] == fabric and kind in ("", cut["kind"])
    ]


def cloth(record: Record, fabric: str) -> Record:
    """How much of a fabric is used and bought."""
    found: Record = next(each for each in record["fabrics"] if each["name"] == fabric)
    return found


# ---- triangles and sets on point ---------------------------------------------------------------------------


def test_two_triangle_squares_are_cut_from_three_and_seven_eighths() -> None:
    """SOURCES 1.2, North Hampshire Quilters: 3in finished: cut 3 7/8in, once; here 16 triangles from 8."""
    record = made("set straight 4 across 4 down { alternate halves }")
    assert cuts(record, "dark") == cuts(record, "pale") == [(3.875, 3.875, 8, 16)]
    assert {cut["kind"] for cut in record["cutting"]} >= {"half-square triangle"}


def test_quarter_square_triangles_are_cut_from_four_and_a_quarter() -> None:
    """SOURCES 1.2: 3in finished: cut 4 1/4in, twice; here 32 triangles from 8."""
    record = made("set straight 4 across 4 down { alternate quarters }")
    assert cuts(record, "dark", "quarter-square triangle") == [(4.25, 4.25, 8, 32)]


HOHN = {  # SOURCES 1.3, Marcia Hohn, 2002: block, side square cut twice, corner square cut once
    4: (7, 3.75),
    5: (8.375, 4.5),
    6: (9.75, 5.125),
    7: (11.25, 5.875),
    8: (12.625, 6.625),
    9: (14, 7.25),
    10: (15.5, 8),
    12: (18.25, 9.375),
    14: (21.125, 10.875),
    15: (22.5, 11.5),
    16: (23.875, 12.25),
}


@pytest.mark.parametrize("block", HOHN)
def test_setting_triangles_of_every_size_in_the_table(block: int) -> None:
    """Every row of the table as it is printed, 16in too (trap 10.1), and none under the exact need."""
    record = made(
        f"set on point 3 across 4 down of {block}in with triangles in sand {{ alternate halves, quarters }}",
        "fabric dark  fabric pale  fabric sand width 108in",
    )
    (side,) = cuts(record, "sand", "quarter-square triangle")
    (corner,) = cuts(record, "sand", "half-square triangle")
    assert side[2:] == (3, 2 * (3 + 4 - 2)) and corner[2:] == (2, 4)
    exact_side, exact_corner = block * sqrt(2) + (1 + sqrt(2)) / 2, block / sqrt(2) + (2 + sqrt(2)) / 4
    table_side, table_corner = HOHN[block]
    assert side[:2] == (table_side, table_side) and corner[:2] == (table_corner, table_corner)
    assert side[0] >= exact_side and corner[0] >= exact_corner
    assert record["finished"]["width"] == pytest.approx(3 * block * sqrt(2))


def test_the_museums_sampler_takes_no_more_cloth_than_it_says() -> None:
    """SOURCES 1.5, International Quilt Study Center & Museum, 2014: 63in square, 3 x 3 blocks of 12in on
    point, four squares of 12 1/2in, two of 18 1/4in cut twice; 1 3/8 yd for both, binding 5/8, back 4 yd."""
    record = made(
        "set on point 3 across 3 down of 12in with triangles in sand "
        "{ alternate halves, plain sand }  border to 63in x 63in in rim",
        "fabric dark  fabric pale  fabric sand  fabric rim",
        last="binding 2 1/2in in edge  backing in back",
        more="fabric edge  fabric back",
    )
    assert record["finished"] == {"width": 63, "height": 63}
    assert cuts(record, "sand", "square") == [(12.5, 12.5, 4, 4)]
    assert cuts(record, "sand", "quarter-square triangle") == [(18.25, 18.25, 2, 8)]
    assert cuts(record, "sand", "half-square triangle") == [(9.375, 9.375, 2, 4)]
    assert cloth(record, "edge")["buy"] <= 22.5 and cloth(record, "back")["buy"] <= 144
    assert cloth(record, "sand")["buy"] <= 49.5


# ---- cloth -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("across", "down", "finished", "cut"),
    [
        (11, 9, "3 1/2in", 4),
        (8, 7, "4 1/2in", 5),
        (7, 6, "5 1/2in", 6),
        (5, 4, "8in", 8.5),
    ],
)
def test_squares_from_a_yard(across: int, down: int, finished: str, cut: float) -> None:
    """SOURCES 2.1, Math Charts: 4in 99, 5in 56, 6in 42, 8 1/2in 20 from 44 x 36in."""
    record = made(
        f"set straight {across} across {down} down of {finished} {{ alternate plain sand }}",
        "fabric sand width 44in",
    )
    assert cuts(record, "sand") == [(cut, cut, across * down, across * down)]
    assert cloth(record, "sand")["used"] <= 36 and cloth(record, "sand")["buy_text"] == "1 yd"


@pytest.mark.parametrize(
    ("across", "down", "finished"),
    [
        (10, 9, "1 1/2in"),
        (7, 6, "2 1/2in"),
        (5, 4, "3 1/2in"),
        (4, 3, "4 1/2in"),
        (3, 3, "5 1/2in"),
    ],
)
def test_squares_from_a_fat_quarter(across: int, down: int, finished: str) -> None:
    """SOURCES 2.3, Langley Quilters' Guild: 2in 90, 3in 42, 4in 20, 5in 12, 6in 9 from 18 x 21in."""
    record = made(
        f"set straight {across} across {down} down of {finished} {{ alternate plain sand }}",
        "fabric sand fat quarter 2",
    )
    assert cloth(record, "sand")["buy_text"] == "1 fat quarter"


def test_eighty_squares_by_strips() -> None:
    """SOURCES 2.5, McCloskey: 40in usable, eighty 2 1/2in squares: 16 a strip, 5 strips, 12 1/2in; with 6%
    for shrinkage 3/8 yd."""
    record = made(
        "set straight 10 across 8 down of 2in { alternate plain sand }", "fabric sand width 40in shrinks 6%"
    )
    found = cloth(record, "sand")
    assert (found["strips"], found["used"], found["buy_text"]) == (5, 12.5, "3/8 yd")


def test_binding_goes_round_and_ten_inches_more() -> None:
    """SOURCES 2.6: 50 x 60in, 2in strips of 40in: 6, and still 6 with DESIGN's 10in for corners and joins."""
    record = made(
        "set straight 5 across 6 down of 10in { alternate halves }",
        last="binding 2in in edge",
        more="fabric edge width 40in",
    )
    assert record["binding"]["length"] == 2 * (50 + 60) + 10
    assert sum(count for _, _, count, _ in cuts(record, "edge", "strip")) == 6
    assert cloth(record, "edge")["used"] == 12


def test_backing_takes_the_cheaper_way_of_joining() -> None:
    """SOURCES 2.8: a back of 65 x 78in (a quilt of 57 x 70in): 2 x 65 = 130in, 3 5/8 yd; 2 x 78 = 156in."""
    record = made(
        "set straight 1 across 1 down of 7in { alternate halves }\nborder to 57in x 70in in dark",
        last="backing in back",
        more="fabric back width 40in",
    )
    assert (record["backing"]["width"], record["backing"]["height"]) == (65, 78)
    assert (cloth(record, "back")["used"], cloth(record, "back")["buy_text"]) == (130, "3 5/8 yd")


def test_mitred_border_strips_reach_round_their_corners() -> None:
    """SOURCES 2.9: a strip is at least the side and twice the border's width: 17 1/2 + 7 and 22 1/2 + 7in."""
    record = made(
        """set straight 1 across 1 down of 17 1/2in x 22 1/2in { row plain sand }
                     border 3 1/2in in dark mitred""",
        "fabric dark  fabric sand",
    )
    longest = sorted({max(width, height) for width, height, _, _ in cuts(record, "dark")})
    assert longest[0] >= 17.5 + 7 and longest[1] >= 22.5 + 7
    assert {min(width, height) for width, height, _, _ in cuts(record, "dark")} == {4}


# ---- beds --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("bed", "width", "length"),
    [
        ("twin", 63, 87),
        ("double", 78, 87),
        ("queen", 84, 92),
        ("king", 100, 92),
    ],
)
def test_quilts_of_the_class_lists_sizes_fit_their_beds(bed: str, width: int, length: int) -> None:
    """SOURCES 4.5, class slides: four sizes with a 12in drop. An inch off is still the bed's, two are not."""
    assert said_of_fit(bed, width, length) == []
    assert said_of_fit(bed, width + 1, length - 1) == []
    assert said_of_fit(bed, width - 2, length) == ["fits-not"]
    assert said_of_fit(bed, width, length + 2) == ["fits-not"]


def said_of_fit(bed: str, width: int, length: int) -> list[str]:
    """What is said of a quilt of one size for a bed."""
    text = f"""edition 1
quilt "Bed" {{ fabric sand  fits {bed} mattress drop 12in
set straight 1 across 1 down of 10in {{ row plain sand }}  border to {width}in x {length}in in sand
binding 2in in sand  backing in sand  batting }}"""
    return [each.code for each in compile_text(text).diagnostics]


def test_every_default_of_the_design_is_printed() -> None:
    """DESIGN's trade rules, common practice: 42in usable, 1/4in seams, binding 10in more, backing and batting
    4in over."""
    record = made("set straight 2 across 2 down { alternate halves }")
    told = {each["what"]: each["value"] for each in record["defaults"]}
    assert told["usable width of dark, pale, edge"] == "42in"
    assert told["binding beyond the perimeter"] == "10in"
    assert told["seam allowance of settings and borders"] == "1/4in"
    assert told["backing and batting over"] == "4in"
    assert record["backing"]["width"] == 6 + 8 and record["batting"]["height"] == 6 + 8
    assert isclose(record["binding"]["length"], 4 * 6 + 10)


def test_cut_sizes_are_never_less_than_the_exact_need() -> None:
    """DESIGN: never round a cut down."""
    for ninths in range(9, 40, 2):
        size = Fraction(ninths, 4)
        record = made(f"set straight 2 across 2 down of {float(size)}in {{ alternate halves }}")
        (found,) = cuts(record, "dark")
        kinds = {cut["kind"] for cut in record["cutting"] if cut["fabric"] == "dark"}
        assert kinds == {"half-square triangle"} and found[0] >= float(size) + (2 + sqrt(2)) / 4
