"""`piecewright resize`: at which sizes a block is cut by the ruler, and the block at another size."""

from __future__ import annotations

import os
from fractions import Fraction
from typing import Final

import click

from ...diagnostics.source import Source
from ...door.blocks import BlockChoice, write_files
from ...door.resizing import faults_of, outermost, report, resized
from ...failures import own_mistakes
from ..choices import LengthChoice, RulerChoice, block_option, command, open_shelf, shelf_option
from ..console import CLEAN, COMPLAINED, say, show_diagnostics
from ..inputs import one_input
from ..one_input import compile_alone

LEAST: Final = Fraction(1)  # inches: smaller blocks are all allowance
MOST: Final = Fraction(120)  # inches: a quilt of one block

EXAMPLES: Final = """
\b
Examples:
  piecewright resize vane.block                             sizes cut by the ruler, first
  piecewright resize vane.block --to 9in                    what happens at 9in
  piecewright resize vane.block --to 9in --out vane9.block  the block file at that size
"""


@command("resize", short_help="Say which sizes suit a block, and draft it at another.", epilog=EXAMPLES)
@click.argument("file", metavar="FILE", type=click.Path(allow_dash=True))
@click.option(
    "--to",
    type=LengthChoice("9in or 24cm"),
    metavar="LENGTH",
    help="The width wanted, finished; the height follows in proportion.",
)
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "json", "block"]),
    default="text",
    show_default=True,
    help="To read, as JSON, or (with --to) the block file itself.",
)
@click.option(
    "--out",
    metavar="FILE",
    type=click.Path(dir_okay=False),
    help="Write the block at the size of --to to this file.",
)
@click.option(
    "--ruler",
    type=RulerChoice(),
    default="1/8in",
    show_default=True,
    help="What the marks on your ruler are apart.",
)
@block_option
@shelf_option
def resize(
    file: str,
    to: Fraction | None,
    form: str,
    out: str | None,
    ruler: Fraction,
    titles: tuple[str, ...],
    shelves: tuple[str, ...],
) -> int:
    """Say at which sizes all cuts of a block lie on the ruler, and what happens at the size of --to.

    Everything drafted scales; seam allowances, trims and dots stay. Blocks that others in FILE use are not
    resized themselves: they fill their cells at any size. --block chooses one block of several.
    """
    if to is None and (out is not None or form == "block"):
        raise click.UsageError("Say with --to how large the block is to be.")
    if to is not None and not LEAST <= to <= MOST:
        raise click.BadParameter("A block is from 1in to 120in wide.", param_hint="'--to'")
    given, choice, shelf = one_input(file), BlockChoice(titles), open_shelf(shelves)
    compiled, status = compile_alone(given, shelf)
    if status != CLEAN:
        return status
    blocks = choice.choose(compiled.own_blocks if choice.given else outermost(compiled))
    choice.refuse_unmet()
    if not blocks:
        raise click.UsageError("There is no block in what was read.")
    with own_mistakes(given.name):
        text = resized(compiled, blocks, to) if to is not None else ""
        source = Source(given.name, text)
        faults = faults_of(source, shelf) if text else []
        show_diagnostics(faults, {**shelf.sources, source.name: source}, err=True)
        if faults:
            return COMPLAINED
        told = text if form == "block" else report(blocks, to, ruler, form)
    if out is None:
        click.echo(told, nl=form != "block")
        return CLEAN
    [path] = write_files(os.path.dirname(out) or ".", [(os.path.basename(out), text.encode())])
    say(told if form == "json" else f"{told if form == 'text' else ''}\n\nWrote {path}.".lstrip())
    return CLEAN
