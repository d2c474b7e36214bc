"""The cuts of a plan in the order they are made, in words and numbers.

Cuts that go together are told once, at the first of them: 'Cut 7 strips 3 7/8in wide across the cloth.', then
'Cut each across every 3 7/8in: 10 squares.' The others of the group have no words. Inches.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from ..diagnostics.wording import count_of
from .guillotine import Region, boxes_in
from .plan_model import Slice
from .rotary_words import length_text


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
        """`10 squares`."""
        return count_of(count, self.nouns[kind])


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
        """The cuts of a region: first all those that part it, then those of each of its parts."""
        if not region.parts:
            if last_too and region.kind >= 0:
                self._cut(region, left, top, "across", region.height, self._strip_words(region, 1))
            return
        first = not leader
        inner: list[tuple[Region, int, int, str]] = []
        rest_left, rest_top = left, top
        for part, count in _groups(region.parts):
            text = self._words(region, part, count, leader, first)
            for number in range(count):
                size = part.height if region.axis == "across" else part.width
                room = region.height - (rest_top - top) if region.axis == "across" else region.width - (rest_left - left)
                if size < room or last_too:
                    box = Region(region.width - (rest_left - left), region.height - (rest_top - top))
                    axis = "across" if region.axis == "across" else "along"
                    self._cut(box, rest_left, rest_top, axis, size, text if number == 0 else "")
                elif part.kind >= 0 and number == 0:
                    self._add(f" What is left is {self.teller.things(part.kind, 1)}.")
                inner.append((part, rest_left, rest_top, "each" if number == 0 and count > 1 else "it" if number == 0 else "-"))
                if region.axis == "across":
                    rest_top += size
                else:
                    rest_left += size
        for part, x, y, word in inner:
            start = len(self.slices)
            self.write(part, x, y, word if leader != "-" else "-")
            if word == "-" or leader == "-":
                self.slices[start:] = [_silent(each) for each in self.slices[start:]]

    def _cut(self, region: Region, left: int, top: int, axis: str, at: int, text: str) -> None:
        step = self.teller.step
        box = (left * step, top * step, (left + region.width) * step, (top + region.height) * step)
        assert axis in ("across", "along"), axis
        self.slices.append(Slice(len(self.slices) + 1, box, axis, at * step, text))  # type: ignore[arg-type]

    def _add(self, text: str) -> None:
        last = self.slices[-1]
        self.slices[-1] = Slice(last.order, last.region, last.axis, last.at, last.text + text)

    def _strip_words(self, part: Region, count: int) -> str:
        strips = f"a strip {self.teller.length(part.height)} wide" if count == 1 else (
            f"{count} strips {self.teller.length(part.height)} wide")
        return f"Cut {strips} {self.teller.strip_words}."

    def _words(self, region: Region, part: Region, count: int, leader: str, first: bool) -> str:
        """What is said at the first of a group of cuts."""
        tell = self.teller
        size = part.height if region.axis == "across" else part.width
        if first and region.axis == "across":
            text = self._strip_words(part, count)
            return f"{text[:-1]}: {tell.things(part.kind, count)}." if part.kind >= 0 else text
        way = "from the top" if region.axis == "across" else "across"
        every = "every" if count > 1 else "at"
        cut = f"Cut {leader or 'it'} {way} {every} {tell.length(size)}"
        if part.kind < 0 and not part.parts:
            return f"{cut}; the rest is left over."
        if part.kind >= 0:
            return f"{cut}: {tell.things(part.kind, count)}."
        pieces = "a piece" if count == 1 else f"{count} pieces"
        return f"Cut {pieces} {tell.length(size)} {'high' if region.axis == 'across' else 'wide'} for {self._summary(part)}."

    def _summary(self, part: Region) -> str:
        kinds: dict[int, int] = {}
        for each in boxes_in(part):
            kinds[each.kind] = kinds.get(each.kind, 0) + 1
        return " and ".join(self.teller.things(kind, count) for kind, count in kinds.items())


def _silent(each: Slice) -> Slice:
    return Slice(each.order, each.region, each.axis, each.at, "")


def _groups(parts: Sequence[Region]) -> Iterator[tuple[Region, int]]:
    for part, group in groupby(parts):
        yield part, len(list(group))
