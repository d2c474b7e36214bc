"""`piecewright compare`: what changed between two drafts of a block, and which templates may be kept."""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import partial
from typing import TYPE_CHECKING, Final

import click

from ...diagnostics.diagnostic import Diagnostic
from ...diagnostics.source import Source
from ...diagnostics.visible import accents_joined, visible
from ...words.phrases import one_of
from ..blocks import named, write_files
from ..choices import LengthChoice, ListChoice, dpi_option, each_once, open_shelf, out_option, shelf_option
from ..console import CLEAN, COMPLAINED, Tally, complain, say, show_diagnostics
from ..failures import own_mistakes
from ..inputs import Input, inputs_of, one_input
from ..naming import Names
from ..rewriting import read_text
from ..shelves.folders import FolderShelf
from ..shelves.locking import open_lock
from .show import FORMATS, Drawing, pictures_of, refuse_out_of_bounds

if TYPE_CHECKING:
    from ...cutting.comparison import Comparison
    from ...pipeline import CompiledBlock

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


@click.command("compare", short_help="Say what changed, and which templates to keep.", epilog=EXAMPLES)
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
    run = _Run(open_shelf(shelves))
    if only_check:
        run.check(inputs_of(files), since or "HEAD")
        return run.status()
    if len(files) > 2 or (len(files) == 2 and since):
        raise click.UsageError("Give two files, or one with --since.")
    sides = run.sides(files, since)
    if sides is None:
        return run.status()
    pairs, only_old, only_new = paired(*sides)
    comparisons = run.compared(pairs)
    if not comparisons:
        raise click.UsageError("No block of the one has the title of a block of the other.")
    _tell(comparisons, only_old, only_new, form)
    wanted = each_once(pictures)
    if wanted:
        drawings = _drawings(comparisons, float(size), out)
        for path in write_files(out, pictures_of(drawings, "compare", wanted, dpi)):
            click.echo(f"Wrote {path}.", err=form == "json")
    return CLEAN


def _tell(comparisons: list[Comparison], only_old: list[str], only_new: list[str], form: str) -> None:
    from ...sheets.reports.comparison_report import comparison_text, comparisons_record

    if form == "json":
        from json import dumps

        say(dumps(comparisons_record(comparisons, only_old, only_new)))
    else:
        parts = [comparison_text(each) for each in comparisons]
        parts += [f"{title}: only in the old one." for title in only_old]
        parts += [f"{title}: only in the new one." for title in only_new]
        say("\n\n".join(parts))
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


def paired(
    old: Sequence[CompiledBlock], new: Sequence[CompiledBlock]
) -> tuple[list[tuple[CompiledBlock, CompiledBlock]], list[str], list[str]]:
    """The blocks of one title, the newest version of each; and the titles that one side alone has."""
    before, after = _newest(old), _newest(new)
    if len(before) == len(after) == 1:
        return list(zip(before.values(), after.values(), strict=True)), [], []
    pairs = [(before[title], block) for title, block in after.items() if title in before]
    return (
        pairs,
        [title for title in before if title not in after],
        [title for title in after if title not in before],
    )


def _newest(blocks: Sequence[CompiledBlock]) -> dict[str, CompiledBlock]:
    found: dict[str, CompiledBlock] = {}
    for each in blocks:
        known = found.get(each.draft.title)
        if known is None or known.draft.version < each.draft.version:
            found[each.draft.title] = each
    return found


def _drawings(comparisons: Sequence[Comparison], size: float, out: str) -> list[Drawing]:
    from ...sheets.arrange.overlay import overlay_page

    names, drawings = Names(out), []
    for each in comparisons:
        old, new = each.old.draft, each.new.draft
        stem = f"{names.stem(new.title, new.version, 'compare')}-beside-v{old.version}"
        subject = f"versions {old.version} and {new.version}"
        drawings.append(
            Drawing(
                f"block '{named(new.title)}'",
                stem,
                new.title,
                new.maker,
                subject,
                partial(overlay_page, each, size),
            )
        )
    return drawings


