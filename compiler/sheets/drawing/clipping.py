"""The part of a path that lies in an upright box: exact, so that what is left measures as before.

In: a path's segments, and a box. Out: segments again. Straight lines and Béziers are cut where they cross the
box's sides; nothing is flattened. Points; x right, y down.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Final, NamedTuple

from ...measure.tolerance import AT_END, ON_SIDE
from ..page import Segment

Spot = tuple[float, float]


HALVINGS: Final = 60  # of a stretch that crosses once: to the last figure of a float


class Box(NamedTuple):
    """Left, top, right and bottom, in points."""

    left: float
    top: float
    right: float
    bottom: float

    def holds(self, spot: Spot) -> bool:
        """Whether the spot lies in the box or on its sides."""
        across = self.left - ON_SIDE <= spot[0] <= self.right + ON_SIDE
        return across and self.top - ON_SIDE <= spot[1] <= self.bottom + ON_SIDE


Piece = tuple[Spot, ...]
"""A straight piece, two spots, or a Bézier, four."""


def clip_path(path: tuple[Segment, ...], box: Box) -> tuple[Segment, ...]:
    """What of the path's line lies in the box, in its own order; the path itself where all of it does."""
    runs: list[list[Piece]] = []
    whole = True
    for pieces, closed in subpaths(path):
        kept, all_kept = _kept_runs(pieces, box)
        whole = whole and all_kept
        if closed and not all_kept and len(kept) > 1 and kept[-1][-1][-1] == kept[0][0][0]:
            kept = [kept[-1] + kept[0], *kept[1:-1]]  # the ring's first corner is a corner still
        runs.extend(kept)
    return path if whole else tuple(segment for run in runs for segment in _segments(run))


def subpaths(path: tuple[Segment, ...]) -> Iterator[tuple[list[Piece], bool]]:
    """The pieces of each subpath, and whether it is closed; the closing side is a piece of its own."""
    pieces: list[Piece] = []
    start = here = (0.0, 0.0)
    for segment in path:
        match segment:
            case ("M", x, y):
                if pieces:
                    yield pieces, False
                pieces, start, here = [], (x, y), (x, y)
            case ("L", x, y):
                pieces.append((here, (x, y)))
                here = (x, y)
            case ("C", x1, y1, x2, y2, x, y):
                pieces.append((here, (x1, y1), (x2, y2), (x, y)))
                here = (x, y)
            case ("Z",):
                if here != start:
                    pieces.append((here, start))
                yield pieces, True
                pieces, here = [], start
    if pieces:
        yield pieces, False


def _kept_runs(pieces: list[Piece], box: Box) -> tuple[list[list[Piece]], bool]:
    """Unbroken runs of what lies in the box, and whether nothing was cut away."""
    runs: list[list[Piece]] = []
    all_kept, joined = True, False
    for piece in pieces:
        for part in _parts(piece, box):
            if not box.holds(at(part, 0.5)):
                all_kept = joined = False
            elif joined:
                runs[-1].append(part)
            else:
                runs.append([part])
                joined = True
    return runs, all_kept


def _parts(piece: Piece, box: Box) -> Iterator[Piece]:
    """The piece, cut wherever it crosses a line that one of the box's sides lies on."""
    if all(box.left < x < box.right and box.top < y < box.bottom for x, y in piece):
        yield piece
        return
    cuts = {0.0, 1.0}
    for axis, lines in ((0, (box.left, box.right)), (1, (box.top, box.bottom))):
        for line in lines:
            cuts.update(_crossings([spot[axis] - line for spot in piece]))
    for first, last in pairwise(sorted(cuts)):
        yield piece if (first, last) == (0.0, 1.0) else _between(piece, first, last)


def _crossings(heights: list[float]) -> Iterator[float]:
    """Where along a piece, whose heights over a line are given, it crosses the line, ends left out."""
    turns = [0.0, *_turning_points(heights), 1.0]
    for first, last in pairwise(turns):
        low, high = _height(heights, first), _height(heights, last)
        if (low < 0) == (high < 0):
            continue
        for _ in range(HALVINGS):
            middle = (first + last) / 2
            if (_height(heights, middle) < 0) == (low < 0):
                first = middle
            else:
                last = middle
        if AT_END < first < 1 - AT_END:
            yield first


def _turning_points(heights: list[float]) -> list[float]:
    """Where a Bézier's height stops rising or falling: the roots of its derivative, a square equation."""
    if len(heights) == 2:
        return []
    a, b, c, d = heights
    square, linear, constant = d - 3 * c + 3 * b - a, 2 * (c - 2 * b + a), b - a
    if abs(square) < AT_END:
        roots = [-constant / linear] if linear else []
    else:
        under = linear * linear - 4 * square * constant
        roots = [(-linear + sign * under**0.5) / (2 * square) for sign in (-1, 1)] if under > 0 else []
    return sorted(root for root in roots if 0 < root < 1)


def _height(heights: list[float], share: float) -> float:
    while len(heights) > 1:
        heights = [p + (q - p) * share for p, q in pairwise(heights)]
    return heights[0]


def at(piece: Piece, share: float) -> Spot:
    """The spot that share of the way along the piece (de Casteljau)."""
    return _height([x for x, _ in piece], share), _height([y for _, y in piece], share)


def _between(piece: Piece, first: float, last: float) -> Piece:
    """The part of the piece between two shares of it."""
    return _head(tuple(reversed(_head(tuple(reversed(piece)), 1 - first))), (last - first) / (1 - first))


def _head(piece: Piece, share: float) -> Piece:
    """The piece up to that share of it."""
    if share >= 1:
        return piece
    spots, head = list(piece), [piece[0]]
    while len(spots) > 1:
        spots = [(p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share) for p, q in pairwise(spots)]
        head.append(spots[0])
    return tuple(head)


def _segments(run: list[Piece]) -> Iterator[Segment]:
    yield ("M", *run[0][0])
    for piece in run:
        if len(piece) == 2:
            yield ("L", *piece[1])
        else:
            yield ("C", *piece[1], *piece[2], *piece[3])


def box_path(box: Box) -> tuple[Segment, ...]:
    """The box as a closed path."""
    left, top, right, bottom = box
    return (("M", left, top), ("L", right, top), ("L", right, bottom), ("L", left, bottom), ("Z",))
