"""What a mend that can be applied is called: words taken away, or others written in their place."""

from __future__ import annotations

from ...diagnostics.diagnostic import Fix
from ...diagnostics.source import Span


def taken_away(span: Span) -> Fix:
    """Nothing in place of the words."""
    return Fix("Take it away", span, "")


def written(span: Span, right: str, called: str = "") -> Fix:
    """Other words in their place; `called`: what they are called, where they are too long to repeat."""
    return Fix(f"Write `{called or right}`", span, right)
