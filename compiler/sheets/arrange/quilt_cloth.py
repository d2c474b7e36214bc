"""A picture of one cloth, true to scale: every cut, every piece with its letter, what is left over in grey.

In: a cloth's plan and the strips of it to show, for a long cloth goes on over several pages. Across the page is
across the cloth.

       4in |1  ┌──────┬──────┬──────┬───┐    strip 1 of 4in; step 3 cuts it
           |   │3  a  │   a  │   a  │▒▒▒│
       3in |2  ├──────┴─┬────┴───┬──┴───┤
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from ...cutting.plan_model import ClothPlan, CuttingPlan, PlacedCut, Slice
from ...cutting.rotary_words import length_text
from ...cutting.runs import Pose, posed
from ...measure.length import POINTS_PER_INCH
from ...measure.tolerance import NEAR
from ..lettering import cap_height
from ..page import Mark, PathMark, Segment
from ..quilt_tables import CutRow
from .paths import box_path, closed, straight
from .quilt_steps import Step, Strip, first_cuts, steps_of, strips_of
from .style import BLACK, LABEL, SMALLEST, WHITE, grey_text, line_mark, measure, set_text

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


@dataclass(frozen=True, slots=True)
class View:
    """The part of a cloth that is shown: from `start` to `end` inches along its strips' way, `scale` to true."""

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


def views_of(cloth: ClothPlan, scale: float, most: float) -> list[View]:
    """The cloth in views no taller than `most` points, parted between strips."""
    strips, first = strips_of(cloth), first_cuts(cloth)
    if first and first[0].axis == "along":
        return [View(cloth, strips, scale, False, True, True)]
    groups: list[list[Strip]] = [[]]
    for strip in strips:
        group = groups[-1]
        if group and float(strip.end - group[0].start) * POINTS_PER_INCH * scale > most + NEAR:
            groups.append([])
        groups[-1].append(strip)
    count = len(groups)
    return [View(cloth, tuple(group), scale, True, at == 0, at == count - 1) for at, group in enumerate(groups)]


def view_marks(view: View, plan: CuttingPlan, keys: Mapping[int, CutRow], x: float, y: float) -> list[Mark]:
    """The view with the cloth's own left edge at `x`, the view's top at `y`."""
    box = (x, y, x + view.wide, y + view.tall)
    shown = [each for each in view.cloth.placed if _inside(view, each)]
    badges = {id(step): step for step in steps_of(view.cloth) if not step.whole}
    marks: list[Mark] = [PathMark(box_path(*box), None, 0.0, (), LEFT_OVER, "left-over")]
    for each in shown:
        marks.extend(_piece_marks(view, plan, keys, each, x, y))
    marks.extend(_slice_marks(view, x, y))
    for each in shown:
        marks.extend(_label_marks(view, keys, each, _step_at(badges.values(), each), x, y))
    marks.extend(_strip_marks(view, plan.ruler_step, x, y))
    return [*marks, *_edge_marks(view, box)]


def _inside(view: View, placed: PlacedCut) -> bool:
    middle = float(placed.top) + float(placed.height) / 2
    return view.start - NEAR <= middle <= view.end + NEAR


def _corner(view: View, placed: PlacedCut, x: float, y: float) -> tuple[float, float, float, float]:
    """The piece's box on the page."""
    left, top = x + float(placed.left) * view.points, y + (float(placed.top) - view.start) * view.points
    return left, top, left + float(placed.width) * view.points, top + float(placed.height) * view.points


def _piece_marks(
    view: View, plan: CuttingPlan, keys: Mapping[int, CutRow], placed: PlacedCut, x: float, y: float
) -> Iterator[Mark]:
    """A box, or a template's outline; the cuts that part a square into triangles dashed."""
    cut, key = plan.cuts[placed.cut], keys[placed.cut].key
    left, top, right, bottom = _corner(view, placed, x, y)
    path: tuple[Segment, ...] = box_path(left, top, right, bottom)
    if cut.outline:
        lying = posed([complex(*place) for place in cut.outline], Pose(placed.turned, placed.reversed))
        path = closed((left + each.real * view.points, top + each.imag * view.points) for each in lying)
    yield PathMark(path, BLACK, PIECE, (), WHITE, "piece", key)
    if not cut.outline and cut.kind in ("half-square triangle", "half-rectangle triangle", "quarter-square triangle"):
        lines = straight((left, top), (right, bottom))
        if cut.kind == "quarter-square triangle":
            lines = (*lines, *straight((right, top), (left, bottom)))
        yield PathMark(lines, BLACK, DIAGONAL, DIAGONAL_DASH, None, "diagonal", key)


