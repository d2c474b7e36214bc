"""The cuts of one cloth as steps that a maker follows: numbered, and told strip by strip.

The plan first parts the whole cloth into strips, then each strip. A cut that belongs to one told before
has no
words, and so no number of its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, takewhile
from typing import Final

from ...cutting.plan_model import ClothPlan, Slice
from ...measure.tolerance import NEAR, Number, near


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip of the cloth, from its first cut: from where to where, along the cuts' own way."""

    number: int
    start: Number
    end: Number


@dataclass(frozen=True, slots=True)
class Step:
    """One instruction. `strips` are the first and last strip that it makes, or that it is done to."""

    number: int
    text: str
    slice: Slice
    strips: tuple[int, int]
    whole: bool  # whether it parts the cloth itself


WHOLE: Final = 1  # the number of a cloth's only strip, where no cut parts it


def first_cuts(cloth: ClothPlan) -> tuple[Slice, ...]:
    """The cuts that part the cloth itself."""
    return tuple(takewhile(lambda each: _of_whole(cloth, each), cloth.slices))


def _of_whole(cloth: ClothPlan, cut: Slice) -> bool:
    left, top, right, bottom = cut.region
    start = float(left if cut.axis == "across" else top)
    ends_there = near(right, cloth.width) and near(bottom, cloth.length)
    return cut.axis == cloth.slices[0].axis and abs(start) <= NEAR and ends_there


def strips_of(cloth: ClothPlan) -> tuple[Strip, ...]:
    """The strips in order, what is left after the last cut too."""
    cuts = first_cuts(cloth)
    across = not cuts or cuts[0].axis == "across"
    whole = cloth.length if across else cloth.width
    stops: list[Number] = [0 * whole]
    for cut in cuts:
        stops.append((cut.region[1] if across else cut.region[0]) + cut.at)
    if not near(stops[-1], whole):
        stops.append(whole)
    return tuple(
        Strip(at + 1, first, last) for at, (first, last) in enumerate(pairwise(stops))
    )


def steps_of(cloth: ClothPlan) -> tuple[Step, ...]:
    """Every cut that has words, numbered from 1."""
    strips, first = strips_of(cloth), first_cuts(cloth)
    across = not first or first[0].axis == "across"
    steps: list[Step] = []
    for at, cut in enumerate(cloth.slices):
        if not cut.text:
            continue
        if at < len(first):
            last = next((n for n in range(at + 1, len(first)) if first[n].text), len(first)) - 1
            made = (at + 1, last + 1)
        else:
            own = _strip_at(strips, cut.region[1] if across else cut.region[0])
            made = (own, own)
        steps.append(Step(len(steps) + 1, cut.text, cut, made, at < len(first)))
    return tuple(steps)


def _strip_at(strips: Sequence[Strip], place: Number) -> int:
    """The number of the strip in which a place lies."""
    return next((strip.number for strip in strips if strip.start - NEAR <= place < strip.end - NEAR), WHOLE)


SEVERAL: Final = re.compile(r"Cut (each|\d+ of them)\b")
"""How the words of a step begin that is done to several strips alike; "one of them" is the strip it names."""


def step_lines(cloth: ClothPlan) -> Iterator[tuple[str, str]]:
    """Number and words of each step. Lines without a number say which strip the steps after them are done
    to."""
    steps = steps_of(cloth)
    groups = [step.strips for step in steps if step.whole]
    last = ""
    for step in steps:
        if step.whole:
            yield str(step.number), f"{step.text} ({strip_words(step.strips)}.)"
            continue
        home = next((each for each in groups if each[0] <= step.strips[0] <= each[1]), step.strips)
        heading = strip_words(home if SEVERAL.match(step.text) else step.strips)
        if heading != last and not (step.text.startswith("Cut each") and last.endswith(str(step.strips[0]))):
            yield "", f"{heading}:"
            last = heading
        yield str(step.number), step.text.replace("Cut one of them", "Cut it")


def strip_words(strips: tuple[int, int]) -> str:
    """`Strip 1`, `Strips 1 and 2`, `Strips 1 to 4`."""
    first, last = strips
    if first == last:
        return f"Strip {first}"
    return f"Strips {first} {'and' if last == first + 1 else 'to'} {last}"
