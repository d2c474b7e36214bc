"""Every example of the language reference compiles, or gives the very code that it is marked with."""

from __future__ import annotations

import re
from importlib.resources import files
from typing import NamedTuple

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.diagnostics.diagnostic import Diagnostic
from piecewright.diagnostics.source import Source
from piecewright.door.pictures import MOST_DOTS
from piecewright.drafting import counting
from piecewright.geometry.close_pairs import CROSSINGS_MOST, CURVED_MOST, TOUCHES_MOST
from piecewright.language import limits
from piecewright.language.tokens import RESERVED
from piecewright.measure.tolerance import FAR
from piecewright.pipeline import compile_file
from piecewright.quilt.cells import CELLS_MOST
from piecewright.quilt.layout import PIECES_MOST
from piecewright.quilt.mattress import MATTRESSES
from piecewright.words.say import INCHES
from support.check import DictShelf

PAGE = files("piecewright.grammar").joinpath("REFERENCE.md").read_text(encoding="utf-8")

FENCE = re.compile(r"^```block(?: error=([a-z-]+))?\n(.*?)^```$", re.MULTILINE | re.DOTALL)


class Shown(NamedTuple):
    """An example of the page: the code it is marked with (empty: none), and its text."""

    code: str
    text: str

    @property
    def title(self) -> str:
        """The title of its first block or quilt."""
        found = re.search(r'"([^"]*)"', self.text)
        assert found is not None
        return found.group(1)


EXAMPLES = tuple(Shown(found.group(1) or "", found.group(2)) for found in FENCE.finditer(PAGE))


BESIDE = DictShelf(
    {f"{each.title}.block": each.text for each in EXAMPLES if not each.code and "\nquilt " not in each.text}
)
"""The page's blocks, which its quilts use."""


def said_of(text: str) -> tuple[Diagnostic, ...]:
    """All that is said of an example: its blocks stand alone, its quilts are laid out and planned."""
    made = compile_file(Source("example.block", text), BESIDE if "\nquilt " in text else DictShelf({}))
    quilts = made.value.quilts if made.value else ()
    return (*made.diagnostics, *(each for quilt in quilts for each in plan_cutting(quilt).diagnostics))


@pytest.mark.parametrize("example", EXAMPLES, ids=[each.title for each in EXAMPLES])
def test_each_example_does_what_the_page_says(example: Shown) -> None:
    codes = [each.code for each in said_of(example.text)]
    assert codes == ([example.code] if example.code else [])


def test_every_fence_of_the_page_is_an_example() -> None:
    assert PAGE.count("```block") == len(EXAMPLES) == PAGE.count("\n```\n")


def test_the_page_lists_every_reserved_word_and_no_other() -> None:
    listed = PAGE[PAGE.index("## Reserved words") : PAGE.index("Every other word is free")]
    assert set(re.findall(r"`([a-z]+)`", listed)) == RESERVED


def test_the_page_states_the_bounds_in_force() -> None:
    table = PAGE[PAGE.index("## Bounds") : PAGE.index("## Reserved words")]
    for bound in (
        f"{limits.LENGTH_MOST}in; a length is at least {limits.LENGTH_LEAST}in",
        f"| {limits.GRID_LINES} |",
        f"| {FAR:,}in |",
        f"| {limits.TURN_COPIES} |",
        f"| {limits.ROUNDS} |",
        f"| {limits.NESTING} |",
        f"| {limits.BLOCKS:,}; {limits.STATEMENTS:,}; {limits.WORDS:,} |",
        f"the first {limits.ERRORS} |",
        f"| {counting.LINES_MOST:,}; {counting.PIECES_MOST:,} |",
        f"| {CROSSINGS_MOST:,} |",
        f"| {TOUCHES_MOST:,} each |",
        f"of all blocks of a file | {counting.FILE_LINKS_MOST:,} |",
        f"| {limits.BORDERS}; {limits.COLOURWAYS} |",
        f"| {MOST_DOTS:,} dots across |",
        f"| {limits.TITLE_LETTERS}; {limits.NAME_LETTERS}; {limits.NOTE_LETTERS} characters |",
        f"| {limits.FILE_BYTES // 1_000_000} MB |",
        f"| blocks across or down a set | {limits.SET_BLOCKS} |",
        f"| {CELLS_MOST:,} |",
        f"| {PIECES_MOST:,} |",
        f"| fat quarters of one fabric | {limits.FAT_QUARTERS} |",
    ):
        assert bound in table
    assert TOUCHES_MOST == CURVED_MOST
    assert limits.GRID_LINES == limits.ROW_REPEATS and limits.TURN_COPIES == limits.OUTLINE_SIDES


def test_the_page_has_every_mattress_there_is_at_its_size() -> None:
    table = PAGE[PAGE.index("| mattress |") : PAGE.index("Lists differ")]
    listed = {
        name: size
        for names, size in re.findall(r"^\| (`[^|]*`) \| ([^|]*) \|", table, re.MULTILINE)
        for name in re.findall(r"`(\w+)`", names)
    }
    assert listed == {name: INCHES.size(each.width, each.length) for name, each in MATTRESSES.items()}
