"""Drafted lengths and what they measure now, to one change in washing for each direction.

The least sum of Huber's loss: a reading within its error counts by its square, one further out by its
distance only, so that one slip of the tape does not bend the rest.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot, sqrt
from typing import Final

from ...measure.record import record
from ...measure.tolerance import STILL
from .model import SPREAD, Shrinkage

LEAN_SPREAD: Final = 0.01
"""Standard deviation of how far an old block leans: two per cent is much."""

ROUNDS: Final = 100


@record
class Observation:
    """A length as drafted, its direction (a step of length 1), and what it measures now."""

    drafted: float
    step: tuple[float, float]
    measured: float


def fit_shrinkage(observations: Sequence[Observation], error: float) -> Shrinkage:
    """The shrinkage that fits best; `error` is what the lengths were read to, in inches."""
    from numpy import array
    from numpy.linalg import lstsq

    shrinkage = array((1.0, 1.0, 0.0))
    for _ in range(ROUNDS):
        now = Shrinkage(*shrinkage.tolist())
        rows, rest = [], []
        for each in observations:
            off = each.measured - each.drafted * now.along(each.step)
            weight = _weight(off, error)
            rows.append([weight * each.drafted * slope for slope in _slopes(each.step, now)])
            rest.append(weight * off)
        off = -now.lean * lean_weight(error)
        rows.append([0.0, 0.0, _weight(off, error) * lean_weight(error)])
        rest.append(_weight(off, error) * off)
        moved = lstsq(array(rows), array(rest), rcond=None)[0]
        shrinkage = shrinkage + moved
        if abs(moved).max() <= STILL:
            break
    return Shrinkage(*shrinkage.tolist())


def lean_weight(error: float) -> float:
    """Inches of misfit that a lean of 1 is worth: readings and the lean are weighed by their spreads."""
    return SPREAD * error / LEAN_SPREAD


def _weight(off: float, error: float) -> float:
    """The root of the weight that makes a square of Huber's loss."""
    return 1.0 if abs(off) <= error else sqrt(error / abs(off))


def _slopes(step: tuple[float, float], at: Shrinkage) -> tuple[float, float, float]:
    """How the scale along a step changes with the scale across, the scale down, and the lean."""
    right, down = at.across * step[0] + at.lean * step[1], at.down * step[1]
    scale = hypot(right, down)
    return step[0] * right / scale, step[1] * down / scale, step[1] * right / scale
