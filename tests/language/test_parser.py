"""Texts to trees: each statement and phrase of edition 1 as the tree says it."""

from __future__ import annotations

from fractions import Fraction
from typing import Any, get_args

import pytest
from piecewright.diagnostics.source import Source, Span
from piecewright.language import tree
from piecewright.language.parser import parse
from support.programs import WHOLE, errors, in_block, in_quilt, parse_text

AT = Span("", 0, 0)  # spans take no part in comparison


def only(body: str) -> Any:
    """The one statement of a body about which nothing is said."""
    outcome = parse_text(in_block(body))
    assert outcome.diagnostics == () and outcome.value is not None
    (statement,) = outcome.value.blocks[0].body
    return statement


def phrase(text: str) -> Any:
    """The tree of a point phrase."""
    return only(f"point it = {text}").phrase


def name(text: str) -> tree.Name:
    """A name of the writer's."""
    return tree.Name(text=text, span=AT)


def named(text: str) -> tree.NamedPoint:
    """A point by its name."""
    return tree.NamedPoint(name=text, span=AT)


def grid(column: str, row: int) -> tree.GridPoint:
    """A grid point."""
    return tree.GridPoint(column=column, row=row, span=AT)


def inches(value: str) -> tree.Length:
    """A length in inches."""
    return tree.Length(inches=Fraction(value), span=AT)


def degrees(value: str) -> tree.Angle:
    """An angle."""
    return tree.Angle(degrees=Fraction(value), span=AT)


def through(first: tree.PointPhrase, second: tree.PointPhrase) -> tree.LineThrough:
    """The line through two points."""
    return tree.LineThrough(first=first, second=second, span=AT)


A1, B1, B2 = grid("A", 1), grid("B", 1), grid("B", 2)
CENTER = named("center")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("B2", B2),
        ("AA12", grid("AA", 12)),
        ("top-left", named("top-left")),
        ("(1.5, -1/2)", tree.GridSteps(across=Fraction(3, 2), down=Fraction(-1, 2), span=AT)),
        ("1/3 from A1 to B2", tree.ShareAlong(share=Fraction(1, 3), origin=A1, toward=B2, span=AT)),
        ("1 1/2in from A1 to B2", tree.LengthAlong(length=inches("3/2"), origin=A1, toward=B2, span=AT)),
        (
            "2in from center at -22 1/2deg",
            tree.LengthAtAngle(length=inches("2"), origin=CENTER, angle=degrees("-45/2"), span=AT),
        ),
        ("between A1, B1, B2", tree.Between(points=(A1, B1, B2), span=AT)),
        (
            "meet A1--B2, center at 45deg",
            tree.Meet(
                first=through(A1, B2),
                second=tree.LineAtAngle(point=CENTER, angle=degrees("45"), span=AT),
                nearest=None,
                span=AT,
            ),
        ),
        (
            "meet center parallel to A1--B2, outline",
            tree.MeetOutline(line=tree.LineParallel(point=CENTER, first=A1, second=B2, span=AT), span=AT),
        ),
        ("foot of center on A1--B2", tree.Foot(point=CENTER, line=through(A1, B2), span=AT)),
        (
            "gate turned 45deg about center",
            tree.TurnedAbout(point=named("gate"), angle=degrees("45"), about=CENTER, span=AT),
        ),
        ("gate mirrored in A1--B2", tree.MirroredIn(point=named("gate"), line=through(A1, B2), span=AT)),
        ("next gate", tree.NextCopy(point=named("gate"), span=AT)),
        (
            "previous (1/3 from A1 to B2)",
            tree.PreviousCopy(
                point=tree.ShareAlong(share=Fraction(1, 3), origin=A1, toward=B2, span=AT), span=AT
            ),
        ),
        (
            "next gate turned 45deg about center",
            tree.TurnedAbout(
                point=tree.NextCopy(point=named("gate"), span=AT), angle=degrees("45"), about=CENTER, span=AT
            ),
        ),
        ("((A1))", A1),
    ],
)
def test_points(text: str, expected: tree.PointPhrase) -> None:
    assert phrase(text) == expected


def test_blanks_are_not_needed_around_signs() -> None:
    assert only("seam center--crook") == only("seam center -- crook")
    assert only("grid 2x3 of 3inx2in") == only("grid 2 x 3 of 3in x 2in")
    assert only("grid 1:2:1x2") == only("grid 1 : 2 : 1 x 2")
    assert only("place a in A1..B2,C3..D4") == only("place a in A1 .. B2 , C3 .. D4")


