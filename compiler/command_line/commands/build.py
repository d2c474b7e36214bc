"""`piecewright build`: block files to template sheets, quilt files to everything the maker needs."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import chain
from typing import TYPE_CHECKING, Any, Final

import click

from ...diagnostics.source import Span
from ...diagnostics.wording import count_of
from ..blocks import BlockChoice, named, write_files
from ..booklets import (
    HTML,
    Booklets,
    Made,
    booklet_options,
    made_of_block,
    refuse_html,
)
from ..booklets import PARTS as BLOCK_PARTS
from ..choices import (
    LengthChoice,
    ListChoice,
    block_option,
    cutting_of,
    cutting_options,
    dpi_option,
    open_shelf,
    out_option,
    shelf_option,
)
from ..compiling import Compiled, Cutting, PlannedQuilt, compile_input
from ..console import CLEAN, Progress, Tally, Voice, complain
from ..failures import OwnMistake, Refused, laying_out, own_mistakes
from ..inputs import inputs_of
from ..keeping.again import Record, page_after
from ..keeping.kept import Kept, open_kept
from ..keeping.kept_sheets import KeptSheets
from ..naming import Names
from ..quilts import PARTS as QUILT_PARTS
from ..quilts import made_of_quilt, stem_of, tables_of
from ..stopping import held

if TYPE_CHECKING:
    from ...pipeline import CompiledBlock
    from ...sheets.arrange.options import SheetOptions
    from ...sheets.booklet.content import Book
    from ...sheets.page import Document

FORMATS: Final = ("pdf", "png", "svg", HTML)
PARTS: Final = tuple(dict.fromkeys((*QUILT_PARTS, *BLOCK_PARTS)))
BAR: Final = Fraction(250, 127)
"""Inches of the check bar (5cm). A length near this was measured on the bar, not on the square."""

EXAMPLES: Final = """
\b
Examples:
  piecewright build vane.block                    a PDF of its templates, for Letter paper
  piecewright build vane.block --paper a4         the same for A4
  piecewright build sampler.quilt                 a PDF of the quilt: picture, cutting, templates
  piecewright build sampler.quilt --tables        with its numbers for a spreadsheet
  piecewright build sampler.quilt --parts cutting the cutting pictures alone
  piecewright build vane.block --booklet          a booklet for a class, with steps in pictures
  piecewright build vane.block --parts foundation paper foundations alone
  piecewright build quilt-blocks --out sheets     every file of a folder
  piecewright build vane.block --measured 0.97in  corrects a printer that shrinks
  cat vane.block | piecewright build -            reads standard input
