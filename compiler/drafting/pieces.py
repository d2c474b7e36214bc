"""Faces to pieces: numbered in reading order, with whole sides from corner to corner and their neighbours."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from functools import cache
from math import floor, hypot

from ..diagnostics.source import Span
from ..geometry.close_pairs import reach
from ..geometry.curves import at_share, box_of, lies_on, same_circle
from ..geometry.edge import Edge, Point
from ..geometry.faces import Faces, half_edge, leaves
from ..geometry.noding import Noded, NodeTable
from ..geometry.planar import OUTER, PlanarGraph, Stretch, planar_graph
from ..measure.tolerance import NEAR, READING_STEP, Number, difference
from .model import Part, Piece, Side
from .naming import FaceCloth
from .seams import DrawnLine
from .sketch import AllowanceWish

READING_OFFSET = 0.1371
"""A share of READING_STEP by which the lines of reading are shifted: no drafting fraction falls on their
edges."""


def reading_order(graph: Noded, faces: Faces) -> list[int]:
    """Face numbers, from the top line of reading down, each line from the left.

    Faces of one top and one left come by the mean of their corners. All of it grows with the block, so the
    order is the same at every size.
    """

    def key(number: int) -> tuple[int, int, int, int]:
        edges = [half_edge(graph, half) for half in faces.faces[number].ring]
        left, top, _, _ = box_of(edges)
        across = sum(float(edge.start.x) for edge in edges) / len(edges)
        down = sum(float(edge.start.y) for edge in edges) / len(edges)
        return _line(top), _line(left), _line(down), _line(across)

    return sorted(range(len(faces.faces)), key=key)


def _line(value: Number) -> int:
    return floor(float(value) / READING_STEP + READING_OFFSET)


def make_pieces(
    graph: Noded,
    faces: Faces,
    lines: Sequence[DrawnLine],
    cloth: Sequence[FaceCloth],
    allowance: Fraction,
    wishes: Sequence[AllowanceWish],
) -> tuple[tuple[Piece, ...], PlanarGraph, set[Span]]:
    """The pieces, their graph, and the spans of those allowance wishes that some edge met."""
    order = reading_order(graph, faces)
    number_of = {face: number for number, face in enumerate(order, 1)}
    widths, met = _widths(graph, allowance, wishes)

    @cache
    def part(half: int) -> Part:
        across = faces.right_of[half ^ 1]
        strokes = graph.links[half // 2].strokes
        origins = tuple(dict.fromkeys(lines[each].origin for each in strokes if not lines[each].outline))
        return Part(half_edge(graph, half), None if across == OUTER else number_of[across], origins)

    def stretch(half: int) -> Stretch:
        across = number_of.get(faces.right_of[half ^ 1], 0) - 1
        return Stretch(part(half).edge, leaves(graph, half), leaves(graph, half ^ 1), across)

    pieces, stretches = [], []
    for number, at in enumerate(order, 1):
        face = faces.faces[at]
        parted = [_parted(graph, ring, part, widths) for ring in (face.ring, *face.holes)]
        stretches.append([[stretch(half) for halves in ring for half in halves] for ring in parted])
        ring, *holes = (tuple(_side(halves, part, widths) for halves in each) for each in parted)
        pieces.append(
            Piece(
                number,
                cloth[at].name,
                cloth[at].fabric,
                ring,
                tuple(holes),
                face.area,
                face.inside,
                cloth[at].grain,
                cloth[at].origin,
                cloth[at].unit,
            )
        )
    return tuple(pieces), planar_graph(stretches, graph.nodes), met


def graph_of(pieces: Sequence[Piece]) -> PlanarGraph:
    """The graph of pieces that no drafting made: their corners are one where they lie within NEAR."""
    table = NodeTable()
    number = cache(table.number)
    stretches = [
        [
            [
                Stretch(part.edge, number(part.edge.start), number(part.edge.end), (part.neighbour or 0) - 1)
                for side in ring
                for part in side.parts
            ]
            for ring in (piece.ring, *piece.holes)
        ]
        for piece in pieces
    ]
    return planar_graph(stretches, table.places)


def _widths(
    graph: Noded, allowance: Fraction, wishes: Sequence[AllowanceWish]
) -> tuple[list[Fraction], set[Span]]:
    """The allowance of each link; a later wish wins."""
    widths = [allowance] * len(graph.links)
    met: set[Span] = set()
    if not wishes:
        return widths, met
    import shapely

    middles = [at_share(link.edge, 0.5) for link in graph.links]
    index = shapely.STRtree(shapely.points([[float(p.x), float(p.y)] for p in middles]))
    for wish in wishes:
        for edge in wish.edges:
            left, top, right, bottom = reach(edge)
            box = shapely.box(left - 2 * NEAR, top - 2 * NEAR, right + 2 * NEAR, bottom + 2 * NEAR)
            for number in index.query(box):
                link = graph.links[number].edge
                if lies_on(edge, link.start) and lies_on(edge, link.end) and lies_on(edge, middles[number]):
                    widths[number] = wish.width
                    met.add(wish.statement.span)
    return widths, met


def _side(halves: Sequence[int], part: Callable[[int], Part], widths: list[Fraction]) -> Side:
    parts = tuple(part(half) for half in halves)
    whole = Edge(parts[0].edge.start, parts[-1].edge.end, parts[0].edge.arc)
    return Side(whole, parts, widths[halves[0] // 2])


def _parted(
    graph: Noded, ring: tuple[int, ...], part: Callable[[int], Part], widths: list[Fraction]
) -> list[list[int]]:
    """A ring of halves parted into those of whole sides, the first starting at the corner that is read
    first."""
    corners = [at for at in range(len(ring)) if _is_corner(graph, ring[at - 1], ring[at], part, widths)]
    if len(corners) < 2:
        corners = sorted({*corners, *_two_ends(graph, ring)})
    corners = sorted({*corners, *_parted_circles(graph, ring, corners)})
    first = min(
        range(len(corners)), key=lambda each: _reading(graph.nodes[leaves(graph, ring[corners[each]])])
    )
    corners = corners[first:] + corners[:first]
    sides = []
    for at, start in enumerate(corners):
        end = corners[(at + 1) % len(corners)]
        count = (end - start) % len(ring) or len(ring)
        sides.append([ring[(start + step) % len(ring)] for step in range(count)])
    return sides


def _reading(p: Point) -> tuple[int, int]:
    return _line(p.y), _line(p.x)


def _two_ends(graph: Noded, ring: tuple[int, ...]) -> tuple[int, int]:
    """Where a ring without corners (a circle) is parted: at its leftmost and its rightmost node."""
    xs = [float(graph.nodes[leaves(graph, half)].x) for half in ring]
    return xs.index(min(xs)), xs.index(max(xs))


def _parted_circles(graph: Noded, ring: tuple[int, ...], corners: list[int]) -> list[int]:
    """Where sides that would end where they start are parted, half-way along: circles hung up by one
    point."""
    halfway = []
    for at, start in enumerate(corners):
        count = (corners[(at + 1) % len(corners)] - start) % len(ring) or len(ring)
        end = ring[(start + count) % len(ring)]
        if leaves(graph, ring[start]) == leaves(graph, end) and count > 1:
            halfway.append((start + count // 2) % len(ring))
    return halfway


def _is_corner(
    graph: Noded, arriving: int, leaving: int, part: Callable[[int], Part], widths: list[Fraction]
) -> bool:
    """Whether two successive halves are different sides."""
    one, other = half_edge(graph, arriving), half_edge(graph, leaving)
    if (part(arriving).neighbour is None) != (part(leaving).neighbour is None):
        return True
    if widths[arriving // 2] != widths[leaving // 2]:
        return True
    if one.arc is not None or other.arc is not None:
        return not (
            same_circle(one, other) and one.arc and other.arc and one.arc.clockwise == other.arc.clockwise
        )
    ax, ay = difference(one.end.x, one.start.x), difference(one.end.y, one.start.y)
    bx, by = difference(other.end.x, other.start.x), difference(other.end.y, other.start.y)
    if ax * bx + ay * by <= 0:
        return True
    # how far the shared end lies from the straight line between the far ends
    return abs(ax * by - ay * bx) / hypot(ax + bx, ay + by) > 2 * NEAR
