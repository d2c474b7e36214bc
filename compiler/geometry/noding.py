"""Strokes to a planar graph: every stroke split wherever another meets it, every line kept once.

In come strokes (straight or curved, crossing and overlapping as they were drawn); out come *links*, edges
that touch each other only at their ends, between numbered *nodes*. Places nearer than NEAR are one node, and
the exact one of two such places is kept. Which pairs may meet is found by `close_pairs`, so the cost grows
with the number of meetings; of those there may be so many and no more.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from math import floor
from typing import Any

from ..measure.tolerance import NEAR, Number
from .close_pairs import CROSSINGS_MOST, TooManyMeetings, close_pairs, crossing, ends_on
from .curves import (
    along,
    at_share,
    crossings,
    meet_lines,
    same_circle,
    same_place,
    share_at,
    shared_ends,
)
from .edge import Edge, Point


@dataclass
class NodedLine:
    """One edge of the graph, between two nodes, with every stroke that runs along it."""

    edge: Edge
    start: int
    end: int
    strokes: list[int] = field(default_factory=list)


@dataclass
class Noded:
    """The noded strokes. `crossed` lists where two strokes cross with an end of neither there."""

    nodes: list[Point]
    links: list[NodedLine]
    crossed: list[tuple[int, int, int]]  # stroke, stroke, node


class NodeTable:
    """Places by number; those within NEAR share one.

    A float within NEAR of a grid line takes the line's own exact value, so that what a turn or a square root
    brings to the block's edge lies on it.
    """

    def __init__(self, across: Sequence[Number] = (), down: Sequence[Number] = ()) -> None:
        self.places: list[Point] = []
        self._across = {round(float(x) / NEAR): x for x in across}
        self._down = {round(float(y) / NEAR): y for y in down}
        self._cells: dict[tuple[int, int], list[int]] = {}

    def number(self, p: Point) -> int:
        """The number of a place, a new one if it is new."""
        if not is_exact(p):
            p = Point(
                self._across.get(round(float(p.x) / NEAR), p.x), self._down.get(round(float(p.y) / NEAR), p.y)
            )
        x, y = float(p.x), float(p.y)
        column, row = floor(x / NEAR), floor(y / NEAR)
        for i in (column, column - 1, column + 1):
            for j in (row, row - 1, row + 1):
                for known in self._cells.get((i, j), ()):
                    q = self.places[known]
                    if abs(float(q.x) - x) <= NEAR and abs(float(q.y) - y) <= NEAR and same_place(p, q):
                        if is_exact(p) and not is_exact(q):
                            self.places[known] = p
                        return known
        self._cells.setdefault((column, row), []).append(len(self.places))
        self.places.append(p)
        return len(self.places) - 1

    def find(self, p: Point) -> int | None:
        """The number of a place that is known."""
        column, row = floor(float(p.x) / NEAR), floor(float(p.y) / NEAR)
        for i in (column, column - 1, column + 1):
            for j in (row, row - 1, row + 1):
                for known in self._cells.get((i, j), ()):
                    if same_place(p, self.places[known]):
                        return known
        return None


def is_exact(p: Point) -> bool:
    """Whether a place is known as fractions."""
    return not isinstance(p.x, float) and not isinstance(p.y, float)


def node_strokes(
    strokes: Sequence[Edge],
    across: Sequence[Number] = (),
    down: Sequence[Number] = (),
    most: int = CROSSINGS_MOST,
) -> Noded:
    """The planar graph of all strokes; `across` and `down` are the grid's lines. Where they meet too often it
    raises TooManyMeetings with the number of a stroke that has much to do with it; `most` may cross."""
    table = NodeTable(across, down)
    lines = _distinct(strokes, table)
    try:
        return _noded(lines, table, most)
    except TooManyMeetings as crowd:
        raise TooManyMeetings(lines[crowd.line].strokes[0]) from None


def _noded(lines: list[NodedLine], table: NodeTable, most: int) -> Noded:
    """The graph of distinct lines."""
    splits: list[list[tuple[float, int]]] = [[(0.0, line.start), (1.0, line.end)] for line in lines]
    crossed: list[tuple[int, int, int]] = []
    straight, curved = close_pairs(
        [line.edge for line in lines], [(line.start, line.end) for line in lines], most
    )
    _split_straight(lines, straight, table, splits, crossed)
    for one, other in curved:
        if len(crossed) > most:
            raise TooManyMeetings(one)
        for p in crossings(lines[one].edge, lines[other].edge):
            node = table.number(p)
            _split(lines, one, node, table, splits)
            _split(lines, other, node, table, splits)
            ends = (lines[one].start, lines[one].end, lines[other].start, lines[other].end)
            if node not in ends and not same_circle(lines[one].edge, lines[other].edge):
                crossed.append((lines[one].strokes[0], lines[other].strokes[0], node))
    return Noded(table.places, _links(lines, splits, table), crossed)


def _distinct(strokes: Sequence[Edge], table: NodeTable) -> list[NodedLine]:
    """Each line once, however many strokes drew it, its ends numbered."""
    lines: dict[tuple[Any, ...], NodedLine] = {}
    for number, stroke in enumerate(strokes):
        start, end = table.number(stroke.start), table.number(stroke.end)
        if start == end and stroke.arc is None:
            continue
        key = _key(stroke, start, end, table)
        if key in lines:
            lines[key].strokes.append(number)
        else:
            lines[key] = NodedLine(stroke, start, end, [number])
    return list(lines.values())


def _key(edge: Edge, start: int, end: int, table: NodeTable) -> tuple[Any, ...]:
    """What two drawings of one line have in common: its ends, and the middle of an arc."""
    ends = (min(start, end), max(start, end))
    if edge.arc is None:
        return ends
    return (*ends, table.number(at_share(edge, 0.5)))


def _split_straight(
    lines: list[NodedLine],
    pairs: Any,
    table: NodeTable,
    splits: list[list[tuple[float, int]]],
    crossed: list[tuple[int, int, int]],
) -> None:
    """Splits straight lines where an end of one lies on another, and where two cross."""
    import numpy as np

    if pairs.shape[1] == 0:
        return
    ends = np.array([[float(v) for p in (each.edge.start, each.edge.end) for v in p] for each in lines])
    numbers = np.array([[each.start, each.end] for each in lines])
    for one, other in ((pairs[0], pairs[1]), (pairs[1], pairs[0])):
        for end in (0, 1):
            touching = ends_on(ends[one], ends[other][:, 2 * end : 2 * end + 2])
            touching &= numbers[other][:, end] != numbers[one][:, 0]
            touching &= numbers[other][:, end] != numbers[one][:, 1]
            for at in np.nonzero(touching)[0]:
                _split(lines, int(one[at]), int(numbers[other[at], end]), table, splits)
    for at in np.nonzero(crossing(ends[pairs[0]], ends[pairs[1]]))[0]:
        one, other = int(pairs[0][at]), int(pairs[1][at])
        node = table.number(_meeting(lines[one].edge, lines[other].edge, table))
        if node in (lines[one].start, lines[one].end, lines[other].start, lines[other].end):
            continue
        _split(lines, one, node, table, splits)
        _split(lines, other, node, table, splits)
        crossed.append((lines[one].strokes[0], lines[other].strokes[0], node))


def _meeting(one: Edge, other: Edge, table: NodeTable) -> Point:
    """Where two crossing lines meet: a place that is known already, else worked out exactly if it can be."""
    floats = [Point(float(p.x), float(p.y)) for p in (one.start, one.end, other.start, other.end)]
    a, b, c, d = floats
    met = meet_lines(a, (b.x - a.x, b.y - a.y), c, (d.x - c.x, d.y - c.y))
    assert met is not None, "crossing lines are not parallel"
    rough = along(a, (b.x - a.x, b.y - a.y), met[0])
    known = table.find(rough)
    if known is not None and is_exact(table.places[known]):
        return table.places[known]
    if all(is_exact(p) for p in (one.start, one.end, other.start, other.end)):
        step = (one.end.x - one.start.x, one.end.y - one.start.y)
        exact = meet_lines(
            one.start, step, other.start, (other.end.x - other.start.x, other.end.y - other.start.y)
        )
        assert exact is not None
        return along(one.start, step, exact[0])
    return rough


def _split(
    lines: list[NodedLine], line: int, node: int, table: NodeTable, splits: list[list[tuple[float, int]]]
) -> None:
    if node not in (lines[line].start, lines[line].end):
        splits[line].append((share_at(lines[line].edge, table.places[node]), node))


def _links(
    lines: list[NodedLine], splits: list[list[tuple[float, int]]], table: NodeTable
) -> list[NodedLine]:
    """The stretches between splits, each kept once."""
    links: dict[tuple[Any, ...], NodedLine] = {}
    for line, places in zip(lines, splits, strict=True):
        numbers = list(dict.fromkeys(node for _, node in sorted(places)))
        if line.start == line.end:
            numbers.append(line.end)
        for start, end in pairwise(numbers):
            edge = Edge(table.places[start], table.places[end], line.edge.arc)
            key = _key(edge, start, end, table) if edge.arc else (min(start, end), max(start, end))
            if key in links:
                links[key].strokes += line.strokes
            else:
                links[key] = NodedLine(edge, start, end, list(line.strokes))
    return list(links.values())


def pair_meetings(one: Edge, other: Edge) -> list[Point]:
    """Every place where two edges meet: crossings, touching ends, and the ends of a shared stretch."""
    if one.arc is not None or other.arc is not None:
        return crossings(one, other)
    places = shared_ends(one, other)
    d = (one.end.x - one.start.x, one.end.y - one.start.y)
    e = (other.end.x - other.start.x, other.end.y - other.start.y)
    met = meet_lines(one.start, d, other.start, e)
    if met is not None and 0 <= met[0] <= 1 and 0 <= met[1] <= 1:
        places.append(along(one.start, d, met[0]))
    return places
