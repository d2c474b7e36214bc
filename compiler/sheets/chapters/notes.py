"""What the writers say of a quilt and of its blocks: their notes, whole."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...drafting.model import Draft
from ..arrange.notes import breakable
from ..content import Chapter, Paragraph, Part, Section

COVER_LETTERS: Final = 240
"""Letters of all notes that a cover has room for, in some three lines under its picture."""


def cover_notes(own: Sequence[str]) -> tuple[str, ...]:
    """The notes as the cover has them; nothing where they are too long for it."""
    return tuple(map(breakable, own)) if sum(map(len, own)) <= COVER_LETTERS else ()


def notes_chapters(own: Sequence[str], blocks: Sequence[Draft] = ()) -> Iterator[Chapter]:
    """The chapter of the notes that the cover has no room for, and of those of blocks; none without notes."""
    parts: list[Part] = [] if cover_notes(own) else [Paragraph(breakable(note)) for note in own]
    for draft in {draft.title: draft for draft in blocks if draft.notes}.values():
        parts += [Section(draft.title), *(Paragraph(breakable(note)) for note in draft.notes)]
    if parts:
        yield Chapter("Notes", tuple(parts), joins=True)
