"""`piecewright show`: a block or a quilt as a picture."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import click

from ...door.blocks import BlockChoice, write_files
from ...door.choices import cutting_of
from ...door.compiling import unfinished
from ...door.naming import Names
from ...door.pictures import (
    MOST_DOTS,
    SHOWN_AS,
    bare,
    beside,
    block_drawings,
    picture_size,
    pictures_of,
    quilt_drawings,
    rough_drawings,
)
from ...words.commands import show as words
from ..choices import (
    ListChoice,
    Value,
    block_option,
    command,
    dpi_option,
    each_once,
    file_argument,
    open_shelf,
    out_option,
    shelf_option,
    units_option,
)
from ..console import CLEAN, say_wrote
from ..inputs import one_input
from ..one_input import compile_alone


@command("show", help=words.HELP, epilog=words.EXAMPLES)
@file_argument
@click.option(
    "--format", "formats", multiple=True, type=ListChoice(SHOWN_AS), default=(("png",),), help=words.FORMAT
)
@click.option(
    "--size",
    type=Value("length", picture_size),
    default="4in",
    show_default=True,
    metavar="LENGTH",
    help=words.SIZE,
)
@click.option("--unlettered", is_flag=True, help=words.UNLETTERED)
@click.option("--colouring", is_flag=True, help=words.COLOURING)
@click.option("--side-by-side", is_flag=True, help=words.SIDE_BY_SIDE)
@out_option
@dpi_option(150)
@units_option
@block_option
@shelf_option
def show(
    file: str,
    formats: tuple[tuple[str, ...], ...],
    size: Fraction,
    unlettered: bool,
    colouring: bool,
    side_by_side: bool,
    out: str,
    dpi: int,
    units: Any,
    titles: tuple[str, ...],
    shelves: tuple[str, ...],
) -> int:
    """The exit status, when the pictures are written."""
    refuse_too_many_dots(size, dpi)
    choice, shelf = BlockChoice(titles), open_shelf(shelves)
    given = one_input(file, shelf)
    compiled, status = compile_alone(given, shelf, cutting_of(None, units))
    wanted = each_once(formats)
    names, size_inches = Names(out), float(size)
    if status != CLEAN:
        rough = [each for each in unfinished(given, compiled, shelf) if choice.wants(each.title)]
        drawings = rough_drawings(rough, names, given.name, size_inches, compiled.say)
        if drawings:
            say_wrote(write_files(out, pictures_of(drawings, given.name, wanted, dpi)))
        return status
    if compiled.quilts and not choice.given:
        drawings = quilt_drawings(compiled.quilts, names, given.name, size_inches, compiled.say)
    else:
        blocks = choice.choose(compiled.own_blocks)
        drawings = block_drawings(blocks, names, given.name, size_inches, compiled.say)
        choice.refuse_unmet()
    if unlettered or colouring:
        drawings = bare(drawings, lines_only=colouring)
    if side_by_side and drawings:
        drawings = beside(drawings)
    say_wrote(write_files(out, pictures_of(drawings, given.name, wanted, dpi)))
    return CLEAN


def refuse_too_many_dots(size: Fraction, dpi: int) -> None:
    """A use error where a picture would be too large to hold."""
    if size * dpi > MOST_DOTS:
        raise click.BadParameter(words.too_many_dots(MOST_DOTS), param_hint="'--dpi'")
