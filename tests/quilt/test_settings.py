"""Sets with answers worked out by hand: straight, on point and in rows, with sashing, posts and places."""

from __future__ import annotations

from collections import Counter
from math import isclose, sqrt

import pytest
from piecewright.quilt.model import Quilt
from piecewright.words.work.quilts import setting_words
from support.quilts import codes, lay, needed, pieces_called, polygon_of, size_of, try_quilt

ROOT_2 = sqrt(2)


def strips(quilt: Quilt) -> Counter[tuple[float, float]]:
    """The boxes of the sashing strips."""
    return Counter(size_of(each) for each in pieces_called(quilt, "sashing-strip"))


# ---- straight ---------------------------------------------------------------------------------------------


def test_a_straight_set_is_its_blocks_side_by_side() -> None:
    quilt = lay("set straight 4 across 5 down { alternate pair, sail }")
    assert (quilt.width, quilt.height) == (16, 20)
    assert quilt.block_counts == (10, 10)
    assert len(quilt.pieces) == 10 * 2 + 10 * 3
    assert setting_words(quilt.setting) == "straight, 4 across and 5 down"


def test_rows_repeat_and_lie_from_the_top() -> None:
    quilt = lay("set straight 3 across 2 down { row 2 pair, plain sand  row sail, 2 plain indigo }")
    (sand,) = [each for each in quilt.pieces if each.fabric == "sand"]
    assert polygon_of(sand).bounds == (8, 0, 12, 4)
    assert [polygon_of(each).bounds for each in quilt.pieces if each.fabric == "indigo"] == [
        (4, 4, 8, 8),
        (8, 4, 12, 8),
    ]


def test_blocks_are_drafted_at_the_size_of_the_cells() -> None:
    quilt = lay("set straight 2 across 2 down of 7in { alternate pair, goose turned 90deg stretched }")
    assert (quilt.width, quilt.height) == (14, 14)
    assert {(block.draft.width, block.draft.height) for block in quilt.blocks} == {(7, 7)}


def test_a_block_used_at_two_sizes_is_two_of_the_quilts_blocks() -> None:
    quilt = lay("set straight 4 across 4 down { place sail in A1..C3 alternate sail }")
    assert [(float(b.draft.width), n) for b, n in zip(quilt.blocks, quilt.block_counts, strict=True)] in (
        [(8, 1), (4, 12)],
        [(4, 12), (8, 1)],
    )


SASHED = "set straight 4 across 5 down { alternate pair } sashing 1in in sand"


def test_sashing_without_posts_runs_in_long_strips_between_the_rows() -> None:
    quilt = lay(SASHED)
    assert (quilt.width, quilt.height) == (19, 24)
    assert strips(quilt) == {(1, 4): 15, (19, 1): 4}
    assert not pieces_called(quilt, "post")


def test_posts_stand_where_the_sashing_crosses() -> None:
    """Ruling 12: sashing lies between blocks only; posts where strips cross."""
    quilt = lay(f"{SASHED} posts in indigo")
    assert (quilt.width, quilt.height) == (19, 24)
    assert strips(quilt) == {(1, 4): 15, (4, 1): 16}
    posts = pieces_called(quilt, "post")
    assert Counter((size_of(each), each.fabric, each.part) for each in posts) == {
        ((1, 1), "indigo", "posts"): 12
    }


def test_sashing_all_round() -> None:
    quilt = lay(f"{SASHED} posts in indigo around")
    assert (quilt.width, quilt.height) == (21, 26)
    assert strips(quilt) == {(1, 4): 25, (4, 1): 24}
    assert len(pieces_called(quilt, "post")) == 30


def test_sashing_all_round_without_posts() -> None:
    quilt = lay(f"{SASHED} around")
    assert (quilt.width, quilt.height) == (21, 26)
    assert strips(quilt) == {(1, 4): 25, (21, 1): 6}


