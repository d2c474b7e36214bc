"""`piecewright compare`: what changed between two drafts of a block, and which templates may be kept."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING, Final

import click

from ...door.blocks import named, write_files
from ...door.comparing import (
    NoBlocks,
    Reader,
    compared,
    comparisons_told,
    older_versions,
    overlays,
    paired,
)
from ...door.pictures import pictures_of
from ...failures import FileIsNew
from ..choices import (
    LengthChoice,
    ListChoice,
    command,
    dpi_option,
    each_once,
    open_shelf,
    out_option,
    shelf_option,
)
from ..console import CLEAN, COMPLAINED, Tally, complain, say, show_diagnostics
from ..inputs import Input, inputs_of, one_input, standard_input
from .show import FORMATS, refuse_out_of_bounds

if TYPE_CHECKING:
    from ...door.comparing import Comparison, CompiledBlock

EXAMPLES: Final = """
\b
Examples:
  piecewright compare old/vane.block vane.block      two files
  piecewright compare vane.block --since HEAD~1      the file, and as git had it before
  piecewright compare vane.block                     its two newest versions; else since git's last
  piecewright compare "Vane@1" "Vane@2"              two versions on your shelves
  piecewright compare vane.block --picture svg       both drafts upon each other
  piecewright compare --check *.block                no outline may change under one version
"""


@command("compare", short_help="Say what changed, and which templates to keep.", epilog=EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="[OLD] NEW", type=click.Path(allow_dash=True))
@click.option("--since", metavar="REVISION", help="Compare with the file as it was then; git is asked.")
@click.option(
    "--check",
    "only_check",
    is_flag=True,
    help="For any number of files: status 1 where outlines changed since the revision, HEAD unless "
    "--since says another, and the version did not.",
)
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "json"]),
    default="text",
    show_default=True,
    help="Lines to read, or JSON.",
)
@click.option(
    "--picture",
    "pictures",
    multiple=True,
    type=ListChoice(FORMATS),
    help="Draw both outlines upon each other, too; several kinds with commas.",
)
@click.option(
    "--size",
    type=LengthChoice(),
    default="5in",
    show_default=True,
    metavar="LENGTH",
    help="Longer side of the block in the picture, from 1/2in to 40in.",
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
    """Say what changed from OLD to NEW: which templates are the same, so that you keep your plastic, of which
    another number is cut, which are new or gone, and how far the outlines lie apart.

    OLD and NEW are files, or titles with a version as in 'Vane@2', found here and on the shelves. Blocks are
    compared by title; where each file has one block, those two. Nothing has to be set up for git.
    """
    refuse_out_of_bounds(size, dpi)
    run = _Run(Reader(open_shelf(shelves), standard_input))
    if only_check:
        run.check(inputs_of(files), since or "HEAD")
        return run.status()
    if len(files) > 2 or (len(files) == 2 and since):
        raise click.UsageError("Give two files, or one with --since.")
    sides = run.sides(files, since)
    if sides is None:
        return run.status()
    pairs, only_old, only_new = paired(*sides)
    comparisons = compared(pairs)
    if not comparisons:
        raise click.UsageError("No block of the one has the title of a block of the other.")
    _tell(comparisons, only_old, only_new, form)
    wanted = each_once(pictures)
    if wanted:
        drawings = overlays(comparisons, float(size), out)
        for path in write_files(out, pictures_of(drawings, "compare", wanted, dpi)):
            click.echo(f"Wrote {path}.", err=form == "json")
    return CLEAN


def _tell(comparisons: list[Comparison], only_old: list[str], only_new: list[str], form: str) -> None:
    say(comparisons_told(comparisons, only_old, only_new, form))
    for each in comparisons:
        if each.unversioned:
            complain(unversioned_text(each))


def unversioned_text(comparison: Comparison) -> str:
    """What is to be said of outlines that changed under one version."""
    new = comparison.new.draft
    return (
        f"The outlines of '{named(new.title)}' changed and its version did not: "
        f"write 'version {new.version + 1}'."
    )


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
                    complain(f"{given.name}: {unversioned_text(each)}")

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
