"""Catalogue entries for quilts: sets, sashing, borders, fabrics and colourways."""

from __future__ import annotations

from typing import Final

from .entry import PAIR, Entry, Lines

USE: Final = 'use "Pair" as pair'
CLOTH: Final = ("fabric indigo", "fabric sand", "roles dark = indigo, pale = sand")
SET: Final = "set straight 3 across 2 down { alternate pair, plain sand }"
LONG: Final = SET.replace("3 across", "30 across")
ON_POINT: Final = "set on point 3 across 2 down with triangles in sand { alternate pair, plain sand }"
END: Final = ("binding 2 1/2in in indigo", "backing in sand 4in over", "batting 4in over")

GOOSE: Final = """\
block "Goose" {
  finished 4in x 2in
  faces top
  seam bottom-left -- top -- bottom-right
  piece goose at bottom in dark
  piece sky at top-left, top-right in pale
}

"""


def quilt_text(lines: Lines, blocks: str = PAIR) -> str:
    """A whole file with one quilt of those lines."""
    body = "".join(f"  {line}\n" for line in (*lines, *END))
    return f'edition 1\n\n{blocks}quilt "Sampler" {{\n{body}}}\n'


def in_quilt(code: str, title: str, explanation: str, wrong: Lines, right: Lines) -> Entry:
    """An entry whose examples are lines of a quilt, with binding, backing and batting after them."""
    return Entry(code, title, explanation, quilt_text(wrong), quilt_text(right))


def with_goose(code: str, title: str, explanation: str, wrong: Lines, right: Lines) -> Entry:
    """The same, with a second block that is twice as wide as high."""
    return Entry(code, title, explanation, quilt_text(wrong, PAIR + GOOSE), quilt_text(right, PAIR + GOOSE))


WHOLE: Final = quilt_text((USE, *CLOTH, SET))
AGAIN: Final = quilt_text((USE, *CLOTH, SET), "").partition("\n\n")[2]  # the quilt alone

