"""One change in washing for each direction: against scipy's robust least squares, and by ISO 5077."""

from __future__ import annotations

from math import hypot
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from piecewright.drafting.washed.model import Shrinkage
from piecewright.drafting.washed.shrinkage import Observation, fit_shrinkage, lean_weight
from piecewright.measure.length import change_percent
from piecewright.words.messages.washed import change_words
from scipy.optimize import least_squares

MARK = 1 / 16


def observed(chance: Random, across: float, down: float, lean: float, slips: int = 0) -> list[Observation]:
    """Lengths in every direction, measured with an error of up to a mark, and some with a slip of an inch."""
    found = []
    for number in range(12):
        angle = chance.choice([(1.0, 0.0), (0.0, 1.0), (0.6, 0.8), (-0.6, 0.8)])
        drafted = chance.uniform(1, 12)
        measured = drafted * hypot(across * angle[0] + lean * angle[1], down * angle[1])
        slip = chance.choice([-1, 1]) if number < slips else chance.uniform(-MARK, MARK)
        found.append(Observation(drafted, angle, measured + slip))
    return found


@pytest.mark.parametrize("seed", range(20))
def test_the_fit_is_that_of_a_robust_least_squares(seed: int) -> None:
    """scipy's `least_squares` with Huber's loss on the same readings, from the same start."""
    chance = Random(seed)
    seen = observed(
        chance,
        chance.uniform(0.9, 1.0),
        chance.uniform(0.9, 1.0),
        chance.uniform(-0.02, 0.02),
        slips=seed % 4,
    )

    def misfits(scales: list[float]) -> list[float]:
        washed = Shrinkage(*scales)
        return [
            *(each.measured - each.drafted * washed.along(each.step) for each in seen),
            -washed.lean * lean_weight(MARK),
        ]

    best = least_squares(
        misfits, [1.0, 1.0, 0.0], loss="huber", f_scale=MARK, xtol=1e-15, ftol=1e-15, gtol=1e-12
    ).x
    found = fit_shrinkage(seen, MARK)
    assert (found.across, found.down, found.lean) == pytest.approx(tuple(best), abs=2e-6)


@given(st.floats(0.85, 1.1), st.floats(0.85, 1.1))
def test_readings_without_an_error_give_back_the_shrinkage(across: float, down: float) -> None:
    seen = [Observation(8, (1, 0), 8 * across), Observation(6, (0, 1), 6 * down)]
    found = fit_shrinkage(seen, MARK)
    assert (found.across, found.down) == pytest.approx((across, down), abs=1e-9)


def test_one_slip_of_the_tape_does_not_bend_the_others() -> None:
    seen = [Observation(length, (1, 0), length * 0.97) for length in (2, 4, 6, 8)]
    slipped = [*seen, Observation(5, (1, 0), 5.6)]
    assert fit_shrinkage(slipped, MARK).across == pytest.approx(0.97, abs=0.004)
    plain = sum(each.measured for each in slipped) / sum(each.drafted for each in slipped)
    assert abs(plain - 0.97) > 0.02  # what a mean would have made of it


def test_change_is_counted_as_washing_tests_count_it() -> None:
    """ISO 5077:2007: (washed - original) / original x 100; a mark of 500 mm at 485 mm is -3.0 %."""
    assert change_percent(500, 485) == pytest.approx(-3.0)
    assert change_percent(500, 505) == pytest.approx(1.0)
    assert [change_words(change_percent(500, size)) for size in (485, 505, 500)] == [
        "shrank by 3.0%",
        "grew by 1.0%",
        "kept its size",
    ]


def test_a_length_before_washing_divides_by_what_is_left() -> None:
    """Not multiplied by what was lost: 12in that shrank by 3% are 11.64in, and 11.64in x 1.03 is not 12in."""
    assert 11.64 / Shrinkage(0.97, 1.0).along((1, 0)) == pytest.approx(12, abs=1e-9)
