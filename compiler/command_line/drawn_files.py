"""The files of a build: blocks and quilts laid out and drawn, one by one, in every format asked for."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from ..diagnostics.source import Span
from ..words.phrases import count_of
from .blocks import BlockChoice, named
from .booklets import HTML, Booklets, Made, made_of_block
from .console import Progress, Tally
from .failures import laying_out, own_mistakes
from .naming import Names
from .owners import marked
from .quilts import made_of_quilt, stem_of, tables_of
from .stopping import held

if TYPE_CHECKING:
    from ..pipeline import CompiledBlock
    from ..planning import Cutting, PlannedQuilt
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.booklet.content import Book
    from ..sheets.page import Document


@dataclass(slots=True)
class Job:
    """What is the same for every file of one run."""

    options: SheetOptions
    formats: tuple[str, ...]
    folder: str
    dpi: int
    choice: BlockChoice
    parts: tuple[str, ...]
    tables: bool
    blocks_too: bool
    booklets: Booklets
    cutting: Cutting
    progress: Progress
    quilts: int = 0
    parts_made: int = 0
    tally: Tally = field(default_factory=Tally)
    names: Names = field(init=False)

    def __post_init__(self) -> None:
        self.names = Names(self.folder)


def block_files(
    job: Job, source: str, blocks: Sequence[CompiledBlock], lines: list[str]
) -> Iterator[tuple[str, bytes]]:
    """Every file of the blocks, made one at a time; `lines` says what they are."""
    for block in blocks:
        title = f"{source}, block '{named(block.draft.title)}'"
        job.progress.doing(f"{source}: laying out {count_of(len(block.templates), 'template')}")
        with laying_out(title, block.draft.origin or Span(source, 0, 0)):
            made = list(made_of_block(block, job.options, job.booklets, job.parts))
        stem = job.names.stem(block.draft.title, block.draft.version, source)
        lines += job.names.told()
        for each in made:
            yield from drawn(job, source, title, stem, each, lines)


def quilt_files(
    job: Job, source: str, quilts: Sequence[PlannedQuilt], lines: list[str]
) -> Iterator[tuple[str, bytes]]:
    """Every file of the quilts."""
    for planned in quilts:
        job.quilts += 1
        title = f"{source}, quilt '{named(planned.quilt.title)}'"
        stem = stem_of(job.names, planned.quilt, source)
        lines += job.names.told()
        job.progress.doing(f"{source}: laying out {count_of(len(planned.quilt.blocks), 'block')}")
        with laying_out(title, planned.quilt.origin or Span(source, 0, 0)):
            made = list(made_of_quilt(planned, job.parts, job.options, job.booklets))
        for each in made:
            yield from drawn(job, source, title, stem, each, lines)
        if job.tables:
            with own_mistakes(title):
                tables = list(tables_of(planned))
            for ending, data in tables:
                lines.append(f"Wrote {placed(job.folder, f'{stem}-{ending}')}.")
                yield f"{stem}-{ending}", data


def drawn(
    job: Job, source: str, title: str, stem: str, made: Made, lines: list[str]
) -> Iterator[tuple[str, bytes]]:
    """A document's files in every format asked for."""
    stem = f"{stem}-{made.ending}" if made.ending else stem
    job.parts_made += made.ending in job.parts
    for kind in job.formats:
        pages = len(made.document.pages)
        if kind == HTML:
            if made.book:
                lines.append(f"Wrote {placed(job.folder, f'{stem}.html')}.")
                page = html_of(made.book, job.options, title)
                yield f"{stem}.html", marked(HTML, page, made.document.title)
            continue
        job.progress.doing(f"{source}: drawing {count_of(pages, 'page')}")
        lines.append(written_line(job.folder, stem, kind, pages))
        yield from pages_of(made.document, stem, kind, job.dpi, title)


def html_of(book: Book, options: SheetOptions, title: str) -> bytes:
    """A booklet as one page of HTML."""
    from ..sheets.booklet.setting.html_book import html_bytes

    with own_mistakes(title):
        return html_bytes(book, options)


def pages_of(document: Document, stem: str, kind: str, dpi: int, title: str) -> Iterator[tuple[str, bytes]]:
    """The files of one kind: one PDF, or a PNG or SVG for every page."""
    from ..sheets.drawing.files import pdf_bytes, png_bytes, svg_bytes

    if kind == "pdf":
        with own_mistakes(title), held():
            data = pdf_bytes(document)
        yield f"{stem}.pdf", data
        return
    for number, page in enumerate(document.pages, 1):
        with own_mistakes(title), held():
            data = png_bytes(page, dpi) if kind == "png" else svg_bytes(page)
        yield page_name(stem, number, kind), marked(kind, data, document.title)


def page_name(stem: str, number: int, kind: str) -> str:
    """`tidewater-vane-v2-page-1.png`."""
    return f"{stem}-page-{number}.{kind}"


def written_line(folder: str, stem: str, kind: str, pages: int) -> str:
    """`Wrote sheets/tidewater-vane-v2.pdf (3 pages).`"""
    if kind == "pdf":
        return f"Wrote {placed(folder, f'{stem}.pdf')} ({count_of(pages, 'page')})."
    first = placed(folder, page_name(stem, 1, kind))
    last = f" to {page_name(stem, pages, kind)}" if pages > 1 else ""
    return f"Wrote {first}{last} ({count_of(pages, 'page')})."


def placed(folder: str, name: str) -> str:
    """The name with its folder, where that is another than the one we are in."""
    return name if folder == "." else os.path.join(folder, name)


def page_after(path: str) -> str | None:
    """The name of the page that would follow, for a file that is one page of several."""
    stem, found, ending = path.rpartition("-page-")
    number, _, kind = ending.partition(".")
    return f"{stem}-page-{int(number) + 1}.{kind}" if found and number.isdecimal() else None


def left_over(paths: Sequence[str]) -> Iterator[str]:
    """Pages that stand in the folder, beyond the last page just written: they belong to an older draft."""
    written = set(paths)
    for path in paths:
        following = page_after(path)
        if following and following not in written and os.path.exists(following):
            yield following