QUILTS: Final = (
    # ---- sets
    in_quilt(
        "set-missing",
        "A quilt that sets no blocks",
        "A quilt has one `set`: `straight`, `on point` or `rows`.",
        (USE, *CLOTH),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "set-kind",
        "A set that does not say how",
        "Blocks are set `straight`, `on point` or in `rows`.",
        (USE, *CLOTH, "set 3 across 2 down { alternate pair, plain sand }"),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "set-counts",
        "The blocks of a set are counted otherwise",
        "A set counts its blocks across, then down: `4 across 5 down`.",
        (USE, *CLOTH, "set straight 3 x 2 { alternate pair, plain sand }"),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "set-size-missing",
        "A set of plain cells without a size",
        "Cells take their size from the blocks in them. Where all are plain, say it: `of 8in`.",
        (
            "fabric indigo",
            "fabric sand",
            "set straight 3 across 2 down { alternate plain indigo, plain sand }",
        ),
        (
            "fabric indigo",
            "fabric sand",
            "set straight 3 across 2 down of 8in { alternate plain indigo, plain sand }",
        ),
    ),
    with_goose(
        "set-sizes-differ",
        "Blocks of different sizes in one set",
        "Say the size to draft them all at, as in `of 8in`, or set each in rows of its own.",
        (USE, 'use "Goose" as goose', *CLOTH, "set straight 3 across 2 down { alternate pair, goose }"),
        (USE, *CLOTH, SET),
    ),
    with_goose(
        "set-not-square",
        "Blocks on point that are not square",
        "On point the blocks stand on a corner, which only squares can.",
        ('use "Goose" as goose', *CLOTH, ON_POINT.replace("pair", "goose")),
        (USE, *CLOTH, ON_POINT),
    ),
    in_quilt(
        "block-too-small",
        "A block at a size that nobody can sew",
        "Blocks are drafted at the size of their cells. At this one a piece is under 1/16in wide.",
        (USE, *CLOTH, "set straight 3 across 2 down of 1/16in { alternate pair, plain sand }"),
        (USE, *CLOTH, "set straight 3 across 2 down of 2in { alternate pair, plain sand }"),
    ),
    in_quilt(
        "set-uncovered",
        "A set with empty cells",
        "Every cell has a block or plain cloth. Add `row` lines, or `alternate`.",
        (USE, *CLOTH, "set straight 3 across 2 down { row 3 pair }"),
        (USE, *CLOTH, "set straight 3 across 2 down { row 3 pair  row 3 plain sand }"),
    ),
    in_quilt(
        "set-rows-only",
        "Something other than rows in a set of rows",
        "`set rows` holds `row` lines, each as high as its blocks.",
        (USE, *CLOTH, "set rows { alternate pair, plain sand }"),
        (USE, *CLOTH, "set rows { row 3 pair }"),
    ),
    with_goose(
        "rows-differ",
        "Rows of different lengths",
        "All rows of a set are of one length. The message gives both, and the counts that make them.",
        (USE, 'use "Goose" as goose', *CLOTH, "set rows { row 4 pair  row 3 goose }"),
        (USE, 'use "Goose" as goose', *CLOTH, "set rows { row 4 pair  row 2 goose }"),
    ),
    with_goose(
        "row-heights-differ",
        "Blocks of different heights in one row",
        "A row is as high as its blocks. Turn the block, or give it a row of its own.",
        (USE, 'use "Goose" as goose', *CLOTH, "set rows { row 4 pair, goose turned 90deg }"),
        (USE, 'use "Goose" as goose', *CLOTH, "set rows { row 4 pair, goose }"),
    ),
    in_quilt(
        "row-size-missing",
        "A row of plain cells only",
        "A row takes its height from its blocks, and a plain one has none.",
        (USE, *CLOTH, "set rows { row 3 pair  row 3 plain sand }"),
        (USE, *CLOTH, "set rows { row 3 pair }"),
    ),
    in_quilt(
        "region-over-cells",
        "A block over several cells on point",
        "On point a place covers one cell: there is no larger square without a seam through it.",
        (
            USE,
            *CLOTH,
            "set on point 3 across 2 down with triangles in sand {",
            "  alternate pair, plain sand  place pair in A1..C3",
            "}",
        ),
        (USE, *CLOTH, ON_POINT),
    ),
    Entry(
        "quilt-too-large",
        "More cells or pieces than a quilt may have",
        "Counts multiply: a thousand blocks across and a thousand down are a million. The message says "
        "how many there are and how many may be.",
    ),
    # ---- sashing
    in_quilt(
        "sashing-needs-posts",
        "Sashing on point without posts",
        "On point the strips cross at a slant, and only posts make them short enough to sew.",
        (USE, *CLOTH, ON_POINT, "sashing 1in in sand"),
        (USE, *CLOTH, ON_POINT, "sashing 1in in sand posts in indigo"),
    ),
    in_quilt(
        "sashing-no-posts",
        "Posts between rows",
        "Between rows of different blocks the sashing runs through, and nothing crosses it.",
        (USE, *CLOTH, "set rows { row 3 pair  row 3 pair }", "sashing 1in in sand posts in indigo"),
        (USE, *CLOTH, "set rows { row 3 pair  row 3 pair }", "sashing 1in in sand"),
    ),
    # ---- borders
    in_quilt(
        "width-first",
        "A border or a binding without its width",
        "After `border`, `sashing` and `binding` comes the width, one length.",
        (USE, *CLOTH, SET, "border mitred in sand"),
        (USE, *CLOTH, SET, "border 2in in sand mitred"),
    ),
    in_quilt(
        "unit-eaten",
        "The `in` of the cloth is read as inches",
        "After a number, `in` means inches, and then the `in` before the cloth is missing. Write both:"
        " `border 2in in sand`.",
        (USE, *CLOTH, SET, "border 2 in sand"),
        (USE, *CLOTH, SET, "border 2in in sand"),
    ),
    in_quilt(
        "border-styles",
        "A border made two ways",
        "A border is `butted` or `mitred` once.",
        (USE, *CLOTH, SET, "border 2in in sand butted mitred"),
        (USE, *CLOTH, SET, "border 2in in sand mitred"),
    ),
    in_quilt(
        "border-corners",
        "Corner blocks on a plain border",
        "Corner blocks belong to a border of units; the corners of a plain border are butted or mitred.",
        (USE, *CLOTH, SET, "border 2in in sand corners pair"),
        (USE, *CLOTH, SET, "border 2in of pair corners pair"),
    ),
    in_quilt(
        "border-no-room",
        "A border to a size that is reached already",
        "`border to` is as wide as it takes to bring the quilt to a size. The quilt has that size before it.",
        (USE, *CLOTH, SET, "border to 6in x 4in in sand"),
        (USE, *CLOTH, SET, "border to 10in x 8in in sand"),
    ),
    in_quilt(
        "border-unequal",
        "A mitred border of two widths",
        "A mitre runs at half a right angle, so the border is equally wide on all sides. Plain butted "
        "borders may differ.",
        (USE, *CLOTH, SET, "border to 10in x 9in in sand mitred"),
        (USE, *CLOTH, SET, "border to 10in x 8in in sand mitred"),
    ),
    in_quilt(
        "border-unfit",
        "A pieced border that does not come out",
        "A whole number of units has to fill each side. The message says what two numbers would make; "
        "a plain border inside this one can make up the rest.",
        (USE, *CLOTH, SET, "border 1 1/4in in indigo", "border 2in of pair corners pair"),
        (USE, *CLOTH, SET, "border 1in in indigo", "border 2in of pair corners pair"),
    ),
    in_quilt(
        "border-too-long",
        "A strip longer than any piece of the cloth",
        "With `unjoined`, a border strip is cut in one piece. This one is longer than every scrap or "
        "fat quarter of its fabric. Off the bolt, one longer than the cloth is wide runs along it; not "
        "at top or bottom where its print has a direction, which stands up in the quilt.",
        (USE, *CLOTH, "fabric rose fat quarter 40", LONG, "border 2in in rose unjoined"),
        (USE, *CLOTH, "fabric rose fat quarter 40", LONG, "border 2in in rose"),
    ),
    # ---- the quilt
    Entry(
        "quilt-twice",
        "Two quilts of one title and version",
        "A file has each title and version once. `version` left out is version 1.",
        WHOLE + AGAIN,
        WHOLE + AGAIN.replace('"Sampler"', '"Sampler" version 2'),
    ),
    Entry(
        "quilt-incomplete",
        "A quilt that leaves something out",
        "A quilt cuts only what it mentions. This only tells you what that leaves out.",
        WHOLE.replace(f"  {END[0]}\n", ""),
        WHOLE,
    ),
    in_quilt(
        "size-unlikely",
        "A size that nobody sews",
        "It is allowed, and the quilt is reckoned with it. Mostly a digit or a unit has slipped.",
        (USE, *CLOTH, SET, "border 100in in sand"),
        (USE, *CLOTH, SET, "border 10in in sand"),
    ),
    in_quilt(
        "mattress-unknown",
        "A bed that is on no list",
        "Beds are known by the trade's names, which the message lists.",
        (USE, *CLOTH, SET, "fits gigantic mattress drop 12in"),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "fits-not",
        "A quilt that misses the bed",
        "`fits` says which bed the quilt is for. It is off by more than an inch; the message says by "
        "how much.",
        (USE, *CLOTH, SET, "fits twin mattress drop 12in"),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "statement-of-block",
        "A statement that belongs in a block",
        "`seam`, `point` and `piece` draft a block; a quilt sets blocks.",
        (USE, *CLOTH, SET, "seam A1 -- B2"),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "statement-of-set",
        "A row outside the set",
        "In a quilt, `row`, `alternate` and `place` stand within the braces of its `set`.",
        (USE, *CLOTH, SET, "row 3 pair"),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "word-needless",
        "A word too many",
        "The statement does without this word.",
        (USE, *CLOTH, SET, "sashing 1in in sand with posts in indigo"),
        (USE, *CLOTH, SET, "sashing 1in in sand posts in indigo"),
    ),
)
