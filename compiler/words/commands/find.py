"""`piecewright find`: its help, and what is told of faults on the shelves."""

from __future__ import annotations

from typing import Final

from ..phrases import count_of

HELP: Final = """\
Find blocks on your shelves, those of PIECEWRIGHT_SHELVES, and in the library that ships.

Every WORD must begin a word of one of the block's names. One block may have several names, and one name
may be borne by several blocks: both are told. The first search of a large shelf takes a while.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright find                              every block on the shelves
  piecewright find star                         every block with a name in which a word begins so
  piecewright find --family nine-patch --pieces ..20 --methods rotary
  piecewright find --grid 4x4 --smallest-angle 45.. --symmetry quarter-turn,mirror
  piecewright find --size 6in..12in --format json
"""

FORMAT: Final = "A table for people, or JSON for other programs."
SYMMETRY: Final = "How it looks the same again, fabrics and all; several with commas."
METHODS: Final = "Every template by the ruler; on paper foundations; both with a comma."
SIZE: Final = "Its longer side as written: 6in..12in."
SMALLEST_ANGLE: Final = "Of its sharpest corner, in degrees: 30.."
TEMPLATES: Final = "How many templates: ..4"
PIECES: Final = "How many pieces: 5..20"
GRID: Final = "Its grid: 4x4"
FAMILY: Final = "Its family: four-patch, basket ... Repeatable: any of them."


def left_out(file: str, line: int, message: str) -> str:
    """A file with a mistake, on a shelf."""
    return f"{file}:{line}: Left out, for it has a mistake: {message}"


def more_left_out(files: int) -> str:
    """How many more there are."""
    return f"{count_of(files, 'more file')} left out: see 'piecewright check FOLDER'."
