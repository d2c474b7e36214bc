"""`piecewright explain`: its help, and the entry of a code."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from ..catalogue.codes import Entry

HELP: Final = """\
Say everything about the blocks and quilts in FILE, or what the CODE of a message means.

For a block: every piece, its template, sizes, angles, how many to cut in what fabric and how, how every
unit lies, how it is sewn. For a quilt: its blocks, every cut, what to buy, its rows and
borders. And every default in force. For a code, as in error[seam-hangs]: what it means, with an example
of each.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright explain vane.block                  every piece, its template and size
  piecewright explain vane.block --format json    the same for another program
  piecewright explain sampler.quilt               its blocks, every cut, what to buy
  piecewright explain seam-hangs                  what that message means
"""

FORMAT: Final = "A table to read, or JSON."
COMPLAINED_OF: Final = "This gives the message:"
WELL: Final = "This is right:"
ENTRY_WIDTH: Final = 78  # columns, on a terminal of 80


def entry_text(entry: Entry) -> str:
    """A catalogue's entry, to read."""
    from textwrap import fill, indent

    parts = [f"{entry.code}: {entry.title}", "", fill(entry.explanation, ENTRY_WIDTH)]
    for words, example in ((COMPLAINED_OF, entry.wrong), (WELL, entry.right)):
        if example:
            parts += ["", words, "", indent(example.rstrip(), "    ")]
    return "\n".join(parts)


def code_unknown(code: str, near: Sequence[str]) -> str:
    """Neither a file nor a code, and the codes that are most like it."""
    like = f" Near it are: {', '.join(near)}." if near else ""
    return f"There is neither a file nor a code '{code}'.{like}"
