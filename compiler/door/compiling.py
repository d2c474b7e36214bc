"""One input through every pass: its blocks, or what is wrong with it."""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Final

from ..diagnostics.diagnostic import Diagnostic, Outcome, errors_in, in_order
from ..diagnostics.source import Source
from ..failures import ShelfDamaged, own_mistakes
from ..measure.record import record
from ..shelves.folders import FolderShelf, library_folder
from ..shelves.locking import locked_sources, open_lock
from ..words.messages.files import file_unreadable
from ..words.messages.shelves import shelf_file_faulty
from ..words.say import INCHES, Say
from .choices import ToCut
from .inputs import Input, Titled

if TYPE_CHECKING:
    from ..drafting.rough import RoughDraft
    from ..drafting.washed.model import Measured
    from ..pipeline import CompiledBlock
    from ..planning import Cutting, PlannedQuilt
    from ..quilt.model import Quilt


__all__ = ["Compiled", "FolderShelf", "compile_input", "open_shelves"]

NOT_FOUND: Final = ("block-unknown", "version-unknown")
"""What is said of a used block that no shelf has: it may stand in a file with a mistake."""


@record
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
    told: Cutting | None = None

    @property
    def cutting(self) -> Cutting:
        """How its quilts are cut and told."""
        return self.told or ToCut().for_text("")

    @property
    def say(self) -> Say:
        """In which units it is told."""
        return self.told.say if self.told else INCHES

    @property
    def said(self) -> tuple[Diagnostic, ...]:
        """All there is to say, in its units."""
        return tuple(each.said(self.say) for each in self.diagnostics)

    @property
    def source(self) -> Source:
        """The file's own text."""
        return self.sources[self.name]

    @property
    def own_blocks(self) -> tuple[CompiledBlock, ...]:
        """The blocks that the file itself holds, without those it uses from elsewhere."""
        return tuple(each for each in self.blocks if not each.from_elsewhere)


def open_shelves(folders: Iterable[str | os.PathLike[str]]) -> FolderShelf:
    """The folders given, nearest first, then the library that ships."""
    return FolderShelf(dict.fromkeys(map(Path, folders)), library=library_folder())


def compile_input(given: Input, shelf: FolderShelf, cutting: ToCut | None = None) -> Compiled:
    """The input compiled, its quilts planned where `cutting` says how.

    What an earlier file needed of the shelf is let go first.
    """
    shelf.forget()
    if given.titled is not None:
        shelf.settle(given.name, given.titled.home)
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


def unfinished(given: Input, compiled: Compiled, shelf: FolderShelf) -> list[RoughDraft]:
    """The input's blocks in which an error was told, as far as they are sound."""
    from ..pipeline import rough_drafts

    locked = open_lock(given.file, shelf)
    with own_mistakes(given.name):
        lookup = locked.value.shelf if locked.value else shelf
        return rough_drafts(compiled.source, lookup, compiled.diagnostics)


def _compile_bytes(given: Input, data: bytes, shelf: FolderShelf, chosen: ToCut | None) -> Compiled:
    from ..language.decode import read_source
    from ..pipeline import compile_file

    name, read = given.name, read_source(given.name, data)
    source = read.value or Source(name, "")
    cutting = (chosen or ToCut()).for_text(source.text)
    if read.value is None or read.failed:
        return Compiled(name, (), in_order(read.diagnostics), {name: source})
    locked = open_lock(given.file, shelf)
    if locked.value is None:
        return Compiled(name, (), locked.diagnostics, {name: source, **locked_sources(locked.diagnostics)})
    outcome = compile_file(source, locked.value.shelf, given.maker)
    said = read.diagnostics + outcome.diagnostics
    if given.titled is not None:
        said += said_of_title(given.titled, shelf)
    sources = {**shelf.sources, **locked.value.sources, name: source}
    if outcome.value is None or errors_in(said):
        if any(each.code in NOT_FOUND for each in said):
            said += tuple(shelf_file_faulty(each) for each in shelf.faults)
        return Compiled(name, (), in_order(said), sources, told=cutting)
    said += tuple(locked.value.said(name, outcome.value))
    if not source.text.isascii():
        from ..sheets.missing_letters import missing_letters

        said += missing_letters(source)
    quilts = () if given.titled else outcome.value.quilts
    planned: Outcome[tuple[PlannedQuilt, ...]] = Outcome(())
    if chosen and quilts:
        from ..planning import plan_quilts

        planned = plan_quilts(quilts, outcome.value.assemblies, cutting)
    said = in_order(said + planned.diagnostics)
    if planned.value is None or planned.failed:
        return Compiled(name, (), said, sources, told=cutting)
    blocks, measured = outcome.value.blocks, outcome.value.measured
    if given.titled is not None:
        blocks = _block_alone(blocks, given.titled)
        measured = tuple(each for each in measured if each.block.title.span == blocks[0].draft.origin)
    return Compiled(name, blocks, said, sources, quilts, planned.value, measured, cutting)


def said_of_title(titled: Titled, shelf: FolderShelf) -> tuple[Diagnostic, ...]:
    """What there is to say of other blocks of the title and version that were asked for."""
    if not titled.twins:
        return ()
    from ..drafting.twins import said_of_twins

    block = titled.block
    return tuple(said_of_twins(block.block.title.span, block, titled.twins, shelf, set()))


def _block_alone(blocks: Sequence[CompiledBlock], meant: Titled) -> tuple[CompiledBlock, ...]:
    """The block that is meant, and those that it uses, as from elsewhere."""
    known = {(each.draft.title, each.draft.version): each for each in blocks}
    wanted = [meant.key]
    for each in wanted:
        wanted += [use for use in known[each].draft.uses if use in known and use not in wanted]
    first, *used = (known[each] for each in wanted)
    return first, *(replace(each, from_elsewhere=True) for each in used)
