"""Cloth for templates beside a general-purpose packer's, on the library's own shapes.

Lengths are spyrrow 0.9.0's, each set given 30 seconds (seed 4): tests/benchmarks/bench_nesting.py packs them
anew. It may nest shapes anyhow; our templates lie in rows that straight cuts part.
"""

from __future__ import annotations

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from support.needs import NO_MARGIN
from support.template_sets import template_quilt

AIM = 1.10
SPYRROW = {
    "Drunkard's Path": 75.27,
    "Fanny's Fan": 37.27,
    "Mariner's Compass": 117.38,
    "Mill Wheel": 18.51,
    "Robbing Peter to Pay Paul": 44.81,
    "Apple Core": 8.53,
    "Octagon": 12.70,
    "Rocky Road to Kansas": 31.57,
    "Star of Bethlehem": 71.51,
    "Star of the East": 63.20,
    "Storm at Sea": 18.84,
    "Spider's Web": 48.77,
    "The Tumbler": 41.16,
    "Snowball": 12.22,
}
MIXED = {
    "Orange Peel": (40.61, 1.20),
    "Necktie": (26.83, 1.15),
    "Cherry Basket": (18.92, 1.55),
    "Diamond in a Rectangle": (5.28, 1.35),
}
"""Sets that pack best with one template in another's hollow, which our rows, of one template each, do not do:
spyrrow's length, and the share of it that ours stays under."""


def length(title: str) -> float:
    outcome = plan_cutting(template_quilt(title), margin=NO_MARGIN)
    assert outcome.value is not None, outcome.diagnostics
    (made,) = outcome.value.fabrics
    assert made.used * 42 >= made.area
    return float(made.used)


@pytest.mark.parametrize("title", SPYRROW)
def test_rows_take_little_more_than_free_nesting(title):
    assert length(title) <= AIM * SPYRROW[title]


@pytest.mark.parametrize("title", MIXED)
def test_templates_that_hold_others_take_more(title):
    theirs, most = MIXED[title]
    assert AIM * theirs < length(title) <= most * theirs
