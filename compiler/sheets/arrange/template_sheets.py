"""Template pages: every template once, at true size, packed with the words that belong to it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import cos, radians, sin
from typing import Final

from ...cutting.model import Template
from ..packing import Item, Pose, pack, turned_poses
from ..packing import Placement as Packed
from ..page import Mark
from .beside import Beside, place_beside, words_box
from .furniture import Paper
from .label import Label, arrow_ring
from .options import SheetOptions
from .paths import Placement, Ring, Spot, flat_ring, straight
from .room import box_ring
from .style import LEADER, arrow_marks, line_mark
from .template_marks import beside_marks, label_for, outer_rings, template_marks

GAP: Final = 11.0
"""Points between templates: 1/8in for scissors to pass, and what the lines' thickness and chords take of it."""

TURNS: Final = (0.0, 180.0, 90.0, 270.0)
"""Poses in the order they are liked: half turns keep the grain in line."""


@dataclass(frozen=True, slots=True)
class Cutout:
    """A template as it is packed: turned, labelled, with its words beside it where they do not fit inside.

    Places are those of a template turned about the block's own corner, before it is moved to its page.
    """

    template: Template
    turned: float
    label: Label
    beside: Beside | None
    ring: Ring  # its outline, turned


def cut_out(template: Template, turned: float, widest: float, options: SheetOptions) -> Cutout:
    """The template as it lies when turned, with its label fitted."""
    placement = Placement(turned)
    label = label_for(template, placement)
    ring = flat_ring(outer_rings(template, options)[0], placement)
    if not label.beside:
        return Cutout(template, turned, label, None, ring)
    return Cutout(template, turned, label, place_beside(ring, words_box(label.beside, label.arrow_beside), widest), ring)


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
    left, top, right, bottom = cutout.beside.box
    subject = cutout.template.label
    wide, _ = words_box(label.beside, False)
    marks = beside_marks(label, right - wide + dx, top + dy, subject)
    (x1, y1), (x2, y2) = cutout.beside.leader
    marks.append(line_mark(straight((x1 + dx, y1 + dy), (x2 + dx, y2 + dy)), "leader", LEADER, (), subject))
    if label.arrow_beside:
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


@dataclass(frozen=True, slots=True)
class TemplatePage:
    """One page of templates: which they are (counted from 0, in order), and their marks."""

    templates: tuple[int, ...]
    marks: list[Mark]


def template_pages(templates: Sequence[Template], paper: Paper, options: SheetOptions) -> list[TemplatePage]:
    """Every template once, on as few pages as the packer finds. Each must fit the page's body in some pose."""
    left, top, right, bottom = paper.body
    wide, tall = right - left, bottom - top
    cutouts = [_poses(template, wide, options) for template in templates]
    while True:
        placements = pack([_item(poses) for poses in cutouts], wide, tall, GAP)
        # A label fitted in one pose usually fits in all, so most poses are only tried once they are chosen.
        untried = [each for each in placements if _turn(each) not in cutouts[each.item]]
        surprises = False
        for each in untried:
            poses = cutouts[each.item]
            poses[_turn(each)] = cut_out(templates[each.item], _turn(each), wide, options)
            surprises = surprises or poses[_turn(each)].beside is not None
        if not surprises:
            return _pages(placements, cutouts, left, top, options)


def _poses(template: Template, wide: float, options: SheetOptions) -> dict[float, Cutout]:
    """The template unturned; in every pose, where it needs words beside it."""
    upright = cut_out(template, 0.0, wide, options)
    if upright.beside is None:
        return {0.0: upright}
    return {0.0: upright} | {turn: cut_out(template, turn, wide, options) for turn in TURNS[1:]}


def _item(poses: Mapping[float, Cutout]) -> Item:
    """What the packer is told: for each pose the outline, and the words and leader beside it."""
    upright = poses[0.0]
    turned = dict(zip(TURNS, turned_poses(upright.ring, TURNS), strict=True))
    return Item(tuple(_pose(turned[turn], poses.get(turn)) for turn in TURNS))


def _pose(bare: Pose, cutout: Cutout | None) -> Pose:
    if cutout is None or cutout.beside is None:
        return bare
    words = box_ring(cutout.beside.box)
    return replace(bare, rings=(*bare.rings, words, arrow_ring(cutout.beside.leader)))


def _turn(placement: Packed) -> float:
    return TURNS[placement.pose]


def _pages(
    placements: Sequence[Packed],
    cutouts: Sequence[Mapping[float, Cutout]],
    left: float,
    top: float,
    options: SheetOptions,
) -> list[TemplatePage]:
    """The marks of every page, its templates in the templates' own order."""
    count = 1 + max((each.page for each in placements), default=-1)
    pages = [TemplatePage(tuple(p.item for p in placements if p.page == number), []) for number in range(count)]
    for each in placements:
        cutout = cutouts[each.item][_turn(each)]
        pages[each.page].marks.extend(cutout_marks(cutout, left + each.dx, top + each.dy, options))
    return sorted(pages, key=lambda page: page.templates)
