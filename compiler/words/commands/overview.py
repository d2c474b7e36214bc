"""What is told of the whole program: its help, before and after the list of its commands."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from ...diagnostics.visible import shortened, visible

LONGEST: Final = 60  # characters of a word in a message

HELP: Final = """\
Patchwork blocks and quilts from text to true-size template sheets.

You describe a block in a text file: its size, its grid, its seams and its pieces. Piecewright drafts it,
finds which pieces share a template, adds seam allowance, and lays the templates out on pages that print
at their true size. You describe a quilt by its blocks, their setting and its fabrics: Piecewright counts
and plans the cutting, too, and says how much of each fabric to buy.
"""

COMMANDS: Final = {
    "new": "Begin a block's or a quilt's file.",
    "build": "Make the sheets of blocks and quilts.",
    "check": "Say what is wrong with blocks and quilts.",
    "show": "Draw blocks and quilts as pictures.",
    "explain": "Say everything about blocks and quilts, or about a code.",
    "compare": "Say what changed, and which templates to keep.",
    "draft": "Draft a block that was measured off an old quilt.",
    "resize": "Say which sizes suit a block, and draft it at another.",
    "find": "Find blocks on the shelves.",
    "catalogue": "Make a picture catalogue of the shelves.",
    "fmt": "Lay files out in the house style.",
    "lint": "Say what could be better, and mend it.",
    "lock": "Pin the blocks that a quilt uses.",
    "completion": "Let your shell complete commands.",
}
"""Each command in a line."""

EXAMPLES: Final = """
\b
First steps:
  piecewright new block             begins a file, from a few answers
  piecewright check vane.block      is the block all right?
  piecewright show vane.block       a picture of it
  piecewright build vane.block      a PDF of true-size templates to print
  piecewright explain vane.block    every piece, size and default
  piecewright build sampler.quilt   a whole quilt: picture, cutting, templates
  piecewright build "Ohio Star"     a block of the library, by its title
  piecewright find star             blocks of that name, on your shelves and in the library
Each command has its own help, with examples: piecewright build --help

\b
Exit status:
  0  all well (there may be warnings and notes)
  1  a file has an error, or something could not be read or written
  2  the command was used wrongly
  3  a mistake in Piecewright itself
"""


def command_wanted(file: str) -> str:
    """A file where a command goes."""
    name = visible(shortened(file, LONGEST))
    quoted = f'"{name}"' if " " in name else name
    return (
        f"Say what is to be done with '{name}' first: 'piecewright build {quoted}' makes its sheets, "
        f"'check' says whether it is all right, 'show' draws it, 'explain' tells its numbers."
    )


def no_command(word: str, near: Sequence[str], known: Iterable[str]) -> str:
    """A word that is no command, and the nearest that is one; or all."""
    named = visible(shortened(word, LONGEST))
    meant = f"Did you mean '{near[0]}'?" if near else f"There are {', '.join(known)}."
    return f"There is no command '{named}'. {meant}"
