"""Complaints about a file as a whole: its bytes, its bounds, its edition, whether it holds anything."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from ...diagnostics.diagnostic import Diagnostic, Fix, Label, error, warning
from ...diagnostics.source import Span
from ..say import Say
from .mends import written
from .message import message

NOT_OPENED: Final = "it cannot be opened"
"""Why a file cannot be read, where the system does not say."""


@message
def file_empty(say: Say, span: Span) -> Diagnostic:
    """Nothing but blanks."""
    return error(
        "file-empty",
        "There is nothing in this file.",
        span,
        help='Begin with `edition 1` and a block, as in `block "Plain Square" { finished 6in }`.',
    )


@message
def file_too_large(say: Say, span: Span, most: int) -> Diagnostic:
    """More bytes than any block file."""
    return error(
        "file-too-large",
        f"The file is larger than {most // 1_000_000} MB, the most that is read.",
        span,
        help="Is it a block file? Make parts of it blocks in files of their own.",
    )


@message
def source_not_text(say: Say, span: Span, line: int) -> Diagnostic:
    """A picture, an archive, a program."""
    return error(
        "source-not-text",
        f"The file is not text: line {line} holds a zero byte.",
        span,
        help="Block files are plain text. Did you name a picture or a PDF?",
    )


@message
def encoding_other(say: Say, span: Span, encoding: str) -> Diagnostic:
    """Text that says itself that it is not in UTF-8."""
    return _source_encoding(f"The file is written in {encoding}, not in UTF-8.", span)


@message
def byte_odd(say: Say, span: Span, byte: int, line: int) -> Diagnostic:
    """Text with a byte that is not UTF-8."""
    letter = bytes([byte]).decode("latin-1")
    seen = f" (`{letter}` in Latin-1)" if letter.isprintable() and letter.strip() else ""
    return _source_encoding(f"The byte {byte:02X}{seen} on line {line} is not UTF-8.", span)


def _source_encoding(words: str, span: Span) -> Diagnostic:
    return error("source-encoding", words, span, help="Save the file as plain text in UTF-8.")


@message
def nesting_too_deep(say: Say, span: Span, most: int) -> Diagnostic:
    """More braces and brackets inside one another than any block needs."""
    return error(
        "nesting-too-deep",
        f"Braces and brackets stand more than {most} deep here.",
        span,
        help="Give the inner points names of their own, or make the inner part a unit.",
    )


@message
def statements_too_many(say: Say, span: Span, most: int) -> Diagnostic:
    """More statements than a block of 20,000 pieces needs."""
    return error(
        "statements-too-many",
        f"The file has more than {most} statements.",
        span,
        help="Make parts of it blocks of their own, and use them as units.",
    )


@message
def words_too_many(say: Say, span: Span, most: int) -> Diagnostic:
    """More words than so many statements need."""
    return error(
        "words-too-many",
        f"The file has more than {most:,} words, numbers and signs.",
        span,
        help="Is it a block file? Make parts of it blocks of their own, and use them as units.",
    )


@message
def blocks_too_many(say: Say, span: Span, count: int, most: int) -> Diagnostic:
    """More blocks than any book of them."""
    return error(
        "blocks-too-many",
        f"A file has at most {most:,} blocks and quilts, and this one has {count:,}.",
        span,
        help="Share them out over several files; a block finds the others beside it.",
    )


GATHERED_SHOWN: Final = 12
"""Places beside the first that a message marks."""


@message
def told_as_one(say: Say, said: Sequence[Diagnostic]) -> Diagnostic:
    """Several mistakes of one kind, which mostly have one cause: the first, with the others' places."""
    first, *others = (each.facts.worded(say) if each.facts else each for each in said)
    labels = tuple(Label(each.primary.span, each.message) for each in others[:GATHERED_SHOWN])
    return replace(first, related=(*first.related, *labels), facts=None)


@message
def errors_too_many(say: Say, span: Span, most: int) -> Diagnostic:
    """The rest is not shown."""
    return error(
        "errors-too-many",
        f"The file has more than {most} mistakes; these are the first.",
        span,
        help="Mend these first. Is it a block file?",
    )


@message
def block_missing(say: Say, span: Span) -> Diagnostic:
    """An edition and nothing more."""
    return error(
        "block-missing",
        "There is no block and no quilt in this file.",
        span,
        help='Write a block, as in `block "Plain Square" { finished 6in }`.',
    )


@message
def edition_missing(say: Say, span: Span) -> Diagnostic:
    """No `edition 1` at the top."""
    return warning(
        "edition-missing",
        "The file does not say which edition of the language it is written in.",
        span,
        help="Write `edition 1` on the first line.",
        fix=Fix("Write `edition 1` at the top", Span(span.source, 0, 0), "edition 1\n\n"),
    )


@message
def edition_unknown(say: Say, span: Span, edition: int) -> Diagnostic:
    """`edition 7`."""
    return error(
        "edition-unknown",
        f"There is no edition {edition} of the language; this compiler reads edition 1.",
        span,
        help="Write `edition 1`.",
        fix=written(span, "1"),
    )


@message
def file_unreadable(say: Say, name: str, reason: str) -> Diagnostic:
    """The system will not let us read a file."""
    return error(
        "file-unreadable",
        f"This file cannot be read: {reason or NOT_OPENED}.",
        Span(name, 0, 0),
        help="Look at its permissions, or copy it to a folder of your own.",
    )
