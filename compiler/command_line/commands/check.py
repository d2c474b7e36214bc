"""`piecewright check`: what is to be said about block and quilt files, and nothing made."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

import click

from ...door.choices import cutting_of
from ...door.compiling import compile_input
from ...words.commands import check as words
from ..choices import command, cutting_options, files_argument, form_option, open_shelf, shelf_option
from ..console import Form, Progress, Report
from ..inputs import inputs_of


@command("check", help=words.HELP, epilog=words.EXAMPLES)
@files_argument
@form_option("people", "short", "json", "github", help=words.FORMAT)
@click.option("--strict", is_flag=True, help=words.STRICT)
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
    """The exit status, when everything is said."""
    shelf, cutting = open_shelf(shelves), cutting_of(ruler, margin, buy)
    inputs = inputs_of(files, shelf)
    report, progress = Report(form), Progress(len(inputs))
    for given in inputs:
        with progress.file(given.name, report.tally):
            compiled = compile_input(given, shelf, cutting)
            progress.clear()
            report.add(compiled.diagnostics, compiled.sources)
    if report.tally.files or form == "json":
        report.end()
    return report.tally.status(strict=strict)
