"""Quilts that cannot be made: each is told once, at the words, with the sums and a way out."""

from __future__ import annotations

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.diagnostics.diagnostic import Diagnostic
from support.quilts import codes, lay, matters, quilt_text, try_quilt

SET = "set straight 2 across 2 down { alternate pair }"
WIDE = "set straight 20 across 20 down { alternate pair }"
QUARTERS = " fabric rose fat quarter 40"
POINT = "set on point 2 across 2 down with triangles in sand"

BAD = (
    # blocks that do not fit their cells
    (
        "set straight 2 across 2 down of 4in { alternate goose }",
        "unit-proportions",
        "goose",
        "4in x 2in as it lies, and its cell is 4in x 4in",
        "`stretched`",
    ),
    (
        "set straight 2 across 2 down { alternate pair place sail in A1..C2 }",
        "unit-proportions",
        "sail",
        "its cell is 8in x 4in",
        "turn it",
    ),
    (
        "set straight 2 across 2 down { alternate pair, goose }",
        "set-sizes-differ",
        "set straight",
        "4in x 4in and 4in x 2in",
        "`of 8in`",
    ),
    (
        "set straight 2 across 2 down { alternate plain sand }",
        "set-size-missing",
        "set straight",
        "no size",
        "of 8in",
    ),
    (POINT + " { alternate goose }", "set-not-square", "set on point", "these are 4in x 2in", "`of 8in`"),
    (
        "set straight 2 across 2 down { alternate wibble }",
        "unit-unknown",
        "wibble",
        "no unit called `wibble`",
        'use "Title" as wibble',
    ),
    ("set straight 2 across 2 down { alternate piar }", "unit-unknown", "piar", "no unit called", "`pair`"),
    (
        "set straight 2 across 2 down { alternate pair facing top }",
        "facing-wrong-kind",
        "facing top",
        "faces a corner",
        "`top-left`",
    ),
    # rows and places: ruling 8, with the sums
    (
        "set straight 2 across 1 down { row 3 pair }",
        "row-too-long",
        "row 3 pair",
        "3 make 12in, 2 make 8in",
        "Take away 1",
    ),
    (
        "set straight 4 across 1 down { row 3 pair }",
        "row-too-short",
        "row 3 pair",
        "3 make 12in, 4 make 16in",
        "Add 1",
    ),
    (
        "set straight 2 across 1 down { row 2 pair row 2 sail }",
        "row-off-grid",
        "row 2 sail",
        "1 row down",
        "Take a row away",
    ),
    (
        "set straight 2 across 2 down { row 2 pair }",
        "set-uncovered",
        "set straight",
        "2 cells of this set have no block: the first is row 2, number 1",
        "`row`",
    ),
    (
        POINT + " { row 2 pair  row 2 pair  row 2 pair }",
        "row-too-long",
        "row 2 pair",
        "2 make 8in, 1 make",
        "",
    ),
    (POINT + " { row 2 pair  row sail }", "set-uncovered", "set on point", "first is row 3, number 1", ""),
    (
        "set straight 2 across 2 down { alternate pair place sail in A1..D4 }",
        "grid-point-off",
        "D4",
        "ends at C3",
        "A1 to C3",
    ),
    (
        "set straight 2 across 2 down { alternate pair place sail in A1..A1 }",
        "region-no-cells",
        "A1..A1",
        "corners, not cells",
        "A1..B2",
    ),
    (
        "set straight 2 across 2 down { alternate pair place sail in A1..B1 }",
        "region-no-cells",
        "A1..B1",
        "line",
        "A1..B2",
    ),
    (
        "set straight 3 across 3 down { alternate pair place sail in A1..C3 place sail in B2..D4 }",
        "units-overlap",
        "B2..D4",
        "row 2, number 2",
        "own cells",
    ),
    (
        POINT + " { alternate pair, pair place sail in A1..B2, A1..B2 }",
        "units-overlap",
        "A1..B2",
        "row 1, number 1",
        "",
    ),
    (
        POINT + " { alternate pair, pair place sail in A1..C3 }",
        "region-over-cells",
        "A1..C3",
        "covers one cell",
        "A1..B2",
    ),
    (
        "set rows { row 4 pair  row 5 pair }",
        "rows-differ",
        "row 5 pair",
        "5 make 20in, 4 make 16in",
        "one length",
    ),
    (
        "set rows { row 4 pair, goose }",
        "row-heights-differ",
        "goose",
        "2in high in a row 4in high",
        "Turn it",
    ),
    (
        "set rows { row 4 pair  row 4 plain sand }",
        "row-size-missing",
        "plain sand",
        "all plain",
        "block in the row",
    ),
    ("set rows { }", "set-uncovered", "set rows { }", "no rows", "`row 9 goose`"),
    # sashing
    (
        POINT + " { alternate pair, pair } sashing 1in in sand",
        "sashing-needs-posts",
        "sashing 1in in sand",
        "needs posts",
        "`posts in`",
    ),
    (
        "set rows { row 4 pair row 4 sail } sashing 1in in sand posts in indigo",
        "sashing-no-posts",
        "indigo",
        "no crossings",
        "Take `posts in ...` away",
    ),
    # borders: sizes that do not divide, that leave no room, that are longer than the cloth
    (
        SET + " border 3in of pair",
        "border-unfit",
        "border 3in of pair",
        "The top is 14in long: 4 units make 12in, 5 make 15in",
        "plain border of the missing width",
    ),
    (SET + " border 3in of wibble", "unit-unknown", "wibble", "no unit called", ""),
    (SET + " border 2in of pair corners goose", "unit-proportions", "goose", "its cell is 2in x 2in", ""),
    (SET + " border to 8in in sand", "border-no-room", "8in", "8in x 8in here already", "larger size"),
    (SET + " border to 7in x 12in in sand", "border-no-room", "7in x 12in", "goes to 7in x 12in", ""),
    (
        SET + " border to 10in x 12in in sand mitred",
        "border-unequal",
        "border to 10in",
        "1in wide at the sides and 2in at top and bottom",
        "one width",
    ),
    (SET + " border to 10in x 12in of pair", "border-unequal", "border to 10in", "1in wide at the sides", ""),
    (
        WIDE + QUARTERS + " border 2in in rose unjoined",
        "border-too-long",
        "border 2in in rose unjoined",
        "a strip 2 1/2in x 82 1/2in, and no piece of `rose` is as long",
        "Take `unjoined` away",
    ),
    # fabrics and roles
    (SET + " border 2in in gold", "role-without-fabric", "gold", "`gold` is no fabric", "`fabric gold`"),
    (SET + " border 2in in idnigo", "role-without-fabric", "idnigo", "`idnigo` is no fabric", "`indigo`"),
    (SET + " roles dark = gold", "fabric-unknown", "gold", "no fabric called `gold`", ""),
    (SET + " roles indigo = night", "fabric-unknown", "night", "no fabric called", "`night = indigo`"),
    (SET + " roles dark = sand, dark = indigo", "role-twice", "dark", "two fabrics", "colourway"),
    (
        SET + " roles dark = sand roles dark = indigo",
        "colourway-untitled",
        "roles dark = sand",
        "needs a title",
        '`roles "Sea" dark = indigo`',
    ),
    (
        SET + ' roles "Sea" dark = sand roles "Sea" dark = indigo',
        "colourway-twice",
        '"Sea"',
        'two colourways "Sea"',
        "title of its own",
    ),
    ("fabric sand " + SET, "fabric-twice", "sand", "two fabrics called `sand`", "another name"),
    ("fabric rose shrinks 100% " + SET, "shrinkage-too-large", "100%", "Nothing is left", "`shrinks 3%`"),
    ("fabric rose shrinks 250% " + SET, "shrinkage-too-large", "250%", "Nothing is left", "`shrinks 3%`"),
    ("fabric rose width 0in " + SET, "length-zero", "0in", "no length", ""),
    # the whole
    (
        "border 2in in sand",
        "set-missing",
        '"Trial"',
        "sets no blocks",
        "`set straight 4 across 5 down { ... }`",
    ),
    (SET + " set rows { row pair }", "statement-twice", "set rows { row pair }", "one `set`", "Take one"),
    (
        "set straight 2 across 2 down { alternate pair alternate sail }",
        "statement-twice",
        "alternate sail",
        "A set has one `alternate`",
        "Take one",
    ),
    (
        SET + " sashing 1in in sand sashing 2in in sand",
        "statement-twice",
        "sashing 2in in sand",
        "one `sashing`",
        "",
    ),
    (SET + " binding 2in in sand", "statement-twice", "binding 2 1/2in in indigo", "one `binding`", ""),
    (
        "set straight 1000 across 1000 down { alternate pair }",
        "quilt-too-large",
        "set straight 1000",
        "1,000,000 cells, and 40,000 is the most",
        "counts right",
    ),
    (
        "set on point 1000 across 1000 down { alternate pair, pair }",
        "quilt-too-large",
        "set on point 1000",
        "2,000,000 cells",
        "",
    ),
    (
        "set rows { row 1000 pair " + "row 1000 pair " * 41 + "}",
        "quilt-too-large",
        "set rows",
        "cells, and 40,000",
        "",
    ),
    (
        "set straight 200 across 200 down { alternate sail }",
        "quilt-too-large",
        '"Trial"',
        "120,000 pieces, and 100,000 is the most",
        "simpler blocks",
    ),
    (
        SET + " border 1in in sand" * 51,
        "quilt-too-large",
        "border 1in in sand",
        "51 borders, and 50",
        "two quilts",
    ),
    (
        SET + "".join(f' roles "C{way}" dark = sand' for way in range(25)),
        "quilt-too-large",
        'roles "C24" dark = sand',
        "25 colourways, and 24",
        "",
    ),
    (
        "set straight 60 across 60 down { alternate sail }"
        + "".join(f' roles "C{way}" dark = sand' for way in range(10)),
        "quilt-too-large",
        '"Trial"',
        "108,000 pieces, and 100,000",
        "",
    ),
    (
        SET + " fits gigantic mattress",
        "mattress-unknown",
        "fits gigantic mattress",
        "`gigantic`",
        "queen and king",
    ),
)


