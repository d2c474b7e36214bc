"""`piecewright resize`: at which sizes a block is cut by the ruler, and the block at another size."""

from __future__ import annotations

from fractions import Fraction

import click

from ...diagnostics.source import Source
from ...door.blocks import BlockChoice, write_file
from ...door.resizing import faults_of, outermost, report, resized, width_of
from ...failures import own_mistakes
from ...words.commands import resize as words
from ...words.commands.asked import no_block
from ...words.commands.files import wrote
from ..choices import (
    Value,
    block_option,
    command,
    file_argument,
    form_option,
    open_shelf,
    out_file_option,
    ruler_option,
    shelf_option,
)
from ..console import CLEAN, COMPLAINED, say, show_diagnostics
from ..inputs import one_input
from ..one_input import compile_alone


@command("resize", help=words.HELP, epilog=words.EXAMPLES)
@file_argument
@click.option("--to", type=Value("length", width_of), metavar="LENGTH", help=words.TO)
@click.option("--title", metavar="TITLE", help=words.TITLE)
@form_option("text", "json", "block", help=words.FORMAT)
@out_file_option(help=words.OUT)
@ruler_option(help=words.RULER)
@block_option
@shelf_option
def resize(
    file: str,
    to: Fraction | None,
    title: str | None,
    form: str,
    out: str | None,
    ruler: Fraction,
    titles: tuple[str, ...],
    shelves: tuple[str, ...],
) -> int:
    """The exit status, when the sizes are told or the block is written."""
    if to is None and (out is not None or form == "block" or title is not None):
        raise click.UsageError(words.size_wanted())
    choice, shelf = BlockChoice(titles), open_shelf(shelves)
    given = one_input(file, shelf)
    compiled, status = compile_alone(given, shelf)
    if status != CLEAN:
        return status
    blocks = choice.choose(compiled.own_blocks if choice.given else outermost(compiled))
    choice.refuse_unmet()
    if not blocks:
        raise click.UsageError(no_block())
    with own_mistakes(given.name):
        text = resized(compiled, blocks, to, shelf, title) if to is not None else ""
        source = Source(given.name, text)
        faults = faults_of(source, shelf) if text else []
        show_diagnostics(faults, {**shelf.sources, source.name: source}, err=True)
        if faults:
            return COMPLAINED
        told = text if form == "block" else report(blocks, to, ruler, form)
    if out is None:
        click.echo(told, nl=form != "block")
        return CLEAN
    written = wrote(write_file(out, text.encode()))
    say(told if form == "json" else f"{told if form == 'text' else ''}\n\n{written}".lstrip())
    return CLEAN
