"""What later folders may rely on: a quilt laid out, piece by piece, and what is to be cut for it.

Inches; x right and y down from the quilt's top left, finished size, binding not counted. `part` names where a
piece belongs, in the words of the report. A colourway is laid out as a quilt of its own.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from ..cutting.model import Template
from ..diagnostics.source import Span
from ..drafting.model import Default, Draft, Edge
from ..measure.tolerance import Number

Part = Literal["blocks", "setting", "sashing", "posts", "border", "binding", "backing"]


@dataclass(frozen=True, slots=True)
class Scrap:
    """A piece of cloth of given size: a scrap or a fat quarter, along and across the grain in inches."""

    width: Fraction  # across the grain: along the weft
    height: Fraction  # along the grain: along the selvage
    fat_quarter: bool = False


@dataclass(frozen=True, slots=True)
class Fabric:
    """One cloth. `scraps` empty: it is cut from the bolt, whose usable width is in inches after shrinking."""

    name: str
    title: str
    usable_width: Fraction
    shrinkage: Fraction  # share lost in washing: to have L, buy L / (1 - shrinkage)
    one_way: bool = False  # no turning round, no turning across
    striped: bool = False  # no turning across
    scraps: tuple[Scrap, ...] = ()
    origin: Span | None = None


@dataclass(frozen=True, slots=True)
class SizedBlock:
    """A block drafted at the size at which the quilt uses it, with its templates."""

    draft: Draft
    templates: tuple[Template, ...]


@dataclass(frozen=True, slots=True)
class PlacedBlock:
    """One block where it lies. `turned` degrees clockwise after mirroring; the box is its place, unturned
    (on point: the square before the whole centre is turned)."""

    block: int  # index into Quilt.blocks
    outline: tuple[Edge, ...]  # in the quilt
    turned: float
    mirrored: bool
    fabrics: tuple[tuple[str, str], ...]  # role to fabric, for this use
    part: Part  # 'blocks', or 'border' for the units of a pieced border


@dataclass(frozen=True, slots=True)
class QuiltPiece:
    """One piece of the top's cloth, as it shows in the picture. `template` is 'Title A' for pieces of blocks,
    else ''. `reversed` says that it is cut mirror-wise from the template."""

    outline: tuple[Edge, ...]  # clockwise
    fabric: str
    part: Part
    what: str  # 'blade', 'side triangle', 'sashing strip', 'post', 'border strip', 'plain square'
    block: int | None = None  # index into Quilt.blocks
    template: str = ""
    reversed: bool = False


@dataclass(frozen=True, slots=True)
class Need:
    """Pieces of one shape to be cut from one fabric, all alike: what the cutting methods choose a way for.

    `outline` is the finished shape as it lies for cutting: straight of grain up and down. Its edges carry
    their seam allowances in the same order. `template` is the block template it may be cut with, where there
    is one.
    """

    fabric: str
    part: Part
    what: str
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


@dataclass(frozen=True, slots=True)
class BindingNeed:
    """Binding: strips of a cut width, joined to a length."""

    fabric: str
    strip_width: Fraction
    length: Number  # inches of joined strip, turnings and joins' slack included
    bias: bool


@dataclass(frozen=True, slots=True)
class BackingNeed:
    """Backing or batting: a whole of this size, joined from panels (backing only)."""

    fabric: str  # '' for batting
    width: Number
    height: Number


@dataclass(frozen=True, slots=True)
class Quilt:
    """A quilt in one colourway, laid out and counted."""

    title: str
    version: int
    colourway: str  # title of its roles; '' where there is one
    width: Number
    height: Number
    blocks: tuple[SizedBlock, ...]
    placed: tuple[PlacedBlock, ...]
    pieces: tuple[QuiltPiece, ...]
    fabrics: tuple[Fabric, ...]  # in order of mention
    needs: tuple[Need, ...]
    binding: BindingNeed | None
    backing: BackingNeed | None
    batting: BackingNeed | None
    defaults: tuple[Default, ...]
    setting: str  # in words: 'straight, 4 across and 5 down'
    maker: str = ""
    notes: tuple[str, ...] = ()
    origin: Span | None = None
    block_counts: tuple[int, ...] = field(default=())  # how many of each of `blocks`
