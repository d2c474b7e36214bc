"""The cuts of one cloth as steps that a maker follows: numbered, and told strip by strip.

The plan first parts the whole cloth into strips, then each strip. A cut that belongs to one told before has
no words, and so no number of its own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...cutting.plan_model import ClothPlan, Slice, Strip
from ...measure.record import record
from ...measure.tolerance import near
from ...words.pages import cutting as words
from ...words.say import Say
from ...words.work.slices import instruction_words


@record
class Step:
    """One instruction. `strips` are those that it makes, or that it is done to."""

    number: int
    slice: Slice
    strips: tuple[int, ...]
    whole: bool  # whether it parts the cloth itself


def steps_of(cloth: ClothPlan) -> tuple[Step, ...]:
    """Every cut that has words, numbered from 1."""
    first = cloth.partings
    steps: list[Step] = []
    for at, cut in enumerate(cloth.slices):
        if not cut.instructions:
            continue
        if at < len(first):
            last = next((n for n in range(at + 1, len(first)) if first[n].instructions), len(first))
            made = tuple(range(at + 1, last + 1))
            if last == len(first) and _ends_used(cloth.strips, last):
                made += (last + 1,)
        else:
            made = cut.strips
        steps.append(Step(len(steps) + 1, cut, made, at < len(first)))
    return tuple(steps)


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
    steps, end = steps_of(cloth), cloth.strips[-1].number
    parting = [step for step in steps if step.whole]
    for step in steps:
        text = instruction_words(say, step.slice.instructions)
        if step.whole:
            left = step is parting[-1] and end not in step.strips
            yield str(step.number), words.parted_into(text, step.strips, end if left else 0)
            continue
        if step.strips != last:
            yield "", words.done_to(step.strips)
        last = step.strips
        yield str(step.number), text
