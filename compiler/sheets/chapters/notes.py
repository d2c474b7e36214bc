"""What the writers say of a quilt and of its blocks: their notes, whole."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...words.pages.booklet import NOTES
from ..arrange.notes import breakable
from ..arrange.options import SheetOptions
from ..content import Chapter, Paragraph, Part, Section
from ..work import Work

COVER_LETTERS: Final = 240
"""Letters of all notes that a cover has room for, in some three lines under its picture."""


def cover_notes(own: Sequence[str]) -> tuple[str, ...]:
    """The notes as the cover has them; nothing where they are too long for it."""
    return tuple(map(breakable, own)) if sum(map(len, own)) <= COVER_LETTERS else ()


def notes(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """The notes that the cover has no room for, and in a quilt those of its blocks; none without notes."""
    own = work.quilt.notes
    parts: list[Part] = [] if cover_notes(own) else [Paragraph(breakable(note)) for note in own]
    drafts = [] if work.alone else [block.draft for block in work.blocks]
    for draft in {draft.title: draft for draft in drafts if draft.notes}.values():
        parts += [Section(draft.title), *(Paragraph(breakable(note)) for note in draft.notes)]
    if parts:
        yield Chapter(NOTES, tuple(parts), joins=True)
