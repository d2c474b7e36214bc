"""What is made of a quilt: one document of all its pages, or of its parts; and its numbers as tables."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

from .booklets import Booklets, wanted_of

if TYPE_CHECKING:
    from ..planning import PlannedQuilt
    from ..quilt.model import Quilt
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.documents import Made
    from .keeping.kept_sheets import KeptSheets
    from .naming import Names

PARTS: Final = ("picture", "supplies", "counts", "chart", "cutting", "templates")  # those of sheets.documents


def stem_of(names: Names, quilt: Quilt, source: str) -> str:
    """`breakwater-sampler-sea-v1`: the title, the colourway and the version."""
    title = f"{quilt.title}\n{quilt.colourway}" if quilt.colourway else quilt.title
    return names.stem(title, quilt.version, f"{source}\0quilt", quilt.title)  # apart from a block


def documents_of_quilt(
    planned: PlannedQuilt,
    parts: tuple[str, ...],
    options: SheetOptions,
    sheets: KeptSheets,
    booklets: Booklets,
) -> Iterator[Made]:
    """The whole document or the booklet; and each part asked for that has pages."""
    from ..sheets.documents import documents_of
    from ..sheets.work import Work

    work = Work(planned, booklets.way_for, sheets.leaves)
    return documents_of(work, wanted_of(booklets, parts), options)


def tables_of(planned: PlannedQuilt) -> Iterator[tuple[str, bytes]]:
    """Endings and bytes of the quilt's tables: CSV for spreadsheets, and all of them as JSON."""
    from json import dumps

    from ..sheets.reports.quilt_csv import quilt_csv
    from ..sheets.reports.quilt_report import planned_report

    for name, text in quilt_csv(planned.quilt, planned.plan).items():
        yield name, text.encode()
    yield "numbers.json", dumps(planned_report(planned), indent=1).encode() + b"\n"
