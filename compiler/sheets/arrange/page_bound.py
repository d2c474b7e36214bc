"""The most pages that one block may take: asked of its templates before any is laid out, then of them all."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import ceil
from typing import Final

from ...cutting.model import Template
from ...diagnostics.diagnostic import Diagnostic
from ...diagnostics.source import Span
from ...words.messages.sheets import Counted, pages_too_many
from ..packing.packing import area_of
from ..page import Document
from .cutout import outline_of
from .furniture import Paper
from .options import SheetOptions
from .paths import Ring

PAGES_MOST: Final = 400
"""Most of a ream: what is longer is a slip of the pen, such as inches for millimetres."""


class TooManyPages(Exception):
    """A block would take more pages than anybody prints: how many, and which were counted."""

    def __init__(self, counted: Counted, pages: int) -> None:
        super().__init__(counted, pages)
        self.counted, self.pages = counted, pages

    def said(self, title: Span) -> Diagnostic:
        """The complaint of it, at the block's title."""
        return pages_too_many(title, self.counted, self.pages, PAGES_MOST)


def refuse_too_many(pages: int, counted: Counted = "templates") -> None:
    """Raises TooManyPages beyond the bound."""
    if pages > PAGES_MOST:
        raise TooManyPages(counted, pages)


def bounded(document: Document) -> Document:
    """The block's document itself; raises TooManyPages where all its pages together are beyond the bound."""
    refuse_too_many(len(document.pages), "sheets")
    return document


def pages_covered(templates: Sequence[Template], paper: Paper, options: SheetOptions) -> int:
    """How many pages the templates' areas alone would cover: no layout takes fewer."""
    return pages_under([outline_of(template, 0.0, options) for template in templates], paper)


def pages_under(rings: Iterable[Ring], paper: Paper) -> int:
    """How many pages the areas alone of outlines that do not overlap would cover."""
    left, top, right, bottom = paper.body
    return ceil(sum(area_of(ring) for ring in rings) / ((right - left) * (bottom - top)))
