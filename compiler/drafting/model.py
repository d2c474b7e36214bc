"""What later folders may rely on: a drafted block.

x runs right and y runs down, in inches, from the top left of the block's bounding box. Rings run clockwise as
seen. Coordinates are Fractions where the drafting is exact, floats elsewhere (see measure.tolerance).
Nothing here is edited in place and nothing knows a tree node: `origin` spans lead back to the words.
"""

from __future__ import annotations

from dataclasses import field
from fractions import Fraction
from typing import Literal

from ..diagnostics.source import Span
from ..geometry.edge import Edge, Point
from ..geometry.planar import PlanarGraph
from ..geometry.pose import Pose
from ..measure.record import record
from ..measure.tolerance import Number
from ..words.cloth_words import Texture


@record
class Part:
    """A stretch of a side along which one neighbour lies. `neighbour` is a piece number, None: the
    outside."""

    edge: Edge
    neighbour: int | None
    origins: tuple[Span, ...] = ()


@record
class Side:
    """One whole straight or curved side of a piece, corner to corner, with its parts in order.

    Collinear (or co-circular) parts are one side; the ends between parts are where a neighbour's corner
    meets the middle of this side. A side is never half inside, half on the block's outside.
    """

    edge: Edge
    parts: tuple[Part, ...]
    allowance: Fraction  # inches of seam allowance on this side

    @property
    def outside(self) -> bool:
        """Whether the side lies on the block's outline."""
        return self.parts[0].neighbour is None


@record
class Piece:
    """One piece of cloth, finished size.

    `ring` runs clockwise; each ring of `holes` anticlockwise, so the cloth always lies to the right of an
    edge.
    `grain` is the heading in degrees (clockwise from up) that the writer asked for, 'free', or None: by rule.
    """

    number: int  # from 1, in reading order
    name: str | None
    fabric: str  # the role
    ring: tuple[Side, ...]
    holes: tuple[tuple[Side, ...], ...]
    area: Number  # square inches
    inside: Point  # a point well inside
    grain: float | Literal["free"] | None = None
    origin: Span | None = None  # the piece statement, where there is one
    unit: str = ""  # title of the used block it came with, for explain


@record
class Member:
    """One piece's membership of a shape: `turned` degrees clockwise, after mirroring if `reversed`,
    carry the shape's first piece onto this one."""

    piece: int
    turned: float
    reversed: bool

    @property
    def pose(self) -> Pose:
        """How the member lies, where the first piece lies as it is."""
        return Pose(self.turned, self.reversed)


@record
class Shape:
    """A class of congruent pieces: one template. `members[0]` is its first piece, unturned, unreversed."""

    label: str  # A, B, ..., Z, AA
    members: tuple[Member, ...]
    reversible: bool  # has a mirror line of its own: usable either side up
    turns: int  # 1, 2, 4...: how many turns carry it onto itself


@record
class UnitPlacement:
    """How one unit lies, for explain and the picture. The box is left, top, right, bottom in inches; `scale`
    is how many times its drafted width it has."""

    title: str
    alias: str
    poses: tuple[str, ...]  # as written: "facing left", "mirrored"
    box: tuple[Number, Number, Number, Number]
    turned: float  # degrees clockwise
    mirrored: bool
    scale: Number = 1
    origin: Span | None = None


@record
class TrimRule:
    """How points are trimmed, and the width of the dots, in inches (0: no dots)."""

    style: Literal["matched", "square", "none"] = "matched"
    limit: Fraction = Fraction(1, 4)  # inches beyond the finished point
    dots: Fraction = Fraction(1, 16)  # fits a 1/16in punch


DefaultKind = Literal[
    "version",
    "version-of",
    "version-unpinned",
    "finished",
    "grid",
    "allowance",
    "trim",
    "trim-limit",
    "dots",
    "grain",
    "unnamed",
    "usable-width",
    "shrinkage",
    "setting-allowance",
    "binding-slack",
    "over",
    "drop",
    "mattress",
]
"""What may be left unwritten: of a block down to the fabric of unnamed pieces, then of a quilt."""


@record
class Default:
    """A default in force, for explain: a number or inches, width and height, or a word of the language.

    `of`: the names of what it holds for (fabrics, a used block, a mattress); `source`: where it comes from (a
    shelf, a list of sizes).
    """

    kind: DefaultKind
    value: Number | str | tuple[Number, Number]
    of: tuple[str, ...] = ()
    source: str = ""


@record
class Dress:
    """The cloths that a quilt gives a block: its pieces' fabrics are then words for cloth and no roles.

    `cloths` names all the quilt's fabrics, from which their colours are chosen; `names` has the one
    whose colour stands for each word of the block.
    """

    cloths: tuple[str, ...]
    names: tuple[tuple[str, str], ...]
    titles: tuple[tuple[str, str], ...] = ()  # of those that have one
    looks: tuple[tuple[str, tuple[str, Texture | None]], ...] = ()  # of those of which it is said


@record
class Draft:
    """A drafted and checked block."""

    title: str
    version: int
    width: Fraction | float
    height: Fraction | float
    outline: tuple[Edge, ...]  # clockwise, corner to corner
    rules_across: tuple[Number, ...]  # x of every grid line, both sides included
    rules_down: tuple[Number, ...]
    pieces: tuple[Piece, ...]  # pieces[n - 1].number == n
    shapes: tuple[Shape, ...]
    units: tuple[UnitPlacement, ...]
    trim: TrimRule
    allowance: Fraction
    defaults: tuple[Default, ...]
    family: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    maker: str = ""
    faces: str | None = None
    uses: tuple[tuple[str, int], ...] = ()  # titles and versions of the blocks used
    dress: Dress | None = None  # for the sheets of a quilt: see sheets/quilts/wearing.py
    origin: Span | None = None  # the title's words
    allowances: tuple[tuple[Fraction, Span], ...] = ()  # every width written, and its words
    graph: PlanarGraph = field(default=PlanarGraph(), compare=False, repr=False)  # face n - 1 is piece n
