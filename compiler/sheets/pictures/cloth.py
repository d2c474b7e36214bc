"""A picture of one cloth, true to scale: every cut, every piece with its letter, what is left over in grey.

In: a cloth's plan and the strips of it to show, for a long cloth goes on over several pages. Across the
page is
across the cloth.

       4in |1  ┌──────┬──────┬──────┬───┐    strip 1 of 4in; step 3 cuts it
           |   │3  a  │   a  │   a  │▒▒▒│
       3in |2  ├──────┴─┬────┴───┬──┴───┤
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Final

from ...cutting.plan_model import ClothPlan, CuttingPlan, PlacedCut, Slice, Strip
from ...cutting.plans.poses import posed
from ...geometry.pose import Pose
from ...measure.length import POINTS_PER_INCH
from ...measure.record import record
from ...measure.tolerance import NEAR, Number
from ...words.say import Say
from ..arrange.paths import Ring, Spot, box_path, closed, straight
from ..arrange.room import Box, Line, Room, middle_of, place_lines
from ..arrange.style import BLACK, LABEL, SMALLEST, WHITE, grey_text, line_mark, measure, set_text
from ..drawing.lettering import cap_height
from ..page import Mark, PathMark
from ..quilts.steps import steps_of
from ..quilts.tables import CutRow

LEFT_OVER: Final = (0.82, 0.82, 0.82)
SLICE: Final = 0.9  # points of a cut from selvage to selvage
SUB_CUT: Final = 0.45
PIECE: Final = 0.6
DIAGONAL: Final = 0.3
DIAGONAL_DASH: Final = (2.0, 2.0)
STRIP_ROOM: Final = 46.0
"""Points left of the cloth for the strips' numbers and widths."""

LEAST_STRIP: Final = 7.5  # points of a strip that has room for its number beside it
CLEAR: Final = 2.0  # points between lettering and lines
WAVE: Final = 3.0

PARTED: Final = ("half-square-triangle", "half-rectangle-triangle", "quarter-square-triangle")
"""Kinds whose boxes are cut again, corner to corner."""


@record
class View:
    """The part of a cloth that is shown: from `start` to `end` inches along its strips' way, `scale` to
    true."""

    cloth: ClothPlan
    strips: tuple[Strip, ...]
    scale: float
    across: bool  # the strips lie across the cloth, one under another
    first: bool
    last: bool

    @property
    def start(self) -> float:
        """Inches from the cloth's top to the first shown."""
        return float(self.strips[0].start) if self.across else 0.0

    @property
    def end(self) -> float:
        """Inches from the cloth's top to the last shown."""
        return float(self.strips[-1].end) if self.across else float(self.cloth.length)

    @property
    def points(self) -> float:
        """Points on paper for an inch of cloth."""
        return POINTS_PER_INCH * self.scale

    @property
    def tall(self) -> float:
        """Points of the cloth's picture."""
        return (self.end - self.start) * self.points

    @property
    def wide(self) -> float:
        """Points across the cloth."""
        return float(self.cloth.width) * self.points


def views_of(cloth: ClothPlan, scale: float, first_most: float, most: float) -> list[View]:
    """The cloth in views no taller than `most` points (the first: `first_most`), parted between strips."""
    if cloth.axis == "along":
        return [View(cloth, cloth.strips, scale, False, True, True)]
    groups: list[list[Strip]] = [[]]
    for strip in cloth.strips:
        group, room = groups[-1], first_most if len(groups) == 1 else most
        if group and float(strip.end - group[0].start) * POINTS_PER_INCH * scale > room + NEAR:
            groups.append([])
        groups[-1].append(strip)
    count = len(groups)
    return [
        View(cloth, tuple(group), scale, True, at == 0, at == count - 1) for at, group in enumerate(groups)
    ]


