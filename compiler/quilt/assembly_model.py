"""What later folders may rely on: how a quilt's top goes together.

`top` is a draft whose pieces are whole blocks and single strips, posts and triangles; `assembly` is its
order of sewing and `pressing` its pressing, just as of a block (see sewing.model), so whatever draws a
block's steps draws a quilt's. `stages` tells the same steps as a maker would: parts side by side are one row,
however many seams it has.

    made = quilt.assembly.assemble_quilt(quilt).value       # Outcome[QuiltAssembly]
    made.kind_of(3)          # Kind of piece 3 of the top: what it is, of which block or cloth
    made.blocks[n]           # how quilt.blocks[n] is made: its assembly, its proof
    made.stages[0].rows[0]   # Row: makes 'u5', parts ('C5', 'C6', ...), make 4, seam 9in, sizes
    made.proof.sentence      # '1,204 pieces, 1,203 seams, closes exactly'
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from ..cutting.needs import Part
from ..drafting.model import Draft
from ..sewing.model import Assembly, Proof, Size
from ..sewing.naming import ROW
from ..sewing.pressing.pressing_model import PressingPlan

Way = Literal["across", "down", "slantwise", "set in", "mitred"]
"""How the parts of a row lie: side by side, one under another, on point; round a corner; or four strips round
what comes first, from dot to dot, whose mitres are closed when all are on."""


@dataclass(frozen=True, slots=True)
class Kind:
    """What pieces of the top are alike: a block in one choice of fabrics, or one shape of one cloth in one
    part of the quilt."""

    label: str  # Q1, Q2, ... of blocks; P1, P2, ... of cloth
    what: str  # 'Tidewater Vane', 'sashing strip'
    fabric: str  # of cloth; of a block, its title
    part: Part
    block: int | None  # index into Quilt.blocks
    mirrored: bool
    fabrics: tuple[tuple[str, str], ...]  # of a block: role to fabric
    count: int
    finished: Size
    unfinished: Size  # of triangles and other slanted shapes: of the box round them


@dataclass(frozen=True, slots=True)
class Row:
    """Parts joined side by side by parallel seams, sewn in any order: `steps` is the one that was proved.

    `parts` are in order, left to right, top to bottom, or along a slant: labels of kinds, or ids of units
    that other rows make; `turned` has the degrees clockwise by which each unit lies turned from how it was
    made, 0 for kinds. `batch` are made alike.
    """

    makes: str
    parts: tuple[str, ...]
    steps: tuple[int, ...]  # of the assembly; the last makes the row
    batch: int
    way: Way
    seam_length: float  # of the longest of its seams
    finished: Size
    unfinished: Size
    turned: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Stage:
    """What is made before the next thing: 'Rows', 'Centre', 'Border 1'."""

    title: str
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class SewnBlock:
    """How one block of a quilt is made, at the size at which the quilt uses it."""

    assembly: Assembly
    proof: Proof


@dataclass(frozen=True, slots=True)
class QuiltAssembly:
    """How a quilt goes together, from the blocks' pieces to its outermost border."""

    top: Draft
    kinds: tuple[Kind, ...]  # in order of the top's shapes
    blocks: tuple[SewnBlock, ...]  # in order of Quilt.blocks
    assembly: Assembly
    pressing: PressingPlan
    stages: tuple[Stage, ...]  # of the top, in the order of sewing; blocks come before them
    proof: Proof  # of everything: pieces and seams inside the blocks are counted

    def kind_of(self, piece: int) -> Kind:
        """The kind of a piece of the top, by its number."""
        label = self.assembly.pieces[piece - 1].template
        return next(kind for kind in self.kinds if kind.label == label)

    @property
    def row_names(self) -> dict[str, str]:
        """`R1`, `R2`, ... in the order of sewing: what each row's unit is called."""
        rows = (row for stage in self.stages for row in stage.rows)
        return {row.makes: f"{ROW}{number}" for number, row in enumerate(rows, 1)}

    def names_in(self, row: Row) -> tuple[str, ...]:
        """What a row's parts are called, in order: `R1`, `R2 upside down`, `P3`."""
        names = self.row_names
        return tuple(names.get(part, part) + (" upside down" if abs(turned - 180) < 1 else "")
                     for part, turned in zip(row.parts, row.turned, strict=True))
