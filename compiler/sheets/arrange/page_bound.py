"""The most pages that one block may take: asked of its templates before any is laid out, then of them all."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import ceil
from typing import Final

from ...cutting.model import Template
from ...words.pages.templates import MAKE_SMALLER, too_many_sheets, too_many_templates
from ..packing.packing import area_of
from ..page import Document
from .cutout import outline_of
from .furniture import Paper
from .options import SheetOptions
from .paths import Ring

PAGES_MOST: Final = 400
"""Most of a ream: what is longer is a slip of the pen, such as inches for millimetres."""


class TooManyPages(Exception):
    """A block would take more pages than anybody prints; says how many, and in `help` what to do. The command
    line makes a complaint of it, at the block's title."""

    help: Final = MAKE_SMALLER


def refuse_too_many(pages: int, *, at_least: bool = False) -> None:
    """Raises TooManyPages beyond the bound. `at_least`: it may be more."""
    if pages > PAGES_MOST:
        raise TooManyPages(too_many_templates(pages, PAGES_MOST, at_least=at_least))


def bounded(document: Document) -> Document:
    """The block's document itself; raises TooManyPages where all its pages together are beyond the bound."""
    pages = len(document.pages)
    if pages > PAGES_MOST:
        raise TooManyPages(too_many_sheets(pages, PAGES_MOST))
    return document


def pages_covered(templates: Sequence[Template], paper: Paper, options: SheetOptions) -> int:
    """How many pages the templates' areas alone would cover: no layout takes fewer."""
    return pages_under([outline_of(template, 0.0, options) for template in templates], paper)


def pages_under(rings: Iterable[Ring], paper: Paper) -> int:
    """How many pages the areas alone of outlines that do not overlap would cover."""
    left, top, right, bottom = paper.body
    return ceil(sum(area_of(ring) for ring in rings) / ((right - left) * (bottom - top)))
