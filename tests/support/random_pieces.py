"""Pieces and drafts from lists of corners, without the language: for tests of what comes after drafting.

A corner is (x, y), or (x, y, (cx, cy), clockwise) where an arc starts there. Rings may be given either way
round; neighbours are found by laying the sides on each other, slowly and plainly.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from math import atan2, cos, hypot, pi, sin, sqrt

from hypothesis import strategies as st
from piecewright.drafting.model import Draft, Part, Piece, Side, TrimRule
from piecewright.drafting.pieces import graph_of
from piecewright.drafting.shapes import match_shapes
from piecewright.geometry.edge import Arc, Edge, Point
from piecewright.geometry.stroke import Stroke, doubled_area, edge_of, stroke_of

QUARTER = Fraction(1, 4)
TOUCH = 1e-6  # inches: what the builder takes for one place


def ring_edges(corners: Sequence[tuple]) -> tuple[Edge, ...]:
    """The corners' ring, clockwise as seen."""
    edges = []
    for corner, after in zip(corners, [*corners[1:], corners[0]], strict=True):
        start, end = Point(corner[0], corner[1]), Point(after[0], after[1])
        arc = None
        if len(corner) == 4:
            (cx, cy), clockwise = corner[2], corner[3]
            arc = Arc(Point(cx, cy), hypot(float(corner[0] - cx), float(corner[1] - cy)), clockwise)
        edges.append(Edge(start, end, arc))
    if doubled_area([stroke_of(edge) for edge in edges]) < 0:
        edges = [edge.reversed() for edge in reversed(edges)]
    return tuple(edges)


def pieces_of(
    rings: Sequence[Sequence[tuple]],
    *,
    holes: dict[int, Sequence[Sequence[tuple]]] | None = None,
    fabrics: Sequence[str] = (),
    allowance: Fraction = QUARTER,
    outer_allowance: Fraction | None = None,
) -> tuple[Piece, ...]:
    """Pieces numbered from 1 in the order given, with the neighbours along every side."""
    outlines = [ring_edges(ring) for ring in rings]
    inner = [
        [tuple(edge.reversed() for edge in reversed(ring_edges(hole))) for hole in (holes or {}).get(at, ())]
        for at in range(len(rings))
    ]
    everything = [(at, edge) for at, ring in enumerate(outlines) for edge in ring]
    everything += [(at, edge) for at, each in enumerate(inner) for ring in each for edge in ring]

    def sides(at: int, ring: Sequence[Edge]) -> tuple[Side, ...]:
        made = []
        for edge in ring:
            parts = _parts(at, edge, everything)
            width = allowance if parts[0].neighbour or outer_allowance is None else outer_allowance
            made.append(Side(edge, parts, width))
        return tuple(made)

    pieces = []
    for at, ring in enumerate(outlines):
        area = sum(doubled_area([stroke_of(edge) for edge in each]) / 2 for each in (ring, *inner[at]))
        fabric = fabrics[at] if at < len(fabrics) else "dark"
        windows = tuple(sides(at, each) for each in inner[at])
        pieces.append(Piece(at + 1, None, fabric, sides(at, ring), windows, area, ring[0].start))
    return tuple(pieces)


def _parts(at: int, edge: Edge, everything: Sequence[tuple[int, Edge]]) -> tuple[Part, ...]:
    stroke = stroke_of(edge)
    shares = {0.0, 1.0}
    for _, other in everything:
        for place in (stroke_of(other).start, stroke_of(other).end):
            share = share_of(stroke, place)
            if share is not None and TOUCH < share * stroke.length < stroke.length - TOUCH:
                shares.add(share)
    steps = sorted(shares)
    kept = [steps[0]]
    for step in steps[1:]:
        if (step - kept[-1]) * stroke.length > TOUCH:
            kept.append(step)
    parts = []
    for first, last in pairwise(kept):
        middle = stroke.at((first + last) / 2)
        neighbour = next(
            (
                number + 1
                for number, other in everything
                if number != at and share_of(stroke_of(other), middle) is not None
            ),
            None,
        )
        piece = Stroke(stroke.at(first), stroke.at(last), stroke.center, stroke.sweep * (last - first))
        if parts and parts[-1].neighbour == neighbour and neighbour is None:
            piece = stroke
            parts.pop()
        parts.append(Part(edge if len(kept) == 2 else edge_of(piece), neighbour))
    return tuple(parts)


def share_of(stroke: Stroke, place: complex) -> float | None:
    """The share of the stroke's length at which it passes a place, None where it doesn't."""
    if stroke.center is None:
        along = stroke.end - stroke.start
        share = ((place - stroke.start) * along.conjugate()).real / abs(along) ** 2
    else:
        if abs(abs(place - stroke.center) - stroke.radius) > TOUCH:
            return None
        first, here = stroke.start - stroke.center, place - stroke.center
        turned = atan2((first.conjugate() * here).imag, (first.conjugate() * here).real)
        if stroke.sweep < 0:
            turned = -turned
        if turned < -TOUCH:
            turned += 2 * pi
        share = turned / abs(stroke.sweep)
    if not -TOUCH <= share * stroke.length <= stroke.length + TOUCH:
        return None
    share = min(max(share, 0.0), 1.0)
    return share if abs(stroke.at(share) - place) <= TOUCH else None


