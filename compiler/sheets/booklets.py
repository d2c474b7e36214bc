"""The chapters of booklets, and parts of a booklet that can be had alone. Loaded where one is asked for."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Final, Literal

from .arrange.options import SheetOptions
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
from .chapters.picture import picture
from .chapters.rows import rows
from .chapters.safety import safety
from .chapters.templates import block_templates, templates_of_setting
from .content import Book, Chapter
from .documents import Maker, chapters_of
from .setting.words_of import words_of
from .work import CutOut, Work, WorkBlock

OfBlock = Literal["foundation", "papers", "templates", "steps", "exercise"]
OF_BLOCK: Final[Mapping[OfBlock, Callable[[WorkBlock, SheetOptions], Chapter]]] = {
    "foundation": foundations,
    "papers": papers,
    "templates": block_templates,
    "steps": block_steps,
    "exercise": exercise,
}
"""The chapters that each block has, in the order of a booklet."""


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

ALONE: Final[Mapping[str, tuple[Maker, ...]]] = {
    "needs": (needs,),
    "difficulty": (difficulty,),
    "card": (card,),
    "safety": (safety,),
}
"""The chapters that booklets have besides, and that can be had alone."""


def booklet(work: Work, options: SheetOptions) -> Book:
    """The whole booklet."""
    makers = BLOCK_BOOK[work.blocks[0].cut_out] if work.alone else QUILT_BOOK
    chapters = chapters_of(work, makers, options)
    return bound(work, (*chapters, glossary_chapter(words_of(chapters), work.say)), cover(work))


def part(work: Work, name: str, options: SheetOptions) -> Book:
    """One part of a booklet, as a book of its own without cover and contents; of a quilt that of every block
    and of its top. Empty where there is no such part."""
    if name == "glossary":
        return bound(work, booklet(work, options).chapters[-1:])
    if name in ALONE:
        chapters = chapters_of(work, ALONE[name], options) or [no_card()]
        return bound(work, chapters)
    made = OF_BLOCK.get(name)  # type: ignore[call-overload]
    chapters = [made(block, options) for block in work.blocks] if made else []
    if name == "exercise":
        chapters += drafting_paper(work, options)
    if name == "steps" and not work.alone:
        chapters += chapters_of(work, (rows, finish), options)
    return bound(work, chapters)
