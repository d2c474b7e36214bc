"""How a thing lies, and the motion that lays it so, in complex numbers (see stroke).

This is the fast form of a motion, for the passes that match, lay and sew again thousands of strokes within
tolerances: one multiplication a place, floats only. What decides where a vertex lies takes a Transform, which
keeps fractions.
"""

from __future__ import annotations

from cmath import phase
from math import pi
from typing import Final, NamedTuple

from ..measure.angle import cosine_sine
from ..measure.tolerance import ROUNDED
from .stroke import Stroke


class Pose(NamedTuple):
    """A way to lie: turned so many degrees clockwise, after mirroring left to right if `reversed`."""

    turned: float = 0.0
    reversed: bool = False

    def motion(self, about: complex = 0j, to: complex | None = None) -> Motion:
        """The motion that lays a thing so about a place, then moves that place to another."""
        turn = turning(self.turned)
        still = Motion(turn, 0j, self.reversed)
        return still._replace(shift=(about if to is None else to) - still(about))


class Motion(NamedTuple):
    """A turn about 0, after mirroring left to right in the upright line through 0 if it `mirrors`; then a
    shift."""

    turn: complex = 1 + 0j
    shift: complex = 0j
    mirrors: bool = False

    def __call__(self, place: complex) -> complex:
        """Where a place goes."""
        if self.mirrors:
            place = -place.conjugate()
        return place * self.turn + self.shift

    def direction(self, along: complex) -> complex:
        """Which way a direction comes to point."""
        return (-along.conjugate() if self.mirrors else along) * self.turn

    def back(self, place: complex) -> complex:
        """The place that goes there."""
        return self.direction_back(place - self.shift)

    def direction_back(self, along: complex) -> complex:
        """The direction that comes to point so."""
        turned_back = along / self.turn
        return -turned_back.conjugate() if self.mirrors else turned_back

    def after(self, first: Motion) -> Motion:
        """The motion that does `first`, then this."""
        turn = first.turn.conjugate() if self.mirrors else first.turn
        return Motion(self.turn * turn, self(first.shift), self.mirrors != first.mirrors)

    @property
    def degrees(self) -> float:
        """The turn in degrees clockwise, 0 <= degrees < 360."""
        degrees = phase(self.turn) * 180 / pi % 360
        return 0.0 if 360 - degrees < ROUNDED else degrees

    def stroke(self, stroke: Stroke) -> Stroke:
        """Where a stroke goes, start to start."""
        center = None if stroke.center is None else self(stroke.center)
        sweep = -stroke.sweep if self.mirrors else stroke.sweep
        return Stroke(self(stroke.start), self(stroke.end), center, sweep)

    def stroke_back(self, stroke: Stroke) -> Stroke:
        """The stroke that goes there."""
        center = None if stroke.center is None else self.back(stroke.center)
        sweep = -stroke.sweep if self.mirrors else stroke.sweep
        return Stroke(self.back(stroke.start), self.back(stroke.end), center, sweep)


STAY: Final = Motion()
TURN_OVER: Final = Motion(mirrors=True)


def turning(degrees: float) -> complex:
    """The factor that turns by so many degrees clockwise; exact for quarter turns."""
    return complex(*map(float, cosine_sine(degrees)))