def test_a_block_over_several_cells_covers_the_sashing_between_them() -> None:
    quilt = lay("""set straight 3 across 3 down { alternate pair  place sail in A1..C3 }
                   sashing 1in in sand posts in indigo""")
    (large,) = [block for block in quilt.blocks if block.draft.title == "Sail"]
    assert (large.draft.width, large.draft.height) == (9, 9)
    assert quilt.block_counts == (1, 5) or quilt.block_counts == (5, 1)
    assert strips(quilt) == {(1, 4): 4, (4, 1): 4}
    assert len(pieces_called(quilt, "post")) == 3


def test_a_block_over_several_cells_breaks_the_long_strips() -> None:
    quilt = lay("set straight 3 across 3 down { alternate pair  place sail in B2..D4 } sashing 1in in sand")
    assert {each.fabric for each in quilt.pieces if each.part == "sashing"} == {"sand"}
    assert all(size_of(each)[0] <= 4 for each in pieces_called(quilt, "sashing-strip"))


def test_a_place_over_an_alternate_changes_that_cell() -> None:
    """Ruling 16: `alternate` fills what nothing else covers; by (across + down) mod n."""
    quilt = lay(
        "set straight 3 across 3 down { alternate plain sand, plain indigo  place pair in B1..C2 }"
        "\nborder 1in in dark"
    )
    squares = Counter(each.fabric for each in pieces_called(quilt, "plain-square"))
    assert squares == {"sand": 5, "indigo": 3}
    assert quilt.block_counts == (1,)


def test_a_place_over_a_row_changes_that_cell_too() -> None:
    quilt = lay("set straight 2 across 2 down { row 2 pair  row 2 pair  place plain sand in B2..C3 }")
    assert quilt.block_counts == (3,)
    assert [polygon_of(each).bounds for each in pieces_called(quilt, "plain-square")] == [(4, 4, 8, 8)]


def test_alternate_takes_its_blocks_in_turn_along_the_diagonals() -> None:
    quilt = lay("set straight 3 across 2 down of 4in { alternate plain sand, plain indigo, pair }")
    at = {polygon_of(each).bounds[:2]: each.fabric for each in pieces_called(quilt, "plain-square")}
    assert at == {(0, 0): "sand", (4, 0): "indigo", (0, 4): "indigo", (8, 4): "sand"}


# ---- how blocks lie ---------------------------------------------------------------------------------------


def dark_middle(quilt: Quilt) -> tuple[float, float]:
    """The middle of the one dark piece."""
    (dark,) = [each for each in quilt.pieces if each.fabric == "dark"]
    middle = polygon_of(dark).centroid
    return round(middle.x, 2), round(middle.y, 2)


@pytest.mark.parametrize(
    ("cell", "where"),
    [
        ("pair", (1.33, 1.33)),
        ("pair turned 90deg", (2.67, 1.33)),
        ("pair turned 180deg", (2.67, 2.67)),
        ("pair facing bottom-left", (1.33, 2.67)),
        ("pair mirrored", (2.67, 1.33)),
        ("pair turned 90deg mirrored", (1.33, 1.33)),
        ("pair mirrored turned 90deg", (2.67, 2.67)),
    ],
)
def test_blocks_lie_as_they_are_posed(cell: str, where: tuple[float, float]) -> None:
    """The dark half of the pair lies at its top left; poses apply from left to right, turns run clockwise."""
    assert dark_middle(lay(f"set straight 1 across 1 down {{ row {cell} }}")) == where


def test_mirrored_blocks_count_their_templates_reversed() -> None:
    quilt = lay("set straight 4 across 1 down { row sail, sail mirrored, 2 sail turned 90deg }")
    by_name = {need.what: (need.count, need.reversed, need.reversible) for need in quilt.needs}
    assert by_name == {"sail": (3, 1, False), "lee": (3, 1, False), "luff": (3, 1, False)}
    assert sum(each.reversed for each in quilt.pieces) == 3
    assert [each.mirrored for each in quilt.placed] == [False, True, False, False]
    assert [each.turned for each in quilt.placed] == [0, 0, 90, 90]


