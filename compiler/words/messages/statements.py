"""Complaints about statements: misplaced, unknown, broken off, or of parts that do not go together."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...diagnostics.diagnostic import Diagnostic, Fix, Label, error
from ...diagnostics.source import Span
from ..numbers import number_text
from ..phrases import did_you_mean, one_of, quoted, shown
from ..say import Say
from .mends import taken_away, written
from .message import message


@message
def brace_open(say: Say, span: Span, opened: Span, count: int) -> Diagnostic:
    """The text or the block ends before its braces are closed."""
    missing = "A closing `}` is" if count == 1 else f"{count} closing `}}` are"
    return error(
        "brace-open",
        f"{missing} missing here.",
        span,
        "here at the latest",
        help="Write `}`.",
        related=(Label(opened, "this brace is never closed"),),
    )


@message
def brace_extra(say: Say, span: Span) -> Diagnostic:
    """A closing brace that closes nothing."""
    return error(
        "brace-extra",
        "This `}` closes nothing.",
        span,
        help="Take it away.",
        fix=taken_away(span),
    )


@message
def brace_missing(say: Say, span: Span, opener: str) -> Diagnostic:
    """`turn 4 about center` without a brace, and its statements below it."""
    return error(
        "brace-missing",
        f"A `{{` is missing where the body of this `{opener}` begins.",
        span,
        help="Write `{` here and `}` where it ends.",
        fix=Fix("Write `{`", span, " {"),
    )


@message
def statement_elsewhere(say: Say, span: Span, word: str, home: str, within: str) -> Diagnostic:
    """`border` in a block, `seam` in a quilt, `sashing` within the braces of a `set`."""
    if within == "set":
        return error(
            "statement-of-block" if home == "block" else "statement-of-quilt",
            f"`{word}` does not stand within the braces of a `set`.",
            span,
            help="Only `row`, `alternate` and `place` stand there."
            + (" Put it after the closing `}`." if home == "quilt" else ""),
        )
    if home == "quilt":
        return error(
            "statement-of-quilt",
            f"`{word}` belongs in a quilt, not in a block.",
            span,
            help='A block holds what is pieced into it. A quilt is written `quilt "Title" { ... }`.',
        )
    return error(
        "statement-of-block",
        f"`{word}` belongs in a block, not in a quilt.",
        span,
        help='Write a block, as in `block "Title" { ... }`, and bring it in with `use`.',
    )


@message
def of_a_set(say: Say, span: Span, word: str) -> Diagnostic:
    """`row a, b` in a quilt, outside its `set`."""
    return error(
        "statement-of-set",
        f"In a quilt, `{word}` stands within the braces of a `set`.",
        span,
        help=f"Write it there, as in `set straight 4 across 5 down {{ {word} ... }}`.",
    )


@message
def rows_only(say: Say, span: Span, word: str) -> Diagnostic:
    """`alternate` in `set rows`."""
    return error(
        "set-rows-only",
        f"`set rows` holds `row` lines, and no `{word}`.",
        span,
        help="Write each row out; a number repeats a block, as in `row 9 goose`.",
    )


@message
def outside_block(say: Say, span: Span, word: str, home: str) -> Diagnostic:
    """A statement before the first block or quilt, or after the last."""
    return error(
        "statement-outside",
        f"`{word}` stands outside any {home}.",
        span,
        help=f'Put it inside the braces of a {home}, as in `{home} "Title" {{ ... }}`.',
    )


@message
def edition_not_first(say: Say, span: Span) -> Diagnostic:
    """`edition` after a block, within one, or twice."""
    return error(
        "edition-not-first", "`edition` stands once, at the top of the file.", span, help="Take it away here."
    )


@message
def statement_unknown(say: Say, span: Span, text: str, close: Sequence[str], within: str) -> Diagnostic:
    """A word that opens no statement."""
    where = "a block or quilt" if within == "file" else "a statement"
    message = f"`{shown(text)}` does not begin {where}."
    if close:
        return error(
            "statement-unknown",
            message,
            span,
            help=f"Did you mean {one_of(quoted(close))}?",
            fix=written(span, close[0]),
        )
    known = {
        "block": "Statements begin with a word such as `seam`, `point` or `piece`.",
        "quilt": "Statements begin with a word such as `fabric`, `set` or `border`.",
        "set": "Here stand `row`, `alternate` and `place`.",
        "file": 'A file is `edition 1`, then blocks and quilts: `block "Title" { ... }`.',
    }[within]
    return error("statement-unknown", message, span, help=known)


@message
def title_missing(say: Say, span: Span, opener: str) -> Diagnostic:
    """`block { }`."""
    return error(
        "title-missing",
        f"After `{opener}` comes a title in quotes.",
        span,
        "it is missing here",
        help=f'Write one, as in `{opener} "Flying Goose"`.',
    )


@message
def use_without_as(say: Say, span: Span) -> Diagnostic:
    """`use "Title"` alone."""
    return error(
        "use-without-as",
        "`use` needs `as` and a name for the unit.",
        span,
        "it is missing here",
        help='Write a name of your own, as in `use "Two-Triangle Square" as pair`.',
    )


@message
def turn_without_about(say: Say, span: Span) -> Diagnostic:
    """`turn 4 { }`."""
    return error(
        "about-missing",
        "`turn` needs `about` and the point it turns about.",
        span,
        "it is missing here",
        help="Write it, as in `turn 4 about center { ... }`.",
        fix=Fix("Turn about the center", span, " about center"),
    )


@message
def region_half(say: Say, span: Span, corner: str) -> Diagnostic:
    """`place pair in A1`."""
    return error(
        "region-half",
        f"A place lies between two corners: after `{corner}` comes `..` and the other.",
        span,
        help="The cell from A1 to B2 is written `A1..B2`.",
    )


@message
def outline_to_outline(say: Say, span: Span) -> Diagnostic:
    """`outline A1 -- outline`."""
    return error(
        "outline-to-outline",
        "The outline cannot run on to itself.",
        span,
        help="End it at a point; it closes itself.",
    )


@message
def hop_after_outline(say: Say, span: Span, earlier: Span) -> Diagnostic:
    """`seam A1 -- outline -- B1`."""
    return error(
        "seam-past-outline",
        "A seam that has reached the outline ends there.",
        span,
        "goes on here",
        help="Make it two seams.",
        related=(Label(earlier, "here it reaches the outline"),),
    )


@message
def trim_none_limit(say: Say, span: Span) -> Diagnostic:
    """`trim none 1/4in`."""
    return error(
        "trim-none-limit",
        "Corners that are not trimmed take no length.",
        span,
        help="Write `trim none`, or `trim matched` or `trim square` with the length.",
    )


@message
def step_zero(say: Say, span: Span) -> Diagnostic:
    """`turn 6 of 0deg`."""
    return error(
        "turn-step-zero",
        "A turn of 0deg lays every copy on the first.",
        span,
        help="Write the angle from one copy to the next, as in `turn 6 of 15deg about center`.",
    )


@message
def pose_clash(say: Say, span: Span, earlier: Span) -> Diagnostic:
    """`goose facing left turned 90deg`."""
    return error(
        "turned-and-facing",
        "A unit is `turned` or `facing` once, not both.",
        span,
        help="Keep one of the two.",
        related=(Label(earlier, "already set here"),),
    )


@message
def pose_not_quarter(say: Say, span: Span, degrees: Fraction) -> Diagnostic:
    """`goose turned 45deg`."""
    return error(
        "turned-not-quarter",
        f"A unit is turned by quarters, not by {number_text(degrees)}deg.",
        span,
        help="Write `90deg`, `180deg`, `270deg` or `-90deg`.",
    )


@message
def side_unknown(say: Say, span: Span, word: str, sides: Sequence[str]) -> Diagnostic:
    """`facing north`."""
    return error(
        "side-unknown",
        f"`{shown(word)}` is no side or corner of a block.",
        span,
        help=did_you_mean(word, sides) or f"The sides and corners are {one_of(quoted(sides), 'and')}.",
    )
