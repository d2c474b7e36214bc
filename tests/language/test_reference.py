"""Every example of the language reference compiles, or gives the very code that it is marked with."""

from __future__ import annotations

import re
from importlib.resources import files
from typing import NamedTuple

import pytest
from piecewright.diagnostics.diagnostic import Diagnostic
from piecewright.diagnostics.source import Source
from piecewright.language import limits
from piecewright.language.shelf import EmptyShelf
from piecewright.language.tokens import RESERVED
from piecewright.pipeline import compile_source

PAGE = files("piecewright.grammar").joinpath("REFERENCE.md").read_text(encoding="utf-8")

FENCE = re.compile(r"^```block(?: error=([a-z-]+))?\n(.*?)^```$", re.MULTILINE | re.DOTALL)


class Shown(NamedTuple):
    """An example of the page: the code it is marked with (empty: none), and its text."""

    code: str
    text: str

    @property
    def title(self) -> str:
        """The title of its first block."""
        found = re.search(r'"([^"]*)"', self.text)
        assert found is not None
        return found.group(1)


EXAMPLES = tuple(Shown(found.group(1) or "", found.group(2)) for found in FENCE.finditer(PAGE))


def said_of(text: str) -> tuple[Diagnostic, ...]:
    """All that the compiler says of an example."""
    return compile_source(Source("example.block", text), EmptyShelf()).diagnostics


@pytest.mark.parametrize("example", EXAMPLES, ids=[each.title for each in EXAMPLES])
def test_each_example_does_what_the_page_says(example: Shown) -> None:
    codes = [each.code for each in said_of(example.text)]
    assert codes == ([example.code] if example.code else [])


def test_every_fence_of_the_page_is_an_example() -> None:
    assert PAGE.count("```block") == len(EXAMPLES) == PAGE.count("\n```\n")


def test_the_page_lists_every_reserved_word_and_no_other() -> None:
    listed = PAGE[PAGE.index("## Reserved words"):PAGE.index("Every other word is free")]
    assert set(re.findall(r"`([a-z]+)`", listed)) == RESERVED


def test_the_page_states_the_bounds_in_force() -> None:
    table = PAGE[PAGE.index("## Bounds"):PAGE.index("## Reserved words")]
    for bound in (
        f"{limits.LENGTH_MOST}in; at least {limits.LENGTH_LEAST}in", f"| {limits.GRID_LINES} |",
        f"| {limits.TURN_COPIES} |", f"| {limits.ROUNDS} |", f"| {limits.NESTING} |",
        f"| {limits.STATEMENTS:,} |",
        f"| {limits.TITLE_LETTERS}; {limits.NAME_LETTERS}; {limits.NOTE_LETTERS} characters |",
        f"| {limits.FILE_BYTES // 1_000_000} MB |",
    ):
        assert bound in table
    assert limits.GRID_LINES == limits.ROW_REPEATS and limits.TURN_COPIES == limits.OUTLINE_SIDES
