"""The cuts of a cloth in words, followed as a maker does who has nothing else: strip by strip, as headings
say."""

from __future__ import annotations

import re
from collections import Counter
from fractions import Fraction
from functools import lru_cache

import pytest
from piecewright.cutting.instruction import Boxes
from piecewright.cutting.plan_model import ClothPlan, CuttingPlan
from piecewright.cutting.plans.edges import to_marks
from piecewright.cutting.plans.guillotine import Region
from piecewright.cutting.plans.instructions import Stuff, slices_of
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.measure.tolerance import NEAR
from piecewright.sheets.arrange.leaves import paper_for
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.arrange.style import BLACK, lettering
from piecewright.sheets.page import TextMark
from piecewright.sheets.pictures.cutting_pages import cutting_leaves
from piecewright.sheets.quilts.steps import Step, step_lines, steps_of, strip_words
from piecewright.words.say import INCHES
from piecewright.words.work.slices import instruction_words
from support.random_quilts import TWELVE, compiled_quilt
from support.sample_quilts import planned
from support.works import cut_work

STRIPS = re.compile(r"Strips? ([\d, and to]+?)(, each)?:")
CUT_OFF = re.compile(r"Cut (?:a strip|(\d+) strips) .* wide")


def numbers(said: str) -> list[int]:
    """`1 and 2`, `3 to 5`, `1, 2 and 5` as numbers."""
    if " to " in said:
        first, last = map(int, said.split(" to "))
        return list(range(first, last + 1))
    return [int(each) for each in re.findall(r"\d+", said)]


def words(step: Step) -> str:
    """What the cutter is told at a step."""
    return instruction_words(INCHES, step.slice.instructions)


def told_strips(cloth: ClothPlan) -> Counter[int]:
    """How often each strip is spoken of as one to be cut up."""
    found: Counter[int] = Counter()
    for number, text in step_lines(INCHES, cloth):
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
    """Strips for templates are not: their templates are cut round."""
    for plan, cloth in CLOTHS:
        across = not cloth.slices or cloth.slices[0].axis == "across"
        held: Counter[int] = Counter()
        for placed in (each for each in cloth.placed if not plan.cuts[each.cut].outline):
            at = placed.top if across else placed.left
            held[next(each.number for each in cloth.strips if each.start <= at < each.end)] += 1
        told = told_strips(cloth)
        assert set(told.values()) <= {1}, "a strip is spoken of under one heading"
        if len(cloth.strips) > 1:
            assert {strip for strip, count in held.items() if count > 1} <= set(told)


def test_strips_that_are_cut_off_are_all_named():
    for _, cloth in CLOTHS:
        for step in steps_of(cloth):
            match = CUT_OFF.match(words(step))
            if step.whole and match:
                assert len(step.strips) == int(match.group(1) or 1), words(step)


def test_words_speak_of_the_strips_under_their_heading_and_of_no_others():
    texts = [text for _, cloth in CLOTHS for number, text in step_lines(INCHES, cloth) if number]
    assert texts and not any("of them" in text for text in texts)


@pytest.mark.parametrize(
    ("strips", "words"),
    [
        ((1,), "Strip 1"),
        ((1, 2), "Strips 1 and 2"),
        ((3, 4, 5), "Strips 3 to 5"),
        ((1, 2, 5), "Strips 1, 2 and 5"),
    ],
)
def test_strips_by_their_numbers(strips, words):
    assert strip_words(strips) == words


def holds(cloth: ClothPlan, plan: CuttingPlan, *, templates: bool) -> Counter[int]:
    """How many templates, or other pieces, each strip of a cloth holds."""
    across = not cloth.slices or cloth.slices[0].axis == "across"
    found: Counter[int] = Counter()
    for placed in cloth.placed:
        if bool(plan.cuts[placed.cut].outline) == templates:
            at = placed.top if across else placed.left
            found[next(each.number for each in cloth.strips if each.start - NEAR <= at < each.end)] += 1
    return found


def test_what_is_left_over_is_no_strip():
    left = 0
    for plan, cloth in CLOTHS:
        held = holds(cloth, plan, templates=False) + holds(cloth, plan, templates=True)
        numbered = {strip.number for strip in cloth.strips if strip.number}
        assert set(held) == numbered, "a number without a piece, or a piece without a number"
        assert {number for step in steps_of(cloth) for number in step.strips} <= numbered
        left += any(not strip.number for strip in cloth.strips)
    assert left > 3


