"""The files of a build: blocks and quilts laid out and drawn, one by one, in every format asked for."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from ..diagnostics.source import Span
from ..failures import own_mistakes
from ..words.commands.files import drawing_pages
from ..words.commands.files import laying_out as laying_out_words
from .blocks import named
from .documents import Wanted, laying_out, made_of_block, made_of_quilt, stem_of, tables_of
from .formats import files_in, of_books
from .naming import Names

if TYPE_CHECKING:
    from ..pipeline import CompiledBlock
    from ..planning import PlannedQuilt
    from ..sheets.documents import Made

TABLE: Final = "table"


@dataclass(frozen=True, slots=True)
class Drawn:
    """Files that were made of one document: their stem within the folder, their kind, and of how many pages.
    A table's stem has its ending, and it has no pages."""

    stem: str
    kind: str
    pages: int = 0


@dataclass(slots=True)
class Job:
    """What is the same for every file of one run, and what became of it.

    `doing` is told what is being done. `log`: what was drawn, and what is to be said of files that were in
    the folder, in order.
    """

    wanted: Wanted
    formats: tuple[str, ...]
    folder: str
    dpi: int
    tables: bool = False
    doing: Callable[[str], None] = lambda what: None
    quilts: int = 0
    parts_made: int = 0
    log: list[Drawn | str] = field(default_factory=list)
    names: Names = field(init=False)

    def __post_init__(self) -> None:
        self.names = Names(self.folder)


def files_of(
    job: Job, source: str, quilts: Sequence[PlannedQuilt], blocks: Sequence[CompiledBlock]
) -> Iterator[tuple[str, bytes]]:
    """Every file of a source's quilts, then of its blocks, made one at a time."""
    yield from quilt_files(job, source, quilts)
    yield from block_files(job, source, blocks)


def block_files(job: Job, source: str, blocks: Sequence[CompiledBlock]) -> Iterator[tuple[str, bytes]]:
    """Every file of the blocks, made one at a time."""
    for block in blocks:
        title = f"{source}, block '{named(block.draft.title)}'"
        job.doing(laying_out_words(source, len(block.templates), "template"))
        with laying_out(title, block.draft.origin or Span(source, 0, 0)):
            made = list(made_of_block(block, job.wanted))
        stem = job.names.stem(block.draft.title, block.draft.version, source)
        job.log += job.names.told()
        for each in made:
            yield from drawn(job, source, title, stem, each)


def quilt_files(job: Job, source: str, quilts: Sequence[PlannedQuilt]) -> Iterator[tuple[str, bytes]]:
    """Every file of the quilts."""
    for planned in quilts:
        job.quilts += 1
        title = f"{source}, quilt '{named(planned.quilt.title)}'"
        stem = stem_of(job.names, planned.quilt, source)
        job.log += job.names.told()
        job.doing(laying_out_words(source, len(planned.quilt.blocks), "block"))
        with laying_out(title, planned.quilt.origin or Span(source, 0, 0)):
            made = list(made_of_quilt(planned, job.wanted))
        for each in made:
            yield from drawn(job, source, title, stem, each)
        if job.tables:
            with own_mistakes(title):
                tables = list(tables_of(planned))
            for ending, data in tables:
                job.log.append(Drawn(f"{stem}-{ending}", TABLE))
                yield f"{stem}-{ending}", data


def drawn(job: Job, source: str, title: str, stem: str, made: Made) -> Iterator[tuple[str, bytes]]:
    """A document's files in every format asked for."""
    stem = f"{stem}-{made.ending}" if made.ending else stem
    job.parts_made += made.ending in job.wanted.parts
    for kind in job.formats:
        pages = 0 if of_books(kind) else len(made.document.pages)
        if pages:
            job.doing(drawing_pages(source, pages))
        if pages or made.book:
            job.log.append(Drawn(stem, kind, pages))
        yield from files_in(kind, made, stem, job.wanted.options, job.dpi, title)


def placed(folder: str, name: str) -> str:
    """The name with its folder, where that is another than the one we are in."""
    return name if folder == "." else os.path.join(folder, name)


def left_over(paths: Sequence[str]) -> Iterator[str]:
    """Pages that stand in the folder, beyond the last page just written: they belong to an older draft."""
    written = set(paths)
    for path in paths:
        following = page_after(path)
        if following and following not in written and os.path.exists(following):
            yield following


def page_after(path: str) -> str | None:
    """The name of the page that would follow, for a file that is one page of several."""
    stem, found, ending = path.rpartition("-page-")
    number, _, kind = ending.partition(".")
    return f"{stem}-page-{int(number) + 1}.{kind}" if found and number.isdecimal() else None
