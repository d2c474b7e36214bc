"""A noded graph to its faces.

A *half* is a link in one direction: half 2n runs as link n was drawn, 2n + 1 back. Each half has the face on
its
right, so a face's ring runs clockwise as seen and its holes anticlockwise.

        at a node, the halves leave        arriving by t's twin, the ring of the
        in the order of their angles       face on the right goes on by the half
               a                           that leaves next before t in that order
            t--*--b
               c
"""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, atan2, hypot
from typing import Any

from ..measure.tolerance import Number, difference
from .curves import area_under, at_share, box_of, flattened, inside_ring
from .edge import Edge, Point
from .noding import Noded
from .planar import OUTER


@dataclass(frozen=True)
class Face:
    """One bounded face: its rings of halves, its area in square inches, and its polygon with arcs
    flattened."""

    ring: tuple[int, ...]
    holes: tuple[tuple[int, ...], ...]
    area: Number
    polygon: Any
    inside: Point


@dataclass(frozen=True)
class Faces:
    """All faces, and `right_of[half]`, the number of the face on the right of each half (OUTER: none).

    `idle` are links with one face on both sides; while there are any, no face is built.
    """

    faces: tuple[Face, ...]
    right_of: tuple[int, ...]
    idle: tuple[int, ...] = ()


def half_edge(graph: Noded, half: int) -> Edge:
    """A half's edge, in its own direction."""
    edge = graph.links[half // 2].edge
    return edge.reversed() if half % 2 else edge


def leaves(graph: Noded, half: int) -> int:
    """The node a half starts from."""
    link = graph.links[half // 2]
    return link.end if half % 2 else link.start


def find_faces(graph: Noded) -> Faces:
    """Every bounded face of the graph, in no particular order but always the same."""
    import shapely

    rings = _trace(graph)
    areas = [_ring_area(graph, ring) for ring in rings]
    inner = [at for at, area in enumerate(areas) if area > 0]
    right_of = [OUTER] * (2 * len(graph.links))
    for number, at in enumerate(inner):
        for half in rings[at]:
            right_of[half] = number
    holes = _place_holes(graph, rings, areas, inner)
    for number, held in holes.items():
        for at in held:
            for half in rings[at]:
                right_of[half] = number
    idle = tuple(at for at in range(len(graph.links)) if right_of[2 * at] == right_of[2 * at + 1])
    if idle:
        return Faces((), tuple(right_of), idle)
    polygons = [
        shapely.Polygon(
            flat_ring(graph, rings[at]), [flat_ring(graph, rings[hole]) for hole in holes.get(number, ())]
        )
        for number, at in enumerate(inner)
    ]
    points = shapely.get_coordinates(shapely.point_on_surface(polygons)) if polygons else []
    faces = []
    for number, at in enumerate(inner):
        held = holes.get(number, [])
        area = areas[at]
        for hole in held:
            area = area + areas[hole]
        inside = Point(float(points[number][0]), float(points[number][1]))
        faces.append(
            Face(
                tuple(rings[at]),
                tuple(tuple(rings[hole]) for hole in held),
                area,
                polygons[number],
                _middle(graph, rings[at]) or inside if not held else inside,
            )
        )
    return Faces(tuple(faces), tuple(right_of))


def _trace(graph: Noded) -> list[list[int]]:
    """Every ring of halves, bounded and unbounded."""
    leaving: list[list[int]] = [[] for _ in graph.nodes]
    for number, link in enumerate(graph.links):
        leaving[link.start].append(2 * number)
        leaving[link.end].append(2 * number + 1)
    following = [0] * (2 * len(graph.links))
    for halves in leaving:
        ordered = _by_angle(graph, halves)
        for at, half in enumerate(ordered):
            following[half ^ 1] = ordered[at - 1]
    rings: list[list[int]] = []
    seen = [False] * len(following)
    for first in range(len(following)):
        if seen[first]:
            continue
        ring = []
        half = first
        while not seen[half]:
            seen[half] = True
            ring.append(half)
            half = following[half]
        rings.append(ring)
    return rings


def _by_angle(graph: Noded, halves: list[int]) -> list[int]:
    """Halves that leave one node, in the order in which they lie round it.

    Where a curve is among them, all are met on one small circle round the node: an arc and its own tangent
    leave in the same direction, and only there do they part.
    """
    if all(graph.links[half // 2].edge.arc is None for half in halves):
        return sorted(halves, key=lambda half: _angle(half_edge(graph, half), None))
    reach = min(_chord(half_edge(graph, half)) for half in halves) / 2
    return sorted(halves, key=lambda half: _angle(half_edge(graph, half), reach))


def _chord(edge: Edge) -> float:
    chord = hypot(difference(edge.end.x, edge.start.x), difference(edge.end.y, edge.start.y))
    return chord if chord > 0 or edge.arc is None else edge.arc.radius


def _angle(edge: Edge, reach: float | None) -> float:
    to = edge.end
    if edge.arc is not None and reach is not None:
        turned = 2 * asin(min(reach / (2 * edge.arc.radius), 1.0))
        to = at_share(edge, min(turned / abs(edge.sweep), 1.0))
    return atan2(difference(to.y, edge.start.y), difference(to.x, edge.start.x))


def _ring_area(graph: Noded, ring: list[int]) -> Number:
    total = area_under(half_edge(graph, ring[0]))
    for half in ring[1:]:
        total = total + area_under(half_edge(graph, half))
    return total


def flat_ring(graph: Noded, ring: list[int] | tuple[int, ...]) -> list[tuple[float, float]]:
    """The ring as points, arcs flattened; both sides of an arc are flattened alike."""
    points: list[tuple[float, float]] = []
    for half in ring:
        link = graph.links[half // 2]
        if link.edge.arc is None:
            p = graph.nodes[leaves(graph, half)]
            points.append((float(p.x), float(p.y)))
            continue
        along = [*flattened(link.edge), link.edge.end]
        if half % 2:
            along.reverse()
        points += [(float(p.x), float(p.y)) for p in along[:-1]]
    return points


def _place_holes(
    graph: Noded, rings: list[list[int]], areas: list[Number], inner: list[int]
) -> dict[int, list[int]]:
    """For each face that has holes, the rings of what floats in it."""
    outward = [at for at, area in enumerate(areas) if not area > 0]
    if len(outward) < 2:
        return {}
    component = _components(graph)
    held: dict[int, list[int]] = {}
    edges = [tuple(half_edge(graph, half) for half in rings[ring]) for ring in inner]
    boxes = [box_of(each) for each in edges]
    smallest_first = sorted(range(len(inner)), key=lambda number: areas[inner[number]])
    for at in outward:
        node = leaves(graph, rings[at][0])
        p = graph.nodes[node]
        for number in smallest_first:
            left, top, right, bottom = boxes[number]
            if not (left <= p.x <= right and top <= p.y <= bottom):
                continue
            if component[leaves(graph, rings[inner[number]][0])] != component[node] and inside_ring(
                p, edges[number]
            ):
                held.setdefault(number, []).append(at)
                break
    return held


def _components(graph: Noded) -> list[int]:
    """For each node, the lowest node it is joined to."""
    leader = list(range(len(graph.nodes)))

    def root(node: int) -> int:
        while leader[node] != node:
            leader[node] = leader[leader[node]]
            node = leader[node]
        return node

    for link in graph.links:
        a, b = root(link.start), root(link.end)
        leader[max(a, b)] = min(a, b)
    return [root(node) for node in range(len(graph.nodes))]


def _middle(graph: Noded, ring: list[int]) -> Point | None:
    """The average of a convex straight ring's corners, which lies well inside; None for any other ring."""
    points = [graph.nodes[leaves(graph, half)] for half in ring]
    if any(graph.links[half // 2].edge.arc is not None for half in ring):
        return None
    turned = 0.0
    for at, p in enumerate(points):
        a, b = points[at - 1], points[(at + 1) % len(points)]
        cross = difference(p.x, a.x) * difference(b.y, p.y) - difference(p.y, a.y) * difference(b.x, p.x)
        if cross < 0:
            return None
        turned += cross
    x = sum(float(p.x) for p in points) / len(points)
    y = sum(float(p.y) for p in points) / len(points)
    return Point(x, y) if turned > 0 else None
