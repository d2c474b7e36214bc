"""`piecewright find`: the blocks on the shelves, by name and by what they are."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, Final

import click

from ...diagnostics.diagnostic import Severity
from ...door.finding import found_in, found_told, indexed_of, wanted_of
from ...words.phrases import count_of
from ..choices import ListChoice, command, open_shelf, shelf_option
from ..console import CLEAN, COMPLAINED, Progress, complain, say, show_diagnostics
from ..ranges import ANGLES, COUNTS, SIZES, GridChoice

if TYPE_CHECKING:
    from ...door.finding import Indexed

METHODS: Final = ("rotary", "foundation")
SYMMETRIES: Final = ("quarter-turn", "half-turn", "third-turn", "mirror", "none")
FAULTS_TOLD: Final = 5  # files with mistakes that are named; more are counted

EXAMPLES: Final = """
\b
Examples:
  piecewright find                              every block on the shelves
  piecewright find star                         every block with a name in which a word begins so
  piecewright find --family nine-patch --pieces ..20 --methods rotary
  piecewright find --grid 4x4 --smallest-angle 45.. --symmetry quarter-turn,mirror
  piecewright find --size 6in..12in --format json
"""

Decorated = Callable[..., Any]


def condition_options(command: Decorated) -> Decorated:
    """What blocks are told by. All that is given must hold."""
    for option in (
        click.option(
            "--symmetry",
            "symmetries",
            type=ListChoice(SYMMETRIES),
            default=(),
            help="How it looks the same again, fabrics and all; several with commas.",
        ),
        click.option(
            "--methods",
            type=ListChoice(METHODS),
            default=(),
            help="Every template by the ruler; on paper foundations; both with a comma.",
        ),
        click.option("--size", type=SIZES, metavar="RANGE", help="Its longer side as written: 6in..12in."),
        click.option(
            "--smallest-angle", type=ANGLES, metavar="RANGE", help="Of its sharpest corner, in degrees: 30.."
        ),
        click.option("--templates", type=COUNTS, metavar="RANGE", help="How many templates: ..4"),
        click.option("--pieces", type=COUNTS, metavar="RANGE", help="How many pieces: 5..20"),
        click.option("--grid", type=GridChoice(), metavar="ACROSSxDOWN", help="Its grid: 4x4"),
        click.option(
            "--family",
            "families",
            multiple=True,
            metavar="NAME",
            help="Its family: four-patch, basket ... Repeatable: any of them.",
        ),
    ):
        command = option(command)
    return command


@command("find", short_help="Find blocks on the shelves.", epilog=EXAMPLES)
@click.argument("words", nargs=-1, metavar="[WORD...]")
@condition_options
@click.option(
    "--format",
    "form",
    type=click.Choice(["table", "json"]),
    default="table",
    show_default=True,
    help="A table for people, or JSON for other programs.",
)
@shelf_option
def find(words: tuple[str, ...], form: str, shelves: tuple[str, ...], **conditions: Any) -> int:
    """Find blocks on your shelves, those of PIECEWRIGHT_SHELVES, and in the library that ships.

    Every WORD must begin a word of one of the block's names. One block may have several names, and one name
    may be borne by several blocks: both are told. The first search of a large shelf takes a while.
    """
    indexed = indexed_of(open_shelf(shelves), Progress(1).doing)
    wanted = wanted_of(words, conditions)
    say(found_told(found_in(indexed, wanted), indexed, form))
    return tell_faults(indexed)


def tell_faults(indexed: Indexed) -> int:
    """What is wrong on the shelves, on standard error; the exit status."""
    for fault in indexed.faults[:FAULTS_TOLD]:
        complain(f"{fault.file}:{fault.line}: Left out, for it has a mistake: {fault.message}")
    more = len(indexed.faults) - FAULTS_TOLD
    if more > 0:
        complain(f"{count_of(more, 'more file')} left out: see 'piecewright check FOLDER'.")
    show_diagnostics(indexed.diagnostics, indexed.sources, err=True)
    faulty = any(each.severity is Severity.ERROR for each in indexed.diagnostics)
    return COMPLAINED if faulty else CLEAN
