"""What parting a draft gives: a tree of joins, whether its seams were looked for or its rows were known."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from ...geometry.pose import STAY, Motion
from .borders import Ring
from .seam_graph import SeamGraph


@dataclass(slots=True)
class JoinNode:
    """A part of the block: one piece, a join of two nodes along a path, or a copy of an earlier node.

    `pieces` are numbers (from 0 while parting) in the order of its parts; of a copy, in the order of what it
    copies, which `motion` lays on it. `path` has the first part on its right; it is `closed` round a window,
    or round a part that touches the outside at one point. It lies `beside` something where it starts at such
    a point, or where its window touches another: there it starts, however smoothly it closes.
    """

    pieces: tuple[int, ...] = ()
    parts: tuple[int, int] | None = None
    path: tuple[int, ...] = ()
    closed: bool = False
    beside: bool = False
    copies: int = -1
    motion: Motion = STAY
    rings: tuple[Ring, ...] = ()  # of a copy: none


class Parted(NamedTuple):
    """A draft parted. `nodes[0]` is the whole; parts have higher numbers than wholes. `whole_of`: of each
    piece a number of what it is finished with before it is sewn to anything else, -1 of nothing."""

    graph: SeamGraph
    nodes: list[JoinNode]
    whole_of: Sequence[int]


def first_on_right(graph: SeamGraph, path: list[int], small: Set[int]) -> list[int]:
    """The path directed so that the part sewn to lies on its right: the larger where the seam is set in,
    else the upper or left one."""
    straight = all(graph.onward[one ^ 1] == two for one, two in pairwise(path))
    other_way = [half ^ 1 for half in reversed(path)]
    if not straight:
        return other_way if graph.cloth(path[0]) in small else path
    start = graph.places[graph.place_at(path[0])]
    right = (graph.places[graph.place_at(path[-1] ^ 1)] - start) * 1j
    return path if (round(right.imag, 6), round(right.real, 6)) < (0, 0) else other_way
