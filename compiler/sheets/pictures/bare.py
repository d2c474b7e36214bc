"""A picture without a word on it: in its fabrics, or its lines alone, to be coloured by hand; and several
pictures beside each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import ceil, sqrt
from typing import Final

from ..arrange.enlarge import enlarged
from ..arrange.style import BLACK
from ..packing.moving import moved_mark
from ..page import Mark, Page, PathMark

EDGE: Final = 6.0  # points of white all round
LINES: Final = ("seam", "outline", "block")


def bare_page(page: Page, *, lines_only: bool) -> Page:
    """The drawing of a picture alone, as large as the picture was; with `lines_only` as a page to colour."""
    kept = list(_lines(page.marks)) if lines_only else _drawing(page.marks)
    outline = [each for mark in kept if mark.role == "outline" for each in mark.path if each[0] != "Z"]
    xs, ys = [each[-2] for each in outline], [each[-1] for each in outline]
    wide, tall = max(xs) - min(xs) + 2 * EDGE, max(ys) - min(ys) + 2 * EDGE
    by = max(page.width, page.height) / max(wide, tall)
    marks = (enlarged(moved_mark(mark, EDGE - min(xs), EDGE - min(ys)), by) for mark in kept)
    return Page(wide * by, tall * by, page.title, tuple(marks))


def _drawing(marks: Sequence[Mark]) -> list[PathMark]:
    return [mark for mark in marks if isinstance(mark, PathMark) and mark.role in ("fill", "texture", *LINES)]


def _lines(marks: Sequence[Mark]) -> Iterator[PathMark]:
    for mark in _drawing(marks):
        if mark.role in LINES:
            yield replace(mark, stroke=BLACK)


def side_by_side(pages: Sequence[Page], title: str) -> Page:
    """The pages on one sheet, row by row, about as many across as down; the sheet is no larger than the first
    of them."""
    across = ceil(sqrt(len(pages)))
    wide, tall = max(page.width for page in pages), max(page.height for page in pages)
    down = ceil(len(pages) / across)
    by = max(wide, tall) / max(wide * across, tall * down)
    marks = [
        enlarged(moved_mark(mark, number % across * wide, number // across * tall), by)
        for number, page in enumerate(pages)
        for mark in page.marks
    ]
    return Page(wide * across * by, tall * down * by, title, tuple(marks))
