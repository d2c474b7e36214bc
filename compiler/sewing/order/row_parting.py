"""A tree of rows to joins: each row is parted in its middle again and again, its last seam first.

Parts that are alike are parted once; the others are copies of the first, as in `splitting`. Only cells that
no straight seam parts are looked at for an order, by what finds that of a block.
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Sequence
from dataclasses import replace
from itertools import accumulate, pairwise
from math import pi
from typing import NamedTuple

from ...drafting.model import Draft, Part, Piece
from ...drafting.pieces import graph_of
from ...measure.tolerance import ONE_WAY
from .borders import part_rings, piece_rings
from .likeness import signature
from .parting import JoinNode, Parted, Parter, first_on_right
from .row_tree import InRows, Way, numbers_of
from .seam_graph import SeamGraph
from .splitting import Splitter


class Slice(NamedTuple):
    """Some neighbouring parts of a row, from `low` to before `high`."""

    row: InRows
    low: int
    high: int


class Joint(NamedTuple):
    """What a step joins of a row. `onward`: of its two sides, whether that is several parts of
    the row."""

    row: InRows
    low: int
    high: int
    onward: tuple[bool, bool]


class _Region(NamedTuple):
    """A part not yet parted. `slice`: None of one piece. Pieces are counted from 0, in the order of the rows;
    `edge` is a half on its outside, with it on the right."""

    node: int
    slice: Slice | None
    pieces: tuple[int, ...]
    edge: int


class RowParter(Parter):
    """Parts a top into nodes, as its rows say. `joints`: of each node that is joined, what it is of its
    row."""

    def __init__(self, draft: Draft, rows: InRows | int) -> None:
        super().__init__(draft)
        self.rows = rows if isinstance(rows, int) else _set_in(rows, draft)
        self.cut = [False] * len(self.graph.links)
        self.joints: dict[int, Joint] = {}

    def part(self) -> Parted:
        """Every node; the last on the stack is next, so whatever a region is like has been parted before."""
        rim = next(2 * number for number, link in enumerate(self.graph.links) if link.left < 0)
        stack = [self._region((self.rows,), None, rim)]
        while stack:
            region = stack.pop()
            node = self.nodes[region.node]
            if region.slice is None:
                node.pieces = region.pieces
                node.rings = piece_rings(self.graph, *region.pieces)
            elif not self._copied(region):
                stack += self._halves(region, region.slice)
        return self.parted(self._wholes())

    def _wholes(self) -> list[int]:
        """Of each piece what it is finished with before it is sewn to anything else; -1: nothing."""
        found = [-1] * len(self.poses)
        if isinstance(self.rows, InRows):
            for number, row in enumerate(each for each in self.rows.rows() if each.whole):
                for piece in row.numbers():
                    found[piece - 1] = number
        return found

    def _region(self, parts: Sequence[InRows | int], part: Slice | None, edge: int) -> _Region:
        """Neighbouring parts of a row as a region; of a single one, what that is made of."""
        if len(parts) == 1:
            (row,) = parts
            part = None if isinstance(row, int) else Slice(row, 0, len(row.parts))
        return _Region(self.new(), part, tuple(each - 1 for each in numbers_of(parts)), edge)

    def _copied(self, region: _Region) -> bool:
        """Whether it is like an earlier one, as it lies or turned."""
        kinds = sum(signature(self.poses[piece].kind) for piece in region.pieces)
        return self.copied(region.node, (len(region.pieces), kinds), lambda: region.pieces, unturned=True)

    def _halves(self, region: _Region, part: Slice) -> list[_Region]:
        """Parts a region along the seam of its row that is sewn last."""
        node = self.nodes[region.node]
        node.rings = part_rings(self.graph, self.cut, region.edge)
        row, low, high = part
        at, first = self._last_seam(part)
        small = set(region.pieces[:first] if 2 * first <= len(region.pieces) else region.pieces[first:])
        path = first_on_right(self.graph, self._seam(small), small)
        for half in path:
            self.cut[half // 2] = True
        ends = [(low, at), (at, high)]
        if self.graph.cloth(path[0]) not in set(region.pieces[:first]):
            ends.reverse()
        regions = [
            self._region(row.parts[start:end], Slice(row, start, end), half)
            for (start, end), half in zip(ends, (path[0], path[0] ^ 1), strict=True)
        ]
        node.parts, node.path = (regions[0].node, regions[1].node), tuple(path)
        node.closed = node.beside = self.graph.place_at(path[0]) == self.graph.place_at(path[-1] ^ 1)
        one, other = (end - start > 1 for start, end in ends)
        self.joints[region.node] = Joint(*part, (one, other))
        return regions[::-1]

    def _last_seam(self, part: Slice) -> tuple[int, int]:
        """The part that the seam sewn last lies before, and how many pieces come before it: the middle seam;
        of two, the one that leaves more like numbers of pieces. A mitred frame's strips are sewn on one
        after another."""
        row, low, high = part
        counts = list(accumulate(sum(1 for _ in numbers_of([each])) for each in row.parts[low:high]))
        middle = (high - low) // 2
        choices = (middle,) if (high - low) % 2 == 0 else (middle + 1, middle)
        if row.way == "mitred":
            choices = (high - low - 1,)
        best = min(choices, key=lambda at: abs(counts[-1] - 2 * counts[at - 1]))
        return low + best, counts[best - 1]

    def _seam(self, inside: set[int]) -> list[int]:
        """The halves between these pieces and what is still sewn to them, these on the right, in order."""
        halves = [
            half
            for piece in inside
            for ring in self.graph.rings[piece]
            for half in ring
            if not self.cut[half // 2]
            and not self.graph.links[half // 2].rim
            and self.graph.cloth(half ^ 1) not in inside
        ]
        starts = {self.graph.place_at(half): half for half in halves}
        ends = {self.graph.place_at(half ^ 1) for half in halves}
        half = next((each for each in halves if self.graph.place_at(each) not in ends), halves[0])
        path = [half]
        while len(path) < len(halves):
            path.append(starts[self.graph.place_at(path[-1] ^ 1)])
        return path


# ---- what no straight seam parts --------------------------------------------------------------------


def _set_in(row: InRows, draft: Draft) -> InRows:
    """The tree with an order for what is to be set in."""
    if row.way == "set-in" and len(row.parts) > 2:
        found = _order_of(tuple(row.numbers()), draft, row.ring)
        return replace(found, joins=row.joins, whole=row.whole)
    parts = (part if isinstance(part, int) else _set_in(part, draft) for part in row.parts)
    return replace(row, parts=tuple(parts))


def _order_of(numbers: tuple[int, ...], draft: Draft, ring: int) -> InRows:
    """An order for single parts, as of a block that is made of them alone."""
    pieces = tuple(_alone(draft.pieces[number - 1], numbers) for number in numbers)
    new = {number: at for at, number in enumerate(numbers, 1)}
    shapes = []
    for shape in draft.shapes:
        members = tuple(replace(each, piece=new[each.piece]) for each in shape.members if each.piece in new)
        if members:
            shapes.append(replace(shape, members=members))
    parted = Splitter(
        replace(draft, pieces=pieces, shapes=tuple(shapes), units=(), graph=graph_of(pieces))
    ).split()

    def tree(number: int) -> InRows | int:
        node = parted.nodes[number]
        if len(node.pieces) == 1:
            return numbers[node.pieces[0] - 1]
        if node.copies >= 0:
            like = parted.nodes[node.copies]
            there = dict(zip(like.pieces, node.pieces, strict=True))
            made = tree(node.copies)
            assert isinstance(made, InRows), "what has several pieces is in rows"
            turned = round(node.motion.degrees / 90) % 2
            return _turned(made, turned == 1).numbered(lambda each: numbers[there[new[each]] - 1])
        assert node.parts is not None, "several pieces are joined"
        way = _way(node, parted.graph)
        parts: list[InRows | int] = []
        for part in map(tree, node.parts):
            parts += part.parts if isinstance(part, InRows) and part.way == way != "set-in" else (part,)
        return InRows(way, tuple(parts), ring)

    found = tree(0)
    assert isinstance(found, InRows), "more than two parts are in rows"
    return found


def _alone(piece: Piece, numbers: tuple[int, ...]) -> Piece:
    """A piece among those numbers alone: all else is outside."""
    new = {number: at for at, number in enumerate(numbers, 1)}
    ring = tuple(
        replace(side, parts=tuple(Part(each.edge, new.get(each.neighbour or 0)) for each in side.parts))
        for side in piece.ring
    )
    return replace(piece, number=new[piece.number], ring=ring)


def _turned(row: InRows, quarter: bool) -> InRows:
    if not quarter:
        return row
    ways: dict[Way, Way] = {"across": "down", "down": "across"}
    parts = tuple(part if isinstance(part, int) else _turned(part, True) for part in row.parts)
    return replace(row, way=ways.get(row.way, row.way), parts=parts)


def _way(node: JoinNode, graph: SeamGraph) -> Way:
    """How two parts lie by the seam between them."""
    if any(graph.onward[one ^ 1] != two for one, two in pairwise(node.path)):
        return "set-in"
    start, end = (graph.places[graph.place_at(half)] for half in (node.path[0], node.path[-1] ^ 1))
    heading = phase(end - start) % pi
    return "down" if min(heading, pi - heading) < ONE_WAY else "across"
