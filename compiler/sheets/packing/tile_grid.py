"""The grid of tiles that one large drawing takes, and what a tile is. Points; x right, y down."""

from __future__ import annotations

from math import ceil
from typing import Final

from ...measure.record import record
from ...measure.tolerance import PAGE_SLACK
from ..drawing.clipping import Box
from ..page import Mark

OVERLAP: Final = 36.0  # points, 1/2in: enough to glue


@record
class Grid:
    """Which tiles there are, and what each shows. Rows and columns are counted from 1."""

    width: float  # of the drawing
    height: float
    tile_width: float
    tile_height: float
    overlap: float

    @property
    def columns(self) -> int:
        """How many tiles lie side by side."""
        return _count(self.width, self.tile_width, self.overlap)

    @property
    def rows(self) -> int:
        """How many tiles lie one under the other."""
        return _count(self.height, self.tile_height, self.overlap)

    def box(self, row: int, column: int) -> Box:
        """What of the drawing the tile shows, overlaps and all; the last ones may reach over its edge."""
        left = (column - 1) * (self.tile_width - self.overlap)
        top = (row - 1) * (self.tile_height - self.overlap)
        return Box(left, top, left + self.tile_width, top + self.tile_height)


@record
class Tile:
    """One tile: its place in the grid, and its part of the drawing from its own top left corner."""

    row: int
    column: int
    box: Box  # what of the drawing it shows
    marks: tuple[Mark, ...]

    @property
    def name(self) -> str:
        """`1.2`: row 1, column 2."""
        return f"{self.row}.{self.column}"


def _count(length: float, tile: float, overlap: float) -> int:
    return max(1, ceil((length - overlap - PAGE_SLACK) / (tile - overlap)))


def grid_for(width: float, height: float, area: tuple[float, float], overlap: float = OVERLAP) -> Grid:
    """The tiles that a drawing of that size takes when a page has room for `area` points across and down."""
    assert min(area) > 2 * overlap, "a tile is more than its overlaps"
    return Grid(width, height, *area, overlap)
