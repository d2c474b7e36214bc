"""`piecewright check`: what is to be said about block and quilt files, and nothing made."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import Any, Final, Literal

import click

from ...diagnostics.diagnostic import Diagnostic
from ...diagnostics.source import Source
from ...door.choices import cutting_of
from ...door.compiling import compile_input
from ...failures import OwnMistake
from ..choices import command, cutting_options, open_shelf, shelf_option
from ..console import Progress, Tally, complain, show_diagnostics
from ..inputs import inputs_of

EXAMPLES: Final = """
\b
Examples:
  piecewright check vane.block              what is wrong, with the words that caused it
  piecewright check quilt-blocks            every file of a folder
  piecewright check . --format short        one line for each thing said
  piecewright check . --strict              warnings count as errors
"""

Form = Literal["people", "short", "json", "github"]


@command("check", short_help="Say what is wrong with blocks and quilts.", epilog=EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="FILE|FOLDER...", type=click.Path(allow_dash=True))
@click.option(
    "--format",
    "form",
    type=click.Choice(["people", "short", "json", "github"]),
    default="people",
    show_default=True,
    help="With the lines and carets, one short line each, JSON, or GitHub's annotation lines.",
)
@click.option("--strict", is_flag=True, help="Warnings, too, make the exit status 1.")
@cutting_options
@shelf_option
def check(
    files: Sequence[str],
    form: Form,
    strict: bool,
    ruler: Fraction,
    margin: tuple[Fraction, Fraction] | None,
    buy: Any,
    shelves: tuple[str, ...],
) -> int:
    """Say what is wrong with every block and quilt in FILE, and make nothing.

    A quilt is laid out and its cutting planned, to say whether there is cloth enough. A FOLDER stands for
    every .block and .quilt file in it, and '-' for standard input.
    """
    inputs, cutting = inputs_of(files), cutting_of(ruler, margin, buy)
    shelf, tally, progress = open_shelf(shelves), Tally(), Progress(len(inputs))
    listed = JsonList() if form == "json" else None
    for given in inputs:
        progress.next_file()
        progress.doing(given.name)
        try:
            compiled = compile_input(given, shelf, cutting)
        except OwnMistake as problem:
            tally.own_mistakes += 1
            progress.clear()
            complain(str(problem))
            continue
        finally:
            progress.clear()
        tally.add(compiled.diagnostics)
        if listed:
            listed.add(compiled.diagnostics, compiled.sources)
        elif form != "json":
            show_diagnostics(compiled.diagnostics, compiled.sources, err=False, form=form)
    if listed:
        listed.close()
    elif form == "people" and tally.files:
        click.echo(tally.summary())
    return tally.status(strict=strict)


class JsonList:
    """A JSON list written as it grows, so that a long run keeps nothing."""

    def __init__(self) -> None:
        self._opening = "["

    def add(self, diagnostics: Iterable[Diagnostic], sources: Mapping[str, Source]) -> None:
        """One record a line."""
        from ...diagnostics.as_json import as_json

        for each in diagnostics:
            click.echo(f"{self._opening}\n{as_json(each, sources)}", nl=False)
            self._opening = ","

    def close(self) -> None:
        """The end of the list; `[]` where nothing was said."""
        click.echo("[]" if self._opening == "[" else "\n]")