def only(body: str, code: str) -> tuple[str, Diagnostic]:
    """The one error of a quilt, and the words it points at."""
    said = [each for each in matters(try_quilt(body)) if each.severity.value == "error"]
    found = {each.code for each in said}
    assert found == {code}, [(each.code, each.message) for each in said]
    span = said[0].primary.span
    return quilt_text(body)[span.start : span.end], said[0]


@pytest.mark.parametrize(
    ("body", "code", "words", "message", "remedy"), BAD, ids=[each[0][:70] for each in BAD]
)
def test_what_cannot_be_made_is_told_at_the_words(
    body: str, code: str, words: str, message: str, remedy: str
) -> None:
    pointed, said = only(body, code)
    assert pointed.startswith(words)
    assert message in said.message
    assert remedy in said.help
    assert said.help, "every complaint says what to do"
    assert said.message.endswith(".") and len(said.message) <= 110, said.message


def test_a_used_block_that_is_nowhere_is_told_at_its_title() -> None:
    outcome = try_quilt("set straight 1 across 1 down { row lost }", uses='use "Lost Block" as lost')
    assert codes(outcome) == ["block-unknown"]


def test_the_role_on_the_wrong_side_of_with_is_told() -> None:
    outcome = try_quilt(
        "set straight 1 across 1 down { row pair }", uses='use "Pair" as pair with sand = dark'
    )
    (said,) = matters(outcome)
    assert said.code == "role-unknown" and "stands on the left" in said.help


