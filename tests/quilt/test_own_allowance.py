"""A quilt's own seams take what it says, and the rules of the rotary cutter follow for any allowance."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from piecewright.cutting.methods.rotary import choose_cut
from piecewright.quilt.model import Quilt
from support.needs import half_square, need, quarter_square
from support.quilts import codes, try_quilt

CM = Fraction(50, 127)
QUARTER_CM, MM = CM / 4, CM / 10
SET = "set straight 2 across 2 down { alternate pair }"


def quilt_of(body: str) -> Quilt:
    made = try_quilt(body).value
    assert made is not None, [each.message for each in try_quilt(body).diagnostics]
    return made.quilts[0]


def test_posts_and_strips_are_cut_with_the_quilts_own_allowance() -> None:
    """Posts of 4cm are squares of 5.5cm with 7.5mm: 4 + 2 x 0.75 (geometry)."""
    quilt = quilt_of(f"{SET} sashing 4cm in sand posts in indigo allowance 7.5mm")
    (post,) = (each for each in quilt.needs if each.part == "posts")
    cut = choose_cut(post, QUARTER_CM)
    assert cut.kind == "square" and (cut.width, cut.height) == (Fraction(11, 2) * CM,) * 2
    assert {each.allowances for each in quilt.needs if each.part == "sashing"} == {(Fraction(3, 4) * CM,) * 4}
    assert {each.allowances for each in quilt.needs if each.part == "blocks"} == {(Fraction(1, 4),) * 3}


def test_unsaid_it_is_a_quarter_inch_and_said_twice_or_far_too_wide_is_an_error() -> None:
    quilt = quilt_of(f"{SET} border 2in in sand")
    assert {each.allowances for each in quilt.needs if each.part == "border"} == {(Fraction(1, 4),) * 4}
    assert codes(try_quilt(f"{SET} allowance 1/4in allowance 3/8in")) == ["statement-twice"]
    assert codes(try_quilt(f"{SET} allowance 9in")) == ["allowance-too-wide"]


def test_a_block_with_another_allowance_outside_is_told_and_one_with_the_same_is_not() -> None:
    assert "quilt-allowances-differ" not in codes(try_quilt(f"{SET} border 2in in sand"))
    said = try_quilt(f"{SET} border 2in in sand allowance 3/8in")
    assert "quilt-allowances-differ" in codes(said)
    (told,) = (each for each in said.diagnostics if each.code == "quilt-allowances-differ")
    assert "3/8in" in told.message and "`allowance 1/4in` in the quilt" in told.help


ALLOWANCES = st.sampled_from(
    [Fraction(1, 8), Fraction(1, 4), Fraction(5, 16), Fraction(3, 8), 6 * MM, Fraction(15, 2) * MM, 10 * MM]
)
STEPS = st.sampled_from([Fraction(1, 8), Fraction(1, 16), QUARTER_CM, MM])


@given(st.integers(8, 160), ALLOWANCES, STEPS)
def test_triangles_from_squares_follow_from_geometry_and_are_rounded_up_never_down(marks, allowance, step):
    """Cut once: finished + a(2 + sqrt 2); cut twice: finished + a(2 + 2 sqrt 2). Geometry: beside the legs
    lie two allowances, beside the long side one, which reaches sqrt 2 times as far along a leg."""
    finished = marks * step * (4 if step == MM else 1)
    once = choose_cut(need(half_square(finished), 4, allowances=allowance), step)
    twice = choose_cut(need(quarter_square(finished), 4, allowances=allowance), step)
    for cut, exact, yields in (
        (once, float(finished) + float(allowance) * (2 + sqrt(2)), 2),
        (twice, float(finished) + float(allowance) * (2 + 2 * sqrt(2)), 4),
    ):
        assert cut.kind != "template" and cut.yields == yields
        assert cut.width % step == 0 and cut.width == cut.height
        assert -1e-9 <= float(cut.width) - exact < float(step) + 1e-9


@pytest.mark.parametrize(
    "allowance, added_once, added_twice",
    [
        (Fraction(1, 4), Fraction(7, 8), Fraction(5, 4)),  # SOURCES 1.1, the trade's rules in inches
        (Fraction(3, 8), Fraction(11, 8), Fraction(15, 8)),  # geometry: 1.2803, 1.8107
        (Fraction(15, 2) * MM, Fraction(11, 4) * CM, Fraction(15, 4) * CM),  # geometry: 2.561cm, 3.621cm
        (6 * MM, Fraction(9, 4) * CM, 3 * CM),  # geometry: 2.049cm, 2.897cm
    ],
)
def test_what_is_added_to_a_finished_size(allowance, added_once, added_twice) -> None:
    """By the common ruler of each: eighths of an inch, or quarters of a centimetre. Common practice in metric
    tables is 2.5cm and 3.5cm at 7.5mm (no published source), which is a little too small; ours is never."""
    step = Fraction(1, 8) if allowance.denominator in (4, 8) else QUARTER_CM
    finished = 16 * step
    once = choose_cut(need(half_square(finished), 4, allowances=allowance), step)
    twice = choose_cut(need(quarter_square(finished), 4, allowances=allowance), step)
    assert (once.width - finished, twice.width - finished) == (added_once, added_twice)
