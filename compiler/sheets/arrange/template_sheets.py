"""Template pages: every template once, at true size, packed with the words that belong to it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from ...cutting.model import Template
from ...measure.record import record
from ..packing.packing import Cover, Item, fits, pack, useful_turns
from ..packing.packing import Placement as Packed
from ..page import Mark
from .cutout import Cutout, cut_out, cutout_marks, outline_of
from .furniture import Paper
from .label import arrow_ring
from .options import SheetOptions
from .paths import Ring, Spot
from .room import box_ring

GAP: Final = 11.0
"""Points between templates: 1/8in for scissors to pass, and what the lines' thickness and chords take."""

TURNS: Final = (0.0, 180.0, 90.0, 270.0)

SEVERAL: Final = 40  # templates; up to so many, turns that lay a long side level are tried besides TURNS
MANY: Final = 150  # templates; beyond, half turns are no longer tried

SLANTS: Final = tuple(float(turn) for turn in range(1, 180))
"""Turns tried for a template longer than the page that may lie across it: better than joining paper."""

FEW_SLANTS: Final = 4  # of the turns that serve, so many are offered to the packer

UPRIGHT: Final = 0.5  # degrees: grain nearer to upright than this runs the sheet's common way

LOOKS: Final = 3  # decimals of a point to which two poses must agree to be one
ROUNDING: Final = 6  # decimals of a point: a turn's rounding noise is far smaller, any real step far larger


@record
class TemplatePage:
    """One page of templates: which they are (counted from 0, in order), and their marks."""

    templates: tuple[int, ...]
    marks: list[Mark]


@record
class TemplatePages:
    """The pages of the templates that fit a page, and the numbers of those that must be tiled."""

    pages: list[TemplatePage]
    oversize: list[int]


@record
class Tries:
    """The poses open to a template, and those in which its label was fitted so far: one of these fits the
    page with all its words, for words set beside may make any other too large."""

    number: int
    template: Template
    outlines: tuple[Cover, ...]
    cutouts: dict[float, Cutout]

    def try_pose(self, pose: int, widest: float, options: SheetOptions) -> bool:
        """Whether trying the pose shows that words must stand beside, of which the packer did not know."""
        turn = self.outlines[pose].turned
        if turn in self.cutouts:
            return False
        self.cutouts[turn] = cut_out(self.template, turn, widest, options)
        return self.cutouts[turn].beside is not None

    def tried_until_one_fits(self, size: tuple[float, float], options: SheetOptions) -> bool:
        """Tries the poses in order up to the first that fits the page with its words; False: none does."""
        for pose, outline in enumerate(self.outlines):
            if fits(Item((outline,)), *size):
                self.try_pose(pose, size[0], options)
                if fits(Item((_pose(outline, self.cutouts[outline.turned]),)), *size):
                    return True
        return False


def template_pages(templates: Sequence[Template], paper: Paper, options: SheetOptions) -> TemplatePages:
    """Every template that fits a page once, on as few pages as the packer finds."""
    left, top, right, bottom = paper.body
    size = (right - left, bottom - top)
    found = [
        _first_tries(number, template, _turns_for(template, len(templates), options), size, options)
        for number, template in enumerate(templates)
    ]
    tries = [each for each in found if each is not None]
    while True:
        placements = pack([_item(each) for each in tries], *size, GAP)
        # A label fitted in one pose usually fits in all, so most poses are only tried once they are chosen.
        surprises = [tries[each.item].try_pose(each.pose, size[0], options) for each in placements]
        if not any(surprises):
            break
    oversize = [number for number, each in enumerate(found) if each is None]
    return TemplatePages(_pages(placements, tries, left, top, options), oversize)


def _turns_for(template: Template, count: int, options: SheetOptions) -> Sequence[float]:
    """The turns offered to the packer: the more templates, the fewer, for each costs time."""
    if count > MANY:
        return (0.0, 90.0)
    return TURNS if count > SEVERAL else useful_turns(_rounded(outline_of(template, 0.0, options)))


def _first_tries(
    number: int, template: Template, turns: Sequence[float], size: tuple[float, float], options: SheetOptions
) -> Tries | None:
    """The template with its label in the first turn that suits the page; in every quarter turn, where it
    needs words beside it, or aslant, where it is too long for the page. None where it fits in no pose."""
    upright = cut_out(template, 0.0, size[0], options)
    if upright.beside is None:
        first = Tries(number, template, _outlines(template, turns, options), {0.0: upright})
        if first.tried_until_one_fits(size, options):
            return first
    every = _tried(number, template, TURNS, size[0], options)
    if fits(_item(every), *size):
        return every
    slants = [each.turned for each in _outlines(template, SLANTS, options) if fits(Item((each,)), *size)]
    few = slants[:: max(1, len(slants) // FEW_SLANTS)]
    slanted = _tried(number, template, few, size[0], options)
    return slanted if few and fits(_item(slanted), *size) else None


def _tried(
    number: int, template: Template, turns: Sequence[float], widest: float, options: SheetOptions
) -> Tries:
    """The template with its label fitted in every one of the turns."""
    outlines = _outlines(template, turns, options)
    cutouts = {each.turned: cut_out(template, each.turned, widest, options) for each in outlines}
    return Tries(number, template, outlines, cutouts)


def _outlines(template: Template, turns: Sequence[float], options: SheetOptions) -> tuple[Cover, ...]:
    """The outline in each of the turns, those left out that cover what an earlier one covers.

    It runs along with others where its grain stands upright.
    """
    poses: dict[tuple[Spot, ...], Cover] = {}
    for turn in turns:
        ring = _rounded(outline_of(template, turn, options))
        left, top = min(x for x, _ in ring), min(y for _, y in ring)
        looks = sorted(Spot(round(x - left, LOOKS), round(y - top, LOOKS)) for x, y in ring)
        headings = [(grain.heading + turn + UPRIGHT) % 180 for grain in template.grain]
        along = not headings or min(headings) <= 2 * UPRIGHT
        poses.setdefault(tuple(looks), Cover(turn, (ring,), along))
    return tuple(poses.values())


def _item(tries: Tries) -> Item:
    """What the packer is told: for each pose the outline, and the words and leader beside it."""
    return Item(tuple(_pose(outline, tries.cutouts.get(outline.turned)) for outline in tries.outlines))


def _pose(outline: Cover, cutout: Cutout | None) -> Cover:
    """The outline, with what is known to stand beside it."""
    if cutout is None or cutout.beside is None:
        return outline
    words = (box_ring(cutout.beside.box), arrow_ring(*cutout.beside.leader))
    return replace(outline, rings=(*outline.rings, *map(_rounded, words)))


def _rounded(ring: Ring) -> Ring:
    """The ring without the rounding noise of a turn, so that sides are level that should be."""
    return tuple(Spot(round(x, ROUNDING), round(y, ROUNDING)) for x, y in ring)


def _pages(
    placements: Sequence[Packed], tries: Sequence[Tries], left: float, top: float, options: SheetOptions
) -> list[TemplatePage]:
    """The marks of every page, its templates in the templates' own order."""
    pages: list[TemplatePage] = []
    for page in range(1 + max((each.page for each in placements), default=-1)):
        marks: list[Mark] = []
        placed = [each for each in placements if each.page == page]
        for each in placed:
            chosen = tries[each.item]
            cutout = chosen.cutouts[chosen.outlines[each.pose].turned]
            marks.extend(cutout_marks(cutout, left + each.dx, top + each.dy, options))
        pages.append(TemplatePage(tuple(tries[each.item].number for each in placed), marks))
    return sorted(pages, key=lambda page: page.templates)
