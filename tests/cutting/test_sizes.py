"""Blocks at other sizes: which cuts lie on the ruler, and that scaling says what compiling anew would say."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.cutting.methods.rotary import template_method_of
from piecewright.cutting.sizes import always_templates, block_at, good_sizes, other_sizes
from piecewright.diagnostics.source import Source
from piecewright.language.edits import with_edits
from piecewright.language.parser import parse
from piecewright.language.rescale import rescaled
from piecewright.pipeline import CompiledBlock
from support import told
from support.check import DictShelf, compile_source
from support.library import LibraryShelf, library_sources

NINE = 'edition 1\nblock "Nine" { finished 9in  grid 3 x 3  alternate plain dark, plain light }\n'
TRIANGLES = (
    'edition 1\nblock "Pinwheel" { finished 6in  grid 2 x 2\n'
    "turn 4 about center { seam center -- A1  seam center -- B1 } }\n"
)
STAR = 'edition 1\nblock "Star" { finished 8in  seam top -- (1/3 from center to right) -- bottom }\n'
ARCH = 'edition 1\nblock "Arch" { finished 4in  seam left ~~ top around top-left }\n'


def one(text: str) -> CompiledBlock:
    made = compile_source(Source("block.block", text), DictShelf({}))
    assert made.value is not None, made.diagnostics
    return made.value[0]


def at_width(text: str, width: Fraction) -> str:
    """The text's first block, drafted that wide."""
    source = Source("block.block", text)
    file = parse(source).value
    made = compile_source(source, LibraryShelf()).value
    assert file is not None and made is not None
    return with_edits(text, rescaled(source, file.blocks[0], width / made[0].draft.width))


def widths(block: CompiledBlock) -> list[Fraction | float]:
    return [each.width for each in good_sizes(block.draft, block.templates)]


def test_a_nine_patch_is_cut_by_the_ruler_at_multiples_of_three() -> None:
    """Thirds of an inch lie on no eighth: so 3, 6, 9 ... and, of three times 1 1/8in, 3 3/8in (by hand)."""
    assert widths(one(NINE)) == [Fraction(3 * count, 8) for count in range(8, 65)]


def test_a_four_patch_of_triangles_keeps_the_trades_seven_eighths_at_every_whole_inch() -> None:
    """SOURCES 1.2: + 7/8in lies 0.0214in over the exact, which counts as on the ruler."""
    found = widths(one(TRIANGLES))
    assert set(range(3, 25)) <= set(found) and Fraction(13, 4) in found and Fraction(25, 8) not in found


@pytest.mark.parametrize("text", [NINE, TRIANGLES, STAR])
@pytest.mark.parametrize("step", [Fraction(1, 8), Fraction(1, 4), Fraction(25, 254)])
def test_every_size_that_is_called_on_the_ruler_is_listed(text: str, step: Fraction) -> None:
    block = one(text)
    listed = {each.width for each in good_sizes(block.draft, block.templates, step)}
    first, last = (3, 24) if step.denominator < 254 else (8 * Fraction(50, 127), 60 * Fraction(50, 127))
    for count in range(int(last / step) + 1):
        on_ruler = not block_at(block.draft, block.templates, max(count, 1) * step, step).off
        assert (count * step in listed) == (on_ruler and first <= count * step)


def test_how_far_a_cut_falls_off_is_told() -> None:
    """7in / 3 = 2.333in, + 1/2in = 2.833in; the next mark is 2 7/8in, 0.0417in more (by hand)."""
    block = one(NINE)
    size = block_at(block.draft, block.templates, Fraction(7))
    assert [(each.label, each.method.kind) for each in size.off] == [("A", "template")]
    assert size.off[0].off == pytest.approx(2.875 - 7 / 3 - 0.5, abs=2e-6)


def test_shapes_without_a_rule_are_templates_at_every_size_and_spoil_none() -> None:
    block = one(ARCH)
    sizes = good_sizes(block.draft, block.templates)
    assert len(always_templates(sizes[0])) == 2 and not other_sizes(block.draft, block.templates)


def test_a_window_is_what_makes_its_frame_a_template_at_every_size() -> None:
    window = one('edition 1\nblock "Window" {\nfinished 8in\nseam circle around center radius 2in\n}\n')
    reasons = [
        told.reason(each.method) for each in block_at(window.draft, window.templates, Fraction(12)).cuts
    ]
    assert reasons == ["it has a hole", "its sides are curved"]


def test_a_finer_ruler_has_at_least_the_sizes_of_a_coarser_one() -> None:
    block = one(NINE)
    coarse, fine = (
        {each.width for each in good_sizes(block.draft, block.templates, step)}
        for step in (Fraction(1, 4), Fraction(1, 16))
    )
    assert coarse <= fine


@given(st.fractions(2, 24, max_denominator=8), st.sampled_from([NINE, TRIANGLES, STAR]))
@settings(max_examples=40, deadline=None)
def test_a_size_is_told_as_the_block_drafted_at_that_size_is_cut(width: Fraction, text: str) -> None:
    block, drafted = one(text), one(at_width(text, width))
    told = block_at(block.draft, block.templates, width)
    assert (told.width, told.height) == (drafted.draft.width, drafted.draft.height)
    for cut, template in zip(told.cuts, drafted.templates, strict=True):
        method = template_method_of(drafted.draft, template)
        assert (cut.label, cut.method.kind) == (template.label, method.kind)
        if method.kind != "template":
            assert (cut.method.width, cut.method.height) == (method.width, method.height)


@given(st.fractions(1, 30, max_denominator=16), st.fractions(1, 30, max_denominator=16))
@settings(max_examples=30, deadline=None)
def test_there_and_back_again_is_the_same_text(first: Fraction, second: Fraction) -> None:
    """Exact fractions: no size drifts however often it is changed."""
    once = at_width(NINE.replace("9in", "9in x 9in"), first)
    assert at_width(at_width(once, second), first) == once


@pytest.mark.parametrize("source", library_sources(), ids=lambda each: each.name)
def test_every_library_block_resizes(source: Source) -> None:
    """The first block of each file, at one and a half times its size: pieces and templates stay, areas grow
    by nine quarters."""
    before = compile_source(source, LibraryShelf()).value
    assert before is not None
    draft = next(each.draft for each in before if not each.from_elsewhere)
    file = parse(source).value
    assert file is not None
    after = compile_source(
        Source(source.name, with_edits(source.text, rescaled(source, file.blocks[0], Fraction(3, 2)))),
        LibraryShelf(),
    ).value
    assert after is not None
    larger = next(each.draft for each in after if not each.from_elsewhere)
    assert [each.label for each in larger.shapes] == [each.label for each in draft.shapes]
    assert [float(each.area) for each in larger.pieces] == pytest.approx(
        [float(each.area) * 2.25 for each in draft.pieces]
    )
