"""`piecewright build`: its help, and what is told of the sheets that were made."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from ..phrases import count_of

HELP: Final = """\
Make the sheets of every block or quilt in FILE.

A block's are its templates; with --booklet, all that a class needs. A quilt's are its picture, what you
need for it, the counts, the cutting chart, the cutting pictures and the templates of all its blocks: one
PDF for each colourway. A file that has a quilt makes no others, but with
--blocks; --block TITLE makes that block's instead.

A FOLDER stands for every .block and .quilt file in it, the title of a block on your shelves or in the
library for its file, and '-' for standard input. A file with an error
makes no sheets; other files still do. An older sheet stays as it is until the new one is complete.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright build vane.block                    a PDF of its templates, for Letter paper
  piecewright build vane.block --paper a4         the same for A4
  piecewright build "Ohio Star" --open            a block of the library, shown when it is made
  piecewright build sampler.quilt                 a PDF of the quilt: picture, cutting, templates
  piecewright build sampler.quilt --tables        with its numbers for a spreadsheet
  piecewright build sampler.quilt --parts cutting the cutting pictures alone
  piecewright build vane.block --booklet          a booklet for a class, with steps in pictures
  piecewright build vane.block --parts foundation paper foundations alone
  piecewright build quilt-blocks --out sheets     every file of a folder
  piecewright build vane.block --measured 0.97in  corrects a printer that shrinks
  cat vane.block | piecewright build -            reads standard input
"""

FORMAT: Final = (
    "Kind of file; several with commas. PNG and SVG are one a page; HTML is for booklets.  [default: pdf]"
)
PAPER: Final = "Paper that the sheets are laid out for."
KIND: Final = (
    "Templates with seam allowance, of finished size for hand piecing, or with a window to place a motif."
)
LINES: Final = "Whether the cutting line is the solid one or the dashed one."
MEASURED: Final = (
    "What the 1in check square (or the 5cm bar) of an earlier print measured: 0.97in, 2.46cm. Far from both, "
    "say which: square=0.87in. The sheets are then made to come out right."
)
PARTS: Final = "Only these parts of a block or a quilt, a file each; several with commas."
TABLES: Final = "Write a quilt's numbers, too, as CSV and as JSON."
OPEN: Final = "Open the first of what was made in the program that shows such files."
BLOCKS: Final = "Make the blocks written in a quilt's file a PDF each, too."


def not_opened(path: str) -> str:
    """A file that no program shows."""
    return f"{path} is made, but nothing here opens such files by itself."


def wrote_pages(first: str, last: str, pages: int) -> str:
    """The file that was made, of so many pages; or, with a `last`, the files from the first to that."""
    return f"Wrote {first}{f' to {last}' if last else ''} ({count_of(pages, 'page')})."


def left_over(path: str) -> str:
    """A page beyond the last that was made."""
    return f"{path}: This is left from an earlier build that had more pages."


def no_block_for_way(title: str) -> str:
    """A way of sewing for a title that no block has."""
    return f"--sew: there is no block '{title}' in what was read."


def tables_of_no_quilt() -> str:
    """Tables asked for and no quilt."""
    return "--tables is for quilts, and no quilt was made."


def parts_of_no_quilt(of_block: Iterable[str], of_quilt: Iterable[str]) -> str:
    """Parts of a quilt asked for and no quilt."""
    return f"--parts: a block has {', '.join(of_block)}; only for quilts are {', '.join(of_quilt)}."
