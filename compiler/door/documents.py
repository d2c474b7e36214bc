"""What is made of a block or a quilt: its sheets, its booklet, or parts of it; and a quilt's tables."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from ..diagnostics.source import Span
from ..failures import Refused, own_mistakes
from .choices import Sewing

if TYPE_CHECKING:
    from ..pipeline import CompiledBlock
    from ..planning import PlannedQuilt
    from ..quilt.model import Quilt
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.booklet.content import Book
    from ..sheets.page import Document
    from .naming import Names

BOOKLET: Final = "booklet"  # ends the names of its files
HTML: Final = "html"

BLOCK_PARTS: Final = (
    "needs",
    "chart",
    "templates",
    "foundation",
    "papers",
    "steps",
    "difficulty",
    "exercise",
    "card",
    "safety",
    "glossary",
)
"""Chapters of a block, those of sheets.booklet."""

QUILT_PARTS: Final = ("picture", "supplies", "counts", "chart", "cutting", "templates")
"""Parts of a quilt's sheets, those of sheets.arrange."""


PARTS: Final = tuple(dict.fromkeys((*QUILT_PARTS, *BLOCK_PARTS)))
"""All of them."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is to be made: the parts named, a booklet, and how each block is sewn in it."""

    options: SheetOptions
    sewing: Sewing
    parts: tuple[str, ...] = ()
    booklet: bool = False


@dataclass(frozen=True, slots=True)
class Made:
    """One document, what ends its files' names, and the book it is set from, where it can be HTML as well."""

    ending: str
    document: Document
    book: Book | None = None


def made_of_block(block: CompiledBlock, wanted: Wanted) -> Iterator[Made]:
    """The booklet, or each part asked for, or the template sheets."""
    options, parts = wanted.options, wanted.parts
    if not wanted.booklet and not parts:
        from ..sheets.arrange.block_sheets import arrange_block

        yield Made("", arrange_block(block.draft, block.templates, options))
        return
    from ..sheets.arrange.page_bound import bounded
    from ..sheets.booklet.block_book import BLOCK_PARTS, Sewn, block_book, block_part
    from ..sheets.booklet.setting.set_pages import chapters_document, set_book

    sewn = Sewn(block.draft, block.templates, block.assembly, block.proof)
    way = wanted.sewing.way_for(block)
    if wanted.booklet:
        book = block_book(sewn, options, way)
        yield Made(BOOKLET, bounded(set_book(book, options)), book)
    for part in BLOCK_PARTS:
        if part in parts:
            alone = chapters_document(block_part(sewn, part, options, way), options)
            yield Made(part, bounded(alone))


def stem_of(names: Names, quilt: Quilt, source: str) -> str:
    """`breakwater-sampler-sea-v1`: the title, the colourway and the version."""
    title = f"{quilt.title}\n{quilt.colourway}" if quilt.colourway else quilt.title
    return names.stem(title, quilt.version, f"{source}\0quilt", quilt.title)  # apart from a block


def made_of_quilt(planned: PlannedQuilt, wanted: Wanted) -> Iterator[Made]:
    """The whole document or the booklet; and each part asked for that has pages."""
    from ..sheets.quilts.sheets import arrange_quilt, arrange_quilt_part

    quilt, plan = planned.quilt, planned.plan
    options, parts = wanted.options, wanted.parts
    if not parts and not wanted.booklet:
        yield Made("", arrange_quilt(quilt, plan, options))
    for part in QUILT_PARTS:
        if part in parts:
            document = arrange_quilt_part(part, quilt, plan, options)
            if document.pages:
                yield Made(part, document)
    if wanted.booklet or any(part not in QUILT_PARTS for part in parts):
        yield from _of_booklet(planned, wanted)


def _of_booklet(planned: PlannedQuilt, wanted: Wanted) -> Iterator[Made]:
    """The booklet, and those parts that are a booklet's."""
    from ..sheets.booklet.quilt_book import QuiltBook
    from ..sheets.booklet.setting.set_pages import chapters_document, set_book

    options, parts = wanted.options, wanted.parts
    maker = QuiltBook(
        planned.quilt,
        planned.plan,
        planned.assembly,
        options,
        wanted.sewing.way_for,
        planned.papers,
    )
    if wanted.booklet:
        book = maker.book()
        yield Made(BOOKLET, set_book(book, options), book)
    for part in BLOCK_PARTS:
        if part in parts and part not in QUILT_PARTS:
            yield Made(part, chapters_document(maker.alone(part), options))


def tables_of(planned: PlannedQuilt) -> Iterator[tuple[str, bytes]]:
    """Endings and bytes of the quilt's tables: CSV for spreadsheets, and all of them as JSON."""
    from json import dumps

    from .records.reports import planned_report
    from .records.tables import quilt_csv

    for name, text in quilt_csv(planned.quilt, planned.plan).items():
        yield name, text.encode()
    yield "numbers.json", dumps(planned_report(planned), indent=1).encode() + b"\n"


@contextmanager
def laying_out(subject: str, title: Span) -> Iterator[None]:
    """The same, and refuses what has more pages than anybody prints at the title's words."""
    from ..sheets.arrange.page_bound import TooManyPages

    with own_mistakes(subject):
        try:
            yield
        except TooManyPages as problem:
            raise Refused(problem.said(title)) from problem
