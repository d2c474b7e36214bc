"""A draft to its order of sewing: the tree of joins as numbered steps, units before rows, alike ones in
batches."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ...drafting.model import Draft
from ...drafting.shapes import carry
from ...geometry.edge import Edge
from ...geometry.pose import STAY, Motion
from ...geometry.stroke import Stroke, point_of, stretches
from ...measure.tolerance import NEAR
from ..model import Assembly, Cloth, Copy, Partial, SeamSide, Step, Unit
from .parting import JoinNode, Parted
from .row_parting import Joint, RowParter
from .row_tree import InRows
from .runs import eased_places, edges_of, is_rectangle, joined, joined_ring, sizes, turning_places
from .splitting import Splitter

SPOT_DIGITS: Final = 4
"""Decimals of an inch by which places of copies are told apart: far wider than a copy's places stray."""


def assemble(draft: Draft) -> Assembly:
    """How the block goes together: straight seams only wherever that can be, else the fewest set-in seams."""
    return _Order(draft, Splitter(draft).split()).assembly()


def assemble_rows(draft: Draft, rows: InRows | int) -> tuple[Assembly, dict[int, Joint]]:
    """How a top goes together whose rows are known; and what each step joins of its row."""
    parter = RowParter(draft, rows)
    order = _Order(draft, parter.part())
    return order.assembly(), {order.step_of[node]: parter.joints[node] for node in order.order}


