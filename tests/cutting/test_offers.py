"""Units made many at a time, found in the quilt's own blocks."""

from __future__ import annotations

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from support import told
from support.random_quilts import TWELVE, compiled_quilt


def offers(title: str):
    text = next(each for each in TWELVE if f'"{title}"' in each)
    return told.ways(plan_cutting(compiled_quilt(text)).value.cuts)


def test_two_triangle_squares_two_and_eight_at_a_time():
    """Ferry: 20 pinwheels of four 4in two-triangle squares. Eight at a time: 2 x 4 + 1 3/4in (common
    practice, no published source)."""
    two, eight = offers("Ferry")
    assert two.method == "two at a time" and two.text.startswith(
        "Cut 40 squares 4 7/8in of indigo and 40 of sand;"
    )
    assert eight.method == "eight at a time" and eight.text.startswith(
        "Cut 10 squares 9 3/4in of indigo and 10 of sand;"
    )
    assert two.cloth == two.singly == eight.cloth == pytest.approx(2 * 40 * 4.875**2)


def test_eight_at_a_time_takes_more_where_the_count_leaves_a_remainder():
    eight = next(each for each in offers("Sluice") if each.method == "eight at a time")
    assert eight.text.endswith("64 two-triangle squares.") and eight.cloth > eight.singly


def test_geese_four_at_a_time():
    """Slipway: 10 stars of four geese 4in x 2in: 10 squares 5 1/4in and 40 of 2 7/8in (common practice)."""
    (geese,) = offers("Slipway")
    assert geese.method == "four at a time"
    assert geese.text.startswith("Cut 10 squares 5 1/4in of sand and 40 squares 2 7/8in of indigo;")
    assert geese.cloth == pytest.approx(10 * 5.25**2 + 40 * 2.875**2)


def test_strip_sets_are_as_wide_as_the_formula_says():
    """SOURCES 2.10: (3 1/2 - 1/2) x 3 + 1/2 = 9 1/2in."""
    sets = [each for each in offers("Capstan") if each.method == "strip set"]
    assert [each.text for each in sets] == [
        "Sew strips 3 1/2in wide of cream, indigo and cream side by side, 9 1/2in wide in all; 1 set, cut "
        "across every "
        "3 1/2in: 9 rows.",
        "Sew strips 3 1/2in wide of indigo, cream and indigo side by side, 9 1/2in wide in all; 2 sets, "
        "cut across every "
        "3 1/2in: 18 rows.",
    ]


def test_a_quilt_of_templates_and_frames_offers_nothing():
    assert offers("Tideline") == [] and offers("Towpath") == []


def test_nine_strips_sewn_are_as_wide_as_published():
    """SOURCES 2.10: nine strips of 3 1/4in come to 25 1/4in."""
    roles = ["light", "dark"]
    rails = "".join(f"  piece rail{n} at between A{n}, B{n + 1} in {roles[n % 2]}\n" for n in range(1, 10))
    seams = "".join(f"  seam A{n} -- B{n}\n" for n in range(2, 10))
    block = f'block "Nine Rails" {{\n  finished 6in x 24 3/4in\n  grid 1 x 9\n{seams}{rails}}}\n'
    quilt = (
        'quilt "Trial" {\n  use "Nine Rails" as rails\n  fabric dark\n  fabric light\n'
        "  set straight 4 across 1 down { alternate rails }\n  binding 2in in dark\n"
        "  backing in light\n  batting\n}\n"
    )
    made = compiled_quilt(f"edition 1\n{block}{quilt}")
    (text,) = {each.text for each in told.ways(plan_cutting(made).value.cuts)}
    assert text.startswith(
        "Sew strips 3 1/4in wide of dark, light, dark, light, dark, light, dark, light "
        "and dark side by side, 25 1/4in wide in all;"
    )


def pair_quilt(across: int, way: str = "") -> str:
    return f"""edition 1
quilt "Few or Many" {{
  use "Half-Square Triangle" version 1 as half with dark = ink, light = chalk
  fabric ink "Ink blue" {way}  fabric chalk "Chalk white"
  set straight {across} across 1 down of 3in {{ row {across} half }}
  binding 2 1/4in in ink  backing in chalk  batting
}}
"""


