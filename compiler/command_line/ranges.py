"""Options that take a range: `12`, `5..20`, `..4`, `6in..12in`."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any, Final

import click

from ..door.choices import LONGEST
from ..measure.length import UNITS, exact_number
from ..sheets.finding import Range
from .choices import ParamKind

BOUND: Final = re.compile(r"(\d+(?:\.\d+)?|\d+/\d+|\d+ \d+/\d+)(?: ?([a-z]+))?")
BETWEEN: Final = ".."
GRID: Final = re.compile(r"(\d{1,3}) ?x ?(\d{1,3})")


class RangeChoice(ParamKind):
    """A number, or two parted by `..`, either left out. `units`: what each may bear, and its worth."""

    name = "range"

    def __init__(self, example: str, units: dict[str, Fraction] | None = None) -> None:
        self.example = example
        self.units = units or {}

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Range:
        """The range, both bounds included."""
        if isinstance(value, Range):
            return value
        first, between, last = value.strip().partition(BETWEEN)
        least = self._bound(first.strip(), value, param, ctx)
        most = self._bound(last.strip(), value, param, ctx) if between else least
        if (least is None and most is None) or (least is not None and most is not None and least > most):
            self._refuse(value, param, ctx)
        return Range(least, most)

    def _bound(
        self, text: str, value: str, param: click.Parameter | None, ctx: click.Context | None
    ) -> Fraction | None:
        if not text:
            return None
        found = BOUND.fullmatch(text) if len(text) <= LONGEST else None
        number = exact_number(found[1]) if found else None
        unit = (found[2] or "") if found else ""
        if number is None or (unit not in self.units if self.units else unit):
            self._refuse(value, param, ctx)
        assert number is not None
        return number * self.units.get(unit, Fraction(1))

    def _refuse(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> None:
        self.fail(f"'{value[:LONGEST]}' is not a range. Write it as {self.example}.", param, ctx)


class GridChoice(ParamKind):
    """A grid, `4x4`. Gives (across, down)."""

    name = "grid"

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[int, int]:
        """The squares across and down."""
        if isinstance(value, tuple):
            return value
        found = GRID.fullmatch(value.strip())
        if found is None:
            self.fail(f"'{value[:LONGEST]}' is not a grid. Write it as 4x4.", param, ctx)
        return int(found[1]), int(found[2])


SIZES: Final = RangeChoice("6in..12in", dict(UNITS))
ANGLES: Final = RangeChoice("30deg.. or 30..60", {"": Fraction(1), "deg": Fraction(1)})
COUNTS: Final = RangeChoice("5..20, ..20 or 9")
