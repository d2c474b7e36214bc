"""The words of a booklet as a page for a browser, beside those of the booklet itself."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ..phrases import count_of

SKIP: Final = "Skip to the content"
CONTENTS: Final = "Contents"
DONE: Final = "done"
WHAT: Final = "what"
TO_PRINT: Final = "To print true to size"
NOT_TRUE: Final = (
    "A screen is not true to size: print these pages from the PDF of this booklet at 100%, and measure the\n"
    "check square."
)


def page_title(title: str) -> str:
    """`Vane: booklet`."""
    return f"{title}: booklet"


def row_done(name: str) -> str:
    """A box to tick, to those who do not see its row."""
    return f"{name} {DONE}"


def pages_words(count: int) -> str:
    """`3 pages`."""
    return count_of(count, "page")


def sheet_words(title: str, bears: Sequence[str], *, more: bool) -> str:
    """A page made small, to those who do not see it: some of what is lettered on it."""
    words = f"Page to print: {title}."
    if bears:
        words += f" It bears {', '.join(bears)}{' and more' if more else ''}."
    return words
