"""Which of a block's lines may meet, found all at once; and how often lines may meet at most.

Pairs whose boxes touch come from an index; of straight pairs those stay that meet, of pairs with a curve in
them those that may. Looked at in lots, so that no crowd of lines needs more memory than one lot.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from ..measure.tolerance import NEAR
from .curves import box_of
from .edge import Edge

CROSSINGS_MOST: Final = 20_000
"""Places of one block where two lines cross with an end of neither there: as many as a net of 140 seams each
way has, in a block of 20,000 pieces."""

CROSSINGS_ASIDE: Final = 1_000
"""The same where some lines leave the block, which is refused anyway: enough to find what else is amiss."""

TOUCHES_MOST: Final = 200_000
"""Ends that lie on another line: eight for each of 25,000 pieces."""

CURVED_MOST: Final = 200_000
"""Pairs of lines near each other of which one is curved: 20 for each of 10,000 clamshells."""

CLOSE_MOST: Final = 10_000_000
"""Pairs of lines whose boxes touch: every pair of 4,000 seams that run slantwise over the whole block."""

LOT: Final = 1_000_000
"""Pairs looked at at once, in some 200 MB."""


class TooManyMeetings(Exception):
    """Lines that meet more often than they may; `line` is the number of one that has much to do with it."""

    def __init__(self, line: int) -> None:
        self.line = line


def close_pairs(
    edges: Sequence[Edge], ends: Sequence[tuple[int, int]], most: int = CROSSINGS_MOST
) -> tuple[Any, list[tuple[int, int]]]:
    """Pairs of lines that meet: straight with straight (an array of two rows), and those with a curve. `ends`
    are the numbers of each line's end places; `most` is how many straight pairs may cross."""
    import numpy as np
    import shapely

    if not edges:
        return np.empty((2, 0), dtype=int), []
    boxes = np.array([reach(edge) for edge in edges], dtype=float)
    rectangles = shapely.box(boxes[:, 0] - NEAR, boxes[:, 1] - NEAR, boxes[:, 2] + NEAR, boxes[:, 3] + NEAR)
    index = shapely.STRtree(rectangles)
    sieve = _Sieve(edges, np.array(ends), most)
    step = max(LOT // len(edges), 1)
    for first in range(0, len(edges), step):
        pairs = index.query(rectangles[first : first + step])
        pairs[0] += first
        pairs = pairs[:, pairs[0] < pairs[1]]
        sieve.sift(pairs[:, np.lexsort((pairs[1], pairs[0]))])
    return sieve.kept()


def reach(edge: Edge) -> tuple[float, float, float, float]:
    """The box round an edge: left, top, right, bottom."""
    if edge.arc is not None:
        left, top, right, bottom = box_of((edge, Edge(edge.end, edge.start)))
        return float(left), float(top), float(right), float(bottom)
    xs, ys = (float(edge.start.x), float(edge.end.x)), (float(edge.start.y), float(edge.end.y))
    return min(xs), min(ys), max(xs), max(ys)


class _Sieve:
    """Keeps of the pairs given it those that meet, and counts."""

    def __init__(self, edges: Sequence[Edge], numbers: Any, most: int) -> None:
        import numpy as np

        self.numbers, self.most = numbers, most
        self.places = np.array([[float(v) for p in (edge.start, edge.end) for v in p] for edge in edges])
        arcs = [edge.arc for edge in edges]
        self.curved = np.array([arc is not None for arc in arcs], dtype=bool)
        self.circles = np.array(
            [
                [float(arc.center.x), float(arc.center.y), arc.radius] if arc else [0.0, 0.0, 0.0]
                for arc in arcs
            ]
        )
        self.crossings = np.zeros(len(edges), dtype=int)  # of each line
        self.close = self.touches = self.bends = 0
        self._straight: list[Any] = []
        self._curved: list[Any] = []

    def sift(self, pairs: Any) -> None:
        """Takes in one lot of pairs."""
        import numpy as np

        self.close += pairs.shape[1]
        bent = self.curved[pairs[0]] | self.curved[pairs[1]]
        straight, bends = pairs[:, ~bent], pairs[:, bent]
        crossed = crossing(self.places[straight[0]], self.places[straight[1]])
        touched = self._touching(straight)
        self.touches += int(np.count_nonzero(touched))
        np.add.at(self.crossings, straight[:, crossed], 1)
        self._straight.append(straight[:, crossed | touched])
        self._curved.append(bends[:, self._may_meet(bends)])
        self.bends += self._curved[-1].shape[1]
        if (
            self.crossings.sum() > 2 * self.most
            or self.touches > TOUCHES_MOST
            or self.bends > CURVED_MOST
            or self.close > CLOSE_MOST
        ):
            near = np.bincount(self._curved[-1].ravel(), minlength=len(self.crossings))
            raise TooManyMeetings(int(np.argmax(self.crossings + near)))

    def kept(self) -> tuple[Any, list[tuple[int, int]]]:
        """The pairs that meet, in their order."""
        import numpy as np

        curved = np.concatenate(self._curved, axis=1)
        return np.concatenate(self._straight, axis=1), [(int(a), int(b)) for a, b in curved.T]

    def _touching(self, pairs: Any) -> Any:
        """Which straight pairs have an end of one on the inside of the other."""
        import numpy as np

        touching = np.zeros(pairs.shape[1], dtype=bool)
        for one, other in ((pairs[0], pairs[1]), (pairs[1], pairs[0])):
            for end in (0, 1):
                number = self.numbers[other][:, end]
                touching |= (
                    ends_on(self.places[one], self.places[other][:, 2 * end : 2 * end + 2])
                    & (number != self.numbers[one][:, 0])
                    & (number != self.numbers[one][:, 1])
                )
        return touching

    def _may_meet(self, pairs: Any) -> Any:
        """Which pairs with a curve in them may meet: two circles that do, or a line that comes as near to a
        centre as the circle's radius and goes as far."""
        import numpy as np

        one, other = pairs
        apart = np.hypot(*(self.circles[one] - self.circles[other])[:, :2].T)
        r, s = self.circles[one][:, 2], self.circles[other][:, 2]
        both = (apart <= r + s + 2 * NEAR) & (apart >= np.abs(r - s) - 2 * NEAR)
        bent = np.where(self.curved[one], one, other)
        line = np.where(self.curved[one], other, one)
        nearest, furthest = _distances(self.places[line], self.circles[bent][:, :2])
        radius = self.circles[bent][:, 2]
        passes = (nearest <= radius + 2 * NEAR) & (furthest >= radius - 2 * NEAR)
        return np.where(self.curved[one] & self.curved[other], both, passes)


def _distances(lines: Any, centers: Any) -> tuple[Any, Any]:
    """How near each line comes to its centre, and how far from it its further end lies."""
    import numpy as np

    d, w = lines[:, 2:] - lines[:, :2], centers - lines[:, :2]
    square = np.maximum((d * d).sum(axis=1), NEAR * NEAR)
    share = np.clip((w * d).sum(axis=1) / square, 0, 1)
    nearest = np.hypot(*(w - share[:, None] * d).T)
    return nearest, np.maximum(np.hypot(*w.T), np.hypot(*(centers - lines[:, 2:]).T))


def ends_on(line: Any, p: Any) -> Any:
    """Which points lie on the inside of which lines, within NEAR."""
    import numpy as np

    d = line[:, 2:] - line[:, :2]
    w = p - line[:, :2]
    length = np.hypot(d[:, 0], d[:, 1])
    away = np.abs(w[:, 0] * d[:, 1] - w[:, 1] * d[:, 0]) / length
    ahead = (w[:, 0] * d[:, 0] + w[:, 1] * d[:, 1]) / length
    return (away <= NEAR) & (ahead > 0) & (ahead < length)


def crossing(one: Any, other: Any) -> Any:
    """Which lines cross with both their ends clear of each other."""

    def sides(line: Any, of: Any) -> tuple[Any, Any]:
        import numpy as np

        d = line[:, 2:] - line[:, :2]
        length = np.hypot(d[:, 0], d[:, 1])
        first = ((of[:, 0] - line[:, 0]) * d[:, 1] - (of[:, 1] - line[:, 1]) * d[:, 0]) / length
        second = ((of[:, 2] - line[:, 0]) * d[:, 1] - (of[:, 3] - line[:, 1]) * d[:, 0]) / length
        return first, second

    a, b = sides(one, other)
    c, d = sides(other, one)
    clear = (abs(a) > NEAR) & (abs(b) > NEAR) & (abs(c) > NEAR) & (abs(d) > NEAR)
    return clear & (a * b < 0) & (c * d < 0)
