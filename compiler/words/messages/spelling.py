"""Complaints about single words that cannot come where they stand."""

from __future__ import annotations

from ...diagnostics.diagnostic import Diagnostic, Fix, error
from ...diagnostics.source import Span
from ..phrases import shown
from ..say import Say
from .mends import written
from .message import message


@message
def unit_missing(say: Say, span: Span, kind: str, right: str) -> Diagnostic:
    """`finished 6`."""
    thing = "A length needs a unit" if kind == "LENGTH" else "An angle needs `deg`"
    return error(
        "unit-missing",
        f"{thing}: did you mean `{right}`?",
        span,
        help=f"Write `{right}`.",
        fix=written(span, right),
    )


@message
def unit_unwanted(say: Say, span: Span, text: str, kind: str, right: str) -> Diagnostic:
    """`turn 4in about center`, `gate at 45in`."""
    thing = {"NUMBER": "a number without a unit", "LENGTH": "a length", "ANGLE": "an angle"}[kind]
    return error(
        "unit-unwanted",
        f"Here comes {thing}, not `{shown(text)}`.",
        span,
        help=f"Did you mean `{shown(right)}`?",
        fix=written(span, right, shown(right)),
    )


@message
def in_eaten(say: Say, span: Span, number: str) -> Diagnostic:
    """`2 in dark` read as two inches."""
    return error(
        "unit-eaten",
        f"`{shown(number)} in` reads as {shown(number)} inches.",
        span,
        help=f"Write `{shown(number)}in in` for a length, and then `in`.",
    )


@message
def dash_other(say: Say, span: Span, text: str, right: str) -> Diagnostic:
    """`A1 - B1`, `A1 -> B1`, `A1-B2` for a region."""
    return error(
        "dash-other",
        f"`{shown(text)}` is written `{right}` here.",
        span,
        help=f"Write `{right}`.",
        fix=written(span, right),
    )


@message
def dash_stray(say: Say, span: Span, text: str) -> Diagnostic:
    """A dash where none is due."""
    return error(
        "dash-stray",
        f"The `{shown(text)}` means nothing here.",
        span,
        help="From point to point is written `--`; corners of a region `..`.",
    )


@message
def title_unquoted(say: Say, span: Span, title: str, opener: str) -> Diagnostic:
    """`block Tidewater Vane {`."""
    return error(
        "title-unquoted",
        f"The text after `{opener}` stands in quotes.",
        span,
        help=f'Write `"{shown(title)}"`.',
        fix=Fix("Put it in quotes", span, f'"{title}"'),
    )


@message
def grid_point_small(say: Say, span: Span, text: str, right: str) -> Diagnostic:
    """`b3` where a grid point is due."""
    return error(
        "grid-point-small",
        f"Grid points have capital letters: `{right}`.",
        span,
        help=f"Write `{right}`.",
        fix=written(span, right),
    )


@message
def word_capital(say: Say, span: Span, text: str, right: str) -> Diagnostic:
    """`At` for `at`."""
    return error(
        "word-capital",
        f"Words of the language are in small letters: `{right}`.",
        span,
        help=f"Write `{right}`.",
        fix=written(span, right),
    )


@message
def name_is_grid_point(say: Say, span: Span, text: str) -> Diagnostic:
    """`point B1 = center`."""
    return error(
        "name-is-grid-point",
        f"`{shown(text)}` is a grid point and cannot be a name.",
        span,
        help="Names are in small letters, as in `gate` or `inner-tip`.",
    )


@message
def name_letters(say: Say, span: Span, text: str, right: str) -> Diagnostic:
    """`Gate`, `café`."""
    return error(
        "name-letters",
        _no_name(text),
        span,
        help=f"Write `{shown(right)}`. Digits, `_` and a single `-` may follow the first letter.",
        fix=written(span, right, shown(right)),
    )


@message
def name_of_path(say: Say, span: Span, text: str, right: str) -> Diagnostic:
    """`gate-B1`, meant as a path."""
    return error(
        "name-letters",
        _no_name(text),
        span,
        help=f"From one to the other is written `{right}`.",
        fix=written(span, right),
    )


def _no_name(text: str) -> str:
    return f"`{shown(text)}` cannot be a name: names are in small letters a to z."


@message
def name_reserved(say: Say, span: Span, word: str) -> Diagnostic:
    """`piece row at A1 in dark`."""
    return error(
        "name-reserved",
        f"`{word}` is a word of the language and cannot be a name.",
        span,
        help=f"Choose another name, for example `{word}-one`.",
    )


@message
def outline_first(say: Say, span: Span) -> Diagnostic:
    """`seam outline -- A1`."""
    return error(
        "outline-first",
        "A seam can run on to the outline, but cannot start from it.",
        span,
        help="Start at a point, and end with `-- outline`: only from there has a seam a direction.",
    )


@message
def word_unknown(say: Say, span: Span, text: str, right: str) -> Diagnostic:
    """`abuot` for `about`."""
    return error(
        "word-unknown",
        f"`{shown(text)}` cannot come here.",
        span,
        help=f"Did you mean `{right}`?",
        fix=written(span, right),
    )


@message
def after_two_faced(say: Say, span: Span, word: str) -> Diagnostic:
    """`seam circle center`, `outline regular six`."""
    right = {"circle": "seam circle around center radius 1in", "regular": "outline regular 6 side 3in"}[word]
    needed = {"circle": "`around`", "regular": "a number"}[word]
    return error(
        "word-unexpected", f"After `{word}` comes {needed}.", span, help=f"Write it as in `{right}`."
    )
