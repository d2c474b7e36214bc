"""Mistakes of writing: each is told once, at the right words, with a way out in the language's own words."""

from __future__ import annotations

import pytest
from piecewright.diagnostics.diagnostic import Severity
from piecewright.diagnostics.source import Source
from piecewright.language import limits
from piecewright.language.parser import parse
from support.mistakes import mended, told
from support.programs import errors, in_block, parse_text

MISTAKES = (
    # units
    ("finished 6", "unit-missing", "6", "`6in`"),
    ("finished 6in x 9", "unit-missing", "9", "`9in`"),
    ("turn 6 of 15 about center { }", "unit-missing", "15", "`15deg`"),
    ("point p = 2in from center at 45", "unit-missing", "45", "`45deg`"),
    ("turn 4in about center { }", "unit-unwanted", "4in", "`4`"),
    ("point p = gate turned 45in about center", "unit-unwanted", "45in", "`45deg`"),
    ('finished 6"', "measure-unknown", '6"', "`6in`"),
    ("finished 6 inches", "measure-unknown", "6 inches", "`6in`"),
    ("finished 15 CM", "measure-unknown", "15 CM", "`15cm`"),
    ("point p = gate turned 45° about center", "measure-unknown", "45°", "`45deg`"),
    ("finished 6½in", "fraction-sign", "6½in", "`6 1/2in`"),
    ("finished 7,5cm", "comma-decimal", "7,5cm", "`7.5cm`"),
    ("finished 7,5 cm x 10cm", "comma-decimal", "7,5 cm", "`7.5 cm`"),
    ("point p = 0,5 from A1 to B1", "comma-decimal", "0,5", "`0.5`"),
    ("point p = 1,5in from A1 to B1", "comma-decimal", "1,5in", "`1.5in`"),
    ("turn 4 of 22,5deg about center { }", "comma-decimal", "22,5deg", "`22.5deg`"),
    ("point p = (1,5, 2)", "comma-decimal", "1,5", "`1.5`"),
    ("point p = (-1, 2,5)", "comma-decimal", "2,5", "`2.5`"),
    ("rounds 2 of 0,5cm about A1..B2 in dark", "comma-decimal", "0,5cm", "`0.5cm`"),
    ("finished ½ in", "fraction-sign", "½ in", "`1/2in`"),
    ('grid 2 x 2  "Vane"', "word-unexpected", '"Vane"', "next statement"),
    ("point p = (1in, 2in)", "steps-with-unit", "1in", "grid steps"),
    # words that open statements
    ("seem A1 -- B1", "statement-unknown", "seem", "`seam`"),
    ("trun 4 about center { }", "statement-unknown", "trun", "`turn`"),
    ("Seam A1 -- B1", "statement-unknown", "Seam", "`seam`"),
    ("line A1 -- B1", "statement-unknown", "line", "`seam`"),
    ("rotate 4 about center { }", "statement-unknown", "rotate", "`turn`"),
    ("wibble", "statement-unknown", "wibble", "`seam`, `point` or `piece`"),
    ("washed 7in x 8", "unit-missing", "8", "`8in`"),
    ("washed 7in read 1/16in", "word-missing", "1/16in", "`to`"),
    ("sashing 1in in sand", "statement-of-quilt", "sashing", "belongs in a quilt"),
    ("edition 1", "edition-not-first", "edition", "top of the file"),
    # names
    ("piece row at A1 in dark", "name-reserved", "row", "cannot be a name"),
    ("point in = center", "name-reserved", "in", "cannot be a name"),
    ("point Gate = center", "name-letters", "Gate", "`gate`"),
    ("point café = center", "name-letters", "café", "`caf`"),
    ("seam gate-B1 -- C1", "name-letters", "gate-B1", "`gate -- B1`"),
    ("point B1 = center", "name-is-grid-point", "B1", "small letters"),
    ("place p in b3..C4", "grid-point-small", "b3", "`B3`"),
    ("row a facing north", "side-unknown", "north", "`top-left`"),
    ("faces topleft", "side-unknown", "topleft", "`top-left`"),
    # holes
    ('use "X"', "use-without-as", "", "`as`"),
    ('use "X" with a = b', "use-without-as", "", "`as`"),
    ('use "X" pair', "use-without-as", "pair", "`as`"),
    ("turn 4 { seam A1 -- B1 }", "about-missing", "", "`about`"),
    ("turn 4 center { seam A1 -- B1 }", "about-missing", "center", "`about`"),
    ("point gate 1in from A1 to B1", "equals-missing", "1in", "`=`"),
    ("piece a A1 in dark", "word-missing", "A1", "`at`"),
    ("seam A1 B1", "word-missing", "B1", "`--`"),
    ("row a b", "word-missing", "b", "`,`"),
    ("mirror top--bottom { }", "word-missing", "top", "`in`"),
    ("piece a in dark", "word-unexpected", "in", "`at`"),
    ("piece at A1 in dark", "word-unexpected", "at", "a name"),
    ("piece a at A1", "statement-unfinished", "", "`in`"),
    ("place p in A1", "region-half", "", "`..`"),
    ("grid 3", "statement-unfinished", "", "`x`"),
    ("seam A1 ~~ B1", "statement-unfinished", "", "`around` or `through`"),
    ("seam circle center radius 1in", "word-unexpected", "center", "`around`"),
    ("seam circle around center", "statement-unfinished", "", "`radius` or `through`"),
    ("outline regular 6", "statement-unfinished", "", "`side`"),
    ("seam through A1", "statement-unfinished", "", "`A1--B2`"),
    # another word or sign
    ("seam A1 - B1", "dash-other", "-", "`--`"),
    ("seam A1 -> B1", "dash-other", "->", "`--`"),
    ("seam A1 – B1", "dash-other", "–", "`--`"),
    ("seam A1 to B1", "word-unknown", "to", "`--`"),
    ("place p in A1-B2", "dash-other", "-", "`..`"),
    ("place p in A1--B2", "dash-other", "--", "`..`"),
    ("seam A1 ~ B1 around C1", "sign-unknown", "~", "`~~`"),
    ("seam A1 ~~ B1 about C1", "word-unknown", "about", "`around`"),
    ("turn 4 in center { }", "word-unknown", "in", "`about`"),
    ("turn 4 abuot center { }", "word-unknown", "abuot", "`about`"),
    ("turn six about center { }", "word-unknown", "six", "`6`"),
    ("grid 2 by 2", "word-unknown", "by", "`x`"),
    ("grid 2 × 2", "sign-unknown", "×", "`x`"),
    ("grid 2 X 2", "word-capital", "X", "`x`"),
    ("// a remark", "sign-unknown", "// a remark", "`#`"),
    ("seam A1 -- B1;", "sign-unknown", ";", "needs no `;`"),
    ("seam A1 -- B1,\nseam A1 -- C1", "comma-extra", ",", "No comma"),
    ("row a, b,\nfaces top", "comma-last", ",", "Finish the list"),
    ("trim round", "word-unexpected", "round", "`matched`, `none` or `square`"),
    ("trim none 1/4in", "trim-none-limit", "1/4in", "no length"),
    # brackets
    ("seam A1 -- 1/2 from A1 to B1", "brackets-missing", "1/2 from A1 to B1", "`(1/2 from A1 to B1)`"),
    ("piece a at A1, between B1, C1 in dark", "brackets-missing", "between B1, C1", "`(between B1, C1)`"),
    ("seam A1 -- (1/2 from A1 to B1\nfaces top", "bracket-open", "", "`)`"),
    ("seam A1 -- B1)", "bracket-extra", ")", "closes nothing"),
    # paths and poses
    ("seam outline -- A1", "outline-first", "outline", "cannot start"),
    ("seam A1 -- outline -- B1", "seam-past-outline", "-- B1", "two seams"),
    ("outline A1 -- outline", "outline-to-outline", "-- outline", "closes itself"),
    ("row a turned 45deg", "turned-not-quarter", "45deg", "`90deg`"),
    ("row a facing left turned 90deg", "turned-and-facing", "turned 90deg", "not both"),
    # quotes
    ("note Press it well", "title-unquoted", "Press it well", '`"Press it well"`'),
    ("maker 'Wren'", "text-quotes", "'Wren'", '`"Wren"`'),
    ("maker “Wren”", "text-quotes", "“Wren”", '`"Wren"`'),
    ('maker "Wren', "text-open", '"Wren', "closing quote"),
    ("use pair as p", "title-unquoted", "pair", '`"pair"`'),
    ("use as p", "title-missing", "", "title in quotes"),
)


