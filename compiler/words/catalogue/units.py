"""Catalogue entries for units: blocks used in others, rows, places, poses and rounds."""

from __future__ import annotations

from typing import Final

from .entry import PAIR, Entry, beside_pair, in_block

PETAL: Final = """\
block "Petal" {
  finished 2in
  seam top-right ~~ bottom-left around top-left
}

"""
USE: Final = 'use "Pair" as pair'
SMALL: Final = "finished 2in"
TWO: Final = "grid 2 x 1 of 2in"
THIRDS: Final = """\
edition 1

block "Thirds" {{
  grid 3 x 3 of 1in
  alternate plain dark, plain pale
}}

block "Trial" {{
  grid {}
  use "Thirds" as thirds
  row 2 thirds
}}
"""
NINE: Final = "grid 3 x 3 of 2in"

UNITS: Final = (
    # ---- finding blocks
    beside_pair(
        "block-unknown",
        "A used block that is not found",
        "A block is looked for by its title or another name of it: in the same file, in the folder "
        "of the file, on the shelves you name, and in the library that ships.",
        (SMALL, 'use "Pear" as pair', "row pair"),
        (SMALL, USE, "row pair"),
    ),
    Entry(
        "name-shared",
        "Another name of several blocks",
        "Traditional blocks often bear several names, and one name may be borne by several blocks. A `use` "
        "of such a name could mean any of them, so it is said which there are; a title is always plain.",
    ),
    beside_pair(
        "version-unknown",
        "A version that does not exist",
        "The block is there, in other versions. Without `version` the newest is taken.",
        (SMALL, 'use "Pair" version 3 as pair', "row pair"),
        (SMALL, USE, "row pair"),
    ),
    Entry(
        "use-cycle",
        "Blocks that contain each other",
        "A block cannot be a part of itself. The message names the whole ring.",
        'edition 1\n\nblock "Pier" {\n  finished 2in\n  use "Lamp" as lamp\n  row lamp\n}\n\n'
        'block "Lamp" {\n  finished 2in\n  use "Pier" as pier\n  row pier\n}\n',
        'edition 1\n\nblock "Pier" {\n  finished 2in\n  use "Lamp" as lamp\n  row lamp\n}\n\n'
        'block "Lamp" {\n  finished 2in\n  seam top -- bottom\n}\n',
    ),
    Entry(
        "use-too-deep",
        "Units in units in units",
        "Units may hold units, up to 24 deep. Draft the innermost ones as one block.",
    ),
    Entry(
        "unit-failed",
        "A used block has a mistake of its own",
        "The block is found, and has to be mended before it can be used. Its own mistakes are told at "
        "their own places, where it stands in this file.",
    ),
    # ---- names and roles
    beside_pair(
        "unit-unknown",
        "A unit that no `use` brings in",
        "Rows and places call a unit by the short name after `as`, and this is none of them.",
        (TWO, USE, "row pair, pear"),
        (TWO, USE, "row pair, pair"),
    ),
    beside_pair(
        "unit-twice",
        "Two units of one name",
        "Each `use` gives its block another name.",
        (TWO, USE, 'use "Pair" as pair with dark = red', "row pair, pair"),
        (TWO, USE, 'use "Pair" as other with dark = red', "row pair, other"),
    ),
    beside_pair(
        "unit-unused",
        "A unit that is placed nowhere",
        "Place it, or take its `use` away.",
        (SMALL, USE, "seam top -- bottom"),
        (SMALL, USE, "row pair"),
    ),
    Entry(
        "cuts-leave-ruler",
        "Cuts that leave the marks of the ruler",
        "A block is used at another size than it was drafted to. Its seams scale and its allowances do "
        "not, so what was cut by the ruler now lies between two marks, and needs a template.",
        THIRDS.format("2 x 1 of 4in"),
        THIRDS.format("2 x 1 of 3in"),
    ),
    in_block(
        "alternate-idle",
        "Nothing left to alternate with",
        "`alternate` fills the cells that nothing else covers, its blocks and cloths taking turns. This "
        "one comes to no cell.",
        (TWO, "alternate plain dark, plain pale, plain red"),
        (TWO, "alternate plain dark, plain pale"),
    ),
    beside_pair(
        "role-unknown",
        "A fabric that the unit does not have",
        "`with dark = red` changes the unit's word on the left into yours on the right. The unit "
        "has no such word.",
        (SMALL, 'use "Pair" as pair with red = dark', "row pair"),
        (SMALL, 'use "Pair" as pair with dark = red', "row pair"),
    ),
    beside_pair(
        "role-renamed-twice",
        "One fabric renamed twice",
        "All renaming happens at once, so each of the unit's words stands once on the left.",
        (SMALL, 'use "Pair" as pair with dark = red, dark = blue', "row pair"),
        (SMALL, 'use "Pair" as pair with dark = red, pale = blue', "row pair"),
    ),
    beside_pair(
        "piece-in-unit",
        "A piece named inside a unit",
        "A unit names its own pieces. Its fabrics are changed by `use ... with dark = red`.",
        (TWO, USE, "row pair, plain pale", "piece half at (0.2, 0.2) in red"),
        (TWO, 'use "Pair" as pair with dark = red', "row pair, plain pale"),
    ),
    # ---- rows and places
    in_block(
        "row-too-long",
        "A row with too many cells",
        "A row fills the grid across. The message gives both counts and what they come to.",
        (TWO, "row 3 plain dark"),
        (TWO, "row 2 plain dark"),
    ),
    in_block(
        "row-too-short",
        "A row with too few cells",
        "A row fills the grid across. `row 3 pair` repeats a cell.",
        (TWO, "row plain dark"),
        (TWO, "row plain dark, plain pale"),
    ),
    in_block(
        "row-off-grid",
        "More rows than the grid has",
        "Rows fill the grid from the top.",
        (TWO, "row 2 plain dark", "row 2 plain pale"),
        ("grid 2 x 2 of 2in", "row 2 plain dark", "row 2 plain pale"),
    ),
    in_block(
        "row-in-turn",
        "A row inside a turn",
        "Rows fill the grid from the top, so they cannot be repeated round a point. `place` can.",
        ("grid 2 x 2 of 2in", "turn 4 about center { row 2 plain dark }"),
        ("grid 2 x 2 of 2in", "turn 4 about center { place plain dark in A1..B2 }"),
    ),
    in_block(
        "region-no-cells",
        "A place with no cell in it",
        "A1..B2 are the corners of a place, not its cells: the first cell is A1..B2, the first two of "
        "a row are A1..C2.",
        (NINE, "place plain dark in B1..C1"),
        (NINE, "place plain dark in B1..C2"),
    ),
    in_block(
        "units-overlap",
        "Two things on one cell",
        "Each unit and each plain cell has a place of its own.",
        (NINE, "place plain dark in A1..C3", "place plain pale in B2..D4"),
        (NINE, "place plain dark in A1..D2", "place plain pale in A2..D4"),
    ),
    in_block(
        "unit-outside",
        "What is placed leaves the block",
        "Units, plain cells and rounds lie within the block.",
        (NINE, "rounds 1 of 3in about B2..C3 in dark", "place plain pale in B2..C3"),
        (NINE, "rounds 1 of 2in about B2..C3 in dark", "place plain pale in B2..C3"),
    ),
    beside_pair(
        "seam-through-unit",
        "A seam through a unit",
        "Seams run along a unit's edge or cut a plain cell. To cut a unit otherwise, draft another one.",
        (TWO, USE, "row pair, plain dark", "seam A1 -- C2"),
        (TWO, USE, "row pair, plain dark", "seam B1 -- C2"),
    ),
    in_block(
        "rounds-too-many-roles",
        "More than four fabrics for a round",
        "A round has four strips: top, right, bottom, left. The fabrics start afresh each round.",
        (NINE, "rounds 1 of 2in about B2..C3 in red, pale, blue, green, dark", "place plain pale in B2..C3"),
        (NINE, "rounds 1 of 2in about B2..C3 in red, pale, blue, green", "place plain pale in B2..C3"),
    ),
    # ---- how units lie
    Entry(
        "faces-missing",
        "A unit that does not say which way it faces",
        "`facing left` turns a unit until the side it `faces` lies left. This one has no `faces`: write "
        "it in that block, or turn the unit by degrees.",
        "edition 1\n\n"
        + PAIR.replace("  faces top-left\n", "")
        + 'block "Trial" {\n  finished 2in\n  use "Pair" as pair\n  row pair facing top-right\n}\n',
        "edition 1\n\n"
        + PAIR
        + 'block "Trial" {\n  finished 2in\n  use "Pair" as pair\n  row pair facing top-right\n}\n',
    ),
    beside_pair(
        "facing-wrong-kind",
        "A side asked of a unit that faces a corner",
        "Quarter turns carry sides to sides and corners to corners.",
        (SMALL, USE, "row pair facing left"),
        (SMALL, USE, "row pair facing bottom-left"),
    ),
    beside_pair(
        "unit-proportions",
        "A unit and its cell have other proportions",
        "A unit is scaled to fill its cell. Where width and height would be scaled unequally, say "
        "`stretched` if that is meant.",
        ("grid 1 x 1 of 4in x 2in", USE, "row pair"),
        ("grid 1 x 1 of 4in x 2in", USE, "row pair stretched"),
    ),
    Entry(
        "stretch-curves",
        "A curved unit cannot be stretched",
        "A stretched arc is no arc of a circle any more. Give the unit a cell of its own proportions.",
        f"edition 1\n\n{PETAL}"
        'block "Trial" {\n  grid 1 x 1 of 4in x 2in\n  use "Petal" as petal\n  row petal stretched\n}\n',
        f"edition 1\n\n{PETAL}"
        'block "Trial" {\n  grid 1 x 1 of 4in\n  use "Petal" as petal\n  row petal\n}\n',
    ),
    beside_pair(
        "unit-odd",
        "One unit lies unlike its counterparts",
        "But for this unit, the block is the same when it is turned or mirrored. The unit may be "
        "turned the wrong way. If it is meant, nothing is wrong.",
        ("grid 2 x 2 of 2in", USE, "row pair, pair turned 90deg", "row pair turned 270deg, pair"),
        (
            "grid 2 x 2 of 2in",
            USE,
            "row pair, pair turned 90deg",
            "row pair turned 270deg, pair turned 180deg",
        ),
    ),
)
