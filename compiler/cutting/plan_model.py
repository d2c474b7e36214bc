"""How a quilt is cut: a cut for every need, and a plan for every fabric. Inches.

The plan's own numbers are all that the cutter reads: the replay in tests (simulated cloth, cut in this order
by these numbers alone) must yield exactly the pieces needed.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from ..measure.record import record
from ..measure.tolerance import Number
from .handling import Lies, Slant, Then
from .instruction import Axis, Instruction
from .needs import Scrap
from .reasons import Reason
from .shapes import Kind


@record
class SquarePairs:
    """Two-triangle squares, two or eight (`many`) from two squares. `cloths`: what pages call them; `seam`:
    what a seam takes."""

    many: Literal[2, 8]
    sets: int
    side: Number
    cloths: tuple[str, str]
    seam: Fraction


@record
class Geese:
    """Geese, four from a large square of one cloth and four small ones of another."""

    sets: int
    large: Number
    small: Number
    goose: str
    sky: str
    seam: Fraction


@record
class StripSet:
    """Strips sewn side by side, `sewn` wide in all, and cut across `every` so much. `long`: as the cloth lets
    them be where that is not the bolt's width."""

    strip: Fraction
    long: Fraction | None
    sewn: Fraction
    every: Fraction
    sets: int
    rows: int
    cloths: tuple[str, ...]


Made = SquarePairs | Geese | StripSet


@record
class Offer:
    """Another way to make the same pieces many at a time, with the cloth it takes beside cutting singly."""

    made: Made
    cloth: Number  # square inches it takes
    singly: Number  # square inches that cutting singly takes


@record
class Cut:
    """How the pieces of one need are cut.

    `width` x `height` is what the cutter measures: the square from which triangles are cut, a strip's piece,
    a template's own box as it lies for cutting. `cuts` of them give `pieces`. `strip` is the width of the
    strip they come from where that is not `height` (diamonds, triangles by strip). Never less than exact;
    `excess` is how much more than exact, in inches. `reason`: why a rule or a template.
    """

    need: int  # index into Quilt.needs
    fabric: str
    part: str
    kind: Kind
    width: Number
    height: Number
    cuts: int
    pieces: int
    yields: int
    excess: float
    reason: Reason
    template: str = ""
    angle: Number | None = None  # degrees, for angled sub-cuts
    outline: tuple[tuple[float, float], ...] = ()  # of a template as it lies for cutting, grain up
    offers: tuple[Offer, ...] = ()
    then: tuple[Then, ...] = ()  # what is done with each once it is cut, in order
    joined: int = 0  # strips joined end to end and cut to length; 0: none are joined
    strip: Number | None = None  # width of the strip, where that is not `height`
    lies: Lies | None = None  # how it lies on a print with a direction
    slants: tuple[tuple[Slant, int], ...] = ()  # of boxes of a print with a direction: so many cut each way


@record
class PlacedCut:
    """One cut-out box (or template) on the cloth: left and top of its box, x across the bolt, y along it."""

    cut: int  # index into the cuts
    left: Number
    top: Number
    width: Number
    height: Number
    turned: float = 0.0  # degrees clockwise, by quarters: of a template; 90 where a box is turned across
    reversed: bool = False
    slant: Slant = ""


@record
class Slice:
    """One edge-to-edge rotary cut: it parts `region` (left, top, right, bottom) along a straight line."""

    order: int
    region: tuple[Number, Number, Number, Number]
    axis: Axis  # across the bolt (a strip) or along it (a sub-cut)
    at: Number  # inches from the region's top (across) or left (along)
    instructions: tuple[Instruction, ...] = ()  # none where it was told with another
    strips: tuple[int, ...] = ()  # numbers of those that it is done to, told once for all; () of the cloth


@record
class Strip:
    """What a cloth is first parted into, from where to where along that way, and what lies in it. What is
    left over after the last is none, and has no number."""

    number: int  # from 1; 0 of what is left over
    start: Number
    end: Number
    placed: tuple[PlacedCut, ...]


@record
class ClothPlan:
    """One stretch of cloth: a length off the bolt, or one scrap or fat quarter."""

    width: Number
    length: Number  # along the bolt, as used
    slices: tuple[Slice, ...]
    strips: tuple[Strip, ...]
    axis: Axis = "across"  # of the cuts between the strips
    scrap: int | None = None  # index into Fabric.scraps

    @property
    def placed(self) -> tuple[PlacedCut, ...]:
        """What lies on the cloth, strip by strip."""
        return tuple(each for strip in self.strips for each in strip.placed)

    @property
    def partings(self) -> tuple[Slice, ...]:
        """The cuts that part the cloth itself."""
        return tuple(cut for cut in self.slices if not cut.strips)

    @property
    def across(self) -> Number:
        """Inches across the cloth, from its left, that pieces are cut from."""
        return max((each.left + each.width for each in self.placed), default=Fraction(0))


@record
class ByLength:
    """Cloth sold off the bolt, by eighths of a yard or by tenths of a metre."""

    unit: Literal["yards", "metres"]


@record
class ByPiece:
    """So many fat quarters, or scraps that are at hand."""

    count: int
    fat_quarters: bool


Sold = ByLength | ByPiece


@record
class FabricPlan:
    """Everything about cutting one fabric."""

    fabric: str
    usable_width: Number  # after washing; of scraps the widest
    cloths: tuple[ClothPlan, ...]
    strips: int
    used: Number  # inches along the bolt, before margin and shrinkage
    area: Number  # square inches of all the pieces with their allowances: the bound
    margin: Number  # inches of safety added
    buy: Number  # inches, after margin and shrinkage, rounded up to the step
    sold: Sold
    backing_panels: tuple[tuple[Number, Number], ...] = ()
    piece: Scrap | None = None  # of a block alone: sold cut, in place of `buy`; None: off the bolt


@record
class CuttingPlan:
    """The whole quilt's cutting."""

    cuts: tuple[Cut, ...]
    fabrics: tuple[FabricPlan, ...]
    ruler_step: Fraction
