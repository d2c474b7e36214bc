"""Pressing: opposite where seams meet, toward the darker cloth where that is free."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.sewing.order.assembly import assemble
from piecewright.sewing.pressing.pressing import press
from piecewright.sheets.quilts.wearing import own_roles
from support.check import check_block, draft_block
from support.library import library_drafts

LIBRARY = dict(library_drafts())


def plan_of(draft, **lightness):
    made = assemble(draft)
    return made, press(draft, made, {**own_roles(draft).lightness, **lightness})


def grid(rows):
    across, down = len(rows[0]), len(rows)
    said = "\n".join("row " + ", ".join(f"plain {role}" for role in row) for row in rows)
    return check_block(f"finished {across}in x {down}in\ngrid {across} x {down}\n{said}")


@given(st.integers(2, 5), st.integers(2, 5), st.randoms(use_true_random=False))
@settings(max_examples=40, deadline=None)
def test_seams_lie_opposite_at_every_four_way_meeting_of_rows(across, down, random):
    """SOURCES 3.6, Gibbs: seams that meet lie opposite; toward the dark yields where it conflicts."""
    draft = grid([[random.choice(["dark", "light", "medium"]) for _ in range(across)] for _ in range(down)])
    _, plan = plan_of(draft)
    places = {(round(float(each.at.x), 3), round(float(each.at.y), 3)) for each in plan.meetings}
    assert places == {(x, y) for x in range(1, across) for y in range(1, down)}
    assert all(each.opposite for each in plan.meetings)
    assert not any("open" in seam.ways for seam in plan.seams)


def test_a_grid_of_one_cloth_presses_its_like_rows_both_ways():
    draft = grid([["dark"] * 4] * 4)
    _, plan = plan_of(draft)
    assert len(plan.meetings) == 9 and all(each.opposite for each in plan.meetings)


@pytest.mark.parametrize(("left", "right"), [("dark", "pale"), ("pale", "dark")])
def test_a_free_seam_is_pressed_toward_the_darker_cloth(left, right):
    made, plan = plan_of(grid([[left, right]]))
    (seam,) = plan.seams
    first = made.pieces[int(made.steps[0].parts[0]) - 1].fabric
    assert (seam.toward, seam.reason) == ("first" if first == "dark" else "second", "darker")


def test_the_lighter_cloth_is_the_one_that_is_said_to_be_lighter():
    draft = grid([["dark", "pale"]])
    made, plan = plan_of(draft, dark=0.9, pale=0.1)
    part = made.steps[0].parts[0 if plan.seams[0].toward == "first" else 1]
    assert made.pieces[int(part) - 1].fabric == "pale"


def test_a_four_patch_locks_with_its_pairs_pressed_to_the_dark():
    """SOURCES 3.6: the pairs go to the dark both, and lie opposite because one is turned."""
    made, plan = plan_of(grid([["dark", "pale"], ["pale", "dark"]]))
    assert [step.batch for step in made.steps] == [2, 1]
    assert plan.seams[0].even and plan.seams[0].reason == "darker"
    (meeting,) = plan.meetings
    assert meeting.opposite and (float(meeting.at.x), float(meeting.at.y)) == (1, 1)


def test_a_seam_that_cannot_lie_opposite_is_offered_open():
    """Three tied round in a ring, each to differ from the next: one of them can only be opened."""
    from piecewright.sewing.pressing.pressing_ties import Ties

    ties = Ties()
    assert ties.tie((1, 0), (2, 0), False) and ties.tie((2, 0), (3, 0), False)
    assert not ties.tie((1, 0), (3, 0), False)
    assert ties.torn((2, 0)) and not ties.torn((4, 0))
    ways = ties.settle({(1, 0): 1.0, (2, 0): -3.0, (3, 0): 1.0}, {})
    assert (ways[1, 0], ways[2, 0], ways[3, 0]) == (True, False, True)


@pytest.mark.parametrize("title", LIBRARY)
def test_every_meeting_in_the_library_lies_opposite_or_is_open(title):
    made, plan = plan_of(LIBRARY[title])
    assert [seam.step for seam in plan.seams] == [step.step for step in made.steps]
    assert [len(seam.ways) for seam in plan.seams] == [step.batch for step in made.steps]
    opened = {seam.step for seam in plan.seams if "open" in seam.ways}
    assert all(each.opposite or opened & set(each.steps) for each in plan.meetings)


def test_curved_seams_are_pressed_too():
    draft = draft_block("finished 3in\nseam top-right ~~ bottom-left around top-left").value[0]
    _, plan = plan_of(draft)
    assert len(plan.seams) == 1 and plan.meetings == ()
