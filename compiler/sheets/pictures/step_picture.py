"""One step of sewing as a small picture: before, with the parts apart and what is added shaded; after, in its
fabrics, with an arrow the way the seam is pressed. Points."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import chain
from math import hypot
from typing import Final

from ...geometry.edge import Edge, Point
from ...geometry.stroke import edges_apart, place_of, stroke_of
from ...measure.length import POINTS_PER_INCH
from ...measure.record import record
from ...measure.tolerance import ROUNDING, TOGETHER
from ...sewing.pressing.pressing_model import Toward
from ..arrange.fills import Fill, texture_mark
from ..arrange.paths import Placement, Ring, Spot, box_path, flat_ring, open_path, ring_path, straight
from ..arrange.room import Box, Room
from ..arrange.style import BLACK, WHITE, arrow_marks, dot_marks, line_mark
from ..page import Mark, PathMark, Segment
from ..papers.inside_labels import label_marks

WIDE: Final = 252.0  # the width of a picture: half the body of a page, A4 or Letter
TALL: Final = 104.0  # of each half
BEFORE: Final = 140.0  # the room of the left half
BETWEEN: Final = 24.0  # between the halves, for the arrow from one to the other
LARGEST: Final = 0.62  # of true size: a small unit is not shown larger
APART: Final = 11.0  # between the two parts before they are sewn


SHADE: Final = (0.82, 0.82, 0.82)
HEAVY: Final = 1.8  # the seam that is sewn
THIN: Final = 0.5
DOT: Final = 4.5
PIN: Final = 4.0  # half the length of a match mark
ARROW_REACH: Final = 14.0  # from the seam to an arrow's tip
ARROW_BACK: Final = 4.0
HALO: Final = 2.4  # of white about an arrow: it lies on any fabric
LETTERED: Final = 9  # pieces of a part; a larger one is known by its looks
SIZES: Final = (10.5, 8.5, 7.0)


@record
class Shown:
    """One piece of cloth in the picture: its rings in inches, its fabric, its letter."""

    rings: tuple[tuple[Edge, ...], ...]
    fabric: str
    letter: str


@record
class Scene:
    """What one step shows. The seam has the first part on its right; `added` is the part that is shaded, 0 or
    1. No `toward`: the seam is not pressed to a side."""

    first: tuple[Shown, ...]
    second: tuple[Shown, ...]
    added: int
    seam: tuple[Edge, ...]
    toward: Toward | None
    dots: tuple[Point, ...] = ()
    pins: tuple[Point, ...] = ()


def draw_step(scene: Scene, fills: Mapping[str, Fill]) -> tuple[tuple[Mark, ...], float]:
    """The picture's marks from its top left corner, and its height; it is WIDE wide."""
    shift = _shift(scene)
    scale, gap = _scale(scene, shift)
    left, top, right, bottom = _box(scene, scale, shift, gap)
    after = _bounds(chain(scene.first, scene.second))
    tall = max(bottom - top, (after[3] - after[1]) * POINTS_PER_INCH * scale)
    x = (BEFORE - (right - left)) / 2 - left
    y = (tall - (bottom - top)) / 2 - top
    moved = _move(scale, shift, gap)
    marks = [
        *_before(scene, Placement(0.0, x, y, scale), Placement(0.0, x + moved.x, y + moved.y, scale)),
        *arrow_marks(Spot(BEFORE + 5, tall / 2), Spot(BEFORE + BETWEEN - 5, tall / 2), "then", heads=1),
    ]
    wide = WIDE - BEFORE - BETWEEN
    across, down = ((after[2] - after[0]), (after[3] - after[1]))
    per_inch = POINTS_PER_INCH * scale
    place = Placement(
        0.0,
        BEFORE + BETWEEN + (wide - across * per_inch) / 2 - after[0] * per_inch,
        (tall - down * per_inch) / 2 - after[1] * per_inch,
        scale,
    )
    marks += _after(scene, place, fills)
    return tuple(marks), tall


