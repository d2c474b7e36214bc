"""Everything that is said of a text: by compiling it, by `lint`."""

from __future__ import annotations

from piecewright.diagnostics.diagnostic import Diagnostic, in_order
from piecewright.diagnostics.source import Source
from piecewright.language.decode import read_source
from piecewright.language.parser import parse
from piecewright.lint.checks import lint
from piecewright.lint.linted import Linted
from piecewright.pipeline import compile_file
from piecewright.sheets.missing_letters import missing_letters
from piecewright.shelves.folders import FolderShelf
from support.check import compile_source

GOOD = """\
edition 1

block "Trial" version 1 {
  finished 6in
  family strip
  note "An example."
  seam top -- bottom
}
"""
"""A block about which no check of `lint` has anything to say."""


def said_of(text: str) -> tuple[Diagnostic, ...]:
    """Everything said of a text that stands alone."""
    read = read_source("trial.block", text.encode())
    if read.value is None:
        return in_order(read.diagnostics)
    said = read.diagnostics + compile_source(read.value, FolderShelf()).diagnostics
    return in_order(said + missing_letters(read.value))


def linted(text: str) -> tuple[Diagnostic, ...]:
    """Everything that `lint` says of a text that stands alone and has no error."""
    source = Source("trial.block", text)
    made, file = compile_file(source, FolderShelf()), parse(source).value
    assert made.value is not None and file is not None, made.diagnostics
    drafts = tuple(each.draft for each in made.value.blocks)
    return lint(Linted(source, file, drafts, made.value.choices, made.diagnostics))
