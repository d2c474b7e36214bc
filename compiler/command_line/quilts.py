"""What is made of a quilt: one document of all its pages, or of its parts; and its numbers as tables."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

from .booklets import BOOKLET, Booklets, Made

if TYPE_CHECKING:
    from ..planning import PlannedQuilt
    from ..quilt.model import Quilt
    from ..sheets.arrange.options import SheetOptions
    from .naming import Names

PARTS: Final = ("picture", "supplies", "counts", "chart", "cutting", "templates")  # those of sheets.arrange


def stem_of(names: Names, quilt: Quilt, source: str) -> str:
    """`breakwater-sampler-sea-v1`: the title, the colourway and the version."""
    title = f"{quilt.title}\n{quilt.colourway}" if quilt.colourway else quilt.title
    return names.stem(title, quilt.version, f"{source}\0quilt", quilt.title)  # apart from a block


def made_of_quilt(
    planned: PlannedQuilt,
    parts: tuple[str, ...],
    options: SheetOptions,
    booklets: Booklets,
) -> Iterator[Made]:
    """The whole document or the booklet; and each part asked for that has pages."""
    from ..sheets.quilts.sheets import QUILT_PARTS, arrange_quilt, arrange_quilt_part

    quilt, plan = planned.quilt, planned.plan
    if not parts and not booklets.wanted:
        yield Made("", arrange_quilt(quilt, plan, options))
    for part in QUILT_PARTS:
        if part in parts:
            document = arrange_quilt_part(part, quilt, plan, options)
            if document.pages:
                yield Made(part, document)
    if booklets.wanted or any(part not in QUILT_PARTS for part in parts):
        yield from _of_booklet(planned, parts, options, booklets)


def _of_booklet(
    planned: PlannedQuilt,
    parts: tuple[str, ...],
    options: SheetOptions,
    booklets: Booklets,
) -> Iterator[Made]:
    """The booklet, and those parts that are a booklet's."""
    from ..sheets.booklet.block_book import BLOCK_PARTS
    from ..sheets.booklet.quilt_book import QuiltBook
    from ..sheets.booklet.setting.set_pages import chapters_document, set_book

    maker = QuiltBook(
        planned.quilt,
        planned.plan,
        planned.assembly,
        options,
        booklets.way_for,
        planned.papers,
    )
    if booklets.wanted:
        book = maker.book()
        yield Made(BOOKLET, set_book(book, options), book)
    for part in BLOCK_PARTS:
        if part in parts and part not in PARTS:
            yield Made(part, chapters_document(maker.alone(part), options))


def tables_of(planned: PlannedQuilt) -> Iterator[tuple[str, bytes]]:
    """Endings and bytes of the quilt's tables: CSV for spreadsheets, and all of them as JSON."""
    from json import dumps

    from ..sheets.reports.quilt_csv import quilt_csv
    from ..sheets.reports.quilt_report import planned_report

    for name, text in quilt_csv(planned.quilt, planned.plan).items():
        yield name, text.encode()
    yield "numbers.json", dumps(planned_report(planned), indent=1).encode() + b"\n"
