"""Straight cuts from edge to edge, against optima that are known."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.cutting.plans.guillotine import (
    DEPTH,
    Kind,
    Region,
    Row,
    Stock,
    boxes_in,
    counted,
    fill,
    fullest,
)
from piecewright.cutting.plans.scraps import pack_scraps
from piecewright.cutting.plans.strips import length_of, pack_bolt
from support.jigsaws import jigsaw

HERZ = [(21, 13), (36, 17), (54, 20), (24, 27), (18, 65)]  # SOURCES 7.8, sheet 127 x 98, fixed orientation
HERZ_BEST = 12348
C1_1 = [
    (2, 12),
    (7, 12),
    (8, 6),
    (3, 6),
    (3, 5),
    (5, 5),
    (3, 12),
    (3, 7),
    (5, 7),
    (2, 6),
    (3, 2),
    (4, 2),
    (3, 4),
    (4, 4),
    (9, 2),
    (11, 2),
]  # SOURCES 7.9: a strip 20 wide, best height 20
MANY = 1000


def area(region: Region, kinds: list[Kind]) -> int:
    return sum(kinds[each.kind].width * kinds[each.kind].height for each in boxes_in(region))


def test_herz_sheet_is_never_beaten_and_nearly_reached():
    kinds = [Kind(w, h, False) for w, h in HERZ]
    found = [
        area(fill(Stock(kinds, [MANY] * 5, keen), 127, 98, DEPTH), kinds) for keen in (0.0, 0.3, 0.7, 1.0)
    ]
    assert max(found) <= HERZ_BEST
    assert max(found) >= 0.97 * HERZ_BEST


def test_hopper_and_turton_strip():
    kinds = [Kind(min(each), max(each), True) for each in C1_1]
    strips = pack_bolt(kinds, [1] * len(kinds), 20)
    assert 20 <= length_of(strips) <= 23


def _rows(lengths):
    return [Row(at, long, 1, many, 1) for at, (long, many) in enumerate(lengths)]


@given(
    st.lists(st.tuples(st.integers(1, 30), st.integers(1, 6)), min_size=1, max_size=4), st.integers(30, 90)
)
def test_the_fullest_row_is_the_fullest(lengths, room):
    """Against trying every number of each."""
    rows = fullest(_rows(lengths), room)
    reached = sum(row.long * row.columns for row in rows)
    sums = {lengths[0][0]}
    for at, (long, many) in enumerate(lengths):
        sums = {each + long * n for each in sums for n in range(many + (at > 0)) if each + long * n <= room}
    assert reached == max(sums) and rows[0].kind == 0
    assert all(row.columns <= lengths[row.kind][1] for row in rows)


KINDS = st.lists(
    st.tuples(st.integers(4, 60), st.integers(4, 60), st.booleans(), st.integers(1, 30)),
    min_size=1,
    max_size=6,
)


@given(KINDS)
@settings(deadline=None, max_examples=60)
def test_every_box_is_cut_once_and_none_lies_over_another(made):
    kinds = [Kind(w, h, turnable) for w, h, turnable, _ in made]
    counts = [count for *_, count in made]
    strips = pack_bolt(kinds, counts, 120)
    assert counted(strips, len(kinds)) == counts
    for strip in strips:
        assert strip.width == 120
        spots = []
        for each in boxes_in(strip):
            kind = kinds[each.kind]
            lies = (each.width, each.height)
            assert lies == kind[:2] or (kind.turnable and lies == kind[1::-1])
            spots.append((each.left, each.top, each.right, each.bottom))
        for at, one in enumerate(spots):
            assert one[2] <= strip.width and one[3] <= strip.height
            for two in spots[at + 1 :]:
                assert one[2] <= two[0] or two[2] <= one[0] or one[3] <= two[1] or two[3] <= one[1]


@given(KINDS)
@settings(deadline=None, max_examples=30)
def test_cloth_is_never_shorter_than_the_area_asks(made):
    kinds = [Kind(w, h, turnable) for w, h, turnable, _ in made]
    counts = [count for *_, count in made]
    bare = sum(kind.width * kind.height * count for kind, count in zip(kinds, counts, strict=True))
    assert length_of(pack_bolt(kinds, counts, 120)) * 120 >= bare


@pytest.mark.parametrize("seed", range(6))
def test_boxes_of_a_sheet_cut_apart_take_little_more_than_the_sheet(seed):
    """A sheet 42in square cut into some 49 boxes, in the manner of Hopper's guillotine family (SOURCES 7.9):
    its least length is known."""
    length = length_of(pack_bolt(*jigsaw(seed, 1, 336, 336, 49, 8), 336))
    assert 336 <= length <= 1.13 * 336


@pytest.mark.parametrize("seed", range(8))
def test_fat_quarters_cut_apart_take_at_most_one_more(seed):
    quarter = (168, 144)
    packed = pack_scraps(*jigsaw(seed, 4, *quarter, 5, 8), [quarter] * 6)
    assert not any(packed.left) and 4 <= len(packed.cuts) <= 5


def test_a_box_that_may_be_turned_takes_no_more_cloth_than_one_that_may_not():
    """Five of 6 3/8in x 8 1/2in stand side by side on 42in; the fullest strip would take four lying, and one
    more strip."""
    upright, turned = (length_of(pack_bolt([Kind(51, 68, turnable)], [5], 336)) for turnable in (False, True))
    assert turned <= upright == 68
