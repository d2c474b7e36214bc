"""The tree of a quilt: one frozen class for each statement, as written. tree.py says what all nodes share."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from .tree import (
    Also,
    Alternate,
    Cell,
    Count,
    Length,
    Maker,
    Name,
    Node,
    Note,
    Place,
    Rename,
    Row,
    Text,
    Use,
    node,
)


@node
class Percent(Node):
    """`3%`: a share, 3/100."""

    share: Fraction


@node
class Size(Node):
    """`8in` (height None: square) or `60in x 72in`: width by height."""

    width: Length
    height: Length | None


@node
class FatQuarters(Node):
    """`fat quarter 3`: so many (None: one)."""

    count: Count | None


@node
class Scrap(Node):
    """`scrap 10in x 12in`."""

    size: Size


@node
class Looks(Node):
    """`looks "#b7410e" dotted`: a colour, a texture, or both."""

    colour: Name | Text | None
    texture: Name | None


@node
class FabricDef(Node):
    """`fabric indigo "Indigo print" width 42in shrinks 3% one way striped fat quarter 3 scrap 10in x 12in`.

    Everything after the name may be left out; facts stand in any order.
    """

    name: Name
    title: Text | None
    width: Length | None
    shrinks: Percent | None
    one_way: bool  # a print with one right way up: no turning round, no turning across
    striped: bool  # stripes along the bolt: turning round is free, turning across is not
    pieces: tuple[FatQuarters | Scrap, ...]  # none: cut from the bolt
    looks: Looks | None = None


@node
class RolesDef(Node):
    """`roles "Sea" dark = indigo, light = sand`. Several titled ones are colourways."""

    title: Text | None
    renames: tuple[Rename, ...]


SetStatement = Row | Alternate | Place


@node
class SetStraight(Node):
    """`set straight 4 across 5 down of 8in { ... }`."""

    across: Count
    down: Count
    size: Size | None
    body: tuple[SetStatement, ...]


@node
class SetOnPoint(Node):
    """`set on point 4 across 5 down of 8in with triangles in sand { ... }`."""

    across: Count
    down: Count
    size: Size | None
    triangles: Name | None
    body: tuple[SetStatement, ...]


@node
class SetRows(Node):
    """`set rows { row 9 goose  row 3 house }`."""

    body: tuple[Row, ...]


QuiltSet = SetStraight | SetOnPoint | SetRows


@node
class Sashing(Node):
    """`sashing 1 1/2in in sand posts in indigo around`."""

    width: Length
    fabric: Name
    posts: Name | None
    around: bool


@node
class Border(Node):
    """`border 2in in sand mitred`, `border to 60in x 72in in indigo`, `border 4in of vane corners vane`.

    Either `width` or `to` is written; either `fabric` (a plain border) or `cells` (a pieced one).
    """

    width: Length | None
    to: Size | None
    fabric: Name | None
    cells: tuple[Cell, ...]
    corners: Cell | None
    style: Literal["butted", "mitred"] | None
    unjoined: bool  # `unjoined`: no strip may be joined from two

    @property
    def fabrics(self) -> tuple[Name, ...]:
        """The roles or fabrics of its strips."""
        return (self.fabric,) if self.fabric else ()


@node
class Binding(Node):
    """`binding 2 1/2in in indigo bias`. The width is that of the cut strip."""

    width: Length
    fabric: Name
    bias: bool


@node
class Backing(Node):
    """`backing in sand 4in over`."""

    fabric: Name
    over: Length | None


@node
class Batting(Node):
    """`batting 4in over`."""

    over: Length | None


@node
class Fits(Node):
    """`fits double mattress drop 12in`. The words before `mattress` name it."""

    mattress: tuple[Name, ...]
    drop: Length | None


@node
class SeamsTake(Node):
    """`allowance 3/8in`: what the quilt's own seams take."""

    width: Length


QuiltStatement = (
    Use
    | FabricDef
    | RolesDef
    | SetStraight
    | SetOnPoint
    | SetRows
    | Sashing
    | Border
    | Binding
    | Backing
    | Batting
    | Fits
    | SeamsTake
    | Note
    | Maker
    | Also
)


@node
class Quilt(Node):
    """`quilt "Title" version 1 { ... }`."""

    title: Text
    version: Count | None
    body: tuple[QuiltStatement, ...]
