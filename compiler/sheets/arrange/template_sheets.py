"""Template pages: every template once, at true size, packed with the words that belong to it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from ...cutting.model import Template
from ..page import Mark
from .beside import Beside, box_of, place_beside, words_box
from .furniture import Paper
from .label import Label
from .options import SheetOptions
from .paths import Placement, Spot, flat_ring, straight
from .room import Box
from .style import LEADER, arrow_marks, line_mark
from .template_marks import beside_marks, label_for, outer_rings, template_marks

GAP = 13.0
"""Points between templates: 1/8in for the scissors to pass, and the lines' own thickness and more."""


@dataclass(frozen=True, slots=True)
class Cutout:
    """A template as it is packed: turned, labelled, with its words beside it where they do not fit inside.

    Places are those of a template turned about the block's own corner, before it is moved to its page.
    """

    template: Template
    turned: float
    label: Label
    beside: Beside | None
    box: Box  # of outline and words


def cut_out(template: Template, turned: float, widest: float, options: SheetOptions) -> Cutout:
    """The template as it lies when turned, with its label fitted."""
    placement = Placement(turned)
    label = label_for(template, placement)
    ring = flat_ring(outer_rings(template, options)[0], placement)
    if not label.beside:
        return Cutout(template, turned, label, None, box_of(ring))
    beside = place_beside(ring, words_box(label.beside, label.arrow_beside), widest)
    left, top, right, bottom = beside.box
    return Cutout(template, turned, label, beside, box_of(ring, (Spot(left, top), Spot(right, bottom))))


def cutout_marks(cutout: Cutout, x: float, y: float, options: SheetOptions) -> list[Mark]:
    """The marks of a packed template whose box starts at (x, y)."""
    dx, dy = x - cutout.box[0], y - cutout.box[1]
    label = _moved(cutout.label, dx, dy)
    marks = template_marks(cutout.template, Placement(cutout.turned, dx, dy), label, options)
    if cutout.beside:
        marks.extend(_words_beside(cutout, label, dx, dy))
    return marks


def _words_beside(cutout: Cutout, label: Label, dx: float, dy: float) -> list[Mark]:
    """The words, the leader, and the grain arrow where it too stands beside."""
    assert cutout.beside
    left, top, right, bottom = cutout.beside.box
    subject = cutout.template.label
    wide, _ = words_box(label.beside, False)
    marks = beside_marks(label, right - wide + dx, top + dy, subject)
    (x1, y1), (x2, y2) = cutout.beside.leader
    marks.append(line_mark(straight((x1 + dx, y1 + dy), (x2 + dx, y2 + dy)), "leader", LEADER, (), subject))
    if label.arrow_beside:
        from math import cos, radians, sin

        middle = Spot(left + 11 + dx, top + 13 + dy)
        for grain in cutout.template.grain[:1]:
            turn = radians(grain.heading + cutout.turned)
            ux, uy = 11 * sin(turn), -11 * cos(turn)
            ends = Spot(middle.x - ux, middle.y - uy), Spot(middle.x + ux, middle.y + uy)
            marks.extend(arrow_marks(*ends, "grain", subject))
    return marks


def _moved(label: Label, dx: float, dy: float) -> Label:
    top = label.top and Spot(label.top.x + dx, label.top.y + dy)
    arrows = tuple((Spot(a.x + dx, a.y + dy), Spot(b.x + dx, b.y + dy)) for a, b in label.arrows)
    return replace(label, top=top, arrows=arrows)


def template_bodies(
    templates: Sequence[Template], paper: Paper, options: SheetOptions
) -> list[tuple[tuple[str, ...], list[Mark]]]:
    """The labels and marks of each template page."""
    left, top, right, bottom = paper.body
    cutouts = [cut_out(template, 0.0, right - left, options) for template in templates]
    pages: list[tuple[tuple[str, ...], list[Mark]]] = []
    for placed in _shelve(cutouts, right - left, bottom - top):
        marks: list[Mark] = []
        for cutout, x, y in placed:
            marks.extend(cutout_marks(cutout, left + x, top + y, options))
        pages.append((tuple(cutout.template.label for cutout, _, _ in placed), marks))
    return pages


def _shelve(cutouts: Sequence[Cutout], width: float, height: float) -> list[list[tuple[Cutout, float, float]]]:
    pages: list[list[tuple[Cutout, float, float]]] = [[]]
    x = y = tall = 0.0
    for cutout in cutouts:
        w, h = cutout.box[2] - cutout.box[0], cutout.box[3] - cutout.box[1]
        if x + w > width:
            x, y, tall = 0.0, y + tall + GAP, 0.0
        if y + h > height:
            pages.append([])
            x = y = tall = 0.0
        pages[-1].append((cutout, x, y))
        x, tall = x + w + GAP, max(tall, h)
    return pages
