"""A book as a document: cover, contents with page numbers, and every chapter's pages."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import ceil
from typing import Final

from ...words.pages.booklet import BOOKLET, CONTENTS, CONTENTS_NOTE, COVER, READ_ONLY, continued
from ..arrange.furniture import Heading, Paper
from ..arrange.leaves import Leaf, bound, paper_for
from ..arrange.options import SheetOptions
from ..arrange.paths import straight
from ..arrange.style import HEADING, MARGIN, break_lines, grey_text, line_mark, measure, set_text
from ..content import Book, Chapter, CutLine, Paragraph, Section, Table
from ..drawing.lettering import printable
from ..packing.moving import moved_mark
from ..page import Document, Mark
from .flow import Item, flow, going_on, together_if_few
from .open_page import note_lines, open_body, plain_leaf
from .parts import items_of

HEAD_MOST: Final = 2  # chapters that a page's head names each; of more, the first and the last
CONTENTS_WIDE: Final = 380.0
CONTENTS_FEW: Final = 5  # names that stand in one column
CONTENTS_MANY: Final = 60  # names of two columns that a page holds
COLUMN_GAP: Final = 24.0
NUMBER_ROOM: Final = 40.0  # points kept free after a name in a column
HEADING_AIR: Final = 16.0  # points above a chapter's heading
COVER_TITLE: Final = 30.0  # points of the title's type on the cover
COVER_LINE: Final = 13.0
CONTENTS_ROW: Final = 15.0
LEADER_DASH: Final = (0.6, 3.0)  # dots from a chapter's name to its page


def set_book(book: Book, options: SheetOptions) -> Document:
    """The whole booklet, ready to be drawn: its cover, its contents, its chapters."""
    paper = paper_for(options)
    return _document(book, [*_cover_leaves(book, paper), *_contents_and_chapters(book, paper)], options)


def set_chapters(book: Book, options: SheetOptions, headed: bool = True) -> Document:
    """The chapters alone. Those that are not `headed` begin a page each, whose own head names them."""
    leaves, _ = _runs_pages(_runs(book.chapters), book, paper_for(options), headed)
    return _document(book, leaves, options)


def _document(book: Book, leaves: Sequence[Leaf], options: SheetOptions) -> Document:
    return Document(printable(book.title), book.subject, book.author, book.keywords, bound(leaves, options))


Start = tuple[str, int]
"""A chapter's title, and how many pages lie before it."""


def _contents_and_chapters(book: Book, paper: Paper) -> list[Leaf]:
    """The table of contents, with the first chapters below it, and the pages of all others. The run that
    holds the contents is set twice: only then are the numbers known, and they change no line's height."""
    width = paper.width - 2 * MARGIN
    first, *others = _runs(book.chapters)
    unknown = [(chapter.title, 0) for chapter in book.chapters]
    opening, begun = _run_pages(first, book, paper, _contents_items(unknown, width))
    after, later = _runs_pages(others, book, paper)
    starts = [*begun, *((title, len(opening) + at) for title, at in later)]
    opening, _ = _run_pages(first, book, paper, _contents_items(starts, width))
    return [*opening, *after]


def _runs_pages(
    runs: Sequence[Sequence[Chapter]], book: Book, paper: Paper, headed: bool = True
) -> tuple[list[Leaf], list[Start]]:
    """The pages of the runs one after the other, and where each of their chapters begins."""
    leaves: list[Leaf] = []
    starts: list[Start] = []
    for run in runs:
        pages, begun = _run_pages(run, book, paper, headed=headed)
        starts += [(title, len(leaves) + at) for title, at in begun]
        leaves += pages
    return leaves, starts


def _runs(chapters: Sequence[Chapter]) -> list[list[Chapter]]:
    """The chapters in runs that share pages: one joins the one before it, unless that ends with sheets."""
    runs: list[list[Chapter]] = []
    for chapter in chapters:
        if chapter.joins and runs and not runs[-1][-1].sheets:
            runs[-1].append(chapter)
        else:
            runs.append([chapter])
    return runs


def _run_pages(
    run: Sequence[Chapter], book: Book, paper: Paper, contents: Sequence[Item] = (), headed: bool = True
) -> tuple[list[Leaf], list[Start]]:
    """What is read of a run, page by page, then its sheets; and where its chapters begin."""
    own = (READ_ONLY, CONTENTS_NOTE if contents else "")
    note = " ".join(dict.fromkeys(filter(None, (*own, *(chapter.note for chapter in run)))))
    box = open_body(paper, len(note_lines(paper, note)))
    items = list(contents)
    for at, chapter in enumerate(run):
        items += _read_items(chapter, box[2] - box[0], box[3] - box[1], headed or at > 0)
    pages = flow(items, box) if items else []
    sheets = run[-1].sheets
    group = run[0].title if len(run) == 1 and len(pages) + len(sheets) > 1 else ""
    if not headed:
        group = run[0].title if len(_runs(book.chapters)) > 1 else ""
    leaves, starts, current = [], [], "" if headed else run[0].title
    for at, marks in enumerate(pages):
        begun = [mark.subject for mark in marks if mark.role == "chapter"]
        starts += [(title, at) for title in begun if title != CONTENTS]
        over = current if not begun or marks[0].role != "chapter" else ""
        goes_on = bool(at or headed)
        current = begun[-1] if begun else current
        names = page_names(over, begun) if goes_on else page_names("", [over, *begun])
        what = f"{names[0]} – {names[-1]}" if len(names) > HEAD_MOST else ", ".join(names)
        leaf = plain_leaf(book.title, book.under, paper, what, "", marks, note, group)
        leaves.append(replace(leaf, bookmark=", ".join(names)))
    if not run[-1].parts:
        starts.append((run[-1].title, len(pages)))
    alone = len(pages) + len(sheets) == 1  # its bookmark is the chapter's own
    names = [run[-1].title if alone else each.bookmark for each in sheets]
    printed = [replace(each, bookmark=name, part=group) for each, name in zip(sheets, names, strict=True)]
    return [*leaves, *printed], starts


