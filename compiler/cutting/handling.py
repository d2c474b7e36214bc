"""What is done with a cut once it is made, and how it lies on a print with a direction. Inches, degrees."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from ..measure.record import record
from ..measure.tolerance import Number

Slant = Literal["", "rising", "falling", "both"]
"""Which way a box is cut again, corner to corner, the print up: rising from the bottom left to the top right,
falling from the top left to the bottom right; '': either way."""

Box = Literal["square", "rectangle"]


# ---- what then -------------------------------------------------------------------------------------------


@record
class Parted:
    """Each box is cut once or twice, corner to corner."""

    box: Box
    times: Literal["once", "twice"]


@record
class PartedOnPrint:
    """With the print up, so many boxes are cut each way; `spare` triangles are left over."""

    box: Box
    slants: tuple[tuple[Slant, int], ...]
    spare: int


@record
class PartedByHand:
    """So many rectangles are cut for pieces as drawn, and so many for reversed ones, the first of them one
    way and the others the other."""

    plain: int
    back: int
    first: Slant


@record
class Zigzag:
    """The strip is cut at 60 degrees, one way and the other."""


@record
class SlantedCuts:
    """The strip is cut at an angle, so far apart; of hexagons both points are then cut off, so far from the
    middle."""

    angle: float
    apart: Fraction
    points: Fraction | None = None


@record
class CutEnds:
    """The strip's ends are cut at those angles."""

    ends: tuple[float, ...]


@record
class JoinStrips:
    """Strips are joined, straight or on the slant, where each join takes as much as they are wide; and cut to
    length with so much over."""

    slanted: bool
    over: Fraction


@record
class JoinOnBias:
    """Strips of a binding are joined."""


@record
class CutOnBias:
    """A piece is cut into so many strips of a width at 45 degrees, and they are joined."""

    count: int
    width: Fraction


@record
class MitreEnds:
    """The ends are mitred when the corners are sewn."""


Then = (
    Parted
    | PartedOnPrint
    | PartedByHand
    | Zigzag
    | SlantedCuts
    | CutEnds
    | JoinStrips
    | JoinOnBias
    | CutOnBias
    | MitreEnds
)


# ---- how it lies -----------------------------------------------------------------------------------------


@record
class TemplateLaid:
    """So many times the template is laid turned clockwise and `reversed`; from how it lies in the block, or
    from where its arrow points up."""

    ways: tuple[tuple[bool, float, int], ...]
    in_block: bool
    either: bool


@record
class PrintUp:
    """The print up: of a strip from which pieces are cut, of squares as they are sewn, of triangles. `either`
    end of it."""

    of: Literal["strip", "square", "triangle"]
    either: bool


@record
class LongWay:
    """A long strip lies across the cloth or along the selvage. `shorter`: strips along it are joined, since
    that buys less cloth."""

    across: bool
    either: bool
    shorter: bool = False


@record
class PrintAlong:
    """The print runs along the height of a rectangle."""

    width: Number
    height: Number
    either: bool


@record
class Upright:
    """A back, whose print stands up in the quilt."""


@record
class AnyWay:
    """Binding, whose print may lie any way."""


Lies = TemplateLaid | PrintUp | LongWay | PrintAlong | Upright | AnyWay
