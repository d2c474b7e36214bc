"""A file of many megabytes is refused for what it is, in as many words as one of a few lines."""

from __future__ import annotations

import pytest
from piecewright.language import limits
from support.programs import errors, in_block, read

MANY = 200_000

TOO_MUCH = (
    (in_block(f'finished 8in note "{"a" * MANY}"'), ["text-too-long"]),
    (in_block(f'finished 8in note "{chr(92) + chr(34)}{(chr(92) * 2) * MANY}"'), ["text-too-long"]),
    (f'edition 1\nblock "{"a" * MANY}" {{ finished 8in }}', ["title-too-long"]),
    (in_block(f"finished 8in seam {'a-' * MANY}a -- top"), ["name-too-long"]),
    (in_block(f"finished {'1' * MANY}in"), ["number-too-long"]),
    (in_block("finished 8in\n" + "#\n" * MANY), []),
    (in_block("finished 8in seam circle " + " \n" * MANY + "around center radius 1in"), []),
    (in_block("finished 8in " + "{" * MANY), ["nesting-too-deep"]),
    ("edition 1\n" + "seam " * (limits.STATEMENTS + 1), ["statements-too-many"]),
    ("edition 1\n" + ", " * (limits.WORDS + 1), ["words-too-many"]),
    (
        "edition 1\n" + "".join(f'block "B{at}" {{ finished 8in }}' for at in range(limits.BLOCKS + 1)),
        ["blocks-too-many"],
    ),
)


@pytest.mark.parametrize(("text", "codes"), TOO_MUCH, ids=range(len(TOO_MUCH)))
def test_one_thing_too_many_is_one_mistake(text: str, codes: list[str]) -> None:
    assert errors(read(text)) == codes


@pytest.mark.parametrize("sign", (";", "\x01", "½", "’", "\u00a0", "\\", "😀", '"a\x01"', "# \x01\n"))
def test_of_one_odd_sign_a_million_times_the_first_two_hundred_are_told(sign: str) -> None:
    told = read(in_block("finished 8in note " + sign * MANY)).diagnostics
    assert len(told) == limits.ERRORS + 1 and told[-1].code == "errors-too-many"


def test_a_line_of_blanks_in_open_quotes_is_read_once() -> None:
    """The end of a title is looked for from every letter of a line: not where a line is no title's."""
    assert "text-open" in errors(read(in_block('finished 8in note "' + " " * MANY + "x")))
