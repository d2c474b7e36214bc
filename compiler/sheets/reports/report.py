"""What a report is made of: a compiled block; and the corners of a piece."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, degrees, radians
from typing import Protocol

from ...drafting.model import Side
from ...geometry.curves import tangent_at_end
from ...geometry.stroke import is_corner
from .report_sewing import Sewn


class Compiled(Sewn, Protocol):
    """A drafted block with its templates and how it goes together, and whether another file holds it."""

    @property
    def from_elsewhere(self) -> bool:
        """Whether the block was used, not written, in the file compiled."""
        ...


def corner_angles(ring: Sequence[Side]) -> list[float]:
    """The inner angle in degrees at each corner, clockwise from the first side's start; over 180 where the
    piece bends inward there.

    A ring of one side (a circle) has no corner, and there is none where two sides are tangent.
    """
    if len(ring) < 2:
        return []
    angles = []
    for before, after in zip((ring[-1], *ring[:-1]), ring, strict=True):
        ax, ay = tangent_at_end(before.edge)
        bx, by = (-step for step in tangent_at_end(after.edge.reversed()))
        turn = degrees(atan2(float(ax * by - ay * bx), float(ax * bx + ay * by)))
        if is_corner(radians(turn)):
            angles.append(180 - turn)
    return angles
