"""The quilt as a picture, with its setting and its borders in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...words.pages.picture import TITLE
from ..arrange.leaves import paper_for
from ..arrange.options import SheetOptions
from ..content import Chapter
from ..pictures.quilt_pages import picture_leaves
from ..work import Work


def picture(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """The picture alone, where the writer's notes stand elsewhere."""
    yield _chapter(work, options, ())


def picture_with_notes(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """The picture, with the writer's notes under it."""
    yield _chapter(work, options, work.quilt.notes)


def _chapter(work: Work, options: SheetOptions, notes: Sequence[str]) -> Chapter:
    leaves = picture_leaves(work, paper_for(options), notes)
    return Chapter(TITLE, (), tuple(leaves), true_size=False)
