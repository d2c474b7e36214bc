"""The cuts of a plan in the order they are made, in words and numbers.

The cloth is parted into all its strips first; then strip by strip, and a piece of a strip is cut up before
the next is cut off, so that 'it' is always the piece just spoken of. Cuts that go together are told once, at
the first of them, and `Slice.strips` says to which strips that is done; the others have no words. Inches.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import groupby
from typing import Final, NamedTuple

from ...measure.tolerance import Number
from ...words.phrases import count_of, one_of
from ...words.rulers import length_text
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
        return self.words(steps * self.step)

    def words(self, length: Number) -> str:
        """A length in inches, as the ruler shows it."""
        return length_text(length, self.step)

    def things(self, kind: int, count: int) -> str:
        """`10 squares`; `2 strips of 6 templates each`."""
        noun, of, held = self.nouns[kind].partition(" of ")
        return count_of(count, noun) + of + held + (" each" if held[:1].isdigit() and count > 1 else "")


class _Named(NamedTuple):
    """What words call a region: at its first cut, and when they come back to it from a piece of it."""

    now: str
    again: str


CLOTH: Final = _Named("", "")
TOLD: Final = _Named("-", "-")  # one of a group that is told of already
LEFT: Final = "what is left"

_Inner = tuple[Region, int, int, _Named, tuple[int, ...]]
"""A part to be cut up: where its corner is, its name, and the numbers of the strips that are cut like it."""


def slices_of(region: Region, teller: Teller, off_bolt: bool) -> tuple[Slice, ...]:
    """Every cut of a cloth. `off_bolt`: the last strip is cut off too, for the bolt goes on."""
    writer = _Writer(teller)
    writer.write((region, 0, 0, CLOTH, ()), off_bolt)
    return tuple(writer.slices)


class _Writer:
    """Numbers the cuts as it goes."""

    def __init__(self, teller: Teller) -> None:
        self.teller = teller
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
            text = self._left(group[0], named, back) if filled else self._words(region, group, named, back)
            inner: list[_Inner] = []
            for number, part in enumerate(group):
                x, y = left + region.width - rest.width, top + region.height - rest.height
                self._part(rest, (x, y), region.axis, part, "" if number else text, strips, last_too)
                alike = tuple(first + at for at, each in enumerate(group, 1) if each == part)
                name = TOLD if part in group[:number] else self._name(home, rest, part, group)
                inner.append((part, x, y, name, alike if whole else strips))
                rest = _after(rest, part, region.axis)
            back = not whole and any(part.parts for part in group)
            later += inner if whole else []
            self._inner([] if whole else inner)
        self._inner(later)
        if named is TOLD:
            self._hush(begun)

    def _inner(self, parts: Sequence[_Inner]) -> None:
        for part in parts:
            self.write(part)

    def _hush(self, begun: int) -> None:
        """Takes the words off the cuts from there on: they were told at another part."""
        self.slices[begun:] = [replace(each, text="", strips=()) for each in self.slices[begun:]]

    def _name(self, home: _Inner, rest: Region, part: Region, group: Sequence[Region]) -> _Named:
        """What to call a part, where the first of equal ones speaks for them all."""
        region, _, _, named, _ = home
        if named is CLOTH:
            return _Named("it", "the strip")
        size, room = _along(part, region.axis), _along(rest, region.axis)
        if len(group) == 1 and size == room:
            return named if size == _along(region, region.axis) else _Named(LEFT, LEFT)
        measured = f"{self.teller.length(size)} {MEASURED[region.axis]}"
        return _Named("it", f"the piece {measured}") if len(group) == 1 else _Named("each", "each piece")

    def _part(
        self,
        rest: Region,
        corner: tuple[int, int],
        axis: Axis,
        part: Region,
        text: str,
        strips: tuple[int, ...],
        last_too: bool,
    ) -> None:
        """Cuts a part off what is left of its region, unless it is all that is left."""
        size, room, (left, top) = _along(part, axis), _along(rest, axis), corner
        if size < room or last_too:
            step = self.teller.step
            box = (left * step, top * step, (left + rest.width) * step, (top + rest.height) * step)
            assert axis, "what has parts is cut some way"
            self.slices.append(Slice(len(self.slices) + 1, box, axis, size * step, text, strips))
        elif part.kind >= 0 and text:
            last = self.slices[-1]
            self.slices[-1] = replace(last, text=f"{last.text} {text}".strip(), strips=strips)

    def _left(self, part: Region, named: _Named, back: bool) -> str:
        """What is said of a box that is all that is left of its region."""
        if named is TOLD or part.kind < 0:
            return ""
        of = f" of {named.again}" if back else ""
        return f"What is left{of} is {self.teller.things(part.kind, 1)}."

    def _words(self, region: Region, group: Sequence[Region], named: _Named, back: bool) -> str:
        """What is said at the first of a group of parts."""
        if named is TOLD:
            return ""
        if named is CLOTH and region.axis == "across":
            return self._strips(group)
        tell, part, count = self.teller, group[0], len(group)
        size, called = tell.length(_along(part, region.axis)), named.again if back else named.now
        way = "from the top" if region.axis == "across" else "across"
        cut = f"Cut {called or 'it'} {way} {'every' if count > 1 else 'at'} {size}"
        if part.kind < 0 and not part.parts:
            return f"{cut}; the rest is left over."
        if part.kind >= 0:
            return f"{cut}: {tell.things(part.kind, count)}{' from each' if called == 'each' else ''}."
        pieces = "a piece" if count == 1 else f"{count} pieces"
        begin = "Cut" if called in ("", "it") else f"From {called}, cut"
        each = "" if count == 1 else " each"
        return f"{begin} {pieces} {size} {MEASURED[region.axis]} for {self._sum(part)}{each}."

    def _strips(self, group: Sequence[Region]) -> str:
        """`Cut 7 strips 3 7/8in wide across the cloth.`"""
        count, tell = len(group), self.teller
        strips = f"{'a strip' if count == 1 else f'{count} strips'} {tell.length(group[0].height)} wide"
        text = f"Cut {strips} {tell.strip_words}"
        used = [part.kind for part in group if part.kind >= 0]
        if not used:
            return f"{text}."
        if len(set(used)) == 1 and len(used) == count and tell.nouns[used[0]] != "strip":
            return f"{text}: {tell.things(used[0], count)}."
        held = Counter(words for kind in used if (words := tell.nouns[kind].partition(" of ")[2]))
        told = [
            f"{many} {'holds' if many == 1 else 'hold'} {words}"
            f"{' each' if many > 1 and words[:1].isdigit() else ''}"
            for words, many in held.items()
        ]
        whole = len(used) - held.total()
        if whole == count:
            return f"{text}; {'it stays' if count == 1 else 'all stay'} whole."
        if whole:
            told.append(f"{whole} {'stays' if whole == 1 else 'stay'} whole")
        return f"{text}; {one_of(told, 'and')}."

    def _sum(self, part: Region) -> str:
        kinds = Counter(each.kind for each in boxes_in(part))
        return one_of([self.teller.things(kind, count) for kind, count in kinds.items()], "and")


MEASURED: Final[Mapping[Axis, str]] = {"across": "high", "along": "wide", "": ""}
"""What the size of a part is called, by the way it is cut off."""


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
        found = list(group)
        yield before, found
        before += len(found)
