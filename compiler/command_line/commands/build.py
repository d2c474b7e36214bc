"""`piecewright build`: block files to template sheets, quilt files to everything the maker needs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any, Final

import click

from ...door.blocks import BlockChoice, write_files
from ...door.choices import (
    LONGEST_WAY,
    PAPERS,
    Sewing,
    cutting_of,
    measured_mark,
    sheet_options,
    square_measured,
)
from ...door.compiling import Compiled, compile_input
from ...door.documents import BLOCK_PARTS, PARTS, QUILT_PARTS, Wanted
from ...door.drawn_files import TABLE, Drawn, Job, files_of, left_over, placed
from ...door.formats import FORMATS, is_one_file, page_name
from ...failures import OwnMistake, Refused
from ...words.phrases import count_of
from ..booklets import booklet_options, refuse_format, refuse_ways
from ..choices import (
    LengthChoice,
    ListChoice,
    block_option,
    command,
    cutting_options,
    dpi_option,
    each_once,
    open_shelf,
    out_option,
    shelf_option,
    understood,
)
from ..console import CLEAN, Progress, Tally, complain, say, show_diagnostics
from ..inputs import inputs_of

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


class MarkChoice(LengthChoice):
    """A length measured on a mark, which may be named: `0.97in`, `bar=4.9cm`. Gives what the inch square
    would have measured, in inches."""

    name = "mark"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        """That length, or a use error that names the marks and the units."""
        if isinstance(value, Fraction):
            return value
        return understood(self, lambda words: square_measured(measured_mark(words)), value, param, ctx)


@command("build", short_help="Make the sheets of blocks and quilts.", epilog=EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="FILE|FOLDER...", type=click.Path(allow_dash=True))
@click.option(
    "--format",
    "formats",
    multiple=True,
    type=ListChoice(tuple(FORMATS)),
    default=(("pdf",),),
    help="Kind of file; several with commas. PNG and SVG are one a page; HTML is for booklets.  "
    "[default: pdf]",
)
@click.option(
    "--paper",
    type=click.Choice(PAPERS, case_sensitive=False),
    default=PAPERS[0],
    show_default=True,
    help="Paper that the sheets are laid out for.",
)
@click.option(
    "--kind",
    type=click.Choice(["allowance", "finished", "window"], case_sensitive=False),
    default="allowance",
    show_default=True,
    help="Templates with seam allowance, of finished size for hand piecing, or with a window to "
    "place a motif.",
)
@click.option(
    "--lines",
    type=click.Choice(["cut-solid", "cut-dashed"], case_sensitive=False),
    default="cut-solid",
    show_default=True,
    help="Whether the cutting line is the solid one or the dashed one.",
)
@click.option(
    "--measured",
    type=MarkChoice(),
    metavar="[square=|bar=]LENGTH",
    help="What the 1in check square (or the 5cm bar) of an earlier print measured: 0.97in, 2.46cm. "
    "Far from both, say which: square=0.87in. The sheets are then made to come out right.",
)
@cutting_options
@click.option(
    "--parts",
    multiple=True,
    type=ListChoice(PARTS),
    help="Only these parts of a block or a quilt, a file each; several with commas.",
)
@click.option("--tables", is_flag=True, help="Write a quilt's numbers, too, as CSV and as JSON.")
@click.option(
    "--blocks", "blocks_too", is_flag=True, help="Make the blocks written in a quilt's file a PDF each, too."
)
@booklet_options
@out_option
@dpi_option(300)
@block_option
@shelf_option
def build(
    files: Sequence[str], formats: tuple[tuple[str, ...], ...], paper: Any, kind: Any, lines: Any,
    measured: Fraction | None, parts: tuple[tuple[str, ...], ...], tables: bool, blocks_too:
    bool, booklet: bool, ways: tuple[tuple[str, str], ...], ruler: Fraction, margin: tuple[Fraction,
    Fraction] | None, buy: Any, out: str, dpi: int, titles: tuple[str, ...], shelves: tuple[str, ...],
) -> int:  # fmt: skip
    """Make the sheets of every block or quilt in FILE.

    A block's are its templates; with --booklet, all that a class needs. A quilt's are its picture, what you
    need for it, the counts, the cutting chart, the cutting pictures and the templates of all its blocks: one
    PDF for each colourway. A file that has a quilt makes no others, but with
    --blocks; --block TITLE makes that block's instead.

    A FOLDER stands for every .block and .quilt file in it, and '-' for standard input. A file with an error
    makes no sheets; other files still do. An older sheet stays as it is until the new one is complete.
    """
    inputs, sewing = inputs_of(files), Sewing(ways)
    cutting = cutting_of(ruler, margin, buy, sewing)
    progress = Progress(len(inputs))
    job = Job(
        Wanted(sheet_options(paper, kind, lines, measured), sewing, cutting, each_once(parts), booklet),
        each_once(formats),
        out,
        dpi,
        tables,
        progress.doing,
    )
    refuse_format(job.formats, booklet)
    refuse_ways(ways, booklet, job.wanted.parts)
    run = Run(job, BlockChoice(titles), blocks_too, progress)
    shelf = open_shelf(shelves)
    for given in inputs:
        progress.next_file()
        progress.doing(f"{given.name}: drafting")
        try:
            run.build(compile_input(given, shelf, cutting))
        except OwnMistake as problem:
            run.tally.own_mistakes += 1
            progress.clear()
            complain(str(problem))
        finally:
            progress.clear()
    return run.end()


@dataclass(slots=True)
class Run:
    """One run of the command."""

    job: Job
    choice: BlockChoice
    blocks_too: bool
    progress: Progress
    tally: Tally = field(default_factory=Tally)

    def build(self, compiled: Compiled) -> None:
        """The sheets of one compiled file, and what there is to say about it."""
        self.tally.add(compiled.diagnostics)
        self.progress.clear()
        show_diagnostics(compiled.diagnostics, compiled.sources, err=True)
        quilts = () if self.choice.given else compiled.planned
        blocks = [] if quilts and not self.blocks_too else self.choice.choose(compiled.own_blocks)
        if not quilts and not blocks:
            return
        self.job.log.clear()
        try:
            paths = write_files(self.job.folder, files_of(self.job, compiled.name, quilts, blocks))
        except Refused as refused:
            self.progress.clear()
            self.tally.add_to_last((refused.said,))
            show_diagnostics((refused.said,), compiled.sources, err=True)
            return
        self.progress.clear()
        for each in self.job.log:
            say(each if isinstance(each, str) else written_line(self.job.folder, each))
        for left in left_over(paths):
            complain(f"{left}: This is left from an earlier build that had more pages.")

    def end(self) -> int:
        """The exit status, when the last is said."""
        job, status = self.job, self.tally.status()
        if status == CLEAN:
            self.choice.refuse_unmet()
            for title in job.wanted.sewing.unmet:
                raise click.UsageError(f"--sew: there is no block '{title[:LONGEST_WAY]}' in what was read.")
            if job.tables and not job.quilts:
                raise click.UsageError("--tables is for quilts, and no quilt was made.")
            if job.wanted.parts and not job.parts_made:
                only = [part for part in QUILT_PARTS if part not in BLOCK_PARTS]
                raise click.UsageError(
                    f"--parts: a block has {', '.join(BLOCK_PARTS)}; only for quilts are {', '.join(only)}."
                )
        if self.tally.errors or self.tally.warnings or self.tally.notes:
            click.echo(self.tally.summary(), err=True)
        return status


def written_line(folder: str, drawn: Drawn) -> str:
    """`Wrote sheets/tidewater-vane-v2.pdf (3 pages).`"""
    stem, kind, pages = drawn.stem, drawn.kind, drawn.pages
    if not pages:
        return f"Wrote {placed(folder, stem if kind == TABLE else f'{stem}.{kind}')}."
    if is_one_file(kind):
        return f"Wrote {placed(folder, f'{stem}.{kind}')} ({count_of(pages, 'page')})."
    first = placed(folder, page_name(stem, 1, kind))
    last = f" to {page_name(stem, pages, kind)}" if pages > 1 else ""
    return f"Wrote {first}{last} ({count_of(pages, 'page')})."
