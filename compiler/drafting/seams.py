"""Paths to edges: hops, arcs, circles, and lines from side to side. Local places in, local edges out."""

from __future__ import annotations

from itertools import pairwise
from math import hypot
from typing import NamedTuple, assert_never

from ..diagnostics.source import Span
from ..geometry.biarcs import SMOOTH_POINTS_LEAST, smooth
from ..geometry.curves import (
    along,
    at_share,
    inside_ring,
    same_place,
    tangent_at_end,
)
from ..geometry.edge import Arc, Edge, Point
from ..geometry.meetings import first_meeting, meetings
from ..language import tree
from ..measure.angle import direction
from ..measure.tolerance import NEAR, Number, difference
from ..words.messages import seams as complain
from .arcs import arc_around, arc_through
from .context import Context
from .points import circle_of, line_of, place_of

SeamStatement = tree.Seam | tree.SeamThrough | tree.SeamCircle | tree.SeamSmooth

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


def _to_outline(
    at: Point | None, arriving: tuple[Number, Number] | None, hop: tree.ToOutline, here: Context
) -> Edge | None:
    if at is None:
        return None
    if hop.heading is not None:
        arriving = direction(hop.heading.degrees)
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
    circle = circle_of(seam.circle, here)
    if circle is None:
        return []
    radius = seam.circle.radius.inches if seam.circle.radius else circle.radius
    at = here.to_block(circle.center)
    left, right = Point(at.x - radius, at.y), Point(at.x + radius, at.y)
    back = here.to_block.inverse()
    halves = [
        Edge(left, right, Arc(at, float(radius), True)),
        Edge(right, left, Arc(at, float(radius), True)),
    ]
    return [(back.edge(half), seam.span) for half in halves]


def smooth_edges(seam: tree.SeamSmooth, here: Context) -> Drawn:
    """The arcs of a smooth seam."""
    places = [place_of(each, here) for each in seam.points]
    known = [each for each in places if each is not None]
    if len(known) < len(places):
        return []
    for place, following, phrase in zip(known, known[1:], seam.points[1:], strict=False):
        if same_place(place, following):
            here.bench.say(complain.seam_no_length(phrase.span))
            return []
    closed = same_place(known[0], known[-1])
    if len(known) - closed < SMOOTH_POINTS_LEAST:
        here.bench.say(complain.smooth_needs_more(seam.span, closed))
        return []
    return [(edge, seam.span) for edge in smooth(known)]


def seam_edges(seam: SeamStatement, here: Context) -> Drawn:
    """The edges of any seam statement."""
    match seam:
        case tree.Seam():
            return path_edges(seam.path, here)
        case tree.SeamThrough():
            return through_edges(seam.line, here)
        case tree.SeamCircle():
            return circle_edges(seam, here)
        case tree.SeamSmooth():
            return smooth_edges(seam, here)
    assert_never(seam)
