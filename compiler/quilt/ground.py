"""What a quilt is built up of while it is laid out: blocks in their places, and single pieces of cloth."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Literal

from ..cutting.needs import Part, SingleKind
from ..diagnostics.source import Span
from ..drafting.sketch import Unit
from ..geometry.edge import Edge, Point
from ..geometry.motion import Transform, move_by
from ..measure.record import record
from ..measure.tolerance import Number
from ..sewing.order.row_tree import InRows


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
    unless `grain` says otherwise, in degrees. `measured`: it runs along the top as far as that measures."""

    outline: tuple[Edge, ...]
    word: str
    part: Part
    what: SingleKind
    origin: Span
    grain: float = 0.0
    unjoined: bool = False
    measured: bool = False


@record
class Setting:
    """How blocks are set: straight, on point or in rows, so many across and down; 0 where that differs
    from row to row."""

    kind: Literal["straight", "on-point", "rows"]
    across: int
    down: int


@dataclass
class Top:
    """The quilt's top so far, growing from the inside out; everything shifts when a border goes round it.
    `rows`: how its items lie, by their index, which is how they are sewn."""

    setting: Setting
    width: Number = Fraction(0)
    height: Number = Fraction(0)
    items: list[Laid | Single] = field(default_factory=list)
    rows: InRows | int = -1
    borders: int = 0

    def put(self, item: Laid | Single) -> int:
        """Lays one more; its index."""
        self.items.append(item)
        return len(self.items) - 1

    @property
    def laid(self) -> list[Laid]:
        """The blocks, in the order in which they were laid."""
        return [item for item in self.items if isinstance(item, Laid)]

    @property
    def singles(self) -> list[Single]:
        """The single pieces of cloth, in the order in which they were laid."""
        return [item for item in self.items if isinstance(item, Single)]

    def blocks_first(self) -> InRows | int:
        """Its rows, all blocks numbered in order before all pieces of cloth."""
        order = [
            index
            for kind in (Laid, Single)
            for index, item in enumerate(self.items)
            if isinstance(item, kind)
        ]
        number = {index: at for at, index in enumerate(order)}
        return number[self.rows] if isinstance(self.rows, int) else self.rows.numbered(number.__getitem__)

    def move(self, right: Number, down: Number) -> None:
        """Moves everything so far, to make room at the left and at the top."""
        carry = move_by(right, down)
        self.items = [
            replace(item, transform=item.transform.shifted(right, down))
            if isinstance(item, Laid)
            else replace(item, outline=tuple(carry.edge(edge) for edge in item.outline))
            for item in self.items
        ]


def polygon(points: Sequence[Point]) -> tuple[Edge, ...]:
    """Straight edges round some corners."""
    return tuple(Edge(p, points[(at + 1) % len(points)]) for at, p in enumerate(points))


def box(left: Number, top: Number, right: Number, bottom: Number) -> tuple[Edge, ...]:
    """The edges of a box, clockwise."""
    return polygon([Point(left, top), Point(right, top), Point(right, bottom), Point(left, bottom)])
