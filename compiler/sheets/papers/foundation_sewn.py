"""A foundation sewn again from its paper alone: patch after patch laid on, sewn on its line, trimmed, opened.

In goes what is printed: a section's outlines, its numbered lines, where the numbers stand, the cut size of
each patch's cloth. Out comes what a maker sees after each patch, from the cloth's side. Cloth that would not
cover its area and the allowance about it raises AssertionError. Inches; x is that of the paper, mirrored.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from ...geometry.edge import Edge
from ...geometry.stroke import place_of
from ...measure.length import POINTS_PER_INCH
from ...measure.record import record
from ...measure.tolerance import CARRIED_ON, CLOSE
from ...sewing.foundations.foundation_model import Patch
from ..arrange.paths import Placement, Spot, flat_ring
from .foundation_paper import PatchPaper, SectionPaper

if TYPE_CHECKING:
    from shapely import Polygon
    from shapely.geometry.base import BaseGeometry

FLAT: Final = Placement(scale=1 / POINTS_PER_INCH)
"""Inches to inches, arcs as chords."""


FAR: Final = 10.0  # inches beyond the paper to which a fold reaches: more than any cloth hangs over


@record
class Laid:
    """What is seen of one patch's cloth: its rings, from the front, x to the right."""

    patch: Patch
    rings: tuple[tuple[Spot, ...], ...]


@record
class Stage:
    """After a patch is opened out: what is seen of each so far; the last is the new one."""

    laid: tuple[Laid, ...]
    line: tuple[Spot, Spot] | None  # that was sewn, from the front


@record
class SewnSection:
    """A section patch after patch, and as it is trimmed in the end."""

    stages: tuple[Stage, ...]
    trimmed: tuple[Laid, ...]


@dataclass(slots=True)
class _Cloth:
    """One patch's cloth on the paper: all of it, and what of it is seen."""

    patch: Patch
    area: Polygon
    whole: BaseGeometry
    seen: BaseGeometry


def sew_section(paper: SectionPaper, allowance: Fraction) -> SewnSection:
    """The section sewn, its seams trimmed to `allowance`."""
    wide = float(allowance)
    areas = printed_areas(paper)
    lines = [None, *(line for _, line in paper.lines)]
    far = FAR + sum(_size(_polygon(paper.cut)))
    laid: list[_Cloth] = []
    stages: list[Stage] = []
    for each, area, line in zip(paper.patches, areas, lines, strict=True):
        cloth = _cut(each.patch, area, line, each.over)
        assert cloth.buffer(CLOSE).covers(area.buffer(wide)), f"{each.patch.label} does not cover its area"
        seen: BaseGeometry = cloth
        if line is not None:
            way = _outward(line, each)
            _trim(laid, _half(line, way, wide, far))
            cloth = cloth.intersection(_half(line, -way, wide, far))
            seen = cloth.intersection(_half(line, -way, 0.0, far))
            for other in laid:
                if other.seen.intersects(seen):
                    other.seen = other.seen.difference(seen)
        laid.append(_Cloth(each.patch, area, cloth, seen))
        sewn = None if line is None else _front_line(line)
        stages.append(Stage(tuple(_laid(one.patch, one.seen) for one in laid), sewn))
    return SewnSection(tuple(stages), _trimmed(paper, laid, wide))


def printed_areas(paper: SectionPaper) -> list[Polygon]:
    """Each patch's area on the paper: the last line parts the last patch's from the rest, and so back."""
    from shapely.geometry import LineString, Point
    from shapely.ops import split

    rest, areas = _polygon(paper.sew), []
    for (patch, line), each in zip(reversed(paper.lines), reversed(paper.patches), strict=False):
        start, end = place_of(line.start), place_of(line.end)
        on = (end - start) / abs(end - start) * CARRIED_ON
        parted = list(split(rest, LineString([_pair(start - on), _pair(end + on)])).geoms)
        own = [part for part in parted if part.covers(Point(float(each.inside.x), float(each.inside.y)))]
        assert len(parted) == 2 and len(own) == 1, f"the line of {patch.label} does not part its section"
        areas.append(own[0])
        rest = next(part for part in parted if part is not own[0])
    return [rest, *reversed(areas)]


