"""The kinds of file that documents are made into, each told here and nowhere else.

for name, data in files_in("png", made, "vane-v2", options, 300, "vane.block, block 'Vane'"): ...
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import TYPE_CHECKING, Final, Literal

from ..failures import own_mistakes
from ..measure.record import record
from .owners import marked
from .stopping import held

if TYPE_CHECKING:
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.content import Book
    from ..sheets.documents import Made
    from ..sheets.page import Document, Page


@record
class Format:
    """A kind of file: made of a whole document, of each of its pages, or of the book it is set from."""

    unit: Literal["document", "page", "book"]
    make: Callable[..., bytes]


def _pdf(document: Document) -> bytes:
    from ..sheets.drawing.files import pdf_bytes

    return pdf_bytes(document)


def _png(page: Page, dpi: int) -> bytes:
    from ..sheets.drawing.files import png_bytes

    return png_bytes(page, dpi)


def _svg(page: Page, dpi: int) -> bytes:
    from ..sheets.drawing.files import svg_bytes

    return svg_bytes(page)


def _html(book: Book, options: SheetOptions) -> bytes:
    from ..sheets.setting.html_book import html_bytes

    return html_bytes(book, options)


FORMATS: Final[Mapping[str, Format]] = {
    "pdf": Format("document", _pdf),
    "png": Format("page", _png),
    "svg": Format("page", _svg),
    "html": Format("book", _html),
}
"""Each kind by its name, which ends the names of its files too."""

JSON: Final = "json"
"""What is written of numbers alone, of no document."""


def of_books(kind: str) -> bool:
    """Whether a kind is made of booklets alone, one file each."""
    return kind in FORMATS and FORMATS[kind].unit == "book"


def is_one_file(kind: str) -> bool:
    """Whether a document of many pages is one file of a kind."""
    return FORMATS[kind].unit != "page"


def files_in(
    kind: str, made: Made, stem: str, options: SheetOptions, dpi: int, title: str
) -> Iterator[tuple[str, bytes]]:
    """The files of one kind: one, or one for every page; none where it is made of a book and there is none.
    `title` is for messages."""
    form, document = FORMATS[kind], made.document
    if form.unit == "book":
        if made.book:
            with own_mistakes(title):
                data = form.make(made.book, options)
            yield f"{stem}.{kind}", marked(kind, data, document.title)
        return
    if form.unit == "document":
        with own_mistakes(title), held():
            data = form.make(document)
        yield f"{stem}.{kind}", marked(kind, data, document.title)
        return
    for number, page in enumerate(document.pages, 1):
        with own_mistakes(title), held():
            data = form.make(page, dpi)
        yield page_name(stem, number, kind), marked(kind, data, document.title)


def page_name(stem: str, number: int, kind: str) -> str:
    """`tidewater-vane-v2-page-1.png`."""
    return f"{stem}-page-{number}.{kind}"
