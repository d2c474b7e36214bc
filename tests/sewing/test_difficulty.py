"""Difficulty: named causes, each counted by itself."""

from __future__ import annotations

from piecewright.cutting.templates.making import make_templates
from piecewright.geometry.corners import corner_angles
from piecewright.sewing.difficulty import causes, difficulty
from piecewright.sewing.order.assembly import assemble
from piecewright.words.work.difficulty import cause_words
from support.check import check_block, check_noted, draft_block
from support.library import library_drafts

LIBRARY = dict(library_drafts())


def found_of(draft):
    return difficulty(draft, make_templates(draft).value, assemble(draft))


def test_eight_pointed_star():
    """Common practice, no published source: eight points at one place, eight set-in seams, 45deg points."""
    found = found_of(LIBRARY["Eight-pointed Star"])
    assert (found.pieces, found.templates, found.smallest_angle) == (16, 3, 45)
    assert (found.set_in_seams, found.points_that_meet, found.most_at_one_point) == (8, 1, 8)
    assert tuple(map(cause_words, causes(found))) == (
        "16 pieces",
        "3 templates",
        "smallest angle 45°",
        "8 set-in seams",
        "1 place where points meet",
        "up to 8 pieces at one point",
    )


def test_a_nine_patch_has_no_bias_and_four_places_to_match():
    found = found_of(LIBRARY["Nine Patch"])
    assert (found.bias_outside, found.points_that_meet, found.most_at_one_point) == (0, 4, 4)
    assert (found.smallest_angle, found.set_in_seams, found.curved_seams) == (90, 0, 0)


def test_grain_across_the_outside_counts_as_bias():
    plain = "finished 4in\nseam top-left -- bottom-right\npiece half at top-right in dark\n"
    assert found_of(check_block(plain)).bias_outside == 0
    assert found_of(check_block(plain + "grain along top-left--bottom-right on half")).bias_outside == 2


def test_curves_are_named():
    assert "1 curved seam" in map(cause_words, causes(found_of(LIBRARY["Drunkard's Path Patch"])))


def test_a_seam_left_partly_open_is_no_set_in_seam():
    """Common practice, no published source: strips round a center square take a partial seam, none set in."""
    found = found_of(
        check_block("finished 9in\ngrid 3 x 3\nturn 4 about center {\nseam A2 -- B2\nseam B2 -- C2\n}\n")
    )
    assert tuple(map(cause_words, causes(found))) == (
        "5 pieces",
        "2 templates",
        "smallest angle 90°",
        "1 partial seam",
    )


def test_a_circle_in_a_window_is_a_seam_all_round():
    found = found_of(check_noted("piece-hole", "finished 8in\nseam circle around center radius 2 1/2in\n"))
    assert tuple(map(cause_words, causes(found)))[-2:] == ("1 seam all round a window", "1 curved seam")


def test_where_an_arc_is_tangent_to_a_side_is_no_corner():
    """By hand: a circle that touches all four sides leaves four pieces of one right angle each."""
    found = found_of(check_block("finished 8in\nseam circle around center radius 4in"))
    assert (found.pieces, found.smallest_angle) == (5, 90)


def test_arcs_that_touch_make_no_point_of_no_degrees():
    """Two circles that touch each other from inside: their pieces have no corner at all."""
    (draft,) = draft_block(
        "finished 8in\nseam circle around center radius 3in\n"
        "seam circle around (1in from center to top) radius 2in"
    ).value
    rings = [ring for piece in draft.pieces for ring in (piece.ring, *piece.holes)]
    angles = [corner_angles([side.edge for side in ring]) for ring in rings]
    assert sorted(map(len, angles)) == [0, 0, 0, 4]
