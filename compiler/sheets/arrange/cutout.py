"""One template as it is packed: turned, labelled, with its words beside it where they do not fit inside."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import cos, radians, sin
from typing import Final

from ...cutting.model import Template
from ...measure.record import record
from ..page import Mark
from .beside import ARROWS_HIGH, GRAIN_TALL, Beside, column_wide, place_beside, words_box
from .label import Label, fit_label
from .options import SheetOptions
from .paths import Placement, Ring, Spot, flat_ring, straight
from .style import LEADER, SMALLEST, arrow_marks, line_mark, set_text
from .template_marks import TAG_DROP, beside_marks, headings_of, inner_room, outer_rings, template_marks

ARROW_HALF: Final = 11.0
"""Points: half the length of a grain arrow that stands beside the words."""


@record
class Cutout:
    """A template as it is packed: turned, labelled, with its words beside it where they do not fit inside.

    Places are those of a template turned about the block's own corner, before it is moved to its page.
    """

    template: Template
    turned: float
    label: Label
    beside: Beside | None
    ring: Ring  # its outline, turned


def outline_of(template: Template, turned: float, options: SheetOptions) -> Ring:
    """The outline of the paper piece, turned about the block's corner."""
    return flat_ring(outer_rings(template, options)[0], Placement(turned))


def cut_out(
    template: Template, turned: float, widest: float, options: SheetOptions, avoid: Sequence[Ring] = ()
) -> Cutout:
    """The template turned, with its label fitted clear of what is to be avoided. `widest` is the width of the
    page's body."""
    placement = Placement(turned)
    room = inner_room(template, placement).beside(*avoid)
    label = fit_label(template, room, headings_of(template, placement), options.say)
    ring = outline_of(template, turned, options)
    beside = None
    if label.beside:
        beside = place_beside(ring, words_box(label.beside, label.arrows_beside), widest)
    return Cutout(template, turned, label, beside, ring)


def cutout_marks(cutout: Cutout, dx: float, dy: float, options: SheetOptions) -> list[Mark]:
    """The marks of a template that is moved by (dx, dy) from where it was cut out."""
    label = _moved(cutout.label, dx, dy)
    marks = template_marks(cutout.template, Placement(cutout.turned, dx, dy), label, options)
    if cutout.beside:
        marks.extend(_words_beside(cutout, label, dx, dy))
    return marks


def _words_beside(cutout: Cutout, label: Label, dx: float, dy: float) -> list[Mark]:
    """The words, the leader, and the grain arrow where it too stands beside."""
    assert cutout.beside
    left, top, right, _bottom = cutout.beside.box
    subject = cutout.template.label
    wide, _ = words_box(label.beside, 0)
    marks = beside_marks(label, right - wide + dx, top + dy, subject)
    (x1, y1), (x2, y2) = cutout.beside.leader
    marks.append(line_mark(straight((x1 + dx, y1 + dy), (x2 + dx, y2 + dy)), "leader", LEADER, (), subject))
    for number, grain in enumerate(cutout.template.grain[: label.arrows_beside], 1):
        column, row = divmod(number - 1, ARROWS_HIGH)
        start = left + column * column_wide(label.arrows_beside) + dx
        middle = Spot(start + ARROW_HALF, top + GRAIN_TALL * (row + 0.5) + dy)
        turn = radians(grain.heading + cutout.turned)
        ux, uy = ARROW_HALF * sin(turn), -ARROW_HALF * cos(turn)
        ends = Spot(middle.x - ux, middle.y - uy), Spot(middle.x + ux, middle.y + uy)
        marks.extend(arrow_marks(*ends, "grain", subject))
        if label.arrows_beside > 1:
            x = start + 2 * ARROW_HALF + 4
            marks.append(
                set_text(x, middle.y + TAG_DROP, str(number), SMALLEST, True, role="label", subject=subject)
            )
    return marks


def _moved(label: Label, dx: float, dy: float) -> Label:
    top = label.top and Spot(label.top.x + dx, label.top.y + dy)
    arrows = tuple(arrow.moved(dx, dy) for arrow in label.arrows)
    return replace(label, top=top, arrows=arrows)
