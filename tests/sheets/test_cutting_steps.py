"""The cuts of a cloth in words, followed as a maker does who has nothing else: strip by strip, as headings
say."""

from __future__ import annotations

import re
from collections import Counter

import pytest
from piecewright.cutting.plan_model import ClothPlan, CuttingPlan
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.sheets.quilts.steps import step_lines, steps_of, strip_words, strips_of
from support.random_quilts import TWELVE, compiled_quilt
from support.sample_quilts import planned

STRIPS = re.compile(r"Strips? ([\d, and to]+?)(, each)?:")
CUT_OFF = re.compile(r"Cut (?:a strip|(\d+) strips) .* wide")


def numbers(words: str) -> list[int]:
    """`1 and 2`, `3 to 5`, `1, 2 and 5` as numbers."""
    if " to " in words:
        first, last = map(int, words.split(" to "))
        return list(range(first, last + 1))
    return [int(each) for each in re.findall(r"\d+", words)]


def told_strips(cloth: ClothPlan) -> Counter[int]:
    """How often each strip is spoken of as one to be cut up."""
    found: Counter[int] = Counter()
    for number, text in step_lines(cloth):
        if not number:
            match = STRIPS.fullmatch(text)
            assert match is not None, text
            found.update(numbers(match.group(1)))
            assert bool(match.group(2)) == (len(numbers(match.group(1))) > 1)
    return found


def plans() -> list[CuttingPlan]:
    made = [planned(name)[1] for name in ("sampler", "on point", "baby")]
    for text in TWELVE:
        outcome = plan_cutting(compiled_quilt(text))
        assert outcome.value is not None
        made.append(outcome.value)
    return made


PLANS = plans()
CLOTHS = [(plan, cloth) for plan in PLANS for fabric in plan.fabrics for cloth in fabric.cloths]


def test_every_strip_that_holds_more_than_one_piece_is_cut_up_once():
    """Strips for templates stay whole."""
    for plan, cloth in CLOTHS:
        across = not cloth.slices or cloth.slices[0].axis == "across"
        held: Counter[int] = Counter()
        for placed in (each for each in cloth.placed if not plan.cuts[each.cut].outline):
            at = placed.top if across else placed.left
            held[next(each.number for each in strips_of(cloth) if each.start <= at < each.end)] += 1
        told = told_strips(cloth)
        assert set(told.values()) <= {1}, "a strip is spoken of under one heading"
        if len(strips_of(cloth)) > 1:
            assert {strip for strip, count in held.items() if count > 1} <= set(told)


def test_strips_that_are_cut_off_are_all_named():
    for _, cloth in CLOTHS:
        for step in steps_of(cloth):
            match = CUT_OFF.match(step.text)
            if step.whole and match:
                assert len(step.strips) == int(match.group(1) or 1), step.text


def test_words_speak_of_the_strips_under_their_heading_and_of_no_others():
    texts = [text for _, cloth in CLOTHS for number, text in step_lines(cloth) if number]
    assert texts and not any("of them" in text for text in texts)


@pytest.mark.parametrize(("strips", "words"), [
    ((1,), "Strip 1"), ((1, 2), "Strips 1 and 2"), ((3, 4, 5), "Strips 3 to 5"),
    ((1, 2, 5), "Strips 1, 2 and 5"),
])
def test_strips_by_their_numbers(strips, words):
    assert strip_words(strips) == words
