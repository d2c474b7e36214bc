"""The parts of a chapter as items that flow over PDF pages. Points."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final, assert_never

from ..arrange.paths import box_path, straight
from ..arrange.style import (
    BLACK,
    HEADING,
    LABEL,
    SMALLEST,
    break_lines,
    grey_text,
    lettering,
    line_mark,
    measure,
    set_text,
)
from ..content import Card, Cards, Column, CutLine, List, Paragraph, Part, Picture, Row, Section, Table
from ..packing.moving import moved_mark
from ..page import Mark, PathMark
from .flow import Item, bullets, gap, paragraph, section, together, together_if_few
from .table import table_items

BODY: Final = HEADING  # points of a paragraph's type
LINE: Final = 11.5  # from line to line of a list
INDENT: Final = 16.0
BOX: Final = 7.5  # the side of a box to tick
CARD_GAP: Final = 18.0  # between two cards side by side
FRAME_GAP: Final = 9.0  # where more than two are
BESIDE_GAP: Final = 10.0  # between a card's lines and the picture beside them
CARD_LINE: Final = 10.5
CARD_HEAD: Final = 16.0
CARD_AIR: Final = 2.0  # of a card, white over its title; and below its lines
CARD_BELOW: Final = 14.0
TICK_COLUMN: Final = Column("", 12.0)
NARROW: Final = 260.0  # points of a table that does not take the page's width
WRITE_ON: Final = 180.0  # points of a line to write on
CUT_ROOM: Final = 20.0
CUT_DASH: Final = (6.0, 4.0)


def items_of(part: Part, width: float) -> Iterator[Item]:
    """The part as items of that width."""
    match part:
        case Paragraph(text, strong):
            yield from _strong(text, width) if strong else together(paragraph(text, width))
            yield replace(gap(5), holds=strong)
        case Section(title, under):
            yield section(title, under, width)
        case List(texts, sign):
            lines = bullets(texts, width) if sign == "point" else _numbered(texts, sign, width)
            yield from together_if_few(list(lines))
            yield gap(4)
        case Picture():
            yield _picture(part, width)
        case Table():
            yield from _table(part, width)
            yield gap(6)
        case Cards(cards, across):
            yield from _card_rows(cards, across, width)
        case CutLine():
            yield _cut_line(width)
        case _:
            assert_never(part)


def _strong(text: str, width: float) -> Iterator[Item]:
    """A strong sentence, which holds to what it is said of."""
    for line in break_lines(text, width, BODY + 1, True):
        yield replace(_line_item(line, BODY + 1), holds=True)


def _line_item(line: str, size: float) -> Item:
    return Item(size * 1.35, lambda x, y: [set_text(x, y + size, line, size, True)])


def _numbered(texts: Sequence[str], sign: str, width: float) -> Iterator[Item]:
    """A list with numbers, boxes or lines to write on; the lines of one stay together."""
    for number, text in enumerate(texts, 1):
        lines = break_lines(lettering(text), width - INDENT, LABEL)
        for row, line in enumerate(lines):
            first = "" if row else (f"{number}." if sign == "number" else sign)
            yield _list_line(first, line, row + 1 < len(lines))


def _list_line(first: str, line: str, holds: bool) -> Item:
    def draw(x: float, y: float) -> list[Mark]:
        marks: list[Mark] = [set_text(x + INDENT, y + 9, line)]
        if first == "box":
            marks.append(tick_box(x + 1, y + 9 - BOX + 0.5))
        elif first == "blank":
            start = x + INDENT + measure(line, LABEL) + 6
            marks.append(line_mark(straight((start, y + 10), (start + WRITE_ON, y + 10)), "write-on", 0.4))
        elif first:
            marks.append(set_text(x + INDENT - 5, y + 9, first, LABEL, True, "end"))
        return marks

    return Item(LINE, draw, holds=holds)


def tick_box(x: float, y: float) -> PathMark:
    """A box to tick, from its top left corner."""
    return PathMark(box_path(x, y, x + BOX, y + BOX), BLACK, 0.6, (), None, "tick-box")


def _cut_line(width: float) -> Item:
    """A dashed line across the column."""
    half = CUT_ROOM / 2
    return Item(CUT_ROOM, lambda x, y: [
        line_mark(straight((x, y + half), (x + width, y + half)), "cut-off", 0.8, CUT_DASH)
    ])  # fmt: skip


def _picture(picture: Picture, width: float) -> Item:
    """A picture in the middle of the column, with its line under it."""
    below = 13.0 if picture.caption else 4.0

    def draw(x: float, y: float) -> list[Mark]:
        left = x + (width - picture.width) / 2
        marks = [moved_mark(mark, left, y) for mark in picture.marks]
        if picture.caption:
            marks.append(
                grey_text(x + width / 2, y + picture.height + 9, picture.caption, SMALLEST, "middle")
            )
        return marks

    larger = tuple(_picture(each, width) for each in picture.larger)
    return Item(picture.height + below, draw, larger=larger)


def _table(table: Table, width: float) -> Iterator[Item]:
    width = min(width, NARROW) if table.narrow else width
    if not table.ticks:
        yield from table_items(table.columns, table.rows, width, table.title or table.caption)
        return
    columns = (TICK_COLUMN, *table.columns)
    rows = [Row(("", *row.cells), row.subject, row.total, row.notes) for row in table.rows]
    head, *rest = table_items(columns, rows, width, table.title or table.caption)
    yield head
    for row, item in zip(rows, rest, strict=True):
        yield item if row.total else _ticked(item)


def _ticked(item: Item) -> Item:
    def draw(x: float, y: float) -> list[Mark]:
        return [tick_box(x + 1, y + 9.5 - BOX), *item.draw(x, y)]

    return replace(item, draw=draw)


def _card_rows(cards: Sequence[Card], across: int, width: float) -> Iterator[Item]:
    """Cards in rows, each row as tall as its tallest card."""
    apart = CARD_GAP if across <= 2 else FRAME_GAP
    wide = (width - apart * (across - 1)) / across
    for at in range(0, len(cards), across):
        row = [_set_card(card, wide) for card in cards[at : at + across]]
        yield _card_row(row, wide + apart)


def _card_row(row: Sequence[Item], pitch: float) -> Item:
    def draw(x: float, y: float) -> list[Mark]:
        return [mark for at, item in enumerate(row) for mark in item.draw(x + at * pitch, y)]

    return Item(max(item.tall for item in row), draw, air=CARD_AIR, below=CARD_BELOW)


def _set_card(card: Card, wide: float) -> Item:
    """One card: its title, its picture, its lines, right of them what they speak of."""
    small = card.beside
    room = wide - (small.width + BESIDE_GAP if small else 0.0)
    lines = [line for text in card.lines for line in break_lines(lettering(text), room, LABEL)]
    top = CARD_HEAD + card.picture.height + 7

    def draw(x: float, y: float) -> list[Mark]:
        marks: list[Mark] = [set_text(x, y + 10, card.title, HEADING, True, role="card", subject=card.title)]
        marks += [moved_mark(mark, x, y + CARD_HEAD) for mark in card.picture.marks]
        marks += [set_text(x, y + top + CARD_LINE * (row + 0.8), line) for row, line in enumerate(lines)]
        if small:
            marks += [moved_mark(mark, x + wide - small.width, y + top) for mark in small.marks]
        return marks

    below = max(CARD_LINE * len(lines), small.height if small else 0.0)
    return Item(top + below + CARD_BELOW, draw)
