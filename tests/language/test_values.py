"""Numbers, lengths, angles and counts: exact as written, and each bound told by its name."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.language import limits
from support.programs import errors, in_block, parse_text

WHOLE = st.integers(0, 900)
PARTS = st.integers(1, 64).flatmap(lambda below: st.tuples(st.integers(1, 64), st.just(below)))
BLANKS = st.sampled_from(("", " ", "  ", "\t"))
UNITS = {"in": Fraction(1), "cm": Fraction(100, 254), "mm": Fraction(10, 254)}
"""Inches: an inch is 25.4mm exactly (CSS Values and Units 3, absolute lengths)."""


def statement(body: str) -> Any:
    """The first statement of a body without errors."""
    outcome = parse_text(in_block(body))
    assert errors(outcome) == [] and outcome.value is not None
    return outcome.value.blocks[0].body[0]


@settings(max_examples=150, derandomize=True, deadline=None)
@given(WHOLE, PARTS, st.sampled_from(sorted(UNITS)), BLANKS)
def test_mixed_lengths_are_exact(whole: int, parts: tuple[int, int], unit: str, blank: str) -> None:
    top, below = parts
    exact = (whole + Fraction(top, below)) * UNITS[unit]
    if limits.LENGTH_LEAST <= exact <= limits.LENGTH_MOST:
        assert statement(f"finished {whole} {top}/{below}{blank}{unit}").width.inches == exact


@settings(max_examples=150, derandomize=True, deadline=None)
@given(WHOLE, st.integers(0, 9999), st.sampled_from(sorted(UNITS)))
def test_decimal_lengths_are_exact(whole: int, places: int, unit: str) -> None:
    exact = (whole + Fraction(places, 10_000)) * UNITS[unit]
    if limits.LENGTH_LEAST <= exact <= limits.LENGTH_MOST:
        assert statement(f"allowance {whole}.{places:04d}{unit}").width.inches == exact


@settings(max_examples=100, derandomize=True, deadline=None)
@given(st.integers(-359, 359), PARTS)
def test_angles_and_steps_are_exact(whole: int, parts: tuple[int, int]) -> None:
    top, below = parts[0] % parts[1], parts[1]
    sign = -1 if whole < 0 else 1
    exact = sign * (abs(whole) + Fraction(top, below))
    turned = statement(f"point it = A1 turned {whole} {top}/{below}deg about B2").phrase
    assert turned.angle.degrees == (exact if whole else Fraction(top, below))
    steps = statement(f"point it = ({whole} {top}/{below}, {top}/{below})").phrase
    assert (steps.across, steps.down) == (turned.angle.degrees, Fraction(top, below))


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("1 1/2in", "1.5in"),
        ("3/4 in", "0.75in"),
        ("2.54cm", "1in"),
        ("25.4mm", "1in"),
        ("10mm", "1cm"),
        ("6/4in", "1 1/2in"),
    ],
)
def test_one_length_written_two_ways_is_one_length(first: str, second: str) -> None:
    assert statement(f"finished {first}").width == statement(f"finished {second}").width


HUGE = "9" * 5000


@pytest.mark.parametrize(
    ("body", "code"),
    [
        ("finished 0in", "length-zero"),
        ("finished 0/4in", "length-zero"),
        ("allowance 0.0cm", "length-zero"),
        ("finished -6in", "length-negative"),
        ("point p = -1in from A1 to B1", "length-negative"),
        ("finished 1/0in", "fraction-by-zero"),
        ("finished 6 1/0in", "fraction-by-zero"),
        ("grid 1/0:1 x 2", "fraction-by-zero"),
        ("point p = (1/0, 1)", "fraction-by-zero"),
        ("point p = A1 turned 1/0deg about B1", "fraction-by-zero"),
        ("finished 1001in", "length-too-large"),
        ("finished 999999999999999999in", "length-too-large"),
        (f"finished {HUGE}in", "number-too-long"),
        (f"finished 1/{HUGE}in", "number-too-long"),
        (f"turn {HUGE} about center {{ }}", "number-too-long"),
        ("finished 1/65in", "length-too-small"),
        ("finished 0.1mm", "length-too-small"),
        ("grid 100000 x 100000", "count-too-large"),
        ("grid 0 x 2", "count-too-small"),
        ("grid 2.5 x 2", "count-not-whole"),
        ("grid 1:0:1 x 2", "part-not-positive"),
        ("grid 1:-1 x 2", "part-not-positive"),
        ("grid " + ":".join(["1"] * 1001) + " x 2", "count-too-large"),
        ("turn 1000000 about center { }", "count-too-large"),
        ("turn 0 about center { }", "count-too-small"),
        ("turn 1 about center { }", "count-too-small"),
        ("turn -4 about center { }", "count-too-small"),
        ("turn 2.5 about center { }", "count-not-whole"),
        ("turn 6 of 0deg about center { }", "turn-step-zero"),
        ("turn 6 of 361deg about center { }", "angle-too-large"),
        ("outline regular 2 side 3in", "count-too-small"),
        ("outline regular 1000 side 3in", "count-too-large"),
        ("row 0 pair", "count-too-small"),
        ("row 100000 pair", "count-too-large"),
        ("rounds 0 of 1in about A1..B2 in dark", "count-too-small"),
        ("rounds 9999 of 1in about A1..B2 in dark", "count-too-large"),
        ('use "X" version 0 as x', "count-too-small"),
        ("seam A1 -- E0", "grid-row-zero"),
        ("seam A1 -- E01", "grid-row-zero"),
        ("seam A1 -- A5000", "grid-point-far"),
        ("seam A1 -- ZZZZ1", "grid-point-far"),
        (f"seam A1 -- A{HUGE}", "grid-point-far"),
        (f"seam A1 -- {'Q' * 5000}1", "grid-point-far"),
        ("point p = (100000, 0)", "grid-point-far"),
        ("point p = 100000 from A1 to B1", "share-too-large"),
        (f"point {'a' * 100_000} = center", "name-too-long"),
        (f'note "{"a" * 100_000}"', "text-too-long"),
        ('note ""', "text-empty"),
        (r'note "a\n"', "text-escape"),
        ('note "a\tb"', "character-unseen"),
        ('note "a\x07b"', "character-unseen"),
        ("# a remark with a bell \x07", "character-unseen"),
        ("seam A1 -- \u202eB1", "character-unseen"),
    ],
)
def test_each_bound_is_told(body: str, code: str) -> None:
    outcome = parse_text(in_block(body))
    assert set(errors(outcome)) == {code}
    assert all(len(each.message) < 140 for each in outcome.diagnostics)


@pytest.mark.parametrize(
    ("title", "code"),
    [
        ("", "title-empty"),
        ("   ", "title-empty"),
        ("x" * 121, "title-too-long"),
        ("x" * 100_000, "title-too-long"),
        ("a\0b", "character-unseen"),
        ("a\x1bb", "character-unseen"),
    ],
)
def test_titles_that_cannot_be_printed(title: str, code: str) -> None:
    assert errors(parse_text(f'edition 1\nblock "{title}" {{ }}')) == [code]


def test_the_longest_title_and_name_are_taken() -> None:
    title, word = "x" * limits.TITLE_LETTERS, "a" * limits.NAME_LETTERS
    assert errors(parse_text(f'edition 1\nblock "{title}" {{ point {word} = center }}')) == []


def test_a_whole_share_is_noted_since_its_unit_may_be_missing() -> None:
    outcome = parse_text(in_block("point p = 1 from B1 to C1"))
    assert [each.code for each in outcome.diagnostics] == ["share-beyond"] and not outcome.failed
    assert outcome.diagnostics[0].fix is not None and outcome.diagnostics[0].fix.text == "1in"
