"""How quilts go together: rows, sashing, borders and triangles in one tree, proved by sewing it again."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, assume, given, settings
from piecewright.cutting.needs import Need
from piecewright.geometry.edge import Edge, Point
from piecewright.quilt.assembly_model import QuiltAssembly, Row
from piecewright.quilt.model import Quilt
from piecewright.quilt.printed import printed_templates
from piecewright.quilt.top import top_of
from piecewright.sewing.proof.resew import prove
from piecewright.words.work.proofs import proof_text
from piecewright.words.work.quilts import kind_words, part_words, stage_words
from support.quilts import assemble_quilt, quilts, try_quilt
from support.random_quilts import TWELVE, compiled_quilt


def quilt_of(body: str) -> Quilt:
    made = try_quilt(body).value
    assert made is not None, [each.message for each in try_quilt(body).diagnostics]
    return made.quilts[0]


def sewn(body: str) -> QuiltAssembly:
    made = try_quilt(body).value
    assert made is not None, [each.message for each in try_quilt(body).diagnostics]
    return made.assemblies[0]


def told(made: QuiltAssembly) -> list[tuple[str, list[tuple[str, int, str]]]]:
    """Each stage's rows: their parts' names, how many, and which way they lie."""
    names = {kind.label: kind_words(kind) for kind in made.kinds}
    for stage in made.stages:
        names |= {row.makes: f"({len(row.parts)})" for row in stage.rows}
    return [
        (
            stage_words(stage),
            [(" ".join(names[part] for part in row.parts), row.batch, row.way) for row in stage.rows],
        )
        for stage in made.stages
    ]


def row_of(made: QuiltAssembly, title: str) -> Row:
    """The last row of a stage."""
    return next(stage for stage in made.stages if stage_words(stage) == title).rows[-1]


def check_counts(made: QuiltAssembly) -> None:
    """Every piece of the top is in one row once, and every unit is made, then used once."""
    used: Counter[str] = Counter()
    made_of: Counter[str] = Counter()
    for row in (row for stage in made.stages for row in stage.rows):
        made_of[row.makes] += row.batch
        for part in row.parts:
            used[part] += row.batch
            assert part[0] != "u" or made_of[part] >= used[part], f"{part} is used before it is made"
    if made.assembly.steps:
        used[made.assembly.units[-1].id] += 1
    else:
        used[made.kinds[0].label] += 1
    assert used == made_of + Counter({kind.label: kind.count for kind in made.kinds})


def test_blocks_are_sewn_into_rows_and_rows_together() -> None:
    made = sewn("set straight 3 across 4 down of 4in { alternate pair, sail }")
    assert told(made) == [
        ("Rows", [("Pair Sail Pair", 2, "across"), ("Sail Pair Sail", 2, "across")]),
        ("Centre", [("(3) (3) (3) (3)", 1, "down")]),
    ]
    assert proof_text(made.proof) == "30 pieces, 29 seams, closes exactly"


def test_sashing_and_posts_make_rows_of_their_own() -> None:
    made = sewn(
        "set straight 2 across 2 down of 4in { alternate pair, pair }\n"
        "sashing 1in in sand posts in dark around"
    )
    assert told(made) == [
        (
            "Rows",
            [
                ("post sashing strip post sashing strip post", 3, "across"),
                ("sashing strip Pair sashing strip Pair sashing strip", 2, "across"),
            ],
        ),
        ("Centre", [("(5) (5) (5) (5) (5)", 1, "down")]),
    ]


def test_two_rows_of_unlike_length_are_rows_both() -> None:
    """However many blocks each has, no row is taken for the centre."""
    made = sewn("set rows { row 6 pair  row 4 sail, 2 pair }")
    assert [(stage_words(stage), len(stage.rows)) for stage in made.stages] == [("Rows", 2), ("Centre", 1)]
    uneven = sewn("set rows { row 3 pair  row 6 goose turned 90deg }")
    assert [(stage_words(stage), len(stage.rows)) for stage in uneven.stages] == [("Rows", 2), ("Centre", 1)]


def test_corner_triangles_are_sewn_on_two_and_two() -> None:
    """The long sides of those that face each other run alike: they are one row with what is between."""
    made = sewn("set on point 1 across 2 down with triangles in sand { alternate pair }")
    corners = [row for row in told(made)[-1][1] if "corner" in row[0]]
    assert [text.split(" (")[0] for text, _, _ in corners] == ["corner triangle"] * 2
    assert [row[1:] for row in corners] == [(1, "slantwise")] * 2


def test_long_sashing_strips_lie_between_rows() -> None:
    made = sewn("set straight 2 across 3 down of 4in { alternate pair, pair }\nsashing 1in in sand")
    assert told(made) == [
        ("Rows", [("Pair sashing strip Pair", 3, "across")]),
        ("Centre", [("(3) sashing strip (3) sashing strip (3)", 1, "down")]),
    ]


def test_butted_borders_go_on_sides_first_and_after_the_centre() -> None:
    made = sewn(
        "set straight 2 across 2 down of 4in { alternate pair, sail }\n"
        "border 1in in sand\nborder 2in in indigo"
    )
    strips = "border strip (2) border strip"
    assert told(made)[1:] == [("Centre", [("(2) (2)", 1, "down")])] + [
        (
            f"Border {number}",
            [(strips, 1, "across"), (strips.replace("(2)", "(3)"), 1, "down")]
            if number == 1
            else [(strips.replace("(2)", "(3)"), 1, "across"), (strips.replace("(2)", "(3)"), 1, "down")],
        )
        for number in (1, 2)
    ]
    assert row_of(made, "Border 2").unfinished.width == 14.5
    assert made.assembly.straight_seams_only


def test_pieced_borders_are_sewn_before_they_are_attached() -> None:
    """Though their seams run on into the rows' seams."""
    made = sewn(
        "set straight 2 across 2 down of 4in { alternate pair, pair }\nborder 2in of goose corners plain dark"
    )
    geese = "Goose Goose"
    assert told(made)[-1] == (
        "Border 1",
        [
            (f"plain square {geese} plain square", 2, "across"),
            (geese, 2, "down"),
            ("(2) (2) (2)", 1, "across"),
            ("(4) (3) (4)", 1, "down"),
        ],
    )


