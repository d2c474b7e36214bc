"""A block alone is planned as a quilt of one."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.cutting.plans.yardage import Margin
from piecewright.diagnostics.source import Source
from piecewright.measure.marks import RULER_STEP
from piecewright.planning import Cutting, plan_block
from piecewright.words.work.cloth import bought_words
from support.check import DictShelf, compile_source
from support.library import compiled, library_sources
from support.replay import replay

CUTTING = Cutting(RULER_STEP, Margin())
FILES = library_sources()


def block_of(text):
    (block,) = compile_source(Source("a.block", text), DictShelf({})).value
    return block


def sold(text):
    """Width and height of the piece of cloth each role takes, or the length to buy."""
    plan = plan_block(block_of(text), CUTTING).plan
    return {
        each.fabric: (each.piece.width, each.piece.height) if each.piece else bought_words(each)
        for each in plan.fabrics
    }


@pytest.mark.parametrize("source", FILES, ids=[source.name for source in FILES])
def test_every_library_block_is_cut_from_its_own_cloth(source):
    """Every fabric of every template is a row of the chart; cut by the plan's slices alone, the cloth gives
    as many pieces as the templates say; and every piece of the block is cut."""
    for block in compiled(source).value:
        if block.from_elsewhere:
            continue
        planned = plan_block(block, CUTTING)
        quilt, plan = planned.quilt, planned.plan
        rows = [(each.label, count.fabric, count.cut, count.reversed)
                for each in block.templates for count in each.counts]  # fmt: skip
        assert [(each.label, each.fabric, each.count, each.reversed) for each in quilt.needs] == rows
        made = Counter()
        for fabric in plan.fabrics:
            made += replay(plan, fabric)
        assert [made[at] >= cut.pieces for at, cut in enumerate(plan.cuts)] == [True] * len(rows)
        assert sum(need.count + need.reversed for need in quilt.needs) == len(block.draft.pieces)
        assert planned.assembly.proof == block.proof


def test_the_smallest_piece_that_shops_cut_is_taken():
    """Two legs of 3in and 7/8in make a square of 3 7/8in, for two triangles (common practice); 5in and 10in
    squares are sold in packs; strips longer than a fat quarter come off the bolt."""
    half = 'block "Half" { finished %s seam top-right -- bottom-left piece a at top-left in dark %s }'
    rest = "piece b at bottom-right in pale"
    assert sold(half % ("3in", rest)) == {"dark": (5, 5), "pale": (5, 5)}
    assert sold(half % ("6in", rest)) == {"dark": (10, 10), "pale": (10, 10)}
    assert sold(half % ("12in", rest)) == {"dark": (21, 18), "pale": (21, 18)}
    assert sold('block "Bar" { finished 30in x 2in piece a at center in dark }') == {"dark": "1/8 yd"}


def test_what_is_sold_cut_holds_a_plan_of_its_own():
    """Planned with that piece as all the cloth there is, nothing is missing."""
    for source in FILES[::12]:
        for block in compiled(source).value:
            planned = plan_block(block, CUTTING)
            pieces = {each.fabric: each.piece for each in planned.plan.fabrics}
            cloths = tuple(
                replace(each, scraps=(pieces[each.name],)) if pieces[each.name] else each
                for each in planned.quilt.fabrics
            )
            again = plan_cutting(replace(planned.quilt, fabrics=cloths)).value
            for fabric in again.fabrics:
                cuts = {at for at, cut in enumerate(again.cuts) if cut.fabric == fabric.fabric}
                assert set(replay(again, fabric)) == cuts


def test_a_slanted_piece_takes_cloth_as_long_as_it_is_itself():
    """4 1/2in from point to point, it is cut 4.5in + 0.25in (2 + 2 sqrt 2) = 5.707in long (derived), though
    its cuts are but 2 5/8in apart: a square of 5in does not hold it."""
    leaning = "seam A2 -- B1 seam C2 -- D1 piece a at between A2, B1, D1, C2 in dark"
    assert sold(f'block "B" {{ grid 8 x 1 of 1 1/2in {leaning} }}')["dark"] == (10, 10)


def test_a_piece_wider_than_cloth_is_usable_takes_wider_cloth():
    (plan,) = plan_block(
        block_of('block "B" { finished 50in piece a at center in dark }'), CUTTING
    ).plan.fabrics
    assert plan.usable_width == Fraction(51)
    assert plan.used >= Fraction(101, 2)
