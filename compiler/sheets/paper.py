"""The papers that sheets are laid out for. Sizes are inches, upright, exact."""

from __future__ import annotations

from fractions import Fraction
from typing import Final, Literal, get_args

from ..measure.length import POINTS_PER_INCH, UNITS
from ..measure.record import record


@record
class PaperSize:
    """A sheet of paper, upright."""

    name: str
    width: Fraction
    height: Fraction

    @property
    def width_points(self) -> float:
        """Points across."""
        return float(self.width * POINTS_PER_INCH)

    @property
    def height_points(self) -> float:
        """Points down."""
        return float(self.height * POINTS_PER_INCH)


Paper = Literal["letter", "a4"]
NAMES: Final[tuple[Paper, ...]] = get_args(Paper)
"""What papers are asked for by."""

PAPERS: Final = (
    PaperSize("letter", Fraction(17, 2), Fraction(11)),  # ANSI/ASME Y14.1 size A; CSS Paged Media 3, `letter`
    PaperSize("a4", 210 * UNITS["mm"], 297 * UNITS["mm"]),  # ISO 216; CSS Paged Media 3, `A4`
)


def paper_named(name: Paper) -> PaperSize:
    """The paper of that name."""
    return next(paper for paper in PAPERS if paper.name == name)