def test_statements_may_share_a_line_or_spread_over_several() -> None:
    one = parse_text('edition 1 block "Goose" { finished 4in x 2in  faces top }')
    other = parse_text('edition 1\nblock "Goose"\n{\nfinished 4in # wide\nx\n2in\nfaces\ntop\n}')
    assert one.value == other.value and not one.diagnostics and not other.diagnostics


def test_paths_mix_hops() -> None:
    assert only("seam A1 -- B1 ~~ B2 around center ~~ A1 through gate -- outline").path == tree.Path(
        start=A1,
        hops=(
            tree.StraightTo(point=B1, span=AT),
            tree.ArcAround(point=B2, center=CENTER, span=AT),
            tree.ArcThrough(point=A1, via=named("gate"), span=AT),
            tree.ToOutline(span=AT),
        ),
        span=AT,
    )


@pytest.mark.parametrize(
    ("body", "places"),
    [
        ("piece a at top-left, top-right in pale", (named("top-left"), named("top-right"))),
        ("piece a at between A1, B1, B2 in pale", (tree.Between(points=(A1, B1, B2), span=AT),)),
        ("piece a at A1, (between B1, B2) in pale", (A1, tree.Between(points=(B1, B2), span=AT))),
        (
            "piece a at 1/3 from A1 to B2, center in pale",
            (tree.ShareAlong(share=Fraction(1, 3), origin=A1, toward=B2, span=AT), CENTER),
        ),
        (
            "piece a at gate mirrored in A1--B2 in pale",
            (tree.MirroredIn(point=named("gate"), line=through(A1, B2), span=AT),),
        ),
    ],
)
def test_a_list_of_places_keeps_the_commas_of_a_phrase_apart(body: str, places: tuple[Any, ...]) -> None:
    assert only(body).places == places


def test_words_that_are_free_can_be_names_where_the_language_uses_them_too() -> None:
    for word in ("circle", "regular", "side", "radius", "version", "x", "none", "dots", "free", "parallel"):
        outcome = parse_text(in_block(f"point {word} = center\nseam {word} -- A1 -- {word}"))
        assert outcome.diagnostics == (), word
    assert only("outline regular -- A1 -- B2").path.start == named("regular")
    assert only("seam circle around circle radius 1in").circle.center == named("circle")


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        ("trim matched", tree.Trim(style="matched", limit=None, dots=None, span=AT)),
        ("trim square 1/8in", tree.Trim(style="square", limit=inches("1/8"), dots=None, span=AT)),
        ("trim none dots none", tree.Trim(style="none", limit=None, dots=inches("0"), span=AT)),
        ("trim matched dots 1/16in", tree.Trim(style="matched", limit=None, dots=inches("1/16"), span=AT)),
        (
            "grid 4 x 1:2:1",
            tree.Grid(
                across=tree.Divisions(parts=(Fraction(1),) * 4, span=AT),
                down=tree.Divisions(parts=(Fraction(1), Fraction(2), Fraction(1)), span=AT),
                cell_width=None,
                cell_height=None,
                span=AT,
            ),
        ),
        (
            "outline regular 6 side 3in turned 30deg",
            tree.OutlineRegular(
                sides=tree.Count(value=6, span=AT), side=inches("3"), turned=degrees("30"), span=AT
            ),
        ),
        (
            "grain along A1--B2 on sail, tip",
            tree.Grain(line=through(A1, B2), pieces=(name("sail"), name("tip")), span=AT),
        ),
        ("grain free on sail", tree.Grain(line=None, pieces=(name("sail"),), span=AT)),
        (
            "seam circle around center through gate",
            tree.SeamCircle(
                circle=tree.Circle(center=CENTER, radius=None, through=named("gate"), span=AT), span=AT
            ),
        ),
        (
            "row 3 a turned 90deg mirrored, plain pale",
            tree.Row(
                items=(
                    tree.RowItem(
                        count=tree.Count(value=3, span=AT),
                        cell=tree.UnitCell(
                            unit=name("a"),
                            poses=(tree.Turned(angle=degrees("90"), span=AT), tree.Mirrored(span=AT)),
                            span=AT,
                        ),
                        span=AT,
                    ),
                    tree.RowItem(count=None, cell=tree.PlainCell(role=name("pale"), span=AT), span=AT),
                ),
                span=AT,
            ),
        ),
        (
            "rounds 2 of 1 in about A1..B2 in dark, pale butted",
            tree.Rounds(
                count=tree.Count(value=2, span=AT),
                width=inches("1"),
                region=tree.Region(first=A1, second=B2, span=AT),
                roles=(name("dark"), name("pale")),
                corners="butted",
                span=AT,
            ),
        ),
        (
            'also "T", "U"',
            tree.Also(titles=(tree.Text(text="T", span=AT), tree.Text(text="U", span=AT)), span=AT),
        ),
    ],
)
def test_statements(body: str, expected: tree.Statement) -> None:
    assert only(body) == expected


