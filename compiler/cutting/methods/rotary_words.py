"""The words in which a cutting method is given, and lengths as the maker's own ruler shows them."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final

from ...measure.length import UNITS
from ...measure.marks import mark_up
from ...measure.tolerance import NEAR, Number
from ...words.numbers import number_text

PARTS: Final = {
    3: "third",
    5: "fifth",
    6: "sixth",
    7: "seventh",
    9: "ninth",
    10: "tenth",
    11: "eleventh",
    12: "twelfth",
}
"""Shares of a whole number of inches that rulers in halves do not show."""

FINEST: Final = 32
"""Marks to the inch that a ruler may show; other lengths are given in decimals, thirds too."""

SHORT: Final = "short of"
"""In a reason that says by how much a cut misses the mark."""

OFF_GRAIN: Final = "its sides lie off the straight grain"

DIGITS: Final = 3
"""Decimals of a length that lies on no mark."""

DIGITS_MOST: Final = 8
"""Decimals at which a sum is given up: finer than any rounding of a length here."""

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
    up = _up(exact, step, DIGITS)
    short, cut, shown = _text(mark - up, step, DIGITS), _text(up, step, DIGITS), length_text(mark, step)
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
                return (
                    f"{count} {word}{'s' if top > 1 else ''} of {length_text(each, step)} is "
                    f"{length_text(finished, step)}, which no ruler marks"
                )
    return ""


def _decimal(length: float) -> str:
    return f"{length:.3f}".rstrip("0").rstrip(".")


def added(finished: Number, extra: float, mark: Fraction, step: Fraction, what: str = "finished") -> str:
    """`3in finished and 7/8in`; `about 8 1/2in finished and 1 1/4in` where that is on no mark.

    What is printed comes to the cut, up to the ruler's next mark, and neither part is less than it exactly
    is: round figures where they do, else decimals."""
    rounds = mark_up(finished, step), mark_up(extra, step)
    about = "" if _on(rounds[0], finished) else "about "
    if mark_up(sum(rounds), step) == mark:
        return f"{about}{length_text(rounds[0], step)} {what} and {length_text(rounds[1], step)}"
    for digits in range(DIGITS, DIGITS_MOST):
        size, least = _up(finished, step, digits), _up(extra, step, digits)
        for more in (rounds[1], least, mark - size):
            if more >= extra - 2 * NEAR and mark_up(size + more, step) == mark:
                return f"{_text(size, step, digits)} {what} and {_text(more, step, digits)}"
    return f"{length_text(finished, step)} {what} and {length_text(extra, step)}"  # on marks finer than print


def to_trim(inches: Fraction, step: Fraction) -> Fraction:
    """So much over, in the round figures of who measures by that ruler: 2in or 5cm, 6in or 15cm."""
    five = 5 * UNITS["cm"]
    return round(inches / five) * five if metric(step) else inches


def length_up(length: Number, step: Fraction) -> str:
    """The length as it is where the ruler has a mark for it, else in decimals, never less than it is."""
    mark = mark_up(length, Fraction(1, FINEST) if not metric(step) else step)
    return length_text(mark, step) if _on(mark, length) else _text(_up(length, step, DIGITS), step, DIGITS)


def _on(mark: Number, length: Number) -> bool:
    return abs(float(mark) - float(length)) <= NEAR


def _up(length: Number, step: Fraction, digits: int) -> Fraction:
    """Inches up to so many decimals of what the ruler is marked in."""
    unit = UNITS["cm"] if metric(step) else Fraction(1)
    part = unit / Fraction(10**digits)
    return ceil((Fraction(length) - Fraction(NEAR) / 10) / part) * part


def _text(length: Fraction, step: Fraction, digits: int) -> str:
    unit, name = (UNITS["cm"], "cm") if metric(step) else (Fraction(1), "in")
    if _on(mark_up(length, step), length):
        return length_text(length, step)
    return f"{float(length / unit):.{digits}f}".rstrip("0").rstrip(".") + name


def degrees_text(angle: float) -> str:
    """`45°`, `22.5°`."""
    return f"{angle:.1f}".rstrip("0").rstrip(".") + "°"
