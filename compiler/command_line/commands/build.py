"""`piecewright build`: block files to template sheets, quilt files to everything the maker needs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import chain
from typing import Any, Final

import click

from ..blocks import BlockChoice, write_files
from ..booklets import HTML, Booklets, booklet_options, refuse_html, refuse_ways
from ..booklets import PARTS as BLOCK_PARTS
from ..choices import (
    LONGEST,
    LengthChoice,
    ListChoice,
    block_option,
    cutting_of,
    cutting_options,
    dpi_option,
    each_once,
    open_shelf,
    out_option,
    shelf_option,
)
from ..compiling import Compiled, compile_input
from ..console import CLEAN, Progress, complain, say, show_diagnostics
from ..drawn_files import Job, block_files, left_over, quilt_files
from ..failures import OwnMistake, Refused
from ..inputs import inputs_of
from ..quilts import PARTS as QUILT_PARTS

FORMATS: Final = ("pdf", "png", "svg", HTML)
PARTS: Final = tuple(dict.fromkeys((*QUILT_PARTS, *BLOCK_PARTS)))
MARKS: Final = {"square": Fraction(1), "bar": Fraction(250, 127)}
"""Inches of the two marks that a page is checked by: the 1in square and the 5cm bar."""

NEARLY: Final = Fraction(1, 10)
"""Of a mark: a length no further from it was measured on it. Printers are out by up to a twentieth (common
practice, no published source); a length further from both might be of either, so the user is asked."""

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
    """A length measured on a mark, which may be named: `0.97in`, `bar=4.9cm`. Gives (mark, inches); '' stands
    for a mark that is not named."""

    name = "mark"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        """The mark and its length, or a use error that names the marks and the units."""
        if isinstance(value, tuple):
            return value
        mark, _, length = value.rpartition("=")
        if mark.strip().lower() not in ("", *MARKS):
            self.fail(f"'{mark[:LONGEST]}' is not one of {', '.join(MARKS)}.", param, ctx)
        return mark.strip().lower(), super().convert(length.strip(), param, ctx)


@click.command("build", short_help="Make the sheets of blocks and quilts.", epilog=EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="FILE|FOLDER...", type=click.Path(allow_dash=True))
@click.option(
    "--format",
    "formats",
    multiple=True,
    type=ListChoice(FORMATS),
    default=(("pdf",),),
    help="Kind of file; several with commas. PNG and SVG are one a page; HTML is for booklets.  "
    "[default: pdf]",
)
@click.option(
    "--paper",
    type=click.Choice(["letter", "a4"], case_sensitive=False),
    default="letter",
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
    measured: tuple[str, Fraction] | None, parts: tuple[tuple[str, ...], ...], tables: bool, blocks_too:
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
    from ...sheets.arrange.options import SheetOptions

    options = SheetOptions(paper=paper, kind=kind, lines=lines, measured=square_measured(measured))
    inputs = inputs_of(files)
    booklets, cutting = Booklets(booklet, ways), cutting_of(ruler, margin, buy)
    if booklet or parts:
        cutting = replace(cutting, on_paper=booklets.on_paper)
    job = Job(
        options,
        each_once(formats),
        out,
        dpi,
        BlockChoice(titles),
        each_once(parts),
        tables,
        blocks_too,
        booklets,
        cutting,
        Progress(len(inputs)),
    )
    refuse_html(job.formats, job.booklets)
    refuse_ways(job.booklets, job.parts)
    shelf = open_shelf(shelves)
    for given in inputs:
        job.progress.next_file()
        job.progress.doing(f"{given.name}: drafting")
        try:
            build_file(job, compile_input(given, shelf, job.cutting))
        except OwnMistake as problem:
            job.tally.own_mistakes += 1
            job.progress.clear()
            complain(str(problem))
        finally:
            job.progress.clear()
    return finish(job)


def finish(job: Job) -> int:
    """The exit status, when the last is said."""
    if job.tally.status() == CLEAN:
        job.choice.refuse_unmet()
        job.booklets.refuse_unmet()
        if job.tables and not job.quilts:
            raise click.UsageError("--tables is for quilts, and no quilt was made.")
        if job.parts and not job.parts_made:
            only = [part for part in QUILT_PARTS if part not in BLOCK_PARTS]
            raise click.UsageError(
                f"--parts: a block has {', '.join(BLOCK_PARTS)}; only for quilts are {', '.join(only)}."
            )
    if job.tally.errors or job.tally.warnings or job.tally.notes:
        click.echo(job.tally.summary(), err=True)
    return job.tally.status()


def square_measured(measured: tuple[str, Fraction] | None) -> Fraction:
    """What the inch square would have measured, in inches; a use error where no printer is that far out, and
    a question where it is not plain which of the two marks was measured."""
    from ...sheets.arrange.options import LEAST_MEASURED, MOST_MEASURED

    if measured is None:
        return Fraction(1)
    mark, length = measured
    shares = {each: length / true for each, true in MARKS.items() if mark in (each, "")}
    likely = [share for share in shares.values() if LEAST_MEASURED <= share <= MOST_MEASURED]
    if not likely:
        raise click.BadParameter(
            "The square should measure near 1in (2.54cm), the bar near 5cm. A print that is further out was "
            "fitted to the page: print it again at actual size, 100%.",
            param_hint="'--measured'",
        )
    if mark or any(abs(share - 1) <= NEARLY for share in likely):
        return likely[0]
    said = ", ".join(f"the {each} would be at {round(share * 100)}%" for each, share in shares.items())
    raise click.BadParameter(
        f"Which mark was measured, the 1in square or the 5cm bar? For this length {said}. "
        f"Measure again, or say which: {' or '.join(f'{each}=LENGTH' for each in MARKS)}.",
        param_hint="'--measured'",
    )


def build_file(job: Job, compiled: Compiled) -> None:
    """The sheets of one compiled file, and what there is to say about it."""
    job.tally.add(compiled.diagnostics)
    job.progress.clear()
    show_diagnostics(compiled.diagnostics, compiled.sources, err=True)
    quilts = () if job.choice.given else compiled.planned
    blocks = [] if quilts and not job.blocks_too else job.choice.choose(compiled.own_blocks)
    if not quilts and not blocks:
        return
    lines: list[str] = []
    files = chain(
        quilt_files(job, compiled.name, quilts, lines), block_files(job, compiled.name, blocks, lines)
    )
    try:
        paths = write_files(job.folder, files)
    except Refused as refused:
        job.progress.clear()
        job.tally.add_to_last((refused.said,))
        show_diagnostics((refused.said,), compiled.sources, err=True)
        return
    job.progress.clear()
    for line in lines:
        say(line)
    for left in left_over(paths):
        complain(f"{left}: This is left from an earlier build that had more pages.")
