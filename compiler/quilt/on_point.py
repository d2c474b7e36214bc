"""Sets on point: slanted rows, with side and corner triangles round them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from math import sqrt

from ..cutting.needs import Part, SingleKind
from ..diagnostics.source import Span
from ..drafting.context import Bench
from ..drafting.sketch import Unit
from ..geometry.edge import Point
from ..geometry.motion import move_by, turn_about
from ..language import quilt_tree, tree
from ..measure.tolerance import Number, near
from ..sewing.order.row_tree import Cell, InRows, rows_of_cells
from ..words.messages import settings as complain
from .cells import CELLS_MOST, cell_size, fill_on_point
from .ground import Setting, Top, box, polygon
from .laying import ORIGIN, FewEnough, centre_of, put_cell, put_cloth

ROOT_2 = sqrt(2)


def set_on_point(
    setting: quilt_tree.SetOnPoint,
    sashing: quilt_tree.Sashing | None,
    units: Mapping[str, Unit | None],
    bench: Bench,
    few_enough: FewEnough,
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
    filled = fill_on_point(setting, size, bench)
    if not few_enough([cell for cell, _ in filled.values()]):
        return None
    side = size[0]
    wide = sashing.width.inches if sashing else Fraction(0)
    half = float(side + wide) * ROOT_2 / 2  # half a diagonal of the lattice
    top = Top(Setting("on-point", across, down), 2 * across * half, 2 * down * half)
    cells: list[Cell] = []
    for (x, y), (cell, origin) in filled.items():
        centred = turn_about(ORIGIN, Fraction(45)).after(move_by(-side / 2, -side / 2))
        turned = move_by(x * half, y * half).after(centred)
        part: Part = "setting" if isinstance(cell, tree.PlainCell) else "blocks"
        cells.append(_slanted(x, y, put_cell(top, cell, size, turned, units, bench, part, origin)))
    word = setting.triangles.text if setting.triangles else "background"
    cells += _side_triangles(top, across, down, half, float(side), word, setting.span)
    corners = _corner_triangles(top, float(side), word, setting.span)
    if sashing is not None:
        cells += _sash_on_point(top, sashing, across, down, half, float(side))
    top.rows = _on_point_rows(cells, corners)
    return top


def _slanted(x: Number, y: Number, item: int) -> Cell:
    """A place of the lattice in tracks along its slanted rows: those run down to the right, and lie one after
    another up to the right."""
    along, aside = int(x + y), int(x - y)
    return along, aside, along + 1, aside + 1, item


def _on_point_rows(cells: Sequence[Cell], corners: Sequence[int]) -> InRows | int:
    """Slanted rows; the corner triangles are sewn on last, two and two."""

    def slanted(rows: InRows | int) -> InRows | int:
        return rows if isinstance(rows, int) else InRows("slantwise", tuple(map(slanted, rows.parts)))

    upper_left, upper_right, lower_right, lower_left = corners
    rows = centre_of(slanted(rows_of_cells(cells)))
    for one, other in ((upper_left, lower_right), (lower_left, upper_right)):
        rows = InRows("slantwise", (one, rows, other), joins=True)
    return rows


def _side_triangles(
    top: Top, across: int, down: int, half: float, side: float, word: str, origin: Span
) -> Iterator[Cell]:
    """Half squares, the long side on the quilt's edge."""
    reach = side * ROOT_2 / 2  # from the middle of a square on point to its corner
    w, h = float(top.width), float(top.height)

    def add(*corners: Point) -> int:
        return put_cloth(top, polygon(corners), word, "setting", "side-triangle", origin)

    for c in range(1, across):
        x = 2 * c * half
        yield _slanted(2 * c, 0, add(Point(x - reach, 0.0), Point(x + reach, 0.0), Point(x, reach)))
        yield _slanted(2 * c, 2 * down, add(Point(x + reach, h), Point(x - reach, h), Point(x, h - reach)))
    for r in range(1, down):
        y = 2 * r * half
        yield _slanted(0, 2 * r, add(Point(0.0, y + reach), Point(0.0, y - reach), Point(reach, y)))
        yield _slanted(2 * across, 2 * r, add(Point(w, y - reach), Point(w, y + reach), Point(w - reach, y)))


def _corner_triangles(top: Top, side: float, word: str, origin: Span) -> list[int]:
    """Quarter squares, the legs on the quilt's edges; clockwise from the upper left."""
    reach = side * ROOT_2 / 2
    w, h = float(top.width), float(top.height)
    found = []
    for x, y, right, below in ((0.0, 0.0, 1, 1), (w, 0.0, -1, 1), (w, h, -1, -1), (0.0, h, 1, -1)):
        corners = [Point(x, y), Point(x + right * reach, y), Point(x, y + below * reach)]
        ring = polygon(corners if right * below > 0 else [corners[0], corners[2], corners[1]])
        found.append(put_cloth(top, ring, word, "setting", "corner-triangle", origin))
    return found


def _sash_on_point(
    top: Top, sashing: quilt_tree.Sashing, across: int, down: int, half: float, side: float
) -> Iterator[Cell]:
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
    for (column, row), (x, y, slope) in strips.items():
        turned = move_by(x, y).after(turn_about(ORIGIN, Fraction(45 if slope > 0 else -45)))
        outline = tuple(turned.edge(edge) for edge in box(-wide / 2, -side / 2, wide / 2, side / 2))
        grain = 45.0 if slope > 0 else 135.0
        strip = put_cloth(top, outline, sashing.fabric.text, "sashing", "sashing-strip", sashing.span, grain)
        yield _slanted(Fraction(column, 2), Fraction(row, 2), strip)
    reach = wide * ROOT_2 / 2
    for column, row in posts:
        x, y = column * half, row * half
        ring = [Point(x, y - reach), Point(x + reach, y), Point(x, y + reach), Point(x - reach, y)]
        gone = [
            k for k, out in enumerate((row == 0, column == 2 * across, row == 2 * down, column == 0)) if out
        ]
        kept = [p for k, p in enumerate(ring) if k not in gone]
        what: SingleKind = "half-post" if gone else "post"
        grain = 0.0 if gone else 45.0
        post = put_cloth(top, polygon(kept), sashing.posts.text, "posts", what, sashing.span, grain)
        yield _slanted(column, row, post)