@pytest.mark.parametrize(("body", "code", "words", "text"), MISTAKES, ids=[each[0] for each in MISTAKES])
def test_one_mistake_gives_one_message(body: str, code: str, words: str, text: str) -> None:
    (said,) = told(in_block(body))
    assert (said.code, said.words) == (code, words)
    assert text in said.text
    assert said.place[0] == 3


@pytest.mark.parametrize(
    "body",
    [
        "finished 6",
        'finished 6"',
        "finished 6½in",
        "trun 4 about center { }",
        "seam A1 - B1",
        "place p in a1..b2",
        "point Gate = center",
        "point gate 1in from A1 to B1",
        "row a b c",
        "turn 4 center { seam A1 B1 }",
        "turn 4 { }",
        "note Press it well",
        "maker “Wren”",
        'maker "Wren',
        "grid 2 by 2",
        "grid 2 X 2",
        "seam A1 -- 1/2 from A1 to B1",
        "seam A1 -- (1/2 from A1 to B1\nfaces top",
        "seam A1 -- B1,",
        "seam A1 -- E0",
        "seam A1 ~~ B1 about C1 -> D1;",
    ],
)
def test_the_mends_that_are_offered_mend(body: str) -> None:
    assert told(mended(in_block(body))) == []


@pytest.mark.parametrize("following", ["grid 2 x 2", "piece a at A1 in dark", "turn 4 about center { }", "}"])
@pytest.mark.parametrize(
    "holed",
    [
        "seam A1 --",
        "point gate =",
        "piece a at",
        "family",
        'use "X" as',
        "row a,",
    ],
)
def test_a_hole_at_the_end_of_a_line_is_told_there(holed: str, following: str) -> None:
    (said,) = told(in_block(f"{holed}\n{following}") if following != "}" else in_block(holed))
    assert said.place[0] == 3
    assert said.code == ("comma-last" if holed.endswith(",") else "statement-unfinished")


