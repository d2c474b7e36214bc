"""Outlines side by side to sides with their neighbours: what lies along each stretch of every edge.

All edges on one line are cut up at all corners on it (see geometry.collinear), and each stretch knows what
lies on its two sides. Inches. Edges are straight: blocks and strips of a quilt have no others.
"""

from __future__ import annotations

from cmath import phase, rect
from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import pi
from typing import Final, NamedTuple

from ..drafting.model import Part, Side
from ..geometry.collinear import gaps_between
from ..geometry.edge import Edge, Point
from ..geometry.stroke import place_of
from ..measure.tolerance import TOGETHER

HEADING_DIGITS: Final = 6
"""Decimals of a radian by which headings are one."""


class _Stretch(NamedTuple):
    """One edge on its line, from and to in inches along it; `forward`: it runs as the line does."""

    start: float
    end: float
    piece: int
    side: int
    forward: bool


def sides_of(outlines: Sequence[Sequence[Edge]], allowances: Sequence[Fraction]) -> list[tuple[Side, ...]]:
    """Each outline's sides, neighbours counted from 1. One allowance for each outline, in inches."""
    sides: list[list[Side | None]] = [[None] * len(outline) for outline in outlines]
    for line in _lines(outlines):
        for stretch, parts in _parted(line, outlines):
            edge = outlines[stretch.piece][stretch.side]
            sides[stretch.piece][stretch.side] = Side(edge, tuple(parts), allowances[stretch.piece])
    whole = [tuple(side for side in each if side is not None) for each in sides]
    assert [len(each) for each in whole] == [len(each) for each in outlines], "every edge lies on one line"
    return whole


def _lines(outlines: Sequence[Sequence[Edge]]) -> Iterator[list[_Stretch]]:
    """The edges that lie on each line."""
    every: list[tuple[float, float, _Stretch]] = []
    for piece, outline in enumerate(outlines):
        for side, edge in enumerate(outline):
            assert edge.arc is None, "a quilt's own seams are straight"
            start, end = place_of(edge.start), place_of(edge.end)
            heading = round(phase(end - start) % pi, HEADING_DIGITS) % round(pi, HEADING_DIGITS)
            along = rect(1, -heading)
            one, two = start * along, end * along
            forward = two.real > one.real
            low, high = sorted((one.real, two.real))
            every.append((heading, one.imag, _Stretch(low, high, piece, side, forward)))
    every.sort()
    line: list[_Stretch] = []
    for at, (heading, aside, stretch) in enumerate(every):
        if at and (heading != every[at - 1][0] or aside - every[at - 1][1] > TOGETHER):
            yield line
            line = []
        line.append(stretch)
    yield line


def _parted(
    line: Sequence[_Stretch], outlines: Sequence[Sequence[Edge]]
) -> Iterator[tuple[_Stretch, list[Part]]]:
    """Each stretch of a line with its parts, in the way that its edge runs."""
    corners: dict[float, Point] = {}
    for stretch in line:
        edge = outlines[stretch.piece][stretch.side]
        start, end = (edge.start, edge.end) if stretch.forward else (edge.end, edge.start)
        corners.setdefault(stretch.start, start)
        corners.setdefault(stretch.end, end)
    stops, covered = gaps_between([(each.start, each.end) for each in line], TOGETHER)
    owners: dict[tuple[int, bool], int] = {}
    for stretch, gaps in zip(line, covered, strict=True):
        for at in gaps:
            assert (at, stretch.forward) not in owners, "two pieces of a quilt lie over each other"
            owners[at, stretch.forward] = stretch.piece
    points = [corners[stop] for stop in stops]
    for stretch, gaps in zip(line, covered, strict=True):
        yield stretch, _parts(stretch, gaps, owners, points)


def _parts(
    stretch: _Stretch, gaps: range, owners: dict[tuple[int, bool], int], points: Sequence[Point]
) -> list[Part]:
    parts: list[Part] = []
    for at in gaps if stretch.forward else reversed(gaps):
        ends = (points[at], points[at + 1]) if stretch.forward else (points[at + 1], points[at])
        other = owners.get((at, not stretch.forward))
        neighbour = None if other is None else other + 1
        if parts and parts[-1].neighbour == neighbour:
            parts[-1] = Part(Edge(parts[-1].edge.start, ends[1]), neighbour)
        else:
            parts.append(Part(Edge(*ends), neighbour))
    return parts
