"""Room for the words that do not fit inside a template, and the leader that ties them to it."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, hypot, inf
from typing import Final

from ...measure.record import record
from ..drawing.lettering import descent
from .label import SetLine
from .paths import Ring, Spot
from .room import Box
from .style import measure

AWAY: Final = 11.0
"""Points between a template and the words beside it: room for a leader that is seen as one."""

GRAIN_WIDE: Final = 30.0
"""Points kept to the left of the words where the grain arrow stands beside as well."""


GRAIN_TALL: Final = 26.0  # points for each of those arrows, whatever its heading
TAG_WIDE: Final = 8.0  # points for their numbers, where there are several
ARROWS_HIGH: Final = 8  # arrows one under another; more stand in further columns, or they outgrow a page


@record
class Beside:
    """Where the words beside a template stand, and the leader to its outline."""

    box: Box
    leader: tuple[Spot, Spot]


def words_box(lines: Sequence[SetLine], arrows: int) -> tuple[float, float]:
    """Width and height of words set beside a template, with so many grain arrows to their left."""
    wide = max(measure(line.text, line.size, line.bold) for line in lines)
    last = lines[-1]
    tall = last.baseline + descent(last.size, last.bold)
    columns = ceil(arrows / ARROWS_HIGH)
    return wide + columns * column_wide(arrows), max(tall, GRAIN_TALL * min(arrows, ARROWS_HIGH))


def column_wide(arrows: int) -> float:
    """The width of one column of so many grain arrows in all; several have their numbers beside them."""
    return GRAIN_WIDE + (TAG_WIDE if arrows > 1 else 0.0)


def place_beside(ring: Ring, size: tuple[float, float], widest: float) -> Beside:
    """Words of that size, beside the outline: in a corner its own box leaves free, else where they add least.

    `widest` is the width of the page's body: the two together are never wider if they can stand otherwise.
    """
    wide, tall = size
    left, top, right, bottom = box_of(ring)
    corners = ((left, top), (right - wide, top), (right - wide, bottom - tall), (left, bottom - tall))
    for x, y in corners:
        box = (x, y, x + wide, y + tall)
        if right - left >= wide and bottom - top >= tall and not meets(ring, _grown(box, AWAY)):
            return Beside(box, leader_to(ring, box))
    middle = (top + bottom - tall) / 2
    choices = [
        (right + AWAY, max(top, min(middle, bottom - tall))),
        (left, bottom + AWAY),
    ]
    boxes = [(x, y, x + wide, y + tall) for x, y in choices]
    fitting = [box for box in boxes if box[2] - left <= widest] or boxes[1:]
    best = min(
        fitting, key=lambda box: (max(right, box[2]) - left) * (max(bottom, box[3]) - min(top, box[1]))
    )
    return Beside(best, leader_to(ring, best))


def leader_to(ring: Ring, box: Box) -> tuple[Spot, Spot]:
    """The shortest line from the middle of one of the box's sides to the outline."""
    left, top, right, bottom = box
    x, y = (left + right) / 2, (top + bottom) / 2
    gap = 2.0  # points between the words and the leader's end
    starts = (Spot(left - gap, y), Spot(x, top - gap), Spot(right + gap, y), Spot(x, bottom + gap))
    ends = [(start, nearest_on(ring, start)) for start in starts]
    return min(ends, key=lambda pair: hypot(pair[1].x - pair[0].x, pair[1].y - pair[0].y))


def nearest_on(ring: Ring, spot: Spot) -> Spot:
    """The point of the outline nearest to a place."""
    best, found = inf, ring[0]
    x1, y1 = ring[-1]
    for x2, y2 in ring:
        dx, dy = x2 - x1, y2 - y1
        square = dx * dx + dy * dy
        share = max(0.0, min(1.0, ((spot.x - x1) * dx + (spot.y - y1) * dy) / square)) if square else 0.0
        x, y = x1 + share * dx, y1 + share * dy
        far = hypot(x - spot.x, y - spot.y)
        if far < best:
            best, found = far, Spot(x, y)
        x1, y1 = x2, y2
    return found


def meets(ring: Ring, box: Box) -> bool:
    """Whether the outline or its inside and the box have anything in common."""
    left, top, _right, bottom = box
    inside = False
    y = (top + bottom) / 2
    x1, y1 = ring[-1]
    for x2, y2 in ring:
        if (y1 < bottom or y2 < bottom) and (y1 > top or y2 > top) and _crosses(x1, y1, x2, y2, box):
            return True
        if (y1 > y) != (y2 > y) and x1 + (y - y1) * (x2 - x1) / (y2 - y1) < left:
            inside = not inside
        x1, y1 = x2, y2
    return inside


def _crosses(x1: float, y1: float, x2: float, y2: float, box: Box) -> bool:
    """Whether a line that reaches into the box's band reaches into the box."""
    left, top, right, bottom = box
    if y1 > y2:
        x1, y1, x2, y2 = x2, y2, x1, y1
    if y1 < top:
        x1, y1 = x1 + (top - y1) * (x2 - x1) / (y2 - y1), top
    if y2 > bottom:
        x2, y2 = x1 + (bottom - y1) * (x2 - x1) / (y2 - y1), bottom
    return max(x1, x2) > left and min(x1, x2) < right


def box_of(*rings: Ring) -> Box:
    """The box round rings."""
    xs = [x for ring in rings for x, _ in ring]
    ys = [y for ring in rings for _, y in ring]
    return min(xs), min(ys), max(xs), max(ys)


def _grown(box: Box, by: float) -> Box:
    left, top, right, bottom = box
    return left - by, top - by, right + by, bottom + by
