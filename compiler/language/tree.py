"""The tree of a file: one frozen class for each statement and phrase, as written.

Nothing is resolved here and no default is filled in: None means 'not written'. Every node carries the span
of its own words, which takes no part in comparison, so two spellings of one tree are equal.
Lengths are Fractions of an inch, angles Fractions of a degree, numbers Fractions.
"""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from fractions import Fraction
from typing import TYPE_CHECKING, Literal, TypeVar, dataclass_transform

from ..diagnostics.source import Span

if TYPE_CHECKING:
    from .quilt_tree import Quilt

Written = TypeVar("Written")

SideName = Literal["top", "right", "bottom", "left", "top-left", "top-right", "bottom-left", "bottom-right"]


@dataclass_transform(frozen_default=True, kw_only_default=True, field_specifiers=(field,))
def node(kind: type[Written]) -> type[Written]:
    """The class as a dataclass that type checkers hold frozen and that compares as `Node` says: as
    `measure.record`, but told by keyword alone."""
    return dataclass(slots=True, kw_only=True, eq=False, repr=False)(kind)


@node
class Node:
    """Anything written, with the words that wrote it."""

    span: Span = field(compare=False)

    def _said(self) -> tuple[object, ...]:
        """All but where it was written."""
        return tuple(getattr(self, each.name) for each in fields(self) if each.compare)

    def __eq__(self, other: object) -> bool:
        return self._said() == other._said() if type(self) is type(other) else NotImplemented

    def __hash__(self) -> int:
        return hash((type(self), self._said()))

    def __repr__(self) -> str:
        return f"{type(self).__name__}{self._said()}"


@node
class Name(Node):
    """A lower-case word of the writer's: `gate`."""

    text: str


@node
class Text(Node):
    """Quoted text, unescaped: `"Tidewater Vane"`. The span includes the quotes."""

    text: str


@node
class Length(Node):
    """`1 1/2in`: inches, exact."""

    inches: Fraction


@node
class Angle(Node):
    """`22.5deg`: degrees, exact, clockwise."""

    degrees: Fraction


@node
class Count(Node):
    """A whole number: `4`."""

    value: int


# ---- points -----------------------------------------------------------------------------------------------


@node
class GridPoint(Node):
    """`B3`: column letters and row number; A1 is top left."""

    column: str
    row: int


@node
class NamedPoint(Node):
    """`gate`, or a predefined `center`, `top-left`, `corner3`, `start`."""

    name: str


@node
class GridSteps(Node):
    """`(1.5, 0)`: grid steps across and down from the top left."""

    across: Fraction
    down: Fraction


@node
class ShareAlong(Node):
    """`1/3 from P to Q`."""

    share: Fraction
    origin: PointPhrase
    toward: PointPhrase


@node
class LengthAlong(Node):
    """`1in from P to Q`."""

    length: Length
    origin: PointPhrase
    toward: PointPhrase


@node
class LengthAtAngle(Node):
    """`2in from P at 22.5deg`."""

    length: Length
    origin: PointPhrase
    angle: Angle


@node
class Between(Node):
    """`between P, Q, R`: their average. Two points or more."""

    points: tuple[PointPhrase, ...]


@node
class Meet(Node):
    """`meet LINE, circle around C radius 2in nearest P`."""

    first: Figure
    second: Figure
    nearest: PointPhrase | None


@node
class MeetOutline(Node):
    """`meet LINE, outline`: from the line's first point onward."""

    line: Line


@node
class Foot(Node):
    """`foot of P on LINE`."""

    point: PointPhrase
    line: Line


@node
class TurnedAbout(Node):
    """`P turned 45deg about Q`."""

    point: PointPhrase
    angle: Angle
    about: PointPhrase


@node
class MirroredIn(Node):
    """`P mirrored in LINE`."""

    point: PointPhrase
    line: Line


@node
class NextCopy(Node):
    """`next P`: the same point in the following copy of the turn; `next next P`: two copies on."""

    point: PointPhrase
    copies: int = 1


@node
class PreviousCopy(Node):
    """`previous P`, or `previous previous P`."""

    point: PointPhrase
    copies: int = 1


PointPhrase = (
    GridPoint
    | NamedPoint
    | GridSteps
    | ShareAlong
    | LengthAlong
    | LengthAtAngle
    | Between
    | Meet
    | MeetOutline
    | Foot
    | TurnedAbout
    | MirroredIn
    | NextCopy
    | PreviousCopy
)


