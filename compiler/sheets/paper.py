"""The papers that sheets are laid out for. Sizes are inches, upright, exact."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal, get_args

from ..measure.length import POINTS_PER_INCH, UNITS
from ..words.phrases import did_you_mean, one_of


class PaperUnknown(Exception):
    """No such paper; the text says so and names the nearest. For the command line."""


@dataclass(frozen=True, slots=True)
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


def paper_named(name: str) -> PaperSize:
    """The paper of that name, in small or capital letters. PaperUnknown where there is none."""
    for paper in PAPERS:
        if paper.name == name.strip().lower():
            return paper
    help = did_you_mean(name.lower(), NAMES) or f"There is {one_of(NAMES, 'and')}."
    raise PaperUnknown(f"There is no paper called `{name}`. {help}")
