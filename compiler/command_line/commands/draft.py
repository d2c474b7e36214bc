"""`piecewright draft`: a block measured off an old quilt, as it was drafted."""

from __future__ import annotations

import os
from typing import Any

import click

from ...door.blocks import write_file
from ...door.choices import cutting_of
from ...door.measured import drafted, report
from ...failures import own_mistakes
from ...words.commands import draft as words
from ...words.commands.files import wrote
from ..choices import (
    command,
    file_argument,
    form_option,
    open_shelf,
    out_file_option,
    shelf_option,
    units_option,
)
from ..console import CLEAN, say
from ..inputs import one_input
from ..one_input import compile_alone


@command("draft", help=words.HELP, epilog=words.EXAMPLES)
@file_argument
@form_option("block", "text", "json", help=words.FORMAT)
@out_file_option(help=words.OUT)
@units_option
@shelf_option
def draft(file: str, form: str, out: str | None, units: Any, shelves: tuple[str, ...]) -> int:
    """The exit status, when the draft is printed or written."""
    given = one_input(file)
    if out is not None and given.path is not None and os.path.exists(out) and os.path.samefile(out, file):
        raise click.BadParameter(words.keep_readings(), param_hint="'--out'")
    compiled, status = compile_alone(given, open_shelf(shelves), cutting_of(None, units))
    if status != CLEAN:
        return status
    if not compiled.measured:
        raise click.UsageError(words.nothing_measured())
    with own_mistakes(given.name):
        text, told = drafted(compiled), report(compiled, form if out is None or form != "block" else "text")
    if out is None:
        click.echo(told, nl=form != "block")
        return CLEAN
    path = write_file(out, text.encode())
    say(told)
    if form != "json":
        say(f"\n{wrote(path)}")
    return CLEAN
