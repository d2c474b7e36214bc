"""What pages say, without saying how it is set: chapters of paragraphs, lists, tables, pictures, cards.

The same content becomes PDF pages, a page of HTML, a terminal's text and CSV (folder `setting`). Pictures are
marks in points from their own top left corner.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, Literal

from ..measure.record import record

if TYPE_CHECKING:
    from .arrange.leaves import Leaf
    from .page import Mark


@record
class Paragraph:
    """A paragraph; `strong` where it is the chapter's one most important sentence."""

    text: str
    strong: bool = False


@record
class Section:
    """A heading inside a chapter, with small print after it."""

    title: str
    under: str = ""


@record
class List:
    """Lines with a point, a number or a box to tick before each, or with a line after each to write on."""

    texts: tuple[str, ...]
    sign: Literal["point", "number", "box", "blank"] = "point"


@record
class Picture:
    """A drawing of a size in points, in words for those who do not see it, with a line under it. `larger`:
    the same larger, the largest first, for a page with room."""

    marks: tuple[Mark, ...]
    width: float
    height: float
    alternative: str
    caption: str = ""
    larger: tuple[Picture, ...] = ()


NOT_DRAWN: Final = Picture((), 0.0, 0.0, "")
"""Where no picture is drawn."""


@record
class Column:
    """A column of a table: its heading and width in points; width 0 takes what the others leave."""

    title: str
    wide: float
    anchor: Literal["start", "end"] = "start"
    bold: bool = False


@record
class Row:
    """A row's cells. `subject` names it to readers of the page; a total has a black rule above it and bold
    type. `notes` are lines under it, across the columns from the second on; `whole` lines to be copied at a
    terminal, which are never broken."""

    cells: tuple[str, ...]
    subject: str = ""
    total: bool = False
    notes: tuple[str, ...] = ()
    whole: tuple[str, ...] = ()


@record
class Table:
    """A table; `caption` names it for those who only hear it; `title`, else it, says on the next page what
    goes on. `ticks` puts a box to tick before each row; a `narrow` one does not take a page's width, so that
    the eye finds its way across."""

    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    caption: str
    ticks: bool = False
    title: str = ""
    narrow: bool = False


@record
class Card:
    """A small picture with a title above it and lines below: one step. `beside`: a smaller picture that the
    lines speak of, right of them. `told` says what the picture shows, where none is drawn."""

    title: str
    picture: Picture
    lines: tuple[str, ...]
    beside: Picture | None = None
    told: tuple[str, ...] = ()


@record
class Cards:
    """Cards in order, so many side by side on paper."""

    cards: tuple[Card, ...]
    across: int = 2


@record
class CutLine:
    """A line across the page, along which what is above it is cut off to be kept."""


Part = Paragraph | Section | List | Picture | Table | Cards | CutLine


@record
class Chapter:
    """One chapter. `sheets` are pages that must be printed true to size, after everything else in it.

    Sheets that are not `true_size` are to be looked at; `told` says in words what they show, where no page is
    printed. `title` heads it and is its bookmark; `note` is small print at the foot. `joins`: it may begin on
    the page where the chapter before it ends. `whole`: it is not parted between two pages where one holds it.
    """

    title: str
    parts: tuple[Part, ...]
    sheets: tuple[Leaf, ...] = ()
    note: str = ""
    joins: bool = False
    whole: bool = False
    true_size: bool = True
    told: tuple[Part, ...] = ()


@record
class Cover:
    """The first page: a picture, and lines under it."""

    picture: Picture
    lines: tuple[str, ...]


@record
class Book:
    """Chapters in order, under one title; a whole booklet has a cover."""

    title: str
    under: str  # '6in finished · version 2'
    cover: Cover | None
    chapters: tuple[Chapter, ...]
    subject: str
    author: str
    keywords: str
