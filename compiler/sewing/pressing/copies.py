"""Where the copies of a unit lie that are pressed one way or another: by the sides and corners of the block,
or by rows."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from ...drafting.model import Draft
from ...geometry.stroke import place_of
from ...measure.record import record
from ..model import Unit
from .pressing_model import Pressing, Toward

EDGES: Final = (0.4, 0.6)
"""Shares of the block between which a middle is neither left nor right, neither top nor bottom."""

LEVEL: Final = 0.02  # of the block's height between the middles of two copies in one row

Ninth = tuple[int, int]
"""A side, a corner or the middle of a block: 0, 1 or 2 down from the top, and so many from the left."""


@record
class InNinths:
    """The copies lie in those ninths of the block, and no others do."""

    ninths: tuple[Ninth, ...]


@record
class InRows:
    """The copies' rows from the top, each with its place in the row from the left. `single`: no row has more
    than one copy of the unit."""

    places: tuple[tuple[int, int], ...]
    single: bool


@record
class Others:
    """All other copies."""


Where = InNinths | InRows | Others


def where_copies(draft: Draft, unit: Unit, groups: Sequence[Toward]) -> list[tuple[Toward, Where]]:
    """Each group with where the copies of a unit that belong to it lie; `groups` has one for each copy.

    By the sides and corners of the block where that tells the groups apart. Else by rows, the smallest group
    first; the largest is all others.
    """
    middles = _middles(draft, unit)
    members: dict[Toward, list[int]] = {}
    for at, group in enumerate(groups):
        members.setdefault(group, []).append(at)
    ninths = _ninths(middles)
    named = {group: tuple(dict.fromkeys(ninths[at] for at in own)) for group, own in members.items()}
    if sum(map(len, named.values())) == len(set(ninths)):
        return [(group, InNinths(own)) for group, own in named.items()]
    rows = _rows(middles)
    single = all(rank <= 1 for _, rank in rows)
    *few, most = sorted(members, key=lambda group: len(members[group]))
    told: list[tuple[Toward, Where]] = [
        (group, InRows(tuple(rows[at] for at in members[group]), single)) for group in few
    ]
    return [*told, (most, Others())]


def by_rows(draft: Draft, unit: Unit, pressing: Pressing) -> bool:
    """Whether rows tell the copies apart that are pressed differently."""
    if pressing.even:
        return False
    return any(isinstance(where, InRows) for _, where in where_copies(draft, unit, pressing.ways))


def shaded_way(draft: Draft, unit: Unit, pressing: Pressing) -> Toward | None:
    """The way whose copies a small picture of the block shades: of two the one that fewer are pressed.

    None where all are pressed alike, or three ways; and where corners alone or sides alone tell them: words
    do as well there.
    """
    if len(set(pressing.ways)) != 2:
        return None
    outer = [each for each in _ninths(_middles(draft, unit)) if each != (1, 1)]
    corners = {1 not in each for each in outer}
    told = where_copies(draft, unit, pressing.ways)
    if len(corners) == 1 and all(isinstance(where, InNinths) for _, where in told):
        return None
    return min(dict.fromkeys(pressing.ways), key=pressing.ways.count)


def _ninths(middles: Sequence[complex]) -> list[Ninth]:
    """The corner or side of the block that each middle lies in."""
    return [(_third(spot.imag), _third(spot.real)) for spot in middles]


def _middles(draft: Draft, unit: Unit) -> list[complex]:
    return [_middle(draft, copy.pieces) for copy in unit.copies]


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
