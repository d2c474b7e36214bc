"""The words in which a cutting method is given, and lengths as the maker's own ruler shows them."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from ...measure.fractions import mark_up, nearest_mark, number_text
from ...measure.length import UNITS
from ...measure.tolerance import NEAR, Number

PARTS: Final = {3: "third", 5: "fifth", 6: "sixth", 7: "seventh", 9: "ninth", 10: "tenth", 11: "eleventh",
                12: "twelfth"}
"""Shares of a whole number of inches that rulers in halves do not show."""

FINEST: Final = 32
"""Marks to the inch that a ruler may show; other lengths are given in decimals, thirds too."""

SHORT: Final = "short of"
"""In a reason that says by how much a cut misses the mark."""

OFF_GRAIN: Final = "its sides lie off the straight grain"

COUNTS: Final = ("", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven")


def metric(step: Fraction) -> bool:
    """Whether a ruler is marked in centimetres: its step is no binary part of an inch."""
    bottom = step.denominator
    return bottom & (bottom - 1) != 0


def length_text(length: Number, step: Fraction) -> str:
    """`3 7/8in`, or `9.75cm` for a ruler in centimetres."""
    if metric(step):
        shown = float(length) / float(UNITS["cm"])
        return f"{shown:.3f}".rstrip("0").rstrip(".") + "cm"
    if abs(float(length) * FINEST - round(float(length) * FINEST)) > NEAR * FINEST:
        return _decimal(float(length)) + "in"
    return number_text(length) + "in"


def unmarked(finished: Number, exact: Number, step: Fraction, whole: Number | None) -> str:
    """Why a length is not cut by the ruler: `one third of 8in is 2.667in, which no ruler marks`."""
    share = _share_words(finished, step, whole)
    if share:
        return share
    mark = mark_up(exact, step)
    short = length_text(float(mark) - float(exact), step)
    cut, shown = length_text(exact, step), length_text(mark, step)
    return f"its cut of {cut} lies {short} {SHORT} the ruler's {shown}"


def _share_words(finished: Number, step: Fraction, whole: Number | None) -> str:
    if abs(float(mark_up(finished, step)) - float(finished)) <= NEAR:
        return ""
    wholes = [whole] if whole is not None else [bottom * finished for bottom in PARTS]
    for each in wholes:
        for bottom, word in PARTS.items():
            top = round(float(finished) / float(each) * bottom)
            if 0 < top < min(bottom, 12) and abs(float(each) * top / bottom - float(finished)) <= NEAR:
                if abs(float(each) - round(float(each))) > NEAR and whole is None:
                    continue
                count = COUNTS[top]
                return (f"{count} {word}{'s' if top > 1 else ''} of {length_text(each, step)} is "
                        f"{length_text(finished, step)}, which no ruler marks")
    return ""


def _decimal(length: float) -> str:
    return f"{length:.3f}".rstrip("0").rstrip(".")


def added(finished: Number, mark: Fraction, step: Fraction) -> str:
    """`3in finished and 7/8in`; `about 8 1/2in finished and 1 1/4in` where that is on no mark."""
    extra = mark - Fraction(mark_up(finished, step))
    near_by = nearest_mark(finished, step)
    shown = length_text(finished, step)
    if abs(float(near_by) - float(finished)) > NEAR and "." in shown:
        shown = f"about {length_text(near_by, step)}"
    return f"{shown} finished and {length_text(extra, step)}"


def degrees_text(angle: float) -> str:
    """`45°`, `22.5°`."""
    return f"{angle:.1f}".rstrip("0").rstrip(".") + "°"
