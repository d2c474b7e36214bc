"""Whether two sets of pieces are the same unit: one turn and shift lays every piece on its like."""

from __future__ import annotations

from cmath import exp
from collections.abc import Mapping, Sequence
from math import pi, radians
from typing import NamedTuple

from ...drafting.model import Draft
from ...geometry.pose import Motion
from ...geometry.stroke import ring_strokes
from ...measure.tolerance import GRID, LIKE_PLACE, ONE_WAY


class PlacedPiece(NamedTuple):
    """What a piece is, and how it lies. `kind` is one for each template, way up and fabric."""

    kind: int
    middle: complex
    turned: float  # radians, clockwise
    turns: int  # how many turns carry it onto itself


class Likeness(NamedTuple):
    """The motion that lays the first pieces on the second, and the second pieces in the order of the
    first."""

    motion: Motion
    pieces: tuple[int, ...]


def poses_of(draft: Draft, cloths: Mapping[str, str] | None = None) -> list[PlacedPiece]:
    """Every piece's pose, in order of number. `cloths`: what stands for each fabric, where it is another."""
    kinds: dict[tuple[str, bool, str], int] = {}
    poses: list[PlacedPiece | None] = [None] * len(draft.pieces)
    for shape in draft.shapes:
        for member in shape.members:
            piece = draft.pieces[member.piece - 1]
            fabric = piece.fabric if cloths is None else cloths.get(piece.fabric, piece.fabric)
            kind = kinds.setdefault((shape.label, member.reversed, fabric), len(kinds))
            strokes = ring_strokes([side.edge for side in piece.ring])
            spots = [spot for each in strokes for spot in (each.start, each.at(0.5))]
            middle = sum(spots) / len(spots)
            poses[member.piece - 1] = PlacedPiece(kind, middle, radians(member.turned), shape.turns)
    found = [pose for pose in poses if pose is not None]
    assert len(found) == len(draft.pieces), "a piece has no shape"
    return found


def signature(kind: int) -> int:
    """A number for a kind, such that sums of them tell sets of kinds apart (multiplied out over 2 ** 61 -
    1)."""
    return pow(kind + 3, 5, 2**61 - 1) * 0x9E3779B97F4A7C15 % (2**61 - 1)


def alike(
    one: Sequence[int], two: Sequence[int], poses: Sequence[PlacedPiece], unturned: bool = False
) -> Likeness | None:
    """How the first pieces lie on the second, if they are the same unit; `unturned` where that can be. Pieces
    from 0."""
    if len(one) != len(two):
        return None
    counted: dict[int, int] = {}
    for piece in one:
        counted[poses[piece].kind] = counted.get(poses[piece].kind, 0) + 1
    rare = min(counted, key=lambda kind: (counted[kind] * poses_turns(poses, one, kind), kind))
    center, other = _middle(one, poses), _middle(two, poses)
    first = next(piece for piece in one if poses[piece].kind == rare)
    index = _index(two, poses)
    if unturned and (moved := _laid(one, Motion(1 + 0j, other - center), 0.0, poses, index)):
        return moved
    tried: set[int] = set()
    for piece in two:
        if (
            poses[piece].kind != rare
            or abs(abs(poses[piece].middle - other) - abs(poses[first].middle - center)) > LIKE_PLACE
        ):
            continue
        for quarter in range(poses[piece].turns):
            turned = poses[piece].turned - poses[first].turned + 2 * pi * quarter / poses[piece].turns
            step = round(turned % (2 * pi) / ONE_WAY) % round(2 * pi / ONE_WAY)
            if step in tried:
                continue
            tried.add(step)
            turn = exp(1j * turned)
            found = _laid(one, Motion(turn, other - center * turn), turned, poses, index)
            if found:
                return found
    return None


def turns_of(poses: Sequence[PlacedPiece], center: complex) -> int:
    """How many quarter or half turns about a centre carry all pieces onto their likes: 4, 2; 1 for none."""
    every = range(len(poses))
    index = _index(every, poses)
    for turns in (4, 2):
        turn = exp(2j * pi / turns)
        if _laid(every, Motion(turn, center - center * turn), 2 * pi / turns, poses, index):
            return turns
    return 1


def poses_turns(poses: Sequence[PlacedPiece], pieces: Sequence[int], kind: int) -> int:
    """How many turns carry pieces of a kind onto themselves."""
    return next(poses[piece].turns for piece in pieces if poses[piece].kind == kind)


def _middle(pieces: Sequence[int], poses: Sequence[PlacedPiece]) -> complex:
    return sum(poses[piece].middle for piece in pieces) / len(pieces)


def _index(pieces: Sequence[int], poses: Sequence[PlacedPiece]) -> dict[tuple[int, int], list[int]]:
    index: dict[tuple[int, int], list[int]] = {}
    for piece in pieces:
        middle = poses[piece].middle
        index.setdefault((round(middle.real / GRID), round(middle.imag / GRID)), []).append(piece)
    return index


def _laid(
    one: Sequence[int],
    motion: Motion,
    turned: float,
    poses: Sequence[PlacedPiece],
    index: dict[tuple[int, int], list[int]],
) -> Likeness | None:
    """Each piece's like under a motion, if all have one."""
    likes = []
    for piece in one:
        like = _like(poses[piece], motion(poses[piece].middle), turned, poses, index)
        if like < 0:
            return None
        likes.append(like)
    return Likeness(motion, tuple(likes)) if len(set(likes)) == len(likes) else None


def _like(
    pose: PlacedPiece,
    at: complex,
    turned: float,
    poses: Sequence[PlacedPiece],
    index: dict[tuple[int, int], list[int]],
) -> int:
    x, y = at.real / GRID, at.imag / GRID
    near = LIKE_PLACE / GRID
    for across in dict.fromkeys((round(x - near), round(x + near))):
        for down in dict.fromkeys((round(y - near), round(y + near))):
            for piece in index.get((across, down), ()):
                other = poses[piece]
                if other.kind == pose.kind and abs(other.middle - at) <= LIKE_PLACE:
                    period = 2 * pi / pose.turns
                    off = (other.turned - pose.turned - turned + period / 2) % period - period / 2
                    if abs(off) <= 2 * ONE_WAY:
                        return piece
    return -1
