"""Mistakes in quilts: each is told once, at the right words, with a way out; and the rest is still read."""

from __future__ import annotations

import pytest
from piecewright.language import limits
from support.mistakes import mended, told
from support.programs import errors, in_block, in_quilt, parse_text

SET = "set straight 4 across 5 down { alternate a, b }"

MISTAKES = (
    # lengths, and the `in` that is eaten as inches
    ("border 2 in ecru", "unit-eaten", "2 in", "`border 2in in ecru`"),
    ("sashing 1 1/2 in sand", "unit-eaten", "1 1/2 in", "`sashing 1 1/2in in sand`"),
    ("binding 2 1/2 in indigo bias", "unit-eaten", "2 1/2 in", "`binding 2 1/2in in indigo`"),
    ("border to 60in x 72 in ecru", "unit-eaten", "72 in", "`72in in ecru`"),
    ("border 2 of goose", "unit-missing", "2", "`2in`"),
    ("fabric rose width 42", "unit-missing", "42", "`42in`"),
    ("backing in sand 4 over", "unit-missing", "4", "`4in`"),
    ("fits twin mattress drop 12", "unit-missing", "12", "`12in`"),
    ("set straight 4 across 5 down of 8 { alternate a, b }", "unit-missing", "8", "`8in`"),
    ("fabric rose width 0in", "length-zero", "0in", "no length"),
    ("border 2in ecru", "word-missing", "ecru", "`in`"),
    ("border -2in in sand", "length-negative", "-2in", "below zero"),
    ("border 2000in in sand", "length-too-large", "2000in", "1000in"),
    # shares
    ("fabric rose shrinks 3", "percent-missing", "3", "`3%`"),
    ("fabric rose shrinks 3 percent", "percent-missing", "3", "`3%`"),
    ("fabric rose shrinks 0.03", "percent-missing", "0.03", "`3%`"),
    ("fabric rose shrinks 3in", "percent-missing", "3in", "`3%`"),
    ("fabric rose shrinks -3%", "percent-bounds", "-3%", "below nothing"),
    ("fabric rose shrinks 100000%", "percent-bounds", "100000%", "many times the whole"),
    ("fabric rose 3%", "word-missing", "3%", "`shrinks 3%`"),
    # sets
    ("set straight 4 x 5 { alternate a, b }", "set-counts", "x", "`4 across 5 down`"),
    ("set straight 4x5 { alternate a, b }", "set-counts", "x", "`4 across 5 down`"),
    ("set straight 5 down 4 across { alternate a, b }", "set-counts", "down", "`4 across 5 down`"),
    ("set 4 across 5 down { alternate a, b }", "set-kind", "", "`set straight 4 across 5 down { ... }`"),
    ("set on-point 4 across 5 down { alternate a, b }", "word-unknown", "on-point", "`on point`"),
    ("set point 4 across 5 down { alternate a, b }", "word-unknown", "point", "`on point`"),
    ("set straight four across 5 down { alternate a, b }", "word-unknown", "four", "`4`"),
    ("set straight 4 across, 5 down { alternate a, b }", "comma-extra", ",", "No comma"),
    ("set straight 4 across 5 down 8in { alternate a, b }", "word-missing", "8in", "`of`"),
    ("set straight 4 across 5 down\nalternate a, b\n}", "brace-missing", "", "`{`"),
    (
        "set straight 4 across 5 down with triangles in sand { alternate a, b }",
        "word-unexpected",
        "with",
        "on point",
    ),
    (
        "set on point 4 across 5 down with triangles in sand of 8in { alternate a, b }",
        "word-unexpected",
        "of",
        "before `with triangles`",
    ),
    ("set on point 4 across 5 down with triangles sand { alternate a, b }", "word-missing", "sand", "`in`"),
    ("set rows { alternate a, b }", "set-rows-only", "alternate", "`row 9 goose`"),
    ("set rows { row 9 a place b in A1..B2 }", "set-rows-only", "place", "no `place`"),
    ("set straight 1001 across 5 down { alternate a, b }", "count-too-large", "1001", "at most 1000"),
    ("set straight 0 across 5 down { alternate a, b }", "count-too-small", "0", "at least 1"),
    ("set straight 4 1/2 across 5 down { alternate a, b }", "count-not-whole", "4 1/2", "whole number"),
    # fabrics
    ("fabric rose fat quarters", "word-unknown", "quarters", "`quarter`"),
    ("fabric rose 3 fat quarters", "word-unknown", "3 fat quarters", "`fat quarter 3`"),
    ("fabric rose fat-quarter 3", "word-unknown", "fat-quarter", "`fat quarter`"),
    ("fabric rose fat quarter 0", "count-too-small", "0", "fat quarters"),
    ("fabric rose one-way", "word-unknown", "one-way", "`one way`"),
    ("fabric rose stripes", "word-unknown", "stripes", "`striped`"),
    ("fabric rose 42in wide", "word-missing", "42in", "`width 42in`"),
    ("fabric rose 10in x 12in", "word-missing", "10in", "`scrap 10in x 12in`"),
    ("fabric rose with width 42in", "word-needless", "with", "needs no `with`"),
    ("fabric rose width 42in width 40in", "fact-twice", "width 40in", "second"),
    ("fabric rose one way one way", "fact-twice", "one way", "second"),
    ("fabric rose width 42in fat quarter 3", "width-of-pieces", "width 42in", "off the bolt"),
    ("fabric Rose", "name-letters", "Rose", "`rose`"),
    ("fabric sashing", "name-reserved", "sashing", "cannot be a name"),
    ('fabric "Rose"', "word-unexpected", '"Rose"', "a name"),
    ("fabric rose Rose Print", "title-unquoted", "Rose Print", '`"Rose Print"`'),
    # roles
    ("roles dark indigo", "equals-missing", "indigo", "`=`"),
    ("roles dark: indigo", "word-unknown", ":", "`=`"),
    ("roles dark = indigo light = sand", "word-missing", "light", "`,`"),
    ('roles "Sea"', "statement-unfinished", "", "a name"),
    ("roles Sea dark = indigo", "title-unquoted", "Sea", '`"Sea"`'),
    # sashing, borders and the rest
    ("sashing 1in in sand with posts in indigo", "word-needless", "with", "needs no `with`"),
    ("sashing 1in in sand cornerstones in indigo", "word-unknown", "cornerstones", "`posts`"),
    ("sashing 1in in sand posts indigo", "word-missing", "indigo", "`in`"),
    ("sashing in sand", "width-first", "in", "`sashing 1 1/2in in sand`"),
    ("border mitred 2in in sand", "width-first", "mitred", "`border 2in in sand`"),
    ("border 2in in sand mitered", "word-unknown", "mitered", "`mitred`"),
    ("border 2in in sand butted mitred", "border-styles", "mitred", "once"),
    ("border 2in in sand unjoined unjoined", "border-styles", "unjoined", "once"),
    ("border 2in in sand corners vane", "border-corners", "corners", "pieced border"),
    ("border 4in of vane mitred", "border-corners", "mitred", "corners are blocks"),
    ("border 60in x 72in in sand", "width-first", "60in x", "`border to 60in x 72in in sand`"),
    ("border 4in of", "statement-unfinished", "", "a unit or cloth"),
    ("binding in indigo", "width-first", "in", "`binding 2 1/2in in sand`"),
    ("backing sand", "word-missing", "sand", "`in`"),
    ("backing in sand 4in", "statement-unfinished", "", "`over`"),
    ("batting in wool", "batting-of-cloth", "in", "`batting 4in over`"),
    ("fits queen", "statement-unfinished", "", "`mattress`"),
    ("fits queen drop 12in", "word-missing", "drop", "`fits queen mattress drop 12in`"),
    ("fits queen mattress 12in", "word-missing", "12in", "`drop 12in`"),
    ('fits "queen" mattress', "word-unexpected", '"queen"', "without quotes"),
    # statements in the wrong place
    ("finished 6in", "statement-of-block", "finished", "belongs in a block"),
    ("seam A1 -- B1", "statement-of-block", "seam", "`use`"),
    ("turn 4 about center { seam A1 -- B1 }", "statement-of-block", "turn", "belongs in a block"),
    ("washed 6in x 6in", "statement-of-block", "washed", "belongs in a block"),
    ("row a, b", "statement-of-set", "row", "braces of a `set`"),
    ("place a in A1..B2", "statement-of-set", "place", "braces of a `set`"),
    (
        "set straight 4 across 5 down { alternate a, b sashing 1in in sand }",
        "statement-of-quilt",
        "sashing",
        "after the closing `}`",
    ),
    (
        "set straight 4 across 5 down { alternate a, b seam A1 -- B1 }",
        "statement-of-block",
        "seam",
        "Only `row`, `alternate` and `place`",
    ),
    ("set straight 4 across 5 down { alternate a, b\nsashing 1in in sand", "brace-open", "", "`}`"),
    ("fabrik rose", "statement-unknown", "fabrik", "`fabric`"),
    ("setting straight 4 across 5 down { alternate a, b }", "statement-unknown", "setting", "`set`"),
    ("lattice 1in in sand", "statement-unknown", "lattice", "`sashing`"),
    ("wibble", "statement-unknown", "wibble", "`fabric`, `set` or `border`"),
    ("set straight 4 across 5 down {\nwibble\n}", "statement-unknown", "wibble", "`alternate` and `place`"),
    ("edition 1", "edition-not-first", "edition", "top of the file"),
    ('use "Vane"', "use-without-as", "", "`as`"),
)


