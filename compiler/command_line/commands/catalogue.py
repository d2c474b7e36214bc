"""`piecewright catalogue`: the blocks on the shelves as pictures, to search in a browser and to print."""

from __future__ import annotations

from typing import Any, Final

import click

from ...door.blocks import write_files
from ...door.cataloguing import catalogue_files, entries_of
from ...door.choices import PAPERS
from ...door.finding import found_in, indexed_of, wanted_of
from ...failures import MachineFailed, own_mistakes
from ...words.phrases import count_of
from ..choices import ListChoice, command, each_once, open_shelf, out_option, shelf_option
from ..console import Progress, say
from .find import condition_options, tell_faults

FORMATS: Final = ("html", "pdf")
MOST: Final = 3000  # blocks: a page of more is larger than browsers like

EXAMPLES: Final = """
\b
Examples:
  piecewright catalogue                              catalogue.html and catalogue.pdf of everything
  piecewright catalogue --format html --out site     the page alone, in the folder 'site'
  piecewright catalogue star --methods rotary        what 'piecewright find' finds with the same words
"""


@command("catalogue", short_help="Make a picture catalogue of the shelves.", epilog=EXAMPLES)
@click.argument("words", nargs=-1, metavar="[WORD...]")
@condition_options
@click.option(
    "--format",
    "formats",
    multiple=True,
    type=ListChoice(FORMATS),
    default=(FORMATS,),
    help="A page of HTML to search in, sheets to print as PDF; both with a comma.  [default: both]",
)
@click.option(
    "--paper",
    type=click.Choice(PAPERS, case_sensitive=False),
    default=PAPERS[0],
    show_default=True,
    help="Paper of the PDF.",
)
@click.option("--title", default="Catalogue of blocks", show_default=True, help="What stands at its head.")
@out_option
@shelf_option
def catalogue(
    words: tuple[str, ...],
    formats: tuple[tuple[str, ...], ...],
    paper: Any,
    title: str,
    out: str,
    shelves: tuple[str, ...],
    **conditions: Any,
) -> int:
    """Make a picture catalogue of the blocks on your shelves and in the library, or of those that are found.

    The HTML page needs no network and no other file: open it, and search by name, family and more. The PDF
    has twenty pictures a page, and a list of every name with the pages it is on.
    """
    shelf = open_shelf(shelves)
    indexed = indexed_of(shelf, Progress(1).doing)
    wanted = wanted_of(words, conditions)
    found = found_in(indexed, wanted)
    status = tell_faults(indexed)
    if not found:
        raise MachineFailed("No block was found: there is nothing to show.")
    if len(found) > MOST:
        raise click.UsageError(f"{len(found):,} blocks are too many for one catalogue; it takes {MOST:,}.")
    with own_mistakes("the catalogue"):
        entries = entries_of(shelf, found, Progress(1).doing)
        files = catalogue_files(entries, each_once(formats), title, paper)
    for path in write_files(out, files):
        say(f"Wrote {path}.")
    say(f"It shows {count_of(len(entries), 'block')}.")
    return status