def draft_of(pieces: Sequence[Piece], trim: TrimRule | None = None) -> Draft:
    """A draft of the pieces, whose outline is their bounding box."""
    places = [side.edge.start for piece in pieces for side in piece.ring]
    left, top = min(at.x for at in places), min(at.y for at in places)
    right, bottom = max(at.x for at in places), max(at.y for at in places)
    outline = ring_edges([(left, top), (right, top), (right, bottom), (left, bottom)])
    return Draft(
        "Trial Block",
        1,
        right - left,
        bottom - top,
        outline,
        (left, right),
        (top, bottom),
        tuple(pieces),
        match_shapes(pieces),
        (),
        trim or TrimRule(),
        QUARTER,
        (),
        graph=graph_of(pieces),
    )


def moved(piece: Piece, turned: float, mirror: bool, shift: tuple[float, float], number: int) -> Piece:
    """The piece mirrored left to right, then turned clockwise about (0, 0), then shifted; ring start kept."""
    factor = complex(cos(turned * pi / 180), sin(turned * pi / 180))

    def carried(place: complex) -> complex:
        return (-place.conjugate() if mirror else place) * factor + complex(*shift)

    def ring(sides: Sequence[Side]) -> tuple[Side, ...]:
        made = []
        for side in sides:
            old = stroke_of(side.edge)
            center = None if old.center is None else carried(old.center)
            new = Stroke(carried(old.start), carried(old.end), center, -old.sweep if mirror else old.sweep)
            edge = edge_of(new.reversed() if mirror else new)
            made.append(Side(edge, (Part(edge, None),), side.allowance))
        return tuple(reversed(made)) if mirror else tuple(made)

    return replace(piece, number=number, ring=ring(piece.ring), holes=tuple(ring(h) for h in piece.holes))


def star_polygons(least: int = 3, most: int = 9, reach: int = 64) -> st.SearchStrategy[list[tuple]]:
    """Polygons that a ray from the middle meets once: convex and not, corners on eighths of an inch or so."""
    lengths = st.lists(st.integers(reach // 4, reach), min_size=least, max_size=most)

    def corners(radii: list[int]) -> list[tuple]:
        count = len(radii)
        return [
            (radius / 8 * cos(2 * pi * at / count), radius / 8 * sin(2 * pi * at / count))
            for at, radius in enumerate(radii)
        ]

    return lengths.map(corners)


def fan_rings(middle: tuple[float, float], spokes: Sequence[float], side: float = 6.0) -> list[list[tuple]]:
    """A square block cut from one point within to places on its edge, in inches round from top left."""

    def at(along: float) -> tuple[float, float]:
        along %= 4 * side
        edge, rest = divmod(along, side)
        return [(rest, 0.0), (side, rest), (side - rest, side), (0.0, side - rest)][int(edge)]

    ordered = sorted(spokes)
    rings = []
    for first, last in pairwise([*ordered, ordered[0] + 4 * side]):
        turns = [at(corner * side) for corner in range(1, 8) if first < corner * side < last]
        rings.append([middle, at(first), *turns, at(last)])
    return rings


def fans() -> st.SearchStrategy[list[list[tuple]]]:
    """Fans of three to nine pieces, spokes on half inches, the middle in the middle or not."""
    spokes = st.lists(st.integers(0, 47).map(lambda half: half / 2), min_size=3, max_size=9, unique=True)
    middles = st.sampled_from([(3.0, 3.0), (2.0, 3.5), (2.25, 2.875)])
    return st.builds(fan_rings, middles, spokes)


def star_rings(side: float = 3.0) -> list[list[tuple]]:
    """An eight-pointed star in a square: eight 45-degree diamonds, four squares, four triangles."""
    middle = side * (1 + sqrt(2) / 2)

    def at(turned: int, reach: float) -> tuple[float, float]:
        angle = turned * pi / 8
        return (middle + reach * sin(angle), middle - reach * cos(angle))

    waist, tip = side, 2 * side * cos(pi / 8)
    low, high, size = side, side * (1 + sqrt(2)), side * (2 + sqrt(2))
    diamonds = [[(middle, middle), at(k, waist), at(k + 1, tip), at(k + 2, waist)] for k in range(0, 16, 2)]
    squares = [
        [(0, 0), (low, 0), at(-2, waist), (0, low)],
        [(high, 0), (size, 0), (size, low), at(2, waist)],
        [(size, high), (size, size), (high, size), at(6, waist)],
        [(low, size), (0, size), (0, high), at(10, waist)],
    ]
    triangles = [
        [(low, 0), (high, 0), at(0, waist)],
        [(size, low), (size, high), at(4, waist)],
        [(high, size), (low, size), at(8, waist)],
        [(0, high), (0, low), at(12, waist)],
    ]
    return diamonds + squares + triangles
