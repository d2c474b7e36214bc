"""Pieces that lie wholly inside one other piece: what fills a window, or hangs in a piece by one corner.

Seen from outside the block, a piece through which alone some others can be reached has them as an island.
These are the joints of the graph of neighbours, found by one walk from the outside (Tarjan's articulation
points).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple


class Island(NamedTuple):
    """The piece around, and the island's own pieces, islands inside it included. Pieces from 0."""

    around: int
    pieces: tuple[int, ...]


def find_islands(neighbours: Sequence[Sequence[int]], outer: Sequence[int]) -> tuple[list[Island], list[int]]:
    """Every island, outer ones first, and each piece's field: 0 for the block itself, n for islands[n -
    1]."""
    order, parent, low, entered = _walk(neighbours, outer)
    count = len(neighbours)
    assert len(order) == count, f"{count - len(order)} pieces hang on nothing"
    sizes = [1] * (count + 1)  # of the walk below each piece
    for piece in reversed(order):
        sizes[parent[piece]] += sizes[piece]
    found: list[Island] = []
    field_of = [0] * count
    for at, piece in enumerate(order):
        around = parent[piece]
        if around == count or low[piece] < entered[around]:
            continue
        inside = order[at : at + sizes[piece]]
        found.append(Island(around, tuple(inside)))
        for each in inside:
            field_of[each] = len(found)  # an inner island comes later in the walk and claims its own
    return found, field_of


def _walk(
    neighbours: Sequence[Sequence[int]], outer: Sequence[int]
) -> tuple[list[int], list[int], list[int], list[int]]:
    """Pieces in the order first met, what each was met from, and how near the outside each reaches round it.

    The outside is counted as one more piece, at the end.
    """
    outside = len(neighbours)
    reaches = [*neighbours, list(outer)]
    at_edge = set(outer)
    order: list[int] = []
    parent = [-1] * (outside + 1)
    entered = [-1] * (outside + 1)
    low = [0] * (outside + 1)
    entered[outside] = 0
    stack = [(outside, iter(reaches[outside]))]
    while stack:
        piece, rest = stack[-1]
        following = next(rest, None)
        if following is None:
            stack.pop()
            if stack:
                low[stack[-1][0]] = min(low[stack[-1][0]], low[piece])
            continue
        if entered[following] >= 0:
            low[piece] = min(low[piece], entered[following])
            continue
        parent[following] = piece
        order.append(following)
        entered[following] = low[following] = len(order)
        if following in at_edge:
            low[following] = 0
        stack.append((following, iter(reaches[following])))
    return order, parent, low, entered
