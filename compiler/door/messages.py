"""What there is to say of files, as other programs take it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.render import end_of, place_of
from ..diagnostics.source import Source, Span
from ..measure.record import record

Severity = Literal["error", "warning", "note"]


@record
class Mend:
    """A change of the file's text that would mend it: what stands between the two places gives way to
    `text`. Lines and columns count from 1; the end is the first character that stays."""

    title: str
    line: int
    column: int
    end_line: int
    end_column: int
    text: str


@record
class Message:
    """One thing to say about one place in a file. Lines and columns count from 1; the end is the first
    character after the place. `code` names the kind of thing said: `piecewright explain CODE` says more."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int
    code: str
    severity: Severity
    message: str
    help: str = ""
    fix: Mend | None = None

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}: {self.severity}[{self.code}] {self.message}"


class CompileError(Exception):
    """What was compiled has errors, so nothing is made of it. `diagnostics` has all that there is to say."""

    def __init__(self, diagnostics: tuple[Message, ...]) -> None:
        errors = [str(each) for each in diagnostics if each.severity == "error"]
        super().__init__("\n".join(errors))
        self.diagnostics = diagnostics


def message_of(said: Diagnostic, sources: Mapping[str, Source]) -> Message:
    """A diagnostic with its place."""
    place = said.primary.span
    return Message(
        place.source,
        *_place(place, sources),
        code=said.code,
        severity=said.severity.value,
        message=said.message,
        help=said.help,
        fix=Mend(said.fix.title, *_place(said.fix.span, sources), text=said.fix.text) if said.fix else None,
    )


def _place(span: Span, sources: Mapping[str, Source]) -> tuple[int, int, int, int]:
    return *place_of(span, sources), *end_of(span, sources)
