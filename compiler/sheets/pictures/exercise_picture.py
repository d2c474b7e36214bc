"""The drawing of the drafting exercise: the seams on their ruling, or among the points of their construction.
Points."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import chain
from typing import Final, NamedTuple

from ...drafting.model import Draft
from ...measure.length import POINTS_PER_INCH
from ...measure.tolerance import ROUNDING
from ...words.pages import exercise as words
from ..arrange.block_drawing import column_name
from ..arrange.paths import Placement, box_path, circle_path, open_path, ring_path, straight
from ..arrange.room import Box, boxes_meet
from ..arrange.style import PALE, SEAM, SMALLEST, WHITE, centre_drop, line_mark, measure, set_text, solid_mark
from ..content import Picture
from ..drawing.clipping import Box as ClipBox
from ..drawing.clipping import clip_path, subpaths
from ..exercise.construction import Construction
from ..exercise.ruling import Ruling, arc_centers, edges_of
from ..page import Mark, PathMark, Segment

FINE: Final = 0.25  # points of a line of the ruling
INCH_LINE: Final = 0.6  # of every inch's
LEAST_RULED: Final = 3.0  # points between lines: of a closer ruling only the inches are drawn
POINT: Final = 1.6  # radius of a named point
CROSS: Final = 3.0  # points from an arc's center to the ends of its cross
AROUND: Final = 14.0  # points about the drawing for the names of its corners
NAME_TALL: Final = 7.0  # points of the plain ground under a name
NAME_CLEAR: Final = 1.0  # points between a name and a seam


def exercise_picture(draft: Draft, way: Ruling | Construction, size: float) -> Picture:
    """The block's seams on the ruling, or with the names of the points; `size`: of its longer side."""
    longest = max(float(draft.width), float(draft.height)) * POINTS_PER_INCH
    placement = Placement(0.0, AROUND, AROUND, min(1.0, size / longest))
    far = placement.spot_at(draft.width, draft.height)
    seams: list[Mark] = [
        line_mark(_seams(draft, placement), "seam", SEAM),
        line_mark(ring_path(draft.outline, placement), "outline", 1.3),
    ]
    if isinstance(way, Ruling):
        ruled = ruling_marks(draft.width, draft.height, way, placement)
        marks = [*ruled, *seams, *_center_marks(draft, placement), *_grid_names(draft, placement)]
        what = words.on_paper(way.name)
    else:
        marks = [*seams, *_names(draft, way, placement)]
        what = words.WITH_POINTS
    caption = words.drawn_at(placement.scale)
    return Picture(tuple(marks), far.x + AROUND, far.y + AROUND, words.pictured(what), caption)


def _center_marks(draft: Draft, placement: Placement) -> Iterator[Mark]:
    """A small cross on every arc's center."""
    for center in arc_centers(draft):
        x, y = placement.spot_at(center.real, center.imag)
        path = (*straight((x - CROSS, y - CROSS), (x + CROSS, y + CROSS)),
                *straight((x - CROSS, y + CROSS), (x + CROSS, y - CROSS)))  # fmt: skip
        yield line_mark(path, "arc-center", SEAM)


def _seams(draft: Draft, placement: Placement) -> tuple[Segment, ...]:
    """Every seam once."""
    return tuple(chain(*(open_path((edge,), placement) for edge, _, _ in draft.graph.between()))) or straight(
        (0.0, 0.0), (0.0, 0.0)
    )


def ruling_marks(
    width: Fraction | float, height: Fraction | float, ruling: Ruling, placement: Placement
) -> Iterator[Mark]:
    """The ruling under the drawing, every inch heavier."""
    apart = float(ruling.step) * POINTS_PER_INCH * placement.scale
    steps = ((ruling.step, FINE, PALE),) if apart >= LEAST_RULED else ()
    for step, weight, colour in (*steps, (ruling.heavy, INCH_LINE, PALE)):
        path: list[Segment] = []
        for number in range(int(float(width) / float(step) + ROUNDING) + 1):
            path += straight(placement.spot_at(number * step, 0), placement.spot_at(number * step, height))
        for number in range(int(float(height) / float(step) + ROUNDING) + 1):
            path += straight(placement.spot_at(0, number * step), placement.spot_at(width, number * step))
        yield PathMark(tuple(path), colour, weight, (), None, "grid")


