"""Paths to edges: hops, arcs, circles, and lines from side to side. Local places in, local edges out."""

from __future__ import annotations

from itertools import pairwise
from math import hypot, pi
from typing import NamedTuple, assert_never

from ..diagnostics.source import Span
from ..geometry.curves import (
    along,
    at_share,
    distance,
    foot_on,
    inside_ring,
    meet_lines,
    same_place,
    tangent_at_end,
)
from ..geometry.edge import Arc, Edge, Point
from ..language import tree
from ..measure.tolerance import FAR, NEAR, Number, difference
from ..words.messages import seams as complain
from .context import Context
from .points import first_meeting, line_of, meetings, place_of

Drawn = list[tuple[Edge, Span]]
"""Edges with the words that drew each."""


class DrawnLine(NamedTuple):
    """One drawn line where it lies in the block. `unit` numbers the placed unit or cell that it borders or
    lies
    in, from 0; -1 for the writer's own seams and the outline. `turn` and `copy` say which copy drew it."""

    edge: Edge
    origin: Span
    unit: int = -1
    copy: int = 0
    turn: Span | None = None
    outline: bool = False


def path_edges(path: tree.Path, here: Context) -> Drawn:
    """The edges of a path; hops that were complained of are left out."""
    drawn: Drawn = []
    at = place_of(path.start, here)
    arriving: tuple[Number, Number] | None = None
    for hop in path.hops:
        if isinstance(hop, tree.ToOutline):
            edge = _to_outline(at, arriving, hop, here)
            reached = edge.end if edge else None
        else:
            reached = place_of(hop.point, here)
            edge = _hop(at, reached, hop, here) if at and reached else None
        if edge is not None:
            drawn.append((edge, hop.span))
            arriving = tangent_at_end(edge)
        at = reached
    return drawn


def _hop(
    start: Point, end: Point, hop: tree.StraightTo | tree.ArcAround | tree.ArcThrough, here: Context
) -> Edge | None:
    if same_place(start, end):
        here.bench.say(complain.seam_no_length(hop.span))
        return None
    match hop:
        case tree.StraightTo():
            return Edge(start, end)
        case tree.ArcAround():
            center = place_of(hop.center, here)
            return arc_around(start, end, center, hop.span, here) if center else None
        case tree.ArcThrough():
            via = place_of(hop.via, here)
            return arc_through(start, end, via, hop.span, here) if via else None
    assert_never(hop)


def arc_around(start: Point, end: Point, center: Point, span: Span, here: Context) -> Edge | None:
    """The shorter arc between two points equally far from a centre."""
    first, second = distance(center, start), distance(center, end)
    if abs(first - second) > NEAR or first <= NEAR:
        here.bench.say(complain.arc_uneven(span, first, second))
        return None
    edge = Edge(start, end, Arc(center, first, True))
    if distance(start, end) >= 2 * first - NEAR:
        here.bench.say(complain.arc_half_circle(span))
        return None
    return edge if edge.sweep < pi else Edge(start, end, Arc(center, first, False))


def arc_through(start: Point, end: Point, via: Point, span: Span, here: Context) -> Edge | None:
    """The arc from start to end that passes a third point."""
    half_a = Point((start.x + via.x) / 2, (start.y + via.y) / 2)
    half_b = Point((via.x + end.x) / 2, (via.y + end.y) / 2)
    met = meet_lines(half_a, (start.y - via.y, via.x - start.x), half_b, (via.y - end.y, end.x - via.x))
    away = foot_on(via, start, (end.x - start.x, end.y - start.y))
    if met is None or distance(away, via) <= NEAR:
        here.bench.say(complain.arc_straight(span))
        return None
    center = along(half_a, (start.y - via.y, via.x - start.x), met[0])
    radius = distance(center, start)
    if radius > FAR:
        here.bench.say(complain.arc_too_flat(span))
        return None
    area = (via.x - start.x) * (end.y - start.y) - (via.y - start.y) * (end.x - start.x)
    return Edge(start, end, Arc(center, radius, area > 0))


def _to_outline(
    at: Point | None, arriving: tuple[Number, Number] | None, hop: tree.ToOutline, here: Context
) -> Edge | None:
    if at is None:
        return None
    if arriving is None:
        here.bench.say(complain.outline_hop_first(hop.span))
        return None
    outline = here.local_outline()
    assert outline is not None, "seams are drawn after the outline"
    reached = first_meeting((at, arriving), outline)
    if reached is None:  # it arrived at the edge already, heading out
        return None
    return Edge(at, reached)


def through_edges(line: tree.Line, here: Context) -> Drawn:
    """A line from side to side: every stretch of it that lies inside the outline."""
    outline = here.local_outline()
    ray = line_of(line, here)
    if ray is None or outline is None:
        return []
    unit = hypot(float(ray[1][0]), float(ray[1][1]))
    steps = meetings(ray, outline)
    drawn: Drawn = []
    for near_end, far_end in pairwise(steps):
        if difference(far_end, near_end) * unit <= NEAR:
            continue
        edge = Edge(along(*ray, near_end), along(*ray, far_end))
        if inside_ring(at_share(edge, 0.5), outline):
            drawn.append((edge, line.span))
    if not drawn:
        here.bench.say(complain.through_misses(line.span))
    return drawn


def circle_edges(seam: tree.SeamCircle, here: Context) -> Drawn:
    """A whole circle as two half circles, split at its leftmost and rightmost places in the block, so that
    the circles of a turn's copies are one."""
    center = place_of(seam.center, here)
    if center is None:
        return []
    if seam.radius is not None:
        radius: Number = seam.radius.inches
    else:
        assert seam.through is not None
        passed = place_of(seam.through, here)
        if passed is None:
            return []
        radius = distance(center, passed)
        if radius <= NEAR:
            here.bench.say(complain.seam_no_length(seam.span))
            return []
    at = here.to_block(center)
    left, right = Point(at.x - radius, at.y), Point(at.x + radius, at.y)
    back = here.to_block.inverse()
    halves = [
        Edge(left, right, Arc(at, float(radius), True)),
        Edge(right, left, Arc(at, float(radius), True)),
    ]
    return [(back.edge(half), seam.span) for half in halves]


def seam_edges(seam: tree.Seam | tree.SeamThrough | tree.SeamCircle, here: Context) -> Drawn:
    """The edges of any seam statement."""
    match seam:
        case tree.Seam():
            return path_edges(seam.path, here)
        case tree.SeamThrough():
            return through_edges(seam.line, here)
        case tree.SeamCircle():
            return circle_edges(seam, here)
    assert_never(seam)
