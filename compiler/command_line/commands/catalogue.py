"""`piecewright catalogue`: the blocks on the shelves as pictures, to search in a browser and to print."""

from __future__ import annotations

from typing import Any, Final

import click

from ...door.blocks import write_files
from ...door.cataloguing import catalogue_files, entries_of
from ...door.finding import found_in, indexed_of, wanted_of
from ...failures import MachineFailed, own_mistakes
from ...words.commands import catalogue as words
from ..choices import ListChoice, command, each_once, open_shelf, out_option, paper_option, shelf_option
from ..console import Progress, say, say_wrote
from .find import condition_options, tell_faults

FORMATS: Final = ("html", "pdf")
MOST: Final = 3000  # blocks: a page of more is larger than browsers like


@command("catalogue", help=words.HELP, epilog=words.EXAMPLES)
@click.argument("sought", metavar="[WORD...]", nargs=-1)
@condition_options
@click.option(
    "--format", "formats", multiple=True, type=ListChoice(FORMATS), default=(FORMATS,), help=words.FORMAT
)
@paper_option(help=words.PAPER)
@click.option("--title", default=words.DEFAULT_TITLE, show_default=True, help=words.TITLE)
@out_option
@shelf_option
def catalogue(
    sought: tuple[str, ...],
    formats: tuple[tuple[str, ...], ...],
    paper: Any,
    title: str,
    out: str,
    shelves: tuple[str, ...],
    **conditions: Any,
) -> int:
    """The exit status, when the pictures are made."""
    shelf = open_shelf(shelves)
    indexed = indexed_of(shelf, Progress(1).doing)
    wanted = wanted_of(sought, conditions)
    found = found_in(indexed, wanted)
    status = tell_faults(indexed)
    if not found:
        raise MachineFailed(words.nothing_found())
    if len(found) > MOST:
        raise click.UsageError(words.too_many(len(found), MOST))
    with own_mistakes(words.SUBJECT):
        entries = entries_of(shelf, found, Progress(1).doing)
        files = catalogue_files(entries, each_once(formats), title, paper)
    say_wrote(write_files(out, files))
    say(words.shown(len(entries)))
    return status
