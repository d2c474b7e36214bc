"""Fabrics, roles and colourways; binding, backing and batting; beds."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

import pytest
from piecewright.measure.length import UNITS
from piecewright.quilt.mattress import MATTRESSES
from piecewright.quilt.model import Quilt
from piecewright.words.say import INCHES
from piecewright.words.work.defaults import SOURCES, default_words
from support.quilts import area_of, codes, lay, lay_all, try_quilt

ONE_PAIR = "set straight 2 across 2 down { alternate pair }\n"


def cloths(quilt: Quilt) -> Counter[str]:
    """How many pieces of each fabric the top shows."""
    return Counter(each.fabric for each in quilt.pieces)


# ---- roles ------------------------------------------------------------------------------------------------


def test_a_role_that_bears_a_fabrics_name_needs_no_entry() -> None:
    assert cloths(lay(ONE_PAIR)) == {"dark": 4, "pale": 4}


def test_roles_are_mapped_for_the_whole_quilt() -> None:
    quilt = lay(ONE_PAIR + "roles dark = indigo, pale = sand")
    assert cloths(quilt) == {"indigo": 4, "sand": 4}
    assert quilt.colourway == ""


def test_roles_may_be_swapped_and_may_share_a_fabric() -> None:
    straight = lay(ONE_PAIR)
    swapped = lay(ONE_PAIR + "roles dark = pale, pale = dark")
    assert [each.fabric for each in swapped.pieces] == [
        {"dark": "pale", "pale": "dark"}[each.fabric] for each in straight.pieces
    ]
    assert cloths(lay(ONE_PAIR + "roles dark = sand, pale = sand")) == {"sand": 8}


def test_a_use_renames_all_its_roles_at_once() -> None:
    """Ruling 9: `with` renames all at once, so a swap works; the unit's word is on the left."""
    uses = """use "Pair" as pair
              use "Pair" as flip with dark = pale, pale = dark
              use "Pair" as other with dark = sand"""
    quilt = lay("set straight 3 across 1 down { row pair, flip, other }", uses=uses)
    left = [each.fabric for each in quilt.pieces if each.what == "half"]
    assert left == ["dark", "pale", "sand"]
    assert cloths(quilt) == {"dark": 2, "pale": 3, "sand": 1}
    assert len(quilt.blocks) == 1, "renaming makes no other block"
    assert [dict(each.fabrics)["dark"] for each in quilt.placed] == ["dark", "pale", "sand"]


def test_a_renamed_role_may_be_mapped_again() -> None:
    uses = 'use "Pair" as pair with dark = trim-cloth\n'
    assert cloths(lay("set straight 1 across 1 down { row pair } roles trim-cloth = sand", uses=uses)) == {
        "sand": 1,
        "pale": 1,
    }


def test_every_in_takes_a_role_or_a_fabric() -> None:
    """Ruling 20."""
    quilt = lay(
        ONE_PAIR
        + """
        sashing 1in in night posts in dark around
        border 2in in night
        roles night = indigo, dark = sand
    """,
        last="binding 2in in night  backing in night  batting",
    )
    assert quilt.binding is not None and quilt.binding.fabric == "indigo"
    assert quilt.backing is not None and quilt.backing.fabric == "indigo"
    assert {each.fabric for each in quilt.pieces if each.part in ("sashing", "border")} == {"indigo"}
    assert {each.fabric for each in quilt.pieces if each.part == "posts"} == {"sand"}


def test_roles_without_a_fabric_are_listed() -> None:
    """Ruling 9, `background` included."""
    outcome = try_quilt(
        "set on point 2 across 2 down { alternate sail, pair } border 1in in gold",
        fabrics="fabric sand fabric indigo",
    )
    assert codes(outcome) == ["role-without-fabric", "role-without-fabric"]
    listed, written = (each.message for each in outcome.diagnostics if each.code == "role-without-fabric")
    assert listed == (
        '`pale` (of "Sail" and "Pair"), `dark` (of "Sail" and "Pair") and `background` have no fabric.'
    )
    assert written.startswith("`gold` is no fabric")


