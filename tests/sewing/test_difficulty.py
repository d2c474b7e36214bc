"""Difficulty: named causes, each counted by itself."""

from __future__ import annotations

from piecewright.cutting.templates.making import make_templates
from piecewright.sewing.assembly import assemble
from piecewright.sewing.difficulty import causes, difficulty
from support.check import check_block
from support.library import library_drafts

LIBRARY = dict(library_drafts())


def found_of(draft):
    return difficulty(draft, make_templates(draft).value, assemble(draft))


def test_eight_pointed_star():
    """Common practice, no published source: eight points at one place, eight set-in seams, 45deg points."""
    found = found_of(LIBRARY["Eight-pointed Star"])
    assert (found.pieces, found.templates, found.smallest_angle) == (16, 3, 45)
    assert (found.set_in_seams, found.points_that_meet, found.most_at_one_point) == (8, 1, 8)
    assert causes(found) == ("16 pieces", "3 templates", "smallest angle 45°", "8 set-in seams",
                             "1 place where points meet", "up to 8 pieces at one point")


def test_a_nine_patch_has_no_bias_and_four_places_to_match():
    found = found_of(LIBRARY["Nine Patch"])
    assert (found.bias_outside, found.points_that_meet, found.most_at_one_point) == (0, 4, 4)
    assert (found.smallest_angle, found.set_in_seams, found.curved_seams) == (90, 0, 0)


def test_grain_across_the_outside_counts_as_bias():
    plain = "finished 4in\nseam top-left -- bottom-right\npiece half at top-right in dark\n"
    assert found_of(check_block(plain)).bias_outside == 0
    assert found_of(check_block(plain + "grain along top-left--bottom-right on half")).bias_outside == 2


def test_curves_are_named():
    assert "1 curved seam" in causes(found_of(LIBRARY["Drunkard's Path Patch"]))
