"""Which pieces of a block lie alike among their neighbours, so that what is worked out for one serves all.

Two pieces lie alike where a plain shift carries the one on to the other, its neighbours on to the other's
neighbours, and theirs on to theirs: no trim or mark of a piece depends on anything further off. In a block
of ten thousand pieces there are a few dozen neighbourhoods.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ...drafting.model import Draft
from ...drafting.shapes import translate_key
from ...geometry.edge import Point
from ...geometry.planar import OUTER

SHIFT_DIGITS: Final = 6
"""Decimals of an inch by which shifts are compared; two that round apart only cost the same work twice."""


def neighbourhoods(draft: Draft) -> list[int]:
    """For each piece a number that it shares with the pieces that lie alike."""
    pieces = draft.pieces
    kinds = _numbered([translate_key(piece) for piece in pieces])
    starts = [_start(piece.ring[0].edge.start) for piece in pieces]
    around = [draft.graph.across(at) for at in range(len(pieces))]
    near = _numbered(
        [
            (kinds[at], tuple(_seen(kinds, starts, at, number) for number in numbers))
            for at, numbers in enumerate(around)
        ]
    )
    return _numbered(
        [
            (near[at], tuple(near[number] if number != OUTER else 0 for number in numbers))
            for at, numbers in enumerate(around)
        ]
    )


def _numbered(keys: Sequence[object]) -> list[int]:
    """The keys as small numbers, equal where the keys are."""
    known: dict[object, int] = {}
    return [known.setdefault(key, len(known)) for key in keys]


def _start(point: Point) -> tuple[float, float]:
    return float(point.x), float(point.y)


def _seen(kinds: Sequence[int], starts: Sequence[tuple[float, float]], at: int, number: int) -> object:
    """What a piece sees of a neighbour: its outline and how it lies from here."""
    if number == OUTER:
        return None
    (x, y), (from_x, from_y) = starts[number], starts[at]
    return kinds[number], round(x - from_x, SHIFT_DIGITS) + 0.0, round(y - from_y, SHIFT_DIGITS) + 0.0
