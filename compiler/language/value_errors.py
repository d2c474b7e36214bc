"""What is said of a number, length, count or text that is out of its bounds."""

from __future__ import annotations

from fractions import Fraction

from ..diagnostics.diagnostic import Diagnostic, Fix, error, note
from ..diagnostics.source import Span
from ..words.numbers import ruler_text
from . import limits

SHOWN = 24
"""Letters of an overlong word that a message repeats."""


def shown(words: str) -> str:
    """The words, cut short where they would fill the screen."""
    return words if len(words) <= SHOWN else words[: SHOWN - 3] + "..."


def number_too_long(span: Span) -> Diagnostic:
    """More digits than any measure needs."""
    return error(
        "number-too-long",
        f"This number has more than {limits.NUMBER_LETTERS} digits and signs.",
        span,
        help="Write it with fewer digits.",
    )


def fraction_by_zero(span: Span, words: str) -> Diagnostic:
    """`1/0`."""
    return error(
        "fraction-by-zero",
        f"`{shown(words)}` divides by zero.",
        span,
        help="The number below the line of a fraction is 1 or more, as in `1/2in`.",
    )


def length_bounds(span: Span, words: str, inches: Fraction) -> tuple[Diagnostic, ...]:
    """A complaint about a length that is zero, negative, or beyond what anyone could cut; or nothing."""
    words = shown(words)
    if inches == 0:
        return (
            error(
                "length-zero",
                f"A length of `{words}` is no length.",
                span,
                help="Write a length above zero, or take the statement away.",
            ),
        )
    if inches < 0:
        return (
            error(
                "length-negative",
                f"The length `{words}` is below zero.",
                span,
                help="Lengths are measured forward. To go the other way, change the points about.",
            ),
        )
    if inches > limits.LENGTH_MOST:
        most = ruler_text(limits.LENGTH_MOST)
        return (
            error(
                "length-too-large",
                f"The length `{words}` is over {most}, the most a block can ask for.",
                span,
                help="Is the unit right? Lengths are in `in`, `cm` or `mm`.",
            ),
        )
    if inches < limits.LENGTH_LEAST:
        return (
            error(
                "length-too-small",
                f"The length `{words}` is under 1/64in, finer than any ruler.",
                span,
                help="Is the unit right? Lengths are in `in`, `cm` or `mm`.",
            ),
        )
    return ()


def angle_too_large(span: Span, words: str) -> Diagnostic:
    """More than once round."""
    return error(
        "angle-too-large",
        f"The angle `{shown(words)}` goes more than once round.",
        span,
        help="Angles lie between -360deg and 360deg.",
    )


def share_bounds(span: Span, words: str, number: Fraction) -> tuple[Diagnostic, ...]:
    """A complaint about a share below nothing or far above the whole; or nothing."""
    if number < 0:
        return (
            error(
                "percent-bounds",
                f"A share of `{shown(words)}` is below nothing.",
                span,
                help="Write a share such as `3%`, or take it away.",
            ),
        )
    if number > limits.SHARE_MOST:
        return (
            error(
                "percent-bounds",
                f"A share of `{shown(words)}` is many times the whole.",
                span,
                help="Write a share such as `3%`.",
            ),
        )
    return ()


def count_bounds(
    span: Span, words: str, value: Fraction, thing: str, least: int, most: int
) -> tuple[Diagnostic, ...]:
    """A complaint about a count that is not whole or out of its bounds; or nothing."""
    if value.denominator != 1:
        return (
            error(
                "count-not-whole",
                f"The number of {thing} is a whole number, not `{shown(words)}`.",
                span,
                help="Write a whole number.",
            ),
        )
    if value < least:
        return (
            error(
                "count-too-small",
                f"The number of {thing} is at least {least}, not `{shown(words)}`.",
                span,
                help=f"Write {least} or more.",
            ),
        )
    if value > most:
        return (
            error(
                "count-too-large",
                f"The number of {thing} is at most {most}, not `{shown(words)}`.",
                span,
                help=f"Write {most} or fewer.",
            ),
        )
    return ()


def part_not_positive(span: Span, words: str) -> Diagnostic:
    """`1:0:1`."""
    return error(
        "part-not-positive",
        f"A part of a grid is more than zero, not `{shown(words)}`.",
        span,
        help="Write the parts in proportion, as in `1:2:1`.",
    )