# ---- how large, and where --------------------------------------------------------------------------


def _shift(scene: Scene) -> complex:
    """Where the second part is moved to show both: a unit vector away from the seam; for a seam that closes
    on itself, the inches it is moved to the right."""
    away = sum((_outward(edge) for edge in scene.seam), 0j)
    round_itself = place_of(scene.seam[0].start) - place_of(scene.seam[-1].end)
    if abs(away) > TOGETHER and abs(round_itself) > TOGETHER:
        return away / abs(away)
    first, second = _bounds(scene.first), _bounds(scene.second)
    return complex(max(first[2], second[2]) - min(first[0], second[0]), 0.0)


def _outward(edge: Edge) -> complex:
    """The normal to the left of an edge at its middle, as long as the edge."""
    stroke = stroke_of(edge)
    return stroke.direction(0.5) * -1j * stroke.length


def _move(scale: float, shift: complex, gap: float) -> Spot:
    """How far the second part is moved, in points."""
    if abs(abs(shift) - 1) < ROUNDING:
        return Spot(shift.real * gap, shift.imag * gap)
    return Spot(shift.real * POINTS_PER_INCH * scale + gap, 0.0)


def _scale(scene: Scene, shift: complex) -> tuple[float, float]:
    """The scale at which both halves fit, and the gap between the parts."""
    scale, gap = LARGEST, APART
    across, down = _size(_bounds(chain(scene.first, scene.second)))
    wide = WIDE - BEFORE - BETWEEN
    scale = min(scale, wide / (across * POINTS_PER_INCH), TALL / (down * POINTS_PER_INCH))
    for _ in range(8):  # the gap stays as it is, so a few rounds settle it
        left, top, right, bottom = _box(scene, scale, shift, gap)
        scale *= min(1.0, BEFORE / (right - left), (TALL + APART) / (bottom - top))
    return scale, gap


def _box(scene: Scene, scale: float, shift: complex, gap: float) -> Box:
    """The box of the left half in points, from the block's own corner."""
    by = POINTS_PER_INCH * scale
    dx, dy = _move(scale, shift, gap)
    a, b = (tuple(each * by for each in _bounds(part)) for part in (scene.first, scene.second))
    return min(a[0], b[0] + dx), min(a[1], b[1] + dy), max(a[2], b[2] + dx), max(a[3], b[3] + dy)


def _bounds(shown: Iterator[Shown] | Sequence[Shown] | chain[Shown]) -> Box:
    """The box of the pieces, in inches."""
    spots = [
        spot for each in shown for spot in flat_ring(each.rings[0], Placement(scale=1 / POINTS_PER_INCH))
    ]
    xs, ys = [x for x, _ in spots], [y for _, y in spots]
    return min(xs), min(ys), max(xs), max(ys)


def _size(box: Box) -> tuple[float, float]:
    return box[2] - box[0], box[3] - box[1]


# ---- the left half ---------------------------------------------------------------------------------


def _before(scene: Scene, one: Placement, two: Placement) -> Iterator[Mark]:
    for number, (part, placement) in enumerate(((scene.first, one), (scene.second, two))):
        yield from _plain(part, placement, SHADE if number == scene.added else WHITE)
        for seam in edges_apart(scene.seam):
            yield line_mark(open_path(seam, placement), "sewn", HEAVY)
        for dot in placement.spots(scene.dots):
            yield PathMark(_square(dot, DOT / 2 + 0.6), None, 0.0, (), WHITE, "plate")
            yield from dot_marks(dot, DOT, "dot")
        yield from _pins(scene, placement)


def _plain(part: Sequence[Shown], placement: Placement, shade: tuple[float, float, float]) -> Iterator[Mark]:
    """A part with one shade and its letters."""
    path = tuple(chain(*(ring_path(ring, placement) for each in part for ring in each.rings)))
    yield PathMark(path, BLACK, THIN, (), shade, "part")
    named = [each for each in part if each.letter]
    if len(named) <= LETTERED:
        for each in named:
            room = Room(tuple(flat_ring(ring, placement) for ring in each.rings))
            yield from label_marks(room, each.letter, (), each.letter, SIZES) or ()