def test_only_mitred_borders_want_set_in_seams() -> None:
    """Common practice, no published source: one at each corner."""
    body = "set straight 2 across 2 down of 4in { alternate pair, sail }\nborder 2in in sand"
    assert sewn(body).assembly.set_in_seams == 0
    mitred = sewn(f"{body} mitred")
    assert mitred.assembly.set_in_seams == 4 and mitred.assembly.partial_seams == 0
    assert {(float(at.x), float(at.y)) for step in mitred.assembly.steps for at in step.turns} == {
        (2, 2),
        (10, 2),
        (2, 10),
        (10, 10),
    }
    strips = " border strip" * 4
    assert told(mitred)[-1] == ("Border 1", [(f"(2){strips}", 1, "mitred")]), "all on, then the mitres"
    assert any(step.stops for step in mitred.assembly.steps if not step.set_in), "the first stops at its dots"


def test_strips_of_two_mitred_borders_are_joined_before_they_go_on_as_one() -> None:
    """Common practice, no published source: one mitre runs through both."""
    made = sewn(
        "set straight 2 across 3 down of 4in { alternate pair }\n"
        "border 1in in sand mitred\nborder 2in in indigo mitred"
    )
    assert told(made)[-1] == (
        "Border 2",
        [
            ("border strip border strip", 2, "across"),
            ("border strip border strip", 2, "down"),
            ("(3) (2) (2) (2) (2)", 1, "mitred"),
        ],
    )
    assert made.assembly.set_in_seams == 4


def test_mitres_that_do_not_close_are_caught() -> None:
    """Sewn from dot to dot, each mitre must lie edge to edge when all four strips are on."""
    body = "set straight 2 across 2 down of 4in { alternate pair }\nborder 2in in sand mitred"
    made, quilt = sewn(body), quilt_of(body)
    top = top_of(quilt)
    (row,) = made.stages[-1].rows
    templates = printed_templates(
        top, quilt.needs, quilt.blocks, [block.assembly.units[-1].unfinished for block in made.blocks]
    )
    assert prove(top.draft, templates, made.assembly, [row.steps]).value is not None
    assert prove(top.draft, templates, made.assembly, [row.steps[1:-1]]).failed, "the last is not open"


