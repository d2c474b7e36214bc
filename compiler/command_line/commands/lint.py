"""`piecewright lint`: habits of good pattern files, told, silenced and mended."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

import click

from ...diagnostics.diagnostic import Diagnostic, Severity
from ...diagnostics.source import Source
from ...diagnostics.visible import visible
from ...lint.linted import Linted
from ...words.phrases import count_of
from ..choices import open_shelf, shelf_option
from ..console import Progress, Tally, complain, say, show_diagnostics
from ..failures import OwnMistake, own_mistakes
from ..inputs import Input, inputs_of
from ..rewriting import bytes_like, read_text, rewrite
from ..shelves.folders import FolderShelf
from ..shelves.locking import locked_sources, open_lock
from .check import Form, JsonList

ROUNDS: Final = 10  # of mending: a mend may uncover another, as a point that only an idle point used

EXAMPLES: Final = """
\b
Examples:
  piecewright lint vane.block              what could be better
  piecewright lint --mend .                and mend what can be mended
  piecewright lint --list                  every check, in a line
  piecewright explain family-missing       what a check is for, with an example

\b
In a file, a remark silences a check for its line, or for the statement after it:
  # lint: allow size-off-ruler, family-missing
"""


def _listed(ctx: click.Context, _: click.Parameter, wanted: bool) -> None:
    """Every check in a line, and the end of the run."""
    if not wanted or ctx.resilient_parsing:
        return
    from ...lint.checks import NAMES
    from ...words.catalogue.codes import catalogue

    for name in NAMES:
        say(f"{name:21} {catalogue()[name].title}")
    ctx.exit(0)


@click.command("lint", short_help="Say what could be better, and mend it.", epilog=EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="FILE|FOLDER...", type=click.Path(allow_dash=True))
@click.option("--mend", is_flag=True, help="Apply the mends that there are; they change no outline.")
@click.option("--only", "only", multiple=True, metavar="NAME", help="This check alone. Repeatable.")
@click.option("--allow", "allowed", multiple=True, metavar="NAME", help="Every check but this. Repeatable.")
@click.option(
    "--format",
    "form",
    type=click.Choice(["people", "short", "json", "github"]),
    default="people",
    show_default=True,
    help="As for 'check'.",
)
@click.option(
    "--list",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=_listed,
    help="List the checks, and end.",
)
@shelf_option
def lint(
    files: Sequence[str],
    mend: bool,
    only: tuple[str, ...],
    allowed: tuple[str, ...],
    form: Form,
    shelves: tuple[str, ...],
) -> int:
    """Say what could be better in every FILE that has no error: what a maker, a shelf or a reader would miss.

    The exit status is 1 where anything is said. A FOLDER stands for every .block and .quilt file in it.
    """
    from ...lint.checks import NAMES

    for name in (*only, *allowed):
        if name not in NAMES:
            raise click.UsageError(f"There is no check '{visible(name[:40])}'; --list has them all.")
    inputs = inputs_of(files)
    run = _Run(open_shelf(shelves), only, allowed, form, JsonList() if form == "json" else None)
    progress = Progress(len(inputs))
    for given in inputs:
        progress.next_file()
        progress.doing(given.name)
        try:
            run.lint(given, mend, progress)
        except OwnMistake as problem:
            run.tally.own_mistakes += 1
            complain(str(problem))
        finally:
            progress.clear()
    return run.end()


@dataclass(slots=True)
class _Run:
    """One run of the command."""

    shelf: FolderShelf
    only: tuple[str, ...]
    allowed: tuple[str, ...]
    form: Form
    listed: JsonList | None
    tally: Tally = field(default_factory=Tally)
    mended: int = 0

    def lint(self, given: Input, mend: bool, progress: Progress) -> None:
        """Says what could be better in one file, after mending what can be where that is asked."""
        data, read = read_text(given)
        if read.value is None or read.failed:
            progress.clear()
            self._tell(read.diagnostics, {given.name: Source(given.name, "")})
            return
        with own_mistakes(given.name):
            source = read.value
            said, sources, outlines = self._said_of(given, source)
            if mend and given.path is not None:
                source, said = self._mend(given, source, said, outlines)
                if source != read.value:
                    rewrite(given.path, bytes_like(source.text, data))
        progress.clear()
        self._tell(said, {**sources, given.name: source})

    def _mend(
        self, given: Input, source: Source, said: tuple[Diagnostic, ...], outlines: list[str]
    ) -> tuple[Source, tuple[Diagnostic, ...]]:
        """The source with every mend, and what is left to say."""
        from ...lint.mending import mended

        for _ in range(ROUNDS):
            text, count = mended(source.text, said)
            if not count or any(each.severity is Severity.ERROR for each in said):
                break
            self.mended += count
            source = Source(source.name, text)
            said, _, after = self._said_of(given, source)
            assert after == outlines, "a mend has changed an outline"
        return source, said

    def _said_of(
        self, given: Input, source: Source
    ) -> tuple[tuple[Diagnostic, ...], Mapping[str, Source], list[str]]:
        """What there is to say, the sources it is said of, and the fingerprints of the file's own blocks:
        one from elsewhere goes with its `use`, where nothing calls it."""
        from ...drafting.fingerprint import fingerprint_of
        from ...language.parser import parse
        from ...lint.checks import lint
        from ...pipeline import compile_file

        self.shelf.forget()
        locked = open_lock(given, self.shelf)
        if locked.value is None:
            return locked.diagnostics, locked_sources(locked.diagnostics), []
        made = compile_file(source, locked.value.shelf)
        sources = {**self.shelf.sources, **locked.value.sources}
        file = parse(source).value
        if made.value is None or made.failed or file is None:
            return tuple(each for each in made.diagnostics if each.severity is Severity.ERROR), sources, []
        drafts = tuple(each.draft for each in made.value.blocks if not each.from_elsewhere)
        linted = Linted(source, file, drafts, made.value.choices, made.diagnostics)
        outlines = sorted(fingerprint_of(each) for each in drafts)
        return lint(linted, self.only, self.allowed), sources, outlines

    def _tell(self, said: Sequence[Diagnostic], sources: Mapping[str, Source]) -> None:
        self.tally.add(said)
        if self.listed:
            self.listed.add(said, sources)
        elif self.form != "json":
            show_diagnostics(said, sources, err=False, form=self.form)

    def end(self) -> int:
        """The exit status, after a summary."""
        if self.listed:
            self.listed.close()
        elif self.form == "people":
            if self.mended:
                say(f"{count_of(self.mended, 'place')} mended.")
            say(self.tally.summary("habits"))
        return self.tally.status(strict=True)
