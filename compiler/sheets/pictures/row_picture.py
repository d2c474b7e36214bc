"""One row of a quilt as a picture: its parts apart, named; and sewn together, in the quilt's fabrics.
Points."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import chain
from math import hypot
from typing import Final

from ...geometry.edge import Edge, Point
from ...geometry.stroke import stroke_of
from ...measure.length import POINTS_PER_INCH
from ...measure.record import record
from ...sewing.pressing.pressing_model import Toward
from ..arrange.fills import Fill, texture_mark
from ..arrange.paths import Placement, Spot, box_path, flat_ring, ring_path, straight
from ..arrange.room import Box, boxes_meet
from ..arrange.style import BLACK, SMALLEST, WHITE, arrow_marks, centre_drop, line_mark, measure, set_text
from ..page import Mark, PathMark
from .step_picture import BEFORE, BETWEEN, SHADE, WIDE

TALL: Final = 130.0  # of each of the two drawings
STACKED: Final = 1.8  # a row longer than so many times its height has its two drawings one over the other
SPREAD: Final = 0.1  # how much of their distance from the middle the parts are moved apart
BELOW: Final = 12.0  # between the drawings where one stands over the other
LARGEST: Final = 0.3  # of true size
SEAM: Final = 0.35
ARROW: Final = 7.0  # half the length of a pressing arrow
PLATE: Final = 2.0
HIDDEN: Final = 3.0  # times a name's height: a part less tall and narrower than its name would be hidden


@record
class RowPart:
    """One part of the row: its name, its outlines in the quilt, whether it is cloth that is added."""

    name: str
    rings: tuple[tuple[Edge, ...], ...]
    added: bool


@record
class Shown:
    """A piece of cloth of the sewn row."""

    ring: tuple[Edge, ...]
    fabric: str


@record
class Pressed:
    """A seam of the row, and which way it is pressed, seen along it with the first part on the right."""

    seam: tuple[Edge, ...]
    toward: Toward


@record
class RowScene:
    """What a row shows."""

    parts: tuple[RowPart, ...]
    cloth: tuple[Shown, ...]
    seams: tuple[Pressed, ...]


def draw_row(scene: RowScene, fills: Mapping[str, Fill]) -> tuple[tuple[Mark, ...], float]:
    """The marks from the top left corner, and their height; the picture is as wide as a step's."""
    apart = _apart(scene)
    box = _box(ring for part in apart for ring in part.rings)
    across, down = (box[2] - box[0]) * POINTS_PER_INCH, (box[3] - box[1]) * POINTS_PER_INCH
    whole = _box(ring for part in scene.parts for ring in part.rings)
    stacked = across > STACKED * down
    wide = WIDE if stacked else BEFORE
    after_wide = WIDE if stacked else WIDE - BEFORE - BETWEEN
    own = (whole[2] - whole[0]) * POINTS_PER_INCH
    scale = min(LARGEST, wide / across, after_wide / own, TALL / down)
    tall = down * scale
    before = Placement(0.0, (wide - across * scale) / 2 - box[0] * POINTS_PER_INCH * scale,
                       -box[1] * POINTS_PER_INCH * scale, scale)  # fmt: skip
    own_wide, own_tall = ((whole[at + 2] - whole[at]) * POINTS_PER_INCH * scale for at in (0, 1))
    left = (WIDE - own_wide) / 2 if stacked else BEFORE + BETWEEN + (after_wide - own_wide) / 2
    top = tall + BELOW if stacked else (tall - own_tall) / 2
    after = Placement(
        0.0, left - whole[0] * POINTS_PER_INCH * scale, top - whole[1] * POINTS_PER_INCH * scale, scale
    )
    marks = [*_parts(apart, before), *_sewn(scene, after, fills)]
    if not stacked:
        marks += arrow_marks(
            Spot(BEFORE + 5, tall / 2), Spot(BEFORE + BETWEEN - 5, tall / 2), "then", heads=1
        )
    return tuple(marks), top + own_tall if stacked else tall


def _apart(scene: RowScene) -> list[RowPart]:
    """The parts moved away from the row's middle."""
    left, top, right, bottom = _box(ring for part in scene.parts for ring in part.rings)
    x, y = (left + right) / 2, (top + bottom) / 2
    moved = []
    for part in scene.parts:
        a, b, c, d = _box(part.rings)
        dx, dy = ((a + c) / 2 - x) * SPREAD, ((b + d) / 2 - y) * SPREAD
        moved.append(RowPart(part.name, tuple(_moved(ring, dx, dy) for ring in part.rings), part.added))
    return moved


