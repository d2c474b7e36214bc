"""What a plan's facts are in words, as pages and reports print them."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import NamedTuple

from piecewright.cutting.methods.method import Method
from piecewright.cutting.plan_model import ClothPlan, Cut
from piecewright.measure.marks import RULER_STEP
from piecewright.measure.tolerance import Number
from piecewright.words.say import by_ruler
from piecewright.words.work.cuts import lies_words, then_words
from piecewright.words.work.offers import making_words, way_words
from piecewright.words.work.reasons import reason_words
from piecewright.words.work.slices import instruction_words


def reason(cut: Cut | Method, step: Fraction = RULER_STEP) -> str:
    """Why it is cut so."""
    return reason_words(by_ruler(step), cut.reason)


def then(cut: Cut, step: Fraction = RULER_STEP) -> str:
    """What is done with it."""
    return then_words(by_ruler(step), cut.then)


def lies(cut: Cut, step: Fraction = RULER_STEP) -> str:
    """How it lies on a print."""
    return lies_words(by_ruler(step), cut.lies)


def instructions(cloth: ClothPlan, step: Fraction = RULER_STEP) -> list[str]:
    """What the cutter is told at every cut; '' where it was told with another."""
    return [instruction_words(by_ruler(step), each.instructions) for each in cloth.slices]


class Way(NamedTuple):
    """Another way to make pieces: its name, how it is done, and what cloth it and cutting singly take."""

    method: str
    text: str
    cloth: Number
    singly: Number


def ways(cuts: Iterable[Cut], step: Fraction = RULER_STEP) -> list[Way]:
    """The other ways that cuts may be made, each once."""
    say = by_ruler(step)
    found = [
        Way(way_words(each.made), making_words(say, each.made), each.cloth, each.singly)
        for cut in cuts
        for each in cut.offers
    ]
    return list(dict.fromkeys(found))
