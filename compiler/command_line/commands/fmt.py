"""`piecewright fmt`: files laid out in the house style."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import unified_diff

import click

from ...diagnostics.diagnostic import errors_in
from ...diagnostics.source import Source
from ...diagnostics.visible import visible
from ...door.inputs import Input
from ...door.rewriting import bytes_like, laid_out, read_text, rewrite
from ...failures import own_mistakes
from ...words.commands import fmt as words
from ..choices import command, files_argument
from ..console import COMPLAINED, Tally, say, show_diagnostics
from ..inputs import inputs_of


@command("fmt", help=words.HELP, epilog=words.EXAMPLES)
@files_argument
@click.option("--check", "only_check", is_flag=True, help=words.CHECK)
@click.option("--diff", "show_diff", is_flag=True, help=words.DIFF)
def fmt(files: Sequence[str], only_check: bool, show_diff: bool) -> int:
    """The exit status, when every file is laid out."""
    run = _Run(only_check, show_diff)
    for given in inputs_of(files):
        with own_mistakes(given.name):
            run.lay_out(given)
    return run.end()


class _Run:
    """What one run of the command does to each file, and how it ended."""

    def __init__(self, only_check: bool, show_diff: bool) -> None:
        self._only_check, self._show_diff = only_check, show_diff
        self._tally = Tally()
        self._changed = self._as_were = self._faulty = 0

    def lay_out(self, given: Input) -> None:
        """Lays out one file, or says what keeps it from being laid out."""
        data, read = read_text(given)
        outcome = read.then(laid_out)
        if outcome.value is None or read.value is None:
            faults = errors_in(outcome.diagnostics)
            show_diagnostics(faults, {given.name: read.value or Source(given.name, "")}, err=True)
            self._tally.add(faults)
            self._faulty += 1
            return
        new = bytes_like(outcome.value, data)
        self._changed += new != data
        self._as_were += new == data
        if self._show_diff:
            self._tell_difference(read.value, outcome.value)
        elif given.path is None and not self._only_check:
            click.echo(new, nl=False)
        elif new != data and self._only_check:
            say(words.would_change(given.name))
        elif new != data and given.path is not None:
            rewrite(given.path, new)
            say(words.changed(given.name))

    def _tell_difference(self, source: Source, new: str) -> None:
        old, name = source.text.splitlines(), source.name
        for line in unified_diff(old, new.splitlines(), name, name, lineterm=""):
            click.echo(visible(line))

    def end(self) -> int:
        """The exit status, after a summary on standard error."""
        only_told = self._only_check or self._show_diff
        counted = self._changed, self._as_were, self._faulty
        click.echo(words.summary(*counted, only_told=only_told), err=True)
        return COMPLAINED if only_told and self._changed else self._tally.status()