class _Order:
    """The joins of a split block, numbered in the order of sewing."""

    def __init__(self, draft: Draft, parted: Parted) -> None:
        self.draft = draft
        self.graph, self.nodes, self.whole_of = parted
        self.copies: dict[int, list[tuple[Motion, tuple[int, ...]]]] = {}
        self._expand()
        self.order = self._in_order()
        self.step_of = {node: number for number, node in enumerate(self.order, 1)}
        self.sewn_at = {half // 2: node for node in self.order for half in self.nodes[node].path}
        self.carries: dict[int, Motion] = {}
        self.members = {member.piece: (shape, member) for shape in draft.shapes for member in shape.members}
        self.turned_at = self._turned_spots()

    def assembly(self) -> Assembly:
        """Everything found."""
        cloths = []
        for piece in self.draft.pieces:
            shape, member = self.members[piece.number]
            cloths.append(Cloth(piece.number, shape.label, member.reversed, piece.fabric))
        units = tuple(self._unit(node) for node in self.order)
        steps = tuple(self._step(node, unit) for node, unit in zip(self.order, units, strict=True))
        return Assembly(tuple(cloths), units, steps)

    # ---- order -----------------------------------------------------------------------------------

    def _expand(self) -> None:
        """Every copy of every join, with how it lies and its pieces; the first is the join itself."""
        stack: list[tuple[int, Motion, tuple[int, ...]]] = [(0, STAY, self.nodes[0].pieces)]
        while stack:
            number, motion, pieces = stack.pop()
            node = self.nodes[number]
            if node.copies >= 0:
                stack.append((node.copies, motion.after(node.motion), pieces))
                continue
            if not node.parts:
                continue
            self.copies.setdefault(number, []).append((motion, pieces))
            first, second = node.parts
            if pieces is node.pieces:  # the join itself, not a copy: nothing need be counted out
                stack.append((second, motion, self.nodes[second].pieces))
                stack.append((first, motion, self.nodes[first].pieces))
                continue
            middle = len(self.nodes[first].pieces)
            stack.append((second, motion, pieces[middle:]))
            stack.append((first, motion, pieces[:middle]))

    def _in_order(self) -> list[int]:
        """The joins, parts before wholes: what is made in batches or lies within one whole comes
        first."""
        order, stack = [], [(0, False)]
        while stack:
            number, done = stack.pop()
            node = self.nodes[number]
            if not node.parts:
                continue
            if done:
                order.append(number)
                continue
            stack.append((number, True))
            stack += [(part, False) for part in reversed(node.parts)]
        early = [
            number
            for number in order
            if len(self.copies[number]) > 1 or self._within_whole(self.nodes[number])
        ]
        known = set(early)
        return early + [number for number in order if number not in known]

    def _within_whole(self, node: JoinNode) -> bool:
        whole = self.whole_of[node.pieces[0] - 1]
        return whole >= 0 and all(self.whole_of[piece - 1] == whole for piece in node.pieces)

    # ---- units and steps -------------------------------------------------------------------------

    def _unit(self, number: int) -> Unit:
        node = self.nodes[number]
        rings = [joined_ring(ring) for ring in node.rings]
        outer = tuple(rings[0])
        finished, unfinished = sizes(outer)
        copies = tuple(
            Copy(pieces, motion.degrees, point_of(motion.shift)) for motion, pieces in self.copies[number]
        )
        return Unit(
            f"u{self.step_of[number]}",
            copies[0].pieces,
            copies,
            edges_of([stroke for stroke, _ in outer]),
            tuple(edges_of([stroke for stroke, _ in ring]) for ring in rings[1:]),
            finished,
            unfinished,
            is_rectangle(outer),
        )

    def _step(self, number: int, unit: Unit) -> Step:
        node = self.nodes[number]
        assert node.parts is not None, "a step joins two parts"
        runs = self._runs(node)
        other_way = [stroke.reversed() for stroke in reversed(runs)]
        turns = turning_places(runs, node.closed)
        seams = () if node.closed else stretches(runs, NEAR)
        ends = [place for seam in seams for place in (seam[0].start, seam[-1].end)]
        return Step(
            step=self.step_of[number],
            makes=unit.id,
            sides=(self._side(node.parts[0], runs), self._side(node.parts[1], other_way)),
            batch=len(unit.copies),
            seam=edges_of(runs),
            seam_length=sum(run.length for run in runs),
            curved=any(run.center is not None for run in runs),
            closed=node.closed,
            turns=tuple(point_of(place) for place in turns),
            stops=tuple(point_of(place) for place in ends if self._is_turned(number, place)),
            eased=eased_places(runs),
            partial=self._partial(number),
            finished=unit.finished,
            unfinished=unit.unfinished,
            path=node.path,
        )

    def _side(self, part: int, runs: Sequence[Stroke]) -> SeamSide:
        """One part's edges, in its own places."""
        node = self.nodes[part]
        if node.copies >= 0:
            own = [node.motion.stroke_back(run) for run in runs]
            return SeamSide(f"u{self.step_of[node.copies]}", edges_of(own))
        if node.parts:
            return SeamSide(f"u{self.step_of[part]}", edges_of(runs))
        (piece,) = node.pieces
        return SeamSide(str(piece), self._on_template(piece, runs))

    def _on_template(self, number: int, runs: Sequence[Stroke]) -> tuple[Edge, ...]:
        shape, member = self.members[number]
        way = self.carries.setdefault(number, carry(shape, self.draft.pieces, member))
        return edges_of([way.stroke_back(run) for run in runs])

    # ---- set-in seams ----------------------------------------------------------------------------

    def _runs(self, node: JoinNode) -> list[Stroke]:
        """A join's path as runs, first part on the right."""
        strokes = [self.graph.directed(half) for half in node.path]
        if node.closed and not node.beside:
            return [run for run, _ in joined_ring([(stroke, 0.0) for stroke in strokes])]
        return joined(strokes)

    def _turned_spots(self) -> set[tuple[float, float]]:
        """Every place of the block where some seam turns, copies included."""
        return {
            _spot(motion(place))
            for number in self.order
            for place in turning_places(self._runs(self.nodes[number]), self.nodes[number].closed)
            for motion, _ in self.copies[number]
        }

    def _is_turned(self, number: int, place: complex) -> bool:
        return bool(self.turned_at) and any(
            _spot(motion(place)) in self.turned_at for motion, _ in self.copies[number]
        )

    def _partial(self, number: int) -> Partial | None:
        """The earlier seam that may be left open, where the path turns once at a place a seam runs
        through."""
        path = self.nodes[number].path
        bends = [at for at in range(1, len(path)) if self.graph.onward[path[at - 1] ^ 1] != path[at]]
        if len(bends) != 1 or self.nodes[number].closed or len(self.nodes[number].rings) > 1:
            return None
        at = bends[0]
        inside = set(self.nodes[number].pieces)
        for half in (self.graph.onward[path[at]], self.graph.onward[path[at - 1] ^ 1]):
            link = self.graph.links[half // 2]
            if half < 0 or not {link.right + 1, link.left + 1} <= inside or half // 2 not in self.sewn_at:
                continue
            opened = self.sewn_at[half // 2]
            return Partial(self.step_of[opened], point_of(self.graph.places[self.graph.place_at(half)]))
        return None


def _spot(place: complex) -> tuple[float, float]:
    return round(place.real, SPOT_DIGITS) + 0.0, round(place.imag, SPOT_DIGITS) + 0.0
