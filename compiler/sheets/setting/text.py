"""Chapters as text of at most 80 columns, for a terminal. Pictures and true-size sheets are left out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import chain, repeat
from typing import Final

from ...diagnostics.visible import visible, width_of
from ..content import Cards, Chapter, Column, CutLine, List, Paragraph, Part, Picture, Row, Section, Table
from .text_table import GAP, ROOM, wrapped

NARROWEST: Final = 8  # columns that a cell keeps, however many columns the table has
FEW: Final = 3  # columns of a table whose last stands beside the others, however much it says
UNDER: Final = 5  # columns by which what stands under a row is set in


def report_text(chapters: Sequence[Chapter]) -> str:
    """Chapters of one block or quilt, the first of them its head: its title is underlined."""
    head, *others = chapters
    title = visible(head.title)
    parts = (line for part in head.parts for line in _part_lines(part))
    return "\n".join((*wrapped(title), "=" * min(width_of(title), ROOM), *parts, *chapter_lines(others)))


def chapter_lines(chapters: Iterable[Chapter]) -> Iterator[str]:
    """The chapters one under another, each under its title."""
    for chapter in chapters:
        yield ""
        yield from wrapped(visible(chapter.title))
        for part in (*chapter.parts, *chapter.told):
            yield from _part_lines(part)


def _part_lines(part: Part) -> Iterator[str]:
    match part:
        case Paragraph(text):
            yield from wrapped(visible(text), GAP, GAP)
        case Section(title, under):
            yield ""
            yield from wrapped(visible(f"{title}: {under}" if under else title), GAP, GAP * 2)
        case List(texts, sign):
            for number, text in enumerate(texts, 1):
                first = f"{number}. " if sign == "number" else "- "
                yield from wrapped(visible(text), GAP + first, GAP + " " * len(first))
        case Table():
            yield from table_lines(part)
        case Cards(cards):
            for card in cards:
                yield from wrapped(
                    visible(f"{card.title}: {' '.join((*card.lines, *card.told))}"), GAP, GAP * 2
                )
        case Picture() | CutLine():
            return


def plain_table(
    heads: Sequence[str],
    rows: Iterable[Sequence[str]],
    under: Iterable[tuple[Sequence[str], Sequence[str]]] = (),
) -> list[str]:
    """Rows under their heads, each with its notes and its whole lines `under` it where there are any."""
    columns = tuple(Column(head, 1.0) for head in heads)
    beneath = chain(under, repeat(((), ())))
    told = (
        Row(tuple(row), notes=tuple(notes), whole=tuple(whole))
        for row, (notes, whole) in zip(rows, beneath, strict=False)
    )
    return list(table_lines(Table(columns, tuple(told), "")))


def table_lines(table: Table) -> Iterator[str]:
    """The table with a line for each row, and more where cells are broken. A last column that takes what room
    there is on paper goes under its row where many are too wide for a line; so do a row's notes."""
    titles = tuple(column.title for column in table.columns)
    cells = [[visible(cell) for cell in row] for row in (titles, *(row.cells for row in table.rows))]
    natural = [max(width_of(row[at]) for row in cells) for at in range(len(table.columns))]
    beside = list(range(len(table.columns)))
    if sum(natural) + len(GAP) * len(natural) > ROOM:
        last = table.columns[-1]
        beside = beside[:-1] if len(beside) > FEW and not last.wide else beside
    widths = _fitted([natural[at] for at in beside])
    anchors = [table.columns[at].anchor == "end" for at in beside]
    under = len(beside)
    for row, told in zip((None, *table.rows), cells, strict=True):
        yield from _row_lines(told[:under], widths, anchors)
        for text in (*told[under:], *(map(visible, row.notes) if row else ())):
            yield from wrapped(text, " " * UNDER, " " * UNDER) if text else ()
        yield from (" " * UNDER + visible(line) for line in (row.whole if row else ()))


def _fitted(widths: Sequence[int]) -> list[int]:
    """The widths, the widest made less until all fit a line."""
    fitted = list(widths)
    while sum(fitted) + len(GAP) * len(fitted) > ROOM and max(fitted) > NARROWEST:
        fitted[fitted.index(max(fitted))] -= 1
    return fitted


def _row_lines(cells: Sequence[str], widths: Sequence[int], anchors: Sequence[bool]) -> Iterator[str]:
    """Cells side by side, each broken to its column."""
    broken = [_broken(cell, width) for cell, width in zip(cells, widths, strict=True)]
    for at in range(max(map(len, broken))):
        line = ""
        for lines, width, right in zip(broken, widths, anchors, strict=True):
            cell = lines[at] if at < len(lines) else ""
            pad = " " * (width - width_of(cell))
            line += GAP + (pad + cell if right else cell + pad)
        yield line.rstrip()


def _broken(cell: str, width: int) -> list[str]:
    """The cell in lines of that width; long words are parted."""
    lines = [""]
    for word in cell.split(" "):
        longer = f"{lines[-1]} {word}" if lines[-1] else word
        if width_of(longer) <= width:
            lines[-1] = longer
            continue
        if lines[-1]:
            lines.append("")
        for letter in word:
            if width_of(lines[-1] + letter) > width:
                lines.append("")
            lines[-1] += letter
    return lines
