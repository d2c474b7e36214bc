"""Diagnostics for programs: the fields that LANGUAGE.md fixes, no more and no fewer.

Lines and columns count from 1; `end_line` and `end_column` are those of the first character after the place.
"""

from __future__ import annotations

from collections.abc import Mapping
from json import dumps

from .diagnostic import Diagnostic
from .render import end_of, place_of
from .source import Source


def as_record(diagnostic: Diagnostic, sources: Mapping[str, Source]) -> dict[str, str | int]:
    """The diagnostic as a flat record."""
    span = diagnostic.primary.span
    line, column = place_of(span, sources)
    end_line, end_column = end_of(span, sources)
    return {
        "code": diagnostic.code,
        "severity": diagnostic.severity.value,
        "message": diagnostic.message,
        "file": span.source,
        "line": line,
        "column": column,
        "end_line": end_line,
        "end_column": end_column,
        "help": diagnostic.help,
    }


def as_json(diagnostic: Diagnostic, sources: Mapping[str, Source]) -> str:
    """The record as JSON on one line, in ASCII: it passes through any terminal and any pipe."""
    return dumps(as_record(diagnostic, sources))
