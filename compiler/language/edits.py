"""A text with some of its words replaced; all else, remarks and line ends too, stays as the writer has it."""

from __future__ import annotations

from collections.abc import Iterable

from ..diagnostics.source import Span

Edit = tuple[Span, str]
"""Words, and what is to stand in their place."""


def with_edits(text: str, edits: Iterable[Edit]) -> str:
    """The text with every edit made. Their spans do not overlap."""
    parts: list[str] = []
    at = 0
    for span, words in sorted(edits, key=lambda each: (each[0].start, each[0].end)):
        assert span.start >= at, "edits do not overlap"
        parts += (text[at : span.start], words)
        at = span.end
    return "".join((*parts, text[at:]))
