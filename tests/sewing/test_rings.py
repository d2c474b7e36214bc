"""Rings and wheels: wedges alike about a middle, set in a square. Common practice, no published source."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.sewing.model import Assembly
from piecewright.sewing.order.assembly import assemble
from support.check import check_block
from support.library import library_drafts


def sewn(wedges: int, hub: bool) -> Assembly:
    """A wheel of so many wedges, with a round hub or none, in a ground of two halves."""
    inner = "hub" if hub else "center"
    lines = [
        "finished 14in",
        f"turn {wedges} about center {{",
        "point tip = 6in from center to top",
        "point hub = 1 1/2in from center to top" if hub else "",
        f"seam {inner} -- tip ~~ next tip around center",
        "seam hub ~~ next hub around center" if hub else "",
        f"piece blade at 3in from center at {180 / wedges}deg in dark",
        "}",
        "piece middle at center in medium" if hub else "",
        "turn 2 about center {",
        "seam (6in from center to top) -- top",
        "piece ground at top-right in light",
        "}",
    ]
    return assemble(check_block("\n".join(lines) + "\n"))


@pytest.mark.parametrize("wedges", [6, 8, 12, 16])
def test_a_wheel_without_a_hub_in_a_ground_of_halves_has_only_seams_right_across(wedges):
    made = sewn(wedges, hub=False)
    assert made.set_in_seams == 0 and not any(step.partial for step in made.steps)
    halves = [made.units[int(part[1:]) - 1] for part in made.steps[-1].parts]
    assert [len(half.pieces) for half in halves] == [wedges // 2 + 1] * 2


@pytest.mark.parametrize(
    ("wedges", "halves"), [(5, (2, 3)), (6, (3, 3)), (8, (4, 4)), (9, (3, 6)), (12, (6, 6))]
)
def test_a_wheel_with_a_hub_is_closed_by_two_seams_before_the_hub_and_then_the_ground(wedges, halves):
    made = sewn(wedges, hub=True)
    fabric = {cloth.number: cloth.fabric for cloth in made.pieces}
    rings = [step for step in made.steps if step.seams == 2]
    round_hub, *_ = [step for step in rings if fabric[made.units[step.step - 1].pieces[0]] == "dark"]
    parts = [len(made.units[int(part[1:]) - 1].pieces) for part in round_hub.parts]
    assert sorted(parts) == list(halves) and not round_hub.set_in and not round_hub.curved
    hub, ground = (step for step in made.steps if step.all_round)
    assert made.units[round_hub.step - 1].id in hub.parts and made.units[hub.step - 1].id in ground.parts
    assert ground.step == len(made.steps)
    assert made.set_in_seams == 2 and not any(step.partial for step in made.steps)


def test_nine_wedges_about_a_hub_are_sewn_in_thirds_alike():
    made = sewn(9, hub=True)
    assert [unit.copies for unit in made.units if len(unit.pieces) == 3 and len(unit.copies) == 3]


@pytest.mark.parametrize("title", ["Wagon Wheel", "Sunburst"])
def test_wheels_of_the_library_set_in_their_middle_and_their_ground_alone(title):
    (draft,) = [draft for known, draft in library_drafts() if known == title]
    made = assemble(draft)
    assert made.set_in_seams == 2 == sum(step.all_round for step in made.steps)


def test_geese_that_fly_in_a_ring_are_closed_to_a_ring_before_their_middle_and_their_ground_are_set_in():
    made = assemble(
        check_block(
            """
            finished 14in
            turn 8 about center {
              point near = 2in from center to top
              point far = 5in from center to top
              seam near -- far
              seam near ~~ next near around center
              seam far ~~ next far around center
              seam near -- (1/2 from next near to next far) -- far
              piece goose at between near, far, (1/2 from next near to next far) in dark
              piece sky at 3in from center at 40deg, 4 1/2in from center at 40deg in light
            }
            piece middle at center in medium
            turn 2 about center {
              seam (5in from center to top) -- top
              piece ground at top-right in background
            }
            """
        )
    )
    assert made.set_in_seams == 2 == sum(step.all_round for step in made.steps)
    (goose,) = [unit for unit in made.units if len(unit.pieces) == 3]
    assert len(goose.copies) == 8


@given(st.integers(5, 16), st.sampled_from([2, 4]), st.booleans())
@settings(max_examples=12, deadline=None)
def test_no_wheel_with_a_hub_sets_in_more_than_its_hub_and_its_ground(wedges, grounds, swirled):
    """However many pieces its ground has, and where the seams of the blades are bent."""
    seam = "hub ~~ tip through (3 1/2in from center at 4deg)" if swirled else "hub -- tip"
    draft = check_block(
        f"""
        finished 16in
        turn {wedges} about center {{
          point tip = 6in from center to top
          point hub = 1 1/2in from center to top
          seam {seam}
          seam tip ~~ next tip around center
          seam hub ~~ next hub around center
          piece blade at 3 1/2in from center at {180 / wedges + 2}deg in dark
        }}
        piece middle at center in medium
        turn {grounds} about center {{
          seam (6in from center at 7deg) -- top
          piece ground at 8in from center at 45deg in light
        }}
        """
    )
    made = assemble(draft)
    assert made.set_in_seams == 2 == sum(step.all_round for step in made.steps)
    assert sum(step.batch for step in made.steps) == len(draft.pieces) - 1


@pytest.mark.parametrize("title", ["Double Wedding Ring", "Pickle Dish"])
def test_the_posts_of_a_melon_are_sewn_to_an_end_each_before_its_second_arc_is_set_in_between_them(title):
    (draft,) = [draft for known, draft in library_drafts() if known == title]
    made = assemble(draft)
    set_in = [step for step in made.steps if step.set_in]
    assert [(step.batch, len(step.turns)) for step in set_in] == [(4, 2)]
    posts = [piece.number for piece in draft.pieces if piece.name.endswith("post")]
    sewn_on = [step for step in made.steps for part in step.parts if part.isdigit() and int(part) in posts]
    assert len(sewn_on) == 2 and all(step.step < set_in[0].step and not step.turns for step in sewn_on)
