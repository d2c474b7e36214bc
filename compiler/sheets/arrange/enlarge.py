"""Marks made larger or smaller about the page's corner, with their lines and letters."""

from __future__ import annotations

from dataclasses import replace

from ..page import Mark, Segment, TextMark


def enlarged(mark: Mark, by: float) -> Mark:
    """The mark `by` times as large, and as far from the page's corner; the same mark where `by` is 1."""
    if by == 1:
        return mark
    if isinstance(mark, TextMark):
        return replace(mark, x=mark.x * by, y=mark.y * by, size=mark.size * by)
    return replace(
        mark,
        path=tuple(_larger(segment, by) for segment in mark.path),
        clip=mark.clip and tuple(_larger(segment, by) for segment in mark.clip),
        dash=tuple(length * by for length in mark.dash),
        width=mark.width * by,
    )


def _larger(segment: Segment, by: float) -> Segment:
    return (segment[0], *(number * by for number in segment[1:]))  # type: ignore[return-value]
