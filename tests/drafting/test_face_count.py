"""Piece counts and areas against two independent ways, on random blocks.

Euler's formula for a planar graph of c components: V - E + F = 1 + c, the unbounded face counted (SOURCES
7.1),
with components by networkx; and shapely's own polygonizer. Both start from the block's data, spread out and
noded by shapely, and never look at the draft.
"""

from __future__ import annotations

from math import atan2, cos, pi, radians, sin

import networkx
import shapely
from hypothesis import HealthCheck, assume, given, settings
from piecewright.diagnostics.diagnostic import Severity
from piecewright.drafting.model import Draft
from piecewright.measure.tolerance import near
from support.check import draft_text, said
from support.random_blocks import EXCUSED, Group, RandomBlock, Seam, random_blocks

CHORDS = 360  # of a quarter circle, so that places where circles touch grid lines are corners of the chain
SNAP = 1e-7  # inches: as far as the rounding of turned places reaches
SEED = settings(
    derandomize=True,
    deadline=None,
    max_examples=40,
    database=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)

Chain = list[tuple[float, float]]


def chains(block: RandomBlock) -> list[Chain]:
    """Every copy of every seam and the outline, as chains of places in inches."""
    side = float(block.cells * block.cell)
    found: list[Chain] = [[(0, 0), (side, 0), (side, side), (0, side), (0, 0)]]
    for group in block.groups:
        for seam in group.seams:
            chain = flat(seam, float(block.cell))
            found += [[copy(at) for at in chain] for copy in copies(group, float(block.cell), side)]
    return found


def flat(seam: Seam, cell: float) -> Chain:
    points = [(float(x) * cell, float(y) * cell) for x, y in seam.points]
    if seam.kind == "line":
        return points
    if seam.kind == "circle":
        (x, y), radius = points[0], float(seam.radius)
        turns = [pi / 2 * step / CHORDS for step in range(4 * CHORDS + 1)]
        return [(x + radius * cos(turn), y + radius * sin(turn)) for turn in turns]
    start, end, center = points
    radius = abs(start[0] - center[0]) + abs(start[1] - center[1])
    first = atan2(start[1] - center[1], start[0] - center[0])
    last = atan2(end[1] - center[1], end[0] - center[0])
    sweep = (last - first + pi) % (2 * pi) - pi
    turns = [first + sweep * step / CHORDS for step in range(CHORDS + 1)]
    return [(center[0] + radius * cos(turn), center[1] + radius * sin(turn)) for turn in turns]


def copies(group: Group, cell: float, side: float):
    if group.axis:
        (ax, ay), (bx, by) = [(float(x) * cell, float(y) * cell) for x, y in group.axis]
        dx, dy = bx - ax, by - ay
        square = dx * dx + dy * dy

        def over(at: tuple[float, float]) -> tuple[float, float]:
            share = ((at[0] - ax) * dx + (at[1] - ay) * dy) / square
            return 2 * (ax + share * dx) - at[0], 2 * (ay + share * dy) - at[1]

        return [lambda at: at, over]
    step = group.step or 360 / group.count

    def turned(copy: int):
        c, s, m = cos(radians(step * copy)), sin(radians(step * copy)), side / 2
        return lambda at: (m + c * (at[0] - m) - s * (at[1] - m), m + s * (at[0] - m) + c * (at[1] - m))

    return [turned(copy) for copy in range(group.count)]


def noded(block: RandomBlock) -> list[shapely.LineString]:
    lines = [shapely.LineString(chain) for chain in chains(block)]
    whole = shapely.unary_union(shapely.set_precision(shapely.MultiLineString(lines), SNAP), grid_size=SNAP)
    return list(whole.geoms) if hasattr(whole, "geoms") else [whole]


def drafted(block: RandomBlock) -> Draft:
    outcome = draft_text(block.text())
    errors = {each.code for each in outcome.diagnostics if each.severity is Severity.ERROR}
    assert errors <= EXCUSED, said(outcome)
    assume(outcome.value is not None)
    assert outcome.value is not None
    return outcome.value[0]


@SEED
@given(random_blocks(names=False))
def test_pieces_by_eulers_formula(block: RandomBlock) -> None:
    draft = drafted(block)
    graph = networkx.Graph()
    for line in noded(block):
        places = [(round(x, 6), round(y, 6)) for x, y in line.coords]
        networkx.add_path(graph, places)
    components = networkx.number_connected_components(graph)
    faces = 1 + components - graph.number_of_nodes() + graph.number_of_edges()
    assert len(draft.pieces) == faces - 1


@SEED
@given(random_blocks(names=False))
def test_pieces_and_areas_by_polygonizing(block: RandomBlock) -> None:
    draft = drafted(block)
    made = list(shapely.polygonize(noded(block)).geoms)
    assert len(draft.pieces) == len(made)
    slack = 1e-5 if not block.curved else 1e-4 * float(block.cells * block.cell) ** 2
    ours = sorted(float(piece.area) for piece in draft.pieces)
    theirs = sorted(polygon.area for polygon in made)
    assert all(near(a, b, slack) for a, b in zip(ours, theirs, strict=True))


@SEED
@given(random_blocks(names=False, curves=False))
def test_neighbours_by_shared_borders(block: RandomBlock) -> None:
    """Two pieces are neighbours just where their polygons share a stretch of border, of the same length."""
    draft = drafted(block)
    polygons = {
        piece.number: shapely.Polygon(
            [(float(side.edge.start.x), float(side.edge.start.y)) for side in piece.ring]
        )
        for piece in draft.pieces
        if not piece.holes
    }
    for one, first in polygons.items():
        told: dict[int, float] = {}
        for side in draft.pieces[one - 1].ring:
            for part in side.parts:
                if part.neighbour is not None:
                    told[part.neighbour] = told.get(part.neighbour, 0.0) + part.edge.length
        for other, second in polygons.items():
            if other != one:
                shared = (
                    shapely.set_precision(first, SNAP)
                    .boundary.intersection(shapely.set_precision(second, SNAP).boundary)
                    .length
                )
                assert near(shared, told.get(other, 0.0), 1e-5)
