"""Every word that chapters say, for the glossary and for those who search."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import assert_never

from ..content import Cards, Chapter, CutLine, List, Paragraph, Part, Picture, Section, Table
from ..page import TextMark


def words_of(chapters: Iterable[Chapter]) -> Iterator[str]:
    """The words of all parts, and those on the sheets."""
    for chapter in chapters:
        yield chapter.title
        for part in chapter.parts:
            yield from _of_part(part)
        for leaf in chapter.sheets:
            yield from (mark.text for mark in leaf.marks if isinstance(mark, TextMark))


def _of_part(part: Part) -> Iterator[str]:
    match part:
        case Paragraph(text, _):
            yield text
        case Section(title, under):
            yield from (title, under)
        case List(texts, _):
            yield from texts
        case Picture():
            yield part.caption
        case Table(columns, rows, caption):
            yield caption
            yield from (column.title for column in columns)
            for row in rows:
                yield from (*row.cells, *row.notes)
        case Cards(cards):
            for card in cards:
                yield from (card.title, *card.lines)
        case CutLine():
            return
        case _:
            assert_never(part)
