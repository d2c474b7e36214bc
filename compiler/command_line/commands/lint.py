"""`piecewright lint`: habits of good pattern files, told, silenced and mended."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import click

from ...diagnostics.source import Source
from ...door.inputs import Input
from ...door.linting import Linter, check_names
from ...door.rewriting import bytes_like, read_text, rewrite
from ...failures import own_mistakes
from ...words.commands import lint as words
from ..choices import command, files_argument, form_option, open_shelf, shelf_option
from ..console import Form, Progress, Report, say
from ..inputs import inputs_of


def _listed(ctx: click.Context, _: click.Parameter, wanted: bool) -> None:
    """Every check in a line, and the end of the run."""
    if not wanted or ctx.resilient_parsing:
        return
    from ...words.catalogue.codes import catalogue

    for name in check_names():
        say(f"{name:21} {catalogue()[name].title}")
    ctx.exit(0)


@command("lint", help=words.HELP, epilog=words.EXAMPLES)
@files_argument
@click.option("--mend", is_flag=True, help=words.MEND)
@click.option("--only", "only", multiple=True, metavar="NAME", help=words.ONLY)
@click.option("--allow", "allowed", multiple=True, metavar="NAME", help=words.ALLOW)
@form_option("people", "short", "json", "github", help=words.FORMAT)
@click.option("--list", is_flag=True, is_eager=True, expose_value=False, callback=_listed, help=words.LIST)
@shelf_option
def lint(
    files: Sequence[str],
    mend: bool,
    only: tuple[str, ...],
    allowed: tuple[str, ...],
    form: Form,
    shelves: tuple[str, ...],
) -> int:
    """The exit status, when everything is said."""
    names = check_names()
    for name in (*only, *allowed):
        if name not in names:
            raise click.UsageError(words.check_unknown(name[:40]))
    inputs = inputs_of(files)
    run = _Run(Linter(open_shelf(shelves), only, allowed), Report(form))
    progress = Progress(len(inputs))
    for given in inputs:
        with progress.file(given.name, run.report.tally):
            run.lint(given, mend, progress)
    return run.end()


@dataclass(slots=True)
class _Run:
    """One run of the command."""

    linter: Linter
    report: Report
    mended: int = 0

    def lint(self, given: Input, mend: bool, progress: Progress) -> None:
        """Says what could be better in one file, after mending what can be where that is asked."""
        data, read = read_text(given)
        if read.value is None or read.failed:
            progress.clear()
            self.report.add(read.diagnostics, {given.name: Source(given.name, "")})
            return
        with own_mistakes(given.name):
            source = read.value
            said, sources, outlines = self.linter.said_of(given, source)
            if mend and given.path is not None:
                source, said, count = self.linter.mend(given, source, said, outlines)
                self.mended += count
                if source != read.value:
                    rewrite(given.path, bytes_like(source.text, data))
        progress.clear()
        self.report.add(said, {**sources, given.name: source})

    def end(self) -> int:
        """The exit status, after a summary."""
        if self.mended and self.report.form == "people":
            say(words.mended(self.mended))
        self.report.end("habits")
        return self.report.tally.status(strict=True)