def _read_items(chapter: Chapter, width: float, room: float, headed: bool) -> list[Item]:
    """What is read of a chapter, its heading first; nothing where it has sheets alone."""
    if not chapter.parts:
        return []
    items, card, under = [_heading(chapter.title)] if headed else [], list[Item](), ""
    for part, after in zip(chapter.parts, (*chapter.parts[1:], None), strict=True):
        told = isinstance(part, Paragraph) and isinstance(after, Table)  # how its table is read
        own = [replace(item, holds=item.holds or told) for item in items_of(part, width)]
        under = part.title if isinstance(part, Section) else "" if isinstance(part, CutLine) else under
        card += going_on(own, under) if under and not isinstance(part, Section) else own
        if isinstance(part, CutLine):  # what is cut off as one lies on one page
            items += together_if_few(card, room)
            card = []
    items += card
    return together_if_few(items, room) if chapter.whole else items


def page_names(over: str, begun: Sequence[str]) -> list[str]:
    """What a page holds: what goes on from the page before, and the chapters it begins. A block is named
    once, and keeps its capitals: `Lock Gate: steps, continued` and `drafting exercise`."""
    names, said = [], ""
    for title in filter(None, (over, *begun)):
        block, colon, own = title.rpartition(": ")
        name = own if colon and block == said else title if colon else title.lower()
        names.append(continued(name) if title == over else name)
        said = block
    return names


def _heading(title: str) -> Item:
    """A chapter's heading, with air above it where it does not begin a page."""

    def draw(x: float, y: float) -> list[Mark]:
        return [set_text(x, y + HEADING_AIR + 13, title, 14.0, True, role="chapter", subject=title)]

    return Item(HEADING_AIR + 22.0, draw, holds=True, air=HEADING_AIR)


def _cover_leaves(book: Book, paper: Paper) -> Iterator[Leaf]:
    """The first page: the title large, the picture, and what the booklet holds."""
    cover = book.cover
    if cover is None:
        return
    picture = cover.picture
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
    words = [line for text in cover.lines for line in break_lines(text, room * 0.8, HEADING + 1)]
    below = len(words) * COVER_LINE + 16
    drop = y + max(0.0, (bottom - below - y - picture.height) / 2)
    marks += [moved_mark(mark, middle - picture.width / 2, drop) for mark in picture.marks]
    base = drop + picture.height + 24
    marks += [
        set_text(middle, base + COVER_LINE * row, line, HEADING + 1, False, "middle")
        for row, line in enumerate(words)
    ]
    yield Leaf(Heading("", "", BOOKLET, ""), tuple(marks), COVER)


def _contents_items(starts: Sequence[Start], width: float) -> list[Item]:
    """The table of contents, which begins on the second page; in two columns where all names fit them."""
    wide = min(width, CONTENTS_WIDE)
    half = (width - COLUMN_GAP) / 2
    room = half - NUMBER_ROOM
    if CONTENTS_FEW < len(starts) <= CONTENTS_MANY and all(measure(each, 11.0) < room for each, _ in starts):
        return [_heading(CONTENTS), _contents_columns(starts, half)]
    return [_heading(CONTENTS), *(_contents_row(title, 2 + before, wide) for title, before in starts)]


def _contents_columns(starts: Sequence[Start], wide: float) -> Item:
    """The names in two columns, down the first and then the second."""
    rows = [_contents_row(title, 2 + before, wide) for title, before in starts]
    deep = ceil(len(rows) / 2)

    def draw(x: float, y: float) -> list[Mark]:
        places = [(x + (wide + COLUMN_GAP) * (at // deep), y + CONTENTS_ROW * (at % deep))
                  for at in range(len(rows))]  # fmt: skip
        return [mark for row, place in zip(rows, places, strict=True) for mark in row.draw(*place)]

    return Item(CONTENTS_ROW * deep, draw)


def _contents_row(title: str, page: int, width: float) -> Item:
    def draw(x: float, y: float) -> list[Mark]:
        start, end = x + measure(title, 11.0) + 6, x + width - measure(str(page), 11.0) - 6
        return [
            set_text(x, y + 12, title, 11.0, role="contents", subject=title),
            line_mark(straight((start, y + 11.5), (end, y + 11.5)), "leader", 0.6, LEADER_DASH),
            set_text(x + width, y + 12, str(page), 11.0, False, "end", role="contents", subject=title),
        ]

    return Item(CONTENTS_ROW, draw)
