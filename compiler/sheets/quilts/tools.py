"""The tools that a quilt's own ways of cutting need, and what to mind with them.

Safety words: keep the cutter from children, blade closed, adults beside young makers, the iron on its heel
and
unplugged (guides of university extension services; common to several makers' pages).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...cutting.model import Template
from ...cutting.plan_model import Cut, CuttingPlan
from ...words.numbers import degrees_text
from ...words.rulers import length_text

LONG_RULER: Final = 24.0
"""Inches: the length of a ruler that reaches across folded cloth (common practice, no published source)."""


def by_rotary(plan: CuttingPlan) -> bool:
    """Whether anything is cut with the rotary cutter: any cut along a ruler."""
    return any(cut.kind != "template" for cut in plan.cuts)


def by_template(plan: CuttingPlan) -> tuple[Cut, ...]:
    """The cuts made round a template."""
    return tuple(cut for cut in plan.cuts if cut.kind == "template")


def tool_words(templates: Sequence[Template], plan: CuttingPlan) -> Iterator[str]:
    """The tools, a line each. `templates`: of all blocks."""
    if by_rotary(plan):
        step = length_text(plan.ruler_step, plan.ruler_step)
        yield "Rotary cutter with a sharp blade, and a self-healing mat, 18in x 24in or larger."
        angles = ruler_angles(plan)
        lines = f", with lines at {' and '.join(angles)}" if angles else ""
        yield (
            f"Acrylic ruler {LONG_RULER:.0f}in long, marked every {step}{lines}, thick enough that the "
            f"blade does not "
            "ride up on it; a square ruler helps with small squares."
        )
    if by_template(plan):
        yield "Template plastic or card, paper scissors, glue or tape, and a sharp pencil, for the templates."
        yield "Fabric scissors, for what is cut round templates."
        if any(template.dots for template in templates):
            width = length_text(templates[0].dot_width, plan.ruler_step)
            yield f"Hole punch, {width}, or a thick needle, for the dots on the templates."
    elif templates:
        yield "Every piece here is cut by the ruler; the template sheets are for checking or handwork."
    yield "Sewing machine or needles, pins, thread, and a seam ripper."
    yield "Iron and pressing board."
    if any(cut.part == "border" for cut in plan.cuts):
        yield "Measuring tape: measure the top through its middle before you trim the border strips."


def ruler_angles(plan: CuttingPlan) -> list[str]:
    """The slants that the ruler must bear, each once, as they come."""
    return list(dict.fromkeys(
        degrees_text(float(cut.angle))
        for cut in plan.cuts if cut.angle is not None and cut.kind != "template"
    ))  # fmt: skip


def safety_words(rotary: bool) -> Iterator[str]:
    """What to mind, with the rotary cutter or without; the makers' own instructions come first."""
    yield "Follow the instructions that came with your tools; they come before anything said here."
    if rotary:
        yield (
            "The rotary cutter is as sharp as a razor. Close its guard after every cut, cut away from "
            "yourself, keep your "
            "fingers off the ruler’s edge, and store it closed, out of children’s reach."
        )
        yield "A young maker uses the rotary cutter and the iron only with an adult beside them."
        yield "Store the mat flat, away from heat and direct sun; never iron on it."
    else:
        yield "A young maker uses blades and the iron only with an adult beside them."
    yield "Scissors: pass them handles first. Keep pins and needles in a cushion, not in the mouth."
    yield "The iron: stand it on its heel, never leave it hot and alone, and unplug it when you are done."
