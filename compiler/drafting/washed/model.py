"""What is measured, what is fitted, and what comes of it. Lengths are inches.

A *scale* is washed length over drafted length: 0.98 where a direction has shrunk by 2 per cent.
"""

from __future__ import annotations

from fractions import Fraction
from math import hypot
from typing import Final

from ...diagnostics.source import Span
from ...geometry.edge import Point
from ...language import tree
from ...measure.length import UNITS
from ...measure.record import record
from ...measure.tolerance import Number
from ...words.numbers import exact_text

SPREAD: Final = 0.6
"""Standard deviation of a reading, in units of what it was read to: a reading off by up to one mark either
way, all errors alike, has 1/sqrt(3)."""


@record
class Reading:
    """One length in a `point` line: read from `origin`, in the block as drafted, along a step of length 1.

    `reach` is how far the point lies that the reading goes towards; None for a reading at an angle, or where
    it cannot be told where the reading lies (then `origin` is None, too).
    """

    name: str  # the point that the line defines
    phrase: tree.LengthAlong | tree.LengthAtAngle
    length: Fraction
    origin: Point | None
    step: tuple[float, float]
    reach: Number | None
    toward: Point | None = None

    @property
    def span(self) -> Span:
        """The words of the length."""
        return self.phrase.length.span

    @property
    def axis(self) -> str:
        """`across`, `down`, or `slanted`."""
        if abs(self.step[1]) < STRAIGHT:
            return "across"
        return "down" if abs(self.step[0]) < STRAIGHT else "slanted"


STRAIGHT: Final = 0.02
"""Sine under which a line counts as going straight across or down: about one degree, the lean of a block
that measuring square cannot show."""


@record
class Ruler:
    """What a block is drafted with: its unit, and the parts of one that it marks, the simplest first."""

    unit: str
    marks: tuple[int, ...]
    easy: tuple[int, ...]  # those that are read off without looking twice

    def exact(self, length: Fraction) -> str:
        """The length as the language writes it, exact."""
        return exact_text(length / UNITS[self.unit]) + self.unit


@record
class Shrinkage:
    """How washing changed the block: a scale for each direction, and how far it leans (inches across for each
    inch down)."""

    across: float
    down: float
    lean: float = 0.0

    def along(self, step: tuple[float, float]) -> float:
        """The scale along a step of length 1: both by their parts."""
        return hypot(self.across * step[0] + self.lean * step[1], self.down * step[1])


@record
class Snapped:
    """A reading with the drafted length found for it.

    `share` is what part of the way to the other point it is, where that is the simpler thing to say.
    `misfit` is the reading less what the drafted length measures after washing, in inches.
    """

    reading: Reading
    length: Number
    share: Fraction | None
    misfit: float
    on_grid: bool


@record
class Disagreement:
    """A reading that lies off the grid on which others lie, and the longest of those.

    `implied`: the change in washing, in per cent, that would put it on the grid; `theirs`: that of the other.
    """

    odd: Snapped
    other: Snapped
    off: float  # inches off the grid
    cell: float  # inches between two lines of the grid
    implied: float
    theirs: float


@record
class GridGuess:
    """A grid that the readings may lie on. Misfits are inches, over the readings that lie on it."""

    across: int
    down: int
    misfit: float  # root of the mean square
    off: int  # readings that do not lie on it
    cost: float  # less is likelier; differences are natural logarithms of odds
    shrinkage: Shrinkage
    lengths: tuple[Number | None, ...]  # drafted length of each reading; None where it lies off


@record
class Measured:
    """A washed block, and the block as it was drafted."""

    washed: tree.Washed
    block: tree.Block  # with every reading replaced; it has no `washed`
    width: Number
    height: Number
    error: Fraction  # what it was read to
    ruler: Ruler
    shrinkage: Shrinkage
    snapped: tuple[Snapped, ...]
    grids: tuple[GridGuess, ...]  # the likeliest first
