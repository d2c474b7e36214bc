"""Places as far off as no block reaches are refused where they are made; what a drafter draws is not."""

from __future__ import annotations

import pytest
from piecewright.diagnostics.diagnostic import Severity
from support.check import check_block, draft_block, said

FAR_OFF = (
    "(meet top at 0.0000000001deg, right at 0deg)",
    "(meet top-left--top, bottom at 89.99deg)",
    "(1000 from center to (1000in from center at 1deg))",
    "((1000 from center to right) turned 180deg about (1000 from right to (1000 from center to left)))",
    "(top mirrored in (1000 from center to right)--(1000 from top to (1000 from center to left)))",
    "(foot of (1000 from center to right) on top--(1000 from top to (4 from center to right)))",
    "(between top, (900 from center to right), (1000 from center to (1000in from right at 90deg)))",
)


@pytest.mark.parametrize("place", FAR_OFF)
@pytest.mark.parametrize(
    "seam",
    (
        "seam left ~~ right through {}",
        "seam left ~~ right around {}",
        "seam circle around {} radius 1in",
        "seam circle around center through {}",
        "seam center -- {}",
        "seam through center--{}",
        "piece a at {} in dark",
        "turn 3 about {} {{ seam top -- bottom }}",
        "mirror in center--{} {{ seam top -- left }}",
    ),
)
def test_a_place_far_beyond_any_block_is_refused_at_its_words(seam: str, place: str) -> None:
    outcome = draft_block(f"finished 8in {seam.format(place)}")
    found = [each.code for each in outcome.diagnostics if each.severity is Severity.ERROR]
    assert found == ["point-too-far"], said(outcome)


def test_points_that_multiply_from_step_to_step_are_refused_at_the_first_too_far() -> None:
    chain = " ".join(f"point p{step} = 1000 from center to p{step - 1}" for step in range(1, 9))
    outcome = draft_block(
        f"finished 8in point p0 = 1in from center at 33deg {chain} seam left ~~ right through p8"
    )
    errors = [each for each in outcome.diagnostics if each.severity is Severity.ERROR]
    assert [each.code for each in errors] == ["point-too-far"], said(outcome)
    assert errors[0].primary.span.start == len('edition 1\nblock "Trial" {\n') + (
        f"finished 8in point p0 = 1in from center at 33deg {chain}".index("1000 from center to p1")
    )


def test_fractions_that_double_their_digits_at_every_step_go_on_as_floats() -> None:
    chain = " ".join(
        f"point p{step} = meet (1/3 from p{step - 1} to right)--left, "
        f"(1/7 from p{step - 1} to top)--bottom-right"
        for step in range(1, 80)
    )
    draft = check_block(
        f"finished 8in point p0 = (0.3, 0.7) {chain} seam top-left -- p79 -- bottom piece a at left in dark"
    )
    assert len(draft.pieces) == 2


@pytest.mark.parametrize(
    "body",
    (
        # a vanishing point 2,300in off; the centres of arcs that rise 1/64in in 8in; a fan from a far corner
        "finished 8in point sink = meet top at 0.1deg, right at 0deg "
        "seam bottom -- (3in from bottom to sink) -- outline",
        "finished 8in seam left ~~ right through (1/64in from center to top)",
        "finished 100in seam left ~~ right through (1/4in from center to top)",
        "finished 8in point eye = 1000in from center at 90deg "
        "seam through (1in from top to bottom)--eye seam through center--eye",
    ),
)
def test_what_a_drafter_constructs_outside_the_block_is_drawn(body: str) -> None:
    outcome = draft_block(body)
    assert outcome.value is not None, said(outcome)
