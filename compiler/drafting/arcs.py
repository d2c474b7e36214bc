"""Arcs from the points that name them, with what there is to say of those that cannot be drawn."""

from __future__ import annotations

from math import pi

from ..diagnostics.source import Span
from ..geometry.curves import along, distance, foot_on, meet_lines
from ..geometry.edge import Arc, Edge, Point
from ..measure.tolerance import FAR, NEAR
from ..words.messages import seams as complain
from .context import Context


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
