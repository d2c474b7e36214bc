"""A place in a source as lines with carets under them.

9 |   seam center -- gate
  |                  ^^^^ it stops here, 1/2in from the nearest seam
"""

from __future__ import annotations

from typing import Final

from ..measure.record import record
from .source import Source, Span
from .visible import visible_letter, width_of

LINE_ROOM: Final = 100  # columns of source shown: a longer line is cut down to what stands round the carets
BEFORE: Final = 30  # columns kept before the carets of a line that is cut down
ELLIPSIS: Final = "…"


@record
class Excerpt:
    """One line as shown, and where its carets stand. `number` counts from 1."""

    number: int
    text: str
    start: int  # columns before the first caret
    length: int  # carets, one at least


def excerpts(source: Source, span: Span) -> tuple[Excerpt, ...]:
    """The line of the span; of a span over several lines its first and its last."""
    end_of_text = len(source.text)
    start = min(max(span.start, 0), end_of_text)
    end = min(max(span.end, start), end_of_text)
    first, column = source.place(start)
    last, end_column = source.place(max(start, end - 1))
    if first == last:
        return (_excerpt(source, first, column - 1, max(end - start, 1)),)
    opening = len(source.line(first)) - column + 1
    line = source.line(last)
    indent = len(line) - len(line.lstrip())
    return (
        _excerpt(source, first, column - 1, max(opening, 1)),
        _excerpt(source, last, min(indent, end_column - 1), max(end_column - indent, 1)),
    )


def _excerpt(source: Source, number: int, start: int, length: int) -> Excerpt:
    """A line with `length` characters from `start` marked, cut down to LINE_ROOM columns round the mark."""
    line = source.line(number)
    before_text = line[max(0, start - LINE_ROOM) : start]
    marked_text = line[start : start + min(length, LINE_ROOM)]
    after_text = line[start + length : start + length + LINE_ROOM]
    before, cut_before = _last_columns(before_text, start > len(before_text), marked_text, after_text)
    room = LINE_ROOM - width_of(before)
    marked = _first_columns(marked_text, room, len(marked_text) < min(length, len(line) - start))
    room -= width_of(marked)
    rest = len(line) > start + length + len(after_text)
    after = _first_columns(after_text, room, rest) if not marked.endswith(ELLIPSIS) else ""
    shown = (ELLIPSIS if cut_before else "") + before + marked + after
    at = width_of(before) + (1 if cut_before else 0)
    return Excerpt(number, shown.rstrip(), at, max(width_of(marked), 1))


def _last_columns(text: str, cut: bool, marked: str, after: str) -> tuple[str, bool]:
    """What stands before the mark, whole if the line fits, else its last BEFORE columns; and whether cut."""
    shown = [visible_letter(letter) for letter in text]
    whole = sum(map(width_of, shown))
    rest = sum(width_of(visible_letter(letter)) for letter in marked + after)
    if not cut and (whole + rest <= LINE_ROOM or whole <= BEFORE):
        return "".join(shown), False
    kept: list[str] = []
    room = BEFORE
    for letter in reversed(shown):
        room -= width_of(letter)
        if room < 0:
            cut = True
            break
        kept.append(letter)
    return "".join(reversed(kept)), cut


def _first_columns(text: str, room: int, more: bool) -> str:
    """As many letters as fit, ending in an ellipsis where some are left out."""
    kept: list[str] = []
    used = 0
    for letter in text:
        shown = visible_letter(letter)
        if used + width_of(shown) > room:
            more = True
            break
        used += width_of(shown)
        kept.append(shown)
    return "".join(kept) + (ELLIPSIS if more else "")
