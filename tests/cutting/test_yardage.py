"""Cloth to buy against published tables: never more than they say for the same cuts. Sources by SOURCES.md's
numbers."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest
from piecewright.cutting.needs import BackingNeed, BindingNeed, Scrap
from piecewright.cutting.plan_model import FabricPlan
from piecewright.cutting.plans.backing_plan import best_panels
from piecewright.cutting.plans.binding_plan import bias_cloth, bias_yield
from piecewright.cutting.plans.lots import cloth_of
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.cutting.plans.yardage import Margin, length_to_buy
from piecewright.words.work.cloth import bought_words, length_words
from support import told
from support.needs import NO_MARGIN, box, fabric, need, quilt

EIGHTH = Fraction(1, 8)


def sewn(size: str) -> Fraction:
    """Finished size of a square cut at that size."""
    return sum((Fraction(word) for word in size.split()), Fraction(0)) - Fraction(1, 2)


def plan(needs, cloth, margin=NO_MARGIN, **parts) -> FabricPlan:
    outcome = plan_cutting(quilt(needs, [cloth], **parts), margin=margin)
    assert outcome.value is not None, outcome.diagnostics
    return outcome.value.fabrics[0]


FROM_A_YARD = {  # SOURCES 2.1, 44 x 36in; the 7in row is wrong (trap 10.3)
    "1 1/2": 696,
    "2": 396,
    "2 1/2": 238,
    "2 7/8": 180,
    "3": 168,
    "3 1/2": 120,
    "3 7/8": 99,
    "4": 99,
    "4 1/2": 72,
    "4 7/8": 63,
    "5": 56,
    "5 1/2": 48,
    "6": 42,
    "6 1/2": 30,
    "8 1/2": 20,
    "9 1/2": 12,
    "12": 9,
    "12 1/2": 6,
}


@pytest.mark.parametrize("size", FROM_A_YARD)
def test_squares_from_a_yard(size):
    side, count = sewn(size), FROM_A_YARD[size]
    cloth = fabric(width=44)
    assert plan([need(box(side, side), count)], cloth).used <= 36
    assert plan([need(box(side, side), count + 1)], cloth).used > 36, "more than floor by floor cannot be cut"


@pytest.mark.parametrize(
    ("across", "table"),
    [
        (
            22,
            {
                "2": 99,
                "2 1/2": 56,
                "2 7/8": 42,
                "3": 42,
                "3 1/2": 30,
                "3 7/8": 20,
                "4": 20,
                "4 1/2": 16,
                "4 7/8": 12,
                "5": 12,
                "5 1/2": 12,
                "5 7/8": 9,
                "6": 9,
                "6 1/2": 6,
                "6 7/8": 6,
            },
        ),  # SOURCES 2.2
        (21, {"2": 90, "3": 42, "4": 20, "5": 12, "6": 9}),  # SOURCES 2.3
    ],
)
def test_squares_from_a_fat_quarter(across, table):
    quarter = Scrap(Fraction(across), Fraction(18), True)
    for size, count in table.items():
        side = sewn(size)
        made = plan([need(box(side, side), count)], fabric(scraps=[quarter]))
        assert len(made.cloths) == 1 and bought_words(made) == "1 fat quarter"
        short = plan_cutting(quilt([need(box(side, side), count + 1)], [fabric(scraps=[quarter])]))
        assert [each.code for each in short.diagnostics] == ["cloth-short"]


def test_eighty_squares_by_strips():
    """SOURCES 2.5, McCloskey: 40in usable, 5 strips of 2 1/2in, 12 1/2in; 6% more is under 3/8 yd."""
    made = plan([need(box(2, 2), 80)], fabric(width=40, shrinkage=Fraction(6, 100)))
    assert (made.strips, made.used, made.buy, bought_words(made)) == (5, 12.5, 13.5, "3/8 yd")
    (cloth,) = made.cloths
    assert list(filter(None, told.instructions(cloth))) == [
        "Cut 5 strips 2 1/2in wide across the cloth.",
        "Cut it across every 2 1/2in: 16 squares.",
    ]


@pytest.mark.parametrize(
    ("length", "width", "strips"),
    [
        (2 * (50 + 60), 2, 6),  # SOURCES 2.6: 220 / (40 - 2) = 5.79
        (4 * 46, Fraction(5, 2), 5),  # SOURCES 2.6: 184 / 40 = 4.6, 5 strips of 2 1/2in, 12 1/2in
    ],
)
def test_straight_binding(length, width, strips):
    made = plan([], fabric(width=40), binding=BindingNeed("sand", Fraction(width), Fraction(length), False))
    assert made.strips == strips and made.used == strips * width


@pytest.mark.parametrize(("length", "width", "bound"), [(250, 2, 23), (100, Fraction(7, 2), 19)])
def test_bias_binding_needs_no_less_than_its_area(length, width, bound):
    """SOURCES 2.7: the square root of length x width, which seams only make larger."""
    cloth = cloth_of(fabric(), EIGHTH)
    side, other = (cloth.inches(each) for each in bias_cloth(length, float(width), cloth))
    assert side == other and side >= Fraction(sqrt(length * width)) and side <= bound + 4
    assert bias_yield(float(side), float(side), float(width)) >= length
    assert bias_yield(float(side), float(side), float(width)) * width <= side * side


def test_bias_binding_larger_than_the_cloth_is_wide():
    made = plan([], fabric(), binding=BindingNeed("sand", Fraction(5, 2), Fraction(1500), True))
    assert made.used > 42 and made.used * 42 > 1500 * 2.5


def test_backing_reckons_both_ways_of_joining():
    """SOURCES 2.8: 65 x 78in: 2 x 65 = 130in, 3 5/8 yd, against 2 x 78 = 156in."""
    made = plan([], fabric(width=40), backing=BackingNeed("sand", Fraction(65), Fraction(78)))
    assert (made.used, bought_words(made)) == (130, "3 5/8 yd")
    assert [panel[1] for panel in made.backing_panels] == [65, 65]
    along = plan([], fabric(width=40, one_way=True), backing=BackingNeed("sand", Fraction(65), Fraction(78)))
    assert along.used == 156


def test_one_panel_where_the_cloth_is_wide_enough():
    panels = best_panels(BackingNeed("sand", Fraction(40), Fraction(50)), cloth_of(fabric(), EIGHTH))
    assert (panels.whole, panels.last, panels.length) == (0, 40, 50)


@pytest.mark.parametrize(
    ("used", "shrinkage", "inches", "text"),
    [
        (36, Fraction(0), 36, "1 yd"),
        (Fraction(289, 8), Fraction(0), Fraction(81, 2), "1 1/8 yd"),
        (Fraction(25, 2), Fraction(6, 100), Fraction(27, 2), "3/8 yd"),
        (97, Fraction(3, 100), Fraction(103.5), "2 7/8 yd"),  # 97 / 0.97 = 100; multiplying would give 99.9
    ],
)
def test_shrinkage_divides_and_lengths_go_up_to_an_eighth(used, shrinkage, inches, text):
    """SOURCES 9."""
    bought = length_to_buy(used, 0, shrinkage, False)
    assert (bought, length_words(bought, False)) == (inches, text)


def test_centimetres_are_bought_by_ten():
    bought = length_to_buy(Fraction(1050, 1000) * 100 * Fraction(50, 127), 0, Fraction(0), True)
    assert length_words(bought, True) == "1.1 m"


def test_the_margin_is_a_setting():
    assert Margin().of(100) == 5 and Margin().of(4) == 1 and NO_MARGIN.of(100) == 0
    plain = plan([need(box(2, 2), 80)], fabric(width=40), Margin(Fraction(0), Fraction(6)))
    assert (plain.used, plain.margin, plain.buy) == (12.5, 6, 22.5)
