"""A file as a whole: whether it is within its bounds, says its edition, holds anything."""

from __future__ import annotations

from collections.abc import Sequence

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Source, Span
from ..words.messages import files as complain
from . import limits, tree
from .tokens import END, OPENERS, Token


def out_of_bounds(source: Source, tokens: Sequence[Token]) -> Diagnostic | None:
    """A complaint where the text nests too deep or says too much to be read at all."""
    braces = brackets = statements = 0
    for number, token in enumerate(tokens):
        if number == limits.WORDS and token.type != END:
            return complain.words_too_many(Span(source.name, token.start, token.end), limits.WORDS)
        if token.type in OPENERS:
            statements += 1
            brackets = 0
            braces = 0 if token.type in ("BLOCK", "QUILT") else braces
        braces += (token.type == "LBRACE") - (token.type == "RBRACE")
        brackets += (token.type == "LPAR") - (token.type == "RPAR")
        if max(braces, 0) + max(brackets, 0) > limits.NESTING:
            return complain.nesting_too_deep(Span(source.name, token.start, token.end), limits.NESTING)
        if statements > limits.STATEMENTS:
            return complain.statements_too_many(Span(source.name, token.start, token.end), limits.STATEMENTS)
    return None


def whole_file(
    source: Source, tokens: Sequence[Token], file: tree.File, *, quiet: bool
) -> tuple[Diagnostic, ...]:
    """What is missing from the file as a whole; of blocks only where nothing else was said."""
    said: list[Diagnostic] = []
    if tokens[0].type == END:
        return (complain.file_empty(Span(source.name, 0, 0)),)
    openings = [token for token in tokens if token.type in ("BLOCK", "QUILT")]
    if len(openings) > limits.BLOCKS:
        first = openings[limits.BLOCKS]
        span = Span(source.name, first.start, first.end)
        said.append(complain.blocks_too_many(span, len(openings), limits.BLOCKS))
    if file.edition is None and not any(token.type == "EDITION" for token in tokens):
        start = Span(source.name, tokens[0].start, tokens[0].end)
        said.append(complain.edition_missing(start))
    if not file.blocks and not file.quilts and not quiet:
        end = tokens[-2].end if len(tokens) > 1 else 0
        said.append(complain.block_missing(Span(source.name, end, end)))
    return tuple(said)
