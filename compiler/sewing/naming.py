"""Letters of what is sewn. Before a number each means one thing, and none of these is a section's: patches of
a section J would be named as the joins are."""

from __future__ import annotations

from string import ascii_uppercase
from typing import Final

from ..drafting.shapes import shape_label

JOIN: Final = "J"
"""J1: a join of sections, in order of sewing."""

PLAIN: Final = "P"
"""P1: a shape of cloth in a quilt's top, which is sewn in as it is cut."""

BLOCK: Final = "Q"
"""Q1: a block of a quilt's top in one choice of fabrics."""

ROW: Final = "R"
"""R1: what a card of a quilt's steps makes."""

SECTIONS: Final = "".join(letter for letter in ascii_uppercase if letter not in JOIN + PLAIN + BLOCK + ROW)


def section_label(index: int) -> str:
    """A, B, ... without the letters above, then AA, AB and so on."""
    return shape_label(index, SECTIONS)
