"""`piecewright fmt`: files laid out in the house style."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import unified_diff
from typing import Final

import click

from ...diagnostics.diagnostic import Severity
from ...diagnostics.source import Source
from ...diagnostics.visible import visible
from ...door.rewriting import bytes_like, laid_out, read_text, rewrite
from ...failures import own_mistakes
from ...words.phrases import count_of, one_of
from ..choices import command
from ..console import COMPLAINED, Tally, say, show_diagnostics
from ..inputs import Input, inputs_of

EXAMPLES: Final = """
\b
Examples:
  piecewright fmt vane.block           lay the file out anew
  piecewright fmt .                    every block and quilt file of the folder
  piecewright fmt --check .            name the files that are not; change nothing
  piecewright fmt --diff vane.block    show what would change; change nothing
  piecewright fmt - < vane.block       from standard input to standard output
"""


@command("fmt", short_help="Lay files out in the house style.", epilog=EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="FILE|FOLDER...", type=click.Path(allow_dash=True))
@click.option(
    "--check",
    "only_check",
    is_flag=True,
    help="Change nothing: name the files that would change; status 1 where there are any.",
)
@click.option("--diff", "show_diff", is_flag=True, help="Change nothing: show the lines that would change.")
def fmt(files: Sequence[str], only_check: bool, show_diff: bool) -> int:
    """Lay out the text of every FILE in the house style, and change nothing that it says.

    Blanks, line ends and how far lines are indented change; words, remarks and the order of statements stay.
    The first line gets its edition where it has none. A file with a mistake is left as it is. A FOLDER stands
    for every .block and .quilt file in it, and '-' for standard input, laid out on standard output.
    """
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
            faults = [each for each in outcome.diagnostics if each.severity is Severity.ERROR]
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
            say(f"{visible(given.name)} is not in the house style.")
        elif new != data and given.path is not None:
            rewrite(given.path, new)
            say(f"Laid out {visible(given.name)}.")

    def _tell_difference(self, source: Source, new: str) -> None:
        old, name = source.text.splitlines(), source.name
        for line in unified_diff(old, new.splitlines(), name, name, lineterm=""):
            click.echo(visible(line))

    def end(self) -> int:
        """The exit status, after a summary on standard error."""
        would = "would change" if self._only_check or self._show_diff else "laid out"
        parts = [
            f"{count_of(number, 'file')} {what}"
            for number, what in (
                (self._changed, would),
                (self._as_were, "already in the house style"),
                (self._faulty, "left alone for a mistake"),
            )
            if number
        ]
        click.echo(f"{one_of(parts, 'and')}.", err=True)
        refused = (self._only_check or self._show_diff) and self._changed
        return COMPLAINED if refused else self._tally.status()