def _grid_names(draft: Draft, placement: Placement) -> list[Mark]:
    """Columns' letters above, rows' numbers beside."""
    marks: list[Mark] = []
    last = -20.0
    for number, x in enumerate(draft.rules_across):
        spot = placement.spot_at(x, 0)
        if spot.x - last > 12:
            marks.append(set_text(spot.x, spot.y - 5, column_name(number), SMALLEST, False, "middle"))
            last = spot.x
    last = -20.0
    for number, y in enumerate(draft.rules_down):
        spot = placement.spot_at(0, y)
        if spot.y - last > 10:
            marks.append(set_text(spot.x - 4, spot.y + 2.4, str(number + 1), SMALLEST, False, "end"))
            last = spot.y
    return marks


class _Line(NamedTuple):
    """A seam as it is drawn, and the box that its corners span, a little wider for an arc."""

    path: tuple[Segment, ...]
    box: Box


def _names(draft: Draft, made: Construction, placement: Placement) -> list[Mark]:
    """The points that the steps name, each with its name on plain ground."""
    spots = {name: placement.spot_at(place.real, place.imag) for name, place in made.points.items()}
    lines = list(_drawn(draft, placement))
    marks: list[Mark] = []
    taken: list[Box] = []
    for name, (x, y) in spots.items():
        half = measure(name, SMALLEST, True) / 2
        others = [(spot.x - POINT, spot.y - POINT, spot.x + POINT, spot.y + POINT) for spot in spots.values()]
        left, top, right, bottom = box = _name_box(x, y, half, [*taken, *others], lines)
        taken.append(box)
        marks.append(solid_mark(circle_path(x, y, POINT), "point", name))
        marks.append(PathMark(box_path(left, top, right, bottom), None, 0.0, (), WHITE, "plate"))
        middle, line = (left + right) / 2, (top + bottom) / 2 + centre_drop(SMALLEST)
        marks.append(set_text(middle, line, name, SMALLEST, True, "middle", role="point", subject=name))
    return marks


def _drawn(draft: Draft, placement: Placement) -> Iterator[_Line]:
    for edge in edges_of(draft):
        path = open_path((edge,), placement)
        spots = [spot for pieces, _ in subpaths(path) for piece in pieces for spot in piece]
        xs, ys = [spot[0] for spot in spots], [spot[1] for spot in spots]
        yield _Line(path, (min(xs) - 1, min(ys) - 1, max(xs) + 1, max(ys) + 1))


def _name_box(x: float, y: float, half: float, taken: Sequence[Box], lines: Sequence[_Line]) -> Box:
    """Where a point's name stands: above to the right, or where else it meets no other name and no point, and
    as few seams as can be."""
    wide = 2 * half + 2
    sides = (x + 3, x - 3 - wide, x - wide / 2)
    beside = [
        (left, top, left + wide, top + NAME_TALL)
        for top, lefts in ((y - 2 - NAME_TALL, sides), (y + 2, sides), (y - NAME_TALL / 2, sides[:2]))
        for left in lefts
    ]
    met = [
        (sum(boxes_meet(box, other) for other in taken), sum(_crosses(line, box) for line in lines))
        for box in beside
    ]
    return beside[met.index(min(met))]


def _crosses(line: _Line, box: Box) -> bool:
    left, top, right, bottom = box
    clear = ClipBox(left - NAME_CLEAR, top - NAME_CLEAR, right + NAME_CLEAR, bottom + NAME_CLEAR)
    return boxes_meet(line.box, clear) and bool(clip_path(line.path, clear))
