"""What a quilter would keep together: the units that a block was written with, squares of two triangles, and
stars."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import sqrt
from typing import Final

from ...drafting.model import Draft
from ...geometry.stroke import place_of
from ...measure.tolerance import SQUARED
from .seam_graph import SeamGraph

RAYS: Final = 5
"""Pieces that make a star about the place where their points meet, at the least: four are a four-patch, whose
like may lie all over a grid."""


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
            elif self.unit_of[link.right] == self.unit_of[link.left] and _is_pair(
                graph, link.right, link.left, number
            ):
                self.within.append(pairs + number)
            else:
                self.within.append(-1)
        self.groups = self._groups(draft, graph)
        self.group_of: dict[int, int] = {
            piece: number for number, group in enumerate(self.groups) for piece in group
        }
        # of each link: whether it lies between two pieces that are set in as one
        self.held = [
            self.group_of.get(link.right, -1) == self.group_of.get(link.left, -2) for link in graph.links
        ]

    def _groups(self, draft: Draft, graph: SeamGraph) -> list[tuple[int, ...]]:
        """What is set in as one, no piece in two: used units, then pairs, then stars."""
        units: dict[int, list[int]] = {}
        for piece, unit in enumerate(self.unit_of):
            if unit >= 0:
                units.setdefault(unit, []).append(piece)
        pairs = [
            (graph.links[number].right, graph.links[number].left)
            for number, within in enumerate(self.within)
            if within >= len(draft.units)
        ]
        taken = {piece for pieces in units.values() for piece in pieces}
        found = [tuple(pieces) for pieces in units.values()]
        for candidates in (_by_themselves(pairs), _stars(draft, graph)):
            free = [pieces for pieces in candidates if taken.isdisjoint(pieces)]
            taken.update(piece for pieces in free for piece in pieces)
            found += free
        return found


def _by_themselves(groups: Sequence[tuple[int, ...]]) -> list[tuple[int, ...]]:
    """The groups that share no piece with another."""
    times: dict[int, int] = {}
    for piece in (piece for group in groups for piece in group):
        times[piece] = times.get(piece, 0) + 1
    return [group for group in groups if all(times[piece] == 1 for piece in group)]


def _stars(draft: Draft, graph: SeamGraph) -> list[tuple[int, ...]]:
    """Pieces of one template all round a place. Where the points of stars meet, pieces lie so too; there the
    cloths are repeated in fewer turns, which tells the stars."""
    label = {member.piece - 1: shape.label for shape in draft.shapes for member in shape.members}
    ranked: dict[int, list[tuple[int, ...]]] = {}
    for halves in graph.halves:
        if len(halves) < RAYS or any(graph.links[half // 2].rim for half in halves):
            continue
        round_it = tuple(_round(graph, halves[0]))
        if len(set(round_it)) == len(round_it) and len({label[piece] for piece in round_it}) == 1:
            cloths = [draft.pieces[piece].fabric for piece in round_it]
            period = next(n for n in range(1, len(cloths) + 1) if cloths == cloths[n:] + cloths[:n])
            ranked.setdefault(period, []).append(round_it)
    found: list[tuple[int, ...]] = []
    for period in sorted(ranked):
        taken = {piece for star in found for piece in star}
        found += [star for star in _by_themselves(ranked[period]) if taken.isdisjoint(star)]
    return found


def _round(graph: SeamGraph, first: int) -> Iterator[int]:
    """The pieces round the place of a half, in order."""
    half = first
    while True:
        yield graph.cloth(half ^ 1)
        half = graph.following[half ^ 1]
        if half == first:
            return


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
        apart = [at for at in corners if min(abs(at - stroke.start), abs(at - stroke.end)) > SQUARED]
        if len(apart) != 1:
            return False
        tips.append(apart[0])
    square = abs(stroke.start - tips[0]) ** 2 + abs(stroke.end - tips[0]) ** 2 - stroke.length**2
    return (
        abs(tips[0] + tips[1] - stroke.start - stroke.end) < SQUARED and abs(square) < SQUARED * stroke.length
    )
