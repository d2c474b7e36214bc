"""Straight of grain: which way each piece lies on the cloth, and the arrows a template needs for its pieces.

By rule an arrow runs along a straight side that lies on the block's outside, so that the block's edge does
not stretch (Jinny Beyer, "Quilt tip 13: cutting out pieces"); in a piece within the block it runs along its
longest side that is parallel to a side of the block, else along the block's first side. Headings are degrees
clockwise from up.
"""

from __future__ import annotations

from cmath import exp, phase
from collections.abc import Sequence
from math import degrees, radians
from typing import Final, NamedTuple

from ...drafting.model import Piece
from ...geometry.edge import Edge
from ...geometry.pose import Motion
from ...geometry.stroke import Stroke, ring_strokes, stroke_of
from ...measure.tolerance import SAME_HEADING
from ..model import GrainArrow

LENGTH_DIGITS: Final = 6
"""Decimals of an inch that sides are compared by, so that rounding doesn't choose between two equal ones."""

CROSSING: Final = 90
"""Degrees from the straight grain to the cross grain. Either serves where a piece is cut straight (common
practice, no published source), so headings a right angle apart need one arrow."""


class Grain(NamedTuple):
    """A heading, 0 <= heading < 180, and whether the piece needs just that: the writer asked for it, or a
    side on the block's outside would stretch."""

    heading: float
    firm: bool


def block_headings(outline: Sequence[Edge]) -> tuple[float, ...]:
    """The headings of the block's straight sides, each once, as grain; upright where none is."""
    headings: list[float] = []
    for edge in outline:
        if edge.arc is None:
            heading = heading_of(stroke_of(edge)) % CROSSING
            if all(_apart(heading, known) > SAME_HEADING for known in headings):
                headings.append(heading)
    return tuple(headings) or (0.0,)


def grain_of(piece: Piece, along: Sequence[float] = (0.0,)) -> Grain | None:
    """How the piece's straight grain runs, or None where it may lie anyhow. `along`: the block's sides."""
    if piece.grain == "free":
        return None
    if piece.grain is not None:
        return Grain(_tidy(float(piece.grain)), True)
    sides = zip(ring_strokes([side.edge for side in piece.ring]), piece.ring, strict=True)
    straight = [(stroke, side.outside) for stroke, side in sides if stroke.center is None]
    straight.sort(key=lambda pair: -round(pair[0].length, LENGTH_DIGITS))
    headings = [(heading_of(stroke), outside) for stroke, outside in straight]
    for heading, outside in headings:
        if outside:
            return Grain(heading, True)
    for heading, _ in headings:
        if any(_apart(heading, side) <= SAME_HEADING for side in along):
            return Grain(heading, False)
    return Grain(along[0], False)


def heading_of(stroke: Stroke) -> float:
    """The heading of a straight side, 0 <= heading < 180: an arrow has two heads."""
    along = stroke.end - stroke.start
    return _tidy(degrees(phase(along / -1j)))


def _tidy(heading: float) -> float:
    whole = round(heading)
    return float(whole % 180) if abs(heading - whole) <= SAME_HEADING / 100 else heading % 180


def _apart(one: float, other: float) -> float:
    """Degrees between two headings as grain: straight and cross grain are the same."""
    between = (one - other) % CROSSING
    return min(between, CROSSING - between)


def heading_back(carry: Motion, heading: float) -> float:
    """A member's heading as it lies in the first piece's frame, 0 <= heading < 180."""
    along = carry.direction_back(-1j * exp(1j * radians(heading)))
    return _tidy(degrees(phase(along / -1j)))


class GrainGroups:
    """The arrows of one template: each with its heading in the first piece's frame and its pieces."""

    def __init__(self, along: Sequence[float]) -> None:
        self.along = along  # the headings of the block's sides
        self.headings: list[float] = []
        self.pieces: list[list[int]] = []
        self.arrow_of: dict[int, list[int]] = {}  # by piece, the pieces of its arrow

    def place(self, piece: Piece, ways: Sequence[Motion], turned_over: Sequence[Motion]) -> None:
        """Counts the piece to an arrow that suits it in some way the template fits it; else to a new arrow.

        `ways` are the turns that fit, the one meant first: an equilateral triangle has three, and needs no
        three arrows. Ways that turn the cloth over serve only a grain that isn't firm, for all the pieces are
        cut the same side up: eight diamonds of a star are cut alike, along either of their sides.
        """
        grain = grain_of(piece, self.along)
        if grain is None:
            return
        for way in ways if grain.firm else (*ways, *turned_over):
            drawn = heading_back(way, grain.heading)
            for index, known in enumerate(self.headings):
                if _apart(drawn, known) <= SAME_HEADING:
                    self._count(piece, self.pieces[index])
                    return
        self.headings.append(heading_back(ways[0], grain.heading))
        self.pieces.append([])
        self._count(piece, self.pieces[-1])

    def place_like(self, piece: Piece, other: Piece) -> None:
        """Counts the piece to the arrow of another that lies alike."""
        if other.number in self.arrow_of:
            self._count(piece, self.arrow_of[other.number])

    def _count(self, piece: Piece, arrow: list[int]) -> None:
        arrow.append(piece.number)
        self.arrow_of[piece.number] = arrow

    def arrows(self) -> tuple[GrainArrow, ...]:
        """The arrows, in order of their first piece."""
        pairs = zip(self.headings, self.pieces, strict=True)
        return tuple(GrainArrow(heading, tuple(pieces)) for heading, pieces in pairs)
