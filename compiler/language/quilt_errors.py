"""What is said of a quilt's statements whose words are in order but whose parts do not go together."""

from __future__ import annotations

from ..diagnostics.diagnostic import Diagnostic, Label, error
from ..diagnostics.source import Span


def fact_twice(words: str, span: Span, first: Span) -> Diagnostic:
    """`fabric sand width 42in width 40in`."""
    return error(
        "fact-twice",
        f"A fabric has one `{words}`, and this is the second.",
        span,
        help="Take one of them away.",
        related=(Label(first, "the first"),),
    )


def width_of_pieces(span: Span) -> Diagnostic:
    """`fabric rose width 42in fat quarter 3`."""
    return error(
        "width-of-pieces",
        "`width` is that of cloth off the bolt, and this cloth comes in pieces.",
        span,
        help="Take `width` away; or bring the bolt in as a fabric of its own.",
    )


def border_styles(span: Span, first: Span) -> Diagnostic:
    """`border 2in in sand butted mitred`."""
    return error(
        "border-styles",
        "A border is `butted` or `mitred` once, and `unjoined` once.",
        span,
        help="Take one of them away.",
        related=(Label(first, "written here"),),
    )
