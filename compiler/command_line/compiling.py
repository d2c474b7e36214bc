"""One input through every pass: its blocks, or what is wrong with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import click

from ..diagnostics.diagnostic import Diagnostic, Outcome, in_order
from ..diagnostics.source import Source
from ..words.messages.files import file_unreadable
from ..words.messages.shelves import shelf_file_faulty
from .console import CLEAN, Progress, Tally, show_diagnostics
from .failures import own_mistakes
from .inputs import Input
from .shelves.folders import FolderShelf
from .shelves.listing import ShelfDamaged
from .shelves.locking import locked_sources, open_lock

if TYPE_CHECKING:
    from ..drafting.washed.model import Measured
    from ..pipeline import CompiledBlock
    from ..planning import Cutting, PlannedQuilt
    from ..quilt.model import Quilt


NOT_FOUND: Final = ("block-unknown", "version-unknown")
"""What is said of a used block that no shelf has: it may stand in a file with a mistake."""


@dataclass(frozen=True, slots=True)
class Compiled:
    """A file's blocks and quilts, none where it has an error; all there is to say; the sources it is said of.

    `planned` has the same quilts with their plans, where planning was asked for.
    """

    name: str
    blocks: tuple[CompiledBlock, ...]
    diagnostics: tuple[Diagnostic, ...]
    sources: Mapping[str, Source]
    quilts: tuple[Quilt, ...] = ()
    planned: tuple[PlannedQuilt, ...] = ()
    measured: tuple[Measured, ...] = ()

    @property
    def source(self) -> Source:
        """The file's own text."""
        return self.sources[self.name]

    @property
    def own_blocks(self) -> tuple[CompiledBlock, ...]:
        """The blocks that the file itself holds, without those it uses from elsewhere."""
        return tuple(each for each in self.blocks if not each.from_elsewhere)


def compile_input(given: Input, shelf: FolderShelf, cutting: Cutting | None = None) -> Compiled:
    """The input compiled, its quilts planned where `cutting` says how.

    What an earlier file needed of the shelf is let go first.
    """
    shelf.forget()
    try:
        data = given.read()
    except OSError as problem:
        said = file_unreadable(given.name, problem.strerror or "")
        return Compiled(given.name, (), (said,), {given.name: Source(given.name, "")})
    try:
        with own_mistakes(given.name):
            return _compile_bytes(given, data, shelf, cutting)
    except ShelfDamaged as damaged:
        sources = {given.name: Source(given.name, ""), damaged.source.name: damaged.source}
        return Compiled(given.name, (), damaged.said, sources)


def compile_alone(given: Input, shelf: FolderShelf, cutting: Cutting | None = None) -> tuple[Compiled, int]:
    """The one input of a command compiled, all there is to say of it shown; and the exit status so far."""
    tally, progress = Tally(), Progress(1)
    progress.doing(f"{given.name}: drafting")
    try:
        compiled = compile_input(given, shelf, cutting)
    finally:
        progress.clear()
    tally.add(compiled.diagnostics)
    show_diagnostics(compiled.diagnostics, compiled.sources, err=True)
    if tally.status() != CLEAN:
        click.echo(tally.summary(), err=True)
    return compiled, tally.status()


def _compile_bytes(given: Input, data: bytes, shelf: FolderShelf, cutting: Cutting | None) -> Compiled:
    from ..language.decode import read_source
    from ..pipeline import compile_file

    name, read = given.name, read_source(given.name, data)
    source = read.value or Source(name, "")
    if read.value is None or read.failed:
        return Compiled(name, (), in_order(read.diagnostics), {name: source})
    locked = open_lock(given, shelf)
    if locked.value is None:
        return Compiled(name, (), locked.diagnostics, {name: source, **locked_sources(locked.diagnostics)})
    outcome = compile_file(source, locked.value.shelf)
    said = read.diagnostics + outcome.diagnostics
    sources = {**shelf.sources, **locked.value.sources, name: source}
    if outcome.value is None or outcome.failed:
        if any(each.code in NOT_FOUND for each in said):
            said += tuple(shelf_file_faulty(each) for each in shelf.faults)
        return Compiled(name, (), in_order(said), sources)
    said += tuple(locked.value.said(name, outcome.value))
    if not source.text.isascii():
        from ..sheets.missing_letters import missing_letters

        said += missing_letters(source)
    quilts = outcome.value.quilts
    planned: Outcome[tuple[PlannedQuilt, ...]] = Outcome(())
    if cutting and quilts:
        from ..planning import plan_quilts

        planned = plan_quilts(quilts, outcome.value.assemblies, cutting)
    said = in_order(said + planned.diagnostics)
    if planned.value is None or planned.failed:
        return Compiled(name, (), said, sources)
    return Compiled(name, outcome.value.blocks, said, sources, quilts, planned.value, outcome.value.measured)
