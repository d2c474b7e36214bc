"""The inside of a quilt: straight sets, sets on point, rows of different heights, and the sashing in them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import zip_longest

from ..cutting.needs import Part
from ..drafting.context import Bench
from ..drafting.sketch import Unit
from ..geometry.edge import Edge
from ..geometry.motion import move_by
from ..language import quilt_tree, tree
from ..measure.tolerance import Number, near
from ..sewing.order.row_tree import Cell, InRows, line_of, rows_of_cells
from ..words.messages import settings as complain
from .cells import CELLS_MOST, Size, cell_size, fill_straight, posed_size, row_cells
from .ground import Setting, Top, box
from .laying import FewEnough, centre_of, put_cell, put_cloth
from .on_point import set_on_point


def lay_set(
    setting: quilt_tree.QuiltSet,
    sashing: quilt_tree.Sashing | None,
    units: Mapping[str, Unit | None],
    bench: Bench,
    few_enough: FewEnough,
) -> Top | None:
    """The inside of a quilt; None where that was complained of."""
    match setting:
        case quilt_tree.SetStraight():
            return set_straight(setting, sashing, units, bench, few_enough)
        case quilt_tree.SetOnPoint():
            return set_on_point(setting, sashing, units, bench, few_enough)
        case quilt_tree.SetRows():
            return set_rows(setting, sashing, units, bench, few_enough)


def set_straight(
    setting: quilt_tree.SetStraight,
    sashing: quilt_tree.Sashing | None,
    units: Mapping[str, Unit | None],
    bench: Bench,
    few_enough: FewEnough,
) -> Top | None:
    """Blocks side by side, with sashing between them and, if it says so, round them."""
    across, down = setting.across.value, setting.down.value
    if across * down > CELLS_MOST:
        bench.say(complain.too_many_cells(setting.span, across * down, CELLS_MOST))
        return None
    size = cell_size(setting, units, bench)
    if size is None:
        return None
    filled = fill_straight(setting, size, bench)
    if not few_enough([each.cell for each in filled]):
        return None
    wide = sashing.width.inches if sashing else Fraction(0)
    start = wide if sashing and sashing.around else Fraction(0)
    top = Top(
        Setting("straight", across, down),
        width=across * (size[0] + wide) - wide + 2 * start,
        height=down * (size[1] + wide) - wide + 2 * start,
    )
    covered: set[tuple[str, int, int]] = set()
    cells: list[Cell] = []
    for each in filled:
        left, upper = start + each.left * (size[0] + wide), start + each.top * (size[1] + wide)
        columns, rows = each.right - each.left, each.bottom - each.top
        room = (columns * (size[0] + wide) - wide, rows * (size[1] + wide) - wide)
        part: Part = "setting" if isinstance(each.cell, tree.PlainCell) else "blocks"
        item = put_cell(top, each.cell, room, move_by(left, upper), units, bench, part, each.origin)
        cells.append((2 * each.left + 1, 2 * each.top + 1, 2 * each.right, 2 * each.bottom, item))
        covered |= {
            ("|", c, r) for c in range(each.left + 1, each.right) for r in range(each.top, each.bottom)
        }
        covered |= {
            ("-", c, r) for c in range(each.left, each.right) for r in range(each.top + 1, each.bottom)
        }
        covered |= {
            ("+", c, r) for c in range(each.left + 1, each.right) for r in range(each.top + 1, each.bottom)
        }
    if sashing is not None:
        cells += _sash_straight(top, sashing, across, down, size, start, covered)
    top.rows = centre_of(rows_of_cells(cells))
    return top


def _sash_straight(
    top: Top,
    sashing: quilt_tree.Sashing,
    across: int,
    down: int,
    size: Size,
    start: Number,
    covered: set[tuple[str, int, int]],
) -> Iterator[Cell]:
    """Strips between the blocks; posts where they cross, or else long strips between the rows. Cells are in
    tracks: odd ones of blocks, even ones of sashing."""
    wide = sashing.width.inches
    xs: list[Number] = [start + c * (size[0] + wide) for c in range(across)]  # left side of each column
    ys: list[Number] = [start + r * (size[1] + wide) for r in range(down)]
    around = 0 if sashing.around else 1
    columns = range(around, across + 1 - around)  # strip c lies to the left of column c
    rows = range(around, down + 1 - around)

    def at(places: list[Number], number: int, length: Number) -> Number:
        return places[number] - wide if number < len(places) else places[-1] + length

    def sash(strip: tuple[Edge, ...]) -> int:
        return put_cloth(top, strip, sashing.fabric.text, "sashing", "sashing-strip", sashing.span)

    for c in columns:
        for r in range(down):
            if ("|", c, r) not in covered:
                x = at(xs, c, size[0])
                yield 2 * c, 2 * r + 1, 2 * c + 1, 2 * r + 2, sash(box(x, ys[r], x + wide, ys[r] + size[1]))
    if sashing.posts is None and not any(kind != "|" for kind, _, _ in covered):
        for r in rows:
            y = at(ys, r, size[1])
            yield around, 2 * r, 2 * across + 1, 2 * r + 1, sash(box(Fraction(0), y, top.width, y + wide))
        return
    for r in rows:
        y = at(ys, r, size[1])
        for c in range(across):
            if ("-", c, r) not in covered:
                yield 2 * c + 1, 2 * r, 2 * c + 2, 2 * r + 1, sash(box(xs[c], y, xs[c] + size[0], y + wide))
        for c in columns:
            if ("+", c, r) not in covered:
                x = at(xs, c, size[0])
                part: Part = "posts" if sashing.posts else "sashing"
                word = (sashing.posts or sashing.fabric).text
                post = put_cloth(top, box(x, y, x + wide, y + wide), word, part, "post", sashing.span)
                yield 2 * c, 2 * r, 2 * c + 1, 2 * r + 1, post


def set_rows(
    setting: quilt_tree.SetRows,
    sashing: quilt_tree.Sashing | None,
    units: Mapping[str, Unit | None],
    bench: Bench,
    few_enough: FewEnough,
) -> Top | None:
    """Rows one under another, each as high as its blocks, all of one length; sashing between them only."""
    if sashing is not None and sashing.posts is not None:
        bench.say(complain.sashing_posts_rows(sashing.posts.span))
    top = Top(Setting("rows", 0, len(setting.body)))
    wide = sashing.width.inches if sashing else Fraction(0)
    y: Number = wide if sashing and sashing.around else Fraction(0)
    between: list[Number] = []  # where strips of sashing begin
    lines: list[InRows | int] = []
    first: tuple[Number, int] | None = None
    if not setting.body:
        bench.say(complain.rows_missing(setting.span))
        return None
    if not _few_in_rows(setting, few_enough, bench):
        return None
    for number, row in enumerate(setting.body):
        cells = row_cells(row)
        sizes = [posed_size(cell, units, bench) for cell in cells]
        heights = [size[1] for size in sizes if size is not None]
        if bench.failed:
            return None
        if not heights:
            plain = next(cell for cell in cells if isinstance(cell, tree.PlainCell))
            bench.say(complain.plain_cell_no_size(plain))
            return None
        height = heights[0]
        x: Number = Fraction(0)
        if number and sashing:
            between.append(y)
            y = y + wide
        line: list[int] = []
        for cell, size in zip(cells, sizes, strict=True):
            room = size or (height, height)
            if not near(room[1], height):
                bench.say(complain.row_heights_differ(cell, room[1], height))
                return None
            part: Part = "setting" if size is None else "blocks"
            line.append(put_cell(top, cell, room, move_by(x, y), units, bench, part, cell.span))
            x = x + room[0]
        lines.append(line_of("across", line))
        if first is None:
            first = (x, len(cells))
        elif not near(x, first[0]):
            bench.say(complain.rows_differ(row, x, len(cells), *first))
        y = y + height
    assert first is not None, "a set of rows has a row"
    top.width, top.height = first[0], y + (wide if sashing and sashing.around else Fraction(0))
    top.rows = centre_of(line_of("down", lines))
    if sashing is not None:
        _sash_rows(top, sashing, lines, between)
    return top


def _few_in_rows(setting: quilt_tree.SetRows, few_enough: FewEnough, bench: Bench) -> bool:
    cells: list[tree.Cell] = []
    for row in setting.body:
        cells += row_cells(row)
        if len(cells) > CELLS_MOST:
            bench.say(complain.too_many_cells(setting.span, len(cells), CELLS_MOST))
            return False
    return few_enough(cells)


def _sash_rows(
    top: Top, sashing: quilt_tree.Sashing, lines: Sequence[InRows | int], between: Sequence[Number]
) -> None:
    """Long strips between the rows, at those heights; `around` frames them too, sides first."""
    wide = sashing.width.inches

    def strip(outline: tuple[Edge, ...], grain: float) -> int:
        return put_cloth(top, outline, sashing.fabric.text, "sashing", "sashing-strip", sashing.span, grain)

    places = (Fraction(0), *between, top.height - wide) if sashing.around else between
    strips = [strip(box(Fraction(0), at, top.width, at + wide), 90.0) for at in places]
    longer, shorter = (strips, lines) if sashing.around else (lines, strips)
    parts = [part for pair in zip_longest(longer, shorter) for part in pair if part is not None]
    top.rows = centre_of(line_of("down", parts))
    if sashing.around:
        inner = top.width
        top.move(wide, Fraction(0))
        left, right = (
            strip(box(x, Fraction(0), x + wide, top.height), 0.0) for x in (Fraction(0), inner + wide)
        )
        top.width = inner + 2 * wide
        top.rows = centre_of(InRows("across", (left, top.rows, right)))