# ---- braces -----------------------------------------------------------------------------------------------


def test_a_brace_never_closed_is_told_at_the_end_and_at_the_brace() -> None:
    text = 'edition 1\nblock "A" {\n  turn 4 about center {\n    seam A1 -- B1\n}\n'
    source = Source("block.block", text)
    (said,) = parse(source).diagnostics
    assert said.code == "brace-open"
    assert source.place(said.primary.span.start) == (5, 2)
    assert [source.place(each.span.start) for each in said.related] == [(3, 23)]


def test_the_next_block_is_read_although_the_one_before_is_open() -> None:
    said = told('edition 1\nblock "A" {\n  turn 4 about center {\n\nblock "B" { fnished 6in }')
    assert [(each.place, each.code) for each in said] == [
        ((3, 24), "brace-open"),
        ((5, 13), "statement-unknown"),
    ]


@pytest.mark.parametrize(
    ("text", "code", "place"),
    [
        ('edition 1\nblock "A" { } }\nblock "B" { }', "brace-extra", (2, 15)),
        ('edition 1\nblock "A" {\nturn 4 about center\nseam A1 -- B1 }\n}', "brace-missing", (3, 20)),
        ('edition 1\nblock "A" {', "brace-open", (2, 12)),
        ('edition 1\nblock "A"', "statement-unfinished", (2, 10)),
    ],
)
def test_braces(text: str, code: str, place: tuple[int, int]) -> None:
    (said,) = told(text)
    assert (said.code, said.place) == (code, place)


@pytest.mark.parametrize(
    ("opening", "closing"),
    [
        ("turn 2 about center {", "}"),
        ("mirror in top--bottom {", "}"),
        ("seam A1 -- (", ")"),
        ("seam (", ""),
        ("{", "}"),
        ("(", ""),
    ],
)
def test_twenty_thousand_levels_give_one_clear_message(opening: str, closing: str) -> None:
    deep = in_block(opening.join([""] * 20_001) + closing * 20_000)
    if "seam" in opening:
        deep = in_block("seam A1 -- " + "(" * 20_000 + "A1" + closing * 20_000)
    (said,) = [each for each in told(deep) if each.code == "nesting-too-deep"]
    assert str(limits.NESTING) in said.text
    assert len(told(deep)) == 1


