"""What `resize` says: at which sizes a block's cuts lie on the ruler, and what happens at others."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from ...cutting.model import Template
from ...cutting.sizes import BlockSize, always_templates, good_sizes, other_sizes
from ...diagnostics.visible import visible
from ...drafting.model import Draft
from ...measure.tolerance import Number
from ...words.say import Say, by_ruler
from ...words.work.reasons import reason_words
from ...words.work.sizes import (
    HEADS,
    OTHERS,
    always_words,
    at_size,
    cut_words,
    drafted_words,
    good_lines,
    more_words,
    size_cells,
    title_words,
)
from ..setting.text import plain_table
from ..setting.text_table import wrapped

LISTED: Final = 12
"""Sizes off the ruler that are shown, the best first: more than that nobody compares."""


def sizes_text(draft: Draft, templates: Sequence[Template], ruler: Fraction) -> str:
    """The sizes at which every cut lies on the ruler, then the others, the best of them first."""
    say = by_ruler(ruler)
    good, others = good_sizes(draft, templates, ruler), ranked(other_sizes(draft, templates, ruler))
    lines = _head_lines(say, draft, good, others)
    always = always_templates((*good, *others)[0])
    if always:
        lines += ["", always_words(len(always))]
        for each in always:
            lines += wrapped(f"{each.label}: {reason_words(say, each.method.reason)}", "  ", "    ")
    if others:
        lines += ["", OTHERS, *plain_table(HEADS, [size_cells(say, each) for each in others[:LISTED]])]
        if len(others) > LISTED:
            lines.append(f"  {more_words(len(others) - LISTED)}")
    return "\n".join(lines)


def _head_lines(say: Say, draft: Draft, good: Sequence[BlockSize], others: Sequence[BlockSize]) -> list[str]:
    """The block and its size as drafted, and the sizes cut by the ruler."""
    lines = [*wrapped(title_words(visible(draft.title), draft.version)), drafted_words(say, draft), ""]
    for each in good_lines(say, good, others):
        lines += wrapped(each)
    return lines


def ranked(sizes: Sequence[BlockSize]) -> list[BlockSize]:
    """Those with the fewest cuts off the ruler first, then those nearest to it."""

    def order(size: BlockSize) -> tuple[int, float, Number]:
        return len(size.off), round(max(each.off for each in size.off), 6), size.width

    return sorted(sizes, key=order)


def size_text(draft: Draft, templates: Sequence[Template], size: BlockSize, ruler: Fraction) -> str:
    """The sizes cut by the ruler, then what happens at one size: how each template's pieces are cut."""
    say = by_ruler(ruler)
    good, others = good_sizes(draft, templates, ruler), other_sizes(draft, templates, ruler)
    lines = [*_head_lines(say, draft, good, others), at_size(say, size), ""]
    for each in size.cuts:
        lines += wrapped(f"{each.label}: {cut_words(say, each)}", "  ", "    ")
    return "\n".join(lines)