def _slice_marks(view: View, x: float, y: float) -> Iterator[Mark]:
    """Every cut from edge to edge of what it parts."""
    whole = first_cuts(view.cloth)
    for at, cut in enumerate(view.cloth.slices):
        (ax, ay), (bx, by) = _line_of(cut)
        if min(ay, by) < view.start - NEAR or max(ay, by) > view.end + NEAR:
            continue
        ends = [(x + px * view.points, y + (py - view.start) * view.points) for px, py in ((ax, ay), (bx, by))]
        width = SLICE if at < len(whole) else SUB_CUT
        yield PathMark(straight(*ends), BLACK, width, (), None, "slice", str(cut.order))


def _line_of(cut: Slice) -> tuple[tuple[float, float], tuple[float, float]]:
    """The ends of a cut on the cloth, in inches."""
    left, top, right, bottom = (float(side) for side in cut.region)
    if cut.axis == "across":
        return (left, top + float(cut.at)), (right, top + float(cut.at))
    return (left + float(cut.at), top), (left + float(cut.at), bottom)


def _step_at(steps: Sequence[Step] | Iterator[Step] | object, placed: PlacedCut) -> int | None:
    """The number of the last step whose cut starts at the piece's own corner."""
    found = None
    for step in steps:  # type: ignore[attr-defined]
        left, top = step.slice.region[:2]
        if abs(left - placed.left) <= NEAR and abs(top - placed.top) <= NEAR:
            found = step.number
    return found


def _label_marks(
    view: View, keys: Mapping[int, CutRow], placed: PlacedCut, step: int | None, x: float, y: float
) -> Iterator[Mark]:
    """The cut's letter in the piece's middle, and the step that cuts it in the corner, where they fit."""
    left, top, right, bottom = _corner(view, placed, x, y)
    key = keys[placed.cut].key
    wide, tall = measure(key, LABEL, True), cap_height(LABEL, True)
    number = str(step) if step is not None else ""
    beside = measure(number, SMALLEST) + 3 * CLEAR if number else 0.0
    over = number and bottom - top >= 2 * (tall + 3 * CLEAR)
    if right - left < wide + 2 * CLEAR or bottom - top < tall + 2 * CLEAR:
        return
    middle_x, middle_y = (left + right) / 2, (top + bottom) / 2
    fits = bool(number) and (over or right - left >= wide + 2 * beside)
    if fits and over and right - left < beside:
        fits = False
    plate = (middle_x - wide / 2 - 1.5, middle_y - tall / 2 - 1.5, middle_x + wide / 2 + 1.5, middle_y + tall / 2 + 1.5)
    yield PathMark(box_path(*plate), None, 0.0, (), WHITE, "plate")
    yield set_text(middle_x, middle_y + tall / 2, key, LABEL, True, "middle", role="piece-key", subject=key)
    if fits:
        rise = cap_height(SMALLEST)
        yield grey_text(left + CLEAR, top + CLEAR + rise, number, SMALLEST)


def _strip_marks(view: View, step: Fraction, x: float, y: float) -> Iterator[Mark]:
    """The strips' numbers and widths: left of the cloth, or above it where they run along it."""
    for strip in view.strips:
        middle = float(strip.start + strip.end) / 2
        size = float(strip.end - strip.start)
        text = length_text(strip.end - strip.start, step)
        if view.across and size * view.points >= LEAST_STRIP:
            at = y + (middle - view.start) * view.points + 2.5
            yield set_text(x - 4, at, str(strip.number), LABEL, True, "end", role="strip", subject=str(strip.number))
            yield grey_text(x - 18, at, text, SMALLEST, "end")
        elif not view.across and size * view.points >= measure(str(strip.number), LABEL, True) + 2:
            yield set_text(
                x + middle * view.points, y - 3, str(strip.number), LABEL, True, "middle",
                role="strip", subject=str(strip.number),
            )  # fmt: skip


def _edge_marks(view: View, box: tuple[float, float, float, float]) -> Iterator[Mark]:
    """The cloth's own edges; where it goes on over the page's end, a broken one."""
    left, top, right, bottom = box
    yield line_mark((*straight((left, top), (left, bottom)), *straight((right, top), (right, bottom))), "cloth", SLICE)
    for y, whole in ((top, view.first), (bottom, view.last)):
        yield line_mark(straight((left, y), (right, y)), "cloth", SLICE, () if whole else (WAVE, WAVE))
