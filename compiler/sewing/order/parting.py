"""Parting a draft: a tree of joins, whether its seams are looked for or its rows are known."""

from __future__ import annotations

from collections.abc import Callable, Sequence, Set
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from ...drafting.model import Draft
from ...geometry.pose import STAY, Motion
from .borders import Ring
from .likeness import alike, poses_of
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


class Parter:
    """The nodes of a draft while it is parted: `nodes[0]` is the whole, and parts that are alike are parted
    once."""

    def __init__(self, draft: Draft) -> None:
        self.graph = SeamGraph(draft)
        self.poses = poses_of(draft)
        self.nodes: list[JoinNode] = []
        self._known: dict[tuple[int, int], list[int]] = {}

    def new(self) -> int:
        """The number of one more node."""
        self.nodes.append(JoinNode())
        return len(self.nodes) - 1

    def copied(
        self, at: int, key: tuple[int, int], pieces: Callable[[], Sequence[int]], unturned: bool = False
    ) -> bool:
        """Makes a node a copy where its pieces are like an earlier one's; else remembers it. `key`: their
        number and the sum of their signatures; `unturned` as in `likeness.alike`."""
        likes = self._known.setdefault(key, [])
        if likes:
            own = pieces()
            for number in likes:
                like = alike(self._pieces_of(number), own, self.poses, unturned)
                if like:
                    node = self.nodes[at]
                    node.copies, node.motion, node.pieces = number, like.motion, like.pieces
                    return True
        likes.append(at)
        return False

    def _pieces_of(self, number: int) -> tuple[int, ...]:
        """The pieces of a node that is parted to its pieces, in the order of its parts."""
        pieces: list[int] = []
        stack = [number]
        while stack:
            node = self.nodes[stack.pop()]
            pieces += node.pieces
            if not node.pieces and node.parts:
                stack += reversed(node.parts)
        self.nodes[number].pieces = tuple(pieces)
        return tuple(pieces)

    def parted(self, whole_of: Sequence[int]) -> Parted:
        """What it all comes to: every node's pieces counted from 1, in the order of its parts."""
        for node in reversed(self.nodes):
            if not node.parts:
                node.pieces = tuple(piece + 1 for piece in node.pieces)
            else:
                node.pieces = self.nodes[node.parts[0]].pieces + self.nodes[node.parts[1]].pieces
        return Parted(self.graph, self.nodes, whole_of)


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
