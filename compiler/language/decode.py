"""Bytes to a source: UTF-8, newlines normalised. Says what else it found, never raises.

Out: a Source without byte-order mark whose lines end in `\\n`, or a complaint: too large, not text, or text
in another encoding, with the line where it shows.
"""

from __future__ import annotations

import codecs
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, Outcome
from ..diagnostics.source import Source, Span
from ..words.messages import files as complain
from . import limits

_WIDE_MARKS: Final = (
    (codecs.BOM_UTF32_LE, "UTF-32"),
    (codecs.BOM_UTF32_BE, "UTF-32"),
    (codecs.BOM_UTF16_LE, "UTF-16"),
    (codecs.BOM_UTF16_BE, "UTF-16"),
)
"""Byte-order marks (Unicode standard, chapter 23.8), the longer ones first: one begins with the other."""


def read_source(name: str, data: bytes) -> Outcome[Source]:
    """The source that a file's bytes hold."""
    start = Span(name, 0, 0)
    if len(data) > limits.FILE_BYTES:
        return Outcome(None, (complain.file_too_large(start, limits.FILE_BYTES),))
    for mark, encoding in _WIDE_MARKS:
        if data.startswith(mark):
            return Outcome(None, (complain.encoding_other(start, encoding),))
    data = data.removeprefix(codecs.BOM_UTF8)
    if b"\0" in data:
        line = data[: data.index(b"\0")].count(b"\n") + 1
        return Outcome(None, (complain.source_not_text(start, line),))
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as fault:
        return Outcome(None, (_not_utf8(name, data, fault.start),))
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    if not text.strip():
        return Outcome(None, (complain.file_empty(start),))
    return Outcome(Source(name, text))


def _not_utf8(name: str, data: bytes, at: int) -> Diagnostic:
    """The complaint about the first byte that is not UTF-8."""
    before = data[:at].decode("utf-8").replace("\r\n", "\n").replace("\r", "\n")
    span = Span(name, len(before), len(before))
    return complain.byte_odd(span, data[at], before.count("\n") + 1)
