"""What is made of a block or a quilt: its sheets, its booklet, or parts of it; and a quilt's tables."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from typing import TYPE_CHECKING, Final

from ..diagnostics.source import Span
from ..failures import Refused, own_mistakes
from ..measure.record import record
from ..sheets.part_names import BLOCK_PARTS, PARTS, QUILT_PARTS
from .choices import Sewing

if TYPE_CHECKING:
    from ..pipeline import CompiledBlock
    from ..planning import Cutting, PlannedQuilt
    from ..quilt.model import Quilt
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.documents import Made
    from ..words.say import Say
    from .naming import Names

__all__ = ["BLOCK_PARTS", "PARTS"]

BOOKLET: Final = "booklet"  # ends the names of its files

QUILT_ONLY: Final = tuple(part for part in QUILT_PARTS if part not in BLOCK_PARTS)


@record
class Wanted:
    """What is to be made: the parts named, a booklet, and how each block is cut and sewn."""

    options: SheetOptions
    sewing: Sewing
    parts: tuple[str, ...] = ()
    booklet: bool = False


def made_of_block(block: CompiledBlock, wanted: Wanted, cutting: Cutting) -> Iterator[Made]:
    """The booklet, or each part asked for, or the template sheets."""
    from ..planning import plan_block

    return made_of_quilt(plan_block(block, cutting), wanted, cutting.say)


def stem_of(names: Names, quilt: Quilt, source: str) -> str:
    """`breakwater-sampler-sea-v1`: the title, the colourway and the version."""
    title = f"{quilt.title}\n{quilt.colourway}" if quilt.colourway else quilt.title
    return names.stem(title, quilt.version, f"{source}\0quilt", quilt.title)  # apart from a block


def made_of_quilt(planned: PlannedQuilt, wanted: Wanted, say: Say) -> Iterator[Made]:
    """The whole document or the booklet; and each part asked for that has pages."""
    from ..sheets.documents import documents_of
    from ..sheets.work import Work

    endings = (*((BOOKLET,) if wanted.booklet else ()), *wanted.parts) or ("",)
    return documents_of(Work(planned, wanted.sewing.way_for, say), endings, replace(wanted.options, say=say))


def tables_of(planned: PlannedQuilt) -> Iterator[tuple[str, bytes]]:
    """Endings and bytes of the quilt's tables: CSV for spreadsheets, and all of them as JSON."""
    from json import dumps

    from .records.as_json import as_json
    from .records.quilt import quilt_of
    from .records.tables import quilt_csv

    for name, text in quilt_csv(planned.quilt, planned.plan).items():
        yield name, text.encode()
    yield "numbers.json", dumps(as_json(quilt_of(planned)), indent=1).encode() + b"\n"


@contextmanager
def laying_out(subject: str, title: Span) -> Iterator[None]:
    """The same, and refuses what has more pages than anybody prints at the title's words."""
    from ..sheets.arrange.page_bound import TooManyPages

    with own_mistakes(subject):
        try:
            yield
        except TooManyPages as problem:
            raise Refused(problem.said(title)) from problem
