"""What makes each block hard: its causes, and what each asks of the sewer."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ...sewing.difficulty import Difficulty, causes
from ...sewing.difficulty import difficulty as difficulty_of
from ...words.pages.difficulty import ADVICE, NO_SCORE, NO_SCORES, NOT_SHARP, TITLE
from ...words.work.difficulty import cause_words
from ..arrange.options import SheetOptions
from ..content import Chapter, List, Paragraph, Part, Section
from ..work import CutOut, Work

SHARP: Final = 50.0
"""Degrees of the widest corner that is called a sharp point: half a square's, and what is near it, is one."""


def difficulty(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """The causes in each block, each by itself."""
    yield Chapter(TITLE, tuple(_parts(work)), joins=True)


def _parts(work: Work) -> Iterator[Part]:
    yield Paragraph(NO_SCORE if work.alone else NO_SCORES)
    for block, made in zip(work.blocks, work.assembly.blocks, strict=True):
        if not work.alone:
            yield Section(block.name)
        found = difficulty_of(block.draft, block.templates, made.assembly)
        yield List(tuple(cause_lines(found, block.cut_out)))


def cause_lines(found: Difficulty, cut_out: CutOut = "template") -> Iterator[str]:
    """The causes with what each asks, a line each."""
    for cause in causes(found):
        if cause.what == "shapes" and not cut_out:
            continue
        words, advice = cause_words(cause, cut_out), ADVICE.get(cause.what, {}).get(cut_out, "")
        if cause.what == "smallest-angle" and found.smallest_angle > SHARP:
            advice = NOT_SHARP
        yield f"{words[:1].upper()}{words[1:]}{f': {advice}' if advice else ''}."
