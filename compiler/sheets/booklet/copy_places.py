"""Copies of a unit told apart by where they lie in the block: `top left and bottom right`."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from ...diagnostics.wording import one_of
from ...drafting.model import Draft
from ...drafting.stroke import place_of
from ...sewing.model import Unit
from ...sewing.pressing_model import Toward

EDGES: Final = (0.4, 0.6)
"""Shares of the block between which a middle is neither left nor right, neither top nor bottom."""

LEVEL: Final = 0.02  # of the block's height between the middles of two copies in one row

NAMES: Final = (
    ("top left", "top", "top right"),
    ("left", "middle", "right"),
    ("bottom left", "bottom", "bottom right"),
)

ROWS: Final = (
    "Where copies of a unit are pressed differently, rows count only those copies, as they lie in the block: "
    "from the top, and in each row from the left."
)
"""What to know where rows are told."""


def copies_told(draft: Draft, unit: Unit, groups: Sequence[Toward]) -> list[tuple[Toward, str]]:
    """Each group with where the copies of a unit that belong to it lie; `groups` has one for each copy.

    By the sides and corners of the block where that tells the groups apart. Else by rows, the smallest group
    first; of the largest nothing is told: it is all others.
    """
    middles = [_middle(draft, copy.pieces) for copy in unit.copies]
    members: dict[Toward, list[int]] = {}
    for at, group in enumerate(groups):
        members.setdefault(group, []).append(at)
    corners = [NAMES[_third(spot.imag)][_third(spot.real)] for spot in middles]
    named = {group: list(dict.fromkeys(corners[at] for at in own)) for group, own in members.items()}
    if sum(map(len, named.values())) == len(set(corners)):
        return [(group, one_of(words, "and")) for group, words in named.items()]
    rows = _rows(middles)
    *few, most = sorted(members, key=lambda group: len(members[group]))
    return [*((group, _row_words([rows[at] for at in members[group]])) for group in few), (most, "")]


def _middle(draft: Draft, pieces: Sequence[int]) -> complex:
    """The middle of a copy, as shares of the block."""
    spots = [place_of(side.edge.start) for number in pieces for side in draft.pieces[number - 1].ring]
    xs, ys = [spot.real for spot in spots], [spot.imag for spot in spots]
    middle = complex(min(xs) + max(xs), min(ys) + max(ys)) / 2
    return complex(middle.real / float(draft.width), middle.imag / float(draft.height))


def _third(share: float) -> int:
    return sum(share > edge for edge in EDGES)


def _rows(middles: Sequence[complex]) -> list[tuple[int, int]]:
    """The row of each copy, from the top, and which of its row it is, from the left."""
    heights = sorted(spot.imag for spot in middles)
    tops = [heights[0], *(two for one, two in pairwise(heights) if two - one > LEVEL)]
    rows = [sum(spot.imag > top - LEVEL / 2 for top in tops) for spot in middles]
    order = sorted(range(len(middles)), key=lambda at: (rows[at], middles[at].real))
    firsts = {rows[at]: rank for rank, at in reversed(list(enumerate(order)))}
    ranks = {at: rank - firsts[rows[at]] + 1 for rank, at in enumerate(order)}
    return [(row, ranks[at]) for at, row in enumerate(rows)]


def _row_words(places: Sequence[tuple[int, int]]) -> str:
    """`row 1: 1 and 4; row 3: 2`."""
    found: dict[int, list[str]] = {}
    for row, rank in sorted(places):
        found.setdefault(row, []).append(str(rank))
    return "; ".join(f"row {row}: {one_of(ranks, 'and')}" for row, ranks in found.items())
