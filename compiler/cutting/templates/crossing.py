"""Where strokes meet: lines and circles, extended or not. Inches; places are complex numbers (see stroke)."""

from __future__ import annotations

from cmath import phase
from collections.abc import Iterable, Sequence
from math import pi, sqrt
from typing import Final

from ...geometry.stroke import Stroke, runs_on
from ...measure.tolerance import CRUMB, FLATTEN, NEAR, NEVER_MEET

SHOWN: Final = 2 * FLATTEN
"""Inches. A side has a cut line of its own where more than this is left of it: less would not show."""


def carrier_meetings(one: Stroke, two: Stroke) -> list[complex]:
    """The places where the endless lines or whole circles of two strokes meet: none, one or two."""
    if one.center is None and two.center is None:
        along, across = one.end - one.start, two.end - two.start
        sine = (along.conjugate() * across).imag
        if abs(sine) <= NEVER_MEET * abs(along) * abs(across):
            return []
        share = ((two.start - one.start).conjugate() * across).imag / sine
        return [one.start + along * share]
    if one.center is None:
        return _line_and_circle(one, two)
    if two.center is None:
        return _line_and_circle(two, one)
    return _circles(one, two)


def _line_and_circle(line: Stroke, arc: Stroke) -> list[complex]:
    assert arc.center is not None
    along = (line.end - line.start) / abs(line.end - line.start)
    from_start = (arc.center - line.start) * along.conjugate()
    foot = line.start + along * from_start.real
    half = arc.radius**2 - from_start.imag**2
    if half < -NEAR * arc.radius:
        return []
    reach = sqrt(max(half, 0.0))
    return [foot - along * reach, foot + along * reach]


def _circles(one: Stroke, two: Stroke) -> list[complex]:
    assert one.center is not None and two.center is not None
    apart = two.center - one.center
    distance = abs(apart)
    if distance <= NEAR:
        return []
    along = (distance**2 + one.radius**2 - two.radius**2) / (2 * distance)
    half = one.radius**2 - along**2
    if half < -NEAR * max(one.radius, two.radius):
        return []
    unit = apart / distance
    reach = sqrt(max(half, 0.0))
    return [one.center + unit * complex(along, -reach), one.center + unit * complex(along, reach)]


def share_of(stroke: Stroke, place: complex) -> float:
    """The share of the stroke's length at which it passes the place; under 0 or over 1 off its ends."""
    if stroke.center is None:
        along = stroke.end - stroke.start
        return ((place - stroke.start) * along.conjugate()).real / abs(along) ** 2
    turned = phase((place - stroke.center) / (stroke.start - stroke.center)) % (2 * pi)
    sweep = abs(stroke.sweep)
    if stroke.sweep < 0:
        turned = 2 * pi - turned if turned else 0.0
    if turned > sweep + (2 * pi - sweep) / 2:
        turned -= 2 * pi
    return turned / sweep


def meetings(one: Stroke, two: Stroke) -> list[tuple[float, float]]:
    """The shares of each at which two strokes meet, ends included; of a common run, its ends."""
    places = carrier_meetings(one, two) or _shared_ends(one, two)
    shares = []
    for place in places:
        first, second = share_of(one, place), share_of(two, place)
        slack, other_slack = NEAR / one.length, NEAR / two.length
        if -slack <= first <= 1 + slack and -other_slack <= second <= 1 + other_slack:
            shares.append((min(max(first, 0.0), 1.0), min(max(second, 0.0), 1.0)))
    return shares


def _shared_ends(one: Stroke, two: Stroke) -> list[complex]:
    """Ends of either that lie on the other, for strokes on one line or one circle."""
    ends = [place for place in (two.start, two.end) if off_carrier(one, place) <= NEAR]
    return ends + [place for place in (one.start, one.end) if off_carrier(two, place) <= NEAR]


def outside(stroke: Stroke, place: complex) -> float:
    """Inches that a place lies outside a side's endless line or whole circle; negative within, where its
    cloth is."""
    if stroke.center is not None:
        return (abs(place - stroke.center) - stroke.radius) * (1 if stroke.sweep > 0 else -1)
    along = stroke.end - stroke.start
    return -((place - stroke.start) * along.conjugate()).imag / abs(along)


