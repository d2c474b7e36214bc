"""Bytes to a source: UTF-8, newlines normalised. Says what else it found, never raises.

Out: a Source without byte-order mark whose lines end in `\\n`, or a complaint: too large, not text, or text
in another encoding, with the line where it shows.
"""

from __future__ import annotations

import codecs
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, Outcome, error
from ..diagnostics.source import Source, Span
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
        return Outcome(None, (file_too_large(start),))
    for mark, encoding in _WIDE_MARKS:
        if data.startswith(mark):
            return Outcome(
                None, (source_encoding(start, f"The file is written in {encoding}, not in UTF-8."),)
            )
    data = data.removeprefix(codecs.BOM_UTF8)
    if b"\0" in data:
        return Outcome(None, (source_not_text(start, data),))
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as fault:
        return Outcome(None, (_not_utf8(name, data, fault.start),))
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    if not text.strip():
        return Outcome(None, (file_empty(start),))
    return Outcome(Source(name, text))


def _not_utf8(name: str, data: bytes, at: int) -> Diagnostic:
    """The complaint about the first byte that is not UTF-8."""
    before = data[:at].decode("utf-8").replace("\r\n", "\n").replace("\r", "\n")
    line = before.count("\n") + 1
    place = len(before)
    letter = data[at : at + 1].decode("latin-1")
    seen = f" (`{letter}` in Latin-1)" if letter.isprintable() and letter.strip() else ""
    return source_encoding(
        Span(name, place, place), f"The byte {data[at]:02X}{seen} on line {line} is not UTF-8."
    )


# ---- words ------------------------------------------------------------------------------------------------


def file_empty(span: Span) -> Diagnostic:
    """Nothing but blanks."""
    return error(
        "file-empty",
        "There is nothing in this file.",
        span,
        help='Begin with `edition 1` and a block, as in `block "Plain Square" { finished 6in }`.',
    )


def file_too_large(span: Span) -> Diagnostic:
    """More bytes than any block file."""
    megabytes = limits.FILE_BYTES // 1_000_000
    return error(
        "file-too-large",
        f"The file is larger than {megabytes} MB, the most that is read.",
        span,
        help="Is it a block file? Make parts of it blocks in files of their own.",
    )


def source_not_text(span: Span, data: bytes) -> Diagnostic:
    """A picture, an archive, a program."""
    line = data[: data.index(b"\0")].count(b"\n") + 1
    return error(
        "source-not-text",
        f"The file is not text: line {line} holds a zero byte.",
        span,
        help="Block files are plain text. Did you name a picture or a PDF?",
    )


def source_encoding(span: Span, message: str) -> Diagnostic:
    """Text, but not in UTF-8."""
    return error("source-encoding", message, span, help="Save the file as plain text in UTF-8.")
