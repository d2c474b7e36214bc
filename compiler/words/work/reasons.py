"""Why a shape is cut by the ruler, or round its template."""

from __future__ import annotations

from typing import Final

from ...cutting.reasons import (
    AcrossFinished,
    Aslant,
    Finished,
    Lacking,
    Mitred,
    NoRule,
    OffAngle,
    OffMark,
    OnRuler,
    Panels,
    Patch,
    Reason,
    Share,
    SlantedEnds,
    Strip,
    StripLength,
    Sum,
)
from ...measure.marks import mark_up, nearest_mark
from ...measure.tolerance import NEAR, near
from ..numbers import degrees_text
from ..rulers import DIGITS, part_text, part_up
from ..say import Say

WITHOUT_RULE: Final[dict[Lacking, str]] = {
    "curved-sides": "its sides are curved",
    "two-allowances-on-a-side": "one of its sides carries two allowances",
    "a-kite": "a kite cannot be cut with ruler and rotary cutter alone",
    "no-such-shape": "its shape cannot be cut with ruler and rotary cutter alone",
    "off-the-grain": "its sides lie off the straight grain",
    "unlike-allowances": "its sides carry different allowances",
    "a-hole": "it has a hole",
    "a-strip-along-the-print": "its strip would lie along the print",
}

COUNTS: Final = ("", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven")

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

DIGITS_MOST: Final = 8
"""Decimals at which a sum is given up: finer than any rounding of a length here."""


def reason_words(say: Say, reason: Reason) -> str:
    """`3in finished and 7/8in, the square cut once`; `its sides are curved`: without a capital or a stop."""
    match reason:
        case NoRule(why):
            return WITHOUT_RULE[why]
        case OffAngle(part, angle):
            return f"its {part} are {degrees_text(angle)}, and no ruler bears that line"
        case Share():
            return _share(say, reason)
        case OffMark():
            return _off_mark(say, reason)
        case Aslant(marks):
            sides = " x ".join(say.on_ruler(each) for each in marks)
            aslant = "the print stands upright in the quilt, aslant to its sides"
            return f"{aslant}; it measures {sides}, laid so" if marks else aslant
    return _by_rule(say, reason)


def _share(say: Say, share: Share) -> str:
    """`one third of 8in is about 2 5/8in, between the ruler's marks`."""
    parts = f"{COUNTS[share.top]} {PARTS[share.bottom]}{'s' if share.top > 1 else ''}"
    whole, about = say.on_ruler(share.whole), say.on_ruler(nearest_mark(share.finished, say.ruler))
    return f"{parts} of {whole} is about {about}, between the ruler's marks"


def _off_mark(say: Say, reason: OffMark) -> str:
    """`its cut would lie between 1 7/8in and 2in on the ruler`."""
    below, above = reason.mark - say.ruler, reason.mark
    return f"its cut would lie between {say.on_ruler(below)} and {say.on_ruler(above)} on the ruler"


def _by_rule(say: Say, reason: Reason) -> str:
    match reason:
        case Finished(width, height, square):
            across, down = say.up_on_ruler(width), say.up_on_ruler(height)
            size = across if square and across == down else f"{across} x {down}"
            return f"{size} finished and its allowances"
        case Strip(trimmed):
            over = f"{_up_to_next(say)}: trim it to the quilt's own measure" if trimmed else ""
            return f"its finished size and its allowances{over}"
        case Mitred(long, over_all):
            extra = say.on_ruler(over_all)
            return f"{say.up_on_ruler(long)} along its long edge finished, and {extra} over for the mitres"
        case Patch(allowance, margin, up):
            room = f"{say.up_on_ruler(allowance)} of allowance and {say.up_on_ruler(margin)} of margin"
            return f"covers its patch with {room} on every side{_up_to_next(say) if up else ''}"
        case Sum():
            return _sum(say, reason)
        case OnRuler(None):
            return "its exact cut lies on the ruler, cut once"
        case OnRuler(float(angle)):
            return f"its strip and its cuts at {degrees_text(angle)} lie on the ruler"
        case SlantedEnds(long_side, ends):
            at = " and ".join(dict.fromkeys(map(degrees_text, ends)))
            return f"{say.on_ruler(long_side)} along its long side, ends at {at}"
        case AcrossFinished(across_all):
            return f"{say.up_on_ruler(across_all)} across finished and its allowances"
        case StripLength(length, bias):
            whole = say.on_ruler(length)
            return (
                f"{whole} of bias strip"
                if bias
                else f"{whole} of strip, each join on the bias taking its own width"
            )
        case Panels(seams):
            return f"panels joined with seams {seams} the back" if seams else "one panel"
    raise AssertionError(f"no words for {reason}")


def _up_to_next(say: Say) -> str:
    return f", up to the next {say.on_ruler(say.ruler)}"


def _sum(say: Say, reason: Sum) -> str:
    """`3in finished and 7/8in, the square cut once`."""
    if reason.of == "strip":
        return _added(say, reason, "high finished")
    beyond = reason.beyond
    trimmed = (
        "" if beyond is None else f"; trim the edge {say.on_ruler(beyond)} beyond the points after sewing"
    )
    return f"{_added(say, reason, 'finished')}, the square cut {reason.of}{trimmed}"


def _added(say: Say, reason: Sum, what: str) -> str:
    """`3in finished and 7/8in`; `about 8 1/2in finished and 1 1/4in` where that is on no mark.

    What is printed comes to the cut, up to the ruler's next mark, and neither part is less than it exactly
    is: round figures where they do, else decimals."""
    finished, extra, step = reason.finished, reason.extra, say.ruler
    rounds = mark_up(finished, step), mark_up(extra, step)
    about = "" if near(rounds[0], finished) else "about "
    if mark_up(sum(rounds), step) == reason.mark:
        return f"{about}{say.on_ruler(rounds[0])} {what} and {say.on_ruler(rounds[1])}"
    for digits in range(DIGITS, DIGITS_MOST):
        size, least = part_up(finished, step, digits), part_up(extra, step, digits)
        for more in (rounds[1], least, reason.mark - size):
            if more >= extra - 2 * NEAR and mark_up(size + more, step) == reason.mark:
                return f"{part_text(size, step, digits)} {what} and {part_text(more, step, digits)}"
    return f"{say.on_ruler(finished)} {what} and {say.on_ruler(extra)}"  # on marks finer than print
