"""A book as one HTML page, readable on a phone and by ear: the same content as the PDF, drawings as inline
SVG."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, replace
from typing import Any, Final

from ...measure.record import record
from ...words.pages import html as html_words
from ..arrange.leaves import Leaf, paper_for
from ..arrange.options import SheetOptions
from ..arrange.style import lettering
from ..content import Book, Card, Cards, Chapter, CutLine, List, Paragraph, Part, Picture, Section, Table
from ..drawing.draw_svg import Box, inline_svg
from ..page import Mark, TextMark
from .html_template import PAGE, STYLE

EDGE: Final = 4.0  # points about a picture: lines on its border are drawn whole
SHEET_WORDS: Final = 12  # words of a sheet's own lettering that tell what it shows


def html_bytes(book: Book, options: SheetOptions) -> bytes:
    """The book as a page of HTML, UTF-8. The same book gives the same bytes."""
    from jinja2 import Environment, StrictUndefined

    world = Environment(autoescape=True, undefined=StrictUndefined, keep_trailing_newline=True)
    html = _Html(options)
    assert book.cover is not None, "a page is made of a whole booklet"
    shown = replace(book, under=lettering(book.under))
    text = world.from_string(PAGE).render(
        book=shown, words=html_words, style=html.safe(STYLE), cover=html.picture(book.cover.picture),
        lines=tuple(map(lettering, book.cover.lines)),
        chapters=[html.chapter(number, chapter) for number, chapter in enumerate(book.chapters, 1)],
    )  # fmt: skip
    return text.encode()


@record
class Shown:
    """A drawing with its line below."""

    svg: Any  # markup that is safe
    caption: str


class _Html:
    """Makes a book's parts ready for the template; counts its drawings, whose names must differ."""

    def __init__(self, options: SheetOptions) -> None:
        from markupsafe import Markup

        self.safe = Markup
        self.paper = paper_for(options)
        self.drawings = 0

    def chapter(self, number: int, chapter: Chapter) -> dict[str, Any]:
        """A chapter's title, its place in the page, its parts and sheets."""
        return {
            "id": f"chapter-{number}", "title": chapter.title, "note": chapter.note,
            "print": chapter.true_size,
            "parts": [self._part(part) for part in (*chapter.parts, *chapter.told)],
            "sheets": [self._sheet(leaf) for leaf in chapter.sheets],
        }  # fmt: skip

    def picture(self, picture: Picture) -> Shown:
        """A picture with room for the lines on its border."""
        box = (-EDGE, -EDGE, picture.width + EDGE, picture.height + EDGE)
        return self._drawn(picture.marks, box, picture.alternative, picture.caption)

    def _drawn(self, marks: Sequence[Mark], box: Box, words: str, caption: str) -> Shown:
        self.drawings += 1
        svg = inline_svg(marks, box, lettering(words), f"drawing-{self.drawings}")
        return Shown(self.safe(svg), lettering(caption))

    def _part(self, part: Part) -> dict[str, Any]:
        """A part by its kind; its words with fractions as they are set."""
        kind = {"kind": type(part).__name__}
        match part:
            case Picture():
                shown = self.picture(part)
                return kind | {"svg": shown.svg, "caption": shown.caption}
            case Cards(cards, across):
                return kind | {"cards": [self._card(card) for card in cards], "small": across > 2}
            case Table(columns, rows, caption, ticks=ticks):
                told = [{"cells": [lettering(cell) for cell in row.cells], "total": row.total,
                         "notes": [lettering(note) for note in row.notes]} for row in rows]  # fmt: skip
                return kind | {"columns": columns, "rows": told, "caption": caption, "ticks": ticks}
            case List(texts, sign):
                return kind | {"texts": [lettering(text) for text in texts], "sign": sign}
            case CutLine():
                return kind
            case Paragraph() | Section():
                return kind | {each.name: _lettered(getattr(part, each.name)) for each in fields(part)}

    def _card(self, card: Card) -> dict[str, Any]:
        shown = self.picture(card.picture)
        return {
            "title": card.title,
            "svg": shown.svg,
            "caption": "",
            "beside": self.picture(card.beside) if card.beside else None,
            "lines": [lettering(line) for line in card.lines],
        }

    def _sheet(self, leaf: Leaf) -> Shown:
        """A page to print, made small: its body and foot."""
        said = [
            mark.text for mark in leaf.marks if isinstance(mark, TextMark) and mark.role in ("label", "piece")
        ]
        shown = tuple(dict.fromkeys(said[:SHEET_WORDS]))
        words = html_words.sheet_words(leaf.bookmark, shown, more=len(said) > SHEET_WORDS)
        box = (0.0, 60.0, self.paper.width, self.paper.height)
        return self._drawn(leaf.marks, box, words, leaf.bookmark[:1].upper() + leaf.bookmark[1:])


def _lettered(value: str | bool) -> str | bool:
    return lettering(value) if isinstance(value, str) else value
