"""Things set one under another over as many pages as they take; tables whose heads are repeated. Points.

An item knows how tall it is and how to draw itself. Items that hold to the next are never the last on a page.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final, Literal

from ..arrange.paths import straight
from ..arrange.room import Box
from ..arrange.style import (
    HEADING,
    LABEL,
    PALE,
    RULING,
    SMALLEST,
    break_lines,
    grey_text,
    lettering,
    line_mark,
    measure,
    set_text,
    shorten,
)
from ..page import Mark, PathMark

ROW: Final = 12.5  # of a row's first line
NEXT_LINE: Final = 10.0  # of each further line in it
NOTE_GAP: Final = 3.0  # between a row's cells and the notes under it
HEAD_TALL: Final = 14.0
COLUMN_GAP: Final = 10.0
MOST_LINES: Final = 14  # of one cell: more are cut short, so that a row fits any page
SECTION_TALL: Final = 26.0
SECTION_AIR: Final = 6.0  # of it, above the heading

MIXED: Final = re.compile(r"(\d) (\d+/\d)")
KEPT: Final = (
    "\x01"  # stands for the blank of a mixed number while lines are broken; it has no width of its own
)
KEPT_WIDE: Final = 2.0  # points kept free for it


@dataclass(frozen=True, slots=True)
class Item:
    """`draw` gives the marks from a top left corner. `head` is set again above it where it begins a page.

    `air` of its height lies above it, and is left out where it begins a page. `larger` are the same thing
    larger, the largest first: one is set where the page has room for it and for all that holds to it.
    """

    tall: float
    draw: Callable[[float, float], list[Mark]]
    head: Item | None = None
    holds: bool = False
    air: float = 0.0
    larger: tuple[Item, ...] = ()


def together(items: Sequence[Item]) -> list[Item]:
    """The items, all on one page; a page must have room for them."""
    return [replace(item, holds=number + 1 < len(items)) for number, item in enumerate(items)]


def flow(items: Sequence[Item], box: Box) -> list[list[Mark]]:
    """The marks of each page. An item taller than a page has one to itself."""
    left, top, _, bottom = box
    pages: list[list[Mark]] = [[]]
    y = top
    at = 0
    while at < len(items):
        group = _held(items, at)
        tall = sum(item.tall for item in group)
        if y > top and y + tall > bottom + 0.01:
            pages.append([])
            y = top
        if y == top and group[0].head is not None:
            pages[-1].extend(group[0].head.draw(left, y))
            y += group[0].head.tall
        rise = group[0].air if y == top else 0.0
        spare = bottom - y + rise - tall
        for item in group:
            grown = next((each for each in item.larger if each.tall - item.tall <= spare), item)
            spare -= grown.tall - item.tall
            pages[-1].extend(grown.draw(left, y - rise))
            y += grown.tall
        y -= rise
        at += len(group)
    return [page for page in pages if page]


def _held(items: Sequence[Item], at: int) -> Sequence[Item]:
    """The items from there that stay together, the one they hold to included."""
    end = at
    while items[end].holds and end + 1 < len(items):
        end += 1
    return items[at : end + 1]


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table: its heading and width in points; width 0 takes what the others leave."""

    title: str
    wide: float
    anchor: Literal["start", "end"] = "start"
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Row:
    """A row's cells. `subject` names it to readers of the page; a total has a black rule above it and bold
    type. `notes` are lines under it, across the columns from the second on."""

    cells: tuple[str, ...]
    subject: str = ""
    total: bool = False
    notes: tuple[str, ...] = ()


def table_items(columns: Sequence[Column], rows: Sequence[Row], width: float) -> list[Item]:
    """A table's head and its rows."""
    places = _places(columns, width)
    head = Item(HEAD_TALL, lambda x, y: _head_marks(columns, places, x, y, width), holds=True)
    items = [head]
    for number, row in enumerate(rows):
        following = number + 1 < len(rows) and rows[number + 1].total
        items.append(_row_item(row, columns, places, width, head, following))
    return items


def _places(columns: Sequence[Column], width: float) -> list[tuple[float, float]]:
    """Left and width of each column."""
    fixed = sum(column.wide for column in columns) + COLUMN_GAP * (len(columns) - 1)
    rest = (width - fixed) / max(1, sum(column.wide == 0 for column in columns))
    places, x = [], 0.0
    for column in columns:
        wide = column.wide or rest
        places.append((x, wide))
        x += wide + COLUMN_GAP
    return places