def _pins(scene: Scene, placement: Placement) -> Iterator[Mark]:
    """Match marks across the seam where it is pinned."""
    for at in scene.pins:
        spot, along = placement.spot(at), _along(scene.seam, at)
        x, y = along.imag * PIN, -along.real * PIN
        yield line_mark(straight((spot.x - x, spot.y - y), (spot.x + x, spot.y + y)), "match", 0.8)


def _along(seam: Sequence[Edge], at: Point) -> complex:
    """The seam's direction where it passes nearest to a place on it."""
    place = complex(float(at.x), float(at.y))
    found = min(
        (
            (abs(stroke.at(share / 16) - place), share, stroke)
            for stroke in map(stroke_of, seam)
            for share in range(17)
        ),
        key=lambda each: each[:2],
    )
    return found[2].direction(found[1] / 16)


def _square(spot: Spot, half: float) -> tuple[Segment, ...]:
    return box_path(spot.x - half, spot.y - half, spot.x + half, spot.y + half)


# ---- the right half --------------------------------------------------------------------------------


def _after(scene: Scene, placement: Placement, fills: Mapping[str, Fill]) -> Iterator[Mark]:
    """The parts sewn together, in their fabrics, with the pressing arrow."""
    shown = (*scene.first, *scene.second)
    for fabric in dict.fromkeys(each.fabric for each in shown):
        rings = [ring for each in shown if each.fabric == fabric for ring in each.rings]
        path = tuple(chain(*(ring_path(ring, placement) for ring in rings)))
        spots: Ring = tuple(spot for ring in rings for spot in flat_ring(ring, placement))
        box = (
            min(x for x, _ in spots),
            min(y for _, y in spots),
            max(x for x, _ in spots),
            max(y for _, y in spots),
        )
        yield PathMark(path, None, 0.0, (), fills[fabric].ground, "fill", fabric)
        texture = texture_mark(fills[fabric], box, path, fabric)
        if texture:
            yield texture
        colour = WHITE if fills[fabric].dark else BLACK
        yield PathMark(path, colour, THIN, (), None, "seam")
    for each in shown:
        if fills[each.fabric].dark:
            continue
        yield PathMark(
            tuple(chain(*(ring_path(ring, placement) for ring in each.rings))), BLACK, THIN, (), None, "seam"
        )
    if scene.toward:
        yield from _pressing(scene, placement)


def _pressing(scene: Scene, placement: Placement) -> Iterator[Mark]:
    """An arrow across the seam's middle: toward one part, or both ways where it is pressed open."""
    edge = max(scene.seam, key=lambda each: round(each.length, 6))
    stroke = stroke_of(edge)
    place, way = stroke.at(0.5), stroke.direction(0.5) * -1j
    if scene.toward == "first":
        way = -way
    spot = placement.spot(Point(place.real, place.imag))
    reach = min(ARROW_REACH, max(7.0, hypot(*_reach(scene, placement)) * 0.3))
    back = reach if scene.toward == "open" else ARROW_BACK
    first = Spot(spot.x - way.real * back, spot.y - way.imag * back)
    last = Spot(spot.x + way.real * reach, spot.y + way.imag * reach)
    arrow = arrow_marks(first, last, "press", heads=2 if scene.toward == "open" else 1)
    for mark in arrow:
        assert isinstance(mark, PathMark)
        yield PathMark(mark.path, WHITE, mark.width + HALO, (), mark.fill and WHITE, "plate")
    yield from arrow


def _reach(scene: Scene, placement: Placement) -> tuple[float, float]:
    """How large the smaller part is on the page."""
    by = POINTS_PER_INCH * placement.scale
    sizes = [_size(_bounds(part)) for part in (scene.first, scene.second)]
    wide, tall = min(sizes, key=lambda each: each[0] * each[1])
    return min(wide, tall) * by, 0.0