# ---- lines and paths --------------------------------------------------------------------------------------


@node
class LineThrough(Node):
    """`P--Q`."""

    first: PointPhrase
    second: PointPhrase


@node
class LineAtAngle(Node):
    """`P at 45deg`."""

    point: PointPhrase
    angle: Angle


@node
class LineParallel(Node):
    """`P parallel to Q--R`."""

    point: PointPhrase
    first: PointPhrase
    second: PointPhrase


Line = LineThrough | LineAtAngle | LineParallel


@node
class Circle(Node):
    """`circle around C radius 1 1/4in` or `circle around C through P`: one of the two is written."""

    center: PointPhrase
    radius: Length | None
    through: PointPhrase | None


@node
class ArcFigure(Node):
    """`P ~~ Q around C`: an arc that a `meet` speaks of, no longer than it is drawn."""

    start: PointPhrase
    hop: ArcAround | ArcThrough


@node
class WholeOutline(Node):
    """`outline`: all round the block."""


Figure = Line | Circle | ArcFigure | WholeOutline


@node
class StraightTo(Node):
    """`-- Q`. The span covers the `--` and the point."""

    point: PointPhrase


@node
class ArcAround(Node):
    """`~~ Q around C`: the shorter way."""

    point: PointPhrase
    center: PointPhrase


@node
class ArcThrough(Node):
    """`~~ Q through R`."""

    point: PointPhrase
    via: PointPhrase


@node
class ToOutline(Node):
    """`-- outline`: straight on to the edge; `at 22.5deg -- outline`: in that direction."""

    heading: Angle | None = None


Hop = StraightTo | ArcAround | ArcThrough | ToOutline


@node
class Path(Node):
    """`P -- Q ~~ R around C`: a start and one hop or more."""

    start: PointPhrase
    hops: tuple[Hop, ...]


# ---- units ------------------------------------------------------------------------------------------------


@node
class Turned(Node):
    """`turned 90deg`."""

    angle: Angle


@node
class Facing(Node):
    """`facing left`."""

    side: SideName


@node
class Mirrored(Node):
    """`mirrored`: left and right change places."""


@node
class Stretched(Node):
    """`stretched`."""


Pose = Turned | Facing | Mirrored | Stretched


@node
class PlainCell(Node):
    """`plain dark`: a cell of one cloth."""

    role: Name


@node
class UnitCell(Node):
    """`goose facing left mirrored`: a used block by its alias, and how it lies. Poses apply left to right."""

    unit: Name
    poses: tuple[Pose, ...]


Cell = PlainCell | UnitCell


@node
class RowItem(Node):
    """`3 pair`: a cell, repeated `count` times (None: once)."""

    count: Count | None
    cell: Cell


@node
class Region(Node):
    """`A1..B2`: between two grid points, corners in either order."""

    first: GridPoint
    second: GridPoint


@node
class Rename(Node):
    """`dark = pale`: the unit's role on the left, ours on the right."""

    theirs: Name
    ours: Name


# ---- statements -------------------------------------------------------------------------------------------


@node
class Finished(Node):
    """`finished 6in` or `finished 6in x 9in`: width by height."""

    width: Length
    height: Length | None


@node
class Washed(Node):
    """`washed 7 7/8in x 8 1/8in read to 1/16in`: what the block measures now; how finely it was read."""

    width: Length
    height: Length | None
    read_to: Length | None


@node
class Divisions(Node):
    """`4`: four equal parts, given as (1, 1, 1, 1); or `1:2:1`: parts in proportion."""

    parts: tuple[Fraction, ...]


@node
class Grid(Node):
    """`grid 2 x 3 of 3in` (or `of 3in x 2in`): across, then down."""

    across: Divisions
    down: Divisions
    cell_width: Length | None
    cell_height: Length | None


@node
class OutlinePath(Node):
    """`outline A1 -- B1 ~~ B2 around C3 -- A2`, which closes itself."""

    path: Path


@node
class OutlineRegular(Node):
    """`outline regular 6 side 3in turned 30deg`."""

    sides: Count
    side: Length
    turned: Angle | None


@node
class PointDef(Node):
    """`point gate = 1 1/4in from B1 to C1`."""

    name: Name
    phrase: PointPhrase


