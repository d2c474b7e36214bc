"""How a quilt is finished once its top is sewn: its back, the three layers, the quilting, the binding.

What is done by hand here is common practice, with no published source; the sizes are the quilt's own.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from ...cutting.needs import BackingNeed, BindingNeed
from ...cutting.plan_model import CuttingPlan
from ...quilt.model import Quilt
from ...words.phrases import count_of
from ...words.rulers import length_text
from ..quilts.supplies import binding_length
from ..quilts.tables import fabric_titles
from .content import Chapter, List, Paragraph

TITLE: Final = "Finishing"

FOLDED: Final = Fraction(7, 4)
"""Inches: binding strips cut at least so wide go folded in half round the edge, narrower ones singly."""

LAID: Final = (
    "Tape the back down, face down and smooth, not stretched. Lay the batting on it, and the pressed top on "
    "that, face up, its middle on theirs. Baste from the middle out, with long stitches or safety pins a "
    "hand's width apart."
)

QUILTED: Final = (
    "Quilt from the middle out, by hand or by machine. Then take the basting out, and trim back and batting "
    "to the top's edge with square corners."
)

SEWN_ON: Final = (
    "Lay it on the front, raw edges even, and sew 1/4in from the edge; begin in the middle of a side and "
    "leave 8in hanging free. Stop 1/4in before each corner and lock the stitch; fold the strip straight up, "
    "then down along the next side, and sew on from the edge. Join the two ends where they meet."
)

TURNED: Final = (
    "Fold it over the edge to the back, and sew it down by hand just over the line of stitches; lay the "
    "corners in mitres."
)


def finish_chapter(quilt: Quilt, plan: CuttingPlan) -> Chapter:
    """The chapter."""
    unlike = Paragraph("Your top may measure a little more or less than the sizes here: go by your top.")
    return Chapter(TITLE, (unlike, List(tuple(_steps(quilt, plan)), "number")), joins=True)


def _steps(quilt: Quilt, plan: CuttingPlan) -> Iterator[str]:
    if quilt.backing is not None:
        yield _back_words(quilt.backing, plan)
    else:
        yield "Make a back larger than the top all round; it is not in this pattern."
    yield LAID
    yield QUILTED
    if quilt.binding is not None:
        yield _binding_words(quilt.binding, quilt, plan)
        yield SEWN_ON
        yield TURNED
    else:
        yield "Bind the edge; binding is not in this pattern."


def _back_words(backing: BackingNeed, plan: CuttingPlan) -> str:
    """How the back is joined from its panels."""
    step = plan.ruler_step
    size = f"{length_text(backing.width, step)} x {length_text(backing.height, step)}"
    panels = next((each.backing_panels for each in plan.fabrics if each.fabric == backing.fabric), ())
    if len(panels) < 2:
        return f"The back is one piece, {size}."
    along = length_text(panels[0][1], step)
    return (
        f"Sew the {len(panels)} panels of the back together along their sides of {along}, selvages cut off, "
        f"1/4in from the edge; press the {'seam' if len(panels) == 2 else 'seams'} open: {size}."
    )


def _binding_words(binding: BindingNeed, quilt: Quilt, plan: CuttingPlan) -> str:
    """How the binding is joined and folded."""
    joined = next((cut.pieces for cut in plan.cuts if cut.part == "binding"), 1)
    strips = count_of(joined, "strip")
    cloth = fabric_titles(quilt)[binding.fabric]
    length = binding_length(binding, plan.ruler_step)
    join = f"Join the {strips} of {cloth} on the bias" if joined > 1 else f"Take the strip of {cloth}"
    fold = (
        "fold it in half along its length, right side out"
        if binding.strip_width >= FOLDED
        else "fold one long edge 1/4in to the wrong side"
    )
    return f"{join}, {length} in all; press the joins open, then {fold}, and press."