def quilt_in_rows(title: str) -> list[tuple[str, int, tuple[float, ...]]]:
    """What the rows of one of the twelve quilts are, and how their units lie turned."""
    made = assemble_quilt(compiled_quilt(next(text for text in TWELVE if f'"{title}"' in text))).value
    assert made is not None
    names = {kind.label: kind_words(kind) for kind in made.kinds}
    return [
        (" ".join(names.get(part, "row") for part in row.parts), row.batch, row.turned)
        for stage in made.stages[:2]
        for row in stage.rows
    ]


def test_rows_that_are_each_other_turned_are_one_batch_told_to_lie_upside_down() -> None:
    """A star that a half turn carries onto itself lies in a turned row as before."""
    rows = quilt_in_rows("Slipway")
    star = "Evening Star plain square Evening Star plain square"
    assert rows == [(star, 5, (0, 0, 0, 0)), ("row row row row row", 1, (0, 180, 0, 180, 0))]
    made = assemble_quilt(compiled_quilt(TWELVE[0])).value
    assert made is not None
    assert part_words(made, made.stages[1].rows[0]) == ("R1", "R1 upside down", "R1", "R1 upside down", "R1")


def test_rows_are_not_turned_where_their_blocks_would_show_it() -> None:
    """Rails of three cloths lie the other way round when they are turned."""
    assert [batch for _, batch, _ in quilt_in_rows("Gangway")] == [4, 4, 1]


def test_on_point_rows_are_slanted_with_side_triangles_at_their_ends_and_corners_last() -> None:
    made = sewn("set on point 2 across 3 down of 4in with triangles in sand { alternate pair, plain dark }")
    rows, centre = told(made)
    assert rows[0] == "Slanted rows" and all(way == "slantwise" for _, _, way in rows[1])
    assert all("corner" not in parts for parts, _, _ in rows[1])
    ends = [parts for parts, _, _ in rows[1] if parts.startswith("side") and parts.endswith("side triangle")]
    assert len(ends) >= 2
    assert [parts.count("corner triangle") for parts, _, _ in centre[1]] == [0, 2, 2]
    assert made.assembly.straight_seams_only


def test_blocks_that_lap_round_a_large_one_need_one_partly_open_seam() -> None:
    body = (
        "set straight 3 across 3 down of 4in { alternate plain sand\n"
        "place plain dark in A1..C2  place plain dark in C1..D3\n"
        "place plain dark in B3..D4  place plain dark in A2..B4 }"
    )
    made = sewn(body)
    assert (made.assembly.set_in_seams, made.assembly.partial_seams) == (1, 1)


def test_every_unfinished_size_adds_up_to_the_quilt() -> None:
    for text in TWELVE:
        quilt = compiled_quilt(text)
        made = assemble_quilt(quilt).value
        assert made is not None
        check_counts(made)
        last = made.assembly.units[-1]
        assert last.unfinished.width == pytest.approx(float(quilt.width) + 0.5, abs=1e-6)
        assert last.unfinished.height == pytest.approx(float(quilt.height) + 0.5, abs=1e-6)
        for stage in made.stages:
            if all(row.way != "mitred" for row in stage.rows):  # its strips reach beyond what they frame
                for row in stage.rows:
                    check_sum(made, row)


def check_sum(made: QuiltAssembly, row: Row) -> None:
    """A row is as long as its parts together, less two allowances for every seam; and they are as wide."""
    if row.way not in ("across", "down"):
        return
    sizes = {kind.label: kind.unfinished for kind in made.kinds}
    sizes |= {each.makes: each.unfinished for stage in made.stages for each in stage.rows}
    size = row.unfinished
    length, width = (size.width, size.height) if row.way == "across" else (size.height, size.width)
    total = -(len(row.parts) - 1) / 2
    for part in row.parts:
        sides = [sizes[part].width, sizes[part].height]
        assert width == pytest.approx(sides[0]) or width == pytest.approx(sides[1])
        total += sum(sides) - width
    assert length == pytest.approx(total, abs=1e-6)


@given(quilts())
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
def test_random_quilts_sew_together(body: str) -> None:
    made = try_quilt(body).value
    assume(made is not None and made.quilts)
    assert made is not None
    (assembly,) = made.assemblies
    check_counts(assembly)
    assert assembly.proof.closes and assembly.proof.furthest <= 0.001
    assert assembly.proof.pieces == len(made.quilts[0].pieces)
    assert assembly.proof.seams == assembly.proof.pieces - 1
    if "mitred" not in body:
        assert assembly.assembly.straight_seams_only