def test_order_of_statements_makes_no_difference() -> None:
    body = [ONE_PAIR, "sashing 1in in sand", "border 1in in indigo", "roles dark = sand"]
    forward, backward = lay("\n".join(body)), lay("\n".join(reversed(body)))
    assert forward.pieces == backward.pieces
    assert [(n.fabric, n.count, n.what) for n in forward.needs] == [
        (n.fabric, n.count, n.what) for n in backward.needs
    ]


# ---- colourways -------------------------------------------------------------------------------------------


def test_each_titled_colourway_is_a_quilt_counted_for_itself() -> None:
    sea, land = lay_all(ONE_PAIR + 'roles "Sea" dark = indigo\nroles "Land" dark = sand, pale = indigo')
    assert (sea.colourway, land.colourway) == ("Sea", "Land")
    assert cloths(sea) == {"indigo": 4, "pale": 4}
    assert cloths(land) == {"sand": 4, "indigo": 4}
    assert {(n.fabric, n.count) for n in sea.needs} == {("indigo", 4), ("pale", 4)}
    assert {(n.fabric, n.count) for n in land.needs} == {("sand", 4), ("indigo", 4)}
    assert [each.outline for each in sea.pieces] == [each.outline for each in land.pieces]


def test_a_role_missing_from_one_colourway_is_told_with_its_title() -> None:
    uses = 'use "Pair" as pair with dark = night\n'
    outcome = try_quilt(ONE_PAIR + 'roles "Sea" night = indigo\nroles "Land" pale = sand', uses=uses)
    (said,) = [each for each in outcome.diagnostics if each.code == "role-without-fabric"]
    assert '"Land"' in said.message and "`night`" in said.message


# ---- fabrics ----------------------------------------------------------------------------------------------


def test_fabrics_say_how_they_are_bought() -> None:
    quilt = lay(
        ONE_PAIR,
        fabrics="""
        fabric dark "Indigo print" width 40in shrinks 3% one way
        fabric pale striped
        fabric sand fat quarter 2 scrap 10in x 12in scrap 9in
    """,
        last="binding 2in in sand  backing in pale  batting",
    )
    dark, pale, sand = quilt.fabrics
    assert (dark.name, dark.title, dark.usable_width, dark.shrinkage) == (
        "dark",
        "Indigo print",
        40,
        Fraction(3, 100),
    )
    assert (dark.one_way, dark.striped, dark.scraps) == (True, False, ())
    assert (pale.title, pale.usable_width, pale.striped, pale.one_way) == ("pale", 42, True, False)
    assert [(each.width, each.height, each.fat_quarter) for each in sand.scraps] == [
        (21, 18, True),
        (21, 18, True),
        (10, 12, False),
        (9, 9, False),
    ]


def test_what_is_left_out_is_printed_as_a_default() -> None:
    quilt = lay(
        ONE_PAIR + "fits twin mattress drop 1in",
        fabrics="fabric dark width 40in fabric pale fabric sand fabric indigo",
        last=LAST_TO_FIT,
    )
    named = dict(default_words(INCHES, each) for each in quilt.defaults)
    assert named["usable width of pale, sand, indigo"] == "42in"
    assert named["shrinkage of dark, pale, sand, indigo"] == "none"
    assert named["binding beyond the perimeter"] == "10in"
    assert named["backing and batting over"] == "4in"
    assert "drop" not in named
    assert named["twin mattress"].startswith("39in x 75in")


LAST_TO_FIT = "border to 41in x 76in in sand  binding 2 1/2in in indigo  backing in sand  batting"


# ---- binding, backing, batting ----------------------------------------------------------------------------


def test_binding_goes_once_round_and_ten_inches_more() -> None:
    """Perimeter + 10in (SOURCES 2.6: 10, 12 and 24in are all seen)."""
    quilt = lay(
        "set straight 5 across 6 down of 10in { alternate pair }",
        last="binding 2 1/4in in indigo bias backing in sand batting",
    )
    assert quilt.binding is not None
    assert (quilt.binding.fabric, quilt.binding.strip_width, quilt.binding.bias) == (
        "indigo",
        Fraction(9, 4),
        True,
    )
    assert quilt.binding.length == 2 * (50 + 60) + 10


