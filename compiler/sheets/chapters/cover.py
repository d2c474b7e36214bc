"""A booklet's cover: the block or the quilt as it looks when it is sewn, and what there is to say of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...measure.length import POINTS_PER_INCH
from ...words.pages import booklet as words
from ...words.work.quilts import setting_words
from ..arrange.block_drawing import portray
from ..arrange.paths import Placement
from ..content import Book, Chapter, Cover, Picture
from ..pictures.quilt import draw_quilt
from ..quilts.tables import size_text
from ..work import Work
from .notes import cover_notes

QUILT: Final = 400.0
BLOCK: Final = 420.0
"""Points of the longer side of the cover's picture."""


def cover(work: Work) -> Cover:
    """The cover."""
    return Cover(_picture(work), tuple(_lines(work)))


def bound(
    work: Work,
    chapters: Sequence[Chapter],
    front: Cover | None = None,
    what: Sequence[str] = words.CLASS_BOOKLET,
) -> Book:
    """The chapters as a book. `what`: what it is, among its keywords."""
    quilt = work.quilt
    drafts = [block.draft for block in work.blocks]
    titles = tuple(dict.fromkeys(draft.title for draft in drafts))
    names = (*drafts[0].family, *drafts[0].also) if work.alone else titles
    return Book(
        quilt.title,
        work.under,
        front,
        tuple(chapters),
        words.about(quilt.version, size_text(work.say, quilt.width, quilt.height), quilt.colourway),
        quilt.maker,
        words.keywords(work.alone, what, names),
    )


def _picture(work: Work) -> Picture:
    """The whole block or top."""
    quilt, longest = work.quilt, BLOCK if work.alone else QUILT
    scale = longest / (max(float(quilt.width), float(quilt.height)) * POINTS_PER_INCH)
    placement = Placement(0.0, 0.0, 0.0, scale)
    far = placement.spot_at(quilt.width, quilt.height)
    marks = portray(work.blocks[0].draft, placement) if work.alone else draw_quilt(quilt, placement)
    return Picture(tuple(marks), far.x, far.y, words.finished_words(work.alone, quilt.title))


def _lines(work: Work) -> Iterator[str]:
    quilt, made = work.quilt, work.assembly
    if work.alone:
        (block,) = work.blocks
        draft = block.draft
        if draft.also:
            yield words.also_called(draft.also)
        seams = made.blocks[0].assembly.seams
        yield words.block_counts(len(draft.pieces), len(block.templates), block.cut_out, seams)
    else:
        yield words.quilt_counts(sum(quilt.block_counts), setting_words(quilt.setting))
    yield words.checked(made.proof)
    if quilt.maker:
        yield quilt.maker
    yield from cover_notes(quilt.notes)
