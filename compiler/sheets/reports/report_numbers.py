"""Numbers, places and outlines as `explain --format json` writes them. Inches; x right, y down."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import Any, Final

from ...drafting.curves import flattened
from ...drafting.model import Default
from ...geometry.edge import Edge
from ...measure.tolerance import Number
from ...words.say import INCHES
from ...words.work.defaults import default_words

DECIMALS: Final = 9
"""Decimals of a length: a billionth of an inch, a thousandth of NEAR. The rest is a float's rounding, which
may differ from machine to machine."""

Record = dict[str, Any]


def outline(edges: Iterable[Edge]) -> list[list[int | float]]:
    """The corners of a ring, with the points of flattened arcs between them."""
    return [numbers(point) for edge in edges for point in flattened(edge)]


def arcs(edges: Iterable[Edge]) -> list[Record]:
    """The ring's arcs, exactly as they are."""
    return [
        {
            "center": numbers(edge.arc.center),
            "radius": number(edge.arc.radius),
            "start": numbers(edge.start),
            "end": numbers(edge.end),
            "clockwise": edge.arc.clockwise,
        }
        for edge in edges
        if edge.arc is not None
    ]


def numbers(values: Iterable[Number]) -> list[int | float]:
    """Each value as a JSON number."""
    return [number(each) for each in values]


def number(value: Number) -> int | float:
    """The value as a JSON number: whole where it is whole, never a negative nought."""
    if isinstance(value, Fraction | int) and value.denominator == 1:
        return int(value)
    rounded = round(float(value), DECIMALS)
    return int(rounded) if rounded.is_integer() else rounded


def default_records(defaults: Iterable[Default]) -> list[Record]:
    """Every default in force."""
    told = [default_words(INCHES, each) for each in defaults]
    return [{"what": what, "value": value} for what, value in told]


def counts(as_drawn: int, turned: int) -> Record:
    """How many are cut, in the words of every list: as drawn, reversed, and both together."""
    return {"as_drawn": as_drawn, "reversed": turned, "in_all": as_drawn + turned}
