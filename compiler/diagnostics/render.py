"""A diagnostic in words, for people and for programs that read lines.

Nothing here prints. Places are written `file:line:column:`, all counted from 1, so that terminals and
editors that follow such places can.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, Literal, assert_never

from ..measure.record import record
from ..words.telling import HELP, SEVERITIES, mend_text
from .diagnostic import Diagnostic, Label, Severity
from .excerpt import Excerpt, excerpts
from .source import Source, Span
from .visible import shortened, visible

SENTENCE_LIMIT: Final = 400  # characters of a message or a help shown: a title may be 100,000 long
NAME_LIMIT: Final = 200

RESET: Final = "\x1b[0m"
BOLD: Final = "\x1b[1m"
BLUE: Final = "\x1b[34m"
COLOURS: Final = {Severity.ERROR: "\x1b[1;31m", Severity.WARNING: "\x1b[1;33m", Severity.NOTE: "\x1b[1;36m"}
GITHUB_WORDS: Final = {Severity.ERROR: "error", Severity.WARNING: "warning", Severity.NOTE: "notice"}


@record
class Style:
    """How diagnostics are shown: with carets, one line each, or as GitHub's annotation lines."""

    form: Literal["people", "short", "github"] = "people"
    colour: bool = False


def render(diagnostic: Diagnostic, sources: Mapping[str, Source], style: Style | None = None) -> str:
    """The diagnostic as text without a closing newline. A source that is not in `sources` shows no lines."""
    style = style or Style()
    match style.form:
        case "people":
            return _for_people(diagnostic, sources, style)
        case "short":
            return _short(diagnostic, sources, style)
        case "github":
            return _annotation(diagnostic, sources)
        case _ as never:
            assert_never(never)


def place_of(span: Span, sources: Mapping[str, Source]) -> tuple[int, int]:
    """Line and column of a span's start; 1, 1 in a source that is not at hand."""
    source = sources.get(span.source)
    return source.place(min(span.start, len(source.text))) if source else (1, 1)


def end_of(span: Span, sources: Mapping[str, Source]) -> tuple[int, int]:
    """Line and column of the first character after a span; 1, 1 in a source that is not at hand."""
    source = sources.get(span.source)
    return source.place(min(max(span.start, span.end), len(source.text))) if source else (1, 1)


def place_text(span: Span, sources: Mapping[str, Source]) -> str:
    """`vane.block:9:18:`."""
    line, column = place_of(span, sources)
    return f"{shortened(visible(span.source), NAME_LIMIT)}:{line}:{column}:"


def _sentence(text: str) -> str:
    """A message or a help on one line, of bounded length."""
    return shortened(visible(text), SENTENCE_LIMIT)


def _head(diagnostic: Diagnostic, style: Style) -> str:
    """`error[seam-hangs]`."""
    called = SEVERITIES[diagnostic.severity.value]
    return _ink(f"{called}[{diagnostic.code}]", COLOURS[diagnostic.severity], style)


def _ink(text: str, colour: str, style: Style) -> str:
    """The text in a colour, where colour is wanted."""
    return f"{colour}{text}{RESET}" if style.colour and text else text


# ---- one line each ----------------------------------------------------------------------------------------


def _short(diagnostic: Diagnostic, sources: Mapping[str, Source], style: Style) -> str:
    """`vane.block:9:18: error[seam-hangs] This seam ends inside a piece.`"""
    head = _head(diagnostic, style)
    return f"{place_text(diagnostic.primary.span, sources)} {head} {_sentence(diagnostic.message)}"


