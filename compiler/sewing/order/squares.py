"""Things kept by where they are, so that those along a line are found without looking at all of them."""

from __future__ import annotations

from collections.abc import Iterator
from math import floor
from typing import Generic, TypeVar

from ...geometry.stroke import Stroke

T = TypeVar("T")


class Squares(Generic[T]):
    """Places with a thing each, in squares of one width in inches."""

    def __init__(self, width: float) -> None:
        self._width = width
        self._kept: dict[tuple[int, int], list[tuple[complex, T]]] = {}

    def put(self, place: complex, thing: T) -> None:
        """Keeps a thing at a place."""
        self._kept.setdefault(self._square(place), []).append((place, thing))

    def along(self, stroke: Stroke) -> Iterator[tuple[complex, T]]:
        """All that lies within a square's width of a stroke, and some a little further off."""
        count = floor(stroke.length / self._width) + 2
        near: dict[tuple[int, int], None] = {}
        for at in range(count + 1):
            x, y = self._square(stroke.at(at / count))
            near.update(dict.fromkeys((x + a, y + b) for a in (-1, 0, 1) for b in (-1, 0, 1)))
        for square in near:
            yield from self._kept.get(square, ())

    def _square(self, place: complex) -> tuple[int, int]:
        return floor(place.real / self._width), floor(place.imag / self._width)