@node
class Seam(Node):
    """`seam P -- Q ~~ R around C`: a path the needle follows."""

    path: Path


@node
class SeamThrough(Node):
    """`seam through LINE`: from side to side."""

    line: Line


@node
class SeamCircle(Node):
    """`seam circle around C radius 1 1/4in`."""

    circle: Circle


@node
class SeamSmooth(Node):
    """`seam smooth P, Q, R, S`: through all the points, in arcs that join with one direction."""

    points: tuple[PointPhrase, ...]


@node
class PieceDef(Node):
    """`piece sail at P, Q in light, dark`."""

    name: Name
    places: tuple[PointPhrase, ...]
    roles: tuple[Name, ...]


@node
class Turn(Node):
    """`turn 4 about P { }` (step None: the whole circle shared out), `turn 6 of 15deg about P { }`."""

    count: Count
    step: Angle | None
    about: PointPhrase
    body: tuple[Statement, ...]


@node
class MirrorIn(Node):
    """`mirror in LINE { }`."""

    line: Line
    body: tuple[Statement, ...]


@node
class Repeat(Node):
    """`repeat 6 along P--Q { }`, or along an arc, with which the copies turn."""

    count: Count
    track: LineThrough | ArcFigure
    body: tuple[Statement, ...]


Copying = Turn | MirrorIn | Repeat
"""Statements that draw their body more than once."""


@node
class Use(Node):
    """`use "Title" version 1 as pair with dark = pale, pale = dark`."""

    title: Text
    version: Count | None
    alias: Name
    renames: tuple[Rename, ...]


@node
class Row(Node):
    """`row pair facing top-left, 3 plain pale`."""

    items: tuple[RowItem, ...]


@node
class Alternate(Node):
    """`alternate plain dark, plain pale`."""

    cells: tuple[Cell, ...]


@node
class Place(Node):
    """`place goose facing left in A1..B2, C3..D4`."""

    cell: Cell
    regions: tuple[Region, ...]


@node
class Rounds(Node):
    """`rounds 5 of 1in about F6..H8 in pale, dark mitred`. The first corner style is lapping (None)."""

    count: Count
    width: Length
    region: Region
    roles: tuple[Name, ...]
    corners: Literal["butted", "mitred"] | None


@node
class Faces(Node):
    """`faces top`."""

    side: SideName


@node
class Allowance(Node):
    """`allowance 1/4in`; `allowance 1/2in on A1 -- C1` (path written)."""

    width: Length
    path: Path | None


@node
class Grain(Node):
    """`grain along A1--A3 on sail, tip` (line written) or `grain free on sail` (line None)."""

    line: Line | None
    pieces: tuple[Name, ...]


@node
class Trim(Node):
    """`trim matched`, `trim square 1/4in`, `trim none`; then, if wanted, `dots 1/16in` or `dots none`.

    `dots` is None where not written, zero inches for `dots none`.
    """

    style: Literal["matched", "square", "none"]
    limit: Length | None
    dots: Length | None


@node
class Family(Node):
    """`family star` or `family eight-pointed-star, curved`."""

    names: tuple[Name, ...]


@node
class Also(Node):
    """`also "Other Name", "Third Name"`."""

    titles: tuple[Text, ...]


@node
class Note(Node):
    """`note "..."`."""

    text: Text


@node
class Maker(Node):
    """`maker "..."`."""

    text: Text


Statement = (
    Finished
    | Washed
    | Grid
    | OutlinePath
    | OutlineRegular
    | PointDef
    | Seam
    | SeamThrough
    | SeamCircle
    | SeamSmooth
    | PieceDef
    | Turn
    | MirrorIn
    | Repeat
    | Use
    | Row
    | Alternate
    | Place
    | Rounds
    | Faces
    | Allowance
    | Grain
    | Trim
    | Family
    | Also
    | Note
    | Maker
)


# ---- files ------------------------------------------------------------------------------------------------


@node
class Block(Node):
    """`block "Title" version 2 { ... }`."""

    title: Text
    version: Count | None
    body: tuple[Statement, ...]


@node
class File(Node):
    """`edition 1`, then blocks and quilts."""

    edition: Count | None
    blocks: tuple[Block, ...]
    quilts: tuple[Quilt, ...] = ()
