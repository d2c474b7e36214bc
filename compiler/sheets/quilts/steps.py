"""The cuts of one cloth as steps that a maker follows: numbered, and told strip by strip.

The plan first parts the whole cloth into strips, then each strip. A cut that belongs to one told before has
no words, and so no number of its own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, takewhile
from typing import Final

from ...cutting.plan_model import ClothPlan, Slice
from ...measure.tolerance import NEAR, Number, near
from ...words.phrases import one_of
from ...words.say import Say
from ...words.work.slices import instruction_words


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip of the cloth, from its first cut: from where to where, along the cuts' own way. What is left
    over after the last cut is none, and has no number."""

    number: int  # from 1; 0 of what is left over
    start: Number
    end: Number


@dataclass(frozen=True, slots=True)
class Step:
    """One instruction. `strips` are those that it makes, or that it is done to."""

    number: int
    slice: Slice
    strips: tuple[int, ...]
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
    """The strips in order, then what is left after the last cut: a strip too where something lies in it."""
    cuts = first_cuts(cloth)
    across = not cuts or cuts[0].axis == "across"
    whole = cloth.length if across else cloth.width
    stops: list[Number] = [0 * whole]
    for cut in cuts:
        stops.append((cut.region[1] if across else cut.region[0]) + cut.at)
    if not near(stops[-1], whole):
        stops.append(whole)
    last = max((each.top if across else each.left for each in cloth.placed), default=0 * whole)
    return tuple(
        Strip(at + 1 if not at or first <= last + NEAR else 0, first, end)
        for at, (first, end) in enumerate(pairwise(stops))
    )


def steps_of(cloth: ClothPlan) -> tuple[Step, ...]:
    """Every cut that has words, numbered from 1."""
    strips, first = strips_of(cloth), first_cuts(cloth)
    across = not first or first[0].axis == "across"
    steps: list[Step] = []
    for at, cut in enumerate(cloth.slices):
        if not cut.instructions:
            continue
        if at < len(first):
            last = next((n for n in range(at + 1, len(first)) if first[n].instructions), len(first))
            made = tuple(range(at + 1, last + 1))
            if last == len(first) and _ends_used(strips, last):
                made += (last + 1,)
        else:
            made = cut.strips or (_strip_at(strips, cut.region[1] if across else cut.region[0]),)
        steps.append(Step(len(steps) + 1, cut, made, at < len(first)))
    return tuple(steps)


def _strip_at(strips: Sequence[Strip], place: Number) -> int:
    """The number of the strip in which a place lies."""
    return next((strip.number for strip in strips if strip.start - NEAR <= place < strip.end - NEAR), WHOLE)


def _ends_used(strips: Sequence[Strip], at: int) -> bool:
    """Whether what the last cut leaves is one more strip like the one it cuts off, and is used."""
    if at >= len(strips):
        return False
    before, end = strips[at - 1], strips[at]
    return end.number > 0 and near(end.end - end.start, before.end - before.start)


def step_lines(say: Say, cloth: ClothPlan) -> Iterator[tuple[str, str]]:
    """Number and words of each step. Lines without a number say to which strips the steps after them are
    done."""
    last: tuple[int, ...] = ()
    steps, end = steps_of(cloth), strips_of(cloth)[-1].number
    parting = [step for step in steps if step.whole]
    for step in steps:
        text = instruction_words(say, step.slice.instructions)
        if step.whole:
            left = end and step is parting[-1] and end not in step.strips
            rest = f"; what is left is strip {end}" if left else ""
            yield str(step.number), f"{text} ({strip_words(step.strips)}{rest}.)"
            continue
        if step.strips != last:
            yield "", f"{strip_words(step.strips)}{', each' if len(step.strips) > 1 else ''}:"
        last = step.strips
        yield str(step.number), text


def strip_words(strips: Sequence[int]) -> str:
    """`Strip 1`, `Strips 1 and 2`, `Strips 1 to 4`, `Strips 1, 2 and 5`."""
    if len(strips) == 1:
        return f"Strip {strips[0]}"
    first, last = strips[0], strips[-1]
    if len(strips) > 2 and last - first + 1 == len(strips):
        return f"Strips {first} to {last}"
    return f"Strips {one_of([str(each) for each in strips], 'and')}"
