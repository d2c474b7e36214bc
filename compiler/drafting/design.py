"""Whether two blocks are one design: the same pieces of the same fabrics, however large or turned.

A design is what a quilter knows a block by: its seams and which pieces share a fabric. Turned, mirrored,
drawn to another size, or with its fabrics' names changed one for one, it is the same design.
"""

from __future__ import annotations

from cmath import phase
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from math import degrees, sqrt
from typing import Final

from ..geometry.pose import Motion, Pose, turning
from ..measure.record import record
from ..measure.tolerance import DESIGN
from .congruence import figure_of
from .model import Draft

CELLS: Final = 1000  # across that square: pieces are looked up by the cell that their middle lies in


@record
class Symmetry:
    """How a block looks the same again: in `turns` places of a whole turn (1: only as it lies), and in a
    mirror or not. The fabrics count."""

    turns: int
    mirrors: bool


Kind = tuple[int, tuple[tuple[int, int, int], ...]]


def design_kind(draft: Draft) -> Kind:
    """What designs must share to be one: whole numbers only, so that no rounding parts what belongs together.

    The number of fabrics; and how often each count of corners, curves and windows comes.
    """
    fabrics = len({piece.fabric for piece in draft.pieces})
    shapes = Counter(
        (len(piece.ring), sum(side.edge.arc is not None for side in piece.ring), len(piece.holes))
        for piece in draft.pieces
    )
    return fabrics, tuple((count, *shape[:2]) for shape, count in sorted(shapes.items()))


def same_design(one: Draft, other: Draft) -> bool:
    """Whether two blocks are the same but for size, turning, mirroring and the names of their fabrics."""
    if design_kind(one) != design_kind(other):
        return False
    return next(likenesses(_Design(one), _Design(other)), None) is not None


def symmetry_of(draft: Draft) -> Symmetry:
    """How the block looks the same again, its fabrics kept."""
    poses = list(likenesses(_Design(draft), _Design(draft), renamed=False))
    return Symmetry(sum(not each.reversed for each in poses), any(each.reversed for each in poses))


@record
class _Patch:
    """A piece about the block's middle: where it lies, its corners and the middles of its sides, and the
    radius of every ring that is a whole circle (whose one mark is its centre)."""

    middle: complex
    marks: tuple[complex, ...]
    circles: tuple[float, ...]
    fabric: str


class _Design:
    """A block's pieces about its middle, in shares of its size."""

    def __init__(self, draft: Draft) -> None:
        figures = [figure_of(piece) for piece in draft.pieces]
        areas = [float(piece.area) for piece in draft.pieces]
        weighed = (figure.origin * area for figure, area in zip(figures, areas, strict=True))
        middle = sum(weighed, 0j) / sum(areas)
        scale = sqrt(sum(areas))
        self.patches: list[_Patch] = []
        for piece, figure in zip(draft.pieces, figures, strict=True):
            about = (figure.origin - middle) / scale
            corners = [corner for ring in figure.rings for corner in ring]
            marks = tuple(about + place / scale for corner in corners for place in (corner.at, corner.middle))
            circles = tuple(corner.circle / scale for corner in corners)
            self.patches.append(_Patch(about, marks, circles, piece.fabric))
        self.cells: dict[tuple[int, int], list[_Patch]] = defaultdict(list)
        for patch in self.patches:
            self.cells[_cell(patch.middle)].append(patch)

    def at(self, middle: complex) -> Iterator[_Patch]:
        """The pieces whose middle is there."""
        across, down = _cell(middle)
        for x in (across - 1, across, across + 1):
            for y in (down - 1, down, down + 1):
                for patch in self.cells.get((x, y), ()):
                    if abs(patch.middle - middle) <= DESIGN:
                        yield patch

    @property
    def furthest(self) -> list[complex]:
        """The corners furthest from the middle."""
        marks = [mark for patch in self.patches for mark in patch.marks]
        reach = max(abs(mark) for mark in marks)
        found: list[complex] = []
        for mark in marks:
            if abs(mark) >= reach - DESIGN and all(abs(mark - each) > DESIGN for each in found):
                found.append(mark)
        return found


def likenesses(one: _Design, other: _Design, *, renamed: bool = True) -> Iterator[Pose]:
    """Every pose in which the first design is the second; where `renamed`, with fabrics renamed."""
    pivot = one.furthest[0]
    for mirrored in (False, True):
        start = -pivot.conjugate() if mirrored else pivot
        for place in other.furthest:
            if abs(abs(place) - abs(start)) > DESIGN:
                continue
            turned = degrees(phase(place / start)) % 360 if abs(start) > DESIGN else 0.0
            if _carried(one, other, Motion(turning(turned), 0j, mirrored), renamed):
                yield Pose(turned, mirrored)


def _carried(one: _Design, other: _Design, motion: Motion, renamed: bool) -> bool:
    """Whether a motion lays every piece on one of the other block, each fabric on one fabric."""
    theirs: dict[str, str] = {}
    for patch in one.patches:
        middle, *marks = (motion(place) for place in (patch.middle, *patch.marks))
        match = next(
            (
                each
                for each in other.at(middle)
                if _laid_upon(marks, each.marks) and _as_round(patch.circles, each.circles)
            ),
            None,
        )
        if match is None or theirs.setdefault(patch.fabric, match.fabric) != match.fabric:
            return False
        if not renamed and patch.fabric != match.fabric:
            return False
    return len(set(theirs.values())) == len(theirs)


def _laid_upon(marks: Sequence[complex], others: Sequence[complex]) -> bool:
    """Whether places are the same, in whatever order."""
    return len(marks) == len(others) and all(
        any(abs(mark - other) <= DESIGN for other in others) for mark in marks
    )


def _as_round(circles: Sequence[float], others: Sequence[float]) -> bool:
    return all(abs(one - two) <= DESIGN for one, two in zip(sorted(circles), sorted(others), strict=True))


def _cell(place: complex) -> tuple[int, int]:
    return round(place.real * CELLS), round(place.imag * CELLS)
