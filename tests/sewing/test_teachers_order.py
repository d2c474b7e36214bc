"""The order that an experienced teacher sews well-known blocks in. Common practice, no published source."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from piecewright.sewing.model import Assembly, Step
from piecewright.sewing.order.assembly import assemble
from support.check import check_block
from support.library import library_drafts

LIBRARY = dict(library_drafts())


def sewn(title: str) -> Assembly:
    return assemble(LIBRARY[title])


def made_of(made: Assembly, pieces: int) -> list[int]:
    """How many are made of each unit of so many pieces."""
    return [len(unit.copies) for unit in made.units if len(unit.pieces) == pieces]


def last(made: Assembly, count: int) -> list[Step]:
    return list(made.steps[-count:])


def boxes(made: Assembly) -> Iterator[tuple[float, float, float, float]]:
    """Left, top, right and bottom of each unit, where its first copy lies."""
    for unit in made.units:
        xs, ys = (
            [float(at) for at in each]
            for each in zip(*((edge.start.x, edge.start.y) for edge in unit.outline), strict=True)
        )
        yield min(xs), min(ys), max(xs), max(ys)


# ---- stars ---------------------------------------------------------------------------------------

STARS = {"Eight-pointed Star": 1, "Clay's Choice": 1, "Star of Bethlehem": 4, "Rising Sun": 9}
"""Stars of eight points, and the pieces of one point."""


@pytest.mark.parametrize("title", STARS)
def test_a_star_is_sewn_of_pairs_quarters_and_halves_before_anything_is_set_into_it(title):
    made, ray = sewn(title), STARS[title]
    star = next(unit for unit in made.units if len(unit.pieces) == 8 * ray)
    assert [made_of(made, ray * rays) for rays in (2, 4, 8)] == [[4], [2], [1]]
    whole = made.steps[made.units.index(star)]
    assert not any(step.set_in for step in made.steps[: whole.step])
    assert [(step.set_in_count, step.parts[0]) for step in last(made, 8)] == [
        (1, f"u{whole.step + number}") for number in range(8)
    ], "four triangles and four squares, one by one"
    sides = [made.units[step.step - 1] for step in last(made, 8)]
    assert len({made.pieces[int(step.parts[1]) - 1].template for step in last(made, 8)[:4]}) == 1
    assert len(sides[-1].pieces) == len(made.pieces)


def test_a_six_pointed_star_is_sewn_of_two_halves_before_its_diamonds_are_set_in():
    made = sewn("Six-pointed Star")
    halves = [unit for unit in made.units if len(unit.pieces) == 3]
    assert len(halves) == 2 and not any(step.set_in for step in made.steps[:5])
    assert [step.set_in_count for step in last(made, 6)] == [1] * 6


def test_a_rolling_star_grows_from_its_middle_star_outward():
    """Then the squares about it, the outer diamonds, and the corners straight across last."""
    made = sewn("Rolling Star")
    star = next(step for step in made.steps if len(made.units[step.step - 1].pieces) == 8)
    added = [made.pieces[int(step.parts[1]) - 1].template for step in made.steps[star.step : star.step + 16]]
    assert added == ["C"] * 8 + ["B"] * 8
    assert [step.set_in_count for step in last(made, 4)] == [0] * 4 and made.set_in_seams == 16


def test_a_star_of_split_diamonds_has_its_diamonds_sewn_first():
    made = sewn("Star of the East")
    assert made.steps[0].batch == 8 and made_of(made, 2) == [8]


# ---- rounds --------------------------------------------------------------------------------------


def test_a_flower_is_sewn_round_by_round_each_gone_round_from_neighbour_to_neighbour():
    made = sewn("Grandmother's Flower Garden")
    cloths = [made.pieces[number - 1].fabric for number in made.units[-1].pieces]
    assert set(cloths[:7]) == {"medium", "light"} and set(cloths[7:19]) == {"dark"}
    assert [step.set_in_count for step in made.steps[:6]] == [0, 1, 1, 1, 1, 2], "each beside the one before"


def test_the_nine_patches_of_a_chain_are_made_before_they_are_joined():
    made = sewn("Jack's Chain")
    assert made_of(made, 9) == [6]


def test_the_log_rounds_about_a_four_patch_are_sewn_on_after_it_opposite_sides_first():
    made = sewn("Snail's Trail")
    assert made_of(made, 4) == [1], "the four-patch comes first"
    assert [box for box, unit in zip(boxes(made), made.units, strict=True) if len(unit.pieces) == 4] == [
        (3, 3, 5, 5)
    ]
    for round_of in (made.steps[2:6], made.steps[6:10], made.steps[10:14], made.steps[14:]):
        cloths = [
            made.pieces[int(next(part for part in step.parts if part.isdigit())) - 1].fabric
            for step in round_of
        ]
        assert cloths[0] == cloths[1] and cloths[2] == cloths[3] != cloths[0]


def test_logs_with_cornerstones_are_sewn_on_round_by_round():
    """From the nine-patch in the middle outward, never two rounds to each other."""
    made = sewn("Chimneys and Cornerstones")
    assert (4, 4, 10, 10) in list(boxes(made)) and (2, 2, 12, 12) in list(boxes(made))
    assert not any(right - left == 4 and bottom - top >= 8 for left, top, right, bottom in boxes(made))


# ---- units and batches ---------------------------------------------------------------------------


def test_the_hour_glass_is_sewn_of_its_four_quarters():
    made = sewn("Hour Glass")
    assert [(step.batch, len(unit.pieces)) for step, unit in zip(made.steps, made.units, strict=True)] == [
        (8, 2),
        (4, 4),
        (2, 8),
        (1, 16),
    ]


def test_the_four_paws_are_one_batch():
    made = sewn("Bear's Paws")
    assert made_of(made, 10) == [4]


def test_four_squares_of_triangles_beside_a_large_one_are_one_four_patch():
    made = sewn("Flock of Geese")
    assert made_of(made, 8) == [2]
    assert made_of(sewn("Crosses and Losses"), 6) == [2]


def test_geese_on_the_diagonal_are_a_band_between_two_like_corners():
    made = sewn("Wild Goose Chase, No. 2")
    assert made_of(made, 6) == [4], "two geese, four times"
    assert made_of(made, 9) == [2] and made_of(made, 13) == [1], "corners with a band each; the long band"


def test_strips_are_sewn_together_before_the_plain_half_is():
    made = sewn("Roman Stripe")
    assert [len(part.pieces) for part in made.units] == [2, 3, 2, 5, 6]


def test_a_frame_is_sewn_on_last():
    draft = check_block("""
      finished 8in
      grid 8 x 8
      seam A2 -- I2  seam A8 -- I8  seam B2 -- B8  seam H2 -- H8
      seam B4 -- H4  seam B6 -- H6  seam D2 -- D8  seam F2 -- F8""")
    made = assemble(draft)
    sizes = [(unit.finished.width, unit.finished.height) for unit in made.units]
    assert (6, 6) in sizes and sizes[-4:] == [(7, 6), (8, 6), (8, 7), (8, 8)]


def test_blades_of_a_fan_are_sewn_in_pairs_and_pairs_of_pairs():
    made = sewn("Rocky Mountain Road")
    assert made_of(made, 2) == [8] and made_of(made, 4) == [3]


# ---- set in from both sides ----------------------------------------------------------------------


@pytest.mark.parametrize("title", ["Spools", "Necktie"])
def test_two_opposite_sides_are_sewn_on_straight_and_the_other_two_set_in(title):
    made = sewn(title)
    assert [step.set_in_count for step in made.steps] == [0, 0, 2, 2]
    cloths = [made.pieces[int(step.parts[1]) - 1].fabric for step in last(made, 2)]
    assert cloths[0] == cloths[1]
