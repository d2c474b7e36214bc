"""Catalogue entries for numbers, lengths, angles and poses."""

from __future__ import annotations

from typing import Final

from .entry import beside_pair, in_block

SIZE: Final = "finished 6in"
SEAM: Final = "seam top -- bottom"

WRITING: Final = (
    # ---- units
    in_block(
        "unit-missing",
        "A length or an angle without its unit",
        "Lengths carry `in`, `cm` or `mm`, angles `deg`. Bare numbers are counts, grid steps and "
        "shares of a way.",
        ("finished 6", SEAM),
        (SIZE, SEAM),
    ),
    in_block(
        "measure-unknown",
        "A unit written another way",
        "Lengths are in `in`, `cm` or `mm` and angles in `deg`, written just so.",
        ("finished 6 inches", SEAM),
        (SIZE, SEAM),
    ),
    in_block(
        "unit-unwanted",
        "A unit where none is due",
        "A count is a bare number, and an angle is in degrees, not inches.",
        (SIZE, "turn 4in about center { seam center -- top }"),
        (SIZE, "turn 4 about center { seam center -- top }"),
    ),
    in_block(
        "steps-with-unit",
        "A unit in a point of grid steps",
        "`(1.5, 0)` counts steps of the grid across and down, which carry no unit. For inches write "
        "`2in from A1 to B1`.",
        (SIZE, "seam top -- (1in, 6in)"),
        (SIZE, "seam top -- (1/2, 1)"),
    ),
    # ---- numbers
    in_block(
        "fraction-sign",
        "A fraction as one sign",
        "Fractions are written out: `6 1/2in`. Signs such as ½ look alike in small print and are "
        "missing from many keyboards.",
        ("finished 6½in", SEAM),
        ("finished 6 1/2in", SEAM),
    ),
    in_block(
        "fraction-by-zero",
        "A fraction that divides by zero",
        "There is no such number.",
        ("finished 6 1/0in", SEAM),
        ("finished 6 1/2in", SEAM),
    ),
    in_block(
        "number-too-long",
        "A number of more than 24 digits",
        "No ruler has them.",
        (f"finished {'1' * 30}in", SEAM),
        ("finished 11in", SEAM),
    ),
    in_block(
        "length-zero",
        "A length of nothing",
        "Something was measured that is not there. Leave the statement out, or give its real length.",
        (SIZE, SEAM, "allowance 0in"),
        (SIZE, SEAM, "allowance 1/4in"),
    ),
    in_block(
        "length-negative",
        "A length below zero",
        "Lengths are more than zero. To go the other way, swap the two points.",
        (SIZE, "seam top -- (-1in from bottom to bottom-right)"),
        (SIZE, "seam top -- (1in from bottom to bottom-left)"),
    ),
    in_block(
        "length-too-small",
        "A length finer than any ruler",
        "The shortest length is 1/64in. Was another unit meant?",
        (SIZE, SEAM, "allowance 0.25mm"),
        (SIZE, SEAM, "allowance 0.25in"),
    ),
    in_block(
        "length-too-large",
        "A length beyond any quilt",
        "The longest length is 1000in, over 83 feet.",
        ("finished 6000in", SEAM),
        (SIZE, SEAM),
    ),
    in_block(
        "angle-too-large",
        "An angle of more than a full turn",
        "An angle of more than 360 degrees goes round and comes to a smaller one: say that.",
        (SIZE, "seam top -- (2in from bottom at 405deg)"),
        (SIZE, "seam top -- (2in from left at 90deg) -- outline"),
    ),
    in_block(
        "share-too-large",
        "A share of the way far off the block",
        "A bare number before `from` is a share of the way: 1/2 is half. A large one was probably "
        "meant as inches.",
        (SIZE, "seam top -- (5000 from bottom to bottom-right)"),
        (SIZE, "seam top -- (1/2 from bottom to bottom-right)"),
    ),
    in_block(
        "share-beyond",
        "A share that is not between the two points",
        "A bare number before `from` is a share of the way between the two points: 1 is the far point "
        "itself. If inches are meant, say so; if not, this only tells you how it is read.",
        (SIZE, "seam top -- (1 from bottom to bottom-right)"),
        (SIZE, "seam top -- (1in from bottom to bottom-right)"),
    ),
    in_block(
        "count-not-whole",
        "A count that is not whole",
        "Turns, rows and parts of a grid are counted in whole numbers.",
        (SIZE, "grid 2.5 x 2", SEAM),
        (SIZE, "grid 2 x 2", SEAM),
    ),
    in_block(
        "count-too-small",
        "A count that is too small",
        "One copy is no turn, and two sides make no shape. The message says the least.",
        (SIZE, "turn 1 about center { seam center -- top }"),
        (SIZE, "turn 2 about center { seam center -- top }"),
    ),
    in_block(
        "count-too-large",
        "A count that is too large",
        "Every count has a bound that no real block comes near: 360 copies of a turn, 1,000 parts of a"
        " grid. The message says which.",
        (SIZE, "grid 100000 x 100000", SEAM),
        (SIZE, "grid 10 x 10", SEAM),
    ),
    in_block(
        "part-not-positive",
        "A part of a grid that is nothing",
        "`1:2:1` shares the width out in proportion; each part is more than zero.",
        (SIZE, "grid 1:0:1 x 2", SEAM),
        (SIZE, "grid 1:2:1 x 2", SEAM),
    ),
    # ---- turns, poses, trim
    in_block(
        "turn-step-zero",
        "A part turn that does not turn",
        "Copies turned by 0 degrees lie on the first one.",
        (SIZE, "turn 2 of 0deg about center { seam center -- top }"),
        (SIZE, "turn 2 of 180deg about center { seam center -- top }"),
    ),
    beside_pair(
        "pose-clash",
        "A unit both turned and facing",
        "`facing` already turns the unit until it faces that way. Say one of the two.",
        ("finished 2in", 'use "Pair" as pair', "row pair facing top-right turned 90deg"),
        ("finished 2in", 'use "Pair" as pair', "row pair facing top-right"),
    ),
    beside_pair(
        "pose-not-quarter",
        "A unit turned by less than a quarter",
        "Units fill cells of the grid, so they turn by 90, 180 or 270 degrees.",
        ("finished 2in", 'use "Pair" as pair', "row pair turned 45deg"),
        ("finished 2in", 'use "Pair" as pair', "row pair turned 90deg"),
    ),
    in_block(
        "trim-none-limit",
        "A length for corners that are not trimmed",
        "`trim none` leaves the points as they are, so it takes no length.",
        (SIZE, SEAM, "trim none 1/4in"),
        (SIZE, SEAM, "trim none"),
    ),
)
