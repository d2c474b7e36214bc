"""How a quilt is finished, in words (common practice, no published source; the sizes are the quilt's own)."""

from __future__ import annotations

from typing import Final

from ..phrases import count_of
from ..say import Say

TITLE: Final = "Finishing"
YOUR_TOP: Final = "Your top may measure a little more or less than the sizes here: go by your top."
NO_BACK: Final = "Make a back larger than the top all round; it is not in this pattern."
NO_BINDING: Final = "Bind the edge; binding is not in this pattern."

LAID: Final = (
    "Tape the back down, face down and smooth, not stretched. Lay the batting on it, and the pressed top on "
    "that, face up, its middle on theirs. Baste from the middle out, with long stitches or safety pins a "
    "hand's width apart."
)

QUILTED: Final = (
    "Quilt from the middle out, by hand or by machine. Then take the basting out, and trim back and batting "
    "to the top's edge with square corners."
)

TURNED: Final = (
    "Fold it over the edge to the back, and sew it down by hand just over the line of stitches; lay the "
    "corners in mitres."
)


def sewn_on(say: Say) -> str:
    """How the binding is sewn on."""
    seam, free = say.usual_seam, "20cm" if say.unit == "cm" else "8in"
    return (
        f"Lay it on the front, raw edges even, and sew {seam} from the edge; begin in the middle of a side "
        f"and leave {free} hanging free. Stop {seam} before each corner and lock the stitch; fold the strip "
        "straight up, then down along the next side, and sew on from the edge. Join the two ends where they "
        "meet."
    )


def one_back(size: str) -> str:
    """Of a back that is one piece."""
    return f"The back is one piece, {size}."


def joined_back(say: Say, panels: int, along: str, size: str) -> str:
    """How a back is joined from panels along sides of a length."""
    return (
        f"Sew the {panels} panels of the back together along their sides of {along}, selvages cut off, "
        f"{say.usual_seam} from the edge; press the {'seam' if panels == 2 else 'seams'} open: {size}."
    )


def binding_words(say: Say, strips: int, fabric: str, length: str, folded: bool) -> str:
    """How the binding is joined, and folded in half or at one edge."""
    join = (
        f"Join the {count_of(strips, 'strip')} of {fabric} on the bias"
        if strips > 1
        else f"Take the strip of {fabric}"
    )
    fold = (
        "fold it in half along its length, right side out"
        if folded
        else f"fold one long edge {say.usual_seam} to the wrong side"
    )
    return f"{join}, {length} in all; press the joins open, then {fold}, and press."
