"""Where in a block a place is, and how far outside it."""

from __future__ import annotations

from ..geometry.edge import Point
from ..measure.marks import nearest_mark
from ..measure.tolerance import Number
from .numbers import reads_exactly
from .say import Say


def at_place(say: Say, place: Point) -> str:
    """Where a place is, as a ruler reads it: to the nearest mark where it lies on none."""
    return f"{_mark(say, place.x)} across, {_mark(say, place.y)} down"


def _mark(say: Say, length: Number) -> str:
    exact = say.unit != "in" or reads_exactly(length)
    return say.length(length) if exact else f"about {say.length(nearest_mark(length))}"


def outside_by(say: Say, place: Point, width: Number, height: Number) -> str:
    """Which side of a block of that size a place lies off, and how far."""
    off = {
        "at the left": -place.x,
        "at the top": -place.y,
        "at the right": place.x - width,
        "at the bottom": place.y - height,
    }
    side = max(off, key=lambda each: float(off[each]))
    return f"{side} by {say.length(off[side])}" if off[side] > 0 else f"at {at_place(say, place)}"


def cell_place(column: int, row: int) -> str:
    """Which cell of a set, both counted from 0: `row 2, number 1`."""
    return f"row {row + 1}, number {column + 1}"