@pytest.mark.parametrize(("body", "code", "words", "text"), MISTAKES, ids=[each[0] for each in MISTAKES])
def test_one_mistake_in_a_quilt_gives_one_message(body: str, code: str, words: str, text: str) -> None:
    (said,) = told(in_quilt(body))
    assert said[1:3] == (code, words)
    assert text in said[3]


@pytest.mark.parametrize("body", [each[0] for each in MISTAKES])
def test_what_comes_after_a_mistake_is_still_read(body: str) -> None:
    """Another mistake on the next line is told too, and what is said is short and in a quilter's words."""
    said = parse_text(in_quilt(f'note "before"\n{body}\nbatting 4 over')).diagnostics
    assert [each.code for each in said][-1] == "unit-missing"
    assert len(said) == 2, said
    for each in said:
        assert each.message.endswith((".", "?")) and len(each.message) <= 100, each.message
        assert each.help.endswith((".", "?")), each.help
        for word in ("token", "terminal", "invalid", "illegal", "syntax", "parse", "expected", "None"):
            assert word not in each.message + each.help


@pytest.mark.parametrize(
    "body",
    [
        "border 2 in ecru",
        "binding 2 1/2 in indigo bias",
        "fabric rose width 42",
        "fabric rose shrinks 3",
        "set 4 across 5 down { alternate a, b }",
        "set on-point 4 across 5 down { alternate a, b }",
        "set point 4 across 5 down { alternate a, b }",
        "set straight 4 across, 5 down { alternate a, b }",
        "fabric rose fat quarters",
        "fabric rose 3 fat quarters",
        "fabric rose one-way",
        "fabric rose 3%",
        "fabric rose 10in x 12in",
        "fabric rose 42in",
        "fabric rose with width 42in",
        "roles dark indigo",
        "roles dark: indigo",
        "roles Sea dark = indigo",
        "sashing 1in in sand with posts in indigo",
        "border 2in in sand mitered",
        "border 4in of vane mitred",
        "fits queen drop 12in",
        "fits queen mattress 12in",
        "fabrik rose",
    ],
)
def test_the_mends_that_are_offered_for_quilts_mend(body: str) -> None:
    assert told(mended(in_quilt(body))) == []


