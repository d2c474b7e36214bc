"""A draft's graph to a tree of joins: the whole block is parted again and again, along seams sewn last first.

Parts that are alike are parted once; the others are copies of the first. What is parted off is walked from
both sides by turns, so the smaller side bounds the cost, and a log cabin costs no more than a checkerboard.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from itertools import chain
from typing import Final

from ...drafting.model import Draft
from ...measure.record import record
from .borders import frame_of, part_rings, piece_rings, ringed_piece
from .chords import Chord, Seams, choices
from .fillers import Setting, middle_of, outermost
from .likeness import alike, signature
from .naturals import Naturals
from .parallels import by_frame, by_width, fan
from .parting import Parted, Parter, first_on_right
from .rings import Rings
from .runs import is_rectangle
from .set_in import WHOLE, find_path, halving_path, small_side, turns_needlessly
from .windows import windows_in_turn

WEIGHED: Final = 8
"""Parallel seams that are weighed against each other for what they leave; where there are more, the middle
does."""

SHARE: Final = 3
"""Of a region's pieces a part that is made in a batch has one in so many at the least: rows of squares are
not parted unevenly for a pair."""


@record
class _Region:
    """A part not yet parted. `edge` is a half on its outside, with it on the right."""

    node: int
    count: int  # pieces of its own field
    total: int  # with those in their windows
    kinds: int  # sum of signatures
    edge: int
    chords: list[Chord]
    heading: float | None  # of the seam that parted it from the rest
    setting: Setting | None = None  # while what is set in last is taken from it
    ends: frozenset[int] = frozenset()  # links at which its ends are sewn to the rest of it


class Splitter(Parter):
    """Parts a draft into nodes. `nodes[0]` is the whole block; parts have higher numbers than wholes."""

    def __init__(self, draft: Draft) -> None:
        super().__init__(draft)
        self.seams = Seams(self.graph, Naturals(draft, self.graph))
        self.kinds = [pose.kind for pose in self.poses]
        self._middle: complex | None = None  # of the block
        self.rings = Rings(self.seams, self.poses)
        self._seen: set[tuple[int, int]] = set()  # of each part so far: pieces, sum of kinds
        self._islands: dict[int, list[int]] = {}
        for number, island in enumerate(self.graph.islands, 1):
            self._islands.setdefault(island.around, []).append(number)
        self._fields: list[list[int]] = [[] for _ in range(len(self.graph.islands) + 1)]
        for piece, field in enumerate(self.graph.field_of):
            self._fields[field].append(piece)

    def split(self) -> Parted:
        """Every node. The last on the stack is next, so whatever a region is like has been parted to its
        pieces."""
        stack = [self._field(0)]
        while stack:
            region = stack.pop()
            if region.total == 1:
                self._alone(region)
            elif not self.copied(region.node, (region.total, region.kinds), partial(self._pieces, region)):
                stack += self._filled(region) if region.count == 1 else self._part(region)
        return self.parted(self.seams.naturals.unit_of)

    def _field(self, field: int) -> _Region:
        """The region of the block itself, or of one island."""
        total = self.graph.islands[field - 1].pieces if field else range(len(self.poses))
        edges = [
            2 * number + (link.left >= 0 and self.graph.field_of[link.right] != field)
            for number, link in enumerate(self.graph.links)
            if link.rim and link.field == field
        ]
        places = dict.fromkeys(self.graph.place_at(half ^ end) for half in edges for end in (0, 1))
        chords = [chord for place in places for chord in self.seams.free_from(place)]
        kinds = sum(signature(self.kinds[piece]) for piece in total)
        return _Region(self.new(), len(self._fields[field]), len(total), kinds, edges[0], chords, None)

    # ---- one piece, and what lies in its windows -------------------------------------------------

    def _alone(self, region: _Region) -> None:
        piece = self.graph.cloth(region.edge)
        self.nodes[region.node].pieces = (piece,)
        self.nodes[region.node].rings = piece_rings(self.graph, piece)

    def _filled(self, region: _Region) -> list[_Region]:
        """A piece joined to what fills its windows, one after another; each filling is a region of its
        own."""
        piece, made = self.graph.cloth(region.edge), region.node
        fillings = []
        for number, rim, beside in reversed(windows_in_turn(self.graph, piece, self._islands[piece])):
            self.nodes[made].rings = ringed_piece(self.graph, self.seams.cut, region.edge, piece)
            for half in rim:
                self.seams.cut[half // 2] = True
            bare, filling = self.new(), self._field(number)
            fillings.append(filling)
            node = self.nodes[made]
            node.parts, node.path, node.closed, node.beside = (bare, filling.node), rim, True, beside
            made = bare
        self.nodes[made].pieces = (piece,)
        self.nodes[made].rings = piece_rings(self.graph, piece)
        return fillings

    # ---- what pieces a region has -----------------------------------------------------------------

    def _pieces(self, region: _Region) -> list[int]:
        """The pieces of a region with those in their windows."""
        return self._with_fillings(self._own_pieces(region))

    def _with_fillings(self, pieces: Sequence[int]) -> list[int]:
        found = list(pieces)
        for piece in found:  # what is added is looked into in its turn
            found += (each for island in self._islands.get(piece, ()) for each in self._fields[island])
        return found

    def _own_pieces(self, region: _Region, limit: int = 0) -> list[int]:
        """The pieces of a region's own field, from its outside inward; the first few where there is a
        limit."""
        first = self.graph.cloth(region.edge)
        found, seen = [first], {first}
        links, cut = self.graph.links, self.seams.cut
        for piece in found:
            if limit and len(found) >= limit:
                return found[:limit]
            for half in (half for ring in self.graph.rings[piece] for half in ring):
                link = links[half // 2]
                if link.rim or cut[half // 2]:
                    continue
                other = link.left if link.right == piece else link.right
                if other not in seen:
                    seen.add(other)
                    found.append(other)
        return found

    # ---- parting ---------------------------------------------------------------------------------

    def _part(self, region: _Region) -> list[_Region]:
        """Parts a region along the seam to be sewn last."""
        self.nodes[region.node].rings = part_rings(self.graph, self.seams.cut, region.edge)
        chords = [chord for chord in region.chords if not chord.dead]
        ringed = None if chords or not self.rings.loops else self._ringed(region)
        if ringed:
            return ringed
        if region.setting is not None or not chords:
            parted = self._set_in_last(region, chords)
            if parted:
                return parted
        if chords:
            at_end = next((chord for chord in chords if chord.halves[0] // 2 in region.ends), None)
            chord = at_end or self._choose(region, chords)
            return self._take(region, chord.halves, None if chord.curved else chord.heading, chords)
        center = region.setting.center if region.setting else self._center(region, self._own_pieces(region))
        path = find_path(
            self.seams, region.count, lambda limit: self._own_pieces(region, limit), region.edge, center
        )
        return self._take(region, path, region.heading, chords, region.setting)

    def _ringed(self, region: _Region) -> list[_Region] | None:
        """Parts off what lies within a ring, and the ring into two; None where there is no ring, or a path
        that turns only where something must be set in whatever is done."""
        pieces = self._own_pieces(region)
        found = self.rings.cut(pieces)
        if found is None or not turns_needlessly(self.seams, pieces):
            return None
        chords = self.seams.take_round(found.loop)
        ring = self.nodes[region.node]
        ring.parts, ring.path, ring.closed = (self.new(), self.new()), tuple(found.loop), True
        inner = self._beyond(ring.parts[1], found.within, found.loop[0] ^ 1, chords)
        node = self.nodes[ring.parts[0]]
        node.rings = tuple(
            part_rings(self.graph, self.seams.cut, half)[0] for half in (region.edge, found.loop[0])
        )
        own = self._with_fillings([*found.first, *found.second])
        kinds = sum(signature(self.kinds[piece]) for piece in own)
        if self.copied(ring.parts[0], (len(own), kinds), lambda: own):
            return [inner]
        for run in found.across:
            chords += self.seams.take(run)
        node.parts, node.path = (self.new(), self.new()), tuple(chain(*found.across))
        halves = (found.across[0][0], found.across[0][0] ^ 1)
        parts = zip(node.parts, (found.first, found.second), halves, strict=True)
        return [inner, *[self._beyond(at, own, half, chords) for at, own, half in parts][::-1]]

    def _beyond(self, node: int, own: Sequence[int], edge: int, chords: Sequence[Chord]) -> _Region:
        """A region that another has been parted to, with those chords that lie in it."""
        inside = set(own)
        here = [
            chord
            for chord in chords
            if not chord.dead and self.graph.links[chord.halves[0] // 2].right in inside
        ]
        total = self._with_fillings(own)
        kinds = sum(signature(self.kinds[piece]) for piece in total)
        self._seen.add((len(total), kinds))
        return _Region(node, len(own), len(total), kinds, edge, here, None)

    def _set_in_last(self, region: _Region, chords: list[Chord]) -> list[_Region] | None:
        """Parts off what is set in last; a large honeycomb is halved instead. None where there is neither."""
        pieces = self._own_pieces(region)
        if region.setting is None and region.count > WHOLE:
            across = halving_path(self.seams, pieces, region.edge)
            if across:
                return self._take(region, across, region.heading, chords)
        setting = region.setting or Setting(self._center(region, pieces))
        filler = outermost(self.seams, pieces, setting, self.kinds)
        if filler is None:
            return None
        setting = setting._replace(last=filler.pieces)
        return self._take(region, filler.halves, region.heading, chords, setting, filler.ends)

    def _center(self, region: _Region, pieces: Sequence[int]) -> complex:
        """About what a region is set together: its own middle where it is a rectangle, as a star among others
        is; else the block's, as of a wedge or a quarter of a round."""
        if is_rectangle(self.nodes[region.node].rings[0]):
            return middle_of(self.graph, pieces)
        if self._middle is None:
            self._middle = middle_of(self.graph, range(len(self.graph.pieces)))
        return self._middle

    def _choose(self, region: _Region, chords: list[Chord]) -> Chord:
        """The best of the seams right across: the first that leaves two like halves, else of the best set of
        parallel ones the one that a quilter would sew last."""
        if len(chords) == 1:
            return chords[0]
        outline = self.nodes[region.node].rings[0]
        ordered = choices(chords, region.heading, frame_of(outline))
        if len(ordered) * len(ordered[0]) > 1 and region.total % 2 == 0:
            for rows in ordered[:3]:
                if len(rows) % 2 and self._halves_alike(region, rows[len(rows) // 2]):
                    return rows[len(rows) // 2]
        best = ordered[0]
        middle = len(best) // 2
        nearest = [best[middle]] if len(best) % 2 else [best[middle], best[middle - 1]]
        if not best[0].curved:
            if len(best) > 1 and (chord := self._side_by_side(region, best)):
                return chord
            nearest = fan(ordered) or nearest
        return (
            nearest[0]
            if len(nearest) == 1
            else min(nearest, key=lambda chord: self._unfairness(region, chord))
        )

    def _side_by_side(self, region: _Region, rows: Sequence[Chord]) -> Chord | None:
        """Of parallel seams the one that the widths of what lies between them, or batches, speak for."""
        outline = self.nodes[region.node].rings[0]
        framed = by_frame(rows, outline, self.seams) if region.count > len(rows) + 1 else None
        return framed or by_width(rows, outline) or self._in_batches(region, rows)

    def _in_batches(self, region: _Region, rows: Sequence[Chord]) -> Chord | None:
        """The seam that leaves the largest part that seems to be like one made elsewhere."""
        if len(rows) > WEIGHED:
            return None
        found: list[tuple[int, int]] = []
        for number, chord in enumerate(rows):
            side = self._with_fillings(small_side(self.seams, chord.halves, region.count))
            kinds = sum(signature(self.kinds[piece]) for piece in side)
            for key in ((len(side), kinds), (region.total - len(side), region.kinds - kinds)):
                if key[0] > 1 and key[0] * SHARE >= region.total and key in self._seen:
                    found.append((-key[0], number))
        return rows[min(found)[1]] if found else None

    def _unfairness(self, region: _Region, chord: Chord) -> int:
        """How many pieces more a seam leaves on one side than on the other."""
        return abs(region.count - 2 * len(small_side(self.seams, chord.halves, region.count)))

    def _halves_alike(self, region: _Region, chord: Chord) -> bool:
        one = self._with_fillings(small_side(self.seams, chord.halves, region.count))
        kinds = sum(signature(self.kinds[piece]) for piece in one)
        if len(one) * 2 != region.total or kinds * 2 != region.kinds:
            return False
        inside = set(one)
        two = [piece for piece in self._pieces(region) if piece not in inside]
        return alike(one, two, self.poses) is not None

    def _take(
        self,
        region: _Region,
        path: list[int],
        heading: float | None,
        chords: list[Chord],
        setting: Setting | None = None,
        ends: frozenset[int] = frozenset(),
    ) -> list[_Region]:
        """Cuts a region along a path into two; with a setting, more is set in last. `ends` as in a region."""
        side = small_side(self.seams, path, region.count)
        inside = set(side)
        path = first_on_right(self.graph, path, inside)
        chords = [chord for chord in chords + self.seams.take(path) if not chord.dead]
        small = self._with_fillings(side)
        kinds = sum(signature(self.kinds[piece]) for piece in small)
        regions = []
        for half in (path[0], path[0] ^ 1):
            own = self.graph.cloth(half) in inside
            here = [
                chord for chord in chords if (self.graph.links[chord.halves[0] // 2].right in inside) == own
            ]
            counts = (
                (len(side), len(small), kinds)
                if own
                else (region.count - len(side), region.total - len(small), region.kinds - kinds)
            )
            regions.append(_Region(self.new(), *counts, half, here, heading, setting, ends or region.ends))
            self._seen.add((counts[1], counts[2]))
        node = self.nodes[region.node]
        node.parts, node.path = (regions[0].node, regions[1].node), tuple(path)
        node.closed = node.beside = self.graph.place_at(path[0]) == self.graph.place_at(path[-1] ^ 1)
        return regions[::-1]