def _annotation(diagnostic: Diagnostic, sources: Mapping[str, Source]) -> str:
    """`::error file=vane.block,line=9,col=18,...::This seam ends inside a piece.`, escaped as GitHub asks."""
    span = diagnostic.primary.span
    line, column = place_of(span, sources)
    end_line, end_column = end_of(span, sources)
    fields = {
        "file": span.source,
        "line": line,
        "col": column,
        "endLine": end_line,
        "endColumn": end_column,
        "title": diagnostic.code,
    }
    written = ",".join(f"{key}={_field(str(value))}" for key, value in fields.items())
    words = diagnostic.message + (f"\n{diagnostic.help}" if diagnostic.help else "")
    return f"::{GITHUB_WORDS[diagnostic.severity]} {written}::{_payload(words)}"


def _payload(text: str) -> str:
    """What may stand after the `::` of an annotation line: newlines and % escaped, nothing hidden."""
    return "%0A".join(visible(line).replace("%", "%25") for line in text.split("\n"))


def _field(text: str) -> str:
    """What may stand as one field of an annotation line: no colon, no comma, no newline."""
    return _payload(text).replace(":", "%3A").replace(",", "%2C")


# ---- for people -------------------------------------------------------------------------------------------


def _for_people(diagnostic: Diagnostic, sources: Mapping[str, Source], style: Style) -> str:
    """The message, the lines it is about with carets, the related places, and what to do."""
    labels = (diagnostic.primary, *diagnostic.related)
    shown = [_excerpts_of(label, sources) for label in labels]
    gutter = max((len(str(each.number)) for group in shown for each in group), default=1)
    colour = COLOURS[diagnostic.severity]
    head = _head(diagnostic, style)
    message = _ink(f": {_sentence(diagnostic.message)}", BOLD, style)
    lines = [
        f"{head}{message}",
        _arrow("-->", gutter, style) + " " + place_text(diagnostic.primary.span, sources),
    ]
    lines += _labelled(diagnostic.primary, shown[0], gutter, "^", colour, style)
    source = diagnostic.primary.span.source
    for label, group in zip(diagnostic.related, shown[1:], strict=True):
        if label.span.source != source or not group:
            source = label.span.source
            words = "" if group else f" {_sentence(label.text)}"
            lines.append(_arrow(":::", gutter, style) + " " + place_text(label.span, sources) + words)
        lines += _labelled(label, group, gutter, "-", BLUE, style)
    if any(shown):
        lines.append(_bar("", gutter, style))
    help = diagnostic.help or (mend_text(diagnostic.fix.title) if diagnostic.fix else "")
    if help:
        lines.append(f"{_ink(HELP, BOLD, style)}: {_sentence(help)}")
    return "\n".join(lines)


def _excerpts_of(label: Label, sources: Mapping[str, Source]) -> tuple[Excerpt, ...]:
    """The lines of a label; none where its source is not at hand or is empty."""
    source = sources.get(label.span.source)
    return excerpts(source, label.span) if source and source.text else ()


def _labelled(
    label: Label, group: tuple[Excerpt, ...], gutter: int, caret: str, colour: str, style: Style
) -> list[str]:
    """The lines of one label, its words after the last carets."""
    lines: list[str] = []
    for each in group:
        apart = lines and each.number > group[0].number + 1
        lines.append(_bar("...", gutter, style) if apart else _bar("", gutter, style) if not lines else "")
        lines.append(_bar(str(each.number), gutter, style) + " " + each.text)
        words = f" {_sentence(label.text)}" if label.text and each is group[-1] else ""
        marks = _ink(caret * each.length + words, colour, style)
        lines.append(_bar("", gutter, style) + " " + " " * each.start + marks)
    return [line for line in lines if line]


def _arrow(arrow: str, gutter: int, style: Style) -> str:
    """The arrow before a place, in line with the gutter."""
    return " " * (gutter + 1) + _ink(arrow, BLUE, style)


def _bar(number: str, gutter: int, style: Style) -> str:
    """The gutter: a line number or nothing, and the bar. Three dots stand where lines are left out."""
    if number == "...":
        return _ink("...".rjust(gutter + 1), BLUE, style)
    return _ink(f" {number:>{gutter}} |", BLUE, style)
