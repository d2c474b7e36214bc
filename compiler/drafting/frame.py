"""The ground a block is drafted on: its size, its grid, its outline, and the points every block has."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import cached_property

from ..geometry.edge import Edge, Point
from ..measure.tolerance import Number

SIDE_SHARES: dict[str, tuple[Fraction, Fraction]] = {
    "top-left": (Fraction(0), Fraction(0)),
    "top": (Fraction(1, 2), Fraction(0)),
    "top-right": (Fraction(1), Fraction(0)),
    "left": (Fraction(0), Fraction(1, 2)),
    "center": (Fraction(1, 2), Fraction(1, 2)),
    "right": (Fraction(1), Fraction(1, 2)),
    "bottom-left": (Fraction(0), Fraction(1)),
    "bottom": (Fraction(1, 2), Fraction(1)),
    "bottom-right": (Fraction(1), Fraction(1)),
}
"""Where the predefined points lie in the bounding box, as shares of its width and height."""


@dataclass(frozen=True)
class Frame:
    """`across` and `down` are the grid's lines: x and y in inches from the top left, both sides included."""

    width: Number
    height: Number
    across: tuple[Number, ...]
    down: tuple[Number, ...]
    outline: tuple[Edge, ...] | None = None  # None while the outline itself is being drawn
    corners: tuple[Point, ...] = ()  # of a regular outline
    start: Point | None = None  # where the pencil first stood, where there is no `finished`
    grid_written: bool = True
    predefined: dict[str, Point] = field(init=False, compare=False)

    def __post_init__(self) -> None:
        points = {name: Point(x * self.width, y * self.height) for name, (x, y) in SIDE_SHARES.items()}
        points.update({f"corner{number}": p for number, p in enumerate(self.corners, 1)})
        if self.start is not None:
            points["start"] = self.start
        object.__setattr__(self, "predefined", points)

    def with_outline(self, outline: tuple[Edge, ...]) -> Frame:
        """The same ground with its outline known."""
        return replace(self, outline=outline)

    @cached_property
    def is_box(self) -> bool:
        """Whether the outline is the whole bounding box."""
        return self.outline == rectangle(Fraction(0), Fraction(0), self.width, self.height)

    @property
    def last_grid_point(self) -> str:
        """The name of the grid point at the bottom right."""
        return f"{column_letters(len(self.across))}{len(self.down)}"

    def grid_point(self, column: str, row: int) -> Point | None:
        """Where a grid point lies; None where it is off the grid."""
        number = column_number(column)
        if not (1 <= number <= len(self.across) and 1 <= row <= len(self.down)):
            return None
        return Point(self.across[number - 1], self.down[row - 1])

    def steps(self, across: Fraction, down: Fraction) -> Point:
        """So many grid steps from the top left; the grid's last steps carry on beyond its sides."""
        return Point(_at_step(self.across, across), _at_step(self.down, down))


def _at_step(lines: tuple[Number, ...], steps: Fraction) -> Number:
    cell = min(max(steps // 1, 0), len(lines) - 2)
    return lines[cell] + (steps - cell) * (lines[cell + 1] - lines[cell])


def column_number(letters: str) -> int:
    """A is 1, Z 26, AA 27."""
    number = 0
    for letter in letters:
        number = number * 26 + ord(letter) - ord("A") + 1
    return number


def column_letters(number: int) -> str:
    """1 is A, 26 Z, 27 AA."""
    letters = ""
    while number > 0:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def grid_lines(parts: tuple[Fraction, ...], size: Number) -> tuple[Number, ...]:
    """Where the lines of a grid lie along a side of that size."""
    total = sum(parts)
    lines: list[Number] = []
    done = Fraction(0)
    for part in (Fraction(0), *parts):
        done += part
        lines.append(done / total * size)
    return tuple(lines)


def rectangle(left: Number, top: Number, right: Number, bottom: Number) -> tuple[Edge, ...]:
    """The four edges of a box, clockwise from the top left."""
    corners = (Point(left, top), Point(right, top), Point(right, bottom), Point(left, bottom))
    return tuple(Edge(corners[at], corners[(at + 1) % 4]) for at in range(4))
