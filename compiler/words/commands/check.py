"""`piecewright check`: its help."""

from __future__ import annotations

from typing import Final

HELP: Final = """\
Say what is wrong with every block and quilt in FILE, and make nothing.

A quilt is laid out and its cutting planned, to say whether there is cloth enough. A FOLDER stands for
every .block and .quilt file in it, and '-' for standard input.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright check vane.block              what is wrong, with the words that caused it
  piecewright check quilt-blocks            every file of a folder
  piecewright check . --format short        one line for each thing said
  piecewright check . --strict              warnings count as errors
"""

FORMAT: Final = "With the lines and carets, one short line each, JSON, or GitHub's annotation lines."
STRICT: Final = "Warnings, too, make the exit status 1."
