"""The inside of a quilt: straight sets, sets on point, rows of different heights, and the sashing in them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import sqrt

from ..cutting.needs import Part
from ..diagnostics.source import Span
from ..drafting.context import Bench
from ..drafting.placing import fit_unit
from ..drafting.sketch import Unit
from ..geometry.edge import Edge, Point
from ..geometry.motion import IDENTITY, Transform, move_by, turn_about
from ..language import quilt_tree, tree
from ..measure.tolerance import Number, near
from ..words.messages import settings as complain
from .cells import CELLS_MOST, Size, cell_size, fill_on_point, fill_straight, posed_size, row_cells
from .ground import Laid, Single, Top, box, polygon

ORIGIN = Point(Fraction(0), Fraction(0))
ROOT_2 = sqrt(2)


def put_cell(
    top: Top,
    cell: tree.Cell,
    size: Size,
    to_quilt: Transform,
    units: Mapping[str, Unit | None],
    bench: Bench,
    part: Part,
    origin: Span,
) -> None:
    """One cell's worth into a box of that size whose top left `to_quilt` carries into the quilt."""
    if isinstance(cell, tree.PlainCell):
        outline = tuple(to_quilt.edge(edge) for edge in box(ORIGIN.x, ORIGIN.y, *size))
        what = "plain square" if near(*size) else "plain rectangle"
        grain = to_quilt.turned % 90
        top.singles.append(Single(outline, cell.role.text, part, what, origin, grain))
        return
    unit = units.get(cell.unit.text)
    natural = posed_size(cell, units, bench)
    if unit is None or natural is None:
        return
    fitted = fit_unit(cell, unit.draft, size, bench)
    if fitted is None:
        return
    across = max(fitted.a, -fitted.a) + max(fitted.c, -fitted.c)  # one of the two is nothing
    down = max(fitted.b, -fitted.b) + max(fitted.d, -fitted.d)
    width, height = unit.draft.width * across, unit.draft.height * down
    shrink = Transform(a=1 / across, d=1 / down) if (across, down) != (1, 1) else IDENTITY
    top.laid.append(Laid(unit, width, height, to_quilt.after(fitted.after(shrink)), part, origin))


def set_straight(
    setting: quilt_tree.SetStraight,
    sashing: quilt_tree.Sashing | None,
    units: Mapping[str, Unit | None],
    bench: Bench,
) -> Top | None:
    """Blocks side by side, with sashing between them and, if it says so, round them."""
    across, down = setting.across.value, setting.down.value
    if across * down > CELLS_MOST:
        bench.say(complain.too_many_cells(setting.span, across * down, CELLS_MOST))
        return None
    size = cell_size(setting, units, bench)
    if size is None:
        return None
    wide = sashing.width.inches if sashing else Fraction(0)
    start = wide if sashing and sashing.around else Fraction(0)
    top = Top(
        width=across * (size[0] + wide) - wide + 2 * start, height=down * (size[1] + wide) - wide + 2 * start
    )
    filled = fill_straight(setting, size, bench)
    covered: set[tuple[str, int, int]] = set()
    for each in filled:
        left, upper = start + each.left * (size[0] + wide), start + each.top * (size[1] + wide)
        columns, rows = each.right - each.left, each.bottom - each.top
        room = (columns * (size[0] + wide) - wide, rows * (size[1] + wide) - wide)
        put_cell(
            top,
            each.cell,
            room,
            move_by(left, upper),
            units,
            bench,
            "setting" if isinstance(each.cell, tree.PlainCell) else "blocks",
            each.origin,
        )
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
        _sash_straight(top, sashing, across, down, size, start, covered)
    return top


def _sash_straight(
    top: Top,
    sashing: quilt_tree.Sashing,
    across: int,
    down: int,
    size: Size,
    start: Number,
    covered: set[tuple[str, int, int]],
) -> None:
    """Strips between the blocks; posts where they cross, or else long strips between the rows."""
    wide = sashing.width.inches
    xs: list[Number] = [start + c * (size[0] + wide) for c in range(across)]  # left side of each column
    ys: list[Number] = [start + r * (size[1] + wide) for r in range(down)]
    around = 0 if sashing.around else 1
    columns = range(around, across + 1 - around)  # strip c lies to the left of column c
    rows = range(around, down + 1 - around)

    def at(places: list[Number], number: int, length: Number) -> Number:
        return places[number] - wide if number < len(places) else places[-1] + length

    def sash(strip: tuple[Edge, ...]) -> None:
        _add(top, strip, sashing.fabric.text, "sashing", "sashing strip", sashing.span)

    for c in columns:
        for r in range(down):
            if ("|", c, r) not in covered:
                x = at(xs, c, size[0])
                sash(box(x, ys[r], x + wide, ys[r] + size[1]))
    if sashing.posts is None and not any(kind != "|" for kind, _, _ in covered):
        for r in rows:
            y = at(ys, r, size[1])
            sash(box(Fraction(0), y, top.width, y + wide))
        return
    for r in rows:
        y = at(ys, r, size[1])
        for c in range(across):
            if ("-", c, r) not in covered:
                sash(box(xs[c], y, xs[c] + size[0], y + wide))
        for c in columns:
            if ("+", c, r) not in covered:
                x = at(xs, c, size[0])
                part: Part = "posts" if sashing.posts else "sashing"
                word = (sashing.posts or sashing.fabric).text
                _add(top, box(x, y, x + wide, y + wide), word, part, "post", sashing.span)