# ---- pressing --------------------------------------------------------------------------------------------


def test_rows_are_pressed_by_turns_so_that_seams_that_meet_lie_opposite() -> None:
    made = sewn("set straight 4 across 5 down of 4in { alternate pair, sail }")
    assert len(made.pressing.meetings) == made.pressing.opposite == 3 * 4


def test_seams_are_pressed_toward_sashing_and_borders() -> None:
    made = sewn(
        "set straight 3 across 3 down of 4in { alternate pair, sail }\n"
        "sashing 1in in sand posts in dark\nborder 2in in sand"
    )
    for step, pressing in zip(made.assembly.steps, made.pressing.seams, strict=True):
        kinds = [made.kind_of(int(part)).what if part.isdigit() else "" for part in step.parts]
        for way, kind in zip(("first", "second"), kinds, strict=True):
            if kind in ("sashing-strip", "border-strip"):
                assert set(pressing.ways) == {way}
    assert made.pressing.opposite == len(made.pressing.meetings) > 0


# ---- what is printed wrong is caught ----------------------------------------------------------------------

PRINTED = (
    "set straight 2 across 2 down of 4in { alternate pair, sail }\n"
    "sashing 1in in sand posts in dark\nborder 2in in indigo\nborder 1in in pale mitred"
)


def breakages(quilt: Quilt) -> Iterator[tuple[str, Quilt]]:
    """The quilt again and again, each time with one number of one piece of cloth changed."""
    for at, need in enumerate(quilt.needs):
        if need.block is None:
            for what, other in broken(need):
                yield (
                    f"{need.what} {at}: {what}",
                    replace(quilt, needs=(*quilt.needs[:at], other, *quilt.needs[at + 1 :])),
                )


def broken(need: Need) -> Iterator[tuple[str, Need]]:
    for at, edge in enumerate(need.outline):
        for along in ("x", "y"):
            moved = edge.start._replace(**{along: float(getattr(edge.start, along)) + 0.125})
            yield f"corner {at} {along}", replace(need, outline=with_corner(need.outline, at, moved))
    for at in range(len(need.allowances)):
        wide = tuple(each * 2 if at == number else each for number, each in enumerate(need.allowances))
        yield f"allowance {at}", replace(need, allowances=wide)
    yield "count", replace(need, count=need.count + 1)
    yield "fabric", replace(need, fabric="other")


def with_corner(outline: tuple[Edge, ...], at: int, corner: Point) -> tuple[Edge, ...]:
    edges = list(outline)
    edges[at] = replace(edges[at], start=corner)
    edges[at - 1] = replace(edges[at - 1], end=corner)
    return tuple(edges)


def test_each_broken_strip_post_and_border_is_caught() -> None:
    quilt = quilt_of(PRINTED)
    assert assemble_quilt(quilt).value is not None
    tried = 0
    for what, wrong in breakages(quilt):
        tried += 1
        outcome = assemble_quilt(wrong)
        assert outcome.value is None, f"{what} was not noticed"
        assert [each.code for each in outcome.diagnostics] == ["block-does-not-sew"]
    assert tried > 60


def test_a_broken_block_is_caught() -> None:
    quilt = quilt_of(PRINTED)
    for at, block in enumerate(quilt.blocks):
        first = block.templates[0]
        count = replace(first.counts[0], cut=first.counts[0].cut + 1)
        short = replace(first, counts=(count, *first.counts[1:]))
        other = replace(block, templates=(short, *block.templates[1:]))
        wrong = replace(quilt, blocks=(*quilt.blocks[:at], other, *quilt.blocks[at + 1 :]))
        assert assemble_quilt(wrong).failed


# ---- bad input --------------------------------------------------------------------------------------------


def test_a_quilt_of_one_block_has_no_steps() -> None:
    made = sewn("set straight 1 across 1 down of 4in { alternate sail }")
    assert (made.assembly.steps, made.stages) == ((), ())
    assert proof_text(made.proof) == "3 pieces, 2 seams, closes exactly"


def test_the_same_quilt_goes_together_the_same_way() -> None:
    body = "set on point 3 across 3 down of 4in with triangles in sand { alternate pair, sail }"
    assert told(sewn(body)) == told(sewn(body))
