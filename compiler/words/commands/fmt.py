"""`piecewright fmt`: its help, and what is told of files laid out."""

from __future__ import annotations

from typing import Final

from ...diagnostics.visible import visible
from ..phrases import count_of, one_of

HELP: Final = """\
Lay out the text of every FILE in the house style, and change nothing that it says.

Blanks, line ends and how far lines are indented change; words, remarks and the order of statements stay.
The first line gets its edition where it has none. A file with a mistake is left as it is. A FOLDER stands
for every .block and .quilt file in it, and '-' for standard input, laid out on standard output.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright fmt vane.block           lay the file out anew
  piecewright fmt .                    every block and quilt file of the folder
  piecewright fmt --check .            name the files that are not; change nothing
  piecewright fmt --diff vane.block    show what would change; change nothing
  piecewright fmt - < vane.block       from standard input to standard output
"""

CHECK: Final = "Change nothing: name the files that would change; status 1 where there are any."
DIFF: Final = "Change nothing: show the lines that would change."


def would_change(name: str) -> str:
    """A file that is to be laid out."""
    return f"{visible(name)} is not in the house style."


def changed(name: str) -> str:
    """A file that was laid out."""
    return f"Laid out {visible(name)}."


def summary(changed: int, as_were: int, faulty: int, *, only_told: bool) -> str:
    """How many files changed (or would), stayed, and could not be read."""
    parts = [
        f"{count_of(number, 'file')} {what}"
        for number, what in (
            (changed, "would change" if only_told else "laid out"),
            (as_were, "already in the house style"),
            (faulty, "left alone for a mistake"),
        )
        if number
    ]
    return f"{one_of(parts, 'and')}."
