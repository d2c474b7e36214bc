"""The seams of a whole quilt, each once, with the pieces on either side of it.

In: the sides of all pieces, those of their holes too. Two pieces share a seam by lying along one line,
wherever their corners are; so all sides on one line are cut up at all corners on it (see
geometry.collinear), and each stretch knows what lies along it. Points.

Curved sides meet curved sides with the same ends and the same middle.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot
from typing import Final, NamedTuple

from ...geometry.collinear import gaps_between
from ...geometry.curves import at_share
from ...geometry.edge import Edge
from ...measure.tolerance import OFF_MARK
from ..arrange.paths import Placement, Spot, open_path, straight
from ..page import Segment

TOGETHER: Final = 0.02
"""Points within which two corners are one, and two sides on one line: below what any printer shows."""


class Seam(NamedTuple):
    """A stretch of seam, and the numbers of the pieces along it: two, or one at the quilt's edge."""

    path: tuple[Segment, ...]
    pieces: tuple[int, ...]


class Line(NamedTuple):
    """A straight line by its direction and its distance from the page's corner, rounded."""

    dx: float
    dy: float
    off: float


class Side(NamedTuple):
    """From where to where along its line a piece lies, in points."""

    start: float
    end: float
    piece: int


def seams_of(outlines: Sequence[Sequence[Edge]], placement: Placement) -> Iterator[Seam]:
    """Every stretch of every side, once. A piece's number is its place in the sequence."""
    lines: dict[Line, tuple[Line, list[Side]]] = {}
    curves: dict[tuple[Spot, ...], tuple[Edge, list[int]]] = {}
    for number, outline in enumerate(outlines):
        for edge in outline:
            first, last = placement.spots((edge.start, edge.end))
            if edge.arc is not None:
                ends = tuple(
                    sorted(Spot(round(x + OFF_MARK, 1), round(y + OFF_MARK, 1)) for x, y in (first, last))
                )
                middle = placement.spot(at_share(edge, 0.5))  # tells the halves of a circle apart
                key = (*ends, Spot(round(middle.x + OFF_MARK, 1), round(middle.y + OFF_MARK, 1)))
                curves.setdefault(key, (edge, []))[1].append(number)
                continue
            _add_side(lines, first, last, number)
    for line, sides in lines.values():
        yield from _stretches(line, sides)
    for edge, pieces in curves.values():
        yield Seam(open_path((edge,), placement), tuple(pieces))


def _add_side(lines: dict[Line, tuple[Line, list[Side]]], first: Spot, last: Spot, number: int) -> None:
    length = hypot(last.x - first.x, last.y - first.y)
    if length < TOGETHER:
        return
    dx, dy = (last.x - first.x) / length, (last.y - first.y) / length
    if dx < -OFF_MARK or (abs(dx) <= OFF_MARK and dy < 0):
        dx, dy = -dx, -dy
    line = Line(dx, dy, first.y * dx - first.x * dy)
    key = Line(round(dx + OFF_MARK, 3), round(dy + OFF_MARK, 3), round(line.off + OFF_MARK, 1))
    along = sorted((first.x * dx + first.y * dy, last.x * dx + last.y * dy))
    lines.setdefault(key, (line, []))[1].append(Side(along[0], along[1], number))


def _stretches(line: Line, sides: Sequence[Side]) -> Iterator[Seam]:
    """The line cut up at every corner on it."""
    stops, covered = gaps_between([(side.start, side.end) for side in sides], TOGETHER)
    beside: list[list[int]] = [[] for _ in stops]
    for side, gaps in zip(sides, covered, strict=True):
        for at in gaps:
            beside[at].append(side.piece)
    for at, pieces in enumerate(beside):
        if pieces:
            yield Seam(straight(_place(line, stops[at]), _place(line, stops[at + 1])), tuple(pieces))


def _place(line: Line, along: float) -> Spot:
    """The place so far along the line."""
    return Spot(line.dx * along - line.dy * line.off, line.dy * along + line.dx * line.off)
