"""A ring's sides as whole sides from true corner to true corner, in complex numbers (see geometry.stroke)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from ..geometry.stroke import Stroke, ring_strokes, runs_on
from ..measure.tolerance import NEAR
from .model import Part, Side


class WholeSide(NamedTuple):
    """A side from true corner to true corner: neighbouring sides that run on smoothly under one allowance
    are one. A circle is one whole side whose start is its end."""

    stroke: Stroke
    allowance: float
    parts: tuple[Part, ...]


def whole_sides(ring: Sequence[Side]) -> tuple[WholeSide, ...]:
    """The ring's sides with those that run on smoothly joined; starts at the ring's first true corner."""
    plain = [
        WholeSide(stroke, float(side.allowance), side.parts)
        for stroke, side in zip(ring_strokes([side.edge for side in ring]), ring, strict=True)
    ]
    count = len(plain)
    corners = [at for at in range(count) if not _carries_on(plain[at - 1], plain[at])]
    if len(corners) == count:
        return tuple(plain)
    if not corners:
        return (_joined(plain),)
    ends = [*corners[1:], corners[0] + count]
    return tuple(
        _joined([plain[at % count] for at in range(first, last)])
        for first, last in zip(corners, ends, strict=True)
    )


def _joined(sides: Sequence[WholeSide]) -> WholeSide:
    first, last = sides[0], sides[-1]
    sweep = sum(side.stroke.sweep for side in sides)
    stroke = Stroke(first.stroke.start, last.stroke.end, first.stroke.center, sweep)
    return WholeSide(stroke, first.allowance, tuple(part for side in sides for part in side.parts))


def _carries_on(before: WholeSide, after: WholeSide) -> bool:
    """Whether the second side carries on the first's line or circle, under the same allowance."""
    return before.allowance == after.allowance and runs_on(before.stroke, after.stroke, NEAR)
