"""On which ruling of graph paper a block lies.

Places are complex numbers in inches, x right and y down from the block's top left.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final, Literal

from ...drafting.model import Draft
from ...geometry.edge import Edge
from ...geometry.stroke import place_of
from ...measure.length import UNITS
from ...measure.record import record
from ...measure.tolerance import CRUMB, Number

RULINGS: Final = {
    "in": ((Fraction(1, 4), "quarter-inch"), (Fraction(1, 8), "eighth-inch")),
    "cm": ((UNITS["cm"], "centimetre"), (UNITS["cm"] / 2, "half-centimetre")),
}
"""Rulings of graph paper that are sold, by what a reader measures in, the coarser first."""


@record
class Ruling:
    """A ruling of graph paper: inches between lines, its name, and inches between its heavier lines."""

    step: Fraction
    name: str
    heavy: Fraction


def ruling_of(draft: Draft, unit: Literal["in", "cm"]) -> Ruling | None:
    """The coarsest ruling on which every corner lies, and every centre of an arc; None where there is
    none."""
    places = [*corners_of_pieces(draft), *arc_centers(draft)]
    for step, name in RULINGS[unit]:
        if all(_on_ruling(value, step) for place in places for value in (place.real, place.imag)):
            return Ruling(step, name, Fraction(1) if unit == "in" else UNITS["cm"])
    return None


def _on_ruling(value: Number, step: Fraction) -> bool:
    times = float(value) / float(step)
    return abs(times - round(times)) * float(step) <= CRUMB


def corners_of_pieces(draft: Draft) -> list[complex]:
    """Every corner, each once, in reading order of the pieces."""
    ends = (place_of(point) for edge in edges_of(draft) for point in (edge.start, edge.end))
    return list({place_key(place): place for place in ends}.values())


def arc_centers(draft: Draft) -> list[complex]:
    """Every arc's centre, each once."""
    centers = (place_of(edge.arc.center) for edge in edges_of(draft) if edge.arc)
    return list({place_key(place): place for place in centers}.values())


def edges_of(draft: Draft) -> Iterator[Edge]:
    """Every edge of every piece; a seam comes twice."""
    for piece in draft.pieces:
        for ring in (piece.ring, *piece.holes):
            for side in ring:
                yield from (part.edge for part in side.parts)


def place_key(place: complex) -> tuple[float, float]:
    return round(place.real, 4) + 0.0, round(place.imag, 4) + 0.0
