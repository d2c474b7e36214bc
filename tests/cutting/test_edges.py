"""A quarter is as large as it is, whatever the ruler's marks: 53.34cm x 45.72cm, not 53.25cm x 45.5cm."""

from __future__ import annotations

import re
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.cutting.needs import BindingNeed, Scrap
from piecewright.cutting.plan_model import ClothPlan, CuttingPlan
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.quilt.model import Quilt
from support import told
from support.needs import box, fabric, need, quilt
from support.random_quilts import random_needs
from support.replay import cut_cloth, replay

CM = Fraction(100, 254)
STEP = CM / 4
QUARTER = Scrap(Fraction(21), Fraction(18), True)


def planned(made: Quilt) -> CuttingPlan:
    plan = plan_cutting(made, STEP).value
    assert plan is not None
    for each in plan.fabrics:
        out = replay(plan, each)
        for at, cut in enumerate(plan.cuts):
            assert out[at] >= cut.pieces if cut.fabric == each.fabric else True
    return plan


def quarters(corners, count: int, **facts) -> tuple[CuttingPlan, ClothPlan]:
    cloth = fabric(scraps=[QUARTER] * 20)
    plan = planned(quilt([need(corners, count)], [cloth], **facts))
    return plan, plan.fabrics[0].cloths[0]


def test_what_is_left_of_a_quarter_reaches_to_its_edge():
    """Squares of 4in are cut 11.5cm: what is left below and beside them is counted from 18in and 21in."""
    _, cloth = quarters(box(4, 4), 4)
    assert (cloth.width, cloth.length) == (21, 18)
    assert max(region[3] - region[1] for region in cut_cloth(cloth)) == 18 - Fraction(23, 2) * CM
    assert not any("Trim" in each for each in told.instructions(cloth, STEP))


def test_strips_that_are_joined_are_as_long_as_the_quarter_is_wide():
    binding = BindingNeed("sand", Fraction(2), Fraction(90), False)
    plan, cloth = quarters(box(4, 4), 5, binding=binding)
    (joined,) = (at for at, cut in enumerate(plan.cuts) if cut.part == "binding")
    lengths = [
        max(each.width, each.height)
        for quarter in plan.fabrics[0].cloths
        for each in quarter.placed
        if each.cut == joined
    ]
    assert lengths.count(Fraction(21)) >= 3 and cloth.width == 21


def test_a_piece_that_fills_the_marks_has_the_quarter_trimmed_first():
    """213 marks of a quarter centimetre, on a quarter of 213 and a little: else it would be 53.34cm."""
    _, cloth = quarters(box(213 * STEP - Fraction(1, 2), 32 * STEP - Fraction(1, 2)), 2)
    assert cloth.width == 213 * STEP and cloth.length == 18
    assert told.instructions(cloth, STEP)[0].startswith("Trim the piece to 53.25cm wide. Cut 2 strips")


@given(seed=st.integers(0, 10_000))
@settings(max_examples=8, deadline=None)
def test_any_pieces_come_out_of_quarters_by_a_ruler_in_centimetres(seed):
    cloth = fabric(scraps=[QUARTER] * 80 + [Scrap(Fraction(30), Fraction(9))] * 10)
    plan = planned(quilt(random_needs(seed, cloth), [cloth]))
    for each in plan.fabrics[0].cloths:
        scrap = cloth.scraps[each.scrap or 0]
        first = told.instructions(each, STEP)[0]
        assert each.width == scrap.width or re.match(r"Trim the piece to .*cm wide", first)
        assert each.length == scrap.height or re.match(r"Trim the piece to .*cm high", first)


def test_a_piece_as_large_as_the_marks_is_trimmed_both_ways():
    _, cloth = quarters(box(213 * STEP - Fraction(1, 2), 182 * STEP - Fraction(1, 2)), 1)
    assert told.instructions(cloth, STEP)[0] == "Trim the piece to 53.25cm wide and 45.5cm high."
    assert len(cloth.slices) == 2 and (cloth.width, cloth.length) == (21, 18)


def test_by_a_ruler_in_inches_quarters_stay_as_they_are():
    made = plan_cutting(quilt([need(box(4, 4), 5)], [fabric(scraps=[QUARTER])])).value
    assert made is not None
    assert (made.fabrics[0].cloths[0].width, made.fabrics[0].cloths[0].length) == (21, 18)
