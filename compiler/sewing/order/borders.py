"""What runs round a part of a block, walked half by half along what is taken or outside."""

from __future__ import annotations

from cmath import phase
from collections.abc import Sequence

from ...geometry.stroke import Stroke
from .seam_graph import SeamGraph

Ring = tuple[tuple[Stroke, float], ...]
"""Directed strokes with the cloth on the right, each with its allowance in inches."""


def piece_rings(graph: SeamGraph, piece: int) -> tuple[Ring, ...]:
    """The outline and windows of one piece."""
    return tuple(_strokes(graph, ring) for ring in graph.rings[piece])


def part_rings(graph: SeamGraph, cut: Sequence[bool], edge: int) -> tuple[Ring, ...]:
    """The outline of the part on the right of a half on its outside."""
    return (_strokes(graph, walk_border(graph, cut, edge)),)


def ringed_piece(graph: SeamGraph, cut: Sequence[bool], edge: int, piece: int) -> tuple[Ring, ...]:
    """The outline of one piece with what fills its windows, and those windows that are taken out."""
    rings = [walk_border(graph, cut, edge)]
    known = set(rings[0])
    for half in (half for ring in graph.rings[piece] for half in ring):
        if cut[half // 2] and half not in known:
            rings.append(walk_border(graph, cut, half))
            known.update(rings[-1])
    return tuple(_strokes(graph, ring) for ring in rings)


def _strokes(graph: SeamGraph, ring: Sequence[int]) -> Ring:
    return tuple((graph.directed(half), graph.allowance(half)) for half in ring)


def walk_border(graph: SeamGraph, cut: Sequence[bool], edge: int) -> list[int]:
    """The halves round a part: along its outside, and across whatever is still sewn within it."""
    return graph.planar.border(edge, lambda half: not (cut[half // 2] or graph.links[half // 2].left < 0))


def frame_of(ring: Ring) -> float:
    """The direction, in radians, in or square to which most of a ring's straight edges run."""
    straight = [stroke for stroke, _ in ring if stroke.center is None]
    return phase(sum((stroke.direction(0) ** 4 * stroke.length for stroke in straight), 0j)) / 4
