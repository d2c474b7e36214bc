"""One design under other names, sizes, turns and fabrics; and designs that only look alike."""

from __future__ import annotations

import pytest
from piecewright.drafting.design import Symmetry, design_kind, same_design, symmetry_of
from support.check import check_block

HALF = (
    "finished 6in\nseam bottom-left -- top-right\n"
    "piece a at top-left in dark\npiece b at bottom-right in light"
)
HOURGLASS = (
    "finished 6in\nseam through top-left--bottom-right\nseam through bottom-left--top-right\n"
    "piece a at top, bottom in dark\npiece b at left, right in light"
)
STRIPS = "finished 6in\ngrid 3 x 1\nalternate plain {}, plain {}, plain {}"
PIE = "finished {0}in\nseam ({1}in from {2} to top-right) ~~ ({1}in from {2} to bottom-left) around {2}"


def drafts(*bodies: str):
    return [check_block(body) for body in bodies]


@pytest.mark.parametrize(
    "other",
    [
        HALF.replace("6in", "9in"),
        HALF.replace("dark", "rust").replace("light", "sand"),
        HALF.replace("dark", "x").replace("light", "dark").replace("in x", "in light"),
        HALF.replace("left", "x").replace("right", "left").replace("x", "right"),
    ],
)
def test_size_turn_and_the_fabrics_names_do_not_make_another_design(other):
    one, two = drafts(HALF, other)
    assert same_design(one, two) and same_design(two, one)


def test_which_pieces_share_a_fabric_makes_another_design():
    one, two, three = drafts(
        STRIPS.format("dark", "light", "dark"),
        STRIPS.format("dark", "light", "light"),
        STRIPS.format("light", "light", "dark"),
    )
    assert not same_design(one, two)
    assert same_design(two, three)


def test_two_fabrics_do_not_become_one():
    one, two = drafts(STRIPS.format("dark", "medium", "light"), STRIPS.format("dark", "light", "dark"))
    assert not same_design(one, two) and not same_design(two, one)


def test_a_pinwheel_and_its_mirror_are_one_design():
    one, two = drafts(
        *(
            f"finished 6in\nturn 4 about center {{\nseam {a} -- center\nseam {b} -- center\n}}\n"
            f"turn 4 about center {{ piece sail at {c} in dark }}"
            for a, b, c in (("top", "top-left", "(1/4, 0)"), ("top", "top-right", "(3/4, 0)"))
        )
    )
    assert symmetry_of(one) == Symmetry(4, False)
    assert same_design(one, two)


def test_curves_count_with_their_way_and_depth():
    small, large, deep = drafts(
        PIE.format(6, 4, "top-left"), PIE.format(9, 6, "top-left"), PIE.format(6, 5, "top-left")
    )
    assert same_design(small, large)
    assert not same_design(small, deep)
    chord = check_block(PIE.format(6, 4, "top-left").replace("~~", "--").replace(" around top-left", ""))
    assert design_kind(chord) != design_kind(small)


@pytest.mark.parametrize(
    "body, expected",
    [
        (HALF, Symmetry(1, True)),
        (HOURGLASS, Symmetry(2, True)),
        (HOURGLASS.replace("in light", "in dark"), Symmetry(4, True)),
        ("outline regular 6 side 2in\nturn 6 about center { seam center -- corner1 }", Symmetry(6, True)),
        ("finished 6in\nseam circle around center radius 2in", Symmetry(4, True)),
        ("finished 8in x 4in\nseam top -- bottom", Symmetry(2, True)),
    ],
)
def test_symmetry_counts_the_fabrics(body, expected):
    from support.check import draft_block

    made = draft_block(body).value
    assert made is not None and symmetry_of(made[0]) == expected
