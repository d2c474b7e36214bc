"""Foundations: what goes on one paper, the fewest papers, and every paper sewn again patch by patch."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from piecewright.drafting.model import Draft
from piecewright.sewing.foundations.foundation import foundations
from piecewright.sewing.naming import section_label
from piecewright.sewing.order.assembly import assemble
from piecewright.sheets.papers.foundation_paper import join_name
from piecewright.words.say import INCHES
from piecewright.words.work.foundations import refusal_words
from shapely.geometry import LineString, Polygon
from shapely.ops import linemerge, unary_union
from support.check import check_block, check_noted, draft_block, draft_text
from support.library import library_drafts
from support.random_blocks import random_blocks

LIBRARY = dict(library_drafts())

# Common practice, no published source: how many papers a block takes, None where it cannot go on paper.
PAPERS = {
    "Flying Goose": 1,
    "Square in a Square": 1,
    "Economy": 1,
    "Log Cabin": 1,
    "Courthouse Steps": 1,
    "Pineapple": 1,
    "Half-Square Triangle": 1,
    "Snowball": 1,
    "Octagon": 1,
    "Diamond in a Rectangle": 1,
    "Three Rails": 1,
    "Two-Bar Square": 1,
    "Three-Bar Square": 1,
    "Roman Stripe": 1,
    "Pinwheel Square": 2,
    "Quarter-Square Triangle": 2,
    "Four-Patch Square": 2,
    "The Tumbler": 2,
    "Nine Patch": 3,
    "Shoo Fly": 3,
    "Friendship Star": 3,
    "Storm at Sea": 4,
    "Eight-pointed Star": None,
    "Six-pointed Star": None,
    "Honeycomb": None,
    "Spools": None,
    "Star of Bethlehem": None,
    "Rolling Star": None,
    "Drunkard's Path": None,
    "Orange Peel": None,
    "Mill Wheel": None,
    "Fanny's Fan": None,
}


@pytest.mark.parametrize("title", PAPERS)
def test_known_answers(title):
    found = foundations(LIBRARY[title])
    assert found.possible == (PAPERS[title] is not None)
    assert len(found.sections) == (PAPERS[title] or 0)


def test_half_a_pinwheel_is_one_section_three_quarters_are_not():
    half = check_block("finished 6in x 3in\ngrid 2 x 1\nseam A1 -- B2\nseam B1 -- B2\nseam B2 -- C1")
    assert len(half.pieces) == 4
    seams = "seam A1 -- B2 -- C3\nseam B2 -- A3\nseam B1 -- B2 -- A2"
    outline = "outline A1 -- B1 -- B2 -- C2 -- C3 -- A3"
    three = check_block(f"finished 6in\ngrid 2 x 2\n{outline}\n{seams}\nseam B2 -- B3")
    turned = check_block("finished 6in x 3in\ngrid 2 x 1\nseam A1 -- B2\nseam B1 -- B2\nseam B1 -- C2")
    assert len(foundations(turned).sections) == 1
    assert len(three.pieces) == 6 and len(foundations(three).sections) == 2
    assert len(foundations(half).sections) == 1


def polygon(piece) -> Polygon:
    return Polygon([(float(side.edge.start.x), float(side.edge.start.y)) for side in piece.ring])


def replay(draft: Draft) -> None:
    """Sews every section patch by patch along one line each, then joins the sections along theirs."""
    found = foundations(draft)
    assert found.possible, found.why_not
    made = {}
    for section in found.sections:
        sewn = None
        for number, patch in enumerate(section.patches, 1):
            assert patch.label == f"{section.label}{number}"
            cloth = polygon(draft.pieces[patch.piece - 1])
            if sewn is None:
                assert patch.line is None
            else:
                (ax, ay), (bx, by) = ((float(at.x), float(at.y)) for at in (patch.line.start, patch.line.end))
                line = LineString([(ax, ay), (bx, by)])
                assert meeting(sewn, cloth).hausdorff_distance(line) < 1e-4
                beyond = [(bx - ax) * (y - ay) - (by - ay) * (x - ax) for x, y in corners(sewn)]
                assert max(beyond) < 1e-4 * line.length, "what was sewn before lies on one side of the line"
            sewn = cloth if sewn is None else unary_union([sewn, cloth])
        paper = Polygon([(float(edge.start.x), float(edge.start.y)) for edge in section.outline])
        assert paper.symmetric_difference(sewn).area < 1e-4
        made[section.label] = sewn
    for join in found.joins:
        one, two = made.pop(join.first), made.pop(join.second)
        line = LineString([(float(at.x), float(at.y)) for at in (join.seam.start, join.seam.end)])
        assert meeting(one, two).hausdorff_distance(line) < 1e-4, "sections are joined by one straight seam"
        made[f"{join.first}-{join.second}"] = unary_union([one, two])
    (block,) = made.values()
    assert abs(block.area - sum(polygon(piece).area for piece in draft.pieces)) < 1e-4
    patches = [patch.piece for section in found.sections for patch in section.patches]
    assert sorted(patches) == [piece.number for piece in draft.pieces]


def meeting(one, two):
    """Where two shapes touch along their edges, as one line."""
    shared = one.boundary.intersection(two.buffer(1e-6))
    lines = [each for each in getattr(shared, "geoms", [shared]) if each.length > 1e-4]
    merged = linemerge(lines) if len(lines) > 1 else lines[0]
    return merged.simplify(1e-5)


def corners(shape) -> list[tuple[float, float]]:
    return list(shape.exterior.coords)


STRAIGHT = [title for title, draft in LIBRARY.items() if assemble(draft).straight_seams_only]


@pytest.mark.parametrize("title", STRAIGHT)
def test_every_paper_of_the_library_sews_again_to_its_block(title):
    replay(LIBRARY[title])


@given(random_blocks(curves=False, names=False))
@settings(max_examples=40, deadline=None)
def test_random_papers_sew_again_to_their_block(block):
    drafted = draft_text(block.text()).value
    assume(drafted is not None and len(drafted[0].pieces) <= 30)
    made = assemble(drafted[0])
    found = foundations(drafted[0], made)
    assert found.possible == made.straight_seams_only
    if found.possible:
        replay(drafted[0])


def test_why_not_names_the_junction():
    star = refusal_words(INCHES, foundations(LIBRARY["Eight-pointed Star"]).why_not)
    assert star == (
        "Pieces 2, 3 and 4 meet 6in across and 2.485in down, and no seam runs straight across there."
    )
    curve = refusal_words(INCHES, foundations(LIBRARY["Drunkard's Path Patch"]).why_not)
    assert curve == "The seam between pieces 1 and 2 is curved, and paper folds along straight lines only."
    ring = "finished 6in\ngrid 3 x 3\nseam B2 -- C2 -- C3 -- B3 -- B2"
    window = foundations(check_noted("piece-hole", ring))
    assert (
        refusal_words(INCHES, window.why_not)
        == "The seam round piece 2 closes on itself, so no straight seam reaches it."
    )


def test_cloth_for_each_patch_covers_it_with_allowance_and_margin():
    found = foundations(LIBRARY["Flying Goose"])
    goose, *skies = found.sections[0].patches
    assert found.margin == Fraction(1, 4)
    draft = LIBRARY["Flying Goose"]
    width, height = float(draft.width), float(draft.height)
    assert (goose.width, goose.height) == (width + 1, height + 1)
    for sky in skies:
        assert float(sky.width) >= (height**2 * 2) ** 0.5 + 1 and sky.width % Fraction(1, 4) == 0


def test_a_block_of_one_piece_is_one_paper():
    found = foundations(check_block("finished 6in"))
    assert (found.possible, [section.order for section in found.sections], found.joins) == (True, [(1,)], ())


def test_rows_become_papers_before_columns():
    assert [section.order for section in foundations(LIBRARY["Nine Patch"]).sections] == [
        (1, 2, 3),
        (4, 5, 6),
        (7, 8, 9),
    ]


def test_a_curved_outline_alone_keeps_nothing_off_paper():
    draft = draft_block("outline A1 -- B1 ~~ B2 through (1.2, 0.5) -- A2\nfinished 3in\nseam top -- bottom")
    assert draft.value is None or foundations(draft.value[0]).possible


def test_a_log_cabin_begins_with_its_hearth():
    (section,) = foundations(LIBRARY["Log Cabin"]).sections
    assert section.patches[0].fabric == "hearth"


@pytest.mark.parametrize(
    "title, rounds",
    [
        # Common practice, no published source: round by round from the middle.
        ("Pineapple", ["medium", *["light", "dark"] * 4, "dark"]),
        ("Economy", ["dark", "light", "dark"]),
    ],
)
def test_patches_all_round_are_sewn_round_by_round(title, rounds):
    (section,) = foundations(LIBRARY[title]).sections
    heart, *others = [patch.fabric for patch in section.patches]
    by_four = [others[at : at + 4] for at in range(0, len(others), 4)]
    assert all(len(set(four)) == 1 for four in by_four)
    assert [heart, *(four[0] for four in by_four)] == rounds


def test_a_curve_is_named_by_the_pieces_on_it_and_not_by_points_that_touch_it():
    why = refusal_words(INCHES, foundations(LIBRARY["Mariner's Compass"]).why_not)
    assert why == "The seam between pieces 1, 7 and 11 is curved, and paper folds along straight lines only."


def test_a_letter_before_a_number_means_one_thing():
    """Twenty rows of a checkerboard are twenty papers: no patch of theirs is named as a join is, or as a row,
    a block or a shape of cloth is in a quilt's steps."""
    found = foundations(check_block("grid 20 x 20 of 1in\nalternate plain dark, plain light"))
    labels = [section.label for section in found.sections]
    assert labels == [*"ABCDEFGHIKLMNOSTUVWX"]
    patches = {patch.label for section in found.sections for patch in section.patches}
    assert len(patches) == 400
    assert patches.isdisjoint(join_name(number) for number in range(len(found.joins)))


def test_sections_go_on_in_two_letters():
    assert [section_label(index) for index in (0, 21, 22, 23, 43, 44)] == ["A", "Z", "AA", "AB", "AZ", "BA"]