def _add(
    top: Top, outline: tuple[Edge, ...], word: str, part: Part, what: str, origin: Span, grain: float = 0.0
) -> None:
    top.singles.append(Single(outline, word, part, what, origin, grain))


def set_on_point(
    setting: quilt_tree.SetOnPoint,
    sashing: quilt_tree.Sashing | None,
    units: Mapping[str, Unit | None],
    bench: Bench,
) -> Top | None:
    """Blocks corner to corner, their top left corners up, with side and corner triangles round them.

    The places are those of a lattice turned by 45 degrees and cut off at the quilt's edges: one whose middle
    lies on an edge holds a side triangle (half a square), one at a corner a corner triangle (a quarter).
    """
    across, down = setting.across.value, setting.down.value
    if 2 * across * down > CELLS_MOST:
        bench.say(complain.too_many_cells(setting.span, 2 * across * down, CELLS_MOST))
        return None
    size = cell_size(setting, units, bench)
    if size is None:
        return None
    if not near(*size):
        bench.say(complain.cells_not_square(setting.span, *size))
        return None
    if sashing is not None and sashing.posts is None:
        bench.say(complain.sashing_needs_posts(sashing.span))
        return None
    side = size[0]
    wide = sashing.width.inches if sashing else Fraction(0)
    half = float(side + wide) * ROOT_2 / 2  # half a diagonal of the lattice
    top = Top(width=2 * across * half, height=2 * down * half)
    for (x, y), (cell, origin) in fill_on_point(setting, size, bench).items():
        centred = turn_about(ORIGIN, Fraction(45)).after(move_by(-side / 2, -side / 2))
        turned = move_by(x * half, y * half).after(centred)
        part: Part = "setting" if isinstance(cell, tree.PlainCell) else "blocks"
        put_cell(top, cell, size, turned, units, bench, part, origin)
    word = setting.triangles.text if setting.triangles else "background"
    _triangles(top, across, down, half, float(side), word, setting.span)
    if sashing is not None:
        _sash_on_point(top, sashing, across, down, half, float(side))
    return top


def _triangles(top: Top, across: int, down: int, half: float, side: float, word: str, origin: Span) -> None:
    """Side triangles, long side on the quilt's edge, and corner triangles, legs on its edges."""
    reach = side * ROOT_2 / 2  # from the middle of a square on point to its corner
    w, h = float(top.width), float(top.height)
    for c in range(1, across):
        x = 2 * c * half
        _add(
            top,
            polygon([Point(x - reach, 0.0), Point(x + reach, 0.0), Point(x, reach)]),
            word,
            "setting",
            "side triangle",
            origin,
        )
        _add(
            top,
            polygon([Point(x + reach, h), Point(x - reach, h), Point(x, h - reach)]),
            word,
            "setting",
            "side triangle",
            origin,
        )
    for r in range(1, down):
        y = 2 * r * half
        _add(
            top,
            polygon([Point(0.0, y + reach), Point(0.0, y - reach), Point(reach, y)]),
            word,
            "setting",
            "side triangle",
            origin,
        )
        _add(
            top,
            polygon([Point(w, y - reach), Point(w, y + reach), Point(w - reach, y)]),
            word,
            "setting",
            "side triangle",
            origin,
        )
    for x, y, right, below in ((0.0, 0.0, 1, 1), (w, 0.0, -1, 1), (w, h, -1, -1), (0.0, h, 1, -1)):
        corners = [Point(x, y), Point(x + right * reach, y), Point(x, y + below * reach)]
        ring = polygon(corners if right * below > 0 else [corners[0], corners[2], corners[1]])
        _add(top, ring, word, "setting", "corner triangle", origin)


