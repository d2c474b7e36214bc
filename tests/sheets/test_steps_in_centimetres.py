"""A block's steps, told to who measures in centimetres."""

from __future__ import annotations

import re

import pytest
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.chapters.block_steps import block_steps
from piecewright.sheets.content import Card, Cards
from piecewright.sheets.work import Way
from piecewright.words.say import CENTIMETRES, INCHES, Say
from support.library import library_drafts
from support.works import block_of

DRAFT = next(draft for title, draft in library_drafts() if "Churn Dash" in str(title))
INCH: re.Pattern[str] = re.compile(r"\d ?in\b")


def cards(say: Say, way: Way) -> tuple[Card, ...]:
    parts = block_steps(block_of(DRAFT, way), SheetOptions(say=say)).parts
    return next(part.cards for part in parts if isinstance(part, Cards))


@pytest.mark.parametrize("way", ["templates", "papers"])
def test_every_size_under_a_step_is_in_the_makers_unit(way: Way) -> None:
    inches, metric = cards(INCHES, way), cards(CENTIMETRES, way)
    assert all(INCH.search(each.lines[-1]) for each in inches)
    assert all(re.search(r"\dcm\b", each.lines[-1]) for each in metric)
    assert not any(INCH.search(line) for each in metric for line in each.lines)
    assert [each.title for each in inches] == [each.title for each in metric]
    if way == "templates":  # an inch is 25.4mm by definition: international yard and pound agreement of 1959
        sizes = [f"{2.54 * (float(DRAFT.width) + more):.2f}".rstrip("0").rstrip(".") for more in (0.5, 0)]
        assert metric[-1].lines[-1] == "Unfinished {}cm square, finished {}cm square.".format(*sizes)
