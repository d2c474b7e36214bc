"""Template pages: every template once, at true size, packed with the words that belong to it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import cos, radians, sin
from typing import Final

from ...cutting.model import Template
from ..packing import Item, Pose, fits, pack, turned_poses
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
"""Points between templates: 1/8in for scissors to pass, and what the lines' thickness and chords take."""

TURNS: Final = (0.0, 180.0, 90.0, 270.0)
"""Poses in the order they are liked: half turns keep the grain in line."""

SLANTS: Final = tuple(float(turn) for turn in range(1, 180))
"""Turns tried for a template longer than the page that may lie across it: better than joining paper."""


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
    return Cutout(
        template, turned, label, place_beside(ring, words_box(label.beside, label.arrow_beside), widest), ring
    )


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
    """Every template once, on as few pages as the packer finds. Each must fit a page's body in some pose."""
    left, top, right, bottom = paper.body
    size = (right - left, bottom - top)
    tries = [_first_tries(template, size, options) for template in templates]
    while True:
        placements = pack([_item(each) for each in tries], *size, GAP)
        # A label fitted in one pose usually fits in all, so most poses are only tried once they are chosen.
        surprises = [tries[each.item].try_pose(each.pose, size[0], options) for each in placements]
        if not any(surprises):
            return _pages(placements, tries, left, top, options)


@dataclass(frozen=True, slots=True)
class Tries:
    """The poses open to a template, and those in which its label was fitted so far."""

    template: Template
    ring: Ring  # its outline, unturned
    turns: tuple[float, ...]
    cutouts: dict[float, Cutout]

    def try_pose(self, pose: int, widest: float, options: SheetOptions) -> bool:
        """Whether trying the pose shows that words must stand beside, of which the packer did not know."""
        turn = self.turns[pose]
        if turn in self.cutouts:
            return False
        self.cutouts[turn] = cut_out(self.template, turn, widest, options)
        return self.cutouts[turn].beside is not None


def _first_tries(template: Template, size: tuple[float, float], options: SheetOptions) -> Tries:
    """The template unturned; in every pose, where it needs words beside it or must lie aslant."""
    upright = cut_out(template, 0.0, size[0], options)
    first = Tries(template, upright.ring, TURNS, {0.0: upright})
    if upright.beside is None and fits(_item(first), *size):
        return first
    every = Tries(
        template, upright.ring, TURNS, {turn: cut_out(template, turn, size[0], options) for turn in TURNS}
    )
    if fits(_item(every), *size):
        return every
    open_turns = [pose.turned for pose in turned_poses(upright.ring, SLANTS) if fits(Item((pose,)), *size)]
    slanted = {
        turn: cut_out(template, turn, size[0], options)
        for turn in open_turns[:: max(1, len(open_turns) // 4)]
    }
    return Tries(template, upright.ring, tuple(slanted) or TURNS, slanted)


def can_lie(template: Template, paper: Paper, options: SheetOptions) -> bool:
    """Whether the template fits a page in some pose; one that does not must be tiled."""
    left, top, right, bottom = paper.body
    return fits(
        _item(_first_tries(template, (right - left, bottom - top), options)), right - left, bottom - top
    )


def _item(tries: Tries) -> Item:
    """What the packer is told: for each pose the outline, and the words and leader beside it."""
    bare = turned_poses(tries.ring, tries.turns)
    return Item(tuple(_pose(pose, tries.cutouts.get(pose.turned)) for pose in bare))


def _pose(bare: Pose, cutout: Cutout | None) -> Pose:
    if cutout is None or cutout.beside is None:
        return bare
    words = box_ring(cutout.beside.box)
    return replace(bare, rings=(*bare.rings, words, arrow_ring(cutout.beside.leader)))


def _pages(
    placements: Sequence[Packed],
    tries: Sequence[Tries],
    left: float,
    top: float,
    options: SheetOptions,
) -> list[TemplatePage]:
    """The marks of every page, its templates in the templates' own order."""
    count = 1 + max((each.page for each in placements), default=-1)
    pages = [
        TemplatePage(tuple(p.item for p in placements if p.page == number), []) for number in range(count)
    ]
    for each in placements:
        cutout = tries[each.item].cutouts[tries[each.item].turns[each.pose]]
        pages[each.page].marks.extend(cutout_marks(cutout, left + each.dx, top + each.dy, options))
    return sorted(pages, key=lambda page: page.templates)
