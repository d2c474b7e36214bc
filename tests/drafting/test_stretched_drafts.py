"""Drafts stretched to other proportions."""

from __future__ import annotations

from fractions import Fraction
from math import atan2, degrees

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.drafting.resize import resize
from support.check import check_block

SLANTED = (
    "finished 6in\nseam top-left -- bottom-right\npiece wing at top-right in dark\n"
    "piece rest at bottom-left in light\n"
    "grain along top-left--bottom-right on wing\ngrain free on rest"
)


@given(st.integers(2, 20), st.integers(2, 20))
@settings(max_examples=30, deadline=None)
def test_a_grain_follows_the_line_it_was_asked_along(width: int, height: int) -> None:
    """The line runs from corner to corner at every size, and the grain with it."""
    stretched = resize(check_block(SLANTED), Fraction(width), Fraction(height))
    wing, rest = (next(each for each in stretched.pieces if each.name == name) for name in ("wing", "rest"))
    assert isinstance(wing.grain, float)
    assert wing.grain == pytest.approx(180 - degrees(atan2(width, height)), abs=1e-9)
    assert rest.grain == "free"


def test_a_grain_along_a_side_stays_there() -> None:
    body = SLANTED.replace("along top-left--bottom-right", "along top-left--bottom-left")
    wing = next(
        each for each in resize(check_block(body), Fraction(9), Fraction(4)).pieces if each.name == "wing"
    )
    assert wing.grain in (0, 180)
