"""The tools that a quilt's own ways of cutting need."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...cutting.model import Template
from ...cutting.plan_model import Cut, CuttingPlan
from ...words.pages import tools as words
from ...words.say import Say


def by_rotary(plan: CuttingPlan) -> bool:
    """Whether anything is cut with the rotary cutter: any cut along a ruler."""
    return any(cut.kind != "template" for cut in plan.cuts)


def by_template(plan: CuttingPlan) -> tuple[Cut, ...]:
    """The cuts made round a template."""
    return tuple(cut for cut in plan.cuts if cut.kind == "template")


def tool_words(templates: Sequence[Template], plan: CuttingPlan, say: Say) -> Iterator[str]:
    """The tools, a line each. `templates`: of all blocks."""
    if by_rotary(plan):
        yield words.cutter(say)
        yield words.ruler(say, ruler_angles(plan))
    if by_template(plan):
        yield from words.TEMPLATE_TOOLS
        if any(template.dots for template in templates):
            yield words.hole_punch(say.on_ruler(templates[0].dot_width))
    elif templates:
        yield words.ALL_BY_RULER
    yield from words.SEWING_TOOLS
    if any(cut.part == "border" for cut in plan.cuts):
        yield words.TAPE


def ruler_angles(plan: CuttingPlan) -> list[float]:
    """The slants that the ruler must bear, each once, as they come. Degrees."""
    return list(dict.fromkeys(
        float(cut.angle)
        for cut in plan.cuts if cut.angle is not None and cut.kind != "template"
    ))  # fmt: skip
