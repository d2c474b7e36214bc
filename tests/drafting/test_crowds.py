"""What a block or a file draws too much of is refused at once, in one message; what is natural is not."""

from __future__ import annotations

import pytest
from piecewright.drafting import draft
from piecewright.language.limits import ERRORS
from support.check import codes, draft_block, draft_text, only, said, words

HEAD = "finished 8in grid 8 x 8 "
ZIGZAG = " -- ".join(f"({step * 37 % 401}/51, {8 * (step % 2)})" for step in range(5_001))


@pytest.mark.parametrize(
    ("body", "code"),
    (
        (
            HEAD + "turn 60 about center { seam A1 -- I9 seam A3 -- I7 seam A5 -- I2 seam B1 -- G9 }",
            "copy-outside",
        ),
        (HEAD + "turn 180 about center { seam through B1--G9 seam through A3--I7 }", "crossings-too-many"),
        (HEAD + f"seam {ZIGZAG}", "crossings-too-many"),
        (
            HEAD + "turn 360 about center { seam circle around (1in from center at 3deg) radius 2in }",
            "crossings-too-many",
        ),
        ("grid 300 x 300 of 1in alternate plain dark, plain pale", "block-too-large"),
        (
            "finished 8in outline top-left "
            + "".join(f"-- ({at}/500, {at % 2}/2)" for at in range(1, 500))
            + " -- bottom",
            "block-too-large",
        ),
    ),
)
def test_a_crowd_is_refused_in_one_message(body: str, code: str) -> None:
    assert codes(draft_block(body)) == [code]


def test_the_blocks_of_a_file_are_bounded_together(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each is allowed; the one with which they are too many is named, and the rest are not drafted."""
    monkeypatch.setattr(draft, "FILE_LINKS_MOST", 700)
    one = "{ grid 10 x 10 of 1in alternate plain dark, plain pale }"
    text = "edition 1\n" + "".join(f'block "B{number}" {one}\n' for number in range(9))
    assert words(only(draft_text(text), "block-too-large"), text) == '"B3"'  # 220 edges each


def test_of_unknown_names_the_first_two_hundred_are_told() -> None:
    body = (
        HEAD
        + " ".join(f"point nome{at} = top" for at in range(2_000))
        + " ".join(f" seam name{at} -- top" for at in range(2_000))
    )
    told = codes(draft_block(body))
    assert told == ["point-unknown"] * ERRORS + ["errors-too-many"]


def test_the_nearest_name_is_still_found_among_a_thousand() -> None:
    names = " ".join(f"point mark{at} = top" for at in range(1_200))
    outcome = draft_block(HEAD + names + " point gate = left seam gaet -- top")
    told = [each for each in outcome.diagnostics if each.code == "point-unknown"]
    assert len(told) == 1 and "gate" in told[0].help, said(outcome)


def test_a_net_of_twenty_seams_each_way_is_drafted() -> None:
    net = " ".join(
        f"seam through ({at}, 0)--({at}, 1) seam through (0, {at})--(1, {at})" for at in range(1, 20)
    )
    outcome = draft_block(f"grid 20 x 20 of 1in {net}")
    assert outcome.value is not None and len(outcome.value[0].pieces) == 400, said(outcome)
