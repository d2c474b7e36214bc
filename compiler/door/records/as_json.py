"""Records as JSON: a key a field, in the order of the fields."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, fields
from fractions import Fraction
from functools import cache
from typing import Any, Final

from ...measure.tolerance import Number

DECIMALS: Final = 9
"""Decimals of a length: a billionth of an inch, a thousandth of NEAR. The rest is a float's rounding, which
may differ from machine to machine."""

Record = dict[str, Any]


def number(value: Number) -> int | float:
    """The value as a JSON number: whole where it is whole, never a negative nought."""
    if isinstance(value, Fraction | int) and value.denominator == 1:
        return int(value)
    rounded = round(float(value), DECIMALS)
    return int(rounded) if rounded.is_integer() else rounded


def as_json(value: Any) -> Any:
    """A record, or anything in one, as `json.dumps` takes it.

    A key is its field's name, or what the record's KEYS have for it. A field that may be left out when a
    record is made is left out where it was. Fields that begin with `_` are no part of it.
    """
    if value is None or isinstance(value, bool | int | str):
        return value
    if isinstance(value, Fraction | float):
        return number(value)
    if isinstance(value, Mapping):
        return {key: as_json(each) for key, each in value.items()}
    if isinstance(value, tuple | list):
        return [as_json(each) for each in value]
    made = {}
    kind: Any = type(value)
    for name, key, default in _fields_of(kind):
        found = getattr(value, name)
        if default is MISSING or found != default:
            made[key] = as_json(found)
    return made


@cache
def _fields_of(kind: Any) -> tuple[tuple[str, str, Any], ...]:
    """Name, key and default of each field."""
    keys = getattr(kind, "KEYS", {})
    return tuple(
        (each.name, keys.get(each.name, each.name), each.default)
        for each in fields(kind)
        if not each.name.startswith("_")
    )
