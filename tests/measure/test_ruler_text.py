"""Lengths as a quilter reads them: in the measure they were drafted in."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest
from piecewright.words.numbers import reads_exactly, ruler_text

CM = Fraction(50, 127)  # inches: 1in is 2.54cm exactly (the international inch of 1959)


@pytest.mark.parametrize(("length", "text"), [
    (20 * CM, "20cm"), (Fraction(15, 2) * CM, "7.5cm"), (CM / 10, "0.1cm"), (CM * Fraction(13, 4), "3.25cm"),
    (float(20 * CM), "20cm"), (127 * CM, "50in"), (Fraction(31, 8), "3 7/8in"), (Fraction(1, 3), "1/3in"),
    (2 * sqrt(2), "2.828in"), (-5 * CM, "-5cm"),
])  # fmt: skip
def test_whole_metric_lengths_are_told_in_centimetres(length, text):
    assert ruler_text(length) == text


def test_only_what_is_rounded_reads_as_about():
    assert reads_exactly(20 * CM) and reads_exactly(Fraction(31, 8)) and not reads_exactly(sqrt(2))
