"""Marks, moved and turned. Points; x right, y down."""

from __future__ import annotations

from dataclasses import replace

from ..page import Mark, Segment, TextMark


def moved_mark(mark: Mark, dx: float, dy: float) -> Mark:
    """The mark, so many points further right and down."""
    if isinstance(mark, TextMark):
        return replace(mark, x=mark.x + dx, y=mark.y + dy)
    clip = None if mark.clip is None else _moved_path(mark.clip, dx, dy)
    return replace(mark, path=_moved_path(mark.path, dx, dy), clip=clip)


def turned_mark(mark: Mark) -> Mark:
    """The mark turned a quarter to the right about the corner (0, 0); what was upright is level."""
    if isinstance(mark, TextMark):
        return replace(mark, x=-mark.y, y=mark.x, turned=mark.turned + 90.0)
    clip = None if mark.clip is None else _turned_path(mark.clip)
    return replace(mark, path=_turned_path(mark.path), clip=clip)


def _turned_path(path: tuple[Segment, ...]) -> tuple[Segment, ...]:
    return tuple(_turned_segment(segment) for segment in path)


def _turned_segment(segment: Segment) -> Segment:
    match segment:
        case ("C", x1, y1, x2, y2, x, y):
            return ("C", -y1, x1, -y2, x2, -y, x)
        case ("M", x, y):
            return ("M", -y, x)
        case ("L", x, y):
            return ("L", -y, x)
        case _:
            return segment


def _moved_path(path: tuple[Segment, ...], dx: float, dy: float) -> tuple[Segment, ...]:
    return tuple(_moved_segment(segment, dx, dy) for segment in path)


def _moved_segment(segment: Segment, dx: float, dy: float) -> Segment:
    match segment:
        case ("C", x1, y1, x2, y2, x, y):
            return ("C", x1 + dx, y1 + dy, x2 + dx, y2 + dy, x + dx, y + dy)
        case ("M", x, y):
            return ("M", x + dx, y + dy)
        case ("L", x, y):
            return ("L", x + dx, y + dy)
        case _:
            return segment
