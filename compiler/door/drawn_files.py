"""The files of a build: blocks and quilts laid out and drawn, one by one, in every format asked for."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from ..diagnostics.source import Span
from ..failures import own_mistakes
from ..measure.record import record
from ..words.commands.asked import block_called, quilt_called
from ..words.commands.files import drawing_pages
from ..words.commands.files import laying_out as laying_out_words
from .documents import Wanted, laying_out, made_of_block, made_of_quilt, stem_of, tables_of
from .formats import files_in, of_books
from .naming import Names

if TYPE_CHECKING:
    from ..pipeline import CompiledBlock
    from ..planning import Cutting, PlannedQuilt
    from ..sheets.documents import Made
    from .compiling import Compiled

TABLE: Final = "table"


@record
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


@record
class Subject:
    """One block or quilt of which files are made. `source`: the file it is written in. `called`: what it is
    called in messages. `place`: where its title is. `stem`: gives its name for files. `parts`: how many of
    what are laid out. `quilt`: itself, where it is one, which has tables."""

    source: str
    called: str
    place: Span
    stem: Callable[[Names], str]
    made: Callable[[Wanted], Iterator[Made]]
    parts: tuple[int, str]
    quilt: PlannedQuilt | None = None


def block_subject(block: CompiledBlock, source: str, cutting: Cutting) -> Subject:
    """A block of a file."""
    draft = block.draft
    return Subject(
        source,
        block_called(draft.title, source),
        draft.origin or Span(source, 0, 0),
        lambda names: names.stem(draft.title, draft.version, source),
        lambda wanted: made_of_block(block, wanted, cutting),
        (len(block.templates), "template"),
    )


def quilt_subject(planned: PlannedQuilt, source: str, cutting: Cutting) -> Subject:
    """A quilt of a file."""
    quilt = planned.quilt
    return Subject(
        source,
        quilt_called(quilt.title, source),
        quilt.origin or Span(source, 0, 0),
        lambda names: stem_of(names, quilt, source),
        lambda wanted: made_of_quilt(planned, wanted, cutting.say),
        (len(quilt.blocks), "block"),
        planned,
    )


def subjects_of(
    file: Compiled, quilts: Iterable[PlannedQuilt], blocks: Iterable[CompiledBlock]
) -> list[Subject]:
    """A file's quilts, then its blocks."""
    return [
        *(quilt_subject(each, file.name, file.cutting) for each in quilts),
        *(block_subject(each, file.name, file.cutting) for each in blocks),
    ]


def files_of(job: Job, subjects: Iterable[Subject]) -> Iterator[tuple[str, bytes]]:
    """Every file of quilts and blocks, made one at a time."""
    for subject in subjects:
        job.doing(laying_out_words(subject.source, *subject.parts))
        with laying_out(subject.called, subject.place):
            made = list(subject.made(job.wanted))
        stem = subject.stem(job.names)
        job.log += job.names.told()
        for each in made:
            yield from drawn(job, subject, stem, each)
        if subject.quilt:
            job.quilts += 1
            yield from table_files(job, subject.quilt, subject.called, stem)


def table_files(job: Job, planned: PlannedQuilt, called: str, stem: str) -> Iterator[tuple[str, bytes]]:
    """A quilt's tables, where they are wanted."""
    if job.tables:
        with own_mistakes(called):
            tables = list(tables_of(planned))
        for ending, data in tables:
            job.log.append(Drawn(f"{stem}-{ending}", TABLE))
            yield f"{stem}-{ending}", data


def drawn(job: Job, subject: Subject, stem: str, made: Made) -> Iterator[tuple[str, bytes]]:
    """A document's files in every format asked for."""
    stem = f"{stem}-{made.ending}" if made.ending else stem
    job.parts_made += made.ending in job.wanted.parts
    for kind in job.formats:
        pages = 0 if of_books(kind) else len(made.document.pages)
        if pages:
            job.doing(drawing_pages(subject.source, pages))
        if pages or made.book:
            job.log.append(Drawn(stem, kind, pages))
        yield from files_in(kind, made, stem, job.wanted.options, job.dpi, subject.called)


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
