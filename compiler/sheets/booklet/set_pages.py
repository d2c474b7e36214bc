"""A book as a document: cover, contents with page numbers, and every chapter's pages."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ..arrange.furniture import Heading, Paper
from ..arrange.leaves import Leaf, bound, paper_for
from ..arrange.options import SheetOptions
from ..arrange.paths import straight
from ..arrange.quilt_flow import Item, flow
from ..arrange.quilt_frame import note_lines, open_body, plain_leaf
from ..arrange.style import HEADING, break_lines, grey_text, line_mark, measure, set_text
from ..lettering import printable
from ..moving import moved_mark
from ..page import Document, Mark
from .content import Book, Chapter
from .set_parts import items_of

CONTENTS: Final = "Contents"
COVER_TITLE: Final = 30.0  # points of the title's type on the cover
COVER_LINE: Final = 13.0
CONTENTS_ROW: Final = 17.0
LEADER_DASH: Final = (0.6, 3.0)  # dots from a chapter's name to its page


def set_book(book: Book, options: SheetOptions) -> Document:
    """The whole booklet, ready to be drawn."""
    paper = paper_for(options)
    chapters = [
        (chapter.title, chapter_leaves(chapter, book.title, book.under, paper)) for chapter in book.chapters
    ]
    leaves = [_cover_leaf(book, paper), *_contents_leaves(book, chapters, paper)]
    for _, pages in chapters:
        leaves += pages
    return Document(printable(book.title), book.subject, book.author, book.keywords, bound(leaves, options))


def chapter_document(book: Book, chapter: Chapter, options: SheetOptions) -> Document:
    """One chapter as a document of its own."""
    leaves = chapter_leaves(chapter, book.title, book.under, paper_for(options), "")
    return Document(printable(book.title), book.subject, book.author, book.keywords, bound(leaves, options))


def chapter_leaves(
    chapter: Chapter, title: str, under: str, paper: Paper, part: str | None = None
) -> list[Leaf]:
    """A chapter's pages: what is read, then what is printed true to size. `part` groups them in bookmarks;
    None: under the chapter's own title, where it has more than one page."""
    box = open_body(paper, len(note_lines(paper, chapter.note)))
    items: list[Item] = [item for each in chapter.parts for item in items_of(each, box[2] - box[0])]
    pages = flow(items, box) if items else []
    group = part if part is not None else (chapter.title if len(pages) + len(chapter.sheets) > 1 else "")
    leaves = [
        plain_leaf(title, under, paper, chapter.title.lower(), "", marks, chapter.note, group)
        for marks in pages
    ]
    return [*leaves, *(Leaf(each.heading, each.marks, each.bookmark, group) for each in chapter.sheets)]


def _cover_leaf(book: Book, paper: Paper) -> Leaf:
    """The first page: the title large, the picture, and what the booklet holds."""
    left, top, right, bottom = open_body(paper)
    middle, room = (left + right) / 2, right - left
    lines = break_lines(book.title, room, COVER_TITLE, True)
    marks: list[Mark] = []
    y = top + 34
    for line in lines:
        marks.append(set_text(middle, y, line, COVER_TITLE, True, "middle", role="cover"))
        y += COVER_TITLE * 1.15
    marks.append(grey_text(middle, y - 8, book.under, 12.0, "middle"))
    y += 14
    words = [line for text in book.lines for line in break_lines(text, room * 0.8, HEADING + 1)]
    below = len(words) * COVER_LINE + 16
    drop = y + max(0.0, (bottom - below - y - book.cover.height) / 2)
    marks += [moved_mark(mark, middle - book.cover.width / 2, drop) for mark in book.cover.marks]
    base = drop + book.cover.height + 24
    marks += [
        set_text(middle, base + COVER_LINE * row, line, HEADING + 1, False, "middle")
        for row, line in enumerate(words)
    ]
    return Leaf(Heading("", "", "booklet", ""), tuple(marks), "Cover")


def _contents_leaves(book: Book, chapters: Sequence[tuple[str, Sequence[Leaf]]], paper: Paper) -> list[Leaf]:
    """The table of contents; its own length shifts the numbers, so it is set until it agrees with itself."""
    count = 1
    while True:
        leaves = _numbered_contents(book, chapters, paper, first=2 + count)
        if len(leaves) == count:
            return leaves
        count = len(leaves)


def _numbered_contents(
    book: Book, chapters: Sequence[tuple[str, Sequence[Leaf]]], paper: Paper, first: int
) -> list[Leaf]:
    box = open_body(paper)
    width = min(box[2] - box[0], 380.0)
    items, page = [], first
    for title, pages in chapters:
        items.append(_contents_row(title, page, width))
        page += len(pages)
    note = "Pages that must be true to size have a check square: measure it before you cut."
    return [
        plain_leaf(book.title, book.under, paper, CONTENTS.lower(), "", marks, note, "")
        for marks in flow(items, box)
    ]


def _contents_row(title: str, page: int, width: float) -> Item:
    def draw(x: float, y: float) -> list[Mark]:
        start, end = x + measure(title, 11.0) + 6, x + width - measure(str(page), 11.0) - 6
        return [
            set_text(x, y + 12, title, 11.0, role="contents", subject=title),
            line_mark(straight((start, y + 11.5), (end, y + 11.5)), "leader", 0.6, LEADER_DASH),
            set_text(x + width, y + 12, str(page), 11.0, False, "end", role="contents", subject=title),
        ]

    return Item(CONTENTS_ROW, draw)
