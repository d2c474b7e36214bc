"""`piecewright find`: the blocks on the shelves, by name and by what they are."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

import click

from ...diagnostics.diagnostic import errors_in
from ...door.finding import (
    METHODS,
    SYMMETRIES,
    angles_of,
    counts_of,
    found_in,
    found_told,
    grid_of,
    indexed_of,
    sizes_of,
    wanted_of,
)
from ...words.commands import find as words
from ..choices import ListChoice, Value, command, form_option, open_shelf, shelf_option, together
from ..console import CLEAN, COMPLAINED, Progress, complain, say, show_diagnostics

if TYPE_CHECKING:
    from ...door.finding import Indexed

FAULTS_TOLD: Final = 5  # files with mistakes that are named; more are counted
COUNTS: Final = Value("range", counts_of)

condition_options: Final = together(
    click.option("--family", "families", multiple=True, metavar="NAME", help=words.FAMILY),
    click.option("--grid", type=Value("grid", grid_of), metavar="ACROSSxDOWN", help=words.GRID),
    click.option("--pieces", type=COUNTS, metavar="RANGE", help=words.PIECES),
    click.option("--templates", type=COUNTS, metavar="RANGE", help=words.TEMPLATES),
    click.option(
        "--smallest-angle", type=Value("range", angles_of), metavar="RANGE", help=words.SMALLEST_ANGLE
    ),
    click.option("--size", type=Value("range", sizes_of), metavar="RANGE", help=words.SIZE),
    click.option("--methods", type=ListChoice(METHODS), default=(), help=words.METHODS),
    click.option("--symmetry", "symmetries", type=ListChoice(SYMMETRIES), default=(), help=words.SYMMETRY),
)
"""What blocks are told by. All that is given must hold."""


@command("find", help=words.HELP, epilog=words.EXAMPLES)
@click.argument("sought", nargs=-1, metavar="[WORD...]")
@condition_options
@form_option("table", "json", help=words.FORMAT)
@shelf_option
def find(sought: tuple[str, ...], form: str, shelves: tuple[str, ...], **conditions: Any) -> int:
    """The exit status, when the blocks are told."""
    indexed = indexed_of(open_shelf(shelves), Progress(1).doing)
    wanted = wanted_of(sought, conditions)
    say(found_told(found_in(indexed, wanted), indexed, form))
    return tell_faults(indexed)


def tell_faults(indexed: Indexed) -> int:
    """What is wrong on the shelves, on standard error; the exit status."""
    for fault in indexed.faults[:FAULTS_TOLD]:
        complain(words.left_out(fault.file, fault.line, fault.message))
    more = len(indexed.faults) - FAULTS_TOLD
    if more > 0:
        complain(words.more_left_out(more))
    show_diagnostics(indexed.diagnostics, indexed.sources, err=True)
    return COMPLAINED if errors_in(indexed.diagnostics) else CLEAN
