"""How a block is drafted on paper: on which ruling of graph paper it lies, or by ruler and compass.

Places are complex numbers in inches, x right and y down from the block's top left.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import sqrt
from typing import Final

from ....drafting.model import Draft, Edge
from ....drafting.stroke import place_of
from ....measure.tolerance import Number
from ...arrange.block_drawing import column_name
from ...quilts.words import about

HEXAGON: Final = sqrt(3) / 2
"""Width over height of a block of triangles or hexagons: the height of a triangle of even sides."""

SAME: Final = 1e-5  # inches between two places that are one
RULINGS: Final = ((Fraction(1, 4), "quarter-inch"), (Fraction(1, 8), "eighth-inch"))
"""Rulings of graph paper that are sold, the coarser first."""


@dataclass(frozen=True, slots=True)
class Ruling:
    """A ruling of graph paper: inches between lines, and its name."""

    step: Fraction
    name: str


def ruling_of(draft: Draft) -> Ruling | None:
    """The coarsest ruling on which every corner lies, and every centre of an arc; None where there is
    none."""
    places = vertices(draft)
    for step, name in RULINGS:
        if all(on_ruling(value, step) for place in places for value in (place.real, place.imag)):
            return Ruling(step, name)
    return None


def on_ruling(value: Number, step: Fraction) -> bool:
    times = float(value) / float(step)
    return abs(times - round(times)) * float(step) <= SAME


def vertices(draft: Draft) -> list[complex]:
    """Every corner and every arc's centre, each once, in reading order of the pieces."""
    seen: dict[tuple[float, float], complex] = {}
    for edge in edges_of(draft):
        points = [edge.start, edge.end] + ([edge.arc.center] if edge.arc else [])
        for place in map(place_of, points):
            seen.setdefault(place_key(place), place)
    return list(seen.values())


def edges_of(draft: Draft) -> Iterator[Edge]:
    """Every edge of every piece; a seam comes twice."""
    for piece in draft.pieces:
        for ring in (piece.ring, *piece.holes):
            for side in ring:
                yield from (part.edge for part in side.parts)


def place_key(place: complex) -> tuple[float, float]:
    return round(place.real, 4) + 0.0, round(place.imag, 4) + 0.0


# ---- the block's own points ------------------------------------------------------------------------


def corners_of(draft: Draft) -> tuple[complex, ...]:
    wide, tall = float(draft.width), float(draft.height)
    return 0j, complex(wide, 0), complex(wide, tall), complex(0, tall)


def start_points(draft: Draft) -> Iterator[tuple[str, complex]]:
    """Corners, centre and middles, then the crossings of the block's grid, by their names on the drawing."""
    last_column, last_row = column_name(len(draft.rules_across) - 1), str(len(draft.rules_down))
    names = ("A1", f"{last_column}1", f"{last_column}{last_row}", f"A{last_row}")
    corners = corners_of(draft)
    yield from zip(names, corners, strict=True)
    wide, tall = float(draft.width), float(draft.height)
    seen = {place_key(place) for place in corners}
    middles = {
        "center": (wide / 2, tall / 2),
        "top": (wide / 2, 0),
        "right": (wide, tall / 2),
        "bottom": (wide / 2, tall),
        "left": (0, tall / 2),
    }
    grid = {
        f"{column_name(across)}{down + 1}": (float(x), float(y))
        for across, x in enumerate(draft.rules_across)
        for down, y in enumerate(draft.rules_down)
    }
    for name, (x, y) in (*middles.items(), *grid.items()):
        place = complex(x, y)
        if place_key(place) not in seen:
            seen.add(place_key(place))
            yield name, place


def ground_words(draft: Draft) -> Iterator[str]:
    """The outline, its middles, and the grid where it has one."""
    wide, tall = about(draft.width), about(draft.height)
    size = f"a square of {wide}" if wide == tall else f"a rectangle of {wide} x {tall}"
    if abs(float(draft.width) - float(draft.height) * HEXAGON) < SAME:
        yield (
            f"Draw an upright line {tall} long. Open the compass to its length and strike an arc from each "
            f"end: they cross {wide} to the right, which is the width of the block."
        )
    yield f"Draw {size} with a sharp pencil, its corners true. Draw its diagonals: they cross in the center."
    across, down = len(draft.rules_across) - 1, len(draft.rules_down) - 1
    if max(across, down) > 1:
        parts = f"{across} equal parts" if across == down else f"{across} equal parts across and {down} down"
        yield (
            f"Divide the sides into {parts}: lay the ruler aslant from side to side so that it shows a "
            "number of inches that divides evenly, mark it, and draw lines through the marks. Columns are "
            "lettered from the left, rows numbered from the top."
        )
