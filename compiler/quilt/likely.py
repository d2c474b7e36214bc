"""Remarks on sizes that are allowed and that nobody sews: mostly a unit or a digit too many.

In: a quilt's statements. Out: notes at the lengths. Inches.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, note
from ..diagnostics.source import Span
from ..language import quilt_tree
from ..words.numbers import ruler_text

BINDING_MOST: Final = Fraction(6)
SASHING_MOST: Final = Fraction(24)
BORDER_MOST: Final = Fraction(48)
OVER_MOST: Final = Fraction(24)
"""Inches: twice and more of the widest in use (common practice, no published source)."""

SHRINKS_MOST: Final = Fraction(1, 5)
"""Twice what loose flannel loses in its first wash (common practice, no published source)."""


def size_unlikely(span: Span, what: str) -> Diagnostic:
    """`binding 100in in sand`."""
    return note(
        "size-unlikely",
        f"{what}: is this meant?",
        span,
        help="It is taken as written. Look at the number and its unit.",
    )


def check_likely(quilt: quilt_tree.Quilt) -> Iterator[Diagnostic]:
    """A remark on every size beyond what is sewn."""
    for each in quilt.body:
        match each:
            case quilt_tree.FabricDef() if each.shrinks and SHRINKS_MOST < each.shrinks.share < 1:
                lost = f"{float(each.shrinks.share) * 100:.4g}%"
                yield size_unlikely(each.shrinks.span, f"`{each.name.text}` loses {lost} in the wash")
            case quilt_tree.Binding() if each.width.inches > BINDING_MOST:
                yield size_unlikely(each.width.span, f"A binding cut {ruler_text(each.width.inches)} wide")
            case quilt_tree.Sashing() if each.width.inches > SASHING_MOST:
                yield size_unlikely(each.width.span, f"Sashing {ruler_text(each.width.inches)} wide")
            case quilt_tree.Border() if each.width and each.width.inches > BORDER_MOST:
                yield size_unlikely(each.width.span, f"A border {ruler_text(each.width.inches)} wide")
            case quilt_tree.Backing() | quilt_tree.Batting() if each.over and each.over.inches > OVER_MOST:
                yield size_unlikely(each.over.span, f"{ruler_text(each.over.inches)} over on each side")
            case _:
                pass
