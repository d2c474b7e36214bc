"""How a reader is spoken to: in which units lengths are put into sentences."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final, Literal

from ..measure.length import UNITS
from ..measure.marks import RULER_STEP, nearest_mark
from ..measure.record import record
from ..measure.tolerance import Number
from .numbers import exact_text, number_text, reads_exactly, reads_in_inches, ruler_text
from .phrases import one_of
from .rulers import length_text, length_up, number_on, unit_on

CENTIMETRE_DIGITS: Final = 2
"""Decimals of a centimetre that are told: a tenth of a millimetre, finer than any tape."""

FINE_DIGITS: Final = 3
"""Decimals of lengths that no ruler shows."""


@record
class Say:
    """Puts numbers into words. Lengths come in as inches, whatever they are told in.

    `ruler`: inches between the marks of the maker's own ruler, by which all that is cut is told. `strictly`:
    what was drafted in centimetres is told in inches, too; where nobody asked for inches, a length that is
    whole in centimetres is told in those.
    """

    unit: Literal["in", "cm"] = "in"
    ruler: Fraction = RULER_STEP
    strictly: bool = False

    def length(self, inches: Number) -> str:
        """`3 7/8in`; `9.84cm`."""
        if self.unit == "cm":
            return f"{_centimetres(inches)}cm"
        if self.strictly and not reads_in_inches(inches):
            return f"about {ruler_text(nearest_mark(inches))}"
        return ruler_text(inches)

    def about(self, inches: Number) -> str:
        """A length as a ruler reads it: `about 2 3/4in` where it lies on no mark, `0.030in` where the nearest
        mark is none."""
        if self.unit == "cm" or self.strictly or reads_exactly(inches):
            return self.length(inches)
        mark = nearest_mark(inches)
        return f"about {self.length(mark)}" if mark else self.fine(inches)

    def about_size(self, width: Number, height: Number) -> str:
        """`2 3/4in x about 3 1/8in`."""
        return f"{self.about(width)} x {self.about(height)}"

    def box(self, width: Number, height: Number) -> str:
        """`5in x 5in`; `about 4 1/4in x 5in` where a side lies on no mark of a ruler."""
        if self.unit == "cm" or (reads_exactly(width) and reads_exactly(height)):
            return self.size(width, height)
        return f"about {self.length(nearest_mark(width))} x {self.length(nearest_mark(height))}"

    @property
    def usual_seam(self) -> str:
        """`1/4in`; `0.75cm`: what seams take that no pattern states, as that of a binding (common practice,
        no published source)."""
        return "0.75cm" if self.unit == "cm" else "1/4in"

    def number(self, inches: Number) -> str:
        """The number of a length alone, where its unit stands over it: `3 7/8`; `9.84`."""
        return number_text(inches) if self.unit == "in" else _centimetres(inches)

    def area(self, square_inches: Number) -> Number:
        """The number of square inches, or of square centimetres."""
        return square_inches / UNITS[self.unit] ** 2

    @property
    def area_unit(self) -> str:
        """`sq in`; `sq cm`."""
        return f"sq {self.unit}"

    def fine(self, inches: Number) -> str:
        """A length too small for a ruler: `0.012in`; `0.030cm`."""
        return f"{float(inches / UNITS[self.unit]):.{FINE_DIGITS}f}{self.unit}"

    def whole(self, inches: Number) -> str:
        """A length that is a bound and no measure: `10,000in`; `25,400cm`."""
        return f"{round(inches / UNITS[self.unit]):,}{self.unit}"

    def exact(self, inches: Fraction) -> str:
        """`1/64in`: exactly, whatever its denominator; centimetres as any other length."""
        return f"{exact_text(inches)}in" if self.unit == "in" else self.length(inches)

    def size(self, width: Number, height: Number) -> str:
        """`8in x 8in`."""
        return f"{self.length(width)} x {self.length(height)}"

    def on_ruler(self, inches: Number) -> str:
        """`3 7/8in`; `9.75cm` of who cuts by a ruler in centimetres, or is spoken to in them."""
        return length_text(inches, self.ruler) if self.unit == "in" else self.length(inches)

    def each_on_ruler(self, lengths: Sequence[Number]) -> str:
        """`3, 3 3/8 and 3 3/4in`: the unit once."""
        if self.unit == "cm":
            return f"{one_of([_centimetres(each) for each in lengths], 'and')}cm"
        return f"{one_of([number_on(each, self.ruler) for each in lengths], 'and')}{unit_on(self.ruler)}"

    def up_on_ruler(self, inches: Number) -> str:
        """The same, never less than it is."""
        return length_up(inches, self.ruler)

    def size_on_ruler(self, width: Number, height: Number) -> str:
        """`3 7/8in x 3 7/8in`."""
        return f"{self.on_ruler(width)} x {self.on_ruler(height)}"

    def cutting_by(self, step: Fraction) -> Say:
        """To the same reader, whose ruler has marks so many inches apart."""
        return replace(self, ruler=step)


def _centimetres(inches: Number) -> str:
    shown = f"{float(inches / UNITS['cm']):.{CENTIMETRE_DIGITS}f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown


INCHES: Final = Say("in")
CENTIMETRES: Final = Say("cm")


def by_ruler(step: Fraction) -> Say:
    """To a maker whose ruler has marks so many inches apart."""
    return Say(ruler=step)
