"""Source texts and places in them. The only module that makes line 1, column 1."""

from __future__ import annotations

from array import array
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import field
from typing import Final

from ..measure.record import record


@record
class Span:
    """Characters start..end (end excluded) of one source, after newlines were normalised."""

    source: str  # name as shown to the writer, never an absolute path unless the writer gave one
    start: int
    end: int


NOWHERE: Final = Span("", 0, 0)
"""The place of what no words stand for."""


@record
class Source:
    """A text with the name its places are written with. Newlines are `\\n`; no byte-order mark."""

    name: str
    text: str
    line_starts: Sequence[int] = field(init=False, compare=False, repr=False)

    def __post_init__(self) -> None:
        starts, at = array("L", [0]), self.text.find("\n")
        while at >= 0:
            starts.append(at + 1)
            at = self.text.find("\n", at + 1)
        object.__setattr__(self, "line_starts", starts)

    def place(self, offset: int) -> tuple[int, int]:
        """Line and column of a character, both counted from 1, columns in characters."""
        line = bisect_right(self.line_starts, offset)
        return line, offset - self.line_starts[line - 1] + 1

    def line(self, number: int) -> str:
        """The text of a line, counted from 1, without its newline."""
        start = self.line_starts[number - 1]
        end = self.text.find("\n", start)
        return self.text[start:] if end < 0 else self.text[start:end]

    def words(self, span: Span) -> str:
        """The writer's own words at a span."""
        return self.text[span.start : span.end]