@dataclass(slots=True)
class ClothPainter:
    """Draws the cloths of one fabric. Labels are fitted once for each shape and pose."""

    plan: CuttingPlan
    keys: Mapping[int, CutRow]
    say: Say
    fitted: dict[tuple[int, float, bool, float], Spot | None] = field(default_factory=dict)

    def marks(self, view: View, x: float, y: float) -> list[Mark]:
        """The view with the cloth's own left edge at `x`, the view's top at `y`."""
        box = (x, y, x + view.wide, y + view.tall)
        shown = [each for strip in view.strips for each in strip.placed]
        marks: list[Mark] = [PathMark(box_path(*box), None, 0.0, (), LEFT_OVER, "left-over")]
        for each in shown:
            marks.extend(self._piece_marks(view, each, x, y))
        marks.extend(_slice_marks(view, x, y))
        steps = {
            _place(*step.slice.region[:2]): step.number for step in steps_of(view.cloth) if not step.whole
        }
        for each in shown:
            marks.extend(self._label_marks(view, each, steps.get(_place(each.left, each.top)), x, y))
        marks.extend(_strip_marks(view, self.say, x, y))
        return [*marks, *_edge_marks(view, box)]

    def _outline(self, view: View, placed: PlacedCut, x: float, y: float) -> Ring:
        """A template as it lies on the page."""
        outline = self.plan.cuts[placed.cut].outline
        left, top, _, _ = _corner(view, placed, x, y)
        lying = posed([complex(*place) for place in outline], Pose(placed.turned, placed.reversed))
        return tuple(Spot(left + each.real * view.points, top + each.imag * view.points) for each in lying)

    def _piece_marks(self, view: View, placed: PlacedCut, x: float, y: float) -> Iterator[Mark]:
        """A box, or a template's outline; the cuts that part a square into triangles dashed."""
        cut, key = self.plan.cuts[placed.cut], self.keys[placed.cut].key
        left, top, right, bottom = _corner(view, placed, x, y)
        if cut.outline:
            yield PathMark(closed(self._outline(view, placed, x, y)), BLACK, PIECE, (), WHITE, "piece", key)
            return
        yield PathMark(box_path(left, top, right, bottom), BLACK, PIECE, (), WHITE, "piece", key)
        if cut.kind in PARTED:
            falling, rising = straight((left, top), (right, bottom)), straight((right, top), (left, bottom))
            lines = rising if placed.slant == "rising" else falling
            if cut.kind == "quarter-square-triangle":
                lines = (*falling, *rising)
            yield PathMark(lines, BLACK, DIAGONAL, DIAGONAL_DASH, None, "diagonal", key)

    def _label_marks(
        self, view: View, placed: PlacedCut, step: int | None, x: float, y: float
    ) -> Iterator[Mark]:
        """The cut's letter in the piece's middle, and the step that cuts it in the corner, where they fit."""
        cut, key = self.plan.cuts[placed.cut], self.keys[placed.cut].key
        left, top, right, bottom = _corner(view, placed, x, y)
        wide, tall = measure(key, LABEL, True), cap_height(LABEL, True)
        middle: Spot | None = Spot((left + right) / 2, (top + bottom) / 2)
        if cut.outline:
            middle = self._fit(view, placed, key)
            middle = middle and Spot(left + middle.x, top + middle.y)
        elif right - left < wide + CLEAR or bottom - top < tall + CLEAR:
            middle = None
        if middle is not None:
            if cut.kind in PARTED:
                yield plate(
                    (middle.x - wide / 2, middle.y - tall / 2, middle.x + wide / 2, middle.y + tall / 2)
                )
            yield set_text(
                middle.x, middle.y + tall / 2, key, LABEL, True, "middle", role="piece-key", subject=key
            )
        if step is not None and not cut.outline and middle is not None:
            yield from _badge(str(step), (left, top, right, bottom), wide)

    def _fit(self, view: View, placed: PlacedCut, key: str) -> Spot | None:
        """Where the letter's middle goes inside a template, from the corner of its box."""
        pose = (placed.cut, placed.turned, placed.reversed, view.points)
        if pose not in self.fitted:
            left, top, _, _ = _corner(view, placed, 0.0, 0.0)
            ring = tuple(Spot(px - left, py - top) for px, py in self._outline(view, placed, 0.0, 0.0))
            tall = cap_height(LABEL, True)
            room, line = Room((ring,)), Line(measure(key, LABEL, True), 0.0, tall)
            found = place_lines(room, [line], middle_of(ring), CLEAR / 4)
            self.fitted[pose] = found and Spot(found.x, found.y + tall / 2)
        return self.fitted[pose]


