"""Remarks on cuts that leave the ruler's marks as a block is used at another size than its own.

In: a draft, its templates, and how wide the block, or a unit in it, was drafted. Allowances stay as they are
while all else scales, so a cut on a mark at one size may lie between two at another. Inches.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..diagnostics.diagnostic import Diagnostic
from ..drafting.model import Draft
from ..measure.marks import RULER_STEP, mark_up
from ..measure.tolerance import Number, near
from ..words.messages.templates import cuts_leave_ruler
from .model import Template
from .sizes import block_at


def left_the_ruler(
    draft: Draft, templates: Sequence[Template], drafted: Number
) -> tuple[tuple[str, Number], ...]:
    """The templates that have no rule at the draft's width and had one when it was `drafted` wide, each with
    a length of its cut that lies between two marks."""
    now = {each.label: each.lengths for each in block_at(draft, templates, draft.width).off}
    if not now:
        return ()
    before = {each.label for each in block_at(draft, templates, drafted).off}
    labels = [each.label for each in templates if each.label in now and each.label not in before]
    return tuple((label, max(now[label], key=_off_its_mark)) for label in labels)


def _off_its_mark(length: Number) -> float:
    return float(mark_up(length, RULER_STEP) - length)


def check_units(draft: Draft, templates: Sequence[Template]) -> Iterator[Diagnostic]:
    """Remarks on the units of a block, each once at each size. Stretched ones have other shapes."""
    told: set[tuple[str, str]] = set()
    for unit in draft.units:
        key = (unit.title, f"{float(unit.scale):.6f}")
        if unit.origin is None or near(unit.scale, 1) or "stretched" in unit.poses or key in told:
            continue
        told.add(key)
        own = [each for each in templates if _is_of(draft, each, unit.title)]
        left = left_the_ruler(draft, own, draft.width / unit.scale)
        if left:
            yield cuts_leave_ruler(unit.origin, unit.title, left)


def _is_of(draft: Draft, template: Template, title: str) -> bool:
    return any(draft.pieces[number - 1].unit == title for number in template.pieces)
