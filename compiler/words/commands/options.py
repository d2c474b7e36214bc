"""The helps of options that several commands have, and what is told of those that do not go together."""

from __future__ import annotations

from typing import Final

SEW: Final = (
    "How blocks are sewn, in a booklet or its parts: with templates and ruler, on foundations, or over paper "
    "pieces by hand. A quilt's cloth is cut for it. For one block: 'Log Cabin=foundation'. Repeatable.  "
    "[default: templates]"
)
BOOKLET: Final = (
    "A booklet for a class: what you need, cutting, templates or foundations, steps in pictures, a drafting "
    "exercise, a storage card. '--format pdf,html' makes it a page for phones, too."
)
OUT: Final = "Where the files go; made if need be.  [default: where you are]"
BLOCK: Final = "Only the block of this title. Repeatable."
DPI: Final = "Dots to the inch of a PNG."
BUY: Final = "Say what to buy in eighths of a yard or in tenths of a metre.  [default: as the ruler]"
MARGIN: Final = (
    "Cloth to buy over what the cutting plan takes: 10%, 4in, or 0in for none.  [default: 5%, at least 1in]"
)
RULER: Final = (
    "What the marks on your ruler are apart. Quilts are cut to them.  [default: 1/8in; 2.5mm where all is "
    "told in cm]"
)
UNITS: Final = (
    "Tell everything in inches or in centimetres.  [default: as the ruler, else as the file is written]"
)


def shelf(variable: str) -> str:
    """The help of `--shelf`."""
    return f"A folder of blocks that 'use' may find, after the file's own. Repeatable. {variable} adds more."


def format_without_booklet(kind: str) -> str:
    """A format of booklets asked for and no booklet."""
    return f"--format {kind} is for booklets: add --booklet."


def way_without_booklet() -> str:
    """A way of sewing for sheets of templates."""
    return "--sew is for booklets and their parts: add --booklet or --parts."
