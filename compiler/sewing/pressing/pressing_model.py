"""What later folders may rely on: which way the allowances of an assembly's seams are pressed."""

from __future__ import annotations

from typing import Literal

from ...geometry.edge import Point
from ...measure.record import record

Toward = Literal["first", "second", "open"]


@record
class Pressing:
    """Which way the allowances of a step's seam lie: toward its first or second part, or open.

    `ways` has one entry for each copy of the unit that the step makes: those of a batch agree unless seams
    that meet want otherwise. `reason` is why: 'darker', 'opposite', 'either' or 'open'.
    """

    step: int
    ways: tuple[Toward, ...]
    reason: Literal["darker", "opposite", "either", "open"]

    @property
    def toward(self) -> Toward:
        """The first copy's way."""
        return self.ways[0]

    @property
    def even(self) -> bool:
        """Whether the whole batch is pressed alike."""
        return len(set(self.ways)) == 1


@record
class Meeting:
    """Two seams of steps that meet end to end at a place on a later seam, and whether they lie opposite."""

    at: Point
    steps: tuple[int, int]
    across: int  # the step of the later seam
    opposite: bool


@record
class PressingPlan:
    """A direction for each step's seam, in order of steps, and every meeting."""

    seams: tuple[Pressing, ...]
    meetings: tuple[Meeting, ...]

    @property
    def opposite(self) -> int:
        """At how many meetings the seams lie opposite; at each of the others one is pressed open."""
        return sum(each.opposite for each in self.meetings)