def _moved(ring: Sequence[Edge], dx: float, dy: float) -> tuple[Edge, ...]:
    from ...geometry.motion import move_by

    return tuple(move_by(dx, dy).edge(edge) for edge in ring)


def _box(rings: Iterator[tuple[Edge, ...]] | Sequence[tuple[Edge, ...]]) -> Box:
    """The box of the rings, in inches."""
    spots = [spot for ring in rings for spot in flat_ring(ring, Placement(scale=1 / POINTS_PER_INCH))]
    xs, ys = [x for x, _ in spots], [y for _, y in spots]
    return min(xs), min(ys), max(xs), max(ys)


def _parts(parts: Sequence[RowPart], placement: Placement) -> Iterator[Mark]:
    """The parts apart, each with its name."""
    for part in parts:
        path = tuple(chain(*(ring_path(ring, placement) for ring in part.rings)))
        yield PathMark(path, BLACK, 0.6, (), SHADE if part.added else WHITE, "part", part.name)
    boxes = [_box_on(part, placement) for part in parts]
    for part, own in zip(parts, boxes, strict=True):
        left, top, right, bottom = plate = _name_plate(part.name, own, boxes)
        yield PathMark(box_path(*plate), None, 0.0, (), WHITE, "plate")
        x, drop, named = (left + right) / 2, (top + bottom) / 2 + centre_drop(SMALLEST), part.name
        yield set_text(x, drop, named, SMALLEST, True, "middle", role="part-name", subject=named)


def _box_on(part: RowPart, placement: Placement) -> Box:
    """The box of a part on the page."""
    a, b, c, d = _box(part.rings)
    first, last = placement.spot_at(a, b), placement.spot_at(c, d)
    return first.x, first.y, last.x, last.y


def _name_plate(name: str, own: Box, boxes: Sequence[Box]) -> Box:
    """Where a part's name stands: in its middle; left of it where it would hide a narrow part and that side
    is free."""
    x, y = (own[0] + own[2]) / 2, (own[1] + own[3]) / 2
    wide, tall = measure(name, SMALLEST, True) / 2 + PLATE / 2, 3.5 + PLATE / 2
    plate = (x - wide, y - tall, x + wide, y + tall)
    if own[2] - own[0] >= 2 * wide or own[3] - own[1] >= HIDDEN * 2 * tall:
        return plate
    beside = (own[0] - 2 * wide - PLATE, y - tall, own[0] - PLATE, y + tall)
    free = not any(boxes_meet(beside, box) for box in boxes)
    return beside if free and beside[0] >= 0 else plate


def _sewn(scene: RowScene, placement: Placement, fills: Mapping[str, Fill]) -> Iterator[Mark]:
    """The row in its fabrics, with the pressing arrows."""
    for fabric in dict.fromkeys(each.fabric for each in scene.cloth):
        rings = [each.ring for each in scene.cloth if each.fabric == fabric]
        path = tuple(chain(*(ring_path(ring, placement) for ring in rings)))
        spots = [spot for ring in rings for spot in flat_ring(ring, placement)]
        xs, ys = [x for x, _ in spots], [y for _, y in spots]
        yield PathMark(path, None, 0.0, (), fills[fabric].ground, "fill", fabric)
        texture = texture_mark(fills[fabric], (min(xs), min(ys), max(xs), max(ys)), path, fabric)
        if texture:
            yield texture
        yield PathMark(path, WHITE if fills[fabric].dark else BLACK, SEAM, (), None, "seam")
    for part in scene.parts:
        yield line_mark(tuple(chain(*(ring_path(ring, placement) for ring in part.rings))), "outline", 0.7)
    for pressed in scene.seams:
        yield from _arrow(pressed, placement)


def _arrow(pressed: Pressed, placement: Placement) -> Iterator[Mark]:
    """A small arrow across a seam's middle, on plain ground."""
    edge = max(pressed.seam, key=lambda each: round(each.length, 6))
    stroke = stroke_of(edge)
    place, way = stroke.at(0.5), stroke.direction(0.5) * (1j if pressed.toward == "first" else -1j)
    spot = placement.spot(Point(place.real, place.imag))
    size = hypot(way.real, way.imag)
    x, y = way.real / size * ARROW, way.imag / size * ARROW
    first, last = Spot(spot.x - x * 0.6, spot.y - y * 0.6), Spot(spot.x + x, spot.y + y)
    yield PathMark(straight(first, last), WHITE, 3.2, (), None, "plate")
    arrow = arrow_marks(first, last, "press", heads=2 if pressed.toward == "open" else 1)
    for mark in arrow:
        assert isinstance(mark, PathMark)
        yield PathMark(mark.path, WHITE, mark.width + 2.0, (), mark.fill and WHITE, "plate")
    yield from arrow