def test_nesting_up_to_the_bound_is_read() -> None:
    depth = limits.NESTING - 1  # the block's own brace is one
    assert errors(parse_text(in_block("turn 2 about center {\n" * depth + "}\n" * depth))) == []
    assert errors(parse_text(in_block("seam A1 -- " + "(next " * depth + "A1" + ")" * depth))) == []
    assert errors(parse_text(in_block("turn 2 about center {\n" * (depth + 1) + "}" * (depth + 1)))) == [
        "nesting-too-deep"
    ]


def test_more_statements_than_the_bound() -> None:
    assert errors(parse_text(in_block("faces top " * (limits.STATEMENTS + 1)))) == ["statements-too-many"]


# ---- files ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "file-empty"),
        ("# only a remark\n", "file-empty"),
        ("edition 1\n", "block-missing"),
        ('edition 2\nblock "A" { }', "edition-unknown"),
        ('edition one\nblock "A" { }', "word-unknown"),
        ('edition\nblock "A" { }', "statement-unfinished"),
        ('edition 1\nblok "A" { }', "statement-unknown"),
        ("edition 1\nblock Tidewater Vane version 2 { }", "title-unquoted"),
        ("edition 1\nblock 'Vane' { }", "text-quotes"),
        ('edition 1\nblock "Vane { }', "text-open"),
        ("edition 1\nblock { }", "title-missing"),
        ('edition 1\nblock "" { }', "title-empty"),
        ("edition 1\nfinished 6in\ngrid 2 x 2\n", "statement-outside"),
        ("edition 1\nhello there, this is a letter\nto you", "statement-unknown"),
        ('edition 1\nblock "A" { } edition 1', "edition-not-first"),
    ],
)
def test_the_file_as_a_whole(text: str, code: str) -> None:
    assert [each.code for each in told(text)] == [code]


def test_a_missing_edition_is_a_warning_that_can_be_mended() -> None:
    outcome = parse_text('block "A" { finished 6in }')
    (said,) = outcome.diagnostics
    assert (said.code, said.severity) == ("edition-missing", Severity.WARNING)
    assert not outcome.failed and outcome.value is not None and outcome.value.edition is None
    assert said.fix is not None
    assert told(said.fix.text + 'block "A" { finished 6in }') == []


def test_blocks_beside_a_quilt_are_still_read() -> None:
    said = told('edition 1\nquilt "Q" { border 2 in sand }\nblock "A" { seam A1 -- }')
    assert [each.code for each in said] == ["unit-eaten", "statement-unfinished"]


def test_every_mistake_of_a_file_is_told_in_one_run() -> None:
    said = told("""\
block "First" {
  finished 6
  grid 2 by 2
  point gate 1in from B1 to C1
  turn 4 {
    seam center - gate
    wibble wobble
    piece row at center in dark
  }
}

block Second {
  use "Two-Triangle Square"
  row pair,
  seam A1 --
}
""")
    assert [(each.place[0], each.code) for each in said] == [
        (1, "edition-missing"),
        (2, "unit-missing"),
        (3, "word-unknown"),
        (4, "equals-missing"),
        (5, "about-missing"),
        (6, "dash-other"),
        (7, "statement-unknown"),
        (8, "name-reserved"),
        (12, "title-unquoted"),
        (13, "use-without-as"),
        (14, "comma-last"),
        (15, "statement-unfinished"),
    ]


def test_statements_inside_a_spoilt_turn_are_still_read() -> None:
    said = told(in_block("turn four hundred times {\n  seam A1 - B1\n  seam A1 -- \n}\nfaces nowhere"))
    assert [(each.place[0], each.code) for each in said] == [
        (3, "word-unknown"),
        (4, "dash-other"),
        (5, "statement-unfinished"),
        (7, "side-unknown"),
    ]


def test_a_file_of_nothing_but_mistakes_is_cut_short() -> None:
    said = told(in_block("wibble\n" * 5000))
    assert len(said) == limits.ERRORS + 1
    assert said[-1].code == "errors-too-many" and str(limits.ERRORS) in said[-1].text


def test_messages_are_short_sentences_in_a_quilters_words() -> None:
    for body, *_ in MISTAKES:
        for each in parse_text(in_block(body)).diagnostics:
            assert each.message.endswith((".", "?")) and len(each.message) <= 110, each.message
            assert each.help.endswith((".", "?")), each.help
            for word in ("token", "terminal", "invalid", "illegal", "syntax", "parse", "expected", "None"):
                assert word not in each.message + each.help
