"""Tables as items that flow over pages, their heads repeated where they go on. Points."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ...measure.record import record
from ..arrange.paths import straight
from ..arrange.style import LABEL, PALE, RULING, SMALLEST, grey_text, line_mark, set_text, shorten
from ..content import Column, Row
from ..page import Mark, PathMark
from .flow import Item, continued, together_if_few, whole_lines

ROW: Final = 12.5  # of a row's first line
NEXT_LINE: Final = 10.0  # of each further line in it
NOTE_GAP: Final = 3.0  # between a row's cells and the notes under it
MOST_LINES: Final = 14  # of one cell: more are cut short, so that a row fits any page


@record
class Pitch:
    """How far apart things stand in a table: how tall its head is, how far down the titles and the rule under
    them are; how far down a row its first line is, and what is white below its last; and between columns."""

    head: float
    title: float
    rule: float
    first: float
    below: float
    gap: float


OPEN: Final = Pitch(14.0, 8.0, 11.5, 9.5, 2.5, 10.0)
CLOSE: Final = Pitch(12.5, 9.0, 12.5, 9.0, 0.0, 0.0)
"""Of a table that stands under a drawing, which wants the room."""


def table_items(
    columns: Sequence[Column], rows: Sequence[Row], width: float, title: str = "", pitch: Pitch = OPEN
) -> list[Item]:
    """A table's head and its rows. Where it goes on, its head says of what: `title`. One of a few rows is
    not parted."""
    places = _places(columns, width, pitch.gap)
    head = Item(pitch.head, lambda x, y: _head_marks(columns, places, x, y, width, pitch), holds=True)
    again = _going_on(head, title) if title else head
    items = [head]
    for number, row in enumerate(rows):
        following = number + 1 < len(rows) and rows[number + 1].total
        items.append(_row_item(row, columns, places, width, again, following, pitch))
    return together_if_few(items)


def _going_on(head: Item, title: str) -> Item:
    """A table's head with its title over it, as it begins a page."""
    over = continued(title)
    tall = head.tall + over.tall
    return Item(tall, lambda x, y: [*over.draw(x, y), *head.draw(x, y + over.tall)], holds=True)


def _places(columns: Sequence[Column], width: float, gap: float) -> list[tuple[float, float]]:
    """Left and width of each column."""
    fixed = sum(column.wide for column in columns) + gap * (len(columns) - 1)
    rest = (width - fixed) / max(1, sum(column.wide == 0 for column in columns))
    places, x = [], 0.0
    for column in columns:
        wide = column.wide or rest
        places.append((x, wide))
        x += wide + gap
    return places


def _head_marks(
    columns: Sequence[Column],
    places: Sequence[tuple[float, float]],
    x: float,
    y: float,
    width: float,
    pitch: Pitch,
) -> list[Mark]:
    marks: list[Mark] = []
    for column, (left, wide) in zip(columns, places, strict=True):
        at = x + left + (wide if column.anchor == "end" else 0)
        marks.append(grey_text(at, y + pitch.title, column.title, SMALLEST, column.anchor))
    return [*marks, line_mark(straight((x, y + pitch.rule), (x + width, y + pitch.rule)), "rule", 0.5)]


def _row_item(
    row: Row,
    columns: Sequence[Column],
    places: Sequence[tuple[float, float]],
    width: float,
    head: Item,
    holds: bool,
    pitch: Pitch,
) -> Item:
    cells = [
        cell_lines(cell, wide, column.bold or row.total)
        for cell, column, (_, wide) in zip(row.cells, columns, places, strict=True)
    ]
    notes = [line for note in row.notes for line in cell_lines(note, width - places[1][0], False)]
    count = max(len(lines) for lines in cells)
    apart = NOTE_GAP if notes else 0.0
    tall = ROW + (count - 1) * NEXT_LINE + NEXT_LINE * len(notes) + apart + pitch.below

    def draw(x: float, y: float) -> list[Mark]:
        marks: list[Mark] = []
        for lines, column, (left, wide) in zip(cells, columns, places, strict=True):
            at = x + left + (wide if column.anchor == "end" else 0)
            for number, line in enumerate(lines):
                drop = y + pitch.first + number * NEXT_LINE
                bold = column.bold or row.total
                marks.append(
                    set_text(at, drop, line, LABEL, bold, column.anchor, role="table", subject=row.subject)
                )
        for number, line in enumerate(notes):
            drop = y + pitch.first + (count + number) * NEXT_LINE + apart
            marks.append(set_text(x + places[1][0], drop, line, LABEL, role="table", subject=row.subject))
        under = straight((x, y + tall), (x + width, y + tall))
        marks.append(PathMark(under, PALE, RULING, (), None, "rule"))
        if row.total:
            marks.append(line_mark(straight((x, y), (x + width, y)), "rule", 0.5))
        return marks

    return Item(tall, draw, head, holds)


def cell_lines(text: str, wide: float, bold: bool) -> list[str]:
    """The text in as many lines as the column needs, up to a bound; those that it has are kept."""
    lines = [line for each in text.split("\n") for line in whole_lines(each, wide, bold) or [""]]
    if len(lines) > MOST_LINES:
        lines = [*lines[: MOST_LINES - 1], shorten(lines[MOST_LINES - 1] + " …", wide, LABEL, bold)]
    return lines
