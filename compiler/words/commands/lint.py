"""`piecewright lint`: its help, and what is told of mends."""

from __future__ import annotations

from typing import Final

from ...diagnostics.visible import visible
from ..phrases import count_of

HELP: Final = """\
Say what could be better in every FILE that has no error: what a maker, a shelf or a reader would miss.

The exit status is 1 where anything is said. A FOLDER stands for every .block and .quilt file in it.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright lint vane.block              what could be better
  piecewright lint --mend .                and mend what can be mended
  piecewright lint --list                  every check, in a line
  piecewright explain family-missing       what a check is for, with an example

\b
In a file, a remark silences a check for its line, or for the statement after it:
  # lint: allow size-off-ruler, family-missing
"""

MEND: Final = "Apply the mends that there are; they change no outline."
ONLY: Final = "This check alone. Repeatable."
ALLOW: Final = "Every check but this. Repeatable."
FORMAT: Final = "As for 'check'."
LIST: Final = "List the checks, and end."


def check_unknown(name: str) -> str:
    """A check that there is not."""
    return f"There is no check '{visible(name)}'; --list has them all."


def mended(places: int) -> str:
    """How many places were mended."""
    return f"{count_of(places, 'place')} mended."
