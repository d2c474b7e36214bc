"""What later folders may rely on: how a block goes together.

Inches; x right, y down. A unit keeps the places of the block, where its first copy lies; a piece keeps those
of its template. An edge always has its cloth on the right, so the two sides of one seam run opposite ways.
Of a piece that is cut reversed, the edges are those on the template before it is turned over.
"""

from __future__ import annotations

from dataclasses import field

from ..geometry.edge import Edge, Point
from ..geometry.pose import Motion, turning
from ..geometry.stroke import edges_apart, place_of
from ..measure.record import record


@record
class Cloth:
    """One piece as it is taken from the pile: its number, template, whether cut reversed, and fabric."""

    number: int
    template: str
    reversed: bool
    fabric: str


@record
class Size:
    """Width and height. Finished, or unfinished: with the allowance on all four sides."""

    width: float
    height: float


@record
class Copy:
    """One of a unit's copies: its pieces, in the order of the first copy's, and where the first copy's places
    go: turned clockwise about the block's top left, in degrees, then moved by `to`."""

    pieces: tuple[int, ...]
    turned: float
    to: Point

    @property
    def motion(self) -> Motion:
        """Where the first copy's places go."""
        return Motion(turning(self.turned), place_of(self.to))


@record
class Unit:
    """Pieces sewn together, and every copy of them in the block.

    `outline` is finished, corner to corner, clockwise; `holes` are windows that nothing fills yet. Sizes are
    measured along the unit's longest straight side where none of its edges lies level or upright.
    """

    id: str  # u1, u2, ... in the order of sewing
    pieces: tuple[int, ...]
    copies: tuple[Copy, ...]  # the first is the unit where it stands
    outline: tuple[Edge, ...]
    holes: tuple[tuple[Edge, ...], ...]
    finished: Size
    unfinished: Size
    rectangle: bool


@record
class SeamSide:
    """Which of one part's edges go into a seam: `part` is a piece number as text, or a unit's id.

    The edges lie in the part's own places, in order along it with the cloth on the right. A straight or
    circular run is one edge, whatever meets it in the middle.
    """

    part: str
    edges: tuple[Edge, ...]


@record
class Partial:
    """A set-in seam that need not be turned: the seam of step `opened` stays open beside `at`, and is closed
    after this one."""

    opened: int
    at: Point


@record
class Step:
    """Two parts joined by one seam; `batch` copies are made alike.

    `seam` lies in the block, with the first part on its right; where a ring is closed it is two seams, the
    second starting elsewhere than the first ends. `turns` are the dots where the needle stops
    and the cloth is turned; `stops` the ends, at a dot too, that leave the allowance free for a later turn.
    `eased` is where two edges of unlike bend are pinned: the middle of each curved run, and its quarters
    where it is longer than 2in.
    """

    step: int
    makes: str
    sides: tuple[SeamSide, SeamSide]
    batch: int
    seam: tuple[Edge, ...]
    seam_length: float
    curved: bool
    closed: bool  # all round a window
    turns: tuple[Point, ...]
    stops: tuple[Point, ...]
    eased: tuple[Point, ...]
    partial: Partial | None
    finished: Size
    unfinished: Size
    path: tuple[int, ...] = field(default=(), compare=False, repr=False)  # halves of the graph

    @property
    def parts(self) -> tuple[str, str]:
        """Piece numbers as text, or unit ids."""
        return self.sides[0].part, self.sides[1].part

    @property
    def seams(self) -> int:
        """How many seams join the two parts: two where they are the halves of a ring, else one."""
        return len(edges_apart(self.seam))

    @property
    def set_in(self) -> bool:
        """Whether the seam turns a corner or closes round a window."""
        return self.closed or bool(self.turns)

    @property
    def all_round(self) -> bool:
        """Whether the seam closes round a window without turning a corner, as round a circle."""
        return self.closed and not self.turns

    @property
    def set_in_count(self) -> int:
        """How many set-in seams one copy has: a corner each; a round window is one."""
        return max(len(self.turns), 1) if self.set_in else 0


@record
class Assembly:
    """An order of sewing for a whole block. `steps[n - 1].step` is n, and makes `units[n - 1]`."""

    pieces: tuple[Cloth, ...]  # in order of number
    units: tuple[Unit, ...]
    steps: tuple[Step, ...]

    @property
    def seams(self) -> int:
        """How many seams are sewn: one fewer than the pieces, and one more for each ring that is closed."""
        return sum(step.seams * step.batch for step in self.steps)

    @property
    def set_in_seams(self) -> int:
        """How many places need a set-in seam, over all copies."""
        return sum(step.set_in_count * step.batch for step in self.steps)

    @property
    def partial_seams(self) -> int:
        """How many of the set-in seams can be sewn straight by leaving an earlier seam partly open."""
        return sum(step.batch for step in self.steps if step.partial)

    @property
    def seams_all_round(self) -> int:
        """How many of the set-in seams close on themselves without turning a corner."""
        return sum(step.batch for step in self.steps if step.all_round)

    @property
    def curved_seams(self) -> int:
        """How many seams bend."""
        return sum(step.batch for step in self.steps if step.curved)

    @property
    def straight_seams_only(self) -> bool:
        """Whether every seam is one straight line."""
        return not any(step.curved or step.set_in for step in self.steps)


@record
class Proof:
    """What re-sewing found. `furthest` is the greatest distance, in inches, between printed and sewn."""

    pieces: int
    seams: int
    closes: bool
    furthest: float
