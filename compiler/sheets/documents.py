"""Which documents are made of a work: its sheets with their chapters, its booklet, a part of that alone.

work = Work(planned, way_for)
for ending, document, book in documents_of(work, ("", "booklet", "chart"), options): ...
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Final, NamedTuple

from ..words.pages.booklet import BLOCK_SHEETS, QUILT_SHEETS
from .arrange.options import SheetOptions
from .arrange.page_bound import bounded
from .chapters.chart import chart
from .chapters.counts import counts
from .chapters.cover import bound
from .chapters.cutting import cutting
from .chapters.needs import needs
from .chapters.picture import picture_with_notes
from .chapters.safety import safety
from .chapters.templates import templates
from .content import Book, Chapter
from .page import Document
from .part_names import BLOCK_PARTS, QUILT_PARTS, QuiltPart
from .setting.pages import set_book, set_chapters
from .work import Work

Maker = Callable[[Work, SheetOptions], Iterator[Chapter]]
"""What makes a chapter of a work, or several, or none."""

BOOKLET: Final = "booklet"

SHEETS: Final[Mapping[QuiltPart, tuple[Maker, ...]]] = {
    "picture": (picture_with_notes,),
    "supplies": (needs, safety),
    "counts": (counts,),
    "chart": (chart,),
    "cutting": (cutting,),
    "templates": (templates,),
}
"""The chapters of a quilt's sheets."""


class Made(NamedTuple):
    """A document, what ends its files' names, and the book it is set from, where it can be HTML as well."""

    ending: str
    document: Document
    book: Book | None = None


def documents_of(work: Work, wanted: Iterable[str], options: SheetOptions) -> Iterator[Made]:
    """The documents wanted: '' for the sheets, 'booklet', or a part's name. None of a part that the work does
    not have. TooManyPages where a block takes more than anybody prints."""
    for ending in wanted:
        if ending == BOOKLET:
            from .booklets import booklet

            book = booklet(work, options)
            made = Made(ending, set_book(book, options), book)
        elif not ending or _is_sheet(work, ending):
            made = Made(ending, sheets(work, ending, options))
        else:
            from .booklets import part

            made = Made(ending, set_chapters(part(work, ending, options), options))
        if made.document.pages:
            yield made._replace(document=bounded(made.document)) if work.alone else made


def sheets(work: Work, name: str, options: SheetOptions) -> Document:
    """The sheets to cut and sew by, or one part of them: of a block its templates."""
    names = (name,) if name else ("templates",) if work.alone else QUILT_PARTS
    chapters = chapters_of(work, [maker for each in names for maker in SHEETS[each]], options)  # type: ignore[index]
    what = BLOCK_SHEETS if work.alone else QUILT_SHEETS
    return set_chapters(bound(work, chapters, what=what), options, headed=False)


def _is_sheet(work: Work, name: str) -> bool:
    """Whether a part is one of the sheets; a block has those alone that booklets have, too."""
    return name in QUILT_PARTS and (not work.alone or name in BLOCK_PARTS)


def chapters_of(work: Work, makers: Sequence[Maker], options: SheetOptions) -> list[Chapter]:
    """What the makers make of the work, one after the other."""
    return [chapter for maker in makers for chapter in maker(work, options)]
