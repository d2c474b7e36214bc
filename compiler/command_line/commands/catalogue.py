"""`piecewright catalogue`: the blocks on the shelves as pictures, to search in a browser and to print."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Final

import click

from ...words.phrases import count_of
from ..blocks import write_files
from ..choices import ListChoice, each_once, open_shelf, out_option, shelf_option
from ..console import Progress, say
from ..failures import MachineFailed, own_mistakes
from ..stopping import held
from .find import condition_options, tell_faults, wanted_of

if TYPE_CHECKING:
    from ...sheets.catalogue.entries import Entry
    from ..shelves.folders import FolderShelf
    from ..shelves.indexing import Shelved

FORMATS: Final = ("html", "pdf")
MOST: Final = 3000  # blocks: a page of more is larger than browsers like
STEM: Final = "catalogue"

EXAMPLES: Final = """
\b
Examples:
  piecewright catalogue                              catalogue.html and catalogue.pdf of everything
  piecewright catalogue --format html --out site     the page alone, in the folder 'site'
  piecewright catalogue star --methods rotary        what 'piecewright find' finds with the same words
"""


@click.command("catalogue", short_help="Make a picture catalogue of the shelves.", epilog=EXAMPLES)
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
    type=click.Choice(["letter", "a4"], case_sensitive=False),
    default="letter",
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
    from ..shelves.indexing import index_shelves
    from ..shelves.kept import open_kept

    shelf = open_shelf(shelves)
    indexed = index_shelves(shelf, open_kept())
    wanted = wanted_of(words, conditions)
    found = [each for each in indexed.blocks if wanted.holds(each.facts)]
    status = tell_faults(indexed)
    if not found:
        raise MachineFailed("No block was found: there is nothing to show.")
    if len(found) > MOST:
        raise click.UsageError(f"{len(found):,} blocks are too many for one catalogue; it takes {MOST:,}.")
    with own_mistakes("the catalogue"):
        entries = _entries(shelf, found)
        files = _files(entries, each_once(formats), title, paper)
    for path in write_files(out, files):
        say(f"Wrote {path}.")
    say(f"It shows {count_of(len(entries), 'block')}.")
    return status


def _entries(shelf: FolderShelf, found: Sequence[Shelved]) -> list[Entry]:
    """The blocks drafted, each file once."""
    from ...sheets.catalogue.entries import Entry
    from ..shelves.index_work import drafts_of

    tasks = list(dict.fromkeys(each.task for each in found))
    progress, drafts = Progress(1), {}
    try:
        for number, made in enumerate(drafts_of(shelf.shelves, tasks)):
            progress.doing(f"drawing: {number + 1:,} of {len(tasks):,} files")
            drafts.update({(tasks[number], draft.title, draft.version): draft for draft in made})
    finally:
        progress.clear()
    keyed = (((each.task, each.facts.title, each.facts.version), each) for each in found)
    return [Entry(drafts[key], each.facts, each.shelf) for key, each in keyed if key in drafts]


def _files(
    entries: Sequence[Entry], formats: Sequence[str], title: str, paper: Any
) -> list[tuple[str, bytes]]:
    files = []
    if "html" in formats:
        from ...sheets.catalogue.html_catalogue import catalogue_html

        files.append((f"{STEM}.html", catalogue_html(entries, title)))
    if "pdf" in formats:
        from ...sheets.arrange.options import SheetOptions
        from ...sheets.catalogue.contact_sheets import contact_sheets
        from ...sheets.drawing.files import pdf_bytes

        document = contact_sheets(entries, title, SheetOptions(paper=paper))
        with held():
            files.append((f"{STEM}.pdf", pdf_bytes(document)))
    return files
