"""Which documents are made of a work, and which chapters each has: template sheets, a quilt's sheets, a
booklet, a part alone.

    work = Work(planned, way_for)
    for ending, document, book in documents_of(work, ("", "booklet", "chart"), options): ...
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Final, Literal, NamedTuple

from ..words.pages.booklet import BLOCK_SHEETS, QUILT_SHEETS
from .arrange.options import SheetOptions
from .arrange.page_bound import bounded
from .chapters.block_steps import block_steps
from .chapters.card import card, no_card
from .chapters.chart import chart
from .chapters.counts import counts
from .chapters.cover import bound, cover
from .chapters.cutting import cutting
from .chapters.difficulty import difficulty
from .chapters.exercise import drafting_paper, exercise, has_exercise
from .chapters.finish import finish
from .chapters.foundations import foundations
from .chapters.glossary import glossary_chapter
from .chapters.needs import needs
from .chapters.notes import notes
from .chapters.papers import papers
from .chapters.picture import picture, picture_with_notes
from .chapters.rows import rows
from .chapters.safety import safety
from .chapters.templates import block_templates, templates, templates_of_setting
from .content import Book, Chapter
from .page import Document
from .part_names import BLOCK_PARTS, QUILT_PARTS, QuiltPart
from .setting.pages import set_book, set_chapters
from .setting.words_of import words_of
from .work import CutOut, Work, WorkBlock

Maker = Callable[[Work, SheetOptions], Iterator[Chapter]]
"""What makes a chapter of a work, or several, or none."""

OfBlock = Literal["foundation", "papers", "templates", "steps", "exercise"]
OF_BLOCK: Final[Mapping[OfBlock, Callable[[WorkBlock, SheetOptions], Chapter]]] = {
    "foundation": foundations,
    "papers": papers,
    "templates": block_templates,
    "steps": block_steps,
    "exercise": exercise,
}
"""The chapters that each block has, in the order of a booklet."""

BOOKLET: Final = "booklet"


def blocks(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """Every block's chapters, as far as they belong to its way of sewing; then those of all blocks."""
    for block in work.blocks:
        yield from (OF_BLOCK[part](block, options) for part in _parts_of(block))
    yield from drafting_paper(work, options)
    yield from templates_of_setting(work, options)


def _parts_of(block: WorkBlock) -> Iterator[OfBlock]:
    """The chapters that belong to a block's way of sewing; where no foundation serves it, why not, and its
    templates."""
    if block.way == "foundation":
        yield "foundation"
    if block.cut_out == "paper-shape":
        yield "papers"
    if block.cut_out == "template":
        yield "templates"
    if block.cut_out:
        yield "steps"
    if has_exercise(block, block.work.say):
        yield "exercise"


QUILT_BOOK: Final[tuple[Maker, ...]] = (
    picture, notes, needs, counts, chart, cutting, blocks, rows, finish, difficulty, card, safety,
)  # fmt: skip
"""The chapters of a quilt's booklet."""

BLOCK_BOOK: Final[Mapping[CutOut, tuple[Maker, ...]]] = {
    "template": (notes, needs, difficulty, chart, blocks, card, safety),
    "paper-shape": (notes, needs, difficulty, blocks, card, safety),
    "": (notes, needs, difficulty, blocks, safety),
}
"""The chapters of a block's booklet, by what is cut out for it; a glossary comes last in either."""

SHEETS: Final[Mapping[QuiltPart, tuple[Maker, ...]]] = {
    "picture": (picture_with_notes,),
    "supplies": (needs, safety),
    "counts": (counts,),
    "chart": (chart,),
    "cutting": (cutting,),
    "templates": (templates,),
}
"""The chapters of a quilt's sheets."""

ALONE: Final[Mapping[str, tuple[Maker, ...]]] = {
    "needs": (needs,),
    "difficulty": (difficulty,),
    "card": (card,),
    "safety": (safety,),
}
"""The chapters that booklets have besides, and that can be had alone."""


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
            book = booklet(work, options)
            made = Made(ending, set_book(book, options), book)
        elif not ending or _is_sheet(work, ending):
            made = Made(ending, sheets(work, ending, options))
        else:
            made = Made(ending, set_chapters(part(work, ending, options), options))
        if made.document.pages:
            yield made._replace(document=bounded(made.document)) if work.alone else made


def booklet(work: Work, options: SheetOptions) -> Book:
    """The whole booklet."""
    makers = BLOCK_BOOK[work.blocks[0].cut_out] if work.alone else QUILT_BOOK
    chapters = _chapters(work, makers, options)
    return bound(work, (*chapters, glossary_chapter(words_of(chapters), work.say)), cover(work))


def part(work: Work, name: str, options: SheetOptions) -> Book:
    """One part of a booklet, as a book of its own without cover and contents; of a quilt that of every block
    and of its top. Empty where there is no such part."""
    if name == "glossary":
        return bound(work, booklet(work, options).chapters[-1:])
    if name in ALONE:
        chapters = _chapters(work, ALONE[name], options) or [no_card()]
        return bound(work, chapters)
    made = OF_BLOCK.get(name)  # type: ignore[call-overload]
    chapters = [made(block, options) for block in work.blocks] if made else []
    if name == "exercise":
        chapters += drafting_paper(work, options)
    if name == "steps" and not work.alone:
        chapters += _chapters(work, (rows, finish), options)
    return bound(work, chapters)


def sheets(work: Work, name: str, options: SheetOptions) -> Document:
    """The sheets to cut and sew by, or one part of them: of a block its templates."""
    names = (name,) if name else ("templates",) if work.alone else QUILT_PARTS
    chapters = _chapters(work, [maker for each in names for maker in SHEETS[each]], options)  # type: ignore[index]
    what = BLOCK_SHEETS if work.alone else QUILT_SHEETS
    return set_chapters(bound(work, chapters, what=what), options, headed=False)


def _is_sheet(work: Work, name: str) -> bool:
    """Whether a part is one of the sheets; a block has those alone that booklets have, too."""
    return name in QUILT_PARTS and (not work.alone or name in BLOCK_PARTS)


def _chapters(work: Work, makers: Sequence[Maker], options: SheetOptions) -> list[Chapter]:
    return [chapter for maker in makers for chapter in maker(work, options)]