@dataclass(slots=True)
class _Run:
    """One run of the command: what it reads, and how that went."""

    shelf: FolderShelf
    tally: Tally = field(default_factory=Tally)
    refused: bool = False

    def status(self) -> int:
        """The exit status."""
        return COMPLAINED if self.refused else self.tally.status()

    def sides(
        self, files: Sequence[str], since: str | None
    ) -> tuple[Sequence[CompiledBlock], Sequence[CompiledBlock]] | None:
        """The blocks before and after; None where a file has an error, which is shown."""
        new = self._named(files[-1])
        if new is None:
            return None
        if len(files) == 2:
            old = self._named(files[0])
        else:
            olders = _older_versions(new)
            if olders and since is None:
                return olders, new
            old = self._at(since or "HEAD", one_input(files[0]))
        return None if old is None else (old, new)

    def check(self, inputs: Sequence[Input], revision: str) -> None:
        """Says of every file whether outlines changed under one version since the revision."""
        from ..shelves.revisions import FileIsNew

        for given in inputs:
            new = self._compiled(given)
            try:
                old = self._at(revision, given) if new is not None else None
            except FileIsNew:
                continue
            if new is None or old is None:
                continue
            for each in self.compared(paired(old, new)[0]):
                if each.unversioned:
                    self.refused = True
                    complain(f"{given.name}: {unversioned_text(each)}")

    def compared(self, pairs: Sequence[tuple[CompiledBlock, CompiledBlock]]) -> list[Comparison]:
        """Every pair compared."""
        from ...cutting.comparison import Side
        from ...cutting.comparison import compare as compare_sides

        made = []
        for old, new in pairs:
            with own_mistakes(f"block '{named(new.draft.title)}'"):
                made.append(compare_sides(Side(old.draft, old.templates), Side(new.draft, new.templates)))
        return made

    def _named(self, name: str) -> Sequence[CompiledBlock] | None:
        """The blocks of a file, or the one block of that title and version here and on the shelves."""
        title, found, version = name.rpartition("@")
        if os.path.exists(name) or not found or not version.isdecimal():
            return self._compiled(one_input(name))
        self.shelf.forget()
        called = self.shelf.find(accents_joined(title), "")
        wanted = [each for each in called if each.version == int(version)]
        if not wanted:
            known = one_of([str(each) for each in sorted({each.version for each in called})], "and")
            there = f"There are versions {known}." if called else "There is no block of that title."
            raise click.UsageError(f"'{visible(name)}' is neither a file nor on a shelf. {there}")
        from ...pipeline import compile_file

        block = wanted[0]
        with own_mistakes(f"block '{named(title)}'"):
            made = compile_file(block.source, self.shelf)
        if made.value is None or made.failed:
            self._give_up(made.diagnostics, block.source.name, block.source)
            return None
        return [each for each in made.value.blocks if each.draft.origin == block.block.title.span]

    def _compiled(self, given: Input) -> Sequence[CompiledBlock] | None:
        """The file's blocks as they are; of a quilt, those that it uses too."""
        self.shelf.forget()
        read = read_text(given)[1]
        locked = open_lock(given, self.shelf)
        if locked.value is None:
            self._give_up(locked.diagnostics, given.name, None)
            return None
        from ...pipeline import compile_file

        shelf = locked.value.shelf
        with own_mistakes(given.name):
            made = read.then(lambda source: compile_file(source, shelf))
        if made.value is None or made.failed:
            self._give_up(made.diagnostics, given.name, read.value)
            return None
        return made.value.blocks if made.value.quilts else _own(made.value.blocks)

    def _at(self, revision: str, given: Input) -> Sequence[CompiledBlock] | None:
        """The file's blocks as they were at a revision."""
        from ...language.decode import read_source
        from ...pipeline import compile_file
        from ..shelves.revisions import RevisionShelf, file_at

        if given.path is None:
            raise click.UsageError("git knows files, not standard input.")
        self.shelf.forget()
        data, beside = file_at(revision, given.path)
        name = f"{revision}:{given.path.name}"
        shelf = RevisionShelf(beside, revision, self.shelf)
        read = read_source(name, data)
        with own_mistakes(name):
            made = read.then(lambda source: compile_file(source, shelf))
        if made.value is None or made.failed:
            self._give_up(made.diagnostics, name, read.value)
            return None
        return made.value.blocks if made.value.quilts else _own(made.value.blocks)

    def _give_up(self, diagnostics: Sequence[Diagnostic], name: str, source: Source | None) -> None:
        """Shows why a file has no blocks to compare."""
        sources = {each.primary.span.source: Source(each.primary.span.source, "") for each in diagnostics}
        sources = {**sources, **self.shelf.sources, name: source or Source(name, "")}
        show_diagnostics(diagnostics, sources, err=True)
        self.tally.add(diagnostics)


def _own(blocks: Sequence[CompiledBlock]) -> list[CompiledBlock]:
    return [each for each in blocks if not each.from_elsewhere]


def _older_versions(blocks: Sequence[CompiledBlock]) -> list[CompiledBlock]:
    """Of every title of which a file has several versions, the newest but one."""
    newest = _newest(blocks)
    older = [each for each in blocks if each is not newest[each.draft.title]]
    return list(_newest(older).values())
