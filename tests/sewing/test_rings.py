"""Rings and wheels: wedges alike about a middle, set in a square. Common practice, no published source."""

from __future__ import annotations

import pytest
from piecewright.sewing.model import Assembly
from piecewright.sewing.order.assembly import assemble
from support.check import check_block


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


@pytest.mark.parametrize("wedges", [5, 6, 8, 12, 16])
def test_a_wheel_with_a_hub_has_its_ground_sewn_on_last_and_no_partial_seam(wedges):
    made = sewn(wedges, hub=True)
    ground = {cloth.number for cloth in made.pieces if cloth.fabric == "light"}
    assert not any(step.partial for step in made.steps)
    assert all(not ground & set(unit.pieces) for unit in made.units[:-2])
    assert all(step.set_in_count <= 2 for step in made.steps)