@pytest.mark.parametrize(
    "body",
    [
        SET,
        "sashing 1in in sand",
        "border 2in in ecru",
        "fits queen mattress",
        "fabric rose",
        "roles a = b",
        "batting 4in over",
        "backing in sand",
        "binding 2in in sand",
    ],
)
def test_a_quilts_statement_in_a_block(body: str) -> None:
    (said,) = told(in_block(body))
    assert (said[1], said[2]) == ("statement-of-quilt", body.split()[0])
    assert "belongs in a quilt" in said[3] and 'quilt "Title" { ... }' in said[3]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("edition 1\nquilt Breakwater Sampler { }", "title-unquoted"),
        ("edition 1\nquilt { }", "title-missing"),
        ('edition 1\nquilt "" { }', "title-empty"),
        ('edition 1\nquilt "Q"', "statement-unfinished"),
        ('edition 1\nquilt "Q" {', "brace-open"),
        ('edition 1\nquilt "Q" { } }', "brace-extra"),
        ('edition 1\nquilt "Q" { set straight 4 across 5 down { alternate a, b }', "brace-open"),
        ('edition 1\nquilt "Q" { set straight 4 across 5 down { alternate a, b ', "brace-open"),
        ("edition 1\nborder 2in in sand", "statement-outside"),
        ('edition 1\nqiult "Q" { }', "statement-unknown"),
    ],
)
def test_a_file_with_a_quilt_as_a_whole(text: str, code: str) -> None:
    assert [each[1] for each in told(text)] == [code]


