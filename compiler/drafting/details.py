"""The statements of a block that set its details: trims, allowances, dots, grain."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import hypot
from typing import TYPE_CHECKING

from ..diagnostics.source import Span
from ..language import tree
from ..words.messages import pieces as complain_pieces
from .context import Bench
from .ground import once
from .model import TrimRule, UnitPlacement
from .sketch import Placed

if TYPE_CHECKING:
    from .washed.model import Measured


ALLOWANCE = Fraction(1, 4)
"""Inches. The seam taught (SOURCES: University of Kentucky extension, 2021: 'a 1/4\" seam')."""

ALLOWANCE_MOST = Fraction(2)
"""Inches. A wider allowance is a slip of the pen."""


@dataclass(frozen=True)
class Details:
    """What a block says once about itself, or its default."""

    allowance: Fraction
    trim: tree.Trim | None
    faces: tree.Faces | None
    maker: tree.Maker | None
    allowances: tuple[tuple[Fraction, Span], ...] = ()

    @property
    def rule(self) -> TrimRule:
        """How points are trimmed."""
        plain, trim = TrimRule(), self.trim
        if trim is None:
            return plain
        return TrimRule(
            trim.style,
            trim.limit.inches if trim.limit else plain.limit,
            trim.dots.inches if trim.dots else plain.dots,
        )


def details_of(block: tree.Block, bench: Bench) -> Details:
    widths = [each for each in block.body if isinstance(each, tree.Allowance)]
    for each in widths:
        if each.width.inches > ALLOWANCE_MOST:
            width = each.width
            bench.say(complain_pieces.allowance_wide(width.span, width.inches, ALLOWANCE_MOST, ALLOWANCE))
    whole = once(tuple(each for each in widths if each.path is None), tree.Allowance, "allowance", bench)
    return Details(
        whole.width.inches if whole else ALLOWANCE,
        once(block.body, tree.Trim, "trim", bench),
        once(block.body, tree.Faces, "faces", bench),
        once(block.body, tree.Maker, "maker", bench),
        tuple((each.width.inches, each.width.span) for each in widths),
    )


def restored(block: tree.Block, bench: Bench) -> Measured | None:
    """What `restore` makes of a washed block; few blocks are, and need none of its code."""
    if not any(isinstance(each, tree.Washed) for each in block.body):
        return None
    from .washed.restore import restore

    return restore(block, bench)


def placement(placed: Placed) -> UnitPlacement:
    assert placed.unit is not None
    lies = placed.transform
    along = lies.a + lies.b
    scale = max(along, -along) if 0 in (lies.a, lies.b) else hypot(lies.a, lies.b)
    return UnitPlacement(
        placed.unit.draft.title,
        placed.unit.use.alias.text,
        placed.poses,
        placed.box,
        lies.turned % 360,
        lies.mirrors,
        scale,
        placed.origin,
    )
