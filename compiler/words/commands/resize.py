"""`piecewright resize`: its help, and what is told where a size is wanted."""

from __future__ import annotations

from typing import Final

HELP: Final = """\
Say at which sizes all cuts of a block lie on the ruler, and what happens at the size of --to.

Everything drafted scales; seam allowances, trims and dots stay. Blocks that others in FILE use are not
resized themselves: they fill their cells at any size. --block chooses one block of several.

The block at its new size is a new version, or gets the title of --title, so that no template of one size is
taken for the other's.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright resize vane.block                             sizes cut by the ruler, first
  piecewright resize vane.block --to 9in                    what happens at 9in
  piecewright resize vane.block --to 9in --out vane9.block  the block file at that size
  piecewright resize "Ohio Star" --to 6in --title "Small Ohio Star" --out star.block
"""

TITLE: Final = "The title of the block at its new size.  [default: the old one, with its next version]"
TO: Final = "The width wanted, finished; the height follows in proportion."
FORMAT: Final = "To read, as JSON, or (with --to) the block file itself."
OUT: Final = "Write the block at the size of --to to this file."
RULER: Final = "What the marks on your ruler are apart."


def size_wanted() -> str:
    """The block file asked for, and no size."""
    return "Say with --to how large the block is to be."
