"""`piecewright build`: block files to template sheets, quilt files to everything the maker needs."""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

import click

from ...door.blocks import BlockChoice, write_files
from ...door.choices import (
    KINDS,
    LINES,
    LONGEST_WAY,
    Sewing,
    cutting_of,
    measured_square,
    sheet_options,
)
from ...door.compiling import Compiled, compile_input
from ...door.documents import BLOCK_PARTS, PARTS, QUILT_ONLY, Wanted
from ...door.drawn_files import TABLE, Drawn, Job, files_of, left_over, placed, subjects_of
from ...door.formats import FORMATS, is_one_file, page_name
from ...failures import Refused
from ...words.commands import build as words
from ...words.commands.files import drafting, wrote
from ..booklets import booklet_options, refuse_without_booklet
from ..choices import (
    ListChoice,
    Value,
    block_option,
    command,
    cutting_options,
    dpi_option,
    each_once,
    few,
    files_argument,
    open_shelf,
    out_option,
    paper_option,
    shelf_option,
)
from ..console import CLEAN, Progress, Tally, complain, say, show_diagnostics
from ..inputs import inputs_of


@command("build", help=words.HELP, epilog=words.EXAMPLES)
@files_argument
@click.option(
    "--format",
    "formats",
    multiple=True,
    type=ListChoice(tuple(FORMATS)),
    default=(("pdf",),),
    help=words.FORMAT,
)
@paper_option(help=words.PAPER)
@click.option("--kind", type=few(KINDS), default=KINDS[0], show_default=True, help=words.KIND)
@click.option("--lines", type=few(LINES), default=LINES[0], show_default=True, help=words.LINES)
@click.option(
    "--measured",
    type=Value("mark", measured_square),
    metavar="[square=|bar=]LENGTH",
    help=words.MEASURED,
)
@cutting_options
@click.option("--parts", multiple=True, type=ListChoice(PARTS), help=words.PARTS)
@click.option("--tables", is_flag=True, help=words.TABLES)
@click.option("--blocks", "blocks_too", is_flag=True, help=words.BLOCKS)
@click.option("--open", "opens", is_flag=True, help=words.OPEN)
@booklet_options
@out_option
@dpi_option(300)
@block_option
@shelf_option
def build(
    files: Sequence[str], formats: tuple[tuple[str, ...], ...], paper: Any, kind: Any, lines: Any,
    measured: Fraction | None, parts: tuple[tuple[str, ...], ...], tables: bool, blocks_too: bool,
    opens: bool, booklet: bool, ways: tuple[tuple[str, str], ...], ruler: Fraction,
    margin: tuple[Fraction, Fraction] | None, buy: Any, out: str, dpi: int, titles: tuple[str, ...],
    shelves: tuple[str, ...],
) -> int:  # fmt: skip
    """The exit status, when the sheets of every file are made."""
    shelf, sewing = open_shelf(shelves), Sewing(ways)
    inputs = inputs_of(files, shelf)
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
    refuse_without_booklet(job.formats, ways, booklet, job.wanted.parts)
    run = Run(job, BlockChoice(titles), blocks_too, progress)
    for given in inputs:
        with progress.file(drafting(given.name), run.tally):
            run.build(compile_input(given, shelf, cutting))
    return run.end(opens)


@dataclass(slots=True)
class Run:
    """One run of the command."""

    job: Job
    choice: BlockChoice
    blocks_too: bool
    progress: Progress
    tally: Tally = field(default_factory=Tally)
    made: list[str] = field(default_factory=list)

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
            subjects = subjects_of(compiled.name, quilts, blocks)
            paths = write_files(self.job.folder, files_of(self.job, subjects))
        except Refused as refused:
            self.progress.clear()
            self.tally.add_to_last((refused.said,))
            show_diagnostics((refused.said,), compiled.sources, err=True)
            return
        self.progress.clear()
        self.made += paths
        for each in self.job.log:
            say(each if isinstance(each, str) else written_line(self.job.folder, each))
        for left in left_over(paths):
            complain(words.left_over(left))

    def end(self, opens: bool = False) -> int:
        """The exit status, when the last is said, and the first of what was made is opened, if that is
        wanted."""
        job, status = self.job, self.tally.status()
        if status == CLEAN:
            self.choice.refuse_unmet()
            for title in job.wanted.sewing.unmet:
                raise click.UsageError(words.no_block_for_way(title[:LONGEST_WAY]))
            if job.tables and not job.quilts:
                raise click.UsageError(words.tables_of_no_quilt())
            if job.wanted.parts and not job.parts_made:
                raise click.UsageError(words.parts_of_no_quilt(BLOCK_PARTS, QUILT_ONLY))
        if self.tally.errors or self.tally.warnings or self.tally.notes:
            click.echo(self.tally.summary(), err=True)
        if opens and self.made:
            first = next((each for each in self.made if each.endswith(".pdf")), self.made[0])
            if click.launch(os.path.abspath(first)):
                complain(words.not_opened(first))
        return status


def written_line(folder: str, drawn: Drawn) -> str:
    """`Wrote sheets/tidewater-vane-v2.pdf (3 pages).`"""
    stem, kind, pages = drawn.stem, drawn.kind, drawn.pages
    if not pages:
        return wrote(placed(folder, stem if kind == TABLE else f"{stem}.{kind}"))
    if is_one_file(kind):
        return words.wrote_pages(placed(folder, f"{stem}.{kind}"), "", pages)
    last = page_name(stem, pages, kind) if pages > 1 else ""
    return words.wrote_pages(placed(folder, page_name(stem, 1, kind)), last, pages)
