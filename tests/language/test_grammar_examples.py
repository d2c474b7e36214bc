"""The grammar file explains itself: every rule's yes lines are taken by it, every no line is not."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
from lark.exceptions import UnexpectedInput
from piecewright.language.regenerate import build_lark
from piecewright.language.tokens import BLOCK_OPENERS, QUILT_OPENERS
from support.programs import Example, errors, grammar_examples, in_block, in_quilt, parse_text, rule_names

PUBLIC_WITHOUT_EXAMPLES = ("turn_center", "whole_outline", "body", "line", "name", "side", "set_body")
"""Rules that only give a part its place in the statement around them."""


@cache
def lark() -> Any:
    """Lark's parser, able to start at every rule that has a name of its own."""
    return build_lark([rule for rule in rule_names() if not rule.startswith("_")])


def shown(example: Example) -> str:
    """The example as the test's name."""
    return f"{example.rule}: {example.text}"


@pytest.mark.parametrize("example", grammar_examples(), ids=shown)
def test_each_rule_takes_its_yes_lines_and_refuses_its_no_lines(example: Example) -> None:
    if example.taken:
        assert lark().parse(example.text, start=example.rule) is not None
    else:
        with pytest.raises(UnexpectedInput):
            lark().parse(example.text, start=example.rule)


STATEMENTS = tuple(
    each for each in grammar_examples() if each.text.split()[0] in BLOCK_OPENERS and each.rule != "file"
)


@pytest.mark.parametrize("example", STATEMENTS, ids=shown)
def test_the_compiler_takes_the_same_statements(example: Example) -> None:
    said = errors(parse_text(in_block(example.text)))
    assert (said == []) is example.taken, said


QUILT_STATEMENTS = tuple(
    each for each in grammar_examples() if each.text.split()[0] in QUILT_OPENERS and each.rule != "file"
)


@pytest.mark.parametrize("example", QUILT_STATEMENTS, ids=shown)
def test_the_compiler_takes_the_same_statements_of_a_quilt(example: Example) -> None:
    said = errors(parse_text(in_quilt(example.text)))
    assert (said == []) is example.taken, said


def test_every_statement_word_has_an_example_of_each_kind() -> None:
    for word in (*BLOCK_OPENERS, *QUILT_OPENERS):
        kinds = {each.taken for each in (*STATEMENTS, *QUILT_STATEMENTS) if each.text.split()[0] == word}
        assert kinds == {True, False}, word


def test_every_rule_has_an_example() -> None:
    without = {rule for rule in rule_names() if not rule.startswith("_")}
    without -= {each.rule for each in grammar_examples()}
    assert without == set(PUBLIC_WITHOUT_EXAMPLES)
