"""Outlines laid upon each other: the turns that carry one figure onto another.

A figure is a piece's outline about its own middle, as complex numbers (see stroke). Two figures match where
every corner, every middle of a side, and the allowance of every side meet.
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Iterator, Sequence
from math import degrees
from typing import NamedTuple

from ..geometry.pose import turning
from ..measure.tolerance import CONGRUENT, WHOLE_DEGREE
from .model import Piece
from .whole_sides import WholeSide, whole_sides


class FigureCorner(NamedTuple):
    """A corner about the figure's middle, with the side that starts there. A whole circle is one corner, at
    its centre, with its radius in `circle`."""

    at: complex
    middle: complex
    allowance: float
    circle: float = 0.0


Ring = tuple[FigureCorner, ...]


class Figure(NamedTuple):
    """A piece's outline about its own middle: the outer ring first, then its holes."""

    origin: complex  # the mean of the outer ring's corners and side middles, in the block
    rings: tuple[Ring, ...]

    @property
    def landmarks(self) -> list[complex]:
        """Places that any match must carry to places of the other figure's landmarks."""
        outer = self.rings[0]
        if not outer[0].circle:
            return [corner.at for corner in outer]
        return [corner.at for ring in self.rings[1:] for corner in ring]


def figure_of(piece: Piece) -> Figure:
    """The piece's outline about its own middle."""
    outer = whole_sides(piece.ring)
    origin = middle_of(outer)
    rings = (_ring(outer), *(_ring(whole_sides(hole)) for hole in piece.holes))
    return Figure(origin, tuple(_moved(ring, -origin) for ring in rings))


def middle_of(outer: Sequence[WholeSide]) -> complex:
    """The mean of the outer ring's corners and side middles; the centre of a circle."""
    ring = _ring(outer)
    return sum((corner.at + corner.middle for corner in ring), 0j) / (2 * len(ring))


def _ring(sides: Sequence[WholeSide]) -> Ring:
    if len(sides) == 1 and sides[0].stroke.center is not None:
        stroke = sides[0].stroke
        assert stroke.center is not None
        return (FigureCorner(stroke.center, stroke.center, sides[0].allowance, stroke.radius),)
    return tuple(FigureCorner(side.stroke.start, side.stroke.at(0.5), side.allowance) for side in sides)


def _moved(ring: Ring, by: complex) -> Ring:
    return tuple(
        FigureCorner(corner.at + by, corner.middle + by, corner.allowance, corner.circle) for corner in ring
    )


def mirrored(figure: Figure) -> Figure:
    """The figure mirrored in the vertical line through its middle, still clockwise."""
    return Figure(figure.origin, tuple(_mirrored_ring(ring) for ring in figure.rings))


def _mirrored_ring(ring: Ring) -> Ring:
    count = len(ring)
    turned_over = []
    for at in range(count, 0, -1):
        start, side = ring[at % count], ring[at - 1]
        turned_over.append(
            FigureCorner(-start.at.conjugate(), -side.middle.conjugate(), side.allowance, side.circle)
        )
    return tuple(turned_over)


def turns_onto(one: Figure, other: Figure) -> Iterator[float]:
    """Every turn that carries the first figure onto the second: degrees clockwise in [0, 360), rising.

    A figure that any turn carries onto itself (a circle) gives 0 alone.
    """
    if [len(ring) for ring in one.rings] != [len(ring) for ring in other.rings]:
        return
    for turned in _candidate_turns(one.landmarks, other.landmarks):
        if _carried(one, other, turning(turned)):
            yield turned


def _candidate_turns(marks: Sequence[complex], others: Sequence[complex]) -> list[float]:
    """The turns that carry the landmark furthest from the middle to one as far from the other's middle."""
    pivot = max(marks, key=abs, default=0j)
    if abs(pivot) <= CONGRUENT:
        return [0.0]
    turns = [
        _tidy(degrees(phase(place / pivot))) for place in others if abs(abs(place) - abs(pivot)) <= CONGRUENT
    ]
    return sorted(dict.fromkeys(turns))


def _tidy(turned: float) -> float:
    turned %= 360
    whole = float(round(turned))
    return whole % 360 if abs(turned - whole) <= WHOLE_DEGREE else turned


def _carried(one: Figure, other: Figure, factor: complex) -> bool:
    """Whether the turn carries every ring of the first figure onto a ring of the second."""
    if not _ring_carried(one.rings[0], other.rings[0], factor):
        return False
    left = list(other.rings[1:])
    for hole in one.rings[1:]:
        match = next((ring for ring in left if _ring_carried(hole, ring, factor)), None)
        if match is None:
            return False
        left.remove(match)
    return True


def _ring_carried(ring: Ring, onto: Ring, factor: complex) -> bool:
    count = len(ring)
    if count != len(onto):
        return False
    first = ring[0].at * factor
    return any(  # a ring pinched at a place passes it twice: every corner there may be the one
        abs(onto[shift].at - first) <= CONGRUENT
        and all(_met(ring[at], onto[(at + shift) % count], factor) for at in range(count))
        for shift in range(count)
    )


def _met(corner: FigureCorner, other: FigureCorner, factor: complex) -> bool:
    return (
        abs(corner.at * factor - other.at) <= CONGRUENT
        and abs(corner.middle * factor - other.middle) <= CONGRUENT
        and corner.allowance == other.allowance
        and abs(corner.circle - other.circle) <= CONGRUENT
    )
