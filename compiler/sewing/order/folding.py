"""Which pieces can be sewn on one paper, and in what order.

A piece is added along one straight line, on which the paper is then folded back to trim: so all that was
sewn before lies on one side of that line. Taken the other way, a piece that may come last may still come
last after any other is taken away; so taking pieces off one by one finds an order wherever there is one.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final, NamedTuple

from ...geometry.stroke import Stroke
from ...measure.tolerance import BESIDE_FOLD
from .runs import joined
from .seam_graph import SeamGraph

ROUND: Final = 3  # pieces that make a round; the two ends of a row do not


class Added(NamedTuple):
    """A piece (from 0), and the line that it is sewn along to all before it; the first has none."""

    piece: int
    line: Stroke | None


class Papers:
    """A draft's graph with what folding wants to know of each piece."""

    def __init__(self, graph: SeamGraph) -> None:
        self.graph = graph
        self.corners = [
            [
                stroke.at(share)
                for ring in rings
                for half in ring
                for stroke in (graph.directed(half),)
                for share in _shares(stroke)
            ]
            for rings in graph.rings
        ]

    def order(self, pieces: Iterable[int]) -> list[Added] | None:
        """An order in which the pieces go on one paper; None where there is none.

        Last comes what has the fewest neighbours; of those the highest number. Where several have as few,
        and can all come last, they come one after another: the four corners of a square in a square, a
        round of a pineapple. Of the first two the one in the middle comes first: the heart of a log cabin,
        the goose before its skies.
        """
        left = set(pieces)
        beside = {piece: self._beside(piece, left) for piece in sorted(left)}
        open_sides = {piece: len(others) for piece, others in beside.items()}
        taken: list[Added] = []
        while len(left) > 1:
            ranked = sorted(left, key=lambda each: (open_sides[each], -each))
            if len(left) == 2 and self._is_middle(ranked[0], ranked[1], beside):
                ranked.reverse()
            last = self._last_round(ranked, left, open_sides)
            if not last:
                return None
            for piece in last:
                line = self.line_between(piece, left - {piece})
                assert line is not None, "what may come last still may when others are taken away"
                taken.append(Added(piece, line))
                left.remove(piece)
                for other in beside[piece]:
                    open_sides[other] -= 1
        return [Added(min(left), None), *reversed(taken)]

    def _last_round(self, ranked: Sequence[int], left: set[int], open_sides: dict[int, int]) -> list[int]:
        """The pieces that come last together, from the last: a round of `ROUND` or more, else one alone."""
        last: list[int] = []
        for piece in ranked:
            if last and open_sides[piece] > open_sides[last[0]]:
                break
            if self.line_between(piece, left - {piece}) is not None:
                last.append(piece)
        return last if ROUND <= len(last) < len(left) else last[:1]

    def _is_middle(self, one: int, two: int, beside: dict[int, set[int]]) -> bool:
        """Whether the first of two is the middle of a section: it has clearly more neighbours, else more
        cloth, else, with others all round, a fabric that no other piece has."""
        more = len(beside[one]) - len(beside[two])
        if abs(more) > 1:
            return more > 0
        larger = float(self.graph.pieces[one].area) - float(self.graph.pieces[two].area)
        if abs(larger) > BESIDE_FOLD:
            return larger > 0
        surrounded = min(len(beside[one]), len(beside[two])) >= ROUND
        return surrounded and self._alone(one, beside) and not self._alone(two, beside)

    def _alone(self, piece: int, beside: dict[int, set[int]]) -> bool:
        """Whether no other piece of the section is of its fabric."""
        fabric = self.graph.pieces[piece].fabric
        return sum(self.graph.pieces[other].fabric == fabric for other in beside) == 1

    def _beside(self, piece: int, others: set[int]) -> set[int]:
        return {
            other
            for ring in self.graph.rings[piece]
            for half in ring
            if (other := self.graph.beyond(half // 2, piece)) in others
        }

    def line_between(self, piece: int, others: set[int]) -> Stroke | None:
        """The straight line on which a piece meets all of the others, if they lie on one side of it."""
        shared = self.shared(piece, others)
        if len(shared) != 1 or shared[0].center is not None:
            return None
        along = shared[0].direction(0)
        for other in others:
            for corner in self.corners[other]:
                if ((corner - shared[0].start) / along).imag > BESIDE_FOLD:
                    return None
        return shared[0]

    def shared(self, piece: int, others: set[int]) -> list[Stroke]:
        """The runs along which a piece meets others, with the piece on the right."""
        found: list[Stroke] = []
        for ring in self.graph.rings[piece]:
            mine = [self.graph.beyond(half // 2, piece) in others for half in ring]
            start = next((at for at, each in enumerate(mine) if not each), 0)
            paths: list[list[Stroke]] = [[]]
            for half, each in zip(
                (*ring[start:], *ring[:start]), (*mine[start:], *mine[:start]), strict=True
            ):
                if each:
                    paths[-1].append(self.graph.directed(half))
                elif paths[-1]:
                    paths.append([])
            found += [run for path in paths for run in joined(path)]
        return found


def _shares(stroke: Stroke) -> Sequence[float]:
    """Where along a stroke places are taken that may reach over a line: its start; of an arc more."""
    return (0.0,) if stroke.center is None else (0.0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875)