@pytest.mark.parametrize(("across", "methods"), [
    (3, ["two at a time"]), (5, ["two at a time"]), (6, ["two at a time", "eight at a time"]),
])  # fmt: skip
def test_eight_at_a_time_is_not_offered_for_a_few(across, methods):
    """Whoever wants three squares does not make eight (common practice, no published source)."""
    cuts = plan_cutting(compiled_quilt(pair_quilt(across))).value.cuts
    found = told.ways(cuts)
    assert [each.method for each in found[: len(methods)]] == methods
    assert len({each.method for each in found}) == len(methods)
    assert all("of Ink blue and" in each.text or "of Chalk white and" in each.text for each in found)


@pytest.mark.parametrize(("way", "methods"), [("one way", set()), ("striped", {"two at a time"})])
def test_triangles_of_a_print_with_a_direction_are_not_sewn_before_they_are_cut(way, methods):
    """Sewn first, half of the triangles come out upside down, and of eight, half lie across the print
    (common practice, no published source)."""
    cuts = plan_cutting(compiled_quilt(pair_quilt(16, way))).value.cuts
    assert {each.method for each in told.ways(cuts)} == methods


@pytest.mark.parametrize(("down", "methods"), [(3, set()), (4, {"strip set"})])
def test_a_strip_set_is_not_offered_for_a_few_rows(down, methods):
    """Common practice, no published source."""
    made = compiled_quilt(f"""edition 1
quilt "Rows" {{
  use "Nine Patch" as patch with dark = ink, light = chalk
  fabric ink  fabric chalk
  set straight 1 across {down} down of 9in {{ alternate patch }}
  binding 2 1/4in in ink  backing in chalk  batting
}}
""")
    cuts = plan_cutting(made).value.cuts
    few = [each for each in told.ways(cuts) if each.text.endswith(f": {down} rows.")]
    assert {each.method for each in few} == methods


def quarter_rows(cloth: str, across: int = 3) -> list:
    """Nine patches of 6in, their cloths as written: what may be made in strip sets."""
    made = compiled_quilt(f"""edition 1
quilt "Quarters" {{
  use "Nine Patch" version 1 as patch with dark = ink, light = chalk
  fabric ink {cloth}  fabric chalk {cloth}  fabric oat
  set straight {across} across 4 down of 4 1/2in {{ alternate patch }}
  binding 2 1/4in in oat  backing in oat  batting
}}
""")
    plan = plan_cutting(made).value
    assert plan is not None
    return [each for each in told.ways(plan.cuts) if each.method == "strip set"]


def test_a_strip_set_is_as_long_as_the_cloth_it_is_cut_from():
    """Twelve rows every 2in: of a bolt 42in wide one set has 21 of them, of fat quarters 21in long 10."""
    (bolt, _) = quarter_rows("")
    (quarters, _) = quarter_rows("fat quarter 3")
    assert "; 1 set, cut across every 2in: 12 rows." in bolt.text and " long" not in bolt.text
    assert "; 2 sets, cut across every 2in: 12 rows." in quarters.text
    assert "Sew strips 2in wide and 21in long of " in quarters.text
    assert quarters.cloth == 2 * 3 * 2 * 21 and bolt.cloth == 3 * 2 * 42


def test_scraps_that_do_not_hold_two_rows_are_offered_for_no_strip_set():
    """A scrap of 3in x 3in holds a square of 2in, and no strip to cut rows from."""
    assert quarter_rows("scrap 3in x 3in " * 60) == []
    assert "; 3 sets, " in quarter_rows("scrap 4in x 8in " * 12)[0].text


@pytest.mark.parametrize("way", ["one way", "striped"])
def test_a_print_with_a_direction_is_offered_for_no_strip_set(way):
    """Rows are turned as their blocks lie, and the print with them (common practice, no published source)."""
    assert quarter_rows(way) == []
