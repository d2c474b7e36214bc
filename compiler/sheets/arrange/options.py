"""How sheets are to be made: what a user chooses at the command line."""

from __future__ import annotations

from fractions import Fraction
from typing import Final, Literal

from ...measure.record import record
from ...measure.tolerance import Number
from ...words.say import INCHES, Say
from ..paper import Paper

LEAST_MEASURED: Final = Fraction(4, 5)
MOST_MEASURED: Final = Fraction(5, 4)
"""Inches that the one-inch square may have measured. A printer that is further out was asked to fit or to
put two pages on one sheet, and a correction would only hide that."""


@record
class SheetOptions:
    """Paper, kind of template, lines, and the correction for printers that shrink."""

    paper: Paper = "letter"
    kind: Literal["allowance", "finished", "window"] = "allowance"
    lines: Literal["cut-solid", "cut-dashed"] = "cut-solid"
    measured: Number = Fraction(1)
    """What the one-inch check square measured, in inches, when it was last printed."""
    say: Say = INCHES
    """In which units lengths are told, and on which ruler."""
    settings: tuple[tuple[str, str], ...] = ()
    """What the folder's settings say, to be told among the defaults."""
    pictures: bool = True
    """Whether pictures are drawn: a terminal shows none, and is told instead what they show."""

    def __post_init__(self) -> None:
        assert LEAST_MEASURED <= self.measured <= MOST_MEASURED, self.measured
