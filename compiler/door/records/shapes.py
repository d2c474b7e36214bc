"""Places, sizes and outlines, which records of blocks and of quilts share."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from typing import Any, TypeVar, cast, get_args, get_type_hints

from ...drafting.model import Default as ModelDefault
from ...geometry.curves import flattened
from ...geometry.edge import Edge, Point
from ...measure.tolerance import Number
from ...words.say import INCHES
from ...words.work.defaults import default_words

Outline = tuple[Point, ...]
R = TypeVar("R")


def record_of(made: type[R], model: object, /, **others: object) -> R:
    """A record with the model's fields of the same names, beside those given. What such a field holds becomes
    a record itself where its type is one, or a tuple of them."""
    named = ((name, inner) for name, inner in _fields_of(cast(Any, made)) if name not in others)
    return made(**{name: _taken(inner, getattr(model, name)) for name, inner in named}, **others)


@cache
def _fields_of(made: Any) -> tuple[tuple[str, Any], ...]:
    """Every field, and the record that what it holds becomes; None: it stays as it is."""
    hints = get_type_hints(made)
    return tuple((each.name, next(_records_in(hints[each.name]), None)) for each in fields(made))


def _records_in(hint: Any) -> Iterator[Any]:
    if is_dataclass(hint) and hint.__module__.startswith(__package__):
        yield hint
    for each in get_args(hint):
        yield from _records_in(each)


def _taken(inner: Any, value: Any) -> Any:
    if inner is None or value is None:
        return value
    if isinstance(value, tuple):
        return tuple(record_of(inner, each) for each in value)
    return record_of(inner, value)


@dataclass(frozen=True, slots=True)
class Extent:
    """A width and a height, in inches."""

    width: Number
    height: Number


@dataclass(frozen=True, slots=True)
class ArcSide:
    """A side that is an arc, exactly: `clockwise` as seen, from its start to its end."""

    center: Point
    radius: float
    start: Point
    end: Point
    clockwise: bool


@dataclass(frozen=True, slots=True)
class Default:
    """A default in force: what it is, and its value in words."""

    what: str
    value: str


def outline(edges: Iterable[Edge]) -> Outline:
    """The corners of a ring, with the points of flattened arcs between them."""
    return tuple(point for edge in edges for point in flattened(edge))


def path(edges: Sequence[Edge]) -> Outline:
    """The places along a seam, arcs flattened, its end included."""
    return (*outline(edges), edges[-1].end)


def arcs(edges: Iterable[Edge]) -> tuple[ArcSide, ...]:
    """The sides of a ring that are arcs."""
    return tuple(
        ArcSide(each.arc.center, each.arc.radius, each.start, each.end, each.arc.clockwise)
        for each in edges
        if each.arc is not None
    )


def defaults_of(defaults: Iterable[ModelDefault]) -> tuple[Default, ...]:
    """Every default in force, in words."""
    return tuple(Default(*default_words(INCHES, each)) for each in defaults)
