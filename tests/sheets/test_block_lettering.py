"""Lettering on the picture of a block: the plain ground behind it covers no seam."""

from __future__ import annotations

import pytest
from piecewright.sheets.arrange.block_sheets import arrange_block
from piecewright.sheets.arrange.options import SheetOptions
from shapely.geometry import LineString, box
from shapely.ops import unary_union
from support.arranged import ends, paths, rings
from support.library import compiled, library_sources

NARROW = ("cherry-basket", "drunkards-path", "mariners-compass", "spiders-web", "snails-trail")


def seam_lines(page):
    """Every seam of the picture as lines, curves followed in small steps."""
    return unary_union([LineString(ring) for mark in paths(page, "seam") for ring in rings(mark)])


@pytest.mark.parametrize("name", NARROW)
def test_no_seam_is_covered_by_the_ground_of_a_letter(name):
    source = next(each for each in library_sources() if name in each.name)
    block = compiled(source).value[0]
    page = arrange_block(block.draft, block.templates, SheetOptions()).pages[0]
    seams, plates = seam_lines(page), paths(page, "plate")
    assert plates and not seams.is_empty
    for plate in plates:
        xs, ys = zip(*ends(plate), strict=True)
        assert not box(min(xs), min(ys), max(xs), max(ys)).intersects(seams)
