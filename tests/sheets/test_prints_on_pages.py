"""What the pages of a quilt say of prints with a direction, and of cloth that shrinks."""

from __future__ import annotations

from functools import cache

import pytest
from piecewright.cutting.plan_model import CuttingPlan
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.quilt.model import Quilt
from piecewright.sheets.page import Document
from support.arranged import ends, paths, texts
from support.random_quilts import compiled_quilt
from support.works import quilt_sheets

TEXT = """edition 1
quilt "Gable Ends" {
  use "Half-Square Triangle" version 1 as half with dark = ink, light = chalk
  fabric ink "Ink sprig" one way shrinks 3%
  fabric chalk "Chalk" fat quarter 6 shrinks 4%
  fabric oat "Oat"
  set straight 5 across 1 down of 4in { row 3 half, 2 half turned 90deg }
  border 2in in ink
  binding 2 1/4in in ink
  backing in oat
  batting
}
"""


@cache
def planned() -> tuple[Quilt, CuttingPlan]:
    quilt = compiled_quilt(TEXT)
    plan = plan_cutting(quilt).value
    assert plan is not None
    return quilt, plan


def part(name: str) -> Document:
    return quilt_sheets(*planned(), name)


def words(name: str) -> str:
    return " ".join(mark.text for page in part(name).pages for mark in texts(page))


def test_squares_are_drawn_cut_the_way_that_serves():
    """Three triangles fill one corner and two the next: so many squares of either diagonal."""
    drawn = [tuple(ends(mark)) for page in part("cutting").pages for mark in paths(page, "diagonal")]
    _, plan = planned()
    (cut,) = [each for each in plan.cuts if each.fabric == "ink" and each.slants]
    rising = sum((ax - bx) * (ay - by) < 0 for (ax, ay), (bx, by) in drawn)
    chalk = sum(each.cuts for each in plan.cuts if each.fabric == "chalk")
    assert sorted(cut.slants) == [("falling", 2), ("rising", 3)]
    assert (rising, len(drawn) - rising) == (3, 2 + chalk), "chalk has no direction: drawn falling"


def test_the_chart_says_how_a_print_lies():
    said = words("chart")
    assert "a one-way print, cut so that it stands upright in every piece of the quilt" in said
    assert "With the print up, cut 3 of the squares once from bottom left to top right and 2" in said
    assert "Its print may lie any way." in said
    assert "Cut across the cloth, so that the print stands up in the quilt." in said
    assert "Cut along the selvage, so that the print stands up in the quilt." in said


@pytest.mark.parametrize("said", [
    "Usable width 42in after washing: ask for 43⅜in between the selvages; a one-way print.",
    "as they are after washing: before it at least 21⅞in x 18¾in.",
])  # fmt: skip
def test_cloth_that_shrinks_is_asked_for_wider(said):
    """42in after 3% take 42 / 0.97in, 43.30; 21in x 18in after 4% take 21.88in x 18.75in (ISO 5077's change
    is a share of what was bought: SOURCES 9)."""
    assert said in words("supplies")
