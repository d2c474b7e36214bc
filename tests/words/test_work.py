"""The same facts of cutting, told to who measures otherwise."""

from __future__ import annotations

from fractions import Fraction
from typing import get_args

import pytest
from piecewright.cutting.handling import JoinStrips, LongWay, Parted, SlantedCuts
from piecewright.cutting.instruction import Boxes, CutBoxes, Part, Remainder
from piecewright.cutting.needs import SingleKind
from piecewright.cutting.reasons import Finished, OffMark, Reason, Share
from piecewright.cutting.shapes import Shape
from piecewright.measure.length import UNITS
from piecewright.words.say import CENTIMETRES, INCHES, Say, by_ruler
from piecewright.words.work.cuts import lies_words, then_words
from piecewright.words.work.reasons import reason_words
from piecewright.words.work.shapes import SHAPES, SINGLES, shape_word, single_word
from piecewright.words.work.slices import instruction_words, things

CM = UNITS["cm"]
QUARTER_CM = by_ruler(CM / 4)


THIRD = "one third of 8in is about 2 5/8in, between the ruler's marks"


@pytest.mark.parametrize(
    ("say", "reason", "words"),
    [
        (INCHES, Share(1, 3, 8, Fraction(8, 3)), THIRD),
        (INCHES, Finished(2, 4, False), "2in x 4in finished and its allowances"),
        (QUARTER_CM, Finished(10 * CM, 10 * CM, True), "10cm finished and its allowances"),
        (
            QUARTER_CM,
            OffMark(Fraction(241, 100) * CM, Fraction(5, 2) * CM),
            "its cut would lie between 2.25cm and 2.5cm on the ruler",
        ),
    ],
)
def test_why_by_the_makers_own_ruler(say: Say, reason: Reason, words: str) -> None:
    assert reason_words(say, reason) == words


def test_of_one_square_words_do_not_speak_of_each() -> None:
    once = (Parted("square", "once"),)
    assert then_words(INCHES, once) == "Cut each square once corner to corner."
    assert then_words(INCHES, once, one=True) == "Cut the square once corner to corner."


def test_what_is_done_goes_on_in_order() -> None:
    told = then_words(INCHES, (JoinStrips(False, Fraction(2)), SlantedCuts(45.0, Fraction(9, 4))))
    assert told == (
        "Join the strips end to end, and cut them to length: 2in over in each. "
        "Cut the strip at 45°, each cut 2 1/4in from the last, measured square to it."
    )


def test_who_is_spoken_to_in_centimetres_hears_them_by_any_ruler() -> None:
    cut = CutBoxes(Part("piece"), False, "along", 9, Fraction(31, 8), Boxes("square"))
    assert instruction_words(INCHES, [cut]) == "Cut it across every 3 7/8in: 9 squares."
    assert instruction_words(CENTIMETRES, [cut]) == "Cut it across every 9.84cm: 9 squares."


def test_words_come_back_to_a_piece_by_its_size() -> None:
    left = Remainder(Part("piece", Fraction(5, 2), "across"), True, Boxes("rectangle"))
    assert instruction_words(INCHES, [left]) == "What is left of the piece 2 1/2in high is 1 rectangle."


@pytest.mark.parametrize(
    ("boxes", "count", "words"),
    [
        (Boxes("square"), 1, "1 square"),
        (Boxes("strip", "diamond", 6), 2, "2 strips of 6 diamonds each"),
        (Boxes("strip", "template"), 2, "2 strips of templates"),
    ],
)
def test_boxes_and_what_they_hold(boxes: Boxes, count: int, words: str) -> None:
    assert things(boxes, count) == words


def test_shorter_strips_say_why_they_are_joined() -> None:
    assert "either end up" in lies_words(INCHES, LongWay(False, True))
    assert "buy less cloth" in lies_words(INCHES, LongWay(False, True, shorter=True))


def test_every_kind_has_the_word_of_the_trade() -> None:
    """LANGUAGE.md fixes `half-square triangle`; side and corner triangles are the trade's words for what
    fills the edge of a set on point (common practice, no published source)."""
    assert {*SHAPES} == {each for kinds in get_args(Shape) for each in get_args(kinds)}
    assert {*SINGLES} == {*get_args(SingleKind)}
    assert shape_word("half-square-triangle") == "half-square triangle"
    assert [single_word(each) for each in ("side-triangle", "post")] == ["side triangle", "post"]
