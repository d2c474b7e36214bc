"""`piecewright show`: its help, and what is told of pictures too small or too large."""

from __future__ import annotations

from typing import Final

HELP: Final = """\
Draw every block of FILE as a picture: its pieces, fabrics, and how each unit lies.

Of a file with a quilt, the quilt is drawn in each of its colourways; --block draws one of its blocks.
A block with a mistake is drawn as far as it is sound, the mistake's place marked, as '...-unfinished'.
Pictures are to look at and are not true to size; 'build' makes what is cut from.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright show vane.block                         a PNG of each block, 4in wide
  piecewright show vane.block --format svg --size 8in
  piecewright show sampler.quilt                      each colourway of the quilt
  piecewright show sampler.quilt --side-by-side       all its colourways on one sheet
"""

FORMAT: Final = "Kind of picture; several with commas.  [default: png]"
UNLETTERED: Final = "The drawing alone: no letters, numbers or words."
COLOURING: Final = "Its lines alone, on white: a page to colour."
SIDE_BY_SIDE: Final = "All colourways of a quilt, or all blocks, on one sheet."
SIZE: Final = "Longer side of the picture, from 1/2in to 40in."


def too_many_dots(most: int) -> str:
    """A picture that would take too much room."""
    return f"A picture has at most {most} dots across; take fewer."