"""


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
    sheets: KeptSheets
    record: Record
    voice: Voice
    progress: Progress
    quilts: int = 0
    parts_made: int = 0
    tally: Tally = field(default_factory=Tally)
    names: Names = field(default_factory=Names)


@click.command("build", short_help="Make the sheets of blocks and quilts.", epilog=EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="FILE|FOLDER...", type=click.Path(allow_dash=True))
@click.option("--format", "formats", multiple=True, type=ListChoice(FORMATS), default=(("pdf",),),
              help="Kind of file; several with commas. PNG and SVG are one a page; HTML is for booklets.  "
                   "[default: pdf]")
@click.option("--paper", type=click.Choice(["letter", "a4"], case_sensitive=False), default="letter",
              show_default=True, help="Paper that the sheets are laid out for.")
@click.option("--kind", type=click.Choice(["allowance", "finished", "window"], case_sensitive=False),
              default="allowance", show_default=True,
              help="Templates with seam allowance, of finished size for hand piecing, or with a window to "
                   "place a motif.")
@click.option("--lines", type=click.Choice(["cut-solid", "cut-dashed"], case_sensitive=False),
              default="cut-solid", show_default=True,
              help="Whether the cutting line is the solid one or the dashed one.")
@click.option("--measured", type=LengthChoice(), metavar="LENGTH",
              help="What the 1in check square (or the 5cm bar) of an earlier print measured: 0.97in, 2.46cm. "
                   "The sheets are then made to come out right.")
@cutting_options
@click.option("--parts", multiple=True, type=ListChoice(PARTS),
              help="Only these parts of a block or a quilt, a file each; several with commas.")
@click.option("--tables", is_flag=True, help="Write a quilt's numbers, too, as CSV and as JSON.")
@click.option("--blocks", "blocks_too", is_flag=True,
              help="Make the blocks written in a quilt's file a PDF each, too.")
@booklet_options
@out_option
@dpi_option(300)
@block_option
@shelf_option
@click.option("--no-cache", is_flag=True, help="Make everything anew, whatever was kept of earlier builds.")
def build(files: Sequence[str], formats: tuple[tuple[str, ...], ...], paper: Any, kind: Any, lines: Any,
          measured: Fraction | None, parts: tuple[tuple[str, ...], ...], tables: bool, blocks_too: bool,
          booklet: bool, ways: tuple[tuple[str, str], ...],
          ruler: Fraction, margin: tuple[Fraction, Fraction] | None, buy: Any, out: str, dpi: int,
          titles: tuple[str, ...], shelves: tuple[str, ...], no_cache: bool) -> int:
    """Make the sheets of every block or quilt in FILE.

    A block's are its templates; with --booklet, all that a class needs. A quilt's are its picture, what you
    need for it, the counts, the cutting chart, the cutting pictures and the templates of all its blocks: one
    PDF for each colourway. A file that has a quilt makes no others, but with
    --blocks; --block TITLE makes that block's instead.

    A FOLDER stands for every .block and .quilt file in it, and '-' for standard input. A file with an error
    makes no sheets; other files still do. An older sheet stays as it is until the new one is complete.

    What was made is kept in a folder of yours, so that only what changed is made again. The folder may be
    deleted at any time; PIECEWRIGHT_CACHE names another one, or is 'off'.
    """
    from ...sheets.arrange.options import SheetOptions

    options = SheetOptions(paper=paper, kind=kind, lines=lines, measured=square_measured(measured))
    kept, record = None if no_cache else open_kept(), Record()
    inputs = inputs_of(files, record)
    job = Job(options, _each_once(formats), out, dpi, BlockChoice(titles), _each_once(parts), tables,
              blocks_too, Booklets(booklet, ways), cutting_of(ruler, margin, buy), KeptSheets(kept), record,
              Voice(record), Progress(len(inputs)))
    refuse_html(job.formats, job.booklets)
    shelf = open_shelf(shelves, record)
    for given in inputs:
        job.progress.next_file()
        job.progress.doing(f"{given.name}: drafting")
        try:
            build_file(job, compile_input(given, shelf, job.cutting, record))
        except OwnMistake as problem:
            job.tally.own_mistakes += 1
            job.progress.clear()
            complain(str(problem))
        finally:
            job.progress.clear()
    return finish(job, kept)


def finish(job: Job, kept: Kept | None) -> int:
    """The exit status, when the last is said and the build is kept for the next time."""
    if job.tally.status() == CLEAN:
        job.choice.refuse_unmet()
        job.booklets.refuse_unmet()
        if job.tables and not job.quilts:
            raise click.UsageError("--tables is for quilts, and no quilt was made.")
        if job.parts and not job.parts_made:
            only = [part for part in QUILT_PARTS if part not in BLOCK_PARTS]
            raise click.UsageError(f"--parts: a block has {', '.join(BLOCK_PARTS)}; only for quilts are "
                                   f"{', '.join(only)}.")
    if job.tally.errors or job.tally.warnings or job.tally.notes:
        job.voice.tell(job.tally.summary())
    if job.sheets.told():
        click.echo(job.sheets.told())
    if kept and job.tally.status() == CLEAN:
        job.record.keep(kept, click.get_current_context().obj)
    return job.tally.status()


def _each_once(given: Sequence[Sequence[str]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(word for each in given for word in each))


def square_measured(length: Fraction | None) -> Fraction:
    """What the inch square would have measured, in inches; a use error where no printer is that far out."""
    from ...sheets.arrange.options import LEAST_MEASURED, MOST_MEASURED

    if length is None:
        return Fraction(1)
    for share in (length, length / BAR):
        if LEAST_MEASURED <= share <= MOST_MEASURED:
            return share
    raise click.BadParameter(
        "The square should measure near 1in (2.54cm), the bar near 5cm. A print that is further out was "
        "fitted to the page: print it again at actual size, 100%.", param_hint="'--measured'")


def build_file(job: Job, compiled: Compiled) -> None:
    """The sheets of one compiled file, and what there is to say about it."""
    job.tally.add(compiled.diagnostics)
    job.progress.clear()
    job.voice.diagnostics(compiled.diagnostics, compiled.sources)
    quilts = () if job.choice.given else compiled.planned
    blocks = [] if quilts and not job.blocks_too else job.choice.choose(compiled.own_blocks)
    if not quilts and not blocks:
        return
    lines: list[str] = []
    files = chain(quilt_files(job, compiled.name, quilts, lines),
                  block_files(job, compiled.name, blocks, lines))
    try:
        paths = write_files(job.folder, recorded(job, files))
    except Refused as refused:
        job.progress.clear()
        job.tally.add_to_last((refused.said,))
        job.voice.diagnostics((refused.said,), compiled.sources)
        return
    job.progress.clear()
    for line in lines:
        job.voice.say(line)
    for left in left_over(paths):
        job.record.stop()
        complain(f"{left}: This is left from an earlier build that had more pages.")


def recorded(job: Job, files: Iterator[tuple[str, bytes]]) -> Iterator[tuple[str, bytes]]:
    """The same files, each heard by the record."""
    for name, data in files:
        job.record.wrote(placed(job.folder, name), data)
        yield name, data


def block_files(job: Job, source: str, blocks: Sequence[CompiledBlock],
                lines: list[str]) -> Iterator[tuple[str, bytes]]:
    """Every file of the blocks, made one at a time; `lines` says what they are."""
    for block in blocks:
        title = f"{source}, block '{named(block.draft.title)}'"
        job.progress.doing(f"{source}: laying out {count_of(len(block.templates), 'template')}")
        with laying_out(title, block.draft.origin or Span(source, 0, 0)):
            made = list(made_of_block(block, job.options, job.booklets, job.parts))
        stem = job.names.stem(block.draft.title, block.draft.version, source)
        for each in made:
            yield from drawn(job, source, title, stem, each, lines)


def quilt_files(job: Job, source: str, quilts: Sequence[PlannedQuilt],
                lines: list[str]) -> Iterator[tuple[str, bytes]]:
    """Every file of the quilts."""
    for planned in quilts:
        job.quilts += 1
        title = f"{source}, quilt '{named(planned.quilt.title)}'"
        stem = stem_of(job.names, planned.quilt, source)
        job.progress.doing(f"{source}: laying out {count_of(len(planned.quilt.blocks), 'block')}")
        with laying_out(title, planned.quilt.origin or Span(source, 0, 0)):
            made = list(made_of_quilt(planned, job.parts, job.options, job.sheets, job.booklets))
        for each in made:
            yield from drawn(job, source, title, stem, each, lines)
        if job.tables:
            with own_mistakes(title):
                tables = list(tables_of(planned))
            for ending, data in tables:
                lines.append(f"Wrote {placed(job.folder, f'{stem}-{ending}')}.")
                yield f"{stem}-{ending}", data


def drawn(job: Job, source: str, title: str, stem: str, made: Made,
          lines: list[str]) -> Iterator[tuple[str, bytes]]:
    """A document's files in every format asked for."""
    stem = f"{stem}-{made.ending}" if made.ending else stem
    job.parts_made += made.ending in job.parts
    for kind in job.formats:
        pages = len(made.document.pages)
        if kind == HTML:
            if made.book:
                lines.append(f"Wrote {placed(job.folder, f'{stem}.html')}.")
                yield f"{stem}.html", html_of(made.book, job.options, title)
            continue
        job.progress.doing(f"{source}: drawing {count_of(pages, 'page')}")
        lines.append(written_line(job.folder, stem, kind, pages))
        yield from pages_of(made.document, stem, kind, job.dpi, title)


def html_of(book: Book, options: SheetOptions, title: str) -> bytes:
    """A booklet as one page of HTML."""
    from ...sheets.booklet.html_book import html_bytes

    with own_mistakes(title):
        return html_bytes(book, options)


def pages_of(document: Document, stem: str, kind: str, dpi: int, title: str) -> Iterator[tuple[str, bytes]]:
    """The files of one kind: one PDF, or a PNG or SVG for every page."""
    from ...sheets.drawing.files import pdf_bytes, png_bytes, svg_bytes

    if kind == "pdf":
        with own_mistakes(title), held():
            data = pdf_bytes(document)
        yield f"{stem}.pdf", data
        return
    for number, page in enumerate(document.pages, 1):
        with own_mistakes(title), held():
            data = png_bytes(page, dpi) if kind == "png" else svg_bytes(page)
        yield page_name(stem, number, kind), data


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


def left_over(paths: Sequence[str]) -> Iterator[str]:
    """Pages that stand in the folder, beyond the last page just written: they belong to an older draft."""
    written = set(paths)
    for path in paths:
        following = page_after(path)
        if following and following not in written and os.path.exists(following):
            yield following
