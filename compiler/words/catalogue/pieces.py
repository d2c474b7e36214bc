"""Catalogue entries for pieces and what is cut from them."""

from __future__ import annotations

from typing import Final

from .drafting import HALVED, SIZE
from .entry import in_block

PIECES: Final = (
    # ---- pieces
    in_block(
        "piece-unknown",
        "A piece that was never named",
        "`grain ... on NAME` takes the name of a `piece` statement.",
        (*HALVED, "piece blade at left in dark", "piece rest at right in pale", "grain free on blad"),
        (*HALVED, "piece blade at left in dark", "piece rest at right in pale", "grain free on blade"),
    ),
    in_block(
        "piece-outside",
        "A piece named outside the block",
        "A piece is named at a point inside it or on its edge.",
        (*HALVED, "piece leaf at (7in from left to right) in dark", "piece rest at left in pale"),
        (*HALVED, "piece leaf at (5in from left to right) in dark", "piece rest at left in pale"),
    ),
    in_block(
        "piece-ambiguous",
        "A piece named where several touch",
        "On an edge or a corner a point names a piece only if one piece alone touches it. The help "
        "offers a point inside each.",
        (*HALVED, "piece leaf at center in dark"),
        (*HALVED, "piece leaf at left in dark", "piece rest at right in pale"),
    ),
    in_block(
        "piece-clash",
        "Two names for one piece",
        "No seam parts the two places, so they are one piece. Draw the seam that is missing, or take "
        "one name away.",
        (SIZE, "piece hub at left in dark", "piece rim at right in pale"),
        (*HALVED, "piece hub at left in dark", "piece rim at right in pale"),
    ),
    in_block(
        "piece-fabrics-clash",
        "Copies of a piece fall together with two fabrics",
        "The copies of one `piece` statement fall in one piece of the block, and take turns in fabric:"
        " it cannot be both.",
        (SIZE, "turn 2 about center { piece blade at top in dark, pale }"),
        (SIZE, "seam left -- right", "turn 2 about center { piece blade at top in dark, pale }"),
    ),
    in_block(
        "roles-without-turn",
        "Several fabrics and no turn",
        "`in dark, pale` lets the copies of a turn take turns. Outside a turn there is one copy.",
        (*HALVED, "piece half at left, right in dark, pale"),
        (*HALVED, "piece half at left in dark", "piece rest at right in pale"),
    ),
    in_block(
        "piece-unnamed",
        "A few pieces have no name",
        "When most pieces of a block are named, one without a name may be forgotten, or a seam too "
        "many made it. It is cut from `background`.",
        (
            SIZE,
            "seam top-left -- bottom-right",
            "seam top-right -- bottom-left",
            "piece sky at top in pale",
            "piece side at left, right in dark",
        ),
        (
            SIZE,
            "seam top-left -- bottom-right",
            "seam top-right -- bottom-left",
            "piece sky at top in pale",
            "piece side at left, right in dark",
            "piece ground at bottom in green",
        ),
    ),
    in_block(
        "piece-sliver",
        "A piece too narrow to cut or sew",
        "A piece under 1/16in wide usually means that two seams were meant to be one. Build both from "
        "the same points.",
        (SIZE, "seam top -- bottom", "seam (3 1/20in from top-left to top-right) -- bottom"),
        (SIZE, "seam top -- bottom", "seam (4in from top-left to top-right) -- bottom"),
    ),
    in_block(
        "piece-hole",
        "A piece with a hole in it",
        "Straight seams cannot piece a ring. Part it with a seam, or plan to set the middle in or sew "
        "it on top.",
        (SIZE, "seam circle around center radius 2in"),
        (SIZE, "seam top ~~ left around top-left"),
    ),
    # ---- what is cut
    in_block(
        "allowance-nowhere",
        "An allowance on a path where no edge lies",
        "`allowance 1/2in on A1 -- C1` changes the allowance of the edges along that path.",
        (*HALVED, "allowance 1/2in on left -- right"),
        (*HALVED, "allowance 1/2in on top-left -- top-right"),
    ),
    in_block(
        "allowance-too-wide",
        "A very wide seam allowance",
        "Seams are sewn at 1/4in as a rule, and never at more than a hand's breadth. Was another unit meant?",
        (*HALVED, "allowance 3in"),
        (*HALVED, "allowance 3/8in"),
    ),
    in_block(
        "curve-tighter-than-allowance",
        "An inner curve tighter than its allowance",
        "Along an inner curve the allowance lies inside the circle. Where the radius is no more than "
        "the allowance, none is left to cut.",
        (
            SIZE,
            "seam circle around center radius 1/8in",
            "seam left -- (1/8in from center at 270deg)",
            "seam right -- (1/8in from center at 90deg)",
        ),
        (
            SIZE,
            "seam circle around center radius 2in",
            "seam left -- (2in from center at 270deg)",
            "seam right -- (2in from center at 90deg)",
        ),
    ),
    in_block(
        "allowances-overlap",
        "Allowances run into each other",
        "At a narrow inner corner the two allowances overlap, so that the cut outline bites into "
        "itself. Sew a narrower allowance, or part the piece with a seam.",
        (SIZE, "seam (2.95in from top-left to top-right) -- center -- (3.05in from top-left to top-right)"),
        (SIZE, "seam (1in from top-left to top-right) -- center -- (5in from top-left to top-right)"),
    ),
    in_block(
        "allowance-no-room",
        "A seam allowance that has no room",
        "A hole smaller than the allowance inside it, an inner curve that its allowance fills, a notch "
        "much narrower than the allowances of its sides: no cutting line can run at its distance from "
        "the sewing line there, so the piece can't be cut.",
        (SIZE, "seam circle around center radius 1/4in", "allowance 1/2in"),
        (SIZE, "seam top ~~ left around top-left", "allowance 1/2in"),
    ),
)
