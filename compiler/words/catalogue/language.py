"""Catalogue entries for statements, words and signs: what is not written as the language writes it."""

from __future__ import annotations

from typing import Final

from .entry import Entry, beside_pair, in_block

SIZE: Final = "finished 6in"
GRID: Final = "grid 2 x 2"
SEAM: Final = "seam A1 -- C3"

LANGUAGE: Final = (
    # ---- statements
    in_block(
        "statement-unknown",
        "A word that opens no statement",
        "Every line of a block begins with a word of the language: `seam`, `point`, `piece`, `grid` "
        "and so on. This word is none of them; a near one is offered where there is one.",
        (SIZE, "seem top -- bottom"),
        (SIZE, "seam top -- bottom"),
    ),
    in_block(
        "statement-unfinished",
        "A statement stops too soon",
        "The statement ends where something more is due: a point after `--`, a cloth after `in`. The "
        "carets stand where it should go on.",
        (SIZE, "seam top --", "grid 2 x 2"),
        (SIZE, "seam top -- bottom", "grid 2 x 2"),
    ),
    in_block(
        "statement-of-quilt",
        "A statement that belongs in a quilt",
        "`sashing`, `border`, `binding` and their like describe a quilt. A block knows only its own "
        "seams and pieces.",
        (SIZE, "seam top -- bottom", "sashing 1in in sand"),
        (SIZE, "seam top -- bottom"),
    ),
    in_block(
        "word-unknown",
        "A word that cannot come here",
        "Another word was due at this place. The likeliest one is offered.",
        ("finished 4in", "grid 2 by 2", SEAM),
        ("finished 4in", GRID, SEAM),
    ),
    in_block(
        "word-unexpected",
        "Something else was due here",
        "The words so far ask for something that is not what follows. The help says what may come.",
        (SIZE, "seam circle center radius 1in"),
        (SIZE, "seam left -- right"),
    ),
    in_block(
        "word-missing",
        "A joining word or sign is left out",
        "Two things stand side by side where `--`, a comma, `at` or `in` joins them.",
        (SIZE, GRID, "seam A1 C3"),
        (SIZE, GRID, SEAM),
    ),
    in_block(
        "equals-missing",
        "The equals sign is left out",
        "A point is defined as `point NAME = PHRASE`.",
        (SIZE, "point gate 1in from A1 to B1", "seam gate -- bottom"),
        (SIZE, "point gate = 1in from A1 to B1", "seam gate -- bottom"),
    ),
    in_block(
        "word-capital",
        "A word of the language in capitals",
        "Words of the language are in small letters. Capitals are kept for graph paper: A1, B3.",
        (SIZE, "grid 2 X 2", SEAM),
        (SIZE, GRID, SEAM),
    ),
    in_block(
        "about-missing",
        "A turn does not say about what",
        "`turn 4` repeats what stands in its braces about a point, which it has to name: usually "
        "`about center`.",
        (SIZE, GRID, "turn 4 { seam center -- B1 }"),
        (SIZE, GRID, "turn 4 about center { seam center -- B1 }"),
    ),
    beside_pair(
        "use-without-as",
        "A used block gets no name",
        '`use` gives the block a short name by which rows and places call it: `use "Pair" as pair`.',
        (SIZE, 'use "Pair"', "row pair"),
        (SIZE, 'use "Pair" as pair', "row pair"),
    ),
    in_block(
        "region-half",
        "A place with one corner only",
        "A place lies between two corners of the grid, with two dots between them: the first cell is A1..B2.",
        (SIZE, GRID, "place plain dark in A1"),
        (SIZE, GRID, "place plain dark in A1..B2"),
    ),
    # ---- names and points
    in_block(
        "name-reserved",
        "A word of the language as a name",
        "Words that open statements or join them cannot be names, so that a line reads only one way. "
        "Every other word in small letters is free.",
        (SIZE, "seam top -- bottom", "piece row at left in dark", "piece rest at right in pale"),
        (SIZE, "seam top -- bottom", "piece strip at left in dark", "piece rest at right in pale"),
    ),
    in_block(
        "name-letters",
        "A name with other letters than small ones",
        "Names are in small letters from a to z, with digits and single hyphens after the first. "
        "Titles and notes, in quotes, may hold anything.",
        (SIZE, "point Gate = 1in from A1 to B1", "seam Gate -- bottom"),
        (SIZE, "point gate = 1in from A1 to B1", "seam gate -- bottom"),
    ),
    in_block(
        "name-is-grid-point",
        "A grid point as a name",
        "A capital letter and a number are always graph paper, so they cannot name anything else.",
        (SIZE, "point B1 = 1in from A1 to A2", "seam B1 -- bottom"),
        (SIZE, "point gate = 1in from A1 to B1", "seam gate -- bottom"),
    ),
    in_block(
        "name-too-long",
        "A name of more than 40 letters",
        "Names stand in messages and in narrow columns of tables.",
        (SIZE, f"point {'very-' * 9}long = 1in from A1 to B1", f"seam {'very-' * 9}long -- bottom"),
        (SIZE, "point gate = 1in from A1 to B1", "seam gate -- bottom"),
    ),
    in_block(
        "grid-point-small",
        "A grid point in small letters",
        "Grid points have capital letters: B2, not b2.",
        (SIZE, GRID, "place plain dark in a1..B2"),
        (SIZE, GRID, "place plain dark in A1..B2"),
    ),
    in_block(
        "grid-row-zero",
        "A row before the first",
        "Columns of the grid are lettered from A, rows numbered from 1; A1 is the top left corner.",
        (SIZE, GRID, "seam A0 -- C3"),
        (SIZE, GRID, SEAM),
    ),
    in_block(
        "grid-point-far",
        "A grid point beyond any grid",
        "A grid has at most 1,000 parts each way.",
        (SIZE, GRID, "seam A1 -- C5000"),
        (SIZE, GRID, SEAM),
    ),
    in_block(
        "side-unknown",
        "Not a side or a corner",
        "A block has the sides `top`, `right`, `bottom` and `left`, and the corners `top-left`, "
        "`top-right`, `bottom-left` and `bottom-right`.",
        (SIZE, "seam top -- bottom", "faces north"),
        (SIZE, "seam top -- bottom", "faces top"),
    ),
    # ---- seams, brackets, braces
    in_block(
        "dash-other",
        "Another dash or arrow",
        "A straight seam goes on by `--`, an arc by `~~`; a place lies between corners with `..` "
        "between them.",
        (SIZE, GRID, "seam A1 -> C3"),
        (SIZE, GRID, SEAM),
    ),
    in_block(
        "dash-stray",
        "A dash that joins nothing",
        "There is a dash or an arrow where the line needs none.",
        (SIZE, GRID, "seam -> A1 -- C3"),
        (SIZE, GRID, SEAM),
    ),
    in_block(
        "outline-first",
        "A seam that starts from the outline",
        "`-- outline` carries a seam straight on to the edge. It has no place of its own to start "
        "from: begin at a point.",
        (SIZE, "seam outline -- top -- bottom"),
        (SIZE, "seam top -- bottom"),
    ),
    in_block(
        "seam-past-outline",
        "A seam goes on after the outline",
        "A seam that has reached the edge ends there. What follows is another seam.",
        (SIZE, "seam top -- center -- outline -- left"),
        (SIZE, "seam top -- center -- outline"),
    ),
    in_block(
        "outline-to-outline",
        "An outline that runs on to itself",
        "`-- outline` carries a seam to the block's edge, which is not there before the outline is "
        "drawn. An outline closes itself.",
        (SIZE, "outline top-left -- top-right -- outline"),
        (SIZE, "outline top-left -- top-right -- bottom-right -- bottom-left"),
    ),
    in_block(
        "brackets-missing",
        "A phrase inside another without brackets",
        "Inside a seam, a line or another phrase, a phrase for a point stands in brackets, so that its"
        " end is plain.",
        (SIZE, "seam top -- 1in from bottom to bottom-right"),
        (SIZE, "seam top -- (1in from bottom to bottom-right)"),
    ),
    in_block(
        "bracket-open",
        "A bracket that is never closed",
        "Every `(` has its `)`.",
        (SIZE, "seam top -- (1in from bottom to bottom-right", "faces top"),
        (SIZE, "seam top -- (1in from bottom to bottom-right)", "faces top"),
    ),
    in_block(
        "bracket-extra",
        "A bracket that closes nothing",
        "There is a `)` more than there are `(`.",
        (SIZE, "seam top -- bottom)"),
        (SIZE, "seam top -- bottom"),
    ),
    Entry(
        "brace-open",
        "A brace that is never closed",
        "The body of a block, a turn or a mirror stands in braces. One was opened and never closed: the "
        "other place shown is where.",
        'edition 1\n\nblock "Trial" {\n  finished 6in\n  turn 2 about center {\n    seam center -- top\n}\n',
        'edition 1\n\nblock "Trial" {\n  finished 6in\n  turn 2 about center {\n'
        "    seam center -- top\n  }\n}\n",
    ),
    Entry(
        "brace-extra",
        "A brace that closes nothing",
        "There is a `}` more than there are `{`.",
        'edition 1\n\nblock "Trial" {\n  finished 6in\n}\n}\n',
        'edition 1\n\nblock "Trial" {\n  finished 6in\n}\n',
    ),
    in_block(
        "brace-missing",
        "The opening brace is left out",
        "What a turn or a mirror repeats stands in braces.",
        (SIZE, "turn 2 about center", "  seam center -- top", "}"),
        (SIZE, "turn 2 about center {", "  seam center -- top", "}"),
    ),
    in_block(
        "comma-extra",
        "A comma too many",
        "Commas stand between the things of a list. Lines need none at their end.",
        (SIZE, "seam top -- bottom,", "seam left -- right"),
        (SIZE, "seam top -- bottom", "seam left -- right"),
    ),
    in_block(
        "comma-last",
        "A list ends in a comma",
        "After a comma the list goes on. Finish it, or take the comma away.",
        (SIZE, "seam top -- bottom", "family strip,", "faces top"),
        (SIZE, "seam top -- bottom", "family strip", "faces top"),
    ),
    # ---- quoted text
    in_block(
        "title-unquoted",
        "A title or note without quotes",
        "Titles, notes and names of people stand in double quotes.",
        (SIZE, "seam top -- bottom", "note Press to the dark side"),
        (SIZE, "seam top -- bottom", 'note "Press to the dark side"'),
    ),
    Entry(
        "title-missing",
        "A block without a title",
        "After `block` comes its title in quotes. By it the block is found, and it stands on every template.",
        "edition 1\n\nblock {\n  finished 6in\n}\n",
        'edition 1\n\nblock "Trial" {\n  finished 6in\n}\n',
    ),
    Entry(
        "title-empty",
        "An empty title",
        "A title has something in it that can be read on a template.",
        'edition 1\n\nblock " " {\n  finished 6in\n}\n',
        'edition 1\n\nblock "Trial" {\n  finished 6in\n}\n',
    ),
    Entry(
        "title-too-long",
        "A title of more than 120 letters",
        "A longer title fits on no template. Shorten it, and put the rest in a `note`.",
        f'edition 1\n\nblock "{"Very " * 30}Long" {{\n  finished 6in\n}}\n',
        'edition 1\n\nblock "Very Long" {\n  finished 6in\n}\n',
    ),
    in_block(
        "text-quotes",
        "Other quotation marks",
        "Text stands in straight double quotes. Word processors change them into curly ones.",
        (SIZE, "seam top -- bottom", "maker “Wren Halloway”"),
        (SIZE, "seam top -- bottom", 'maker "Wren Halloway"'),
    ),
    in_block(
        "text-open",
        "A quote that is never closed",
        "Text begins and ends on one line.",
        (SIZE, "seam top -- bottom", 'note "Press well'),
        (SIZE, "seam top -- bottom", 'note "Press well"'),
    ),
    in_block(
        "text-empty",
        "Nothing between the quotes",
        "Take the statement away, or say something.",
        (SIZE, "seam top -- bottom", 'note ""'),
        (SIZE, "seam top -- bottom", 'note "Press well"'),
    ),
    in_block(
        "text-too-long",
        "A note of more than 2,000 letters, or a maker's name of more than 120",
        "A note is a paragraph on a sheet: write several. A maker's name is a line; the rest can go "
        "into a note.",
        (SIZE, "seam top -- bottom", f'note "{"On and on. " * 200}"'),
        (SIZE, "seam top -- bottom", 'note "On and on."'),
    ),
    in_block(
        "text-escape",
        "A backslash that escapes nothing",
        'Inside quotes a backslash stands only before `"` or another backslash.',
        (SIZE, "seam top -- bottom", 'note "dark\\nlight"'),
        (SIZE, "seam top -- bottom", 'note "dark, light"'),
    ),
    in_block(
        "character-unseen",
        "A character that cannot be seen",
        "The file holds a character that shows nothing or turns the reading direction round, so that "
        "the text is not what it looks like. Take it away.",
        (SIZE, "seam top -- bottom", 'note "dark\u202elight"'),
        (SIZE, "seam top -- bottom", 'note "dark, light"'),
    ),
    in_block(
        "sign-unknown",
        "A sign that means nothing here",
        "The language writes this otherwise, or not at all. Remarks begin with `#`, statements need no"
        " `;`, a grid is `2 x 2`.",
        (SIZE, "grid 2 × 2", SEAM),
        (SIZE, GRID, SEAM),
    ),
)
