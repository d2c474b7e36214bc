"""`piecewright compare`: what changed between two drafts of a block, and which templates may be kept."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING

import click

from ...door.blocks import write_files
from ...door.comparing import (
    NoBlocks,
    Reader,
    compared,
    comparisons_told,
    older_versions,
    overlays,
    paired,
)
from ...door.inputs import Input
from ...door.pictures import SHOWN_AS, picture_size, pictures_of
from ...failures import FileIsNew
from ...words.commands import compare as words
from ..choices import (
    ListChoice,
    Value,
    command,
    dpi_option,
    each_once,
    form_option,
    open_shelf,
    out_option,
    shelf_option,
)
from ..console import CLEAN, COMPLAINED, Tally, complain, say, say_wrote, show_diagnostics
from ..inputs import inputs_of, one_input, standard_input
from .show import refuse_too_many_dots

if TYPE_CHECKING:
    from ...door.comparing import Comparison, CompiledBlock


@command("compare", help=words.HELP, epilog=words.EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="[OLD] NEW", type=click.Path(allow_dash=True))
@click.option("--since", metavar="REVISION", help=words.SINCE)
@click.option("--check", "only_check", is_flag=True, help=words.CHECK)
@form_option("text", "json", help=words.FORMAT)
@click.option("--picture", "pictures", multiple=True, type=ListChoice(SHOWN_AS), help=words.PICTURE)
@click.option(
    "--size",
    type=Value("length", picture_size),
    default="5in",
    show_default=True,
    metavar="LENGTH",
    help=words.SIZE,
)
@out_option
@dpi_option(150)
@shelf_option
def compare(
    files: Sequence[str],
    since: str | None,
    only_check: bool,
    form: str,
    pictures: tuple[tuple[str, ...], ...],
    size: Fraction,
    out: str,
    dpi: int,
    shelves: tuple[str, ...],
) -> int:
    """The exit status, when what changed is told."""
    refuse_too_many_dots(size, dpi)
    run = _Run(Reader(open_shelf(shelves), standard_input))
    if only_check:
        run.check(inputs_of(files), since or "HEAD")
        return run.status()
    if len(files) > 2 or (len(files) == 2 and since):
        raise click.UsageError(words.two_files())
    sides = run.sides(files, since)
    if sides is None:
        return run.status()
    pairs, only_old, only_new = paired(*sides)
    comparisons = compared(pairs)
    if not comparisons:
        raise click.UsageError(words.no_common_title())
    _tell(comparisons, only_old, only_new, form)
    wanted = each_once(pictures)
    if wanted:
        drawings = overlays(comparisons, float(size), out)
        say_wrote(write_files(out, pictures_of(drawings, "compare", wanted, dpi)), err=form == "json")
    return CLEAN


def _tell(comparisons: list[Comparison], only_old: list[str], only_new: list[str], form: str) -> None:
    say(comparisons_told(comparisons, only_old, only_new, form))
    for each in comparisons:
        if each.unversioned:
            complain(unversioned_text(each))


def unversioned_text(comparison: Comparison, file: str = "") -> str:
    """What is to be said of outlines that changed under one version; in that file, where it is told."""
    return words.unversioned(comparison.new.draft.title, comparison.new.draft.version, file)


@dataclass(slots=True)
class _Run:
    """One run of the command: what it reads, and how that went."""

    reader: Reader
    tally: Tally = field(default_factory=Tally)
    refused: bool = False

    def status(self) -> int:
        """The exit status."""
        return COMPLAINED if self.refused else self.tally.status()

    def sides(
        self, files: Sequence[str], since: str | None
    ) -> tuple[Sequence[CompiledBlock], Sequence[CompiledBlock]] | None:
        """The blocks before and after; None where a file has an error, which is shown."""
        new = self._read(self.reader.named, files[-1])
        if new is None:
            return None
        if len(files) == 2:
            old = self._read(self.reader.named, files[0])
        else:
            olders = older_versions(new)
            if olders and since is None:
                return olders, new
            old = self._read(self.reader.at, since or "HEAD", one_input(files[0]))
        return None if old is None else (old, new)

    def check(self, inputs: Sequence[Input], revision: str) -> None:
        """Says of every file whether outlines changed under one version since the revision."""
        for given in inputs:
            new = self._read(self.reader.compiled, given)
            try:
                old = self._read(self.reader.at, revision, given) if new is not None else None
            except FileIsNew:
                continue
            if new is None or old is None:
                continue
            for each in compared(paired(old, new)[0]):
                if each.unversioned:
                    self.refused = True
                    complain(unversioned_text(each, given.name))

    def _read(
        self, read: Callable[..., Sequence[CompiledBlock]], *asked: object
    ) -> Sequence[CompiledBlock] | None:
        """The blocks read, or None, where a file has an error, which is shown."""
        try:
            return read(*asked)
        except NoBlocks as problem:
            show_diagnostics(problem.said, problem.sources, err=True)
            self.tally.add(problem.said)
            return None
