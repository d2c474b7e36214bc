"""The table of templates: letter, how many to cut of what, and the size of its box."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...cutting.model import Template
from ...geometry.curves import box_of
from ...geometry.edge import Edge
from ...measure.record import record
from ...words.pages.labels import TABLE_HEADS, grain_words, to_cut
from ...words.say import Say
from ..content import Column, Row
from ..page import Mark
from ..setting.flow import KEPT_WIDE, Item
from ..setting.table import CLOSE, MOST_LINES, table_items
from .room import Box
from .style import LABEL, break_lines, measure

COLUMNS: Final = (
    Column(TABLE_HEADS[0], 38.0, bold=True),
    Column(TABLE_HEADS[1], 0.0),
    Column(TABLE_HEADS[2], 94.0, "end"),
)
APART: Final = 18.0  # between two columns of templates
NARROW: Final = 330.0  # the width of a table of one column: the eye finds its way across
FEW: Final = 4  # so many templates make one column
BELOW: Final = 4.0


@record
class Table:
    """Rows in one column or two, each under a head of its own, ready to be set."""

    columns: tuple[tuple[Item, ...], ...]
    wide: float  # of each column

    @property
    def tall(self) -> float:
        """Points that the table takes, heads included."""
        return max(sum(item.tall for item in column) for column in self.columns) + BELOW


def table_of(templates: Sequence[Template], width: float, say: Say) -> Table:
    """The table for a width in points: one column while there are few rows, else two of equal length."""
    one = len(templates) <= FEW
    wide = min(NARROW, width) if one else (width - APART) / 2
    head, *rows = _items(templates, wide, say)
    if one:
        return Table(((head, *rows),), wide)
    half, filled, count = sum(row.tall for row in rows) / 2, 0.0, 0
    while filled < half:
        filled += rows[count].tall
        count += 1
    return Table(((head, *rows[:count]), (head, *rows[count:])), wide)


def _items(templates: Sequence[Template], wide: float, say: Say) -> list[Item]:
    """The head, and every template's rows."""
    rows = [row for each in templates for row in _rows(each, wide, say)]
    return table_items(COLUMNS, rows, wide, pitch=CLOSE)


def _rows(template: Template, wide: float, say: Say) -> Iterator[Row]:
    """The template's row, and more where it names more fabrics than one holds."""
    room = wide - COLUMNS[0].wide - COLUMNS[2].wide - KEPT_WIDE
    lines = _count_lines(template, room)
    if len(template.grain) > 1:
        for number, grain in enumerate(template.grain, 1):
            lines += break_lines(grain_words(number, grain), room, LABEL)
    first = (template.label, box_words(template.sew, say))
    for at in range(0, max(len(lines), 1), MOST_LINES):
        label, size = first if not at else ("", "")
        yield Row((label, "\n".join(lines[at : at + MOST_LINES]), size), template.label)


def table_marks(table: Table, left: float, top: float) -> list[Mark]:
    """The table from its top left corner."""
    marks: list[Mark] = []
    for number, column in enumerate(table.columns):
        y = top
        for item in column if len(column) > 1 else ():
            marks += item.draw(left + number * (table.wide + APART), y)
            y += item.tall
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


def box_words(edges: Sequence[Edge], say: Say) -> str:
    """`1in x 3in`: the box round a finished outline, as it lies in the block."""
    left, top, right, bottom = box_of(edges)
    return say.box(right - left, bottom - top)


def pages_of(templates: Sequence[Template], box: Box, say: Say) -> list[list[Mark]]:
    """The marks of as many tables as it takes to list the templates in boxes of that size."""
    left, top, right, bottom = box
    wide = (right - left - APART) / 2
    head, *rows = _items(templates, wide, say)
    columns: list[list[Item]] = []
    filled = bottom - top
    for row in rows:
        if filled + row.tall > bottom - top - BELOW:
            columns.append([head])
            filled = head.tall
        columns[-1].append(row)
        filled += row.tall
    pairs = [tuple(tuple(column) for column in columns[at : at + 2]) for at in range(0, len(columns), 2)]
    return [table_marks(Table(pair, wide), left, top) for pair in pairs]
