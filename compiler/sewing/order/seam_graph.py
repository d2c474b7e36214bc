"""Pieces to the graph of their seams: places, links between them, and which link runs on into which.

Each link lies between two pieces, or between a piece and the outside. Pieces that touch the rest only from
within one other piece (what fills a window) form an island: a field of its own, whose places are its own even
where it touches a seam outside it. The field around it never sees it.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2
from typing import Final, NamedTuple

from ...drafting.model import Draft, Piece, Side
from ...geometry.edge import Point
from ...geometry.stroke import Stroke, place_of, stroke_of
from ...measure.tolerance import NEAR
from .islands import find_islands

SMOOTH: Final = 1e-4
"""Radians. Links that turn less than this are one seam: places lie within NEAR of where they are meant, and
the shortest links are about a sixteenth of an inch."""

BUCKET: Final = 4 * NEAR
"""Inches. Places are looked up in squares of this width."""


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
        self.links: list[Link] = []
        self.rings: list[list[list[int]]] = [
            [] for _ in draft.pieces
        ]  # per piece, per ring: its halves in order
        self._collect(draft.pieces)
        self.following: list[int] = [-1] * (2 * len(self.links))  # the next half round the piece on the right
        for ring in (ring for rings in self.rings for ring in rings):
            for half, after in zip(ring, (*ring[1:], ring[0]), strict=True):
                self.following[half] = after
        neighbours = self._neighbours()
        self.islands, self.field_of = find_islands(neighbours, self._outer_pieces())
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

    def _collect(self, pieces: Sequence[Piece]) -> None:
        """Links and rings, with places counted for the whole draft."""
        self.places: list[complex] = []
        finder = _Places(self.places)
        known: dict[tuple[int, int, int, int], int] = {}
        for number, piece in enumerate(pieces):
            for ring in (piece.ring, *piece.holes):
                self.rings[number].append(self._collect_ring(number, ring, finder, known))
        unmatched = [key for key, link in known.items() if link >= 0]
        assert not unmatched, (
            f"a seam has only one side: pieces {unmatched[0][0] + 1} and {unmatched[0][1] + 1}"
        )

    def _collect_ring(
        self, number: int, ring: Sequence[Side], finder: _Places, known: dict[tuple[int, int, int, int], int]
    ) -> list[int]:
        halves = []
        for side in ring:
            allowance = float(side.allowance)
            for part in side.parts:
                start, end = finder.find(part.edge.start), finder.find(part.edge.end)
                other = -1 if part.neighbour is None else part.neighbour - 1
                back = known.pop((other, number, end, start), -1)
                if back >= 0:
                    link = self.links[back]
                    self.links[back] = link._replace(allowances=(link.allowances[0], allowance))
                    halves.append(2 * back + 1)
                    continue
                if other >= 0:
                    known[number, other, start, end] = len(self.links)
                halves.append(2 * len(self.links))
                stroke = stroke_of(part.edge)
                self.links.append(Link(start, end, stroke, number, other, 0, other < 0, (allowance, 0.0)))
        return halves

    def _neighbours(self) -> list[list[int]]:
        found: list[list[int]] = [[] for _ in self.pieces]
        for link in self.links:
            if link.left >= 0:
                found[link.right].append(link.left)
                found[link.left].append(link.right)
        return found

    def _outer_pieces(self) -> list[int]:
        return sorted({link.right for link in self.links if link.left < 0})

    def _part_fields(self) -> None:
        """Gives each field's links places of their own."""
        whole = self.places
        self.places = []
        own: dict[tuple[int, int], int] = {}
        for number, link in enumerate(self.links):
            fields = [self.field_of[piece] for piece in (link.right, link.left) if piece >= 0]
            field = max(fields)  # an island is counted after what lies around it
            ends = []
            for end in (link.start, link.end):
                if (field, end) not in own:
                    own[field, end] = len(self.places)
                    self.places.append(whole[end])
                ends.append(own[field, end])
            rim = link.left < 0 or len(set(fields)) > 1
            self.links[number] = link._replace(start=ends[0], end=ends[1], field=field, rim=rim)

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
                if turned < SMOOTH and one // 2 != two // 2:
                    pairs.append((self._unlike(one, two), turned, one, two))
        for _, _, one, two in sorted(pairs):
            if self.onward[one] < 0 and self.onward[two] < 0:
                self.onward[one], self.onward[two] = two, one

    def _unlike(self, one: int, two: int) -> int:
        """0 where two halves lie on one line or circle, 1 where a curve only runs on."""
        first, second = self.links[one // 2].stroke, self.links[two // 2].stroke
        if first.center is None or second.center is None:
            return int(first.center is not second.center)
        return int(abs(first.center - second.center) > BUCKET)


class _Places:
    """Places by where they are: nearer than NEAR is one place."""

    def __init__(self, places: list[complex]) -> None:
        self.places = places
        self.exact: dict[Point, int] = {}
        self.squares: dict[tuple[int, int], list[int]] = {}

    def find(self, point: Point) -> int:
        """The number of a place."""
        known = self.exact.get(point)
        if known is None:
            known = self.exact[point] = self._search(place_of(point))
        return known

    def _search(self, place: complex) -> int:
        x, y = round(place.real / BUCKET), round(place.imag / BUCKET)
        for across in (x - 1, x, x + 1):
            for down in (y - 1, y, y + 1):
                for each in self.squares.get((across, down), ()):
                    if abs(self.places[each] - place) <= NEAR:
                        return each
        self.squares.setdefault((x, y), []).append(len(self.places))
        self.places.append(place)
        return len(self.places) - 1
