"""Places, sizes and outlines, which records of blocks and of quilts share."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, fields
from typing import Any, TypeVar, cast

from ...drafting.model import Default as ModelDefault
from ...geometry.curves import flattened
from ...geometry.edge import Edge, Point
from ...measure.tolerance import Number
from ...words.say import INCHES
from ...words.work.defaults import default_words

Outline = tuple[Point, ...]
R = TypeVar("R")


def record_of(made: type[R], model: object, /, **others: object) -> R:
    """A record with the model's fields of the same names, beside those given."""
    named = (each.name for each in fields(cast(Any, made)) if each.name not in others)
    return made(**{name: getattr(model, name) for name in named}, **others)


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