def test_strips_follow_each_other_across_the_cloth_and_hold_what_lies_in_them():
    for _, cloth in CLOTHS:
        across = cloth.axis == "across"
        ends = [0, *(strip.end for strip in cloth.strips)]
        assert [strip.start for strip in cloth.strips] == ends[:-1]
        assert ends[-1] == (cloth.length if across else cloth.width)
        for strip in cloth.strips:
            for each in strip.placed:
                low, size = (each.top, each.height) if across else (each.left, each.width)
                assert strip.start - NEAR <= low <= low + size <= strip.end + NEAR


def test_a_strip_that_nothing_cuts_off_is_named_as_what_is_left():
    for _, cloth in CLOTHS:
        said = " ".join(text for _, text in step_lines(INCHES, cloth))
        parting = {number for step in steps_of(cloth) if step.whole for number in step.strips}
        rest = {strip.number for strip in cloth.strips if strip.number} - parting
        named = set(map(int, re.findall(r"what is left is strip (\d+)", said)))
        assert named == (rest if parting else set())


WHOLE = re.compile(r"(\d+|all|it) stays? whole")


def test_strips_that_hold_templates_are_not_called_whole():
    whole = 0
    for plan, cloth in CLOTHS:
        held = holds(cloth, plan, templates=True)
        for step in (step for step in steps_of(cloth) if step.whole):
            for count in WHOLE.findall(words(step)):
                own = sum(not held[strip] for strip in step.strips)
                assert (len(step.strips) if count in ("all", "it") else int(count)) <= own, words(step)
                whole += 1
    assert whole > 5


def test_mixed_strips_are_told_apart_by_what_they_hold():
    """Two strips of one width, one for a border, two with templates."""
    thick, thin = Region(300, 40, kind=0), Region(300, 40, kind=1)
    other = Region(300, 40, kind=2)
    cloth = Region(300, 160, "across", (thick, thin, thin, other))
    boxes = [Boxes("strip"), Boxes("strip", "template", 8), Boxes("strip", "template")]
    first = slices_of(cloth, Stuff(to_marks(Fraction(1, 8), (300, 160)), boxes))[0]
    held = "2 hold 8 templates each, 1 holds templates and 1 stays whole"
    told = instruction_words(INCHES, first.instructions)
    assert told == f"Cut 4 strips 5in wide across the cloth; {held}."


@lru_cache
def cutting_pages(at: int) -> list[list[TextMark]]:
    """The words of the pages that show how one of the twelve is cut."""
    work = cut_work(compiled_quilt(TWELVE[at]), PLANS[at - len(TWELVE)])
    leaves = cutting_leaves(work, paper_for(SheetOptions()))
    return [[mark for mark in leaf.marks if isinstance(mark, TextMark)] for leaf in leaves]


def test_pages_of_cutting_pictures_name_their_cloth_first():
    going_on = 0
    for at in range(len(TWELVE)):
        title = ""
        for page in cutting_pages(at):
            assert page[0].role == "section" or page[0].text == f"{title}, continued"
            title = [mark.subject for mark in page if mark.role == "section" or mark is page[0]][-1]
            going_on += page[0].role == "continued"
    assert going_on > 5


def test_no_step_is_parted_between_two_columns_or_pages():
    """Read as it is printed: every number with all lines of its words after it, on one page."""
    for at, plan in enumerate(PLANS[-len(TWELVE) :]):
        wanted = [
            words
            for fabric in plan.fabrics
            for cloth in fabric.cloths
            for number, words in step_lines(INCHES, cloth)
            if number
        ]
        read: list[str] = []
        for page in cutting_pages(at):
            going = False
            for mark in page:
                if mark.role == "step":
                    read.append("")
                    going = True
                elif going and mark.role == "text" and not mark.bold and mark.fill == BLACK:
                    read[-1] = f"{read[-1]} {mark.text}".strip()
                else:
                    going = False
        assert Counter(map(plain_words, read)) == Counter(map(plain_words, wanted))


def plain_words(words: str) -> str:
    """Without the blanks and the glyphs of fractions by which print and words differ."""
    return re.sub(r"\s", "", lettering(words))
