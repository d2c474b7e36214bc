"""How tiles say where they belong: join lines, half diamonds lettered in pairs, and a map of them all.

Points; x right, y down. Join marks stand where they stand on the drawing; the map, from its own corner.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from string import ascii_lowercase
from typing import Final, Literal

from ...measure.record import record
from ..drawing.clipping import Box
from ..drawing.lettering import cap_height
from ..page import Mark, PathMark, Segment, TextMark
from .tile_grid import Grid, Tile

Place = tuple[int, int]  # row, column

LINE: Final = 0.4  # points: the join line, thinner than anything that is cut or sewn
LINE_DASH: Final = (1.5, 2.5)
REACH: Final = 9.0  # points, 1/8in: from the join line to a diamond's point; half an overlap holds it
STAND: Final = 9.0  # points, from a diamond's middle to its tips on the join line
LETTER: Final = 8.5
LETTER_CLEAR: Final = 2.5  # points from a diamond to its letter, which the overlap still holds
AT: Final = (0.25, 0.75)  # of a join's length: two diamonds, so that a tile cannot be laid on aslant

SHORTEST: Final = 24.0  # points of a join line, however little of the drawing lies on the tile
LEAST_PAIR: Final = 90.0  # points of a join line that has two diamonds; a shorter one has one
STEP: Final = 0.03  # shares of a join's length by which a diamond is moved to plain ground
STEPS: Final = 6

GREY: Final = (0.8, 0.8, 0.8)
SMALLEST_NAME: Final = 7.0  # points: the floor of all lettering


Clear = Callable[[Box, bool], bool]
"""Whether nothing of the drawing meets a box; no words of it, where those alone are asked for."""


@record
class _Join:
    """One side that two tiles share: the line, rightward or down from its start. The first tile lies left of
    it or above."""

    tiles: tuple[Place, Place]
    start: tuple[float, float]
    length: float
    upright: bool


def join_marks(
    grid: Grid, places: Sequence[Place], clear: Clear = lambda box, words: True
) -> dict[Place, list[Mark]]:
    """For each tile its join lines and half diamonds. Letters run through all joins, row by row; they stand
    where the drawing leaves their box clear, if anywhere near."""
    marks: dict[Place, list[Mark]] = {place: [] for place in places}
    letter = 0
    for join in _joins(grid, places):
        line = _line(join)
        for place in join.tiles:
            marks[place].append(PathMark(line, width=LINE, dash=LINE_DASH, role="join"))
        for near in AT if join.length >= LEAST_PAIR else AT[:1]:
            name, letter = _name(letter), letter + 1
            share, beside = _place(join, near, clear)
            for place, side in zip(join.tiles, (-1, 1), strict=True):
                marks[place].extend(_half_diamond(join, share, side, name, beside))
    return marks


def _shares(near: float) -> Iterator[float]:
    """Shares of a join's length, the nearest first."""
    yield near
    for step in range(1, STEPS + 1):
        yield near + step * STEP
        yield near - step * STEP


def _place(join: _Join, near: float, clear: Clear) -> tuple[float, bool]:
    """Where a diamond stands, and whether its letters stand beside it on the join line: only where a line of
    the drawing runs along where they would stand beyond its points."""
    for beside in (False, True):
        for share in _shares(near):
            if _is_clear(join, share, beside, clear):
                return share, beside
    return near, False


def _letter_spot(join: _Join, middle: float, side: int, beside: bool) -> tuple[float, float]:
    """The middle of a letter."""
    if beside:
        return _spot(join, middle + STAND + LETTER * 0.6, side * LETTER * 0.65)
    return _spot(join, middle, side * (REACH + LETTER_CLEAR + LETTER / 2))


def _is_clear(join: _Join, share: float, beside: bool, clear: Clear) -> bool:
    """Whether both letters of the diamonds stand on plain ground there, and the diamond on no words."""
    for side in (-1, 1):
        x, y = _letter_spot(join, share * join.length, side, beside)
        if not clear(_square(x, y, LETTER * 0.6), False):
            return False
    return clear(_square(*_spot(join, share * join.length, 0.0), STAND), True)


def _square(x: float, y: float, reach: float) -> Box:
    return Box(x - reach, y - reach, x + reach, y + reach)