def test_use_with_a_swap_of_roles() -> None:
    use = only('use "Two-Triangle Square" version 3 as flip with dark = pale, pale = dark')
    assert use.title.text == "Two-Triangle Square"
    assert use.version.value == 3 and use.alias == name("flip")
    renames = [(each.theirs.text, each.ours.text) for each in use.renames]
    assert renames == [("dark", "pale"), ("pale", "dark")]


def test_turns_and_mirrors_nest() -> None:
    turn = only("turn 6 of 15deg about 1/2 from A1 to B2 { mirror in A1--B2 { seam A1 -- B1 } }")
    assert turn.count.value == 6 and turn.step == degrees("15")
    assert turn.about == tree.ShareAlong(share=Fraction(1, 2), origin=A1, toward=B2, span=AT)
    (mirror,) = turn.body
    assert mirror.line == through(A1, B2) and isinstance(mirror.body[0], tree.Seam)


def test_a_file_with_every_statement_is_clean() -> None:
    outcome = parse_text(WHOLE)
    assert outcome.diagnostics == () and outcome.value is not None
    (block,) = outcome.value.blocks
    kinds = {type(each) for each in block.body}
    assert kinds | {tree.MirrorIn, tree.PieceDef, tree.Seam} == set(get_args(tree.Statement))


def test_spans_are_the_writers_own_words() -> None:
    text = in_block("  seam center -- gate ~~ B2 around (1/2 from A1 to C1)  # a remark\n  faces top")
    source = Source("block.block", text)
    outcome = parse(source)
    assert outcome.value is not None
    seam, faces = outcome.value.blocks[0].body
    assert isinstance(seam, tree.Seam) and isinstance(seam.path.hops[1], tree.ArcAround)
    assert source.words(seam.span) == "seam center -- gate ~~ B2 around (1/2 from A1 to C1)"
    assert source.words(seam.path.hops[0].span) == "-- gate"
    assert source.words(seam.path.hops[1].center.span) == "1/2 from A1 to C1"
    assert source.words(faces.span) == "faces top"
    assert source.words(outcome.value.blocks[0].title.span) == '"Trial"'


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        (r'"Say \"to\""', 'Say "to"'),
        (r'"Back \\ slash"', "Back \\ slash"),
        ('"a/b/../c.pdf"', "a/b/../c.pdf"),
        ('"<b>Bold</b> & more"', "<b>Bold</b> & more"),
        ('"Windrad 🧵🪡"', "Windrad 🧵🪡"),
        ('"שמיכת טלאים"', "שמיכת טלאים"),
        ('"# not a remark { }"', "# not a remark { }"),
    ],
)
def test_titles_may_hold_anything_that_prints(written: str, meant: str) -> None:
    outcome = parse_text(f"edition 1\nblock {written} {{ }}")
    assert outcome.diagnostics == () and outcome.value is not None
    assert outcome.value.blocks[0].title.text == meant


def test_a_file_may_hold_many_blocks_and_long_lists() -> None:
    many = "edition 1\n" + "\n".join(f'block "B{number}" {{ finished 6in }}' for number in range(500))
    outcome = parse_text(many)
    assert outcome.value is not None and len(outcome.value.blocks) == 500
    long = parse_text(in_block("\n".join(f"seam A1 -- (1, {number})" for number in range(900))))
    assert long.value is not None and len(long.value.blocks[0].body) == 900 and errors(long) == []


def test_the_copy_two_on_needs_no_brackets() -> None:
    assert only("seam next next gate -- A1").path.start == tree.NextCopy(
        point=named("gate"), copies=2, span=AT
    )
    assert only("seam next (next gate) -- A1") == only("seam next next gate -- A1")
    assert errors(parse_text(in_block("seam " + "next " * 20_000 + "gate -- A1"))) != []


def test_foot_and_border_are_names_where_a_name_is_due() -> None:
    text = "point foot = foot of center on A1--B1\nfamily border, foot\nseam foot -- outline"
    assert parse_text(in_block(f"{text}\npiece border at foot in border")).diagnostics == ()
    quilt = "fabric border\nborder 2in in border\nborder 3in of border, foot\nborder 2in in foot"
    assert parse_text(in_quilt(quilt)).diagnostics == ()
