"""Shapes laid down on sheets, one after another: the packer's one plan.

In: shapes (poses as cells) and the order to lay them in. Out: their places, and what the result is worth.
Lengths are points unless they are cells.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor, inf
from typing import Final, NamedTuple

from ...measure.record import record
from ...measure.tolerance import CELL_TOUCH
from .raster import Floor, Mask, Rings, box_of, mask_of, spread

ACROSS_COST: Final = 0.04
"""What laying an item across the common grain must save, as a share of its own box: a whim costs more
paper than this, a real gain is taken."""

HOMING: Final = 0.3
"""How much reaching far from the sheet's corner counts beside enlarging the box; tried from 0 to 3."""

OPEN_SHEETS: Final = 60  # sheets begun that an item may still go to; older ones are taken to be full

NO_BETTER: Final = 0.92
"""An item is not tried on a sheet that had no room for one of which it is more than this share: it would
hardly fit, and hundreds of items on dozens of sheets would take seconds."""


Worth = tuple[float, float]
"""Sheets, then square points of the box around what lies on the last. Less is better."""


@dataclass(slots=True)
class Shape:
    """A pose made ready: its box, and, once asked for, its cells and those it keeps others out of."""

    pose: int
    along: bool
    left: float
    top: float
    width: float
    height: float
    rings: Rings
    cell: float
    gap: float  # in cells
    _mask: Mask | None = None
    _kept_clear: tuple[int, tuple[int, ...]] | None = None

    @property
    def mask(self) -> Mask:
        """Its cells: many a pose is passed over without a look at them."""
        if self._mask is None:
            self._mask = mask_of(self.rings, self.cell)
        return self._mask

    @property
    def kept_clear(self) -> tuple[int, tuple[int, ...]]:
        """How far the cells it keeps others out of reach beyond its own, and their rows."""
        if self._kept_clear is None:
            self._kept_clear = spread(self.mask, self.gap)
        return self._kept_clear

    @property
    def across_cost(self) -> float:
        """Square points that this pose must save."""
        return 0.0 if self.along else ACROSS_COST * self.width * self.height


class Place(NamedTuple):
    """An item's sheet, pose and move; its fields in the order of a Placement's."""

    item: int
    sheet: int
    pose: int
    dx: float
    dy: float


@record
class Attempt:
    """Everything laid, in the order it was laid, on sheets `width` points wide.

    `worth`: fewer sheets are better, then a smaller box around what lies on the last.
    """

    places: tuple[Place, ...]
    worth: Worth
    width: float


@dataclass(slots=True)
class _Sheet:
    """A page being filled: its cells, and how far right and down its items reach. The latest item's cells are
    taken when room is next looked for: beside the last there never is a next."""

    floor: Floor
    latest: tuple[Shape, int, int] | None = None
    right: float = 0.0
    bottom: float = 0.0
    refused: float = inf  # square cells of the smallest item that found no room


def shape_of(pose: int, rings: Rings, along: bool, cell: float, gap: float) -> Shape:
    """The pose as cells of that size."""
    left, top, right, bottom = box_of(rings)
    return Shape(pose, along, left, top, right - left, bottom - top, rings, cell, gap / cell)


def lay(
    shapes: Sequence[tuple[Shape, ...]],
    order: Sequence[int],
    room: tuple[float, float],
    cell: float,
    best: Worth = (inf, inf),
) -> Attempt | None:
    """Lays the items in order, each on the first open sheet that has room for it. Each fits an empty sheet.
    None as soon as it cannot come out better than the best so far."""
    width, height = room
    across, down = ceil(width / cell - CELL_TOUCH), ceil(height / cell - CELL_TOUCH)
    sheets: list[_Sheet] = []
    places = []
    lost = 0.0
    for item in order:
        size = shapes[item][0].mask.covered
        for number in range(max(0, len(sheets) - OPEN_SHEETS), len(sheets) + 1):
            if number == len(sheets):
                sheets.append(_Sheet(Floor(across, down)))
            sheet = sheets[number]
            if size > NO_BETTER * sheet.refused:
                continue
            found = _best_place(shapes[item], sheet, width, height, cell)
            if found:
                shape, x, y = found
                _put(sheet, shape, x, y, cell)
                lost += shape.across_cost
                places.append(Place(item, number, shape.pose, x * cell - shape.left, y * cell - shape.top))
                break
            sheet.refused = min(sheet.refused, size)
        worth = len(sheets), sheets[-1].right * sheets[-1].bottom + lost  # of a sheet, it only ever grows
        if worth >= best:
            return None
    return Attempt(tuple(places), worth, width)


def _best_place(
    shapes: Sequence[Shape], sheet: _Sheet, width: float, height: float, cell: float
) -> tuple[Shape, int, int] | None:
    """The pose and place that enlarge the box around the sheet's items least."""
    _take_latest(sheet)
    best: tuple[Shape, int, int] | None = None
    least: tuple[float, ...] = ()
    for shape in shapes:
        box = max(sheet.right, shape.width) * max(sheet.bottom, shape.height)
        if best and box + HOMING * shape.width * shape.height + shape.across_cost > least[0]:
            continue  # wherever it went, it would cost more
        right = floor((width - shape.width) / cell + CELL_TOUCH)
        bottom = floor((height - shape.height) / cell + CELL_TOUCH)
        free = sheet.floor.free(shape.mask, right, bottom) if right >= 0 and bottom >= 0 else 0
        for x, y in _corners(free, sheet.floor.width) if free else ():
            far, low = x * cell + shape.width, y * cell + shape.height
            box = max(sheet.right, far) * max(sheet.bottom, low)
            cost = (box + HOMING * far * low + shape.across_cost, y, x)
            if best is None or cost < least:
                best, least = (shape, x, y), cost
    return best


def _corners(free: int, width: int) -> Iterator[tuple[int, int]]:
    """The highest free place, leftmost in its row; and the leftmost, highest in its column."""
    first = (free & -free).bit_length() - 1
    yield first % width, first // width
    columns = _folded(free, width)
    x = (columns & -columns).bit_length() - 1
    if x < first % width:
        rows = range(first // width, free.bit_length() // width + 1)
        yield x, next(y for y in rows if free >> y * width + x & 1)


def _folded(free: int, width: int) -> int:
    """The columns in which anything is free, as one row."""
    rows = free.bit_length() // width + 1
    while rows > 1:
        half = (rows + 1) // 2
        free = free >> half * width | free & (1 << half * width) - 1
        rows = half
    return free


def _put(sheet: _Sheet, shape: Shape, x: int, y: int, cell: float) -> None:
    sheet.latest = shape, x, y
    sheet.right = max(sheet.right, x * cell + shape.width)
    sheet.bottom = max(sheet.bottom, y * cell + shape.height)


def _take_latest(sheet: _Sheet) -> None:
    if sheet.latest:
        shape, x, y = sheet.latest
        reach, rows = shape.kept_clear
        sheet.floor.take(rows, x - reach, y - reach)
        sheet.latest = None
