"""What was compiled: what there is to say of it, its blocks and quilts, and files made of them."""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, Unpack

from .blocks import BlockChoice
from .choices import Choices, Chosen, all_among, understood
from .compiling import Compiled, compile_input, open_shelves
from .documents import PARTS, Wanted
from .drawn_files import Job, Subject, block_subject, files_of, quilt_subject, subjects_of
from .inputs import Input, inputs_of, one_input
from .messages import CompileError, Message, message_of
from .one_file import (
    Maker,
    dpi_known,
    formats_known,
    write_one,
    written,
)
from .records.block import BlockRecord, block_of
from .records.quilt import QuiltRecord, quilt_of
from .records.reports import whole_report

if TYPE_CHECKING:
    from ..pipeline import CompiledBlock

Place = str | os.PathLike[str]


def compile_text(
    text: str, name: str = "text", *, shelves: Sequence[Place] = (), **choices: Unpack[Choices]
) -> Work:
    """The blocks and quilts in a text. `name` is what places in it are called.

    `shelves` are folders of blocks that the text may use, before the library that ships. Of a text with
    mistakes there is no block: `work.diagnostics` says why. ValueError where a choice is none.
    """
    data = text.encode("utf-8", "surrogatepass")
    return _compiled([Input(name, None, lambda: data)], shelves, choices)


def compile_file(path: Place, *, shelves: Sequence[Place] = (), **choices: Unpack[Choices]) -> Work:
    """The blocks and quilts in a file, which may use blocks in files beside it; with a lock beside the file,
    those that it pins. ValueError where there is no such file."""
    return _compiled([one_input(os.fspath(path))], shelves, choices)


def compile_folder(path: Place, *, shelves: Sequence[Place] = (), **choices: Unpack[Choices]) -> Work:
    """The blocks and quilts in every .block and .quilt file of a folder, and of folders within it, in order.
    ValueError where it has none."""
    return _compiled(inputs_of([os.fspath(path)]), shelves, choices)


@dataclass(frozen=True, kw_only=True)
class Block(BlockRecord):
    """A block that was compiled, of which files can be made."""

    _maker: Maker = field(repr=False, compare=False)

    def write(
        self, path: Place, *, parts: Sequence[str] = (), booklet: bool = False, dpi: int = 300
    ) -> list[Path]:
        """Writes the block's sheets, its booklet, or parts of it: see `Work.write`."""
        return write_one(path, [self._maker], lambda: whole_report([self], ()), (parts, booklet, dpi))


@dataclass(frozen=True, kw_only=True)
class Quilt(QuiltRecord):
    """A quilt in one colourway that was compiled and planned, of which files can be made."""

    _maker: Maker = field(repr=False, compare=False)

    def write(
        self, path: Place, *, parts: Sequence[str] = (), booklet: bool = False, dpi: int = 300
    ) -> list[Path]:
        """Writes the quilt's sheets, its booklet, or parts of it: see `Work.write`."""
        return write_one(path, [self._maker], lambda: whole_report((), [self]), (parts, booklet, dpi))


class Work:
    """What was compiled. Files with errors have neither blocks nor quilts in it."""

    def __init__(self, compiled: Sequence[Compiled], chosen: Chosen) -> None:
        self._compiled, self._chosen = compiled, chosen
        self._choice = BlockChoice(chosen.titles)

    @cached_property
    def diagnostics(self) -> tuple[Message, ...]:
        """All there is to say, file by file, in the order of places."""
        return tuple(message_of(said, each.sources) for each in self._compiled for said in each.said)

    @property
    def ok(self) -> bool:
        """Whether there is no error."""
        return all(each.severity != "error" for each in self.diagnostics)

    @cached_property
    def blocks(self) -> tuple[Block, ...]:
        """The blocks that were asked for: those of each file, then those that it uses from elsewhere."""
        return tuple(
            Block(
                **vars(block_of(each, file.cutting.ruler)),
                _maker=self._maker(block_subject(each, file.name, file.cutting), file),
            )
            for file in self._compiled
            for each in self._choice.choose(file.blocks)
        )

    @cached_property
    def quilts(self) -> tuple[Quilt, ...]:
        """The quilts, each colourway one."""
        return tuple(
            Quilt(
                **vars(quilt_of(each)),
                _maker=self._maker(quilt_subject(each, file.name, file.cutting), file),
            )
            for file in self._compiled
            for each in file.planned
        )

    @property
    def record(self) -> dict[str, Any]:
        """All of it as `explain --format json` has it."""
        return whole_report(self.blocks, self.quilts)

    def write(
        self, path: Place, *, parts: Sequence[str] = (), booklet: bool = False, dpi: int = 300
    ) -> list[Path]:
        """Writes what the ending of `path` says, and returns the paths written.

        `.pdf`: the sheets of templates; of a quilt, with picture, supplies, counts and cutting. `.svg` and
        `.png`: the same, a file a page (`vane-page-1.svg`) where there is more than one. `.html`: the booklet
        as a page for phones. `.json`: every number. With `booklet`, the booklet in place of the sheets; with
        `parts`, those parts of either. A file that has a quilt makes the quilt, unless blocks were asked
        for. Where several blocks or quilts are made, each file bears its title as well. All files are
        written, or none: CompileError where there is an error, ValueError for an ending or a part that there
        is not, MachineFailed where the disk or the folder does not let us.
        """
        self._refuse_errors()
        return write_one(path, self._makers(), lambda: self.record, (parts, booklet, dpi))

    def write_all(
        self,
        folder: Place = ".",
        *,
        formats: Sequence[str] = ("pdf",),
        parts: Sequence[str] = (),
        booklet: bool = False,
        tables: bool = False,
        dpi: int = 300,
    ) -> list[Path]:
        """Writes what `piecewright build` does, under names that follow from titles; returns the paths.

        `formats`: 'pdf', 'png', 'svg', and for booklets 'html'. `tables`: a quilt's numbers, too, as CSV and
        as JSON. The folder is made where it is not there yet.
        """
        self._refuse_errors()
        wanted = Wanted(self._chosen.options, self._chosen.sewing, all_among(parts, PARTS), booklet)
        job = Job(wanted, formats_known(formats, booklet), os.fspath(folder), dpi_known(dpi), tables)
        files = files_of(job, (each.subject for each in self._makers()))
        return written(folder, files, [each.sources for each in self._compiled])

    @property
    def own_blocks(self) -> list[CompiledBlock]:
        """The compiler's own blocks, those that were asked for, without those from elsewhere."""
        return [each for file in self._compiled for each in self._choice.choose(file.own_blocks)]

    def _refuse_errors(self) -> None:
        if not self.ok:
            raise CompileError(self.diagnostics)

    def _maker(self, subject: Subject, file: Compiled) -> Maker:
        return Maker(subject, self._chosen, file.sources)

    def _makers(self) -> list[Maker]:
        """What makes the documents of each quilt, or of each block of a file that has none."""
        makers = []
        for file in self._compiled:
            quilts = () if self._choice.given else file.planned
            blocks = [] if quilts else self._choice.choose(file.own_blocks)
            makers += [self._maker(each, file) for each in subjects_of(file, quilts, blocks)]
        return makers


def _compiled(inputs: Iterable[Input], shelves: Sequence[Place], choices: Choices) -> Work:
    chosen, shelf = understood(choices), open_shelves(shelves)
    files = [compile_input(each, shelf, chosen.cutting) for each in inputs]
    work = Work(files, chosen)
    if work.ok and chosen.titles:
        asked = BlockChoice(chosen.titles)
        for each in files:
            asked.choose(each.blocks)
        asked.refuse_unmet()
    return work