def off_carrier(stroke: Stroke, place: complex) -> float:
    """Inches from a place to the stroke's endless line or whole circle."""
    return abs(outside(stroke, place))


def on_carrier(stroke: Stroke, side: Stroke) -> bool:
    """Whether a stroke lies on a side's endless line or whole circle, and runs the same way."""
    if side.center is None or stroke.center is None:
        alike = stroke.center is side.center
        alike = alike and (stroke.direction(0) * side.direction(0).conjugate()).real > 0
    else:
        alike = abs(stroke.center - side.center) <= CRUMB and (stroke.sweep > 0) == (side.sweep > 0)
    return alike and max(off_carrier(side, place) for place in (stroke.start, stroke.end)) <= CRUMB


def runs_along(stroke: Stroke, side: Stroke) -> bool:
    """Whether a stroke covers some of a side, the same way."""
    if not on_carrier(stroke, side):
        return False
    if side.center is None:
        first, last = share_of(side, stroke.start), share_of(side, stroke.end)
        return min(last, 1.0) - max(first, 0.0) > SHOWN / side.length
    first, sweep = share_of(side, stroke.start), abs(stroke.sweep / side.sweep)
    once = 2 * pi / abs(side.sweep)
    return any(
        min(first + around + sweep, 1.0) - max(first + around, 0.0) > SHOWN / side.length
        for around in (-once, 0.0, once)
    )


def distance(stroke: Stroke, place: complex) -> float:
    """Inches from a place to the nearest of a stroke."""
    if stroke.center is None or abs(place - stroke.center) > NEAR:
        share = share_of(stroke, place)
        if 0 <= share <= 1:
            return off_carrier(stroke, place)
    return min(abs(place - stroke.start), abs(place - stroke.end))


def part_of(stroke: Stroke, first: float, last: float) -> Stroke:
    """The stretch of the stroke's carrier between two shares, which may lie off its ends."""
    if first == 0.0 and last == 1.0:
        return stroke
    start, end = stroke.at(first), stroke.at(last)
    return Stroke(start, end, stroke.center, stroke.sweep * (last - first))


def joined_up(strokes: Iterable[Stroke]) -> list[Stroke]:
    """The closed ring without crumbs, smooth runs made one, each stroke starting where the last ends."""
    kept = [stroke for stroke in strokes if stroke.length > CRUMB]
    merged: list[Stroke] = []
    for stroke in kept:
        if merged and _carries_on(merged[-1], stroke):
            merged[-1] = merged[-1].through(stroke)
        else:
            merged.append(stroke)
    if len(merged) > 1 and _carries_on(merged[-1], merged[0]):
        merged[0] = merged.pop().through(merged[0])
    return [
        stroke if stroke.start == merged[at - 1].end else stroke._replace(start=merged[at - 1].end)
        for at, stroke in enumerate(merged)
    ]


def _carries_on(one: Stroke, two: Stroke) -> bool:
    return abs(one.end - two.start) <= CRUMB and runs_on(one, two, NEAR)


def winding(ring: Sequence[Stroke], place: complex) -> float:
    """How many times the ring goes clockwise round a place that doesn't lie on it."""
    total = 0.0
    for stroke in ring:
        if stroke.center is None:
            total += phase((stroke.end - place) / (stroke.start - place))
        else:
            total += _arc_turn(stroke, place)
    return total / (2 * pi)


def _arc_turn(arc: Stroke, place: complex) -> float:
    """Radians that an arc turns about a place: its chords' turns, and a whole turn between arc and chord."""
    quarters = max(1, int(abs(arc.sweep) / (pi / 2)) + 1)
    total = 0.0
    assert arc.center is not None
    within = abs(place - arc.center) < arc.radius
    for at in range(quarters):
        start, end = arc.at(at / quarters), arc.at((at + 1) / quarters)
        total += phase((end - place) / (start - place)) if start != place != end else 0.0
        beyond = ((end - start).conjugate() * (place - start)).imag
        if within and (beyond < 0) == (arc.sweep > 0) and beyond != 0:
            total += 2 * pi if arc.sweep > 0 else -2 * pi
    return total
