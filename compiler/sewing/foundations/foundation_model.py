"""What later folders may rely on: a block sewn on paper foundations. Inches; places are the block's."""

from __future__ import annotations

from fractions import Fraction

from ...geometry.edge import Edge, Point
from ...measure.record import record


@record
class Patch:
    """One numbered patch of a foundation, and the rectangle of cloth to cut for it: along its seam, and away.

    `line` is the line that is sewn when it is added, in the block; the first patch has none.
    """

    label: str  # A1, A2, ...
    piece: int
    fabric: str
    line: Edge | None
    width: Fraction
    height: Fraction

    @property
    def size(self) -> tuple[Fraction, Fraction]:
        """The sides of the rectangle, the longer first: as it is cut of cloth that may be turned."""
        return max(self.width, self.height), min(self.width, self.height)


@record
class Section:
    """Patches sewn on one paper in order. `outline` is finished and unmirrored, in the block's places."""

    label: str
    patches: tuple[Patch, ...]
    outline: tuple[Edge, ...]

    @property
    def order(self) -> tuple[int, ...]:
        """Piece numbers in sewing order."""
        return tuple(patch.piece for patch in self.patches)


@record
class SectionJoin:
    """Two groups of sections joined by one straight seam: 'A' and 'B', then 'A-B' and 'C'."""

    first: str
    second: str
    seam: Edge


@record
class CurvedSeam:
    """A seam between those pieces bends, and paper folds along straight lines only."""

    pieces: tuple[int, ...]


@record
class ClosedSeam:
    """The seam round a piece closes on itself."""

    piece: int


@record
class NoSeamAcross:
    """Where those pieces meet no seam runs straight across."""

    pieces: tuple[int, ...]
    at: Point


Refusal = CurvedSeam | ClosedSeam | NoSeamAcross
"""The junction that keeps a block off paper."""


@record
class Foundations:
    """How the block is sewn on paper; or why it can't be."""

    why_not: Refusal | None
    sections: tuple[Section, ...]
    joins: tuple[SectionJoin, ...]
    margin: Fraction  # inches beyond the allowance on every side of each patch's cloth

    @property
    def possible(self) -> bool:
        """Whether the block can be sewn on paper."""
        return self.why_not is None
