"""A block at other sizes: which of its cuts lie on the ruler there, and which become templates.

Everything drafted scales, seam allowances do not: so a cut is on the ruler at one size and off it at the
next. Inches.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import ceil, floor
from typing import Final

from ..drafting.model import Draft
from ..geometry.motion import stretch
from ..measure.length import UNITS
from ..measure.marks import RULER_STEP, mark_up, metric
from ..measure.record import record
from ..measure.tolerance import Number
from .methods.method import Method, template_method
from .methods.rotary import lies_for_cutting, method_of
from .model import Template
from .reasons import HOLE

EXACT: Final = Fraction(1, 2**20)
"""Inches between the marks of a ruler on which every cut lies: it tells what a cut is, exactly."""

SMALLEST: Final = {"in": 3, "cm": 8}
LARGEST: Final = {"in": 24, "cm": 60}
"""Blocks are rarely made smaller or larger (common practice, no published source)."""


@record
class CutAt:
    """How one template's pieces are cut at a size.

    `off`: how far the exact cut lies under the ruler's next mark where no rule serves; else 0.
    `always`: no size has a rule for this shape. `lengths`: of a cut off the ruler, what would be measured.
    """

    label: str
    method: Method
    off: float
    always: bool
    lengths: tuple[Number, ...] = ()

    @property
    def on_ruler(self) -> bool:
        """Whether a rule serves, or none ever does."""
        return self.always or self.method.kind != "template"


@record
class BlockSize:
    """The block at one finished size."""

    width: Number
    height: Number
    cuts: tuple[CutAt, ...]

    @property
    def off(self) -> tuple[CutAt, ...]:
        """The cuts that fall off the ruler."""
        return tuple(each for each in self.cuts if not each.on_ruler)


def block_at(
    draft: Draft, templates: Sequence[Template], width: Number, step: Fraction = RULER_STEP
) -> BlockSize:
    """The block that wide, its height in proportion."""
    scale = width / draft.width
    return BlockSize(
        width, draft.height * scale, tuple(_cut_at(draft, each, scale, step) for each in templates)
    )


def _cut_at(draft: Draft, template: Template, scale: Number, step: Fraction) -> CutAt:
    piece = draft.pieces[template.pieces[0] - 1]
    carry = stretch(scale, scale).after(lies_for_cutting(template))
    outline = tuple(carry.edge(side.edge) for side in piece.ring)
    allowances = tuple(side.allowance for side in piece.ring)
    if piece.holes:
        return CutAt(template.label, template_method(outline, allowances, HOLE), 0.0, True)
    method = method_of(outline, allowances, step, draft.width * scale)
    if method.kind != "template":
        return CutAt(template.label, method, 0.0, False)
    exact = method_of(outline, allowances, EXACT)
    if exact.kind == "template":
        return CutAt(template.label, method, 0.0, True)
    lengths = _lengths(exact)
    return CutAt(template.label, method, max(_short(each, step) for each in lengths), False, lengths)


def _lengths(method: Method) -> tuple[Number, ...]:
    """What the cutter measures: of an equilateral triangle only its strip, since the angle does the rest."""
    return (method.height,) if method.kind == "equilateral-triangle" else (method.width, method.height)


def _short(length: Number, step: Fraction) -> float:
    """How far a length lies under the ruler's next mark."""
    return max(float(mark_up(length - 2 * EXACT, step)) - float(length), 0.0)


def good_sizes(
    draft: Draft, templates: Sequence[Template], step: Fraction = RULER_STEP
) -> tuple[BlockSize, ...]:
    """The sizes at which every ruled cut lies on the ruler: all there are from the smallest to the largest,
    as far apart as the ruler's own marks."""
    return tuple(each for each in _sizes(draft, templates, step, step) if not each.off)


def other_sizes(
    draft: Draft, templates: Sequence[Template], step: Fraction = RULER_STEP
) -> tuple[BlockSize, ...]:
    """The whole sizes at which some cut falls off the ruler."""
    return tuple(each for each in _sizes(draft, templates, step, unit_of(step)) if each.off)


def _sizes(
    draft: Draft, templates: Sequence[Template], step: Fraction, apart: Fraction
) -> Iterable[BlockSize]:
    smallest, largest = tried_from(step)
    for count in range(ceil(smallest / apart), floor(largest / apart) + 1):
        yield block_at(draft, templates, count * apart, step)


def unit_of(step: Fraction) -> Fraction:
    """An inch, or a centimetre for a ruler of such marks; in inches."""
    return UNITS["cm" if metric(step) else "in"]


def tried_from(step: Fraction) -> tuple[Fraction, Fraction]:
    """The smallest and the largest size that are tried, in inches."""
    unit = "cm" if metric(step) else "in"
    return SMALLEST[unit] * unit_of(step), LARGEST[unit] * unit_of(step)


def always_templates(size: BlockSize) -> tuple[CutAt, ...]:
    """The shapes that need a template at every size."""
    return tuple(each for each in size.cuts if each.always)