def _place(left: Number, top: Number) -> tuple[float, float]:
    """A place on the cloth, as exact as places are compared."""
    return round(float(left), 5), round(float(top), 5)


def _badge(number: str, box: Box, label: float) -> Iterator[Mark]:
    """A step's number in the corner of the first piece that it cuts, where it keeps clear of the letter."""
    left, top, right, bottom = box
    wide, rise = measure(number, SMALLEST), cap_height(SMALLEST)
    over = (
        bottom - top - cap_height(LABEL, True)
    ) / 2 >= rise + 2 * CLEAR and right - left >= wide + 2 * CLEAR
    beside = (right - left - label) / 2 >= wide + 2 * CLEAR and bottom - top >= rise + 2 * CLEAR
    if over or beside:
        corner = (left + CLEAR, top + CLEAR)
        yield plate((*corner, corner[0] + wide, corner[1] + rise), 0.8)
        yield grey_text(corner[0], corner[1] + rise, number, SMALLEST)


def plate(box: Box, clear: float = 1.5) -> PathMark:
    """White behind lettering, so that no line runs through it."""
    left, top, right, bottom = box
    path = box_path(left - clear, top - clear, right + clear, bottom + clear)
    return PathMark(path, None, 0.0, (), WHITE, "plate")


def _corner(view: View, placed: PlacedCut, x: float, y: float) -> Box:
    """The piece's box on the page."""
    left, top = x + float(placed.left) * view.points, y + (float(placed.top) - view.start) * view.points
    return left, top, left + float(placed.width) * view.points, top + float(placed.height) * view.points


def _slice_marks(view: View, x: float, y: float) -> Iterator[Mark]:
    """Every cut from edge to edge of what it parts."""
    for cut in view.cloth.slices:
        (ax, ay), (bx, by) = _line_of(cut)
        if min(ay, by) < view.start - NEAR or max(ay, by) > view.end + NEAR:
            continue
        ends = [
            (x + px * view.points, y + (py - view.start) * view.points) for px, py in ((ax, ay), (bx, by))
        ]
        width = SUB_CUT if cut.strips else SLICE
        yield PathMark(straight(*ends), BLACK, width, (), None, "slice", str(cut.order))


def _line_of(cut: Slice) -> tuple[tuple[float, float], tuple[float, float]]:
    """The ends of a cut on the cloth, in inches."""
    left, top, right, bottom = (float(side) for side in cut.region)
    if cut.axis == "across":
        return (left, top + float(cut.at)), (right, top + float(cut.at))
    return (left + float(cut.at), top), (left + float(cut.at), bottom)


def _strip_marks(view: View, say: Say, x: float, y: float) -> Iterator[Mark]:
    """The strips' numbers and widths: left of the cloth, or above it where they run along it."""
    for strip in view.strips:
        middle = float(strip.start + strip.end) / 2
        size = float(strip.end - strip.start)
        text = say.on_ruler(strip.end - strip.start)
        if not strip.number:
            continue
        if view.across and size * view.points >= LEAST_STRIP:
            at = y + (middle - view.start) * view.points + 2.5
            yield set_text(
                x - 4, at, str(strip.number), LABEL, True, "end", role="strip", subject=str(strip.number)
            )
            yield grey_text(x - 18, at, text, SMALLEST, "end")
        elif not view.across and size * view.points >= measure(str(strip.number), LABEL, True) + 2:
            yield set_text(
                x + middle * view.points, y - 3, str(strip.number), LABEL, True, "middle",
                role="strip", subject=str(strip.number),
            )  # fmt: skip


def _edge_marks(view: View, box: Box) -> Iterator[Mark]:
    """The cloth's own edges; where it goes on over the page's end, a broken one."""
    left, top, right, bottom = box
    yield line_mark(
        (*straight((left, top), (left, bottom)), *straight((right, top), (right, bottom))), "cloth", SLICE
    )
    for y, whole in ((top, view.first), (bottom, view.last)):
        yield line_mark(straight((left, y), (right, y)), "cloth", SLICE, () if whole else (WAVE, WAVE))
