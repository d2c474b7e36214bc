"""Everything that a block's statements put down, before it is noded: lines, names, units, grain,
allowance."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from ..diagnostics.source import Span
from ..geometry.edge import Edge, Point
from ..geometry.motion import Transform
from ..language import tree
from ..measure.tolerance import Number
from .context import Context
from .model import Draft
from .seams import DrawnLine


@dataclass(frozen=True)
class Unit:
    """A used block under its name here: its draft, and our role for each of its roles."""

    use: tree.Use
    draft: Draft
    renames: dict[str, str]


@dataclass(frozen=True)
class Placed:
    """A unit, or a cell or strip of one cloth, where it lies. `outline` is in the block's places,
    clockwise."""

    origin: Span
    outline: tuple[Edge, ...]
    role: str | None = None  # of a plain cell
    unit: Unit | None = None
    transform: Transform = field(default_factory=Transform)  # from the unit's places to the block's
    poses: tuple[str, ...] = ()
    copy: int = 0
    turn: Span | None = None

    @property
    def box(self) -> tuple[Number, Number, Number, Number]:
        """Left, top, right, bottom: of the unit's own box, where its outline is a path in that."""
        if self.unit is None:
            corners = [edge.start for edge in self.outline]
        else:
            across, down = self.unit.draft.width, self.unit.draft.height
            corners = [self.transform(Point(x, y)) for x in (0, across) for y in (0, down)]
        xs, ys = [p.x for p in corners], [p.y for p in corners]
        return min(xs), min(ys), max(xs), max(ys)


@dataclass(frozen=True)
class Claim:
    """One place that a `piece` statement names, in one copy."""

    statement: tree.PieceDef
    phrase: tree.PointPhrase
    place: Point
    fabric: str
    here: Context


@dataclass(frozen=True)
class GrainWish:
    """What a `grain` statement asks of pieces named in its own body or inside it."""

    statement: tree.Grain
    heading: float | Literal["free"]
    here: Context


@dataclass(frozen=True)
class AllowanceWish:
    """An allowance along a path, in the block's places."""

    statement: tree.Allowance
    width: Fraction
    edges: tuple[Edge, ...]


@dataclass
class Sketch:
    """What has been put down so far, in the order of the file."""

    lines: list[DrawnLine] = field(default_factory=list)
    placed: list[Placed] = field(default_factory=list)
    claims: list[Claim] = field(default_factory=list)
    grains: list[GrainWish] = field(default_factory=list)
    allowances: list[AllowanceWish] = field(default_factory=list)
    named: list[Point] = field(default_factory=list)
    called: list[tuple[tree.PointDef, Point]] = field(default_factory=list)  # where each was written
    rows: int = 0
    fitted: dict[tuple[Span, tuple[Number, Number]], Transform | None] = field(
        default_factory=dict
    )  # by cell and size
