"""`piecewright draft`: its help, and what is told where nothing can be drafted."""

from __future__ import annotations

from typing import Final

HELP: Final = """\
Draft every 'washed' block in FILE from its readings, and print the file with the drafted ones.

One shrinkage is fitted across and one down; each reading becomes the simplest drafting measure that fits
it. What was changed, and which readings disagree, is said on standard error. All other words stay as they
are; the readings are kept in remarks.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright draft old-vane.block                       the drafted block, to look at
  piecewright draft old-vane.block --out vane.block      the same as a file to keep
  piecewright draft old-vane.block --format text         each reading, each likely grid
"""

FORMAT: Final = "The drafted block's text, a table of its readings, or both as JSON."
OUT: Final = "Write the drafted block to this file, and say what was changed."


def keep_readings() -> str:
    """The file with the readings itself, as the place for the draft."""
    return "Write the draft to another file, and keep your readings."


def nothing_measured() -> str:
    """No block to draft."""
    return "There is no 'washed' block in what was read."
