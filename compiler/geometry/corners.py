"""The corners of a ring of edges."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, degrees, radians

from .curves import tangent_at_end
from .edge import Edge
from .stroke import is_corner


def corner_angles(ring: Sequence[Edge]) -> list[float]:
    """The inner angle in degrees at each corner, clockwise from the first edge's start; over 180 where the
    ring bends inward there.

    A ring of one edge (a circle) has no corner, and there is none where two edges are tangent.
    """
    if len(ring) < 2:
        return []
    angles = []
    for before, after in zip((ring[-1], *ring[:-1]), ring, strict=True):
        ax, ay = tangent_at_end(before)
        bx, by = (-step for step in tangent_at_end(after.reversed()))
        turn = degrees(atan2(float(ax * by - ay * bx), float(ax * bx + ay * by)))
        if is_corner(radians(turn)):
            angles.append(180 - turn)
    return angles
