"""What a quilt is built up of while it is laid out: blocks in their places, and single pieces of cloth."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from ..cutting.needs import Part
from ..diagnostics.source import Span
from ..drafting.sketch import Unit
from ..geometry.edge import Edge, Point
from ..geometry.motion import Transform, move_by
from ..measure.tolerance import Number


@dataclass(frozen=True)
class Laid:
    """One block where it lies. `transform` carries it, already at `width` x `height`, into the quilt."""

    unit: Unit
    width: Number  # of the block in its own places: before it is turned
    height: Number
    transform: Transform
    part: Part
    origin: Span


@dataclass(frozen=True)
class Use:
    """One use of a block that has its size. `renames`: roles or fabrics in place of its own roles."""

    block: int  # index of the sized block
    renames: Mapping[str, str]
    transform: Transform  # into the quilt
    part: Part
    origin: Span | None


@dataclass(frozen=True)
class Single:
    """One plain piece of the top. `word` is the role or fabric as written. Grain runs up and down the quilt
    unless `grain` says otherwise, in degrees."""

    outline: tuple[Edge, ...]
    word: str
    part: Part
    what: str
    origin: Span
    grain: float = 0.0
    unjoined: bool = False


@dataclass
class Top:
    """The quilt's top so far, growing from the inside out; everything shifts when a border goes round it."""

    width: Number = Fraction(0)
    height: Number = Fraction(0)
    laid: list[Laid] = field(default_factory=list)
    singles: list[Single] = field(default_factory=list)
    borders: list[tuple[Number, Number]] = field(default_factory=list)

    def move(self, right: Number, down: Number) -> None:
        """Moves everything so far, to make room at the left and at the top."""
        carry = move_by(right, down)
        self.laid = [replace(each, transform=each.transform.shifted(right, down)) for each in self.laid]
        self.singles = [
            replace(each, outline=tuple(carry.edge(edge) for edge in each.outline)) for each in self.singles
        ]


def polygon(points: Sequence[Point]) -> tuple[Edge, ...]:
    """Straight edges round some corners."""
    return tuple(Edge(p, points[(at + 1) % len(points)]) for at, p in enumerate(points))


def box(left: Number, top: Number, right: Number, bottom: Number) -> tuple[Edge, ...]:
    """The edges of a box, clockwise."""
    return polygon([Point(left, top), Point(right, top), Point(right, bottom), Point(left, bottom)])
