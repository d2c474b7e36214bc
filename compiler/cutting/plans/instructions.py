"""The cuts of a plan in the order they are made, in words and numbers.

Cuts that go together are told once, at the first of them: 'Cut 7 strips 3 7/8in wide across the cloth.', then
'Cut each across every 3 7/8in: 10 squares from each.' The others of the group have no words. Inches.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import groupby

from ...diagnostics.wording import count_of, one_of
from ..methods.rotary_words import length_text
from ..plan_model import Slice
from .guillotine import Axis, Region, boxes_in


@dataclass(frozen=True, slots=True)
class Teller:
    """Knows the ruler and what each kind of box is called."""

    step: Fraction
    nouns: Sequence[str]
    strip_words: str = "across the cloth"

    def length(self, steps: int) -> str:
        """The length in words."""
        return length_text(steps * self.step, self.step)

    def things(self, kind: int, count: int) -> str:
        """`10 squares`; `2 strips of 6 templates each`."""
        noun, of, held = self.nouns[kind].partition(" of ")
        return count_of(count, noun) + of + held + (" each" if held and count > 1 else "")


def slices_of(region: Region, teller: Teller, off_bolt: bool) -> tuple[Slice, ...]:
    """Every cut of a cloth. `off_bolt`: the last strip is cut off too, for the bolt goes on."""
    writer = _Writer(teller)
    writer.write(region, 0, 0, "", off_bolt)
    return tuple(writer.slices)


class _Writer:
    """Numbers the cuts as it goes."""

    def __init__(self, teller: Teller) -> None:
        self.teller = teller
        self.slices: list[Slice] = []

    def write(self, region: Region, left: int, top: int, leader: str, last_too: bool = False) -> None:
        """The cuts of a region: first all those that part it, then those of each of its parts. `leader` is
        what the words call the region: '' the cloth itself, '-' one of a group that is told of already."""
        inner: list[tuple[Region, int, int, str]] = []
        strips = not leader and region.axis == "across"
        rest = Region(region.width, region.height)
        for group in _groups(region.parts, strips):
            text = self._strips(group) if strips else self._words(region, group[0], len(group), leader)
            names = _names(group)
            for number, (part, name) in enumerate(zip(group, names, strict=True)):
                x, y = left + region.width - rest.width, top + region.height - rest.height
                self._part(rest, x, y, region.axis, part, "" if number else text, last_too)
                inner.append((part, x, y, name))
                rest = _after(rest, part, region.axis)
        for part, x, y, name in inner:
            start = len(self.slices)
            self.write(part, x, y, name)
            if "-" in (name, leader):
                self.slices[start:] = [replace(each, text="") for each in self.slices[start:]]

    def _part(self, rest: Region, left: int, top: int, axis: Axis, part: Region, text: str,
              last_too: bool) -> None:
        """Cuts a part off what is left of its region, unless it is all that is left."""
        size, room = (part.height, rest.height) if axis == "across" else (part.width, rest.width)
        if size < room or last_too:
            step = self.teller.step
            box = (left * step, top * step, (left + rest.width) * step, (top + rest.height) * step)
            assert axis, "what has parts is cut some way"
            self.slices.append(Slice(len(self.slices) + 1, box, axis, size * step, text))
        elif part.kind >= 0 and text:
            last = self.slices[-1]
            left_over = f" What is left is {self.teller.things(part.kind, 1)}."
            self.slices[-1] = replace(last, text=last.text + left_over)

    def _strips(self, group: Sequence[Region]) -> str:
        """`Cut 7 strips 3 7/8in wide across the cloth.`"""
        count, tell = len(group), self.teller
        strips = f"{'a strip' if count == 1 else f'{count} strips'} {tell.length(group[0].height)} wide"
        text = f"Cut {strips} {tell.strip_words}"
        whole = [part.kind for part in group if part.kind >= 0]
        if not whole:
            return f"{text}."
        if len(set(whole)) == 1 and len(whole) == count:
            return f"{text}: {tell.things(whole[0], count)}."
        return f"{text}; {len(whole)} {'stays' if len(whole) == 1 else 'stay'} whole."

    def _words(self, region: Region, part: Region, count: int, leader: str) -> str:
        """What is said at the first of a group of equal parts."""
        tell = self.teller
        size = part.height if region.axis == "across" else part.width
        way = "from the top" if region.axis == "across" else "across"
        cut = f"Cut {leader or 'it'} {way} {'every' if count > 1 else 'at'} {tell.length(size)}"
        if part.kind < 0 and not part.parts:
            return f"{cut}; the rest is left over."
        if part.kind >= 0:
            each = " from each" if leader == "each" or leader[:1].isdigit() else ""
            return f"{cut}: {tell.things(part.kind, count)}{each}."
        pieces = "a piece" if count == 1 else f"{count} pieces"
        measured = "high" if region.axis == "across" else "wide"
        return f"Cut {pieces} {tell.length(size)} {measured} for {self._sum(part)}."

    def _sum(self, part: Region) -> str:
        kinds = Counter(each.kind for each in boxes_in(part))
        return one_of([self.teller.things(kind, count) for kind, count in kinds.items()], "and")


def _after(rest: Region, part: Region, axis: Axis) -> Region:
    """What is left of a region when a part is cut off."""
    if axis == "across":
        return Region(rest.width, rest.height - part.height)
    return Region(rest.width - part.width, rest.height)


def _groups(parts: Sequence[Region], strips: bool) -> Iterator[list[Region]]:
    """Parts that are told of together: equal ones; strips of one width whatever is cut from them."""
    for _, group in groupby(parts, key=(lambda part: part.height) if strips else None):
        yield list(group)


def _names(group: Sequence[Region]) -> list[str]:
    """What to call each part: the first of equal ones speaks for them all."""
    counts = Counter(group)
    told: set[Region] = set()
    names = []
    for part in group:
        if part in told:
            names.append("-")
            continue
        told.add(part)
        if len(counts) == 1:
            names.append("it" if len(group) == 1 else "each")
        else:
            names.append("one of them" if counts[part] == 1 else f"{counts[part]} of them")
    return names
