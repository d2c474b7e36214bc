"""Catalogue entries for drafting: points, seams, outlines, turns, pieces, and what is cut from them."""

from __future__ import annotations

from typing import Final

from .entry import Entry, in_block

SIZE: Final = "finished 6in"
GRID: Final = "grid 2 x 2"
HALVED: Final = (SIZE, "seam top -- bottom")

DRAFTING: Final = (
    # ---- the block
    in_block(
        "statement-twice",
        "A statement that a block has once",
        "A block has one size, one grid, one outline, one maker. Take one of the two away.",
        ("finished 6in", "finished 8in", "seam top -- bottom"),
        HALVED,
    ),
    in_block(
        "size-missing",
        "A block without a size",
        "A block says how large it is: `finished 6in`, or a grid with cells `of 2in`, or an outline "
        "drawn with lengths.",
        (GRID, "seam A1 -- C3"),
        (SIZE, GRID, "seam A1 -- C3"),
    ),
    in_block(
        "size-disagrees",
        "The grid and the finished size disagree",
        "Cells `of 3in` and the number of them make a size, which must be the one that `finished` says.",
        (SIZE, "grid 3 x 3 of 3in", "seam A1 -- D4"),
        (SIZE, "grid 3 x 3 of 2in", "seam A1 -- D4"),
    ),
    in_block(
        "size-too-large",
        "A block larger than a block may be",
        "No length is over 1000in, and no side of a block. Most often it is the unit: `of 30mm`, not "
        "`of 30in`.",
        ("grid 60 x 60 of 30in", "seam A1 -- B2"),
        ("grid 60 x 60 of 30mm", "seam through A1--B2"),
    ),
    Entry(
        "block-too-large",
        "More seams than a block may have",
        "Turns inside turns and grids of units multiply. A block holds far more seams than anyone can "
        "sew; this one goes beyond. Draft a part of it as a block of its own.",
    ),
    Entry(
        "crossings-too-many",
        "Seams that cross too often",
        "Seams may cross at 20,000 places of one block, as a net of 140 each way does. Turned copies of "
        "long seams all cross one another, so their crossings grow with the square of the copies.",
    ),
    # ---- points
    in_block(
        "point-unknown",
        "A point that was never defined",
        "Points are of the grid (B2), of every block (`center`, `top-left`), or your own, defined by "
        "`point NAME = ...` in the same braces or outside them.",
        (SIZE, "point gate = 1in from A1 to B1", "seam gaet -- bottom"),
        (SIZE, "point gate = 1in from A1 to B1", "seam gate -- bottom"),
    ),
    in_block(
        "point-twice",
        "Two points of one name",
        "Definitions may come in any order, so a name stands for one point.",
        (SIZE, "point gate = 1in from A1 to B1", "point gate = 2in from A1 to B1", "seam gate -- bottom"),
        (
            SIZE,
            "point gate = 1in from A1 to B1",
            "point door = 2in from A1 to B1",
            "seam gate -- bottom",
            "seam door -- bottom",
        ),
    ),
    in_block(
        "point-hides",
        "A name that is taken already",
        "`top`, `center` and the like are points of every block, and a name inside a turn may not be "
        "the name of a point outside it.",
        (SIZE, "point top = 1in from A1 to B1", "seam top -- bottom"),
        (SIZE, "point gate = 1in from A1 to B1", "seam gate -- bottom"),
    ),
    in_block(
        "point-cycle",
        "Points that define each other",
        "Each of these points needs another of them first. Place one of them from the grid.",
        (SIZE, "point one = 1/2 from two to A1", "point two = 1/2 from one to B1", "seam one -- two"),
        (
            SIZE,
            "point one = 1in from A1 to B1",
            "point two = 1in from bottom to bottom-right",
            "seam one -- two",
        ),
    ),
    in_block(
        "point-unused",
        "A point that nothing uses",
        "It may be left over, or its name was misspelt where it is used. Nothing is wrong with the block.",
        (SIZE, "point gate = 1in from A1 to B1", "seam top -- bottom"),
        (SIZE, "point gate = 1in from A1 to B1", "seam gate -- bottom"),
    ),
    in_block(
        "grid-point-off",
        "A grid point off the grid",
        "A grid of 2 x 2 cells has 3 x 3 points, A1 to C3.",
        (SIZE, GRID, "seam A1 -- E5"),
        (SIZE, GRID, "seam A1 -- C3"),
    ),
    in_block(
        "point-too-far",
        "A point as far off as no block reaches",
        "Points used to construct others may lie outside the block, up to 10,000in from its top left "
        "corner. Lines that are nearly parallel meet beyond that, and a share of 1000 of a share of "
        "1000 lies there. Build the point from nearer ones.",
        (SIZE, "point far = meet top at 0.001deg, right at 0deg", "seam top -- (1in from bottom to far)"),
        (
            SIZE,
            "point far = meet top at 5deg, right at 0deg",
            "seam bottom -- (3in from bottom to far) -- outline",
        ),
    ),
    in_block(
        "line-one-point",
        "A line through one place",
        "Two points make a line only where they are two places.",
        (SIZE, "seam through top--(1/2 from top-left to top-right)"),
        (SIZE, "seam through top--bottom"),
    ),
    in_block(
        "lines-never-meet",
        "Two parallel lines",
        "`meet` names the place where two lines cross; parallel ones have none.",
        (SIZE, "seam top -- (meet left--right, bottom-left--bottom-right)"),
        (SIZE, "seam top -- (meet left--right, bottom-left--top-right) -- bottom"),
    ),
    in_block(
        "line-misses-outline",
        "A line that does not meet the edge",
        "`meet LINE, outline` goes from the line's first point onward to the edge. This one goes away "
        "from the block.",
        (SIZE, "seam bottom -- (meet top at 0deg, outline)"),
        (SIZE, "seam bottom -- (meet center at 0deg, outline)"),
    ),
    in_block(
        "next-outside-turn",
        "`next` or `previous` outside a turn",
        "`next P` is the point P of the following copy, so it needs a turn round it.",
        (SIZE, "point tip = 1in from center to top", "seam top -- tip -- next tip"),
        (
            SIZE,
            "turn 4 about center {",
            "  point tip = 1in from center to top",
            "  seam top -- tip -- next tip",
            "}",
        ),
    ),
    in_block(
        "outline-in-itself",
        "The outline is needed to draw the outline",
        "While the outline is being drawn there is nothing to meet. Give lengths, or write `finished` first.",
        ("outline start -- (2in from start at 90deg) -- (meet start at 120deg, outline)",),
        ("outline start -- (2in from start at 90deg) -- (2in from start at 150deg)",),
    ),
    # ---- seams
    in_block(
        "seam-hangs",
        "A seam ends inside a piece",
        "A seam parts two pieces, so it runs from seam to seam or to the block's edge. One that stops "
        "inside a piece cannot be sewn. The message says how far the nearest seam is.",
        (SIZE, "seam top -- center"),
        (SIZE, "seam top -- bottom"),
    ),
    in_block(
        "seam-nearly-touches",
        "A seam stops just short of another",
        "The end is off a seam by less than 1/64in: more than rounding, less than anyone means. Build "
        "the point on the seam itself, with `meet` or `foot of`.",
        (SIZE, "seam top -- (5.99in from top to bottom)"),
        (SIZE, "seam top -- (6in from top to bottom)"),
    ),
    in_block(
        "seam-no-length",
        "A seam that ends where it starts",
        "A seam goes from one place to another.",
        (SIZE, "seam center -- (1/2 from top to bottom)"),
        (SIZE, "seam top -- bottom"),
    ),
    in_block(
        "seam-outside",
        "A seam that leaves the block",
        "Points used for construction may lie outside the block, seams may not. `-- outline` ends a "
        "seam at the edge.",
        (SIZE, "seam top -- (8in from top to bottom)"),
        (SIZE, "seam top -- center -- outline"),
    ),
    in_block(
        "seam-divides-nothing",
        "A seam with one piece on both sides",
        "The seam joins others, but closes off no piece.",
        (
            SIZE,
            "seam through top--bottom",
            "seam circle around (1 1/2in from left to right) radius 1/2in",
            "seam left -- (1in from left to right)",
        ),
        (SIZE, "seam through top--bottom", "seam left -- center"),
    ),
    in_block(
        "crossing-unnamed",
        "Two seams cross where no point is named",
        "This is well if it is meant. Where it is not, one of the seams goes further or another way "
        "than you think.",
        (SIZE, "grid 2 x 1", "seam A1 -- B2", "seam A2 -- B1 -- B2"),
        (SIZE, "grid 2 x 1", "seam A1 -- B2", "seam A2 -- (meet A1--B2, A2--B1) -- B1 -- B2"),
    ),
    # ---- arcs
    in_block(
        "arc-uneven",
        "The ends of an arc are not equally far from its centre",
        "`~~ Q around C` follows a circle about C, on which both ends have to lie. Both distances are "
        "in the message. `~~ Q through R` needs no centre.",
        (SIZE, "seam top ~~ (2in from top-left to bottom-left) around top-left"),
        (SIZE, "seam top ~~ left around top-left"),
    ),
    in_block(
        "arc-half-circle",
        "An arc of exactly half a circle",
        "`around` takes the shorter way, and of two halves neither is shorter. `~~ Q through R` says "
        "which way it bulges.",
        (SIZE, "seam top-left ~~ top-right around top"),
        (SIZE, "seam top-left ~~ top-right through center"),
    ),
    in_block(
        "arc-straight",
        "An arc through three points of one straight line",
        "No circle goes through them. Write `--` for a straight seam.",
        (SIZE, "seam top-left ~~ bottom-right through center"),
        (SIZE, "seam top-left -- bottom-right"),
    ),
    in_block(
        "arc-too-flat",
        "An arc that is as good as straight",
        "The point after `through` lies so little off the straight line that the arc's centre would be "
        "more than 10,000in away: nothing that cloth shows.",
        (SIZE, "point rise = 1/20000 from center to top", "seam left ~~ right through rise"),
        (SIZE, "point rise = 1/20 from center to top", "seam left ~~ right through rise"),
    ),
    # ---- outlines and turns
    in_block(
        "outline-no-direction",
        "A seam carried on before it has a direction",
        "`-- outline` goes straight on from the hop before it. As the first hop it has nothing to go "
        "on from.",
        (SIZE, "seam center -- outline"),
        (SIZE, "seam top -- center -- outline"),
    ),
    in_block(
        "outline-no-inside",
        "An outline with no inside",
        "An outline goes round the block: three corners at least, or an arc.",
        (SIZE, "outline top-left -- bottom-right"),
        (SIZE, "outline top-left -- bottom-right -- bottom-left"),
    ),
    in_block(
        "outline-crosses-itself",
        "An outline that crosses itself",
        "An outline goes round the block once.",
        (SIZE, "outline top-left -- bottom-right -- top-right -- bottom-left"),
        (SIZE, "outline top-left -- top-right -- bottom-right -- bottom-left"),
    ),
    in_block(
        "outline-outside",
        "An outline larger than the finished size",
        "With `finished`, the outline stays within that box, which the grid divides. Without it the "
        "outline's own box serves.",
        (SIZE, "outline top-left -- top-right -- (7in from top to bottom)"),
        (SIZE, "outline top-left -- top-right -- bottom"),
    ),
    in_block(
        "copy-outside",
        "A copy of a turn leaves the block",
        "Everything inside a turn is repeated all the way round. Turn part of the way instead, as in "
        "`turn 6 of 15deg about P`.",
        (SIZE, GRID, "turn 4 about A1 { seam B1 -- A2 }"),
        (SIZE, GRID, "turn 4 about center { seam B1 -- A2 }"),
    ),
    in_block(
        "turn-overlaps",
        "Part turns that go round more than once",
        "After a full circle the copies would lie on the first ones.",
        (SIZE, "turn 6 of 90deg about center { seam center -- top }"),
        (SIZE, "turn 4 of 90deg about center { seam center -- top }"),
    ),
)
