"""Pieces to shapes: one for each class of congruent pieces, so that one template serves the class.

Pieces are alike where a turn and a shift carry the one's finished outline, with the allowance of every side,
onto the other's; reversed where that needs a mirror first. A shape with a mirror line of its own is never
reversed: its pieces are used either side up.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import floor
from string import ascii_uppercase
from typing import Final

from ..geometry.pose import Motion, Pose
from ..measure.tolerance import CONGRUENT
from .congruence import Figure, figure_of, mirrored, turns_onto
from .model import Member, Piece, Shape

SHELF: Final = 1 / 256
"""Inches. Figures are looked up by their mean and greatest reach from the middle, in steps of this width: so
much wider than CONGRUENT that few lookups need two steps, so narrow that few shapes share one."""

TRANSLATE_DIGITS: Final = 7
"""Decimals of an inch that a piece's outline is remembered with, so that a plain copy needs no matching. Two
copies that round apart cost a matching, never a wrong answer."""


def match_shapes(pieces: Sequence[Piece]) -> tuple[Shape, ...]:
    """The shapes, lettered by their lowest numbered piece, each with its members in order of number."""
    shelves = _Shelves()
    copies: dict[object, tuple[int, float, bool]] = {}
    members: list[list[Member]] = []
    for piece in pieces:
        key = translate_key(piece)
        match = copies.get(key)
        if match is None:
            match = shelves.match(figure_of(piece))
            copies[key] = match
        index, turned, reverse = match
        if index == len(members):
            members.append([])
        members[index].append(Member(piece.number, turned, reverse))
    return tuple(
        Shape(shape_label(index), tuple(each), bool(shelves.mirror_turns[index]), len(shelves.turns[index]))
        for index, each in enumerate(members)
    )


class _Shelves:
    """The shapes found so far, looked up by size."""

    def __init__(self) -> None:
        self.figures: list[Figure] = []
        self.mirrored: list[Figure] = []
        self.turns: list[tuple[float, ...]] = []  # of the shape onto itself
        self.mirror_turns: list[tuple[float, ...]] = []  # of the mirrored shape onto itself: none, no line
        self.by_size: dict[object, list[int]] = {}

    def match(self, figure: Figure) -> tuple[int, float, bool]:
        """The shape's index, the turn and whether reversed; a new shape where none matches."""
        kind, sizes = _kind(figure), _sizes(figure)
        for key in _keys(kind, sizes):
            for index in self.by_size.get(key, ()):
                for reverse, known in ((False, self.figures[index]), (True, self.mirrored[index])):
                    turned = next(turns_onto(known, figure), None)
                    if turned is not None:
                        return index, turned, reverse
        return self._add(figure, kind, sizes), 0.0, False

    def _add(self, figure: Figure, kind: object, sizes: tuple[float, float]) -> int:
        index = len(self.figures)
        over = mirrored(figure)
        self.figures.append(figure)
        self.mirrored.append(over)
        self.turns.append(tuple(turns_onto(figure, figure)))
        self.mirror_turns.append(tuple(turns_onto(over, figure)))
        home = (kind, floor(sizes[0] / SHELF), floor(sizes[1] / SHELF))
        self.by_size.setdefault(home, []).append(index)
        return index


def _kind(figure: Figure) -> object:
    """What matching figures have exactly in common."""
    allowances = sorted(corner.allowance for ring in figure.rings for corner in ring)
    return tuple(sorted(len(ring) for ring in figure.rings)), tuple(allowances)


def _sizes(figure: Figure) -> tuple[float, float]:
    """Mean and greatest distance of the corners and side middles from the figure's middle, in inches."""
    reaches = [
        abs(place) + corner.circle
        for ring in figure.rings
        for corner in ring
        for place in (corner.at, corner.middle)
    ]
    return sum(reaches) / len(reaches), max(reaches)


def _keys(kind: object, sizes: tuple[float, float]) -> list[object]:
    """The shelves on which a match may stand: one, or its neighbours where a size is near a shelf's end."""
    steps = [
        dict.fromkeys((floor((size - 2 * CONGRUENT) / SHELF), floor((size + 2 * CONGRUENT) / SHELF)))
        for size in sizes
    ]
    return [(kind, mean, most) for mean in steps[0] for most in steps[1]]


def translate_key(piece: Piece) -> object:
    """Equal for pieces that are plain copies of each other, shifted."""
    first = piece.ring[0].edge.start
    x, y = float(first.x), float(first.y)
    return tuple(
        (
            round(float(side.edge.start.x) - x, TRANSLATE_DIGITS) + 0.0,
            round(float(side.edge.start.y) - y, TRANSLATE_DIGITS) + 0.0,
            side.allowance,
            round(side.edge.sweep, TRANSLATE_DIGITS) if side.edge.arc else None,
        )
        for ring in (piece.ring, *piece.holes)
        for side in ring
    )


def carry(shape: Shape, pieces: Sequence[Piece], member: Member) -> Motion:
    """What carries the shape's first piece onto the member; pieces[n - 1].number is n."""
    first = figure_of(pieces[shape.members[0].piece - 1]).origin
    return member.pose.motion(first, figure_of(pieces[member.piece - 1]).origin)


def symmetries(piece: Piece) -> tuple[Pose, ...]:
    """Every way the piece lies upon itself, first as it is. A circle, which any turn carries onto itself,
    lies one way each side up."""
    figure = figure_of(piece)
    plain = [Pose(turned) for turned in turns_onto(figure, figure)]
    return (*plain, *(Pose(turned, True) for turned in turns_onto(mirrored(figure), figure)))


def shape_label(index: int, letters: str = ascii_uppercase) -> str:
    """A to Z, then AA, AB and so on; or of other letters."""
    label = ""
    index += 1
    while index:
        index, letter = divmod(index - 1, len(letters))
        label = letters[letter] + label
    return label
