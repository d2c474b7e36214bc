"""Templates at odd sizes, whatever their words, lie on their page or are tiled: some of `odd_sizes.py`."""

from __future__ import annotations

import pytest
from piecewright.sheets.arrange.block_sheets import arrange_block
from proof.odd_sizes import OPTIONS, at_width, faults, in_danger, lies_well, tries
from support.library import library_drafts

LIBRARY = dict(library_drafts())
SIZES = 40
SOME = tuple(LIBRARY)[::5]  # every fifth block: all of them would take a minute and more


@pytest.mark.parametrize("title", SOME)
def test_a_template_lies_on_its_page_with_its_words_at_forty_odd_sizes(title):
    said = [
        f"{each.where}: {line}"
        for each in tries(title, LIBRARY[title], SIZES, 1, every=False)
        for template in each.templates
        if in_danger(template, each.options)
        for line in lies_well(template, each.options)
    ]
    assert said == []


@pytest.mark.parametrize("title", ["Courthouse Steps", "White House Steps"])
def test_strips_of_the_length_of_the_page_are_set_with_their_words(title):
    for width in (7.15, 7.3, 7.5):
        sized, templates = at_width(LIBRARY[title], width)
        for options in OPTIONS:
            assert list(faults(templates, arrange_block(sized, templates, options).pages[1:])) == []
