"""Which block or cloth lies in which cell of a set: rows, places and alternation."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ..diagnostics.source import Span
from ..drafting.context import Bench
from ..drafting.frame import column_letters, column_number
from ..drafting.ground import once
from ..drafting.placing import pose_of, say_idle
from ..drafting.sketch import Unit
from ..language import quilt_tree, tree
from ..measure.tolerance import Number, near
from ..words.messages import settings as complain
from ..words.messages import units as complain_units
from ..words.messages.points import grid_point_off

CELLS_MOST = 40_000
"""Cells in one set: four times the largest quilt anyone pieces (100 x 100), and pages of it still open."""

Size = tuple[Number, Number]


@dataclass(frozen=True)
class Filled:
    """One cell's worth: columns left..right and rows top..bottom from 0, right and bottom excluded."""

    cell: tree.Cell
    left: int
    top: int
    right: int
    bottom: int
    origin: Span


def posed_size(cell: tree.Cell, units: Mapping[str, Unit | None], bench: Bench) -> Size | None:
    """The size of a block as it lies; None for plain cells and for what was complained of."""
    if isinstance(cell, tree.PlainCell):
        return None
    if cell.unit.text not in units:
        bench.say(complain_units.unit_unknown(cell.unit, tuple(units)))
        return None
    unit = units[cell.unit.text]
    if unit is None:
        return None
    posed = pose_of(cell, unit.draft, bench)
    if posed is None:
        return None
    upright = posed.a != 0
    return (unit.draft.width, unit.draft.height) if upright else (unit.draft.height, unit.draft.width)


def row_cells(row: tree.Row) -> list[tree.Cell]:
    """A row's cells, repeats written out."""
    return [item.cell for item in row.items for _ in range(item.count.value if item.count else 1)]


def all_cells(body: Sequence[quilt_tree.SetStatement]) -> list[tree.Cell]:
    """Every cell that a set writes, once each."""
    found: list[tree.Cell] = []
    for each in body:
        match each:
            case tree.Row():
                found += [item.cell for item in each.items]
            case tree.Alternate():
                found += each.cells
            case tree.Place():
                found.append(each.cell)
    return found


def cell_size(
    setting: quilt_tree.SetStraight | quilt_tree.SetOnPoint, units: Mapping[str, Unit | None], bench: Bench
) -> Size | None:
    """The size of a set's cells: as written, or the blocks' own when all agree."""
    if setting.size is not None:
        return setting.size.width.inches, (setting.size.height or setting.size.width).inches
    sizes = [size for cell in all_cells(setting.body) if (size := posed_size(cell, units, bench)) is not None]
    if bench.failed:
        return None
    if not sizes:
        bench.say(complain.cells_size_missing(setting.span))
        return None
    if not all(near(w, sizes[0][0]) and near(h, sizes[0][1]) for w, h in sizes):
        bench.say(complain.cells_size_differs(setting.span, sizes))
        return None
    return sizes[0]


def fill_straight(setting: quilt_tree.SetStraight, size: Size, bench: Bench) -> list[Filled]:
    """The cells of a straight set, filled."""
    across, down = setting.across.value, setting.down.value
    filled: list[Filled] = []
    covered: set[tuple[int, int]] = set()
    placed: dict[tuple[int, int], Span] = {}

    def put(each: Filled) -> None:
        filled.append(each)
        covered.update((c, r) for c in range(each.left, each.right) for r in range(each.top, each.bottom))

    row_number = 0
    for each in setting.body:
        if isinstance(each, tree.Row):
            if row_number >= down:
                bench.say(complain_units.rows_too_many(each, down, "set"))
                continue
            cells = row_cells(each)
            if len(cells) != across:
                bench.say(complain_units.row_wrong_count(each, len(cells), across, size[0], "set"))
            for column, cell in enumerate(cells[:across]):
                put(Filled(cell, column, row_number, column + 1, row_number + 1, cell.span))
            row_number += 1
    for each in setting.body:
        if isinstance(each, tree.Place):
            for region in each.regions:
                box = cell_range(region, across, down, bench)
                if box is None:
                    continue
                _check_placed(
                    placed,
                    [(c, r) for c in range(box[0], box[2]) for r in range(box[1], box[3])],
                    region.span,
                    bench,
                )
                filled = [
                    old for old in filled if not _inside(old, box)
                ]  # a place over a row's cell changes it
                put(Filled(each.cell, *box, region.span))
    alternate = once(setting.body, tree.Alternate, "alternate", bench, whole="set")
    if alternate is not None:
        free = [
            (column, row) for row in range(down) for column in range(across) if (column, row) not in covered
        ]
        for column, row in free:
            cell = alternate.cells[(column + row) % len(alternate.cells)]
            put(Filled(cell, column, row, column + 1, row + 1, cell.span))
        say_idle(alternate, {(column + row) % len(alternate.cells) for column, row in free}, bench)
    _check_covered(setting.span, across, down, covered, bench)
    return filled


