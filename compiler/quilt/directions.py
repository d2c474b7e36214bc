r"""Pieces of a print with a direction to needs: grouped by how they lie in the finished quilt.

    ┌───┬───┐     All pieces of one template and fabric, each with the turn that carries the template onto it.
    │↑／│＼↑│     Those that lie the same way are one need; so are those that come out of the same boxes or
    ├───┼───┤     strips as the cutter cuts them: triangles of a square whichever corner they fill, other
    │↑＼│／↑│     shapes turned half round or mirrored. The need's outline lies as the first piece lies.
    └───┴───┘
Degrees clockwise; a mirrored piece is mirrored left and right first, and then turned.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Final, NamedTuple

from ..cutting.methods.prints import figure_merges
from ..cutting.methods.recognise import recognise
from ..cutting.needs import Way
from ..drafting.congruence import figure_of, mirrored, turns_onto
from ..drafting.model import Piece
from ..geometry.edge import Edge, Point
from ..geometry.motion import turn_about
from ..geometry.pose import Pose
from ..measure.angle import whole_degrees
from ..measure.tolerance import WHOLE_DEGREE

ORIGIN: Final = Point(Fraction(0), Fraction(0))


class Bunch(NamedTuple):
    """Pieces that are cut together: their outline as the first of them lies, how far that is turned, and how
    all of them lie beside it."""

    outline: tuple[Edge, ...]
    drawn: float
    ways: tuple[Way, ...]

    @property
    def counts(self) -> tuple[int, int]:
        """How many as drawn, and how many mirror-wise."""
        back = sum(way.count for way in self.ways if way.reversed)
        return sum(way.count for way in self.ways) - back, back


def bunches(piece: Piece, lying: Mapping[Pose, int], striped: bool) -> Iterator[Bunch]:
    """The pieces of one shape, so many of each way of lying, in bunches. `piece` is the first of the shape.
    `striped`: half round is no other way."""
    shape = _Shape(piece, striped)
    groups: list[tuple[float, dict[tuple[int, bool], int]]] = []
    for way, count in lying.items():
        turned, back = shape.plain(way)
        for drawn, ways in groups:
            quarters = shape.quarters(turned, back, drawn)
            if quarters is not None:
                ways[quarters, back] = ways.get((quarters, back), 0) + count
                break
        else:
            groups.append(((-turned if back else turned) % 360, {(0, back): count}))
    for drawn, ways in groups:
        yield Bunch(
            shape.lying(drawn),
            drawn,
            tuple(Way(turned, back, count) for (turned, back), count in sorted(ways.items())),
        )


class _Shape:
    """A shape, and the turns that lay it upon itself."""

    def __init__(self, piece: Piece, striped: bool) -> None:
        figure = figure_of(piece)
        self.piece = piece
        self.onto = tuple(turns_onto(figure, figure))
        self.over = next(turns_onto(mirrored(figure), figure), None)  # None: it has no line to be mirrored in
        self.half = 180 if striped else 360

    def plain(self, way: Pose) -> Pose:
        """The same lie without mirroring, where the shape's own mirror line makes that possible."""
        if way.reversed and self.over is not None:
            return Pose(way.turned - self.over)
        return way

    def lying(self, drawn: float) -> tuple[Edge, ...]:
        """The shape's outline, so far turned; exact by whole degrees."""
        turn = turn_about(ORIGIN, whole_degrees(drawn, WHOLE_DEGREE))
        return tuple(turn.edge(side.edge) for side in self.piece.ring)

    def quarters(self, turned: float, back: bool, drawn: float) -> int | None:
        """By how many degrees a piece is turned from an outline that is `drawn` so far, if that is cut from
        the same boxes or strips; None where it is not."""
        steps = {0, 180} if not self._merges(drawn) else {0, 90, 180, 270}
        fits: list[int] = []
        for again in self.onto:
            off = (turned - again + (drawn if back else -drawn)) % self.half
            near = round(off / 90) * 90
            if abs(off - near) <= WHOLE_DEGREE and near % self.half in steps:
                fits.append(near % self.half)
        return min(fits, default=None)

    def _merges(self, drawn: float) -> bool:
        if self.piece.holes:
            return False
        return figure_merges(recognise(self.lying(drawn), [side.allowance for side in self.piece.ring]))
