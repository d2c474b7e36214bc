"""A block that would fill a library of paper is refused before anything is laid out."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

import pytest
from piecewright.diagnostics.diagnostic import Diagnostic
from piecewright.diagnostics.source import Source, Span
from piecewright.sheets.arrange.block_sheets import arrange_block
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.arrange.page_bound import PAGES_MOST, TooManyPages, bounded
from piecewright.sheets.page import Document, Page
from support.check import DictShelf, compile_source


def pages_of(side: str) -> int:
    text = f'edition 1\nblock "Marram Field" {{\n  finished {side}\n  piece field at center in sand\n}}\n'
    made = compile_source(Source("marram.block", text), DictShelf({})).value
    assert made
    return len(arrange_block(made[0].draft, made[0].templates, SheetOptions()).pages)


def refusal(making: Callable[[], object]) -> Diagnostic:
    """What is said of a block that is refused, at its title."""
    with pytest.raises(TooManyPages) as refused:
        making()
    return refused.value.said(Span("marram.block", 16, 30))


def test_a_piece_of_a_thousand_inches_is_refused_with_the_pages_it_would_take() -> None:
    # 1000.5in squared on pages whose body is 7 1/2in by 8 1/12in.
    assert "at least 16,512 pages; 400 is the most" in refusal(lambda: pages_of("1000in")).message


def test_overlaps_count_too() -> None:
    # By area alone it would pass: 19 x 18 tiles show 7in by 7 7/12in each besides their overlaps.
    assert re.search("take 4[0-9][0-9] pages", refusal(lambda: pages_of("148in")).message)


def test_a_large_piece_within_the_bound_is_tiled() -> None:
    assert 10 < pages_of("36in") <= PAGES_MOST


def test_the_units_are_pointed_at() -> None:
    assert "look at the units" in refusal(lambda: pages_of("900in")).help


def test_all_pages_together_are_bounded() -> None:
    page = Page(612.0, 792.0, "Foundation section A", ())
    most = Document("Marram Field", "", "", "", (page,) * PAGES_MOST)
    assert bounded(most) is most
    said = refusal(lambda: bounded(replace(most, pages=(*most.pages, page)))).message
    assert said == "The sheets take 401 pages; 400 is the most of one block."
