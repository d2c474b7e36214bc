"""What is made of a quilt: one document of all its pages, or of its parts; and its numbers as tables."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

from .compiling import PlannedQuilt

if TYPE_CHECKING:
    from ..quilt.model import Quilt
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.page import Document
    from .kept_sheets import KeptSheets
    from .naming import Names

PARTS: Final = ("picture", "supplies", "counts", "chart", "cutting", "templates")  # those of sheets.arrange


def stem_of(names: Names, quilt: Quilt, source: str) -> str:
    """`breakwater-sampler-sea-v1`: the title, the colourway and the version."""
    title = f"{quilt.title}\n{quilt.colourway}" if quilt.colourway else quilt.title
    return names.stem(title, quilt.version, f"{source}\0quilt")  # apart from a block of the same title


def documents_of(planned: PlannedQuilt, parts: tuple[str, ...], options: SheetOptions,
                 sheets: KeptSheets) -> Iterator[tuple[str, Document]]:
    """The whole document, under ''; or each part asked for that has pages, under its name."""
    from ..sheets.arrange.quilt_sheets import QUILT_PARTS, arrange_quilt, arrange_quilt_part

    quilt, plan = planned.quilt, planned.plan
    if not parts:
        yield "", arrange_quilt(quilt, plan, options, sheets.leaves)
    for part in QUILT_PARTS:
        if part in parts:
            document = arrange_quilt_part(part, quilt, plan, options, sheets.leaves)
            if document.pages:
                yield part, document


def tables_of(planned: PlannedQuilt) -> Iterator[tuple[str, bytes]]:
    """Endings and bytes of the quilt's tables: CSV for spreadsheets, and all of them as JSON."""
    from json import dumps

    from ..sheets.quilt_csv import quilt_csv
    from ..sheets.quilt_report import quilt_report

    for name, text in quilt_csv(planned.quilt, planned.plan).items():
        yield name, text.encode()
    yield "numbers.json", dumps(quilt_report(planned.quilt, planned.plan), indent=1).encode() + b"\n"