def test_a_block_that_is_its_own_mirror_image_is_never_reversed() -> None:
    quilt = lay("set straight 2 across 1 down { row goose, goose mirrored }")
    assert all(need.reversible and not need.reversed for need in quilt.needs)


# ---- on point ---------------------------------------------------------------------------------------------


def test_the_museums_sampler_on_point() -> None:
    """SOURCES 1.5, International Quilt Study Center & Museum 2014: 3 x 3 blocks of 12in on point take 4
    alternates and 8 side triangles; 4 corners close it, and the centre is 3 x 12 x the root of 2, 50.91in."""
    quilt = lay("""set on point 3 across 3 down of 12in with triangles in sand {
        alternate sail, plain indigo
    }""")
    assert isclose(quilt.width, 50.91, abs_tol=0.005) and isclose(quilt.height, 50.91, abs_tol=0.005)
    assert quilt.block_counts == (9,)
    assert needed(quilt, "plain-square") == 4
    assert needed(quilt, "side-triangle") == 8
    assert needed(quilt, "corner-triangle") == 4


def test_setting_triangles_have_the_straight_grain_on_the_quilts_edge() -> None:
    """SOURCES 3.4: a side triangle's long side, a corner triangle's legs, lie on the straight of grain; needs
    lie with the grain up and down."""
    quilt = lay("set on point 3 across 2 down of 12in with triangles in sand { alternate sail, pair }")
    (side,) = [need for need in quilt.needs if need.what == "side-triangle"]
    longest = max(side.outline, key=lambda edge: edge.length)
    assert isclose(longest.length, 12 * ROOT_2)
    upright = abs(float(longest.start.x - longest.end.x)) < 1e-9
    level = abs(float(longest.start.y - longest.end.y)) < 1e-9
    assert upright or level
    (corner,) = [need for need in quilt.needs if need.what == "corner-triangle"]
    legs = sorted(corner.outline, key=lambda edge: edge.length)[:2]
    for leg in legs:
        assert isclose(leg.length, 12 / ROOT_2)
        across = abs(float(leg.start.x - leg.end.x)) < 1e-9
        assert across or abs(float(leg.start.y - leg.end.y)) < 1e-9


@pytest.mark.parametrize(("across", "down"), [(1, 1), (1, 3), (2, 2), (4, 3), (5, 2)])
def test_on_point_counts(across: int, down: int) -> None:
    """`across` x `down` stand corner to corner, (across - 1) x (down - 1) lie between; the sides take
    2 (across + down - 2) triangles."""
    quilt = lay(
        f"set on point {across} across {down} down of 6in {{ alternate sail, pair }}",
        fabrics="fabric dark fabric pale fabric sand fabric indigo fabric background",
    )
    counts = {block.draft.title: n for block, n in zip(quilt.blocks, quilt.block_counts, strict=True)}
    assert counts == {
        "Sail": across * down,
        **({"Pair": (across - 1) * (down - 1)} if min(across, down) > 1 else {}),
    }
    assert needed(quilt, "side-triangle") == 2 * (across + down - 2)
    assert needed(quilt, "corner-triangle") == 4
    assert isclose(quilt.width, across * 6 * ROOT_2) and isclose(quilt.height, down * 6 * ROOT_2)
    assert {each.fabric for each in pieces_called(quilt, "corner-triangle")} == {"background"}


def test_rows_on_point_take_both_kinds_in_turn() -> None:
    quilt = lay("""set on point 3 across 2 down of 4in with triangles in sand {
        row 3 pair  row 2 sail  row pair, plain indigo, pair
    }""")
    counts = {block.draft.title: n for block, n in zip(quilt.blocks, quilt.block_counts, strict=True)}
    assert counts == {"Pair": 5, "Sail": 2}
    (square,) = pieces_called(quilt, "plain-square")
    middle = polygon_of(square).centroid
    assert isclose(middle.x, 3 * 2 * ROOT_2) and isclose(middle.y, 3 * 2 * ROOT_2)


