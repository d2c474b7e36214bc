"""Complaints about a quilt's statements as they are written."""

from __future__ import annotations

from typing import Literal

from ...diagnostics.diagnostic import Diagnostic, Fix, Label, error
from ...diagnostics.source import Span
from ..phrases import shown
from ..say import Say
from .mends import taken_away, written
from .message import message

FactWord = Literal["width", "shrinks", "one-way", "striped", "fat-quarter", "scrap", "looks"]
"""What opens a fact of a fabric, its words joined."""


@message
def in_eaten(say: Say, span: Span, start: str, width: str, right: str, role: str) -> Diagnostic:
    """`border 2 in ecru`."""
    message = f"`{shown(width)}` reads as inches, so the `in` before `{shown(role)}` is missing."
    return error(
        "unit-eaten",
        message,
        span,
        help=f"Write `{start}{right} {shown(role)}`.",
        fix=Fix("Write `in` twice", span, right),
    )


@message
def percent_missing(say: Say, span: Span, right: str) -> Diagnostic:
    """`shrinks 3`."""
    message = f"Shrinkage is a share of the cloth: did you mean `{shown(right)}`?"
    return error(
        "percent-missing",
        message,
        span,
        help=f"Write `{shown(right)}`.",
        fix=written(span, right, shown(right)),
    )


@message
def set_counts(say: Say, span: Span, across: str, down: str) -> Diagnostic:
    """`set straight 4 x 5`."""
    return error(
        "set-counts",
        "A set counts its blocks across, then down.",
        span,
        help=f"Write `{across} across {down} down`.",
    )


@message
def set_kind(say: Say, span: Span) -> Diagnostic:
    """`set 4 across 5 down`."""
    return error(
        "set-kind",
        "After `set` comes `straight`, `on point` or `rows`.",
        span,
        "it is missing here",
        help="Write `set straight 4 across 5 down { ... }` for blocks side by side.",
        fix=Fix("Write `straight`", span, " straight"),
    )


@message
def words_other(say: Say, span: Span, text: str, right: str) -> Diagnostic:
    """`set on-point`."""
    return error(
        "word-unknown",
        f"`{shown(text)}` is written `{right}` here.",
        span,
        help=f"Write `{right}`.",
        fix=written(span, right),
    )


@message
def fat_quarters_first(say: Say, span: Span, count: str) -> Diagnostic:
    """`fabric rose 3 fat quarters`."""
    right = f"fat quarter {shown(count)}"
    return error(
        "word-unknown",
        "The number of fat quarters comes after the words.",
        span,
        help=f"Write `{right}`.",
        fix=written(span, right),
    )


@message
def fact_bare(say: Say, span: Span, gap: Span, text: str, word: str, value: str) -> Diagnostic:
    """`fabric sand 42in`."""
    return error(
        "word-missing",
        f"`{word}` is missing before `{shown(text)}`.",
        span,
        help=f"Write `{word} {shown(value)}`.",
        fix=Fix(f"Write `{word}`", gap, f" {word}"),
    )


@message
def word_needless(say: Say, span: Span, text: str, following: str) -> Diagnostic:
    """`with posts in indigo`."""
    return error(
        "word-needless",
        f"`{following}` needs no `{text}` before it.",
        span,
        help="Take it away.",
        fix=taken_away(span),
    )


@message
def corners_of_plain(say: Say, span: Span) -> Diagnostic:
    """`border 2in in sand corners vane`."""
    return error(
        "border-corners",
        "Corner blocks belong to a pieced border.",
        span,
        help="Write `border 4in of plain sand corners vane` for strips with blocks in the corners.",
    )


@message
def style_of_pieced(say: Say, span: Span, text: str) -> Diagnostic:
    """`border 4in of goose mitred`."""
    return error(
        "border-corners",
        f"A pieced border is not `{text}`: its corners are blocks.",
        span,
        help="Write `corners` and a block, or leave it: then top and bottom lap the sides.",
        fix=taken_away(span),
    )


@message
def border_two_lengths(say: Say, span: Span) -> Diagnostic:
    """`border 60in x 72in in sand`."""
    return error(
        "width-first",
        "A border has one width.",
        span,
        help="As wide as it takes to come out to a size is written `border to 60in x 72in in sand`.",
    )


@message
def width_first(say: Say, span: Span, opener: str) -> Diagnostic:
    """`binding in indigo`."""
    width = {"binding": "2 1/2in", "sashing": "1 1/2in"}.get(opener, "2in")
    return error(
        "width-first",
        f"After `{opener}` comes its width.",
        span,
        help=f"Write it first, as in `{opener} {width} in sand`.",
    )


@message
def batting_of_cloth(say: Say, span: Span) -> Diagnostic:
    """`batting in wool`."""
    return error(
        "batting-of-cloth",
        "Batting is not one of the quilt's fabrics.",
        span,
        help="Write `batting 4in over`; say what it is made of in a `note`.",
    )


@message
def triangles_straight(say: Say, span: Span, word: str) -> Diagnostic:
    """`set straight 4 across 5 down with triangles in sand`."""
    return error(
        "word-unexpected",
        f"Only a set on point has `{word}`.",
        span,
        help="Take them away, or write `set on point`.",
    )


@message
def size_after_triangles(say: Say, span: Span) -> Diagnostic:
    """`set on point 3 across 3 down with triangles in sand of 8in`."""
    return error(
        "word-unexpected",
        "The size of the cells comes before `with triangles`.",
        span,
        help="Write it as in `3 down of 8in with triangles in sand`.",
    )


@message
def mattress_missing(say: Say, span: Span) -> Diagnostic:
    """`fits queen drop 12in`."""
    return error(
        "word-missing",
        "`mattress` is missing before `drop`.",
        span,
        help="Write it, as in `fits queen mattress drop 12in`.",
        fix=Fix("Write `mattress`", span, "mattress drop"),
    )


@message
def mattress_quoted(say: Say, span: Span) -> Diagnostic:
    """`fits "queen" mattress`."""
    return error(
        "word-unexpected",
        "The name of a mattress stands without quotes.",
        span,
        help="Write it as in `fits queen mattress`.",
    )


@message
def fact_twice(say: Say, word: FactWord, span: Span, first: Span) -> Diagnostic:
    """`fabric sand width 42in width 40in`."""
    return error(
        "fact-twice",
        f"A fabric has one `{word.replace('-', ' ')}`, and this is the second.",
        span,
        help="Take one of them away.",
        related=(Label(first, "the first"),),
    )


@message
def width_of_pieces(say: Say, span: Span) -> Diagnostic:
    """`fabric rose width 42in fat quarter 3`."""
    return error(
        "width-of-pieces",
        "`width` is that of cloth off the bolt, and this cloth comes in pieces.",
        span,
        help="Take `width` away; or bring the bolt in as a fabric of its own.",
    )


@message
def border_styles(say: Say, span: Span, first: Span) -> Diagnostic:
    """`border 2in in sand butted mitred`."""
    return error(
        "border-styles",
        "A border is `butted` or `mitred` once, and `unjoined` once.",
        span,
        help="Take one of them away.",
        related=(Label(first, "written here"),),
    )
