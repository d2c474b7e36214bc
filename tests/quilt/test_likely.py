"""Sizes that are allowed and that nobody sews are asked about, at the length, and taken as written."""

from __future__ import annotations

import pytest
from support.quilts import codes, quilt_text, try_quilt

SET = "set straight 2 across 2 down { alternate pair }"
LAST = "binding 2in in sand  backing in sand  batting"


@pytest.mark.parametrize(
    ("body", "last", "words", "asked"),
    [
        (SET + " border 100in in sand", LAST, "100in", "A border 100in wide: is this meant?"),
        (SET + " sashing 25in in sand", LAST, "25in", "Sashing 25in wide: is this meant?"),
        (
            SET,
            "binding 7in in sand  backing in sand  batting",
            "7in",
            "A binding cut 7in wide: is this meant?",
        ),
        (SET, LAST + " 30in over", "30in", "30in over on each side: is this meant?"),
        (
            "fabric rose shrinks 99.99% " + SET,
            LAST,
            "99.99%",
            "`rose` loses 99.99% in the wash: is this meant?",
        ),
    ],
)
def test_a_slip_of_the_pen_is_asked_about(body: str, last: str, words: str, asked: str) -> None:
    outcome = try_quilt(body, last=last)
    assert codes(outcome) == ["size-unlikely"] and outcome.value is not None
    (said,) = [each for each in outcome.diagnostics if each.code == "size-unlikely"]
    span = said.primary.span
    assert (quilt_text(body, last=last)[span.start : span.end], said.message) == (words, asked)


@pytest.mark.parametrize(
    "body",
    [
        SET + " border 12in in sand",
        SET + " sashing 6in in sand",
        "fabric rose shrinks 10% " + SET,
        SET + " border to 999in in sand",
    ],
)
def test_what_somebody_sews_is_not(body: str) -> None:
    """A border `to` a size says what it is for."""
    assert codes(try_quilt(body, last=LAST)) == []