def _sash_on_point(
    top: Top, sashing: quilt_tree.Sashing, across: int, down: int, half: float, side: float
) -> None:
    """Strips on all four sides of every block, posts at their corners; on the quilt's edge, half posts."""
    assert sashing.posts is not None
    wide = float(sashing.width.inches)
    middles = [(2 * c + 1, 2 * r + 1) for r in range(down) for c in range(across)]
    middles += [(2 * c + 2, 2 * r + 2) for r in range(down - 1) for c in range(across - 1)]
    strips: dict[tuple[int, int], tuple[float, float, int]] = {}
    posts: dict[tuple[int, int], None] = {}
    for column, row in middles:
        for right, below in ((1, -1), (1, 1), (-1, 1), (-1, -1)):
            strips.setdefault(
                (2 * column + right, 2 * row + below),
                ((column + right / 2) * half, (row + below / 2) * half, right * below),
            )
        for right, below in ((0, -1), (1, 0), (0, 1), (-1, 0)):
            posts.setdefault((column + right, row + below))
    for x, y, slope in strips.values():
        turned = move_by(x, y).after(turn_about(ORIGIN, Fraction(45 if slope > 0 else -45)))
        outline = tuple(turned.edge(edge) for edge in box(-wide / 2, -side / 2, wide / 2, side / 2))
        _add(
            top,
            outline,
            sashing.fabric.text,
            "sashing",
            "sashing strip",
            sashing.span,
            45.0 if slope > 0 else 135.0,
        )
    reach = wide * ROOT_2 / 2
    for column, row in posts:
        x, y = column * half, row * half
        ring = [Point(x, y - reach), Point(x + reach, y), Point(x, y + reach), Point(x - reach, y)]
        gone = [
            k for k, out in enumerate((row == 0, column == 2 * across, row == 2 * down, column == 0)) if out
        ]
        kept = [p for k, p in enumerate(ring) if k not in gone]
        what = "half post" if gone else "post"
        _add(top, polygon(kept), sashing.posts.text, "posts", what, sashing.span, 0.0 if gone else 45.0)


def set_rows(
    setting: quilt_tree.SetRows,
    sashing: quilt_tree.Sashing | None,
    units: Mapping[str, Unit | None],
    bench: Bench,
) -> Top | None:
    """Rows one under another, each as high as its blocks, all of one length; sashing between them only."""
    if sashing is not None and sashing.posts is not None:
        bench.say(complain.sashing_posts_rows(sashing.posts.span))
    top = Top()
    wide = sashing.width.inches if sashing else Fraction(0)
    y: Number = wide if sashing and sashing.around else Fraction(0)
    between: list[Number] = []  # where strips of sashing begin
    first: tuple[Number, int] | None = None
    count = 0
    if not setting.body:
        bench.say(complain.rows_missing(setting.span))
        return None
    for number, row in enumerate(setting.body):
        cells = row_cells(row)
        count += len(cells)
        if count > CELLS_MOST:
            bench.say(complain.too_many_cells(setting.span, count, CELLS_MOST))
            return None
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
        for cell, size in zip(cells, sizes, strict=True):
            room = size or (height, height)
            if not near(room[1], height):
                bench.say(complain.row_heights_differ(cell, room[1], height))
                return None
            part: Part = "setting" if size is None else "blocks"
            put_cell(top, cell, room, move_by(x, y), units, bench, part, cell.span)
            x = x + room[0]
        if first is None:
            first = (x, len(cells))
        elif not near(x, first[0]):
            bench.say(complain.rows_differ(row, x, len(cells), *first))
        y = y + height
    assert first is not None, "a set of rows has a row"
    top.width, top.height = first[0], y + (wide if sashing and sashing.around else Fraction(0))
    if sashing is not None:
        _sash_rows(top, sashing, between)
    return top


def _sash_rows(top: Top, sashing: quilt_tree.Sashing, between: Sequence[Number]) -> None:
    """Long strips between the rows, at those heights; `around` frames them too, sides first."""
    wide = sashing.width.inches

    def strip(outline: tuple[Edge, ...], grain: float) -> None:
        _add(top, outline, sashing.fabric.text, "sashing", "sashing strip", sashing.span, grain)

    for at in (Fraction(0), *between, top.height - wide) if sashing.around else between:
        strip(box(Fraction(0), at, top.width, at + wide), 90.0)
    if sashing.around:
        inner = top.width
        top.move(wide, Fraction(0))
        for x in (Fraction(0), inner + wide):
            strip(box(x, Fraction(0), x + wide, top.height), 0.0)
        top.width = inner + 2 * wide
