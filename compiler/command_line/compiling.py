"""One input through every pass: its blocks, or what is wrong with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

import click

from ..diagnostics.diagnostic import Diagnostic, error, in_order, note
from ..diagnostics.source import Source, Span
from .console import CLEAN, Progress, Tally, show_diagnostics
from .failures import own_mistakes
from .folders import FolderShelf
from .inputs import Input

if TYPE_CHECKING:
    from ..pipeline import CompiledBlock
    from ..quilt.model import Quilt


@dataclass(frozen=True, slots=True)
class Compiled:
    """A file's blocks, none where it has an error; all there is to say; the sources it is said of."""

    name: str
    blocks: tuple[CompiledBlock, ...]
    diagnostics: tuple[Diagnostic, ...]
    sources: Mapping[str, Source]

    @property
    def own_blocks(self) -> tuple[CompiledBlock, ...]:
        """The blocks that the file itself holds, without those it uses from elsewhere."""
        return tuple(each for each in self.blocks if not each.from_elsewhere)


def compile_input(given: Input, shelf: FolderShelf) -> Compiled:
    """The input compiled. What an earlier file needed of the shelf is let go first."""
    shelf.forget()
    try:
        data = given.read()
    except OSError as problem:
        said = file_unreadable(given.name, problem.strerror or "it cannot be opened")
        return Compiled(given.name, (), (said,), {given.name: Source(given.name, "")})
    with own_mistakes(given.name):
        return _compile_bytes(given.name, data, shelf)


def compile_alone(given: Input, shelf: FolderShelf) -> tuple[Compiled, int]:
    """The one input of a command compiled, all there is to say of it shown; and the exit status so far."""
    tally, progress = Tally(), Progress(1)
    progress.doing(f"{given.name}: drafting")
    try:
        compiled = compile_input(given, shelf)
    finally:
        progress.clear()
    tally.add(compiled.diagnostics)
    show_diagnostics(compiled.diagnostics, compiled.sources, err=True)
    if tally.status() != CLEAN:
        click.echo(tally.summary(), err=True)
    return compiled, tally.status()


def _compile_bytes(name: str, data: bytes, shelf: FolderShelf) -> Compiled:
    from ..language.decode import read_source
    from ..pipeline import compile_file

    read = read_source(name, data)
    source = read.value or Source(name, "")
    if read.value is None or read.failed:
        return Compiled(name, (), in_order(read.diagnostics), {name: source})
    outcome = compile_file(source, shelf)
    said = read.diagnostics + outcome.diagnostics
    sources = {**shelf.sources, name: source}
    if outcome.value is None or outcome.failed:
        said += tuple(shelf_file_faulty(each) for each in shelf.faults)
        return Compiled(name, (), in_order(said), sources)
    said += tuple(quilt_pages_later(each) for each in outcome.value.quilts if each.origin)
    return Compiled(name, outcome.value.blocks, in_order(said), sources)


def file_unreadable(name: str, reason: str) -> Diagnostic:
    """The system will not let us read a file."""
    return error("file-unreadable", f"This file cannot be read: {reason}.", Span(name, 0, 0),
                 help="Look at its permissions, or copy it to a folder of your own.")


def quilt_pages_later(quilt: Quilt) -> Diagnostic:
    """A quilt is laid out, and nothing is made of it yet."""
    assert quilt.origin is not None, "asked only for quilts from a file"
    return note("quilt-pages-later",
                "This quilt is laid out without mistakes; its own pages are not made yet.", quilt.origin,
                help="The sheets of its blocks are made as ever.")


def shelf_file_faulty(fault: Diagnostic) -> Diagnostic:
    """A file on a shelf holds a title that was asked for, and a mistake that keeps it from being used."""
    place = fault.primary.span
    message = f"`{place.source}` may have the block asked for, but has a mistake."
    return note("shelf-file-faulty", message, place, fault.message,
                help=f"See `piecewright check {place.source}`.")
