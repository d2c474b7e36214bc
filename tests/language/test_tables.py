"""The tables that ship are those of the grammar, and both ways of reading make the same tree."""

from __future__ import annotations

import re
from functools import cache
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from lark import Token as LarkToken
from lark import Tree
from lark.exceptions import UnexpectedInput
from piecewright.diagnostics.source import Span
from piecewright.language import tree
from piecewright.language.automaton import TERMINALS
from piecewright.language.builder import Builder
from piecewright.language.regenerate import TABLES_FILE, build_lark, grammar_text, tables_text
from piecewright.language.tokens import OPENERS, RESERVED, Token
from piecewright.words.messages.expected import phrase
from support.programs import WHOLE, WHOLE_QUILT, grammar_examples, in_block, in_quilt, parse_text, programs


@cache
def lark() -> Any:
    """Lark's own parser for whole files."""
    return build_lark(["file"])


def by_lark(text: str) -> tree.File:
    """The tree that lark's parser leads to, made by the same builder."""
    builder = Builder("block.block")
    made: dict[int, Any] = {}
    top = lark().parse(text)
    for node in top.iter_subtrees():  # children first
        parts = [made[id(each)] if isinstance(each, Tree) else token_of(each) for each in node.children]
        made[id(node)] = builder.make(node.data, parts, Span("block.block", 0, 0))
    file: tree.File = made[id(top)]
    return file


def token_of(token: LarkToken) -> Token:
    """Lark's token as ours."""
    return Token(token.type, str(token), token.start_pos or 0, token.end_pos or 0)


def test_tables_are_those_of_the_grammar() -> None:
    assert TABLES_FILE.read_text(encoding="utf-8") == tables_text(), (
        "run `python -m piecewright.language.regenerate`"
    )


def test_grammar_is_strictly_lalr() -> None:
    """Lark's strict mode refuses conflicts between rules and collisions between words (needs interegular)."""
    build_lark(["file"], strict=True)


def test_grammar_and_compiler_reserve_the_same_words() -> None:
    found = re.search(r"^NAME: /\(\?!\(\?:([a-z|]+)\)", grammar_text(), re.MULTILINE)
    assert found is not None
    assert set(found.group(1).split("|")) == RESERVED


@pytest.mark.parametrize("word", sorted(RESERVED))
def test_reserved_word_cannot_be_a_name(word: str) -> None:
    with pytest.raises(UnexpectedInput):
        lark().parse(in_block(f"point {word} = center"))
    assert parse_text(in_block(f"point {word} = center")).failed
    assert not parse_text(in_block(f"point {word}-one = center\nseam {word}s -- A1")).failed


def test_every_terminal_has_a_phrase_without_its_own_name() -> None:
    for terminal in TERMINALS:
        assert terminal in OPENERS or phrase(terminal) != terminal
        assert "_" not in phrase(terminal) and "$" not in phrase(terminal)


@pytest.mark.parametrize("text", [WHOLE, WHOLE_QUILT])
def test_both_ways_of_reading_agree_on_a_file_with_every_statement(text: str) -> None:
    assert parse_text(text).value == by_lark(text)


TAKEN = tuple(each.text for each in grammar_examples() if each.taken and each.rule != "file")


@pytest.mark.parametrize("body", TAKEN)
def test_both_ways_of_reading_agree_on_the_examples(body: str) -> None:
    whole = body.startswith(("block", "quilt", "edition"))
    for text in [body] if whole else [in_block(body), in_quilt(body)]:
        try:
            expected = by_lark(text)
        except UnexpectedInput:
            assert parse_text(text).failed
        else:
            assert parse_text(text).value == expected


@settings(max_examples=150, derandomize=True, deadline=None, suppress_health_check=list(HealthCheck))
@given(programs())
def test_both_ways_of_reading_agree_on_generated_programs(text: str) -> None:
    try:
        expected = by_lark(text)
    except UnexpectedInput:
        return  # two words of the generator ran into one
    assert parse_text(text).value == expected
