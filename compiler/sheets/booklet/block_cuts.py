"""How the pieces of one block are cut: a cut for every template and fabric, by the ruler where it can be."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...cutting.methods.rotary import choose_cut, template_method_of
from ...cutting.model import FabricCount, Template
from ...cutting.needs import Need
from ...cutting.plan_model import Cut
from ...drafting.model import Draft
from ...geometry.edge import Point
from ...geometry.motion import turn_about
from ...measure.marks import RULER_STEP
from ...measure.tolerance import ROUNDED

ORIGIN = Point(Fraction(0), Fraction(0))


def block_cuts(draft: Draft, templates: Sequence[Template], step: Fraction = RULER_STEP) -> tuple[Cut, ...]:
    """A cut for each fabric of each template; `Cut.template` is the letter."""
    return tuple(_cut(draft, template, count, step) for template in templates for count in template.counts)


def _cut(draft: Draft, template: Template, count: FabricCount, step: Fraction) -> Cut:
    method = template_method_of(draft, template, step)
    if method.kind == "template":
        pieces = count.cut + count.reversed
        return Cut(0, count.fabric, "blocks", "template", method.width, method.height, pieces, pieces, 1,
                   method.excess, method.reason, template.label)  # fmt: skip
    return choose_cut(_need(draft, template, count), step, whole=draft.width)


def _need(draft: Draft, template: Template, count: FabricCount) -> Need:
    """The template's first piece, as its first arrow lies on the grain."""
    piece = draft.pieces[template.pieces[0] - 1]
    heading = template.grain[0].heading if template.grain else 0.0
    whole = Fraction(round(heading)) if abs(heading - round(heading)) < ROUNDED else heading
    lies = turn_about(ORIGIN, -whole)
    return Need(
        count.fabric, "blocks", template.label, tuple(lies.edge(side.edge) for side in piece.ring),
        tuple(side.allowance for side in piece.ring), count.cut, count.reversed, template.reversible,
        template.label, 0, template.label, holed=bool(piece.holes),
    )  # fmt: skip
