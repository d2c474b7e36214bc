"""Prints with a direction: what is cut of them lies as it does in the finished quilt."""

from __future__ import annotations

from math import sqrt

import pytest
from piecewright.cutting.needs import Need
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.quilt.model import Quilt
from support import told
from support.on_papers import cut_on_papers
from support.quilts import FABRICS, lay

WAYS = ("one way", "striped")
ROSE = FABRICS + "fabric rose {way}"


def needs(made: Quilt, what: str = "", part: str = "") -> list[Need]:
    """What is to be cut of the rose print."""
    return [
        need
        for need in made.needs
        if need.fabric == "rose" and what in (need.what, "") and part in (need.part, "")
    ]


def sizes(need: Need) -> tuple[float, float]:
    """Finished width across the print and height along it."""
    xs, ys = zip(*((float(edge.start.x), float(edge.start.y)) for edge in need.outline), strict=True)
    return max(xs) - min(xs), max(ys) - min(ys)


def turns(need: Need) -> dict[int, int]:
    return {way.turned: way.count for way in need.ways}


@pytest.mark.parametrize("way", WAYS)
def test_borders_stand_at_the_sides_and_lie_at_top_and_bottom(way):
    made = lay(
        "set straight 3 across 4 down { alternate pair } border 2in in rose", fabrics=ROSE.format(way=way)
    )
    assert sorted(sizes(need) for need in needs(made)) == [(2, 16), (16, 2)]
    assert [need.count for need in needs(made)] == [2, 2]


def test_side_triangles_of_all_four_sides_come_out_of_one_square():
    """Of 3 across and 3 down there are two at each side: two squares cut twice, nothing left over."""
    made = lay(
        "set on point 3 across 3 down of 4in with triangles in rose { alternate pair }",
        fabrics=ROSE.format(way="one way"),
    )
    (side,) = needs(made, "side-triangle")
    assert sorted(turns(side).values()) == [2, 2, 2, 2] and len(turns(side)) == 4
    (corner,) = needs(made, "corner-triangle")
    assert sorted(turns(corner).values()) == [1, 1, 1, 1]
    plan = plan_cutting(made).value
    slants = {made.needs[cut.need].what: cut.slants for cut in plan.cuts if cut.fabric == "rose"}
    assert slants == {"side-triangle": (("both", 2),), "corner-triangle": (("rising", 1), ("falling", 1))}


@pytest.mark.parametrize("way", WAYS)
def test_plain_squares_on_point_lie_aslant(way):
    made = lay(
        "set on point 2 across 2 down of 4in with triangles in sand { alternate pair, plain rose }",
        fabrics=ROSE.format(way=way),
    )
    (square,) = needs(made)
    assert sizes(square) == pytest.approx((4 * sqrt(2), 4 * sqrt(2)))
    plan = plan_cutting(made).value
    (cut,) = [each for each in plan.cuts if each.fabric == "rose"]
    assert cut.kind == "template" and "it measures 4 1/2in, laid so" in told.reason(cut)


def test_a_block_turned_four_ways_asks_for_both_diagonals():
    cells = "row pair, pair turned 90deg, pair turned 180deg, pair turned 270deg"
    made = lay(
        f"set straight 4 across 1 down {{ {cells} }}",
        uses='use "Pair" as pair with dark = rose',
        fabrics=ROSE.format(way="one way"),
    )
    (half,) = needs(made)
    assert turns(half) == {0: 1, 90: 1, 180: 1, 270: 1}
    (cut,) = [each for each in plan_cutting(made).value.cuts if each.fabric == "rose"]
    assert (cut.pieces, cut.cuts) == (4, 2)


def test_a_half_that_no_place_in_the_quilt_can_use_is_left_over():
    made = lay(
        "set straight 5 across 1 down { row 5 pair }",
        uses='use "Pair" as pair with dark = rose',
        fabrics=ROSE.format(way="one way"),
    )
    (cut,) = [each for each in plan_cutting(made).value.cuts if each.fabric == "rose"]
    assert (cut.pieces, cut.cuts) == (5, 5) and told.then(cut).endswith("5 triangles are left over.")


def test_a_stripe_takes_either_half():
    made = lay(
        "set straight 5 across 1 down { row 5 pair }",
        uses='use "Pair" as pair with dark = rose',
        fabrics=ROSE.format(way="striped"),
    )
    (cut,) = [each for each in plan_cutting(made).value.cuts if each.fabric == "rose"]
    assert (cut.pieces, cut.cuts) == (5, 3) and "either end up" in told.lies(cut)


def test_mirrored_blocks_are_cut_mirror_wise_on_the_print():
    """Of a sail that is not its own mirror image, and of one mirrored: one of each hand, neither turned."""
    made = lay(
        "set straight 2 across 1 down { row sail, sail mirrored }",
        uses='use "Sail" as sail with dark = rose',
        fabrics=ROSE.format(way="one way"),
    )
    (sail,) = needs(made)
    assert sorted((way.turned, way.reversed, way.count) for way in sail.ways) == [(0, False, 1), (0, True, 1)]
    lying = [
        placed
        for each in plan_cutting(made).value.fabrics
        if each.fabric == "rose"
        for cloth in each.cloths
        for placed in cloth.placed
    ]
    assert sorted((placed.turned, placed.reversed) for placed in lying) == [(0, False), (0, True)]


def test_patches_of_foundations_cover_their_pieces_with_the_print_up():
    """Beside a sail are pieces of 1in x 4in and 3in x 4in; where its block is turned a quarter, they lie."""
    made = cut_on_papers(
        lay(
            "set straight 2 across 1 down { row sail, sail turned 90deg }",
            uses='use "Sail" as sail with pale = rose',
            fabrics=ROSE.format(way="one way"),
        )
    )
    assert sorted(sizes(need) for need in needs(made)) == [(1, 4), (3, 4), (4, 1), (4, 3)]
