"""Every block cut and sewn again from its printed numbers comes out as drafted, and no wrong number gets
by."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, assume, given, settings
from piecewright.cutting.model import Mark
from piecewright.cutting.templates.making import make_templates
from piecewright.drafting.model import Draft
from piecewright.geometry.edge import Point
from piecewright.sewing.order.assembly import assemble
from piecewright.sewing.proof.resew import prove
from piecewright.words.work.proofs import proof_text
from support.check import check_block, check_noted, draft_block, draft_text
from support.library import library_drafts
from support.random_blocks import random_blocks, random_rows
from support.texts import SKERRY_STAR, TIDEWATER_VANE
from support.tilings import draft_lines, lines_of

LIBRARY = dict(library_drafts())


def proved(draft: Draft):
    outcome = prove(draft, make_templates(draft).value, assemble(draft))
    assert outcome.value is not None, outcome.diagnostics[0].message
    assert outcome.value.furthest <= 0.001
    return outcome.value


@pytest.mark.parametrize("title", LIBRARY)
def test_every_block_of_the_library_sews_to_its_draft(title):
    draft = LIBRARY[title]
    proof = proved(draft)
    rings = sum(step.batch for step in assemble(draft).steps if step.seams == 2)
    assert (proof.pieces, proof.seams) == (len(draft.pieces), len(draft.pieces) - 1 + rings)


def test_the_sentence_for_the_booklet():
    assert proof_text(proved(LIBRARY["Dutchman's Puzzle"])) == "24 pieces, 23 seams, closes exactly"
    assert proof_text(proved(check_block("finished 6in"))) == "1 piece, 0 seams, closes exactly"


@given(random_blocks())
@settings(max_examples=60, deadline=None)
def test_random_blocks_sew_to_their_draft(block):
    drafted = draft_text(block.text()).value
    assume(drafted is not None and not make_templates(drafted[0]).diagnostics)
    proved(drafted[0])


@given(random_rows())
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
def test_random_rows_of_units_sew_to_their_draft(rows):
    from support.random_blocks import UNITS

    drafted = draft_text(rows.text(), units=UNITS).value
    assume(drafted is not None)
    proved(drafted[-1])


def test_windows_circles_and_outlines_sew():
    proved(draft_block("finished 6in\nseam circle around center radius 2in").value[0])
    proved(
        check_noted("piece-hole", "finished 6in\ngrid 3 x 3\nseam B2 -- C2 -- C3 -- B3 -- B2\nseam B2 -- C3")
    )
    proved(check_block("outline regular 6 side 3in\nseam corner1 -- corner4\nseam center -- corner2"))
    proved(check_block("finished 6in\ngrid 2 x 2\nallowance 1/2in on A1 -- C1\nseam A2 -- C2\nseam B2 -- B3"))


# ---- breaking printed numbers one at a time ----------------------------------------------------------------

NOT_SEWN_BY = {
    ("Template", "dot_width"),
    ("Template", "version"),
    ("Template", "block_width"),
    ("Template", "block_height"),
    ("Template", "blocks"),
    ("Template", "pieces"),
    ("Template", "grain"),
    ("Template", "reversible"),
    ("Mark", "allowance"),
    ("Mark", "at"),
}
"""What a template says that sewing does not go by: how wide a dot is punched, which version it is of, how
large its block is, how it lies on the cloth's grain, how long a mark is drawn, and how far along its seam a
mark stands."""


def breakages(printed: object, where: str = "", more: float = 0.01) -> Iterator[tuple[str, object]]:
    """The same printed thing again and again, each time with one number or yes-or-no changed."""
    if isinstance(printed, Point):
        for name in ("x", "y"):
            yield f"{where}.{name}", printed._replace(**{name: float(getattr(printed, name)) + 0.01})
    elif isinstance(printed, tuple):
        for at, each in enumerate(printed):
            for what, other in breakages(each, f"{where}[{at}]"):
                yield what, (*printed[:at], other, *printed[at + 1 :])
    elif is_dataclass(printed):
        for field in fields(printed):
            if (type(printed).__name__, field.name) not in NOT_SEWN_BY:
                more = 1.0 if field.name == "turned" else 0.01  # degrees; inches
                for what, other in breakages(getattr(printed, field.name), f"{where}.{field.name}", more):
                    yield what, replace(printed, **{field.name: other})
    elif isinstance(printed, bool):
        yield where, not printed
    elif isinstance(printed, int):
        yield where, printed + 1
    elif isinstance(printed, float | Fraction):
        yield where, float(printed) + more


BROKEN = {
    "two geese": check_block(
        "finished 4in x 2in\nseam bottom-left -- top -- bottom-right\n"
        "piece goose at bottom in dark\npiece sky at top-left, top-right in pale"
    ),
    "vane": draft_text(TIDEWATER_VANE).value[0],
    "skerry star": draft_text(SKERRY_STAR).value[0],
    "drunkard's path": LIBRARY["Drunkard's Path Patch"],
    "square in a square": LIBRARY["Square in a Square"],
    "pinwheel tiling": draft_lines(3, 3, lines_of(((1, 1, 2), (3, 4, 2), (3, 5, 5)))),
    "circle": draft_block("finished 6in\nseam circle around center radius 2in").value[0],
    "reversed": check_block(
        "finished 6in x 3in\npoint a = 1/3 from top-left to top-right\n"
        "mirror in top--bottom { seam a -- bottom-left }"
    ),
    "wider to an inner corner": draft_block(
        "finished 6in\ngrid 6 x 6\nseam (4.5, 6) -- (3, 2.5) -- (3, 0)\nallowance 1/4in\n"
        "allowance 1/2in on (3, 2.5) -- (3, 0)"
    ).value[0],
    "changing allowance": check_block(
        "finished 6in\ngrid 2 x 2\nseam A2 -- C2\nseam B1 -- B3\nallowance 1/2in on A2 -- B2"
    ),
    "arc past its trim": check_block(
        "finished 8in\ngrid 4 x 4\nseam (2.5, 0) -- (2.5, 4)\nseam (2.5, 0) ~~ (0, 2) through (1, 1/2)"
    ),
    "narrow notch": check_block(
        "finished 6in\nseam (2.9in from top-left to top-right) -- center"
        " -- (3.1in from top-left to top-right)"
    ),
    "scoop": check_block(
        "finished 6in\nseam (2.8in from top-left to top-right) ~~ (3.2in from top-left to"
        " top-right) through (0.2in from top to center)"
    ),
}


@pytest.mark.parametrize("name", BROKEN)
def test_each_broken_number_is_caught(name):
    draft = BROKEN[name]
    templates, assembly = make_templates(draft).value, assemble(draft)
    proved(draft)
    missed, tried = [], 0
    for what, broken in breakages((templates, assembly)):
        tried += 1
        outcome = prove(draft, *broken)
        if outcome.value is not None:
            missed.append(what)
        else:
            assert outcome.failed and outcome.diagnostics[0].code == "block-does-not-sew"
            assert outcome.diagnostics[0].message.endswith(".")
    assert tried > 40 and missed == []


@pytest.mark.parametrize("name", ["vane", "skerry star", "square in a square"])
def test_wrong_names_and_missing_steps_are_caught(name):
    draft = BROKEN[name]
    templates, made = make_templates(draft).value, assemble(draft)

    def caught(assembly, templates=templates):
        assert prove(draft, templates, assembly).failed

    caught(replace(made, steps=made.steps[:-1], units=made.units[:-1]))
    caught(replace(made, steps=made.steps[::-1], units=made.units[::-1]))
    first = made.steps[0]
    swapped = replace(first, sides=(first.sides[0], replace(first.sides[1], part=first.sides[0].part)))
    caught(replace(made, steps=(swapped, *made.steps[1:])))
    cloth = replace(made.pieces[0], fabric="other")
    caught(replace(made, pieces=(cloth, *made.pieces[1:])))
    cloth = replace(made.pieces[0], template="Q")
    caught(replace(made, pieces=(cloth, *made.pieces[1:])))
    cut = replace(templates[0], counts=(replace(templates[0].counts[0], cut=templates[0].counts[0].cut + 1),))
    caught(made, (cut, *templates[1:]))
    stray = replace(templates[0], marks=(Mark(Point(0.37, 0.11), Point(0, 1), 0.25),))
    caught(made, (stray, *templates[1:]))
    wide = replace(templates[0], cut=templates[0].sew)
    caught(made, (wide, *templates[1:]))
