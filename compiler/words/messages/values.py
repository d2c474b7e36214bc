"""Complaints about a number, length, count or text that is out of its bounds."""

from __future__ import annotations

from fractions import Fraction
from typing import Final, Literal

from ...diagnostics.diagnostic import Diagnostic, Fix, error, note
from ...diagnostics.source import Span
from ..phrases import shown
from ..say import Say
from .mends import written
from .message import message

Counted = Literal[
    "edition", "version", "sides", "copies", "repeats", "rounds", "grid-parts",
    "blocks-across", "blocks-down", "fat-quarters",
]  # fmt: skip
"""What a statement counts."""

COUNTED: Final[dict[Counted, str]] = {
    "edition": "the edition",
    "version": "the version",
    "sides": "sides",
    "copies": "copies",
    "repeats": "repeats",
    "rounds": "rounds",
    "grid-parts": "grid parts",
    "blocks-across": "blocks across",
    "blocks-down": "blocks down",
    "fat-quarters": "fat quarters",
}

UNIT_RIGHT: Final = "Is the unit right? Lengths are in `in`, `cm` or `mm`."


@message
def number_too_long(say: Say, span: Span, most: int) -> Diagnostic:
    """More digits than any measure needs."""
    return error(
        "number-too-long",
        f"This number has more than {most} digits and signs.",
        span,
        help="Write it with fewer digits.",
    )


@message
def fraction_by_zero(say: Say, span: Span, words: str) -> Diagnostic:
    """`1/0`."""
    return error(
        "fraction-by-zero",
        f"`{shown(words)}` divides by zero.",
        span,
        help="The number below the line of a fraction is 1 or more, as in `1/2in`.",
    )


@message
def length_zero(say: Say, span: Span, words: str) -> Diagnostic:
    """`finished 0in`."""
    return error(
        "length-zero",
        f"A length of `{shown(words)}` is no length.",
        span,
        help="Write a length above zero, or take the statement away.",
    )


@message
def length_negative(say: Say, span: Span, words: str) -> Diagnostic:
    """`-1in from A1 to B1`."""
    return error(
        "length-negative",
        f"The length `{shown(words)}` is below zero.",
        span,
        help="Lengths are measured forward. To go the other way, change the points about.",
    )


@message
def length_too_large(say: Say, span: Span, words: str, most: Fraction) -> Diagnostic:
    """A length beyond what anyone could cut."""
    return error(
        "length-too-large",
        f"The length `{shown(words)}` is over {say.length(most)}, the most a block can ask for.",
        span,
        help=UNIT_RIGHT,
    )


@message
def length_too_small(say: Say, span: Span, words: str, least: Fraction) -> Diagnostic:
    """A length that no ruler shows."""
    return error(
        "length-too-small",
        f"The length `{shown(words)}` is under {say.exact(least)}, finer than any ruler.",
        span,
        help=UNIT_RIGHT,
    )


@message
def angle_too_large(say: Say, span: Span, words: str, most: Fraction) -> Diagnostic:
    """More than once round."""
    return error(
        "angle-too-large",
        f"The angle `{shown(words)}` goes more than once round.",
        span,
        help=f"Angles lie between -{most}deg and {most}deg.",
    )


@message
def share_negative(say: Say, span: Span, words: str) -> Diagnostic:
    """`shrinks -3%`."""
    return error(
        "percent-bounds",
        f"A share of `{shown(words)}` is below nothing.",
        span,
        help="Write a share such as `3%`, or take it away.",
    )


@message
def share_of_many(say: Say, span: Span, words: str) -> Diagnostic:
    """`shrinks 3000%`."""
    return error(
        "percent-bounds",
        f"A share of `{shown(words)}` is many times the whole.",
        span,
        help="Write a share such as `3%`.",
    )


@message
def count_not_whole(say: Say, span: Span, words: str, counted: Counted) -> Diagnostic:
    """`turn 2.5 about center`."""
    return error(
        "count-not-whole",
        f"The number of {COUNTED[counted]} is a whole number, not `{shown(words)}`.",
        span,
        help="Write a whole number.",
    )


@message
def count_too_small(say: Say, span: Span, words: str, counted: Counted, least: int) -> Diagnostic:
    """`turn 1 about center`."""
    return error(
        "count-too-small",
        f"The number of {COUNTED[counted]} is at least {least}, not `{shown(words)}`.",
        span,
        help=f"Write {least} or more.",
    )


@message
def count_too_large(say: Say, span: Span, words: str, counted: Counted, most: int) -> Diagnostic:
    """`turn 9000 about center`."""
    return error(
        "count-too-large",
        f"The number of {COUNTED[counted]} is at most {most}, not `{shown(words)}`.",
        span,
        help=f"Write {most} or fewer.",
    )


