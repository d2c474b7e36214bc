"""Options that take a range: `12`, `5..20`, `..4`, `6in..12in`."""

from __future__ import annotations

from fractions import Fraction
from typing import Any, Final

import click

from ..door.finding import ANGLE_UNITS, UNITS, Range, grid_of, range_of
from .choices import ParamKind, understood


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
        return understood(self, lambda words: range_of(words, self.units, self.example), value, param, ctx)


class GridChoice(ParamKind):
    """A grid, `4x4`. Gives (across, down)."""

    name = "grid"

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[int, int]:
        """The squares across and down."""
        if isinstance(value, tuple):
            return value
        return understood(self, grid_of, value, param, ctx)


SIZES: Final = RangeChoice("6in..12in", dict(UNITS))
ANGLES: Final = RangeChoice("30deg.. or 30..60", ANGLE_UNITS)
COUNTS: Final = RangeChoice("5..20, ..20 or 9")
