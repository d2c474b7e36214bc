"""Pieces to the graph of their seams: places, links between them, and which link runs on into which.

Each link lies between two pieces, or between a piece and the outside. Pieces that touch the rest only from
within one other piece (what fills a window) form an island: a field of its own, whose places are its own even
where it touches a seam outside it. The field around it never sees it.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2
from typing import NamedTuple

from ...drafting.model import Draft, Piece
from ...geometry.planar import OUTER
from ...geometry.stroke import Stroke, place_of, stroke_of
from ...measure.tolerance import IN_LINE, ONE_WAY
from .islands import find_islands


class Link(NamedTuple):
    """A stretch of seam or outline, directed with the piece `right` on its right.

    `left` is -1 on the block's outside. Places, pieces and fields are counted from 0.
    """

    start: int
    end: int
    stroke: Stroke
    right: int
    left: int
    field: int
    rim: bool  # on its field's outside
    allowances: tuple[float, float]  # on the right, on the left


class SeamGraph:
    """The graph of a draft. A half is link * 2 at the link's start, link * 2 + 1 at its end."""

    def __init__(self, draft: Draft) -> None:
        self.pieces: tuple[Piece, ...] = draft.pieces
        self.planar = draft.graph
        self.rings = self.planar.rings  # per piece, per ring: its halves in order
        self.following = self.planar.following  # the next half round the piece on the right
        outer = sorted({right for right, left in self.planar.faces if left == OUTER})
        self.islands, self.field_of = find_islands(self.planar.neighbours(), outer)
        self._part_fields()
        self.halves: list[list[int]] = [[] for _ in self.places]  # at each place: every half
        for number, link in enumerate(self.links):
            self.halves[link.start].append(2 * number)
            self.halves[link.end].append(2 * number + 1)
        self.onward: list[int] = [-1] * (2 * len(self.links))
        for at in range(len(self.places)):
            self._match_onward(at)
        # at each place: whether no two seams run on into each other
        self.free = [all(self.onward[half] < 0 for half in halves) for halves in self.halves]

    def place_at(self, half: int) -> int:
        """The place at a half's own end of its link."""
        link = self.links[half // 2]
        return link.end if half % 2 else link.start

    def away(self, half: int) -> complex:
        """The unit direction in which the half's link leaves its place."""
        stroke = self.links[half // 2].stroke
        return -stroke.direction(1) if half % 2 else stroke.direction(0)

    def beyond(self, link: int, piece: int) -> int:
        """The piece on a link's other side; -1 outside."""
        each = self.links[link]
        return each.left if each.right == piece else each.right

    def directed(self, half: int) -> Stroke:
        """The link as a stroke that starts at the half's place."""
        stroke = self.links[half // 2].stroke
        return stroke.reversed() if half % 2 else stroke

    def allowance(self, half: int) -> float:
        """The allowance of the cloth on the right of the directed half."""
        return self.links[half // 2].allowances[half % 2]

    def cloth(self, half: int) -> int:
        """The piece on the right of the directed half; -1 outside."""
        link = self.links[half // 2]
        return link.left if half % 2 else link.right

    # ---- building --------------------------------------------------------------------------------

    def _part_fields(self) -> None:
        """The links, each field's with places of their own."""
        widths = _allowances(self.pieces, self.rings)
        self.places: list[complex] = []
        self.links: list[Link] = []
        own: dict[tuple[int, int], int] = {}
        for number, (right, left) in enumerate(self.planar.faces):
            assert left < 0 or 2 * number + 1 in widths, (
                f"a seam has only one side: pieces {right + 1} and {left + 1}"
            )
            fields = [self.field_of[piece] for piece in (right, left) if piece >= 0]
            field = max(fields)  # an island is counted after what lies around it
            ends = []
            for end in self.planar.ends[number]:
                if (field, end) not in own:
                    own[field, end] = len(self.places)
                    self.places.append(place_of(self.planar.nodes[end]))
                ends.append(own[field, end])
            rim = left < 0 or len(set(fields)) > 1
            stroke = stroke_of(self.planar.edges[number])
            allowances = widths[2 * number], widths.get(2 * number + 1, 0.0)
            self.links.append(Link(ends[0], ends[1], stroke, right, left, field, rim, allowances))

    def _match_onward(self, at: int) -> None:
        """Pairs the seams that run on smoothly through a place: straight into straight before anything
        else."""
        halves = [half for half in self.halves[at] if not self.links[half // 2].rim]
        if len(halves) < 2:
            return
        pairs = []
        leaving = {half: self.away(half) for half in halves}
        for index, one in enumerate(halves):
            for two in halves[index + 1 :]:
                product = -leaving[one].conjugate() * leaving[two]
                turned = abs(atan2(product.imag, product.real))
                if turned < ONE_WAY and one // 2 != two // 2:
                    pairs.append((self._unlike(one, two), turned, one, two))
        for _, _, one, two in sorted(pairs):
            if self.onward[one] < 0 and self.onward[two] < 0:
                self.onward[one], self.onward[two] = two, one

    def _unlike(self, one: int, two: int) -> int:
        """0 where two halves lie on one line or circle, 1 where a curve only runs on."""
        first, second = self.links[one // 2].stroke, self.links[two // 2].stroke
        if first.center is None or second.center is None:
            return int(first.center is not second.center)
        return int(abs(first.center - second.center) > IN_LINE)


def _allowances(pieces: Sequence[Piece], rings: Sequence[Sequence[Sequence[int]]]) -> dict[int, float]:
    """The allowance of the cloth on the right of each half that has cloth there."""
    found: dict[int, float] = {}
    for piece, halves in zip(pieces, rings, strict=True):
        for ring, own in zip((piece.ring, *piece.holes), halves, strict=True):
            widths = (float(side.allowance) for side in ring for _ in side.parts)
            found.update(zip(own, widths, strict=True))
    return found
