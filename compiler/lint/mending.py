"""Mends put into a text: those of one round that do not touch each other."""

from __future__ import annotations

from collections.abc import Iterable

from ..diagnostics.diagnostic import Diagnostic


def mended(text: str, said: Iterable[Diagnostic]) -> tuple[str, int]:
    """The text with every mend applied that does not overlap an earlier one; and how many those are."""
    fixes = sorted(
        {each.fix for each in said if each.fix is not None},
        key=lambda fix: (fix.span.start, fix.span.end, fix.text),
    )
    parts: list[str] = []
    at = count = 0
    for fix in fixes:
        if fix.span.start < at:
            continue
        parts += [text[at : fix.span.start], fix.text]
        at = fix.span.end
        count += 1
    return "".join((*parts, text[at:])), count