def test_backing_and_batting_reach_over_each_side() -> None:
    """SOURCES 2.8: 4in a side is the commonest margin."""
    quilt = lay(
        "set straight 5 across 6 down of 10in { alternate pair }",
        last="binding 2in in indigo backing in sand batting 3in over",
    )
    assert quilt.backing is not None and quilt.batting is not None
    assert (quilt.backing.fabric, quilt.backing.width, quilt.backing.height) == ("sand", 58, 68)
    assert (quilt.batting.fabric, quilt.batting.width, quilt.batting.height) == ("", 56, 66)


def test_a_quilt_cuts_only_what_it_mentions() -> None:
    outcome = try_quilt(ONE_PAIR, last="backing in sand")
    assert codes(outcome) == ["quilt-incomplete"] and outcome.value is not None
    (said,) = [each for each in outcome.diagnostics if each.code == "quilt-incomplete"]
    assert said.message == "This quilt mentions no binding or batting, so none is cut."
    (quilt,) = outcome.value.quilts
    assert quilt.binding is None and quilt.batting is None and quilt.backing is not None


# ---- beds -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("bed", "width", "length"),
    [
        ("twin", 63, 87),
        ("double", 78, 87),
        ("queen", 84, 92),
        ("king", 100, 92),
        ("single", 63, 87),
        ("full", 78, 87),
    ],
)
def test_beds_want_the_published_sizes(bed: str, width: int, length: int) -> None:
    """SOURCES 4.5, class slides: 63 x 87, 78 x 87, 84 x 92, 100 x 92in with a 12in drop on three sides."""
    inside = "set straight 2 across 3 down of 20in { alternate pair }\n"
    lay(inside + f"border to {width}in x {length}in in sand\nfits {bed} mattress drop 12in")
    lay(inside + f"border to {width + 1}in x {length - 1}in in sand\nfits {bed} mattress")
    outcome = try_quilt(inside + f"border to {width + 2}in x {length - 3}in in sand\nfits {bed} mattress")
    assert codes(outcome) == ["fits-not"]
    (said,) = [each for each in outcome.diagnostics if each.code == "fits-not"]
    assert "2in too wide and 3in too short" in said.message


def test_the_crib_lies_within_the_law() -> None:
    """16 CFR 1508.3 (SOURCES 4.3): 71 +- 1.6cm (28 +- 5/8in) by 133 +- 1.6cm (52 3/8 +- 5/8in) inside."""
    crib = MATTRESSES["crib"]
    assert abs(crib.width - 28) <= Fraction(5, 8) and abs(crib.length - Fraction(419, 8)) <= Fraction(5, 8)
    assert abs(crib.width / UNITS["cm"] - 71) <= Fraction(16, 10)
    assert abs(crib.length / UNITS["cm"] - 133) <= Fraction(16, 10)
    assert "16 CFR 1508.3" in SOURCES[crib.source]


def test_every_mattress_says_which_list_it_is_from() -> None:
    assert all(SOURCES[each.source] for each in MATTRESSES.values())


def test_an_unknown_bed_is_told_with_a_near_one() -> None:
    outcome = try_quilt(ONE_PAIR + "fits quean mattress")
    (said,) = [each for each in outcome.diagnostics if each.code == "mattress-unknown"]
    assert "`queen`" in said.help


# ---- all together -----------------------------------------------------------------------------------------


def test_areas_of_the_cloths_add_up_to_the_quilt() -> None:
    quilt = lay(
        """set straight 4 across 5 down of 8in { alternate pair, sail }
                   sashing 1 1/2in in sand posts in indigo around
                   border 2in in sand\nborder to 60in x 70in in indigo""",
        fabrics="""
                   fabric dark fabric pale fabric sand fabric indigo""",
    )
    assert (quilt.width, quilt.height) == (60, 70)
    total = sum(area_of([each for each in quilt.pieces if each.fabric == cloth]) for cloth in cloths(quilt))
    assert round(total, 6) == round(float(quilt.width * quilt.height), 6)