def test_roles_that_nothing_asks_for_are_noted_with_a_near_one() -> None:
    outcome = try_quilt(
        SET + " roles drak = indigo",
        uses='use "Pair" as pair with dark = darkest',
        fabrics="fabric indigo fabric sand fabric pale fabric darkest",
    )
    assert outcome.value is not None
    assert [each.code for each in outcome.diagnostics] == ["role-unused"]
    outcome = try_quilt(SET + " roles drak = indigo", fabrics="fabric indigo fabric sand fabric pale")
    assert sorted({each.code for each in outcome.diagnostics} - {"unit-unused"}) == [
        "role-unused",
        "role-without-fabric",
    ]
    (noted,) = [each for each in outcome.diagnostics if each.code == "role-unused"]
    assert "`dark`" in noted.help


def test_a_fabric_that_nothing_is_cut_from_is_noted() -> None:
    outcome = try_quilt(SET, fabrics="fabric dark fabric pale fabric sand fabric indigo fabric rose")
    (said,) = [each for each in outcome.diagnostics if each.code == "fabric-unused"]
    assert "`rose`" in said.message and outcome.value is not None


def test_one_mistake_in_two_colourways_is_told_once() -> None:
    outcome = try_quilt(
        WIDE + QUARTERS + ' border 2in in rose unjoined roles "A" dark = sand roles "B" dark = indigo'
    )
    assert codes(outcome) == ["border-too-long"]


@pytest.mark.parametrize("facts", ["one way", "striped"])
def test_an_unjoined_border_of_a_print_cannot_be_longer_than_the_cloth_is_wide(facts: str) -> None:
    """Its top and bottom strips lie across the cloth, or their print would lie on its side."""
    (said, *_) = matters(try_quilt(WIDE + f" fabric rose {facts} border 2in in rose unjoined"))
    assert said.code == "border-too-long" and "with its print up" in said.message
    assert "`rose` is 42in wide" in said.message


def test_an_unjoined_border_off_the_bolt_runs_along_the_cloth() -> None:
    made = lay(WIDE + " fabric rose border 2in in rose unjoined")
    plan = plan_cutting(made).value
    assert plan is not None
    (rose,) = [each for each in plan.fabrics if each.fabric == "rose"]
    assert all(cut.joined == 0 for cut in plan.cuts if cut.fabric == "rose")
    assert rose.used == 86.5, "four strips side by side, the longer two 84 1/2in and 2in over"


# ---- cloth that does not reach: told by the cutting plan ---------------------------------------------------


def planned(body: str, fabrics: str) -> list[Diagnostic]:
    """What the cutting plan says."""
    return list(plan_cutting(lay(body, fabrics=fabrics)).diagnostics)


def test_a_scrap_smaller_than_any_piece() -> None:
    said = planned(SET, "fabric dark scrap 2in x 2in fabric pale fabric sand fabric indigo")
    assert "cloth-short" in [each.code for each in said]
    assert any("`dark`" in each.message for each in said)


def test_a_cloth_too_narrow_for_any_piece() -> None:
    said = planned(SET, "fabric dark width 1in fabric pale fabric sand fabric indigo")
    assert [each.code for each in said] == ["piece-too-wide"]
    assert "`dark` is 1in wide" in said[0].message
