"""`piecewright resize`: at which sizes a block is cut by the ruler, and the block at another size."""

from __future__ import annotations

import os
from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Final

import click

from ... import __version__
from ...diagnostics.diagnostic import Severity
from ...diagnostics.failures import WrongUse, own_mistakes
from ...diagnostics.source import Source
from ...door.blocks import BlockChoice, named, write_files
from ...door.compiling import Compiled
from ...shelves.folders import FolderShelf
from ..alone import compile_alone
from ..choices import LengthChoice, RulerChoice, block_option, command, open_shelf, shelf_option
from ..console import CLEAN, COMPLAINED, say, show_diagnostics
from ..inputs import one_input

if TYPE_CHECKING:
    from ...language.edits import Edit
    from ...pipeline import CompiledBlock

LEAST: Final = Fraction(1)  # inches: smaller blocks are all allowance
MOST: Final = Fraction(120)  # inches: a quilt of one block

EXAMPLES: Final = """
\b
Examples:
  piecewright resize vane.block                             sizes cut by the ruler, first
  piecewright resize vane.block --to 9in                    what happens at 9in
  piecewright resize vane.block --to 9in --out vane9.block  the block file at that size
"""


@command("resize", short_help="Say which sizes suit a block, and draft it at another.", epilog=EXAMPLES)
@click.argument("file", metavar="FILE", type=click.Path(allow_dash=True))
@click.option(
    "--to",
    type=LengthChoice("9in or 24cm"),
    metavar="LENGTH",
    help="The width wanted, finished; the height follows in proportion.",
)
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "json", "block"]),
    default="text",
    show_default=True,
    help="To read, as JSON, or (with --to) the block file itself.",
)
@click.option(
    "--out",
    metavar="FILE",
    type=click.Path(dir_okay=False),
    help="Write the block at the size of --to to this file.",
)
@click.option(
    "--ruler",
    type=RulerChoice(),
    default="1/8in",
    show_default=True,
    help="What the marks on your ruler are apart.",
)
@block_option
@shelf_option
def resize(
    file: str,
    to: Fraction | None,
    form: str,
    out: str | None,
    ruler: Fraction,
    titles: tuple[str, ...],
    shelves: tuple[str, ...],
) -> int:
    """Say at which sizes all cuts of a block lie on the ruler, and what happens at the size of --to.

    Everything drafted scales; seam allowances, trims and dots stay. Blocks that others in FILE use are not
    resized themselves: they fill their cells at any size. --block chooses one block of several.
    """
    if to is None and (out is not None or form == "block"):
        raise click.UsageError("Say with --to how large the block is to be.")
    if to is not None and not LEAST <= to <= MOST:
        raise click.BadParameter("A block is from 1in to 120in wide.", param_hint="'--to'")
    given, choice, shelf = one_input(file), BlockChoice(titles), open_shelf(shelves)
    compiled, status = compile_alone(given, shelf)
    if status != CLEAN:
        return status
    blocks = choice.choose(compiled.own_blocks if choice.given else outermost(compiled))
    choice.refuse_unmet()
    if not blocks:
        raise click.UsageError("There is no block in what was read.")
    with own_mistakes(given.name):
        text = resized(compiled, blocks, to) if to is not None else ""
        if text and not compiles(Source(given.name, text), shelf):
            return COMPLAINED
        told = text if form == "block" else report(blocks, to, ruler, form)
    if out is None:
        click.echo(told, nl=form != "block")
        return CLEAN
    [path] = write_files(os.path.dirname(out) or ".", [(os.path.basename(out), text.encode())])
    say(told if form == "json" else f"{told if form == 'text' else ''}\n\nWrote {path}.".lstrip())
    return CLEAN


def outermost(compiled: Compiled) -> list[CompiledBlock]:
    """The file's blocks that no other block in it uses."""
    used = {use for each in compiled.own_blocks for use in each.draft.uses}
    return [each for each in compiled.own_blocks if (each.draft.title, each.draft.version) not in used]


def resized(compiled: Compiled, blocks: Sequence[CompiledBlock], to: Fraction) -> str:
    """The file with the blocks drafted that wide; a use error for one that has yet to be drafted."""
    from ...language.edits import with_edits
    from ...language.parser import parse
    from ...language.rescale import rescaled

    file = parse(compiled.source).value
    assert file is not None, "the file has compiled"
    trees = {each.title.span: each for each in file.blocks}
    edits: list[Edit] = []
    for each in blocks:
        block = trees[each.draft.origin] if each.draft.origin else None
        assert block is not None, "every block of the file has its words"
        if any(measured.block.title.span == each.draft.origin for measured in compiled.measured):
            raise WrongUse(f"'{named(each.draft.title)}' is a washed block: draft it first.")
        edits += rescaled(compiled.source, block, to / each.draft.width)
    return with_edits(compiled.source.text, edits)


def compiles(source: Source, shelf: FolderShelf) -> bool:
    """Whether the resized file compiles; what is wrong with it is shown."""
    from ...pipeline import compile_file

    outcome = compile_file(source, shelf)
    faults = [each for each in outcome.diagnostics if each.severity is Severity.ERROR]
    show_diagnostics(faults, {**shelf.sources, source.name: source}, err=True)
    return not faults


def report(blocks: Sequence[CompiledBlock], to: Fraction | None, ruler: Fraction, form: str) -> str:
    """What is told of the blocks, to read or as JSON."""
    from json import dumps

    from ...cutting.sizes import block_at
    from ...sheets.reports.sizes_report import size_text, sizes_record, sizes_text

    asked = [block_at(each.draft, each.templates, to, ruler) if to is not None else None for each in blocks]
    pairs = list(zip(blocks, asked, strict=True))
    if form == "json":
        records = [sizes_record(each.draft, each.templates, ruler, size) for each, size in pairs]
        return dumps({"piecewright": __version__, "blocks": records}, ensure_ascii=True)
    return "\n\n\n".join(
        size_text(each.draft, each.templates, size, ruler)
        if size
        else sizes_text(each.draft, each.templates, ruler)
        for each, size in pairs
    )
