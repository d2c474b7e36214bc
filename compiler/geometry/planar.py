"""The planar graph of a drafted block, kept: nodes, edges between them, and the face on each side of an edge.

An edge in one direction is a *half*: half 2n runs as edge n does, half 2n + 1 back. Each half has a face on
its right, so a face's outer ring runs clockwise as seen and the rings of its windows anticlockwise.

        face(half ^ 1)
    --------half-------->
        face(half)

Faces are counted from 0; OUTER is what lies outside. Everything is numbered as it is met first, face by face
and ring by ring, so an edge has the lower of its two faces on its right.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from typing import NamedTuple

from ..measure.record import record
from .edge import Edge, Point
from .motion import Transform

OUTER = -1
"""The number of the unbounded face."""


class Stretch(NamedTuple):
    """A stretch of a face's ring, as the ring runs: its edge, its ends by number, and the face across it."""

    edge: Edge
    start: int
    end: int
    across: int


@record
class PlanarGraph:
    """Nodes, edges, faces. Nothing is looked up by where it lies."""

    nodes: tuple[Point, ...] = ()
    edges: tuple[Edge, ...] = ()
    ends: tuple[tuple[int, int], ...] = ()  # of each edge: the nodes where it starts and ends
    faces: tuple[tuple[int, int], ...] = ()  # of each edge: on its right, on its left
    rings: tuple[tuple[tuple[int, ...], ...], ...] = ()  # of each face: its halves, outer first
    following: tuple[int, ...] = ()  # of each half: the next round its face; -1 outside

    def edge(self, half: int) -> Edge:
        """A half's edge, in its own direction."""
        edge = self.edges[half // 2]
        return edge.reversed() if half % 2 else edge

    def node(self, half: int) -> int:
        """The node where a half starts."""
        return self.ends[half // 2][half % 2]

    def face(self, half: int) -> int:
        """The face on a half's right."""
        return self.faces[half // 2][half % 2]

    def across(self, face: int) -> list[int]:
        """The faces all the way round a face, ring by ring; one that is met twice stands twice."""
        return [self.face(half ^ 1) for ring in self.rings[face] for half in ring]

    def neighbours(self) -> list[list[int]]:
        """For each face the faces beside it, once for each edge that they share, in order of the edges."""
        neighbours: list[list[int]] = [[] for _ in self.rings]
        for right, left in self.faces:
            if left != OUTER:
                neighbours[right].append(left)
                neighbours[left].append(right)
        return neighbours

    def between(self) -> Iterator[tuple[Edge, int, int]]:
        """Every edge between two faces, once: the edge, the face on its right, the higher one on its left."""
        for edge, (right, left) in zip(self.edges, self.faces, strict=True):
            if right < left:
                yield edge, right, left

    def bordering(self, faces: Collection[int]) -> Iterator[int]:
        """The halves between a region and what is not of it, the region on their right."""
        for face in sorted(faces):
            for half in (half for ring in self.rings[face] for half in ring):
                if self.face(half ^ 1) not in faces:
                    yield half

    def border(self, start: int, inside: Callable[[int], bool]) -> list[int]:
        """The halves round a region, from one on its border on; `inside` tells of a half whether the region
        goes on across it."""
        ring, half = [], start
        while True:
            ring.append(half)
            half = self.following[half]
            while inside(half):
                half = self.following[half ^ 1]
            if half == start:
                return ring

    def moved(self, motion: Transform) -> PlanarGraph:
        """The graph where a motion that mirrors nothing puts it."""
        return PlanarGraph(
            tuple(motion(node) for node in self.nodes),
            tuple(motion.edge(edge) for edge in self.edges),
            self.ends,
            self.faces,
            self.rings,
            self.following,
        )


def planar_graph(rings: Sequence[Sequence[Sequence[Stretch]]], places: Sequence[Point]) -> PlanarGraph:
    """The graph of faces given by their rings, outer first; the stretches' ends number `places`."""
    nodes: dict[int, int] = {}
    edges: list[Edge] = []
    ends: list[tuple[int, int]] = []
    faces: list[tuple[int, int]] = []
    waiting: dict[tuple[int, int, int, int], int] = {}

    def half_of(face: int, stretch: Stretch) -> int:
        start, end = (nodes.setdefault(each, len(nodes)) for each in (stretch.start, stretch.end))
        back = waiting.pop((stretch.across, face, end, start), OUTER)
        if back != OUTER:
            return 2 * back + 1
        if stretch.across != OUTER:
            waiting[face, stretch.across, start, end] = len(edges)
        edges.append(stretch.edge)
        ends.append((start, end))
        faces.append((face, stretch.across))
        return 2 * len(edges) - 2

    halves = tuple(
        tuple(tuple(half_of(face, stretch) for stretch in ring) for ring in each)
        for face, each in enumerate(rings)
    )
    following = [-1] * (2 * len(edges))
    for ring in (ring for each in halves for ring in each):
        for half, after in zip(ring, (*ring[1:], ring[0]), strict=True):
            following[half] = after
    return PlanarGraph(
        tuple(places[each] for each in nodes),
        tuple(edges),
        tuple(ends),
        tuple(faces),
        halves,
        tuple(following),
    )
