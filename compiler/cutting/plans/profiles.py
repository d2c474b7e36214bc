r"""How near two outlines may lie: what each reaches to between the levels of its corners.

      ___         between two levels an outline runs straight on either side, so two outlines that lie
   --/   \--      beside each other are nearest at a level of one of them
    /     \
   --------
Inches; places are complex numbers.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from ...measure.tolerance import NO_HEIGHT


class Slab(NamedTuple):
    """From level `start` to level `end`: the least and the greatest reach at either."""

    start: float
    end: float
    least: tuple[float, float]
    greatest: tuple[float, float]

    def cut(self, start: float, end: float) -> Slab:
        """The part of it between two levels within it."""
        shares = [(level - self.start) / (self.end - self.start) for level in (start, end)]
        least, greatest = (
            tuple(one + (two - one) * share for share in shares) for one, two in (self.least, self.greatest)
        )
        return Slab(start, end, (least[0], least[1]), (greatest[0], greatest[1]))


Profile = tuple[Slab, ...]


def across(outline: Sequence[complex]) -> Profile:
    """How far left and right an outline reaches, level by level from the top."""
    ends = list(zip(outline, (*outline[1:], outline[0]), strict=True))
    edges = [(one, two) if one.imag <= two.imag else (two, one) for one, two in ends]
    sloping = sorted(
        (each for each in edges if each[1].imag - each[0].imag > NO_HEIGHT), key=lambda each: each[0].imag
    )
    slabs = []
    for start, end in pairwise(sorted({place.imag for place in outline})):
        if end - start > NO_HEIGHT:
            reach = [
                (_at(one, two, start), _at(one, two, end))
                for one, two in sloping
                if one.imag <= start + NO_HEIGHT and two.imag >= end - NO_HEIGHT
            ]
            if reach:
                slabs.append(Slab(start, end, min(reach, key=sum), max(reach, key=sum)))
    return tuple(slabs)


def down(outline: Sequence[complex]) -> Profile:
    """How far up and down an outline reaches, from its left on."""
    return across([complex(place.imag, place.real) for place in outline])


def _at(one: complex, two: complex, level: float) -> float:
    share = (level - one.imag) / (two.imag - one.imag)
    return one.real + (two.real - one.real) * min(1.0, max(0.0, share))


def apart(one: Profile, two: Profile, aside: float = 0.0) -> float:
    """How far the second must start after the first, its levels moved on by `aside`; minus infinity where
    they pass each other."""
    most = float("-inf")
    at = 0
    for slab in one:
        while at < len(two) and two[at].end + aside <= slab.start + NO_HEIGHT:
            at += 1
        ahead = at
        while ahead < len(two) and two[ahead].start + aside < slab.end - NO_HEIGHT:
            start, end = max(slab.start, two[ahead].start + aside), min(slab.end, two[ahead].end + aside)
            mine, other = slab.cut(start, end), two[ahead].cut(start - aside, end - aside)
            most = max(most, mine.greatest[0] - other.least[0], mine.greatest[1] - other.least[1])
            ahead += 1
    return most
