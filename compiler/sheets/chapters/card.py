"""Storage cards: what lies in each block's envelope, with boxes to tick."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...cutting.model import Template
from ...drafting.model import Draft
from ...words.pages.card import (
    CHECKED,
    CUT,
    EITHER_SIDE,
    NO_CARDS,
    ONE_SIDE,
    SIZE,
    TITLE,
    TITLES,
    WAY_UP,
    WRITE_ON,
    caption,
    card_title,
    kept_words,
    one_of,
)
from ...words.pages.labels import cut_words
from ...words.say import Say
from ..arrange.block_sheets import finished_size
from ..arrange.options import SheetOptions
from ..arrange.table import box_words
from ..content import Chapter, Column, CutLine, List, Paragraph, Part, Row, Section, Table
from ..work import Work


def card(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """A card for the envelope of each block that has one; none where all go on foundations."""
    parts = tuple(
        part
        for block in work.blocks
        if block.cut_out
        for part in card_parts(
            block.dressed.draft, block.dressed.templates, options.say, block.cut_out == "paper-shape"
        )
    )
    if parts:
        yield Chapter(TITLE if work.alone else TITLES, parts)


def no_card() -> Chapter:
    """That there is none."""
    return Chapter(TITLES, (Paragraph(NO_CARDS),))


def card_parts(draft: Draft, templates: Sequence[Template], say: Say, papers: bool = False) -> Iterator[Part]:
    """The storage card: every template that belongs in the envelope, with a box to tick; or every kind of
    paper."""
    ways = () if papers else ((ONE_SIDE, EITHER_SIDE),)  # papers are all laid print up
    rows = tuple(
        Row(
            (each.label, cut_words(each), box_words(each.sew, say), *(way[each.reversible] for way in ways)),
            each.label,
        )
        for each in templates
    )
    yield Section(card_title(draft.title, draft.version, finished_size(draft, say)))
    yield Paragraph(kept_words(papers, len(draft.pieces) if papers else len(templates)))
    columns = (
        Column(one_of(papers), 60.0, bold=True),
        Column(CUT, 220.0),
        Column(SIZE, 100.0),
        *(Column(WAY_UP, 0.0) for _ in ways),
    )
    yield Table(columns, rows, caption(papers, draft.title), ticks=True)
    yield List(CHECKED, "box")
    yield List(WRITE_ON, "blank")
    yield CutLine()
