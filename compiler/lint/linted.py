"""What a check looks at: a file that compiles, as it is written and as it is drafted."""

from __future__ import annotations

from collections.abc import Iterator

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Source, Span
from ..drafting.model import Draft
from ..language import quilt_tree, tree
from ..language.shelf import Choice
from ..language.walk import statements_in
from ..measure.record import record


@record
class Linted:
    """A file without errors. `drafts` are of its own blocks; `said` is what compiling it had to say."""

    source: Source
    file: tree.File
    drafts: tuple[Draft, ...]
    choices: tuple[Choice, ...]
    said: tuple[Diagnostic, ...]

    @property
    def parts(self) -> tuple[tree.Block | quilt_tree.Quilt, ...]:
        """Its blocks and quilts, as they are written."""
        return (*self.file.blocks, *self.file.quilts)

    def statements(self) -> Iterator[tree.Node]:
        """Every statement."""
        return statements_in(self.file)

    def holds(self, span: Span | None) -> bool:
        """Whether a place is in this file, not in another that it uses."""
        return span is not None and span.source == self.source.name

    def line_of(self, span: Span) -> Span:
        """What goes with words that are taken away: their line where nothing else is on it, or blanks."""
        text = self.source.text
        start, end = span.start, span.end
        before, after = text.rfind("\n", 0, start) + 1, text.find("\n", end)
        after = len(text) if after < 0 else after
        if not text[before:start].strip() and not text[end:after].strip():
            start, end = before, min(after + 1, len(text))
        else:
            while text[end : end + 1] in (" ", "\t"):
                end += 1
        return Span(self.source.name, start, end)
