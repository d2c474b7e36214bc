"""Catalogue entries for washed blocks: what is told of a draft from readings, and contradicting readings."""

from __future__ import annotations

from typing import Final

from .entry import in_block

SIZE: Final = "finished 6in"

WASHED: Final = (
    in_block(
        "washed-drafted",
        "What washing did to a measured block",
        "Every length in the `point` lines of a `washed` block is a reading off the old one. One "
        "shrinkage for each direction is fitted to them all, and each is drafted as the simplest "
        "measure that fits what it was read to: a place on the likeliest grid, else a mark of the "
        "ruler. This says what came of it. `piecewright draft` prints the drafted block, which says "
        "nothing any more.",
        (
            SIZE,
            "washed 5 7/8in",
            "point gate = 1 15/16in from top-left to top-right",
            "seam gate -- bottom-left",
        ),
        (SIZE, "point gate = 1/3 from top-left to top-right", "seam gate -- bottom-left"),
    ),
    in_block(
        "washed-alone",
        "A washed block that was never any size",
        "`washed` says what the block measures now. What it was drafted to has to be said beside it: "
        "usually the next whole size up.",
        ("washed 5 7/8in", "outline bottom-left -- top-left -- top-right -- bottom-right"),
        (SIZE,),
    ),
    in_block(
        "washed-too-far",
        "More than washing can do",
        "A block that differs from its finished size by more than a fifth was not washed but "
        "mismeasured: a wrong unit, a wrong size, or seam allowances counted in.",
        (SIZE, "washed 4 1/2in"),
        (SIZE,),
    ),
    in_block(
        "washed-read-coarsely",
        "Readings too coarse to draft from",
        "`read to` says how fine the marks are that you read by. A tape measure shows 1/16in; what is "
        "read to more than 1/2in fits any draft.",
        (SIZE, "washed 6in read to 1in"),
        (SIZE,),
    ),
    in_block(
        "washed-disagrees",
        "A washed size that the readings contradict",
        "The readings of one direction lie on a grid with one shrinkage, and with that shrinkage the "
        "block would be of another size than `washed` says. One side was measured wrong, or the block "
        "is not the one that was read. The draft goes by the readings.",
        (
            SIZE,
            "grid 6 x 6",
            "washed 5 1/2in x 5 7/8in",
            "point gate = 1 15/16in from A1 to G1",
            "point latch = 3 15/16in from A1 to G1",
            "point post = 4 7/8in from A7 to G7",
            "seam gate -- post -- latch",
        ),
        (
            SIZE,
            "point gate = 2in from top-left to top-right",
            "point latch = 4in from top-left to top-right",
            "point post = 5in from bottom-left to bottom-right",
            "seam gate -- post -- latch",
        ),
    ),
    in_block(
        "reading-disagrees",
        "A reading that does not lie with the others",
        "The other readings of this direction lie on one grid, with one shrinkage; this one lies on "
        "no line of it. It may be a slip of the tape, a patch sewn askew, or a measure of its own. It "
        "is drafted by itself, as the simplest measure that fits it.",
        (
            SIZE,
            "washed 5 7/8in",
            "point gate = 1 15/16in from top-left to top-right",
            "point latch = 3 15/16in from top-left to top-right",
            "point slip = 3 3/8in from bottom-left to bottom-right",
            "seam gate -- slip -- latch",
        ),
        (
            SIZE,
            "point gate = 2in from top-left to top-right",
            "point latch = 4in from top-left to top-right",
            "point slip = 4in from bottom-left to bottom-right",
            "seam gate -- slip -- latch",
        ),
    ),
)