def test_blocks_on_point_stand_with_their_top_left_corner_up() -> None:
    quilt = lay(
        "set on point 1 across 1 down { row pair }",
        fabrics="fabric dark fabric pale fabric sand fabric indigo fabric background",
    )
    x, y = dark_middle(quilt)
    assert isclose(x, 2 * ROOT_2, abs_tol=0.01) and y < 2 * ROOT_2


def test_a_place_on_point_covers_one_of_the_blocks_that_stand_corner_to_corner() -> None:
    quilt = lay("""set on point 2 across 2 down of 4in with triangles in sand {
        alternate pair, pair  place plain indigo in B1..C2
    }""")
    (square,) = pieces_called(quilt, "plain-square")
    middle = polygon_of(square).centroid
    assert isclose(middle.x, 3 * 2 * ROOT_2) and isclose(middle.y, 2 * ROOT_2)


def test_sashing_on_point_with_posts() -> None:
    """3 x 3 and 2 x 2 blocks of 4in with 1in sashing: 13 blocks have 52 sides and share 16 of them; the posts
    of the outer blocks stand half over the edge."""
    quilt = lay("""set on point 3 across 3 down of 4in with triangles in sand { alternate pair, sail }
                   sashing 1in in sand posts in indigo""")
    assert isclose(quilt.width, 3 * 5 * ROOT_2)
    assert needed(quilt, "sashing-strip") == 36
    assert (needed(quilt, "post"), needed(quilt, "half-post")) == (12, 12)
    assert needed(quilt, "side-triangle") == 8 and needed(quilt, "corner-triangle") == 4
    (side,) = [need for need in quilt.needs if need.what == "side-triangle"]
    assert isclose(max(edge.length for edge in side.outline), 4 * ROOT_2)


# ---- rows of different heights ----------------------------------------------------------------------------


ROWS = "set rows { row 6 goose  row 4 house  row 5 pair, plain sand }"


def test_rows_of_different_heights() -> None:
    quilt = lay(ROWS)
    assert (quilt.width, quilt.height) == (24, 10)
    assert sorted(quilt.block_counts) == [4, 5, 6]
    assert [polygon_of(each).bounds for each in pieces_called(quilt, "plain-square")] == [(20, 6, 24, 10)]
    assert setting_words(quilt.setting) == "3 rows"


def test_rows_take_sashing_between_them_only() -> None:
    """Ruling 20."""
    quilt = lay(f"{ROWS} sashing 1in in indigo")
    assert (quilt.width, quilt.height) == (24, 12)
    assert strips(quilt) == {(24, 1): 2}


def test_rows_with_sashing_around() -> None:
    quilt = lay(f"{ROWS} sashing 1in in indigo around")
    assert (quilt.width, quilt.height) == (26, 14)
    assert strips(quilt) == {(24, 1): 4, (1, 14): 2}


def test_a_turned_block_is_as_long_as_it_lies() -> None:
    quilt = lay("set rows { row 6 goose  row 12 goose turned 90deg }")
    assert (quilt.width, quilt.height) == (24, 6)


@pytest.mark.parametrize(
    "setting",
    [
        "set on point 3 across 2 down with triangles in sand { alternate pair, sail, plain indigo }",
        "set straight 2 across 1 down { row pair, sail  alternate plain indigo }",
    ],
)
def test_what_alternates_into_no_cell_is_noted(setting: str) -> None:
    """On point there are two kinds of cell; in a set that its rows fill there is none left."""
    outcome = try_quilt(setting)
    assert codes(outcome) == ["alternate-idle"]
    (said,) = [each for each in outcome.diagnostics if each.code == "alternate-idle"]
    assert said.message == "No cell is left for `plain indigo`."