@message
def part_not_positive(say: Say, span: Span, words: str) -> Diagnostic:
    """`1:0:1`."""
    return error(
        "part-not-positive",
        f"A part of a grid is more than zero, not `{shown(words)}`.",
        span,
        help="Write the parts in proportion, as in `1:2:1`.",
    )


@message
def parts_too_many(say: Say, span: Span, count: int, most: int) -> Diagnostic:
    """A grid of more parts than there may be lines."""
    return error(
        "count-too-large",
        f"The number of {COUNTED['grid-parts']} is at most {most}, not {count}.",
        span,
        help=f"Write {most} parts or fewer.",
    )


@message
def row_zero(say: Say, span: Span, words: str, column: str) -> Diagnostic:
    """`E0`."""
    right = f"{shown(column)}1"
    return error(
        "grid-row-zero",
        f"Rows start at 1, so there is no `{shown(words)}`.",
        span,
        help=f"The topmost point of that column is `{right}`.",
        fix=written(span, right),
    )


@message
def row_leading_zero(say: Say, span: Span, right: str) -> Diagnostic:
    """`E01`."""
    return error(
        "grid-row-zero",
        f"A row is written without a zero before it: `{shown(right)}`.",
        span,
        help=f"Write `{shown(right)}`.",
        fix=written(span, right, shown(right)),
    )


@message
def grid_point_far(say: Say, span: Span, most: int) -> Diagnostic:
    """A grid point beyond the largest grid."""
    return error(
        "grid-point-far",
        f"A grid has at most {most} parts each way; this point is beyond.",
        span,
        help="Grid points are column letters and a row number, as in `B3`.",
    )


@message
def name_too_long(say: Say, span: Span, letters: int, most: int) -> Diagnostic:
    """A name that no column could hold."""
    return error(
        "name-too-long",
        f"A name has at most {most} letters; this one has {letters}.",
        span,
        help="Shorten it.",
    )


@message
def text_escape(say: Say, span: Span, words: str) -> Diagnostic:
    """A backslash before anything but a quote or a backslash."""
    return error(
        "text-escape",
        'In quotes, a backslash stands only before `"` or another backslash.',
        span,
        help="Write two backslashes to print one.",
        fix=Fix("Double it", span, "\\" + words),
    )


@message
def text_tab(say: Say, span: Span) -> Diagnostic:
    """A tab within quotes."""
    return error(
        "character-unseen",
        "A tab stands inside the quotes.",
        span,
        help="Write a blank.",
        fix=Fix("Write a blank", span, " "),
    )


@message
def title_empty(say: Say, span: Span) -> Diagnostic:
    """`block "" { }`."""
    return error("title-empty", "The title is empty.", span, help='Give it a title, as in `"Flying Goose"`.')


@message
def title_too_long(say: Say, span: Span, letters: int, most: int) -> Diagnostic:
    """A title too long to print."""
    return error(
        "title-too-long",
        f"A title has at most {most} characters; this one has {letters}.",
        span,
        help="Shorten it; the rest can go into a `note`.",
    )


@message
def maker_too_long(say: Say, span: Span, letters: int, most: int) -> Diagnostic:
    """A maker's name too long to print."""
    return error(
        "text-too-long",
        f"A maker's name has at most {most} characters; this one has {letters}.",
        span,
        help="Shorten it; the rest can go into a `note`.",
    )


@message
def text_empty(say: Say, span: Span) -> Diagnostic:
    """`note ""`."""
    return error(
        "text-empty",
        "There is nothing between the quotes.",
        span,
        help="Write the text, or take the statement away.",
    )


@message
def text_too_long(say: Say, span: Span, letters: int, most: int) -> Diagnostic:
    """A note too long to print."""
    return error(
        "text-too-long",
        f"Text has at most {most} characters; this has {letters}.",
        span,
        help="Shorten it, or make two notes of it.",
    )


@message
def share_beyond(say: Say, span: Span, words: str) -> Diagnostic:
    """`2 from B1 to C1`: often a length without its unit."""
    return note(
        "share-beyond",
        f"`{shown(words)}` without a unit is a share of the way, here not between the two.",
        span,
        help=f"If a length was meant, write `{shown(words)}in`.",
        fix=Fix(f"Write `{shown(words)}in`", span, words + "in"),
    )


@message
def share_too_large(say: Say, span: Span, words: str) -> Diagnostic:
    """`100000 from A1 to B1`."""
    return error(
        "share-too-large",
        f"A share of `{shown(words)}` times the way is far off any block.",
        span,
        help="A share of the way lies between 0 and 1, as in `1/3 from A1 to B1`.",
    )
