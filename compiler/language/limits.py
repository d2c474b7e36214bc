"""Every bound on what a file may ask for, each with the reason for its size."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

FILE_BYTES: Final = 8_000_000
"""A block of 20,000 pieces, a line for each and every seam, takes 2 MB; nobody types more."""

NESTING: Final = 64
"""Braces and brackets inside one another. Six deep is rare in real blocks; later passes go down one call a
level, and Python allows a thousand."""

STATEMENTS: Final = 100_000
"""Statements of one file: five for each of 20,000 pieces."""

WORDS: Final = 500_000
"""Words, numbers and signs of one file: five for each of its statements."""

TITLE_LETTERS: Final = 120
"""Longer titles fit on no template and in no file name."""

NOTE_LETTERS: Final = 2_000
"""A note is a paragraph on a sheet, not a book."""

NAME_LETTERS: Final = 40
"""Names stand in messages and in narrow columns."""

NUMBER_LETTERS: Final = 24
"""`123456789 12345678/999999` still fits. Exact sums of longer numbers grow without end."""

LENGTH_MOST: Final = Fraction(1000)
"""Inches: over 83 feet, ten times the longest side of the largest bed quilt."""

LENGTH_LEAST: Final = Fraction(1, 64)
"""Inches: finer than any ruler's mark, and the distance under which ends count as touching."""

ANGLE_MOST: Final = Fraction(360)
"""Degrees: a full turn; more says nothing new."""

GRID_LINES: Final = 1_000
"""Parts each way, and the furthest row or column of a grid point."""

TURN_COPIES: Final = 360
"""Copies of one `turn`: one a degree; finer wedges are slivers."""

TURN_COPIES_LEAST: Final = 2
"""One copy is no turn."""

OUTLINE_SIDES: Final = 360
"""Sides of a regular outline; beyond this it is a circle."""

OUTLINE_SIDES_LEAST: Final = 3
"""A triangle."""

BLOCKS: Final = 2_000
"""Blocks and quilts of one file: more than any book of blocks."""

BORDERS: Final = 50
"""Borders of one quilt: strips of 1in from the middle of a 100in quilt outward."""

COLOURWAYS: Final = 24
"""Colourways of one quilt; a pattern shows three or four. Each is cut and reckoned by itself."""

ROW_REPEATS: Final = 1_000
"""Repeats of one cell in a row: as many as a grid may have parts."""

ROUNDS: Final = 500
"""Rounds of strips: one a grid line from the middle outward."""

SET_BLOCKS: Final = 1_000
"""Blocks across or down a set: as many as a grid may have parts. How many both ways make is the layout's."""

FAT_QUARTERS: Final = 1_000
"""Fat quarters of one cloth: more than a shop has."""

SHARE_MOST: Final = 1_000
"""Per cent: ten times the whole. What may shrink how far is the layout's."""

VERSION_MOST: Final = 9_999
"""Versions and editions; a year fits."""

ERRORS: Final = 200
"""Mistakes of the writing reported in one run; past this the file is probably not a block file."""
