"""What later folders may rely on: a quilt laid out, piece by piece, with what is to be cut for it (see
cutting.needs).

Inches; x right and y down from the quilt's top left, finished size, binding not counted. `part` names where a
piece belongs, in the words of the report. A colourway is laid out as a quilt of its own.
"""

from __future__ import annotations

from dataclasses import field
from fractions import Fraction

from ..cutting.needs import BackingNeed, BindingNeed, Fabric, Need, Part, SingleKind, SizedBlock
from ..diagnostics.source import Span
from ..drafting.model import Default
from ..geometry.edge import Edge
from ..measure.record import record
from ..measure.tolerance import Number
from ..sewing.order.row_tree import InRows
from .ground import Setting


@record
class PlacedBlock:
    """One block where it lies. `turned` degrees clockwise after mirroring; the box is its place, unturned
    (on point: the square before the whole centre is turned)."""

    block: int  # index into Quilt.blocks
    outline: tuple[Edge, ...]  # in the quilt
    turned: float
    mirrored: bool
    fabrics: tuple[tuple[str, str], ...]  # role to fabric, for this use
    part: Part  # 'blocks', or 'border' for the units of a pieced border


@record
class QuiltPiece:
    """One piece of the top's cloth, as it shows in the picture. `template` is 'Title A' for pieces of blocks,
    else ''. `reversed` says that it is cut mirror-wise from the template."""

    outline: tuple[Edge, ...]  # clockwise
    fabric: str
    part: Part
    what: SingleKind | str  # of a block's piece its name, '' where it has none
    block: int | None = None  # index into Quilt.blocks
    template: str = ""
    reversed: bool = False
    holes: tuple[tuple[Edge, ...], ...] = ()  # each anticlockwise

    @property
    def rings(self) -> tuple[tuple[Edge, ...], ...]:
        """Its outline, then its holes."""
        return (self.outline, *self.holes)


@record
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
    setting: Setting | None  # None: a block alone
    allowance: Fraction = Fraction(1, 4)  # inches that its own seams take
    maker: str = ""
    notes: tuple[str, ...] = ()
    origin: Span | None = None
    block_counts: tuple[int, ...] = field(default=())  # how many of each of `blocks`
    rows: InRows | int = 0  # how the top is sewn: by index into `placed`, then into the cloth among `pieces`
