"""The table of templates: letter, how many to cut of what, and the size of its box."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from ...cutting.model import Template
from ...drafting.curves import box_of
from ...geometry.edge import Edge
from ...words.pages.labels import TABLE_HEADS, grain_words, to_cut
from ...words.say import INCHES
from ..page import Mark, PathMark
from .paths import straight
from .room import Box
from .style import LABEL, PALE, RULING, SMALLEST, break_lines, grey_text, line_mark, measure, set_text

ROW: Final = 12.5  # points of a row's first line, its heading's too
NEXT_LINE: Final = 10.0  # of each further line in it
COLUMN_GAP: Final = 18.0
LETTER_WIDE: Final = 38.0
SIZE_WIDE: Final = 96.0
NARROW: Final = 330.0  # the width of a table of one column: the eye finds its way across
FEW: Final = 4  # so many templates make one column
MOST_LINES: Final = 30  # of one row; a longer one goes on in the next
BELOW: Final = 4.0


@dataclass(frozen=True, slots=True)
class Row:
    """One template, its words broken to the column."""

    label: str
    words: tuple[str, ...]
    size: str

    @property
    def tall(self) -> float:
        """Points that the row takes."""
        return ROW + (len(self.words) - 1) * NEXT_LINE


@dataclass(frozen=True, slots=True)
class Table:
    """Rows in one column or two, ready to be set."""

    columns: tuple[tuple[Row, ...], ...]
    wide: float  # of each column

    @property
    def tall(self) -> float:
        """Points that the table takes, heading included."""
        return ROW + max(sum(row.tall for row in column) for column in self.columns) + BELOW


def table_of(templates: Sequence[Template], width: float) -> Table:
    """The table for a width in points: one column while there are few rows, else two of equal length."""
    one = len(templates) <= FEW
    wide = min(NARROW, width) if one else (width - COLUMN_GAP) / 2
    rows = tuple(_row(template, wide) for template in templates)
    if one:
        return Table((rows,), wide)
    half, filled, count = sum(row.tall for row in rows) / 2, 0.0, 0
    while filled < half:
        filled += rows[count].tall
        count += 1
    return Table((rows[:count], rows[count:]), wide)


def _row(template: Template, wide: float) -> Row:
    room = wide - LETTER_WIDE - SIZE_WIDE
    words = _count_lines(template, room)
    if len(template.grain) > 1:
        for number, grain in enumerate(template.grain, 1):
            words += break_lines(grain_words(number, grain), room, LABEL)
    return Row(template.label, tuple(words), box_words(template.sew))


def _split(row: Row) -> Iterator[Row]:
    """The row in parts that a column can hold, however many fabrics it names."""
    yield Row(row.label, row.words[:MOST_LINES], row.size)
    for start in range(MOST_LINES, len(row.words), MOST_LINES):
        yield Row("", row.words[start : start + MOST_LINES], "")


def table_marks(table: Table, left: float, top: float) -> list[Mark]:
    """The table from its top left corner."""
    marks: list[Mark] = []
    for number, column in enumerate(table.columns):
        if column:
            marks.extend(_column_marks(column, left + number * (table.wide + COLUMN_GAP), top, table.wide))
    return marks


def _column_marks(rows: Sequence[Row], x: float, top: float, wide: float) -> list[Mark]:
    right, y = x + wide, top + 9
    marks: list[Mark] = [
        grey_text(x, y, TABLE_HEADS[0], SMALLEST),
        grey_text(x + LETTER_WIDE, y, TABLE_HEADS[1], SMALLEST),
        grey_text(right, y, TABLE_HEADS[2], SMALLEST, "end"),
        line_mark(straight((x, y + 3.5), (right, y + 3.5)), "rule", 0.5),
    ]
    for row in rows:
        baseline = y + ROW
        if row.label:
            marks.append(set_text(x, baseline, row.label, LABEL, True, role="table", subject=row.label))
        for number, line in enumerate(row.words):
            drop = baseline + number * NEXT_LINE
            marks.append(set_text(x + LETTER_WIDE, drop, line, role="table", subject=row.label))
        marks.append(
            set_text(right, baseline, row.size, LABEL, False, "end", role="table", subject=row.label)
        )
        y += row.tall
        marks.append(PathMark(straight((x, y + 3.5), (right, y + 3.5)), PALE, RULING, (), None, "rule"))
    return marks


def _count_lines(template: Template, room: float) -> list[str]:
    """What to cut, in lines broken between fabrics; within one only where it is too wide."""
    lines: list[str] = []
    for count in to_cut(template):
        longer = f"{lines[-1]}; {count}" if lines else count
        if lines and measure(longer, LABEL) <= room:
            lines[-1] = longer
        else:
            lines.extend(break_lines(count, room, LABEL))
    return lines


def box_words(edges: Sequence[Edge]) -> str:
    """`1in x 3in`: the box round a finished outline, as it lies in the block."""
    left, top, right, bottom = box_of(edges)
    return INCHES.size(right - left, bottom - top)


def pages_of(templates: Sequence[Template], box: Box) -> list[list[Mark]]:
    """The marks of as many tables as it takes to list the templates in boxes of that size."""
    left, top, right, bottom = box
    wide = (right - left - COLUMN_GAP) / 2
    columns: list[list[Row]] = []
    filled = bottom - top
    for row in (part for template in templates for part in _split(_row(template, wide))):
        if filled + row.tall > bottom - top - ROW - BELOW:
            columns.append([])
            filled = 0.0
        columns[-1].append(row)
        filled += row.tall
    pairs = [tuple(tuple(column) for column in columns[at : at + 2]) for at in range(0, len(columns), 2)]
    return [table_marks(Table(pair, wide), left, top) for pair in pairs]
