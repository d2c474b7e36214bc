"""What planning asks of a quilt: shapes to cut, of how many, from which cloth. Inches.

A quilt is laid out in a folder to the right of this one (`quilt.model`), so of the quilt itself only what is
read is written here.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final, Literal, NamedTuple, Protocol

from ..diagnostics.source import Span
from ..drafting.model import Draft
from ..geometry.edge import Edge
from ..measure.record import record
from ..measure.tolerance import Number
from ..words.cloth_words import Texture
from .model import Template

Part = Literal["blocks", "setting", "sashing", "posts", "border", "binding", "backing"]


SingleKind = Literal[
    "side-triangle",
    "corner-triangle",
    "sashing-strip",
    "post",
    "half-post",
    "border-strip",
    "plain-square",
    "plain-rectangle",
]
"""What a plain piece of the top is that belongs to no block."""


@record
class Scrap:
    """A piece of cloth of given size: a scrap or a fat quarter, along and across the grain in inches."""

    width: Fraction  # across the grain: along the weft
    height: Fraction  # along the grain: along the selvage
    fat_quarter: bool = False


FAT_QUARTER: Final = Scrap(Fraction(21), Fraction(18), True)
"""21in across by 18in along (SOURCES 2.3 and 2.4: sewing trade body, guild)."""

USABLE_WIDTH: Final = Fraction(42)
"""Inches usable of cloth bought 44 to 45in wide (common practice; McCloskey counts on 40: SOURCES 2.5)."""


class Looks(NamedTuple):
    """How a cloth is said to look: its colour as `#rrggbb`, and a texture; '' and None where that is not
    said."""

    colour: str = ""
    texture: Texture | None = None


NOTHING_SAID: Final = Looks()


@record
class Fabric:
    """One cloth. `scraps` empty: it is cut from the bolt. Its sizes, the bolt's usable width and the scraps',
    are inches after washing, as the trade counts them (SOURCES 2.5: 40 of 42 to 44in)."""

    name: str
    title: str
    usable_width: Fraction
    shrinkage: Fraction  # share lost in washing: to have L, buy L / (1 - shrinkage)
    one_way: bool = False  # no turning round, no turning across
    striped: bool = False  # no turning across
    scraps: tuple[Scrap, ...] = ()
    origin: Span | None = None
    looks: Looks = NOTHING_SAID

    def unwashed(self, length: Fraction) -> Fraction:
        """What a length of it, along or across, measures before it is washed."""
        return length / (1 - self.shrinkage)

    @property
    def is_directional(self) -> bool:
        """Whether its print shows which way up or along a piece is cut."""
        return self.one_way or self.striped


@record
class Way:
    """How pieces lie on a cloth whose print runs up and down: the need's outline, mirrored left and right if
    `reversed`, then turned clockwise by whole quarters (0, 90, 180 or 270 degrees)."""

    turned: int
    reversed: bool
    count: int


@record
class SizedBlock:
    """A block drafted at the size at which the quilt uses it, with its templates."""

    draft: Draft
    templates: tuple[Template, ...]


@record
class Need:
    """Pieces of one shape to be cut from one fabric, all alike: what the cutting methods choose a way for.

    `outline` is the finished shape as it lies for cutting: straight of grain up and down. Its edges carry
    their seam allowances in the same order. `what`: of a block's piece its name, '' where it has none.
    `template` is the block template it may be cut with, where there is one. Patches of a foundation are
    rectangles that cover their pieces: `margin` is what each side has beyond the seam allowance, counted in
    `allowances`.

    On a print with a direction `outline` lies as a piece of it lies in the finished quilt, and `ways` says of
    all of them how they lie, so that a cloth that is cut print up gives a quilt with its print up. `drawn`:
    degrees clockwise from how the block draws the template to `outline`.
    """

    fabric: str
    part: Part
    what: SingleKind | str
    outline: tuple[Edge, ...]
    allowances: tuple[Fraction, ...]
    count: int  # as drawn
    reversed: int  # mirror-wise
    reversible: bool
    template: str = ""  # 'Tidewater Vane A'
    block: int | None = None
    label: str = ""  # the template's letter
    origin: Span | None = None
    unjoined: bool = False  # a long strip that may not be joined from two
    measured: bool = False  # a strip that is trimmed to the top as it measures
    holed: bool = False  # the shape has a hole, which no rotary cut makes
    margin: Fraction = Fraction(0)  # inches, of patches of a foundation alone
    patches: tuple[str, ...] = ()  # of a foundation, by their labels
    ways: tuple[Way, ...] = ()  # empty: any way that keeps the grain
    drawn: float = 0.0

    @property
    def on_print(self) -> tuple[Way, ...]:
        """How the pieces lie on a print with a direction: where nothing else is said, as the outline."""
        lie = (Way(0, False, self.count), Way(0, True, self.reversed))
        return self.ways or tuple(way for way in lie if way.count)

    @property
    def is_patch(self) -> bool:
        """Whether it is cloth for patches of a foundation."""
        return self.margin > 0


@record
class BindingNeed:
    """Binding: strips of a cut width, joined to a length."""

    fabric: str
    strip_width: Fraction
    length: Number  # inches of joined strip, turnings and joins' slack included
    bias: bool
    slack: Fraction = Fraction(0)  # inches of the length beyond the quilt's sides


@record
class BackingNeed:
    """Backing or batting: a whole of this size, joined from panels (backing only)."""

    fabric: str  # '' for batting
    width: Number
    height: Number


class BlockUse(Protocol):
    """One use of a block."""

    @property
    def block(self) -> int:
        """Index of the block."""

    @property
    def fabrics(self) -> tuple[tuple[str, str], ...]:
        """Role to fabric."""


class Quilt(Protocol):
    """What planning reads of a quilt."""

    @property
    def blocks(self) -> Sequence[SizedBlock]:
        """The blocks, sized."""

    @property
    def placed(self) -> Sequence[BlockUse]:
        """Every use of them."""

    @property
    def fabrics(self) -> Sequence[Fabric]:
        """In order of mention."""

    @property
    def needs(self) -> Sequence[Need]:
        """Everything the top is cut from."""

    @property
    def binding(self) -> BindingNeed | None:
        """Its binding."""

    @property
    def backing(self) -> BackingNeed | None:
        """Its back."""
