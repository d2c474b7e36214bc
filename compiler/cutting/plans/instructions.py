"""The cuts of a plan in the order they are made, each with what the cutter is told at it.

The cloth is parted into all its strips first; then strip by strip, and a piece of a strip is cut up before
the next is cut off, so that 'it' is always the piece just spoken of. Cuts that go together are told once, at
the first of them, and `Slice.strips` says to which strips that is done; the others have no instructions.
Inches.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import groupby
from typing import Final

from ...measure.record import record
from ..instruction import Boxes, Count, CutBoxes, CutPieces, CutStrips, Instruction, Part, Remainder
from ..plan_model import Slice
from .edges import Marks
from .guillotine import Axis, Region, boxes_in

CLOTH: Final = Part("cloth")
REST: Final = Part("rest")

_Inner = tuple[Region, int, int, Part | None, tuple[int, ...]]
"""A region to be cut up: where its corner is; what it is called, None where it is one of a group that is told
of already; and the numbers of the strips that are cut like it."""


@record
class Stuff:
    """What is cut: by such marks of the ruler, into boxes of so many kinds, from the bolt or from a scrap."""

    marks: Marks
    boxes: Sequence[Boxes]
    scrap: bool = False


def slices_of(region: Region, stuff: Stuff) -> tuple[Slice, ...]:
    """Every cut of a cloth. Off the bolt the last strip is cut off too, for the bolt goes on."""
    writer = _Writer(stuff)
    writer.write((region, 0, 0, CLOTH, ()), not stuff.scrap)
    return tuple(writer.slices)


class _Writer:
    """Numbers the cuts as it goes."""

    def __init__(self, stuff: Stuff) -> None:
        self.stuff = stuff
        self.slices: list[Slice] = []

    def write(self, home: _Inner, last_too: bool = False) -> None:
        """The cuts of a region and of its parts: of the cloth's parts when it has all been parted, else of
        each before the next is cut off."""
        region, left, top, named, strips = home
        whole = named is CLOTH
        rest, begun, later = Region(region.width, region.height), len(self.slices), []
        back = False  # whether a part of it has been cut up since the last cut of its own
        for first, group in _groups(region.parts, whole and region.axis == "across"):
            filled = _along(group[0], region.axis) == _along(rest, region.axis) and not last_too
            instruction = (
                None
                if named is None
                else self._left(group[0], named, back)
                if filled
                else self._told(region, group, named, back)
            )
            inner: list[_Inner] = []
            for number, part in enumerate(group):
                x, y = left + region.width - rest.width, top + region.height - rest.height
                self._part(rest, (x, y), region.axis, part, None if number else instruction, strips, last_too)
                alike = tuple(first + at for at, each in enumerate(group, 1) if each == part)
                name = None if part in group[:number] else self._name(home, rest, part, group)
                inner.append((part, x, y, name, alike if whole else strips))
                rest = _after(rest, part, region.axis)
            back = not whole and any(part.parts for part in group)
            later += inner if whole else []
            self._inner([] if whole else inner)
        self._inner(later)
        if named is None:
            self._hush(begun)

    def _inner(self, parts: Sequence[_Inner]) -> None:
        for part in parts:
            self.write(part)

    def _hush(self, begun: int) -> None:
        """Takes the instructions off the cuts from there on: they were told at another part."""
        self.slices[begun:] = [replace(each, instructions=()) for each in self.slices[begun:]]

    def _name(self, home: _Inner, rest: Region, part: Region, group: Sequence[Region]) -> Part | None:
        """What to call a part, where the first of equal ones speaks for them all."""
        region, _, _, named, _ = home
        if named is CLOTH:
            return Part("strip")
        size, room = _along(part, region.axis), _along(rest, region.axis)
        if len(group) == 1 and size == room:
            return named if size == _along(region, region.axis) else REST
        if len(group) > 1:
            return Part("pieces")
        return Part("piece", size * self.stuff.marks.step, region.axis or "across")

    def _part(
        self,
        rest: Region,
        corner: tuple[int, int],
        axis: Axis,
        part: Region,
        instruction: Instruction | None,
        strips: tuple[int, ...],
        last_too: bool,
    ) -> None:
        """Cuts a part off what is left of its region, unless it is all that is left."""
        size, room, (left, top) = _along(part, axis), _along(rest, axis), corner
        instructions = () if instruction is None else (instruction,)
        if size < room or last_too:
            box = self.stuff.marks.box(left, top, rest.width, rest.height)
            number, at = len(self.slices) + 1, size * self.stuff.marks.step
            assert axis, "what has parts is cut some way"
            self.slices.append(Slice(number, box, axis, at, instructions, strips))
        elif part.kind >= 0 and instructions:
            last = self.slices[-1]
            self.slices[-1] = replace(last, instructions=last.instructions + instructions, strips=strips)

    def _left(self, part: Region, named: Part, back: bool) -> Instruction | None:
        """What is said of a box that is all that is left of its region."""
        return Remainder(named, back, self.stuff.boxes[part.kind]) if part.kind >= 0 else None

    def _told(self, region: Region, group: Sequence[Region], named: Part, back: bool) -> Instruction:
        """What is said at the first of a group of parts."""
        part, count, step = group[0], len(group), self.stuff.marks.step
        if named is CLOTH and region.axis == "across":
            held = self._counted(each.kind for each in group if each.kind >= 0)
            return CutStrips(count, part.height * step, held, self.stuff.scrap)
        assert region.axis, "what has parts is cut some way"
        size = _along(part, region.axis) * step
        if part.kind >= 0 or not part.parts:
            boxes = self.stuff.boxes[part.kind] if part.kind >= 0 else None
            return CutBoxes(named, back, region.axis, count, size, boxes)
        held = self._counted(each.kind for each in boxes_in(part))
        return CutPieces(named, back, region.axis, count, size, held)

    def _counted(self, kinds: Iterable[int]) -> tuple[Count, ...]:
        return tuple((self.stuff.boxes[kind], count) for kind, count in Counter(kinds).items())


def _along(region: Region, axis: Axis) -> int:
    """A region's size the way that parts are cut off it."""
    return region.height if axis == "across" else region.width


def _after(rest: Region, part: Region, axis: Axis) -> Region:
    """What is left of a region when a part is cut off."""
    if axis == "across":
        return Region(rest.width, rest.height - part.height)
    return Region(rest.width - part.width, rest.height)


def _groups(parts: Sequence[Region], strips: bool) -> Iterator[tuple[int, list[Region]]]:
    """Parts that are told of together, with how many lie before them: equal ones; strips of one width
    whatever is cut from them."""
    before = 0
    for _, group in groupby(parts, key=(lambda part: part.height) if strips else None):
        together = list(group)
        yield before, together
        before += len(together)
