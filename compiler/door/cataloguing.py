"""The blocks on the shelves as pictures: a page to search in, sheets to print."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any, Final

from ..words.commands.files import drawing_files
from .stopping import held

if TYPE_CHECKING:
    from ..sheets.catalogue.entries import Entry
    from .compiling import FolderShelf
    from .finding import Shelved

STEM: Final = "catalogue"


def entries_of(
    shelf: FolderShelf, found: Sequence[Shelved], doing: Callable[[str], None] = lambda what: None
) -> list[Entry]:
    """The blocks drafted, each file once."""
    from ..sheets.catalogue.entries import Entry
    from ..shelves.index_work import drafts_of

    tasks = list(dict.fromkeys(each.task for each in found))
    drafts = {}
    try:
        for number, made in enumerate(drafts_of(shelf.shelves, tasks)):
            doing(drawing_files(number + 1, len(tasks)))
            drafts.update({(tasks[number], draft.title, draft.version): draft for draft in made})
    finally:
        doing("")
    keyed = (((each.task, each.facts.title, each.facts.version), each) for each in found)
    return [Entry(drafts[key], each.facts, each.shelf) for key, each in keyed if key in drafts]


def catalogue_files(
    entries: Sequence[Entry], formats: Sequence[str], title: str, paper: Any
) -> list[tuple[str, bytes]]:
    """The files of a catalogue, of each format asked for."""
    files = []
    if "html" in formats:
        from ..sheets.catalogue.html_catalogue import catalogue_html

        files.append((f"{STEM}.html", catalogue_html(entries, title)))
    if "pdf" in formats:
        from ..sheets.arrange.options import SheetOptions
        from ..sheets.catalogue.contact_sheets import contact_sheets
        from ..sheets.drawing.files import pdf_bytes

        document = contact_sheets(entries, title, SheetOptions(paper=paper))
        with held():
            files.append((f"{STEM}.pdf", pdf_bytes(document)))
    return files