def _check_placed(
    placed: dict[tuple[int, int], Span], cells: Sequence[tuple[int, int]], span: Span, bench: Bench
) -> None:
    """Complains of a cell that two places cover; `placed` grows by the cells."""
    taken = next((each for each in cells if each in placed), None)
    if taken is not None:
        bench.say(complain_units.cells_overlap(span, placed[taken], *taken))
    placed.update(dict.fromkeys(cells, span))


def _inside(old: Filled, box: tuple[int, int, int, int]) -> bool:
    return box[0] <= old.left and box[1] <= old.top and old.right <= box[2] and old.bottom <= box[3]


def cell_range(region: tree.Region, across: int, down: int, bench: Bench) -> tuple[int, int, int, int] | None:
    """Columns and rows between two grid points of a set."""
    columns = sorted(column_number(p.column) - 1 for p in (region.first, region.second))
    rows = sorted(p.row - 1 for p in (region.first, region.second))
    if columns[1] > across or rows[1] > down:
        far = max(
            (region.first, region.second), key=lambda p: max(column_number(p.column) - across, p.row - down)
        )
        bench.say(grid_point_off(far, across, down, f"{column_letters(across + 1)}{down + 1}"))
        return None
    if columns[0] == columns[1] or rows[0] == rows[1]:
        bench.say(complain_units.region_not_cells(region))
        return None
    return columns[0], rows[0], columns[1], rows[1]


def _check_covered(span: Span, across: int, down: int, covered: set[tuple[int, int]], bench: Bench) -> None:
    missing = across * down - len(covered)
    if missing > 0 and not bench.failed:
        first = next((c, r) for r in range(down) for c in range(across) if (c, r) not in covered)
        bench.say(complain.cells_uncovered(span, missing, *first))


def fill_on_point(
    setting: quilt_tree.SetOnPoint, size: Size, bench: Bench
) -> dict[tuple[int, int], tuple[tree.Cell, Span]]:
    """The cells of an on-point set by their middles, in half diagonals across and down.

    Those at odd numbers stand corner to corner along the sides, those at even numbers lie between them.
    """
    across, down = setting.across.value, setting.down.value
    lines = [
        [(2 * c + 1, 2 * r + 1) for c in range(across)]
        if k % 2 == 0
        else [(2 * c + 2, 2 * r + 2) for c in range(across - 1)]
        for k in range(2 * down - 1)
        for r in (k // 2,)
    ]
    filled: dict[tuple[int, int], tuple[tree.Cell, Span]] = {}
    lines = [line for line in lines if line]
    placed: dict[tuple[int, int], Span] = {}
    number = 0
    for each in setting.body:
        if isinstance(each, tree.Row):
            if number >= len(lines):
                bench.say(complain_units.rows_too_many(each, len(lines), "set"))
                continue
            cells = row_cells(each)
            if len(cells) != len(lines[number]):
                bench.say(
                    complain_units.row_wrong_count(each, len(cells), len(lines[number]), size[0], "set")
                )
            filled.update({at: (cell, cell.span) for at, cell in zip(lines[number], cells, strict=False)})
            number += 1
    for each in setting.body:
        if isinstance(each, tree.Place):
            for region in each.regions:
                box = cell_range(region, across, down, bench)
                if box is not None and (box[2] - box[0], box[3] - box[1]) != (1, 1):
                    bench.say(complain.region_over_sashing(region.span))
                elif box is not None:
                    _check_placed(placed, [(box[0], box[1])], region.span, bench)
                    filled[2 * box[0] + 1, 2 * box[1] + 1] = (each.cell, region.span)
    alternate = once(setting.body, tree.Alternate, "alternate", bench, whole="set")
    if alternate is not None:
        free = [at for line in lines for at in line if at not in filled]
        kinds = {at: (1 - at[0] % 2) % len(alternate.cells) for at in free}
        for at, kind in kinds.items():
            filled[at] = (alternate.cells[kind], alternate.cells[kind].span)
        say_idle(alternate, (0, 1) if free else (), bench)  # of one block across there is no second kind
    missing = [at for line in lines for at in line if at not in filled]
    if missing and not bench.failed:
        number = next(k for k, line in enumerate(lines) if missing[0] in line)
        column = lines[number].index(missing[0])
        bench.say(complain.cells_uncovered(setting.span, len(missing), column, number))
    return filled