def _head_marks(
    columns: Sequence[Column], places: Sequence[tuple[float, float]], x: float, y: float, width: float
) -> list[Mark]:
    marks: list[Mark] = []
    for column, (left, wide) in zip(columns, places, strict=True):
        at = x + left + (wide if column.anchor == "end" else 0)
        marks.append(grey_text(at, y + 8, column.title, SMALLEST, column.anchor))
    return [*marks, line_mark(straight((x, y + 11.5), (x + width, y + 11.5)), "rule", 0.5)]


def _row_item(
    row: Row,
    columns: Sequence[Column],
    places: Sequence[tuple[float, float]],
    width: float,
    head: Item,
    holds: bool,
) -> Item:
    cells = [
        cell_lines(cell, wide, column.bold or row.total)
        for cell, column, (_, wide) in zip(row.cells, columns, places, strict=True)
    ]
    notes = [line for note in row.notes for line in cell_lines(note, width - places[1][0], False)]
    count = max(len(lines) for lines in cells)
    apart = NOTE_GAP if notes else 0.0
    tall = ROW + (count - 1) * NEXT_LINE + NEXT_LINE * len(notes) + apart + 2.5

    def draw(x: float, y: float) -> list[Mark]:
        marks: list[Mark] = []
        for lines, column, (left, wide) in zip(cells, columns, places, strict=True):
            at = x + left + (wide if column.anchor == "end" else 0)
            for number, line in enumerate(lines):
                drop = y + ROW - 3 + number * NEXT_LINE
                bold = column.bold or row.total
                marks.append(
                    set_text(at, drop, line, LABEL, bold, column.anchor, role="table", subject=row.subject)
                )
        for number, line in enumerate(notes):
            drop = y + ROW - 3 + (count + number) * NEXT_LINE + apart
            marks.append(set_text(x + places[1][0], drop, line, LABEL, role="table", subject=row.subject))
        under = straight((x, y + tall), (x + width, y + tall))
        marks.append(PathMark(under, PALE, RULING, (), None, "rule"))
        if row.total:
            marks.append(line_mark(straight((x, y), (x + width, y)), "rule", 0.5))
        return marks

    return Item(tall, draw, head, holds)


def cell_lines(text: str, wide: float, bold: bool) -> list[str]:
    """The text in as many lines as the column needs, up to a bound."""
    lines = whole_lines(text, wide, bold) or [""]
    if len(lines) > MOST_LINES:
        lines = [*lines[: MOST_LINES - 1], shorten(lines[MOST_LINES - 1] + " …", wide, LABEL, bold)]
    return lines


def whole_lines(text: str, wide: float, bold: bool = False) -> list[str]:
    """The text in lines that part no mixed number: `1 3/16in` stays together."""
    kept = MIXED.sub(rf"\1{KEPT}\2", lettering(text))
    return [line.replace(KEPT, " ") for line in break_lines(kept, wide - KEPT_WIDE, LABEL, bold)]


def section(title: str, under: str, width: float) -> Item:
    """A heading over what follows, with small print after it."""

    def draw(x: float, y: float) -> list[Mark]:
        words = shorten(title, width * 0.6, 11.0, True)
        after = x + measure(words, 11.0, True) + 8
        marks: list[Mark] = [set_text(x, y + 17, words, 11.0, True, role="section", subject=title)]
        if under:
            marks.append(grey_text(after, y + 17, shorten(under, x + width - after, HEADING)))
        return marks

    return Item(SECTION_TALL, draw, holds=True, air=SECTION_AIR)


def paragraph(text: str, width: float, holds: bool = False) -> list[Item]:
    """The text in lines, each an item."""
    return [_line(line, holds) for line in whole_lines(text, width)]


def bullets(texts: Sequence[str], width: float) -> Iterator[Item]:
    """The texts as a list; the lines of one stay together."""
    for text in texts:
        lines = whole_lines(text, width - 10)
        for number, line in enumerate(lines):
            yield _bullet(line, number == 0, number + 1 < len(lines))


def _line(line: str, holds: bool) -> Item:
    return Item(LABEL * 1.3, lambda x, y: [set_text(x, y + LABEL, line)], holds=holds)


def _bullet(line: str, first: bool, holds: bool) -> Item:
    def draw(x: float, y: float) -> list[Mark]:
        marks: list[Mark] = [set_text(x + 10, y + 9, line)]
        return [set_text(x, y + 9, "·", LABEL, True), *marks] if first else marks

    return Item(11.5, draw, holds=holds)


def gap(tall: float) -> Item:
    """White between two things."""
    return Item(tall, lambda x, y: [])
