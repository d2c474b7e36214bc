"""Outlines offset by an independent library, and how far two sets of outlines lie apart."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

import pyclipper
from piecewright.geometry.stroke import Stroke
from shapely.geometry import LinearRing, MultiPoint
from shapely.ops import unary_union

SCALE = 1e7  # the library counts in whole numbers: ten-millionths of an inch
POINTED = 1e4  # mitre limit, in allowances: higher than any mitre here


def flat(ring: Sequence[Stroke], step: float = 1e-5) -> list[tuple[float, float]]:
    """The ring's corners, arcs as chords no further off than `step` inches."""
    places = []
    for stroke in ring:
        count = 1
        if stroke.center is not None:
            count = max(2, ceil(abs(stroke.sweep) / (8 * step / stroke.radius) ** 0.5))
        places += [stroke.at(at / count) for at in range(count)]
    return [(place.real, place.imag) for place in places]


def clipper_outset(
    rings: Sequence[Sequence[tuple[float, float]]], width: float
) -> list[list[tuple[float, float]]]:
    """The outlines of the rings, outer and holes together, offset outward with mitred corners."""
    offset = pyclipper.PyclipperOffset(POINTED, 0.25)
    for ring in rings:
        path = [(round(x * SCALE), round(y * SCALE)) for x, y in ring]
        offset.AddPath(path, pyclipper.JT_MITER, pyclipper.ET_CLOSEDPOLYGON)
    return [[(x / SCALE, y / SCALE) for x, y in path] for path in offset.Execute(width * SCALE)]


def apart(
    rings: Sequence[Sequence[tuple[float, float]]], others: Sequence[Sequence[tuple[float, float]]]
) -> float:
    """The furthest that a corner of one set lies from the lines of the other, either way, in inches."""
    if not rings or not others:
        return 0.0 if not rings and not others else float("inf")
    lines = [unary_union([LinearRing(ring) for ring in each if len(ring) > 2]) for each in (rings, others)]
    furthest = 0.0
    for each, line in ((rings, lines[1]), (others, lines[0])):
        points = MultiPoint([place for ring in each for place in ring])
        furthest = max(furthest, *(point.distance(line) for point in points.geoms))
    return furthest
