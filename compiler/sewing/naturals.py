"""What a quilter would keep together: the units that a block was written with, and squares of two
triangles."""

from __future__ import annotations

from math import sqrt
from typing import Final

from ..drafting.model import Draft
from ..drafting.stroke import place_of
from ..measure.tolerance import NEAR
from .seam_graph import SeamGraph

CLOSE: Final = 10 * NEAR
"""Inches. How far two halves of a square may lie from where the other half wants them."""


class Naturals:
    """Which pieces and links belong to natural units."""

    def __init__(self, draft: Draft, graph: SeamGraph) -> None:
        self.unit_of = _units_of(draft)  # of each piece: the used block it came with, -1 none
        self.unit_sizes: dict[int, int] = {}
        for unit in self.unit_of:
            self.unit_sizes[unit] = self.unit_sizes.get(unit, 0) + 1
        self.within: list[int] = []  # of each link: the natural unit that it runs through, -1 none
        pairs = len(draft.units)
        for number, link in enumerate(graph.links):
            if link.rim:
                self.within.append(-1)
            elif self.unit_of[link.right] >= 0 and self.unit_of[link.right] == self.unit_of[link.left]:
                self.within.append(self.unit_of[link.right])
            elif _is_pair(graph, link.right, link.left, number):
                self.within.append(pairs + number)
            else:
                self.within.append(-1)


def _units_of(draft: Draft) -> list[int]:
    """The unit whose box holds each piece's inner point, -1 for none."""
    found = [-1] * len(draft.pieces)
    if not draft.units:
        return found
    step = max(float(draft.width), float(draft.height)) / max(1.0, sqrt(len(draft.units))) or 1.0
    squares: dict[tuple[int, int], list[int]] = {}
    boxes = [[float(each) for each in unit.box] for unit in draft.units]
    for number, (left, top, right, bottom) in enumerate(boxes):
        for across in range(int(left // step), int(right // step) + 1):
            for down in range(int(top // step), int(bottom // step) + 1):
                squares.setdefault((across, down), []).append(number)
    for index, piece in enumerate(draft.pieces):
        if not piece.unit:
            continue
        x, y = float(piece.inside.x), float(piece.inside.y)
        for number in squares.get((int(x // step), int(y // step)), ()):
            left, top, right, bottom = boxes[number]
            if left < x < right and top < y < bottom:
                found[index] = number
                break
    return found


def _is_pair(graph: SeamGraph, one: int, two: int, link: int) -> bool:
    """Whether two right-angled triangles make a rectangle along a link."""
    sides = [graph.pieces[piece].ring for piece in (one, two)]
    if any(len(ring) != 3 or any(side.edge.arc for side in ring) for ring in sides):
        return False
    stroke = graph.links[link].stroke
    tips = []
    for ring in sides:
        corners = [place_of(side.edge.start) for side in ring]
        apart = [at for at in corners if min(abs(at - stroke.start), abs(at - stroke.end)) > CLOSE]
        if len(apart) != 1:
            return False
        tips.append(apart[0])
    square = abs(stroke.start - tips[0]) ** 2 + abs(stroke.end - tips[0]) ** 2 - stroke.length**2
    return abs(tips[0] + tips[1] - stroke.start - stroke.end) < CLOSE and abs(square) < CLOSE * stroke.length
