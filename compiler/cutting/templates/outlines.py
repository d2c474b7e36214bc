"""A draft's pieces as whole sides and corners, and which corner of a neighbour lies at a corner's seam.

Inches; places are complex numbers (see geometry.stroke).
"""

from __future__ import annotations

from collections.abc import Sequence
from math import pi
from typing import Final, NamedTuple

from ...drafting.model import Piece
from ...drafting.whole_sides import WholeSide, whole_sides
from ...geometry.stroke import turn_between
from ...measure.tolerance import NEAR, ONE_WAY

SHARP: Final = pi / 2 - ONE_WAY
"""Radians. Points sharper than this are trimmed; a right angle with a float's rounding is not."""


CornerKey = tuple[int, int, int]
"""A corner by its piece's number, its ring (0 the outer) and the index of the side that starts there."""


class Corner(NamedTuple):
    """A piece's corner between two sides. Of the pairs, the first is for the side before it."""

    at: complex
    before: WholeSide
    after: WholeSide
    turned: float  # radians that the outline turns clockwise here
    ways_in: tuple[complex, complex]  # unit vectors from the corner along each side
    across: tuple[complex, complex]  # from the corner straight across each side's allowance

    @property
    def angle(self) -> float:
        """Radians of cloth at the corner: over pi at an inner corner."""
        return pi - self.turned

    @property
    def opens(self) -> complex:
        """The ways in, summed: two corners of one piece at one place never open alike."""
        return self.ways_in[0] + self.ways_in[1]

    @property
    def sharp(self) -> bool:
        """Whether the corner is pointed enough to be trimmed."""
        return self.angle < SHARP

    def side(self, after: bool) -> WholeSide:
        """The side after the corner, or the one before it."""
        return self.after if after else self.before

    def into(self, after: bool) -> complex:
        """The unit vector from the corner along the side after it or before it."""
        return self.ways_in[after]

    def aside(self, after: bool) -> complex:
        """From the corner straight across the allowance to the cut line of the side after or before it."""
        return self.across[after]


def corner_between(before: WholeSide, after: WholeSide) -> Corner:
    """The corner where one side leads into the next."""
    arriving, leaving = before.stroke.direction(1), after.stroke.direction(0)
    return Corner(
        after.stroke.start,
        before,
        after,
        turn_between(before.stroke, after.stroke),
        (-arriving, leaving),
        (arriving * -1j * before.allowance, leaving * -1j * after.allowance),
    )


class Outlines:
    """Whole sides and corners of a draft's pieces, found once each and kept."""

    def __init__(self, pieces: Sequence[Piece]) -> None:
        self.pieces = pieces
        self._rings: dict[int, tuple[tuple[WholeSide, ...], ...]] = {}
        self._corners: dict[CornerKey, Corner] = {}

    def rings(self, number: int) -> tuple[tuple[WholeSide, ...], ...]:
        """The whole sides of a piece: the outer ring, then its holes."""
        kept = self._rings.get(number)
        if kept is None:
            piece = self.pieces[number - 1]
            kept = tuple(whole_sides(ring) for ring in (piece.ring, *piece.holes))
            self._rings[number] = kept
        return kept

    def corner(self, key: CornerKey) -> Corner | None:
        """The corner where a side starts; None on a circle, which has none."""
        kept = self._corners.get(key)
        if kept is None:
            number, ring, at = key
            sides = self.rings(number)[ring]
            if len(sides) == 1 and abs(sides[0].stroke.end - sides[0].stroke.start) <= NEAR:
                return None
            kept = corner_between(sides[at - 1], sides[at])
            self._corners[key] = kept
        return kept

    def nearest_corner(self, number: int, place: complex, opens: complex) -> CornerKey:
        """The piece's corner nearest to a place; of those at one place, where the outline touches itself, the
        one that opens most nearly so."""
        away = [
            (abs(side.stroke.start - place), (number, ring, at))
            for ring, sides in enumerate(self.rings(number))
            for at, side in enumerate(sides)
        ]
        nearest, key = min(away)
        there = [each for distance, each in away if distance <= nearest + NEAR]
        return key if len(there) == 1 else min(there, key=lambda each: self._opens_otherwise(each, opens))

    def _opens_otherwise(self, key: CornerKey, opens: complex) -> float:
        corner = self.corner(key)
        assert corner is not None, "a circle has no place that it shares with a corner"
        return abs(corner.opens - opens)

    def neighbour(self, corner: Corner, after: bool) -> CornerKey | None:
        """The neighbour's corner at the end of the seam; None where it runs on or there is none."""
        number = (corner.after.parts[0] if after else corner.before.parts[-1]).neighbour
        if number is None:
            return None
        along = corner.into(after)
        for ring, sides in enumerate(self.rings(number)):
            for at, side in enumerate(sides):
                if abs(side.stroke.start - corner.at) > 2 * NEAR:
                    continue
                theirs = self.corner((number, ring, at))
                if theirs is not None and abs(theirs.into(not after) - along) < ONE_WAY:
                    return number, ring, at
        return None
