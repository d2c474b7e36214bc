"""Washed blocks: the file with them drafted, and what their readings say."""

from __future__ import annotations

from .compiling import Compiled


def drafted(compiled: Compiled) -> str:
    """The file with its washed blocks drafted."""
    from ..drafting.washed.written import drafted_source
    from ..words.work.washed import remarks

    return drafted_source(compiled.source, compiled.measured, remarks)


def report(compiled: Compiled, form: str) -> str:
    """The drafted file's text, a table of readings as 'text', or both as 'json'."""
    from ..sheets.reports.washed_report import washed_text

    if form == "block":
        return drafted(compiled)
    if form == "text":
        return washed_text(compiled.measured)
    from json import dumps

    from .records.washed import washed_record

    return dumps(washed_record(compiled.source, compiled.measured), ensure_ascii=True)
