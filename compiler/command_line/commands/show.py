"""`piecewright show`: a block or a quilt as a picture."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

import click

from ...door.blocks import BlockChoice, write_files
from ...door.naming import Names
from ...door.pictures import block_drawings, pictures_of, quilt_drawings
from ..choices import (
    LengthChoice,
    ListChoice,
    block_option,
    command,
    dpi_option,
    each_once,
    open_shelf,
    out_option,
    shelf_option,
)
from ..console import CLEAN, say
from ..inputs import one_input
from ..one_input import compile_alone

FORMATS: Final = ("png", "svg", "pdf")
LEAST: Final = Fraction(1, 2)  # inches: nothing can be told apart in a smaller picture
MOST: Final = Fraction(40)  # inches: a poster
MOST_DOTS: Final = 7_200  # across, 24in at 300dpi: with four bytes a dot, 200 MB

EXAMPLES: Final = """
\b
Examples:
  piecewright show vane.block                         a PNG of each block, 4in wide
  piecewright show vane.block --format svg --size 8in
  piecewright show sampler.quilt                      each colourway of the quilt
"""


@command("show", short_help="Draw blocks and quilts as pictures.", epilog=EXAMPLES)
@click.argument("file", metavar="FILE", type=click.Path(allow_dash=True))
@click.option(
    "--format",
    "formats",
    multiple=True,
    type=ListChoice(FORMATS),
    default=(("png",),),
    help="Kind of picture; several with commas.  [default: png]",
)
@click.option(
    "--size",
    type=LengthChoice(),
    default="4in",
    show_default=True,
    metavar="LENGTH",
    help="Longer side of the picture, from 1/2in to 40in.",
)
@out_option
@dpi_option(150)
@block_option
@shelf_option
def show(
    file: str,
    formats: tuple[tuple[str, ...], ...],
    size: Fraction,
    out: str,
    dpi: int,
    titles: tuple[str, ...],
    shelves: tuple[str, ...],
) -> int:
    """Draw every block of FILE as a picture: its pieces, fabrics, and how each unit lies.

    Of a file with a quilt, the quilt is drawn in each of its colourways; --block draws one of its blocks.
    Pictures are to look at and are not true to size; 'build' makes what is cut from.
    """
    refuse_out_of_bounds(size, dpi)
    given, choice = one_input(file), BlockChoice(titles)
    compiled, status = compile_alone(given, open_shelf(shelves))
    if status != CLEAN:
        return status
    wanted = each_once(formats)
    names, size_inches = Names(out), float(size)
    if compiled.quilts and not choice.given:
        drawings = quilt_drawings(compiled.quilts, names, given.name, size_inches)
    else:
        drawings = block_drawings(choice.choose(compiled.own_blocks), names, given.name, size_inches)
        choice.refuse_unmet()
    for path in write_files(out, pictures_of(drawings, given.name, wanted, dpi)):
        say(f"Wrote {path}.")
    return CLEAN


def refuse_out_of_bounds(size: Fraction, dpi: int) -> None:
    """A use error where a picture would be too small to see, or too large to hold."""
    if not LEAST <= size <= MOST:
        raise click.BadParameter("A picture is from 1/2in to 40in.", param_hint="'--size'")
    if size * dpi > MOST_DOTS:
        raise click.BadParameter(
            f"A picture has at most {MOST_DOTS} dots across; take fewer.", param_hint="'--dpi'"
        )
