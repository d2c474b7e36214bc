"""Every block of the library goes all the way: drafted, fitted together again, cut, sewn and resized; and no
two are one design under two names."""

from __future__ import annotations

from itertools import combinations

import pytest
from piecewright.cutting.methods.rotary import template_method_of
from piecewright.cutting.templates.making import make_templates
from piecewright.drafting.checks import check_refit
from piecewright.drafting.design import same_design
from piecewright.drafting.model import Draft
from piecewright.drafting.resize import resize
from piecewright.sewing.model import Assembly
from piecewright.sewing.order.assembly import assemble
from piecewright.sewing.proof.resew import prove
from support import told
from support.library import library_drafts

LIBRARY = tuple(library_drafts())
WIDTHS = (6, 9, 12)  # inches: the sizes most often asked for

SAME_DESIGN = ()
"""Titles that stand for one design: none; a second name is an `also` of the block."""


def all_the_way(draft: Draft) -> None:
    """Fits a block's pieces together, cuts them, finds how each template is cut, and sews the block again."""
    check_refit(draft.pieces, draft.outline)
    made = make_templates(draft)
    assert made.value is not None and made.diagnostics == ()
    methods = [template_method_of(draft, template) for template in made.value]
    assert all(told.reason(method) and method.width > 0 and method.height > 0 for method in methods)
    order = assemble(draft)
    proof = prove(draft, made.value, order).value
    assert proof is not None
    assert (proof.pieces, proof.seams) == (len(draft.pieces), len(draft.pieces) - 1 + rings_closed(order))


def rings_closed(order: Assembly) -> int:
    """How many rings are closed: each takes a seam more than it has joins."""
    return sum(step.batch for step in order.steps if step.seams == 2)


@pytest.mark.parametrize("title, draft", LIBRARY, ids=[title for title, _ in LIBRARY])
def test_it_is_cut_and_sewn_at_its_own_size_and_others(title: str, draft: Draft) -> None:
    all_the_way(draft)
    for width in WIDTHS:
        sized = resize(draft, width, draft.height * width / draft.width)
        assert float(sized.width) == pytest.approx(width)
        all_the_way(sized)


def test_there_are_200_blocks_or_more_each_title_once() -> None:
    titles = [title for title, _ in LIBRARY]
    assert len(titles) >= 200 and len(set(titles)) == len(titles)


def test_no_two_are_one_design_under_two_names() -> None:
    found = [
        (one, other)
        for (one, draft), (other, beside) in combinations(LIBRARY, 2)
        if same_design(draft, beside)
    ]
    assert found == list(SAME_DESIGN)
