"""What is sewn in rows: a tree of rows of rows, down to single parts, each sewn to the next by one seam."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Literal

from ...measure.record import record

Way = Literal["across", "down", "slantwise", "set-in", "mitred"]
"""How the parts of a row lie: side by side, one under another, on point; round a corner; or four strips round
what comes first, from dot to dot, whose mitres are closed when all are on."""


@record
class InRows:
    """Parts in the order in which they lie: from the left, from the top, or along a slant from the left;
    numbers are of what is whole. Of a mitred frame the middle comes first, then its strips as they are sewn
    on. More than two parts to be set in are in no order yet.

    `ring`: 0 of the centre, n of the nth border. `joins`: it joins what else the centre is made of. `whole`:
    it is finished before what comes before it in number but lies outside it.
    """

    way: Way
    parts: tuple[InRows | int, ...]
    ring: int = 0
    joins: bool = False
    whole: bool = False

    def numbers(self) -> Iterator[int]:
        """Everything in it, in order."""
        return numbers_of(self.parts)

    def rows(self) -> Iterator[InRows]:
        """It and every row within it."""
        stack: list[InRows] = [self]
        while stack:
            each = stack.pop()
            yield each
            stack += [part for part in reversed(each.parts) if isinstance(part, InRows)]

    def numbered(self, number: Callable[[int], int]) -> InRows:
        """The same with other numbers."""
        parts = tuple(number(part) if isinstance(part, int) else part.numbered(number) for part in self.parts)
        return InRows(self.way, parts, self.ring, self.joins, self.whole)


def numbers_of(parts: Sequence[InRows | int]) -> Iterator[int]:
    """Everything in some parts, in order."""
    stack = list(reversed(parts))
    while stack:
        each = stack.pop()
        if isinstance(each, int):
            yield each
        else:
            stack += reversed(each.parts)


Cell = tuple[int, int, int, int, int]
"""Left, top, right and bottom in tracks of a grid, and the number of what lies there."""


def rows_of_cells(cells: Sequence[Cell], ring: int = 0) -> InRows | int:
    """The tree of cells in a grid: rows where they run right across, else columns, else what is set in."""
    if len(cells) == 1:
        return cells[0][4]
    ways: tuple[tuple[Way, int], ...] = (("down", 1), ("across", 0))
    for way, low in ways:
        bands = _bands(cells, low)
        if len(bands) > 1:
            return InRows(way, tuple(rows_of_cells(band, ring) for band in bands), ring)
    return InRows("set-in", tuple(cell[4] for cell in cells), ring)


def _bands(cells: Sequence[Cell], low: int) -> list[list[Cell]]:
    """The cells between every two seams that run right across; `low`: 1 of level seams, 0 of upright ones."""
    bands: list[list[Cell]] = []
    end = 0
    for cell in sorted(cells, key=lambda each: (each[low], each[1 - low])):
        if not bands or cell[low] >= end:
            bands.append([])
            end = cell[low + 2]
        bands[-1].append(cell)
        end = max(end, cell[low + 2])
    return bands


def line_of(way: Way, parts: Sequence[InRows | int], ring: int = 0, whole: bool = False) -> InRows | int:
    """Parts in one row; one part alone is as it is."""
    return InRows(way, tuple(parts), ring, whole=whole) if len(parts) > 1 else parts[0]
