"""What is said of a file as a whole: its bounds, its edition, whether it holds anything."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, Fix, error, warning
from ..diagnostics.source import Source, Span
from . import limits, tree
from .decode import file_empty
from .tokens import END, OPENERS, Token


def out_of_bounds(source: Source, tokens: Sequence[Token]) -> Diagnostic | None:
    """A complaint where the text nests too deep or says too much to be read at all."""
    braces = brackets = statements = 0
    for number, token in enumerate(tokens):
        if number == limits.WORDS and token.type != END:
            return words_too_many(Span(source.name, token.start, token.end))
        if token.type in OPENERS:
            statements += 1
            brackets = 0
            braces = 0 if token.type in ("BLOCK", "QUILT") else braces
        braces += (token.type == "LBRACE") - (token.type == "RBRACE")
        brackets += (token.type == "LPAR") - (token.type == "RPAR")
        if max(braces, 0) + max(brackets, 0) > limits.NESTING:
            return nesting_too_deep(Span(source.name, token.start, token.end))
        if statements > limits.STATEMENTS:
            return statements_too_many(Span(source.name, token.start, token.end))
    return None


def nesting_too_deep(span: Span) -> Diagnostic:
    """More braces and brackets inside one another than any block needs."""
    return error(
        "nesting-too-deep",
        f"Braces and brackets stand more than {limits.NESTING} deep here.",
        span,
        help="Give the inner points names of their own, or make the inner part a unit.",
    )


def statements_too_many(span: Span) -> Diagnostic:
    """More statements than a block of 20,000 pieces needs."""
    return error(
        "statements-too-many",
        f"The file has more than {limits.STATEMENTS} statements.",
        span,
        help="Make parts of it blocks of their own, and use them as units.",
    )


def words_too_many(span: Span) -> Diagnostic:
    """More words than so many statements need."""
    return error(
        "words-too-many",
        f"The file has more than {limits.WORDS:,} words, numbers and signs.",
        span,
        help="Is it a block file? Make parts of it blocks of their own, and use them as units.",
    )


def blocks_too_many(span: Span, count: int) -> Diagnostic:
    """More blocks than any book of them."""
    return error(
        "blocks-too-many",
        f"A file has at most {limits.BLOCKS:,} blocks and quilts, and this one has {count:,}.",
        span,
        help="Share them out over several files; a block finds the others beside it.",
    )


def errors_too_many(first_left_out: Diagnostic) -> Diagnostic:
    """The rest is not shown."""
    return error(
        "errors-too-many",
        f"The file has more than {limits.ERRORS} mistakes; these are the first.",
        first_left_out.primary.span,
        help="Mend these first. Is it a block file?",
    )


def whole_file(
    source: Source, tokens: Sequence[Token], file: tree.File, *, quiet: bool
) -> tuple[Diagnostic, ...]:
    """What is missing from the file as a whole; of blocks only where nothing else was said."""
    said: list[Diagnostic] = []
    if tokens[0].type == END:
        return (file_empty(Span(source.name, 0, 0)),)
    openings = [token for token in tokens if token.type in ("BLOCK", "QUILT")]
    if len(openings) > limits.BLOCKS:
        said.append(
            blocks_too_many(
                Span(source.name, openings[limits.BLOCKS].start, openings[limits.BLOCKS].end), len(openings)
            )
        )
    if file.edition is None and not any(token.type == "EDITION" for token in tokens):
        start = Span(source.name, tokens[0].start, tokens[0].end)
        said.append(edition_missing(start))
    if not file.blocks and not file.quilts and not quiet:
        end = tokens[-2].end if len(tokens) > 1 else 0
        said.append(block_missing(Span(source.name, end, end)))
    return tuple(said)


def block_missing(span: Span) -> Diagnostic:
    """An edition and nothing more."""
    return error(
        "block-missing",
        "There is no block and no quilt in this file.",
        span,
        help='Write a block, as in `block "Plain Square" { finished 6in }`.',
    )


def edition_missing(span: Span) -> Diagnostic:
    """No `edition 1` at the top."""
    return warning(
        "edition-missing",
        "The file does not say which edition of the language it is written in.",
        span,
        help="Write `edition 1` on the first line.",
        fix=Fix("Write `edition 1` at the top", Span(span.source, 0, 0), "edition 1\n\n"),
    )


_STAND_INS: Final = {
    "block": (("TURN", "turn"), ("NUMBER", "2"), ("ABOUT", "about"), ("NAME", "center")),
    "quilt": (
        ("SET", "set"),
        ("NAME", "straight"),
        ("NUMBER", "1"),
        ("NAME", "across"),
        ("NUMBER", "1"),
        ("NAME", "down"),
    ),
    "file": (("BLOCK", "block"), ("STRING", '"untitled"')),
}


def stand_in(token: Token, within: str, opener: str) -> list[Token]:
    """Words to open a body whose own opening words were given up, so that what it holds is still read.

    None where what it holds could not be read: of a `turn` within a quilt, of a `set` within a block.
    """
    if (within, opener) in (("quilt", "TURN"), ("quilt", "MIRROR"), ("block", "SET")) or within == "set":
        return []
    made = _STAND_INS[within]
    if (within, opener) == ("file", "QUILT"):
        made = (("QUILT", "quilt"), ("STRING", '"untitled"'))
    return [
        Token(kind, text, token.start, token.start, soft=text.upper() if kind == "NAME" else "")
        for kind, text in made
    ]
