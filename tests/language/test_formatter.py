"""The house style: what it does to a text, and that nothing else is lost or changed."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from piecewright.diagnostics.source import Source
from piecewright.language import tree
from piecewright.language.formatter import format_source, remarks_in
from piecewright.language.tokens import scan
from support.library import library_sources
from support.programs import WHOLE, WHOLE_QUILT, in_block, parse_text, programs


def formatted(text: str) -> str:
    """The text in the house style."""
    outcome = format_source(Source("block.block", text))
    assert outcome.value is not None, outcome.diagnostics
    return outcome.value


def body(text: str) -> str:
    """The lines of a block's body in the house style, as deep as the body stands."""
    return "\n".join(formatted(in_block(text)).splitlines()[3:-1])


@pytest.mark.parametrize(
    ("written", "wanted"),
    [
        ("seam A1--B2~~C3  around C1", "  seam A1 -- B2 ~~ C3 around C1"),
        ("point p = meet center -- top-right ,outline", "  point p = meet center--top-right, outline"),
        ("mirror in top -- bottom{seam A1--outline}", "  mirror in top--bottom { seam A1 -- outline }"),
        (
            "seam through (foot of A1 on B1 -- B2) parallel to top -- left",
            "  seam through (foot of A1 on B1--B2) parallel to top--left",
        ),
        ("grid 2x2 of 3in", "  grid 2 x 2 of 3in"),
        ("grid 1 : 2:1 x 2", "  grid 1:2:1 x 2"),
        ("finished 6inx9 in", "  finished 6in x 9in"),
        ("finished 1  1/2 in", "  finished 1 1/2in"),
        ("place a in A1 .. B2,B1..C2", "  place a in A1..B2, B1..C2"),
        ("piece a at ( 1,2 ) in x", "  piece a at (1, 2) in x"),
        ('use "A" as b with dark=pale', '  use "A" as b with dark = pale'),
    ],
)
def test_words_of_a_statement_stand_as_the_reference_shows_them(written: str, wanted: str) -> None:
    assert body(written) == wanted


def test_statements_stay_on_the_writers_lines_and_braces_show_how_deep_they_stand() -> None:
    text = (
        "turn 4 about center { seam center -- B1\n"
        "mirror in A1--B2 { seam A1 -- top }   seam top -- left }\nfinished 6in grid 2 x 2"
    )
    assert body(text).splitlines() == [
        "  turn 4 about center {",
        "    seam center -- B1",
        "    mirror in A1--B2 { seam A1 -- top }  seam top -- left",
        "  }",
        "  finished 6in  grid 2 x 2",
    ]


def test_a_statement_that_goes_on_is_indented_twice_more() -> None:
    assert body("row plain dark,\nplain pale").splitlines() == ["  row plain dark,", "      plain pale"]


def test_one_blank_line_is_kept_and_one_stands_between_blocks() -> None:
    text = 'edition 1\nblock "A"\n{\n\nfinished 6in\n\n\n\ngrid 2 x 2\n\n}\n# of B\nblock "B" { }'
    assert formatted(text) == (
        'edition 1\n\nblock "A" {\n  finished 6in\n\n  grid 2 x 2\n}\n\n# of B\nblock "B" { }\n'
    )


def test_remarks_in_one_column_stay_in_one_column() -> None:
    text = "finished 6in        # across and down\ngrid 2 x 2 of 3in   # so\ntrim none # not this"
    assert body(text).splitlines() == [
        "  finished 6in       # across and down",
        "  grid 2 x 2 of 3in  # so",
        "  trim none  # not this",
    ]


def test_remarks_keep_their_places() -> None:
    text = (
        '# first\n\n# of the edition\nedition 1 # one\nblock "A" { # opens\n  # before\nrow # what\n'
        "# in it\nplain dark\n# last\n} # closes\n\n\n# end"
    )
    assert formatted(text) == (
        '# first\n\n# of the edition\nedition 1  # one\n\nblock "A" {  # opens\n  # before\n  row  # what\n'
        "      # in it\n      plain dark\n  # last\n}  # closes\n\n# end\n"
    )


def test_the_edition_is_written_where_none_was() -> None:
    assert formatted('# A square.\nblock "A" { finished 6in }') == (
        'edition 1\n\n# A square.\nblock "A" { finished 6in }\n'
    )


def test_a_text_with_a_mistake_is_left_alone() -> None:
    outcome = format_source(Source("block.block", 'edition 1\nblock "A" { finished 6 }'))
    assert outcome.value is None and outcome.failed


@pytest.mark.parametrize("text", [WHOLE, WHOLE_QUILT], ids=["block", "quilt"])
def test_every_statement_is_told_from_the_next(text: str) -> None:
    once = formatted(text)
    assert formatted(once) == once
    assert parse_text(once).value == parse_text(text).value


EXAMPLES = sorted((Path(__file__).parents[2] / "examples").rglob("*.*"))
SHIPPED = (
    *library_sources(),
    *(
        Source(path.name, path.read_text(encoding="utf-8"))
        for path in EXAMPLES
        if path.suffix in (".block", ".quilt")
    ),
)


@pytest.mark.parametrize("source", SHIPPED, ids=lambda source: source.name)
def test_the_library_and_the_examples_are_in_the_house_style(source: Source) -> None:
    assert formatted(source.text) == source.text


def check_laws(text: str) -> None:
    """A second time changes nothing; the tree and the remarks are those that were written."""
    before = parse_text(text)
    assume(before.value is not None and not before.failed)
    once = formatted(text)
    after = parse_text(once).value
    assert formatted(once) == once
    assert isinstance(after, tree.File) and isinstance(before.value, tree.File)
    assert replace(after, edition=before.value.edition) == before.value
    assert remarks_in(Source("", once)) == remarks_in(Source("", text))
    assert once.count("#") == text.count("#")


@settings(max_examples=120)
@given(programs())
def test_any_program_keeps_its_tree_and_its_remarks(text: str) -> None:
    check_laws(text)


PARTED = st.sampled_from((" ", "   ", "\n", "\n\n\n", " # a remark\n", "\n # one\n\n#two  \n"))


@settings(max_examples=60, deadline=None)
@given(st.sampled_from((WHOLE, WHOLE_QUILT)), st.data())
def test_any_blanks_and_remarks_between_words_leave_the_tree_as_it_is(text: str, data: st.DataObject) -> None:
    words = [token.text for token in scan(Source("", text)).tokens]
    parted = data.draw(st.lists(PARTED, min_size=len(words), max_size=len(words)))
    check_laws("".join(word + part for word, part in zip(words, parted, strict=True)))
