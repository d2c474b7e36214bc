"""What is said of statements whose words are in order but whose parts do not go together."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ..diagnostics.diagnostic import Diagnostic, Fix, Label, error
from ..diagnostics.source import Span
from ..words.numbers import ruler_text
from ..words.phrases import did_you_mean, one_of, quoted
from .value_errors import shown


def edition_unknown(span: Span, edition: int) -> Diagnostic:
    """`edition 7`."""
    return error(
        "edition-unknown",
        f"There is no edition {edition} of the language; this compiler reads edition 1.",
        span,
        help="Write `edition 1`.",
        fix=Fix("Write `1`", span, "1"),
    )


def outline_to_outline(span: Span) -> Diagnostic:
    """`outline A1 -- outline`."""
    return error(
        "outline-to-outline",
        "The outline cannot run on to itself.",
        span,
        help="End it at a point; it closes itself.",
    )


def hop_after_outline(span: Span, earlier: Span) -> Diagnostic:
    """`seam A1 -- outline -- B1`."""
    return error(
        "seam-past-outline",
        "A seam that has reached the outline ends there.",
        span,
        "goes on here",
        help="Make it two seams.",
        related=(Label(earlier, "here it reaches the outline"),),
    )


def trim_none_limit(span: Span) -> Diagnostic:
    """`trim none 1/4in`."""
    return error(
        "trim-none-limit",
        "Corners that are not trimmed take no length.",
        span,
        help="Write `trim none`, or `trim matched` or `trim square` with the length.",
    )


def share_too_large(span: Span, words: str) -> Diagnostic:
    """`100000 from A1 to B1`."""
    return error(
        "share-too-large",
        f"A share of `{shown(words)}` times the way is far off any block.",
        span,
        help="A share of the way lies between 0 and 1, as in `1/3 from A1 to B1`.",
    )


def step_zero(span: Span) -> Diagnostic:
    """`turn 6 of 0deg`."""
    return error(
        "turn-step-zero",
        "A turn of 0deg lays every copy on the first.",
        span,
        help="Write the angle from one copy to the next, as in `turn 6 of 15deg about center`.",
    )


def pose_clash(span: Span, earlier: Span) -> Diagnostic:
    """`goose facing left turned 90deg`."""
    return error(
        "pose-clash",
        "A unit is `turned` or `facing` once, not both.",
        span,
        help="Keep one of the two.",
        related=(Label(earlier, "already set here"),),
    )


def pose_not_quarter(span: Span, degrees: Fraction) -> Diagnostic:
    """`goose turned 45deg`."""
    return error(
        "pose-not-quarter",
        f"A unit is turned by quarters, not by {ruler_text(degrees, 'deg')}.",
        span,
        help="Write `90deg`, `180deg`, `270deg` or `-90deg`.",
    )


def side_unknown(span: Span, word: str, sides: Sequence[str]) -> Diagnostic:
    """`facing north`."""
    return error(
        "side-unknown",
        f"`{shown(word)}` is no side or corner of a block.",
        span,
        help=did_you_mean(word, sides) or f"The sides and corners are {one_of(quoted(sides), 'and')}.",
    )