def _joins(grid: Grid, places: Sequence[Place]) -> Iterator[_Join]:
    """Every pair of neighbours; the line stops where the tiles' own overlaps with others begin, and where
    the drawing ends."""
    known, half = set(places), grid.overlap / 2
    for row, column in places:
        box = grid.box(row, column)
        if (row, column + 1) in known:
            start = (box.right - half, box.top + grid.overlap)
            length = min(grid.tile_height - 2 * grid.overlap, max(SHORTEST, grid.height - start[1]))
            yield _Join(((row, column), (row, column + 1)), start, length, True)
        if (row + 1, column) in known:
            start = (box.left + grid.overlap, box.bottom - half)
            length = min(grid.tile_width - 2 * grid.overlap, max(SHORTEST, grid.width - start[0]))
            yield _Join(((row, column), (row + 1, column)), start, length, False)


def _spot(join: _Join, along: float, aside: float) -> tuple[float, float]:
    """So far along the join line and to the side of it, right or down counted as more."""
    x, y = join.start
    return (x + aside, y + along) if join.upright else (x + along, y + aside)


def _line(join: _Join) -> tuple[Segment, ...]:
    return (("M", *_spot(join, 0.0, 0.0)), ("L", *_spot(join, join.length, 0.0)))


def _half_diamond(join: _Join, share: float, side: int, name: str, beside: bool) -> Iterator[Mark]:
    """A triangle on the join line, its point into the tile, with the pair's letter beyond the point, or
    beside it."""
    middle = share * join.length
    corners = [
        _spot(join, middle - STAND, 0.0), _spot(join, middle, side * REACH), _spot(join, middle + STAND, 0.0)
    ]  # fmt: skip
    path: tuple[Segment, ...] = (("M", *corners[0]), ("L", *corners[1]), ("L", *corners[2]), ("Z",))
    yield PathMark(path, width=LINE, fill=GREY, role="join", subject=name)
    tall = cap_height(LETTER, True)
    anchor: Literal["start", "middle", "end"] = "middle"
    if beside:
        x, y = _letter_spot(join, middle, side, beside)
        yield TextMark(x, y + tall / 2, name, LETTER, True, anchor, role="join", subject=name)
        return
    x, y = _spot(join, middle, side * (REACH + LETTER_CLEAR))
    if join.upright:
        anchor, y = ("end" if side < 0 else "start"), y + tall / 2
    elif side > 0:
        y += tall
    yield TextMark(x, y, name, LETTER, True, anchor, role="join", subject=name)


def _name(number: int) -> str:
    """a, b, ..., z, aa, ab, ..."""
    name = ""
    number += 1
    while number:
        number, letter = divmod(number - 1, len(ascii_lowercase))
        name = ascii_lowercase[letter] + name
    return name


def tile_map(tiles: Sequence[Tile], here: Collection[Tile], width: float, height: float) -> tuple[Mark, ...]:
    """The tiles as they are laid together, in a box of at most that size; those `here` are shaded.

    Named where the names fit at a size that can be read.
    """
    across, down = max(tile.box.right for tile in tiles), max(tile.box.bottom for tile in tiles)
    scale = min(width / across, height / down)
    marks: list[Mark] = []
    for tile in tiles:
        left, top, right, bottom = (edge * scale for edge in _own(tile, tiles))
        path: tuple[Segment, ...] = (
            ("M", left, top), ("L", right, top), ("L", right, bottom), ("L", left, bottom), ("Z",)
        )  # fmt: skip
        fill = GREY if tile in here else None
        marks.append(PathMark(path, width=LINE, fill=fill, role="map", subject=tile.name))
        size = min(LETTER, (right - left) / 2, (bottom - top) / 1.5)
        if size >= SMALLEST_NAME:
            x, y = (left + right) / 2, (top + bottom) / 2 + cap_height(size) / 2
            marks.append(TextMark(x, y, tile.name, size, anchor="middle", role="map", subject=tile.name))
    return tuple(marks)


def _own(tile: Tile, tiles: Sequence[Tile]) -> tuple[float, float, float, float]:
    """The tile's box, up to the middle of each overlap that it shares."""
    left, top, right, bottom = tile.box
    for other in tiles:
        if other.row == tile.row:
            if other.column == tile.column + 1:
                right = (right + other.box.left) / 2
            elif other.column == tile.column - 1:
                left = (left + other.box.right) / 2
        elif other.column == tile.column:
            if other.row == tile.row + 1:
                bottom = (bottom + other.box.top) / 2
            elif other.row == tile.row - 1:
                top = (top + other.box.bottom) / 2
    return left, top, right, bottom
