"""`piecewright draft`: a block measured off an old quilt, as it was drafted."""

from __future__ import annotations

import os
from typing import Final

import click

from ...door.blocks import write_files
from ...door.measured import drafted, report
from ...failures import own_mistakes
from ..choices import command, open_shelf, shelf_option
from ..console import CLEAN, say
from ..inputs import one_input
from ..one_input import compile_alone

EXAMPLES: Final = """
\b
Examples:
  piecewright draft old-vane.block                       the drafted block, to look at
  piecewright draft old-vane.block --out vane.block      the same as a file to keep
  piecewright draft old-vane.block --format text         each reading, each likely grid
"""


@command("draft", short_help="Draft a block that was measured off an old quilt.", epilog=EXAMPLES)
@click.argument("file", metavar="FILE", type=click.Path(allow_dash=True))
@click.option(
    "--format",
    "form",
    type=click.Choice(["block", "text", "json"]),
    default="block",
    show_default=True,
    help="The drafted block's text, a table of its readings, or both as JSON.",
)
@click.option(
    "--out",
    metavar="FILE",
    type=click.Path(dir_okay=False),
    help="Write the drafted block to this file, and say what was changed.",
)
@shelf_option
def draft(file: str, form: str, out: str | None, shelves: tuple[str, ...]) -> int:
    """Draft every 'washed' block in FILE from its readings, and print the file with the drafted ones.

    One shrinkage is fitted across and one down; each reading becomes the simplest drafting measure that fits
    it. What was changed, and which readings disagree, is said on standard error. All other words stay as they
    are; the readings are kept in remarks.
    """
    given = one_input(file)
    if out is not None and given.path is not None and os.path.exists(out) and os.path.samefile(out, file):
        raise click.BadParameter(
            "Write the draft to another file, and keep your readings.", param_hint="'--out'"
        )
    compiled, status = compile_alone(given, open_shelf(shelves))
    if status != CLEAN:
        return status
    if not compiled.measured:
        raise click.UsageError("There is no 'washed' block in what was read.")
    with own_mistakes(given.name):
        text, told = drafted(compiled), report(compiled, form if out is None or form != "block" else "text")
    if out is None:
        click.echo(told, nl=form != "block")
        return CLEAN
    [path] = write_files(os.path.dirname(out) or ".", [(os.path.basename(out), text.encode())])
    say(told)
    if form != "json":
        say(f"\nWrote {path}.")
    return CLEAN
