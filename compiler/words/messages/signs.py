"""Complaints about signs, units and small words that are left out, too many or written otherwise."""

from __future__ import annotations

from ...diagnostics.diagnostic import Diagnostic, Fix, Label, error
from ...diagnostics.source import Span
from ..phrases import shown
from ..say import Say
from .mends import taken_away, written
from .message import message


@message
def comma_extra(say: Say, span: Span) -> Diagnostic:
    """A comma after a whole statement, or before nothing."""
    return error(
        "comma-extra",
        "No comma comes here.",
        span,
        help="Commas stand between the things of a list; a statement needs none at its end.",
        fix=taken_away(span),
    )


@message
def word_missing(say: Say, gap: Span, span: Span, missing: str, before: str, after: str) -> Diagnostic:
    """A small word or sign left out."""
    code = {"=": "equals-missing", "about": "about-missing", "as": "use-without-as"}.get(
        missing, "word-missing"
    )
    message = f"`{missing}` is missing between `{shown(before)}` and `{shown(after)}`."
    return error(
        code,
        message,
        span,
        help=f"Write `{missing}` before `{shown(after)}`.",
        fix=Fix(f"Write `{missing}`", gap, missing if missing == "," else f" {missing}"),
    )


@message
def bracket_open(say: Say, span: Span, opened: Span) -> Diagnostic:
    """A bracket that the statement never closes."""
    return error(
        "bracket-open",
        "A closing `)` is missing here.",
        span,
        help="Write `)`.",
        related=(Label(opened, "this bracket is never closed"),),
        fix=written(span, ")"),
    )


@message
def bracket_extra(say: Say, span: Span) -> Diagnostic:
    """A closing bracket that closes nothing."""
    return error(
        "bracket-extra",
        "This `)` closes nothing.",
        span,
        help="Take it away.",
        fix=taken_away(span),
    )


@message
def brackets_missing(say: Say, span: Span, words: str) -> Diagnostic:
    """`seam A1 -- 1/2 from A1 to B1`."""
    if not words:
        return error(
            "brackets-missing",
            "A phrase in here stands in brackets.",
            span,
            help="Write it as in `(1/2 from A1 to B1)`.",
        )
    return error(
        "brackets-missing",
        "A phrase inside a seam, a line, a list or another phrase takes brackets.",
        span,
        help=f"Write `({words})`." if len(words) < 60 else "Put it in brackets.",
        fix=Fix("Put it in brackets", span, f"({words})"),
    )


@message
def steps_with_unit(say: Say, span: Span) -> Diagnostic:
    """`(1in, 2in)`."""
    return error(
        "steps-with-unit",
        "A point in brackets counts grid steps, which take no unit.",
        span,
        help="Write `(1.5, 0)` for steps, or `1in from A1 to B1` for a measured place.",
    )


@message
def other_quotes(say: Say, span: Span, words: str) -> Diagnostic:
    """`'Title'`, or the curved quotes that a word processor makes."""
    return error(
        "text-quotes",
        'Text stands in straight double quotes: `"`.',
        span,
        help=f'Write `"{words}"`.',
        fix=Fix("Use straight double quotes", span, f'"{words}"'),
    )


@message
def quote_open(say: Say, span: Span) -> Diagnostic:
    """`"Title` with no second quote on the line."""
    return error(
        "text-open",
        "This text has no closing quote on its line.",
        span,
        "it begins here",
        help='Put a `"` where the text ends. Text cannot go on to another line.',
        fix=Fix("Close the quotes", Span(span.source, span.end, span.end), '"'),
    )


@message
def sign_other(say: Say, span: Span, sign: str, meant: str) -> Diagnostic:
    """A sign for which this language has another."""
    if meant == "#":
        return error(
            "sign-unknown",
            f"A remark begins with `#`, not with `{sign[:1]}`.",
            span,
            help="Put a `#` before it.",
            fix=Fix("Make it a remark", span, "# " + sign.lstrip("/*% ")),
        )
    return error(
        "sign-unknown",
        f"`{sign[:8]}` is written `{meant}` here.",
        span,
        help=f"Write `{meant}`.",
        fix=written(span, meant),
    )


@message
def unit_spelled(say: Say, span: Span, spelled: str, right: str) -> Diagnostic:
    """`6"`, `6 inches`, `45°`."""
    return error(
        "measure-unknown",
        f"The unit is not written `{spelled}`: did you mean `{right}`?",
        span,
        help="Lengths end in `in`, `cm` or `mm`, angles in `deg`.",
        fix=written(span, right),
    )


@message
def fraction_sign(say: Say, span: Span, words: str, right: str) -> Diagnostic:
    """`6½in`."""
    return error(
        "fraction-sign",
        f"Fractions are written out: `{right}`.",
        span,
        help=f"Write `{right}`.",
        fix=written(span, right),
    )


@message
def comma_decimal(say: Say, span: Span, right: str) -> Diagnostic:
    """`7,5cm`."""
    return error(
        "comma-decimal",
        f"Decimals are written with a point: `{right}`.",
        span,
        help=f"Write `{right}`. A comma parts the things of a list.",
        fix=written(span, right),
    )


@message
def character_unseen(say: Say, span: Span, number: int) -> Diagnostic:
    """A character that no reader could see."""
    return error(
        "character-unseen",
        f"The character U+{number:04X} cannot be seen in print.",
        span,
        help="Take it away.",
        fix=taken_away(span),
    )


@message
def semicolon_needless(say: Say, span: Span) -> Diagnostic:
    """`finished 6in;`."""
    return error(
        "sign-unknown",
        "A statement needs no `;` at its end.",
        span,
        help="Take it away.",
        fix=taken_away(span),
    )


@message
def blank_odd(say: Say, span: Span, number: int) -> Diagnostic:
    """A blank of a word processor's."""
    return error(
        "sign-unknown",
        f"This blank is not an ordinary one (U+{number:04X}).",
        span,
        help="Write an ordinary blank.",
        fix=Fix("Write an ordinary blank", span, " "),
    )


@message
def sign_unknown(say: Say, span: Span, letter: str, name: str) -> Diagnostic:
    """A character that has no meaning outside quotes, and what Unicode calls it, where that tells more."""
    called = f"`{letter}` ({name})" if name else f"`{letter}`"
    return error(
        "sign-unknown",
        f"The sign {called} means nothing here.",
        span,
        help="Outside quotes stand only words, numbers and the signs `-- ~~ .. ( ) { } , = : #`.",
    )
