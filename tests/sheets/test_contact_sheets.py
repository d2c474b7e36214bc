"""The catalogue to print: every block once with its numbers, and every name with the right pages."""

from __future__ import annotations

import re
from collections import Counter
from functools import cache

import pytest
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.arrange.style import SMALLEST
from piecewright.sheets.catalogue.contact_sheets import ACROSS, DOWN, contact_sheets
from piecewright.sheets.page import Document, PathMark, TextMark
from support.arranged import text_box
from support.library import library_entries

EDGE = 18.0
"""Points: a quarter of an inch from the paper's edge, where no printer prints."""


@cache
def document(paper: str = "letter") -> Document:
    return contact_sheets(library_entries(), "Catalogue of blocks", SheetOptions(paper=paper))


def lines(number: int, paper: str = "letter") -> list[str]:
    return [mark.text for mark in document(paper).pages[number - 1].marks if isinstance(mark, TextMark)]


def picture_pages() -> int:
    return -(-len(library_entries()) // (ACROSS * DOWN))


def test_every_block_stands_once_under_its_title_in_order() -> None:
    titles = [
        mark.text
        for page in document().pages[: picture_pages()]
        for mark in page.marks
        if isinstance(mark, TextMark) and mark.bold and mark.text != "Catalogue of blocks"
    ]
    assert Counter(titles) == Counter(entry.facts.title for entry in library_entries())
    assert titles == sorted(titles, key=str.casefold)
    for page in document().pages[: picture_pages()]:
        outlines = [mark for mark in page.marks if isinstance(mark, PathMark) and mark.role == "outline"]
        assert 1 <= len(outlines) <= ACROSS * DOWN


def test_every_name_is_listed_with_the_pages_where_its_blocks_stand() -> None:
    pages = {number: set(lines(number)) for number in range(1, picture_pages() + 1)}
    listed = [
        line for number in range(picture_pages() + 1, len(document().pages) + 1) for line in lines(number)
    ]
    found = re.findall(r"([^:;\n]+), page (\d+)", "\n".join(listed))
    assert len(found) >= len({name for entry in library_entries() for name in entry.facts.names})
    for title, number in found:
        assert title.strip() in pages[int(number)]
    assert any(
        re.fullmatch(r"Monkey Wrench: Churn Dash, page \d; Snail's Trail, page \d", line) for line in listed
    )


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_nothing_is_tiny_off_the_paper_or_over_other_words(paper: str) -> None:
    for page in document(paper).pages:
        boxes = []
        for mark in page.marks:
            if isinstance(mark, TextMark):
                left, top, right, bottom = text_box(mark)
                assert mark.size >= SMALLEST
                assert left >= EDGE and right <= page.width - EDGE and bottom <= page.height - EDGE
                assert all(
                    right <= box[0] or left >= box[2] or bottom <= box[1] + 1 or top >= box[3] - 1
                    for box in boxes
                )
                boxes.append((left, top, right, bottom))
