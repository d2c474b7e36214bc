"""Remarks on sizes that are allowed and that nobody sews: mostly a unit or a digit too many.

In: a quilt's statements. Out: notes at the lengths. Inches.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from ..diagnostics.diagnostic import Diagnostic
from ..language import quilt_tree
from ..words.messages.quilts import shrinkage_unlikely, width_unlikely

BINDING_MOST: Final = Fraction(6)
SASHING_MOST: Final = Fraction(24)
BORDER_MOST: Final = Fraction(48)
OVER_MOST: Final = Fraction(24)
"""Inches: twice and more of the widest in use (common practice, no published source)."""

SHRINKS_MOST: Final = Fraction(1, 5)
"""Twice what loose flannel loses in its first wash (common practice, no published source)."""


def check_likely(quilt: quilt_tree.Quilt) -> Iterator[Diagnostic]:
    """A remark on every size beyond what is sewn."""
    for each in quilt.body:
        match each:
            case quilt_tree.FabricDef() if each.shrinks and SHRINKS_MOST < each.shrinks.share < 1:
                yield shrinkage_unlikely(each.shrinks.span, each.name.text, each.shrinks.share)
            case quilt_tree.Binding() if each.width.inches > BINDING_MOST:
                yield width_unlikely(each.width.span, "binding", each.width.inches)
            case quilt_tree.Sashing() if each.width.inches > SASHING_MOST:
                yield width_unlikely(each.width.span, "sashing", each.width.inches)
            case quilt_tree.Border() if each.width and each.width.inches > BORDER_MOST:
                yield width_unlikely(each.width.span, "border", each.width.inches)
            case quilt_tree.Backing() | quilt_tree.Batting() if each.over and each.over.inches > OVER_MOST:
                yield width_unlikely(each.over.span, "over", each.over.inches)
            case _:
                pass