def test_a_file_may_hold_a_quilt_and_no_block() -> None:
    outcome = parse_text('edition 1\nquilt "Q" { }\nquilt "R" version 2 { }')
    assert outcome.diagnostics == () and outcome.value is not None
    assert [each.title.text for each in outcome.value.quilts] == ["Q", "R"]


def test_the_block_after_a_spoilt_quilt_is_read_and_the_quilt_after_a_spoilt_block() -> None:
    said = told("""edition 1
quilt "Q" {
  set straight 4 across
  fits queen
}
block "A" { seam A1 -- }
quilt "R" { border 2 of a
block "B" { finished 6 }
""")
    assert [(place[0], code) for place, code, *_ in said] == [
        (3, "statement-unfinished"),
        (4, "statement-unfinished"),
        (6, "statement-unfinished"),
        (7, "unit-missing"),
        (7, "brace-open"),
        (8, "unit-missing"),
    ]


def test_the_fill_of_a_spoilt_set_is_still_read() -> None:
    said = told(in_quilt("set sideways\n4 across {\n  row a b\n  row a,\n}\nfits queen"))
    assert [(place[0], code) for place, code, *_ in said] == [
        (3, "word-unexpected"),
        (5, "word-missing"),
        (6, "comma-last"),
        (8, "statement-unfinished"),
    ]


def test_twenty_thousand_braces_in_a_quilt_give_one_message() -> None:
    (said,) = told(in_quilt("set rows {" * 20_000 + "}" * 20_000))
    assert said[1] == "nesting-too-deep" and str(limits.NESTING) in said[3]


@pytest.mark.parametrize(
    "word",
    [
        "across",
        "down",
        "straight",
        "posts",
        "triangles",
        "corners",
        "mattress",
        "drop",
        "shrinks",
        "way",
        "one",
        "quarter",
        "fat",
        "scrap",
        "striped",
        "unjoined",
        "bias",
        "over",
        "rows",
        "width",
        "x",
        "butted",
        "mitred",
    ],
)
def test_words_of_the_quilt_that_are_not_reserved_can_be_names(word: str) -> None:
    body = f"""
        use "A" as {word} with {word} = {word}
        fabric {word} width 42in
        roles {word} = {word}
        set on point 2 across 2 down with triangles in {word} {{ alternate {word}, plain {word} }}
        sashing 1in in {word} posts in {word}
        border 2in in {word} mitred
        border 2in of {word}, {word} facing left corners {word}
        binding 2in in {word} bias
        backing in {word} 4in over
    """
    assert errors(parse_text(in_quilt(body))) == []
