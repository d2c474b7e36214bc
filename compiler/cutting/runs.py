r"""Templates and slanted pieces laid head to tail along a strip: each as near the last as their outlines
allow.

   /\  ----/\  ----      every other one is turned half round where the print lets it be, or paired with its
  /  \ \  /  \ \  /      mirror image, whichever takes less cloth
 /____\ \/____\ \/
Inches; places are complex numbers, outlines start at 0, 0.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from ..measure.tolerance import NEAR
from .method import box_of, to_corner

Outline = tuple[complex, ...]

HALF_ROUND: Final = 180.0


@dataclass(frozen=True, slots=True)
class Pose:
    """One way of laying a piece: degrees turned clockwise, after mirroring left and right if `reversed`."""

    turned: float
    reversed: bool


@dataclass(frozen=True, slots=True)
class Laid:
    """A piece in a run: its pose, and how far along the run its box starts."""

    pose: Pose
    left: float


@dataclass(frozen=True, slots=True)
class Run:
    """Pieces along one strip, `length` by `thick` inches in all."""

    laid: tuple[Laid, ...]
    sizes: tuple[tuple[float, float], ...]  # width and height of each piece's box
    length: float
    thick: float


def posed(outline: Sequence[complex], pose: Pose) -> Outline:
    """The outline as it lies in a pose, its box at 0, 0."""
    places = [complex(-place.real, place.imag) for place in outline] if pose.reversed else list(outline)
    quarter = (1, 1j, -1, -1j)[round(pose.turned / 90) % 4]
    return to_corner([place * quarter for place in places])


def pitch(one: Outline, two: Outline) -> float:
    """How far after the first's left the second may start."""
    levels = sorted({place.imag for place in (*one, *two)})
    return max(reach_right(one, y) - reach_left(two, y) for y in levels)


def reach_right(outline: Outline, y: float) -> float:
    """The furthest right that an outline reaches at a height."""
    return max(_crossings(outline, y), default=0.0)


def reach_left(outline: Outline, y: float) -> float:
    """The furthest left that an outline reaches at a height."""
    return min(_crossings(outline, y), default=0.0)


def _crossings(outline: Outline, y: float) -> list[float]:
    found = []
    for one, two in zip(outline, (*outline[1:], outline[0]), strict=True):
        low, high = sorted((one.imag, two.imag))
        if low - NEAR <= y <= high + NEAR:
            if high - low <= NEAR:
                found += [one.real, two.real]
            else:
                share = (y - one.imag) / (two.imag - one.imag)
                found.append(one.real + (two.real - one.real) * min(1.0, max(0.0, share)))
    return found


def lay_runs(outline: Sequence[complex], plain: int, back: int, width: float, *, turnable: bool, one_way: bool
             ) -> tuple[Run, ...]:
    """The pieces in runs no longer than `width`, the way that takes the least cloth; none where one is too
    long.

    `turnable`: the piece may lie across the grain. `one_way`: none may be turned half round.
    """
    best: tuple[float, tuple[Run, ...]] | None = None
    for start in (0.0, 90.0) if turnable else (0.0,):
        runs = _lay(outline, start, (plain, back), width, one_way)
        cloth = sum(run.length * run.thick for run in runs)
        if runs and (best is None or cloth < best[0] - NEAR):
            best = cloth, runs
    return best[1] if best else ()


def _lay(outline: Sequence[complex], start: float, counts: tuple[int, int], width: float, one_way: bool
         ) -> tuple[Run, ...]:
    turns = (start,) if one_way else (start, start + HALF_ROUND)
    poses = [Pose(turn, reverse) for reverse in (False, True) for turn in turns]
    shapes = {pose: posed(outline, pose) for pose in poses if counts[pose.reversed]}
    sizes = {pose: _size(shape) for pose, shape in shapes.items()}
    if not sizes or max(size[0] for size in sizes.values()) > width + NEAR:
        return ()
    gaps = {(a, b): pitch(shapes[a], shapes[b]) for a in shapes for b in shapes}
    thick = max(size[1] for size in sizes.values())
    runs: list[Run] = []
    laid: list[Laid] = []
    for pose in _order(gaps, counts, turns):
        left = laid[-1].left + gaps[laid[-1].pose, pose] if laid else 0.0
        if laid and left + sizes[pose][0] > width + NEAR:
            runs.append(_run(laid, sizes, thick))
            laid, left = [], 0.0
        laid.append(Laid(pose, left))
    runs.append(_run(laid, sizes, thick))
    return tuple(runs)


def _size(outline: Outline) -> tuple[float, float]:
    _, _, width, height = box_of(outline)
    return width, height


def _run(laid: Sequence[Laid], sizes: dict[Pose, tuple[float, float]], thick: float) -> Run:
    return Run(tuple(laid), tuple(sizes[each.pose] for each in laid),
               max(each.left + sizes[each.pose][0] for each in laid), thick)


def _order(gaps: dict[tuple[Pose, Pose], float], counts: tuple[int, int],
           turns: Sequence[float]) -> list[Pose]:
    """The poses in the order they are laid: mirrored pairs while both hands last, if that is nearer than each
    hand by itself; then the rest of each hand."""
    plain, back = counts

    def loop(*poses: Pose) -> float:
        return sum(gaps[one, two] for one, two in pairwise((*poses, poses[0]))) / len(poses)

    def own(reverse: bool) -> tuple[Pose, ...]:
        first, *others = (Pose(turn, reverse) for turn in turns)
        ways = [(first,), *((first, other) for other in others)]
        return min(ways, key=lambda way: loop(*way))

    order: list[Pose] = []
    if plain and back:
        pairs = [(Pose(turns[0], False), Pose(turn, True)) for turn in turns]
        pair = min(pairs, key=lambda each: loop(*each))
        if 2 * loop(*pair) < loop(*own(False)) + loop(*own(True)) - NEAR:
            both = min(plain, back)
            order += pair * both
            plain, back = plain - both, back - both
    for reverse, count in ((False, plain), (True, back)):
        way = own(reverse) if count else ()
        order += [way[at % len(way)] for at in range(count)]
    return order
