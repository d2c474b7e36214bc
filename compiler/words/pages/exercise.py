"""The words of the drafting exercise."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from ...sheets.work import CutOut

TITLE: Final = "Drafting exercise"
SAFETY: Final = (
    "Compass points are sharp: close the compass when you lay it down; keep it from small children."
)

NONE: Final = (
    "There is none for this block: not every corner lies on a crossing of graph paper, and it has no short "
    "construction by ruler and compass."
)

LAID: Final[dict[CutOut, str]] = {
    "template": " Then lay a template on its piece: its sewing line lies on the seams.",
    "paper-shape": " Then lay a paper on its piece, print down: they agree.",
    "": "",
}
"""The last check of a drawing, with what was cut out for the block."""

BY_COMPASS: Final = "Not on a grid: by ruler and compass."
TOO_LARGE: Final = (
    "The block is larger than a page: tape sheets of paper together for it, or draft it at half size with "
    "every measure halved."
)
LONGEST_FIRST: Final = (
    "Draw the longest seams first, from crossing to crossing, then the shorter ones between them."
)
ARCS: Final = (
    "For each arc set the compass on its center, a crossing that bears a small cross in the picture, and "
    "open it to the arc’s start."
)
PLAIN_PAPER: Final = "plain drafting paper"
TO_DRAFT_ON: Final = "true to size, to draft on"


def on_ruling(ruling: str) -> str:
    """`On graph paper: quarter-inch ruling.`"""
    return f"On graph paper: {ruling} ruling."


def graph_paper(ruling: str) -> str:
    """`quarter-inch graph paper`."""
    return f"{ruling} graph paper"


def on_crossings(ruling: str, across: int, down: int) -> str:
    """How large the block is in squares."""
    return (
        f"Every corner of this block lies on a crossing of {graph_paper(ruling)}: {across} squares by {down}."
    )


def taped(size: str, sheets: int) -> str:
    """Of a block that is larger than the sheet to draft on."""
    return (
        f"The sheet to draft on holds {size}: print it {sheets} times, and tape the sheets together, line on "
        "line."
    )


def outline_words(size: str) -> str:
    """How the outline is drawn."""
    return (
        f"Draw the outline, {size}, along lines of the paper. Mark each column and row of the block’s grid."
    )


def check_words(several: bool, cut_out: CutOut) -> str:
    """How the drawing is checked."""
    counted = ", and count the pieces" if several else ""
    return f"Check: measure both diagonals{counted}.{LAID[cut_out]}"


WITH_POINTS: Final = "with the points of its construction"


def on_paper(ruling: str) -> str:
    """`on quarter-inch graph paper`."""
    return f"on {ruling} graph paper"


def pictured(what: str) -> str:
    """The drawing, in words."""
    return f"The seams of the block {what}."


def drawn_at(scale: float) -> str:
    """How large the drawing is."""
    return f"Drawn at {scale:.0%} of true size." if scale < 1 else "Drawn true to size."
