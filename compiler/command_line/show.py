"""`piecewright show`: a block as a picture."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Final

import click

from .blocks import BlockChoice, named, write_files
from .choices import LengthChoice, ListChoice, block_option, dpi_option, open_shelf, out_option, shelf_option
from .compiling import compile_alone
from .console import CLEAN, say
from .failures import own_mistakes
from .inputs import one_input
from .naming import Names
from .stopping import held

if TYPE_CHECKING:
    from ..pipeline import CompiledBlock
    from ..sheets.page import Page

FORMATS: Final = ("png", "svg", "pdf")
LEAST: Final = Fraction(1, 2)  # inches: nothing can be told apart in a smaller picture
MOST: Final = Fraction(40)  # inches: a poster
MOST_DOTS: Final = 16_000  # across: with four bytes a dot, a gigabyte

EXAMPLES: Final = """
\b
Examples:
  piecewright show vane.block                         a PNG of each block, 4in wide
  piecewright show vane.block --format svg --size 8in
"""


@click.command("show", short_help="Draw blocks as pictures.", epilog=EXAMPLES)
@click.argument("file", metavar="FILE", type=click.Path(allow_dash=True))
@click.option("--format", "formats", multiple=True, type=ListChoice(FORMATS), default=(("png",),),
              help="Kind of picture; several with commas.  [default: png]")
@click.option("--size", type=LengthChoice(), default="4in", show_default=True, metavar="LENGTH",
              help="Longer side of the picture, from 1/2in to 40in.")
@out_option
@dpi_option(150)
@block_option
@shelf_option
def show(file: str, formats: tuple[tuple[str, ...], ...], size: Fraction, out: str, dpi: int,
         titles: tuple[str, ...], shelves: tuple[str, ...]) -> int:
    """Draw every block of FILE as a picture: its pieces, fabrics, and how each unit lies.

    Pictures are to look at and are not true to size; 'build' makes what is cut from.
    """
    if not LEAST <= size <= MOST:
        raise click.BadParameter("A picture is from 1/2in to 40in.", param_hint="'--size'")
    if size * dpi > MOST_DOTS:
        raise click.BadParameter(f"A picture has at most {MOST_DOTS} dots across; take fewer.",
                                 param_hint="'--dpi'")
    given, choice = one_input(file), BlockChoice(titles)
    compiled, status = compile_alone(given, open_shelf(shelves))
    if status != CLEAN:
        return status
    blocks = choice.choose(compiled.own_blocks)
    choice.refuse_unmet()
    wanted = tuple(dict.fromkeys(word for each in formats for word in each))
    for path in write_files(out, pictures_of(blocks, given.name, wanted, float(size), dpi)):
        say(f"Wrote {path}.")
    return CLEAN


def pictures_of(blocks: Sequence[CompiledBlock], source: str, formats: Sequence[str], size: float,
                dpi: int) -> Iterator[tuple[str, bytes]]:
    """A file of each kind for each block, made one at a time. `size` is in inches."""
    names = Names()
    for block in blocks:
        stem = names.stem(block.draft.title, block.draft.version, source)
        with own_mistakes(f"{source}, block '{named(block.draft.title)}'"):
            page = picture(block, size)
        for kind in formats:
            with own_mistakes(f"{source}, block '{named(block.draft.title)}'"), held():
                data = drawn(block, page, kind, dpi)
            yield f"{stem}-picture.{kind}", data


def picture(block: CompiledBlock, size: float) -> Page:
    """The block as one page, just large enough."""
    from ..sheets.arrange.picture import block_picture

    return block_picture(block.draft, size)


def drawn(block: CompiledBlock, page: Page, kind: str, dpi: int) -> bytes:
    """The picture as the bytes of one kind of file."""
    from ..sheets.files import pdf_bytes, png_bytes, svg_bytes
    from ..sheets.page import Document

    if kind == "png":
        return png_bytes(page, dpi)
    if kind == "svg":
        return svg_bytes(page)
    draft = block.draft
    return pdf_bytes(Document(draft.title, f"version {draft.version}, a picture", draft.maker, "", (page,)))
