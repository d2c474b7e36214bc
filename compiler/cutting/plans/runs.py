r"""Templates and slanted pieces laid head to tail along a strip: each as near the last as their outlines
allow.

   /\  ----/\  ----      every other one is turned half round where the print lets it be, or paired with its
  /  \ \  /  \ \  /      mirror image, whichever takes less cloth; several rows in one strip where they reach
 /____\ \/____\ \/       into each other (see interlocked)
Inches; places are complex numbers, outlines start at 0, 0.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final, NamedTuple

from ...geometry.pose import Pose
from ...measure.record import record
from ...measure.tolerance import NEAR
from .poses import Shapes

HALF_ROUND: Final = 180.0

Counts = tuple[int, int]
"""How many pieces of the first sort, and of the second."""

Sorts = tuple[tuple[Pose, ...], tuple[Pose, ...]]
"""The poses that the pieces of either sort may lie in. Sorts are the two hands of a shape; where a print has
one way up and pieces lie half round, those."""


@record
class Laid:
    """A piece in a run: its pose, and how far along and down the run its box starts."""

    pose: Pose
    left: float
    down: float = 0.0


@record
class Run:
    """Pieces along one strip, `length` by `thick` inches in all."""

    laid: tuple[Laid, ...]
    sizes: tuple[tuple[float, float], ...]  # width and height of each piece's box
    length: float
    thick: float


class Loop(NamedTuple):
    """Poses laid over and over, and how many pieces lie so."""

    poses: tuple[Pose, ...]
    many: int
    second: tuple[bool, ...]  # of each pose, whether it is of the second sort

    @property
    def counts(self) -> Counts:
        """How many of each sort; pairs are of both."""
        each = self.many // 2 if len(set(self.second)) == 2 else self.many
        return (0 if all(self.second) else each, each if any(self.second) else 0)


def run_of(laid: Sequence[Laid], shapes: Shapes) -> Run:
    """The run that holds those pieces."""
    sizes = tuple(shapes.sizes[each.pose] for each in laid)
    return Run(
        tuple(laid),
        sizes,
        max(each.left + wide for each, (wide, _) in zip(laid, sizes, strict=True)),
        max(each.down + high for each, (_, high) in zip(laid, sizes, strict=True)),
    )


def slices_of(run: Run, few: int) -> list[Run]:
    """A single row as rows of so many pieces, each as near the last as before."""
    parts = []
    for first in range(0, len(run.laid), few):
        part = run.laid[first : first + few]
        laid = tuple(replace(each, left=each.left - part[0].left) for each in part)
        sizes = run.sizes[first : first + few]
        parts.append(Run(laid, sizes, laid[-1].left + sizes[-1][0], run.thick))
    return parts


def cloth_in(runs: Sequence[Run]) -> float:
    """Square inches of the runs' boxes."""
    return sum(run.length * run.thick for run in runs)


def hands(start: float) -> Sorts:
    """The poses of pieces as drawn, and of reversed ones: as they are, and half round."""
    plain, back = ((Pose(start, reverse), Pose(start + HALF_ROUND, reverse)) for reverse in (False, True))
    return plain, back


def ends(start: float, reverse: bool) -> Sorts:
    """The poses of pieces of one hand that lie one end up, and of those that lie the other end up."""
    return (Pose(start, reverse),), (Pose(start + HALF_ROUND, reverse),)


def single_rows(shapes: Shapes, counts: Counts, sorts: Sorts, width: float) -> tuple[Run, ...]:
    """The pieces in single rows no longer than `width`."""
    runs: list[Run] = []
    laid: list[Laid] = []
    for loop in loops_of(shapes, counts, sorts):
        for at in range(loop.many):
            pose = loop.poses[at % len(loop.poses)]
            left = laid[-1].left + shapes.gap(laid[-1].pose, pose) if laid else 0.0
            if laid and left + shapes.sizes[pose][0] > width + NEAR:
                runs.append(run_of(laid, shapes))
                laid, left = [], 0.0
            laid.append(Laid(pose, left))
    return (*runs, run_of(laid, shapes)) if laid else ()


def length_of(shapes: Shapes, poses: Sequence[Pose]) -> float:
    """Inches along the row from one turn of a loop to the next."""
    return sum(shapes.gap(one, two) for one, two in pairwise((*poses, poses[0])))


def loops_of(shapes: Shapes, counts: Counts, sorts: Sorts) -> list[Loop]:
    """The poses in the order they are laid: pairs of both sorts while both last, if that is nearer than each
    sort by itself; then the rest of each sort."""
    first, second = counts

    def each(*poses: Pose) -> float:
        return length_of(shapes, poses) / len(poses)

    def own(sort: int) -> tuple[Pose, ...]:
        start, *others = sorts[sort]
        ways = [(start,), *((start, other) for other in others)]
        return min(ways, key=lambda way: each(*way))

    loops: list[Loop] = []
    if first and second:
        pairs = [(sorts[0][0], other) for other in sorts[1]]
        pair = min(pairs, key=lambda both: each(*both))
        if 2 * each(*pair) < each(*own(0)) + each(*own(1)) - NEAR:
            both = min(first, second)
            loops.append(Loop(pair, 2 * both, (False, True)))
            first, second = first - both, second - both
    for sort, count in ((0, first), (1, second)):
        if count:
            poses = own(sort)
            loops.append(Loop(poses, count, (bool(sort),) * len(poses)))
    return loops
