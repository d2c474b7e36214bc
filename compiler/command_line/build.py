"""`piecewright build`: block files to template sheets."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING, Any, Final

import click

from ..diagnostics.wording import count_of
from .blocks import BlockChoice, named, write_files
from .choices import LengthChoice, ListChoice, block_option, dpi_option, open_shelf, out_option, shelf_option
from .compiling import Compiled, compile_input
from .console import CLEAN, Progress, Tally, complain, say, show_diagnostics
from .failures import OwnMistake, own_mistakes
from .inputs import inputs_of
from .naming import Names
from .stopping import held

if TYPE_CHECKING:
    from ..pipeline import CompiledBlock
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.page import Document

FORMATS: Final = ("pdf", "png", "svg")
BAR: Final = Fraction(250, 127)
"""Inches of the check bar (5cm). A length near this was measured on the bar, not on the square."""

EXAMPLES: Final = """
\b
Examples:
  piecewright build vane.block                    a PDF for Letter paper
  piecewright build vane.block --paper a4         the same for A4
  piecewright build quilt-blocks --out sheets     every block file of a folder
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
    progress: Progress
    tally: Tally = field(default_factory=Tally)
    names: Names = field(default_factory=Names)


@click.command("build", short_help="Make the template sheets of blocks.", epilog=EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="FILE|FOLDER...", type=click.Path(allow_dash=True))
@click.option("--format", "formats", multiple=True, type=ListChoice(FORMATS), default=(("pdf",),),
              help="Kind of file; several with commas. PNG and SVG are one file a page.  [default: pdf]")
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
@out_option
@dpi_option(300)
@block_option
@shelf_option
def build(files: Sequence[str], formats: tuple[tuple[str, ...], ...], paper: Any, kind: Any, lines: Any,
          measured: Fraction | None, out: str, dpi: int, titles: tuple[str, ...],
          shelves: tuple[str, ...]) -> int:
    """Make the template sheets of every block in FILE.

    A FOLDER stands for every .block file in it, and '-' for standard input. A file with an error makes no
    sheets; other files still do. An older sheet stays as it is until the new one is complete.
    """
    from ..sheets.arrange.options import SheetOptions

    options = SheetOptions(paper=paper, kind=kind, lines=lines, measured=square_measured(measured))
    inputs = inputs_of(files)
    wanted = tuple(dict.fromkeys(word for each in formats for word in each))
    job = Job(options, wanted, out, dpi, BlockChoice(titles), Progress(len(inputs)))
    shelf = open_shelf(shelves)
    for given in inputs:
        job.progress.next_file()
        job.progress.doing(f"{given.name}: drafting")
        try:
            build_file(job, compile_input(given, shelf))
        except OwnMistake as problem:
            job.tally.own_mistakes += 1
            job.progress.clear()
            complain(str(problem))
        finally:
            job.progress.clear()
    if job.tally.status() == CLEAN:
        job.choice.refuse_unmet()
    if job.tally.errors or job.tally.warnings or job.tally.notes:
        click.echo(job.tally.summary(), err=True)
    return job.tally.status()


def square_measured(length: Fraction | None) -> Fraction:
    """What the inch square would have measured, in inches; a use error where no printer is that far out."""
    from ..sheets.arrange.options import LEAST_MEASURED, MOST_MEASURED

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
    show_diagnostics(compiled.diagnostics, compiled.sources, err=True)
    blocks = job.choice.choose(compiled.own_blocks)
    if not blocks:
        return
    lines: list[str] = []
    paths = write_files(job.folder, sheets_of(job, compiled.name, blocks, lines))
    job.progress.clear()
    for line in lines:
        say(line)
    for left in left_over(job, paths):
        complain(f"{left}: This is left from an earlier build that had more pages.")


def sheets_of(job: Job, source: str, blocks: Sequence[CompiledBlock],
              lines: list[str]) -> Iterator[tuple[str, bytes]]:
    """Every file of the blocks, made one at a time; `lines` says what they are."""
    for block in blocks:
        title = f"{source}, block '{named(block.draft.title)}'"
        job.progress.doing(f"{source}: laying out {count_of(len(block.templates), 'template')}")
        with own_mistakes(title):
            document = lay_out(block, job.options)
        stem = job.names.stem(block.draft.title, block.draft.version, source)
        for kind in job.formats:
            job.progress.doing(f"{source}: drawing {count_of(len(document.pages), 'page')}")
            lines.append(written_line(job.folder, stem, kind, len(document.pages)))
            yield from files_of(document, stem, kind, job.dpi, title)


def lay_out(block: CompiledBlock, options: SheetOptions) -> Document:
    """The pages of one block."""
    from ..sheets.arrange.block_sheets import arrange_block

    return arrange_block(block.draft, block.templates, options)


def files_of(document: Document, stem: str, kind: str, dpi: int, title: str) -> Iterator[tuple[str, bytes]]:
    """The files of one kind: one PDF, or a PNG or SVG for every page."""
    from ..sheets.files import pdf_bytes, png_bytes, svg_bytes

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


def left_over(job: Job, paths: Sequence[str]) -> Iterator[str]:
    """Pages that stand in the folder, beyond the last page just written: they belong to an older draft."""
    written = set(paths)
    for path in paths:
        stem, found, ending = path.rpartition("-page-")
        number, _, kind = ending.partition(".")
        if found and number.isdecimal():
            following = f"{stem}-page-{int(number) + 1}.{kind}"
            if following not in written and os.path.exists(following):
                yield following
