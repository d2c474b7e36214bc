"""Codes of the order of sewing."""

from __future__ import annotations

from typing import Final

from .entry import PAIR, Entry
from .quilts import CLOTH, SET, USE, quilt_text

HEXAGON: Final = """\
block "Hexagon" {
  outline regular 6 side 2in
  piece all at center in dark
}

"""

SEWING: Final = (
    Entry(
        "block-does-not-sew",
        "A block that does not sew together as printed",
        "Before anything is printed, every block is cut and sewn again from the numbers that would be "
        "printed: cutting lines, allowances, seams, sizes, copies. Where that does not come out as drafted "
        "within 0.001in, nothing is printed. The fault is the compiler's, or lies in allowances so crowded "
        "that their cutting lines make no sense; the message names the step.",
    ),
    Entry(
        "block-no-rectangle",
        "A block in a quilt that does not fill its cell",
        "The cells of a set are rectangles, and so are those of pieced borders. A block with another outline "
        "leaves holes beside it. Use it as a unit of a block that gives it a ground.",
        quilt_text(
            ('use "Hexagon" as hexagon', *CLOTH, "set straight 3 across 2 down { alternate hexagon }"),
            HEXAGON,
        ),
        quilt_text((USE, *CLOTH, SET)),
    ),
    Entry(
        "quilt-allowances-differ",
        "A block with another allowance than the quilt",
        "Sashing, borders and setting triangles are cut with a seam allowance of 1/4in. Where the outside "
        "of a block has another, its cut edges do not lie on theirs when the seam is sewn.",
        quilt_text((USE, *CLOTH, SET), PAIR.replace("  faces", "  allowance 3/8in\n  faces")),
        quilt_text((USE, *CLOTH, SET)),
    ),
)