def _cut(patch: Patch, area: Polygon, line: Edge | None, over: float) -> Polygon:
    """The patch's rectangle of cloth as it comes to lie: its near edge over the line by allowance and margin,
    its middle at the area's middle; the first in the middle of its area."""
    from shapely.geometry import Polygon

    corners = [complex(x, y) for x, y in area.simplify(CARRIED_ON).exterior.coords]
    if line is None:
        sides = [after - before for before, after in pairwise(corners)]
        along = max(sides, key=lambda side: round(abs(side), 6))
    else:
        along = place_of(line.end) - place_of(line.start)
    along /= abs(along)
    spots = [corner / along for corner in corners]
    low, high = min(spot.real for spot in spots), max(spot.real for spot in spots)
    near, away = min(spot.imag for spot in spots), max(spot.imag for spot in spots)
    left = (low + high - float(patch.width)) / 2
    top = (near + away - float(patch.height)) / 2
    if line is not None:
        beyond = (place_of(line.start) / along).imag
        top = near - over if near + away > 2 * beyond else away + over - float(patch.height)
    right, bottom = left + float(patch.width), top + float(patch.height)
    ring = ((left, top), (right, top), (right, bottom), (left, bottom))
    return Polygon([_pair(complex(x, y) * along) for x, y in ring])


def _trim(laid: Sequence[_Cloth], kept: Polygon) -> None:
    """Cuts off what lies beyond the folded line and its allowance."""
    for each in laid:
        if not kept.covers(each.whole):
            each.whole = each.whole.intersection(kept)
            each.seen = each.seen.intersection(kept)


def _outward(line: Edge, each: PatchPaper) -> complex:
    """A unit vector square to a line, toward the number of the patch that is sewn along it."""
    start, end = place_of(line.start), place_of(line.end)
    way = (end - start) / abs(end - start) * 1j
    toward = ((place_of(each.inside) - start) / way).real
    return way if toward > 0 else -way


def _half(line: Edge, way: complex, wide: float, far: float) -> Polygon:
    """All on this side of a line that is moved by `wide` inches along `way`."""
    from shapely.geometry import Polygon

    on = way * 1j * far
    edge = (place_of(line.start) + place_of(line.end)) / 2 + way * wide
    back = edge - way * 2 * far
    return Polygon([_pair(place) for place in (edge - on, edge + on, back + on, back - on)])


def _trimmed(paper: SectionPaper, laid: Sequence[_Cloth], wide: float) -> tuple[Laid, ...]:
    """The section cut out along its solid line, with nothing missing."""
    from shapely.ops import unary_union

    cut = _polygon(paper.cut)
    for each in laid:
        wanted = each.area.buffer(wide - CLOSE).intersection(cut)
        assert each.whole.buffer(CLOSE).covers(wanted), f"{each.patch.label} has lost its allowance"
        bare = each.area.difference(each.seen.buffer(CARRIED_ON)).area
        assert bare < CLOSE, f"{each.patch.label} shows {bare:.4f} square inches of another patch"
    bare = cut.difference(unary_union([each.whole for each in laid])).area
    assert bare < CLOSE, f"section {paper.section.label} is bare over {bare:.4f} square inches"
    return tuple(_laid(each.patch, each.seen.intersection(cut)) for each in laid)


def _polygon(ring: Sequence[Edge]) -> Polygon:
    from shapely.geometry import Polygon

    return Polygon(flat_ring(ring, FLAT))


def _laid(patch: Patch, seen: BaseGeometry) -> Laid:
    """The rings of what is seen, from the front; slips of no width left out."""
    parts = [part for part in getattr(seen, "geoms", [seen]) if part.area > CLOSE]
    rings = (ring for part in parts for ring in (part.exterior, *part.interiors))
    return Laid(patch, tuple(tuple(Spot(-x, y) for x, y in ring.coords[:-1]) for ring in rings))


def _front_line(line: Edge) -> tuple[Spot, Spot]:
    start, end = place_of(line.start), place_of(line.end)
    return Spot(-start.real, start.imag), Spot(-end.real, end.imag)


def _pair(place: complex) -> tuple[float, float]:
    return place.real, place.imag


def _size(shape: Polygon) -> tuple[float, float]:
    left, top, right, bottom = shape.bounds
    return right - left, bottom - top