def parts_too_many(span: Span, count: int) -> Diagnostic:
    """A grid of more parts than there may be lines."""
    return error(
        "count-too-large",
        f"The number of grid parts is at most {limits.GRID_LINES}, not {count}.",
        span,
        help=f"Write {limits.GRID_LINES} parts or fewer.",
    )


def row_zero(span: Span, words: str, column: str) -> Diagnostic:
    """`E0`."""
    right = f"{shown(column)}1"
    return error(
        "grid-row-zero",
        f"Rows start at 1, so there is no `{shown(words)}`.",
        span,
        help=f"The topmost point of that column is `{right}`.",
        fix=Fix(f"Write `{right}`", span, right),
    )


def row_leading_zero(span: Span, right: str) -> Diagnostic:
    """`E01`."""
    return error(
        "grid-row-zero",
        f"A row is written without a zero before it: `{shown(right)}`.",
        span,
        help=f"Write `{shown(right)}`.",
        fix=Fix(f"Write `{shown(right)}`", span, right),
    )


def grid_point_far(span: Span) -> Diagnostic:
    """A grid point beyond the largest grid."""
    return error(
        "grid-point-far",
        f"A grid has at most {limits.GRID_LINES} parts each way; this point is beyond.",
        span,
        help="Grid points are column letters and a row number, as in `B3`.",
    )


def name_too_long(span: Span, letters: int) -> Diagnostic:
    """A name that no column could hold."""
    return error(
        "name-too-long",
        f"A name has at most {limits.NAME_LETTERS} letters; this one has {letters}.",
        span,
        help="Shorten it.",
    )


def text_escape(span: Span, words: str) -> Diagnostic:
    """A backslash before anything but a quote or a backslash."""
    return error(
        "text-escape",
        'In quotes, a backslash stands only before `"` or another backslash.',
        span,
        help="Write two backslashes to print one.",
        fix=Fix("Double it", span, "\\" + words),
    )


def text_tab(span: Span) -> Diagnostic:
    """A tab within quotes."""
    return error(
        "character-unseen",
        "A tab stands inside the quotes.",
        span,
        help="Write a blank.",
        fix=Fix("Write a blank", span, " "),
    )


def title_bounds(span: Span, words: str) -> tuple[Diagnostic, ...]:
    """A complaint about a title that is empty or too long to print; or nothing."""
    if not words.strip():
        return (
            error(
                "title-empty", "The title is empty.", span, help='Give it a title, as in `"Flying Goose"`.'
            ),
        )
    if len(words) > limits.TITLE_LETTERS:
        most = limits.TITLE_LETTERS
        return (
            error(
                "title-too-long",
                f"A title has at most {most} characters; this one has {len(words)}.",
                span,
                help="Shorten it; the rest can go into a `note`.",
            ),
        )
    return ()


def maker_bounds(span: Span, words: str) -> tuple[Diagnostic, ...]:
    """A complaint about a maker's name that is empty or too long to print; or nothing."""
    if words.strip() and len(words) > limits.TITLE_LETTERS:
        return (
            error(
                "text-too-long",
                f"A maker's name has at most {limits.TITLE_LETTERS} characters; this one has {len(words)}.",
                span,
                help="Shorten it; the rest can go into a `note`.",
            ),
        )
    return remark_bounds(span, words)


def remark_bounds(span: Span, words: str) -> tuple[Diagnostic, ...]:
    """A complaint about a note that is empty or too long; or nothing."""
    if not words.strip():
        return (
            error(
                "text-empty",
                "There is nothing between the quotes.",
                span,
                help="Write the text, or take the statement away.",
            ),
        )
    if len(words) > limits.NOTE_LETTERS:
        return (
            error(
                "text-too-long",
                f"Text has at most {limits.NOTE_LETTERS} characters; this has {len(words)}.",
                span,
                help="Shorten it, or make two notes of it.",
            ),
        )
    return ()


def share_beyond(span: Span, words: str) -> Diagnostic:
    """`2 from B1 to C1`: often a length without its unit."""
    return note(
        "share-beyond",
        f"`{shown(words)}` without a unit is a share of the way, here not between the two.",
        span,
        help=f"If a length was meant, write `{shown(words)}in`.",
        fix=Fix(f"Write `{shown(words)}in`", span, words + "in"),
    )
