"""What later folders may rely on: how a quilt's top goes together.

`top` is a draft whose pieces are whole blocks and single strips, posts and triangles; `assembly` is its
order of sewing and `pressing` its pressing, just as of a block (see sewing.model), so whatever draws a
block's steps draws a quilt's. `stages` tells the same steps as a maker would: parts side by side are one row,
however many seams it has.

    (made,) = quilt.assembly.assemble_quilts([quilt]).value   # Outcome[tuple[QuiltAssembly, ...]]
    made.kind_of(3)          # Kind of piece 3 of the top: what it is, of which block or cloth
    made.blocks[n]           # how quilt.blocks[n] is made: its assembly, its proof
    made.stages[0].rows[0]   # Row: makes 'u5', parts ('C5', 'C6', ...), make 4, seam 9in, sizes
    made.row_names['u5']     # 'R1'
    made.proof               # how many pieces and seams, and how far they stray
"""

from __future__ import annotations

from typing import Literal

from ..cutting.needs import Part, SingleKind
from ..drafting.model import Draft
from ..measure.record import record
from ..sewing.model import Assembly, Copy, Proof, Size
from ..sewing.naming import ROW
from ..sewing.order.row_tree import Way
from ..sewing.pressing.pressing_model import PressingPlan


@record
class Kind:
    """What pieces of the top are alike: a block in one choice of fabrics, or one shape of one cloth in one
    part of the quilt."""

    label: str  # Q1, Q2, ... of blocks; P1, P2, ... of cloth
    what: SingleKind | str  # of a block, its title
    fabric: str  # of cloth; of a block, its title
    part: Part
    block: int | None  # index into Quilt.blocks
    mirrored: bool
    fabrics: tuple[tuple[str, str], ...]  # of a block: role to fabric
    count: int
    finished: Size
    unfinished: Size  # of triangles and other slanted shapes: of the box round them


@record
class Join:
    """One seam of a row's first copy: the step of the assembly, and the pieces that it joins."""

    step: int
    pieces: tuple[int, ...]


@record
class Row:
    """Parts joined side by side by parallel seams, sewn in any order: that of `joins` was proved.

    `parts` are in order, left to right, top to bottom, or along a slant: labels of kinds, or ids of units
    that other rows make; `places` has the pieces of each, where the unit's first copy lies, and `turned` the
    degrees clockwise by which each unit lies turned from how it was made, 0 for kinds. `copies` of the
    unit are made so, alike; the others are sewn as they lie in longer rows.
    """

    makes: str
    parts: tuple[str, ...]
    places: tuple[tuple[int, ...], ...]
    joins: tuple[Join, ...]  # in the order of the assembly; the last makes the row
    copies: tuple[Copy, ...]
    way: Way
    seam_length: float  # of the longest of its seams
    finished: Size
    unfinished: Size
    turned: tuple[float, ...]

    @property
    def batch(self) -> int:
        """How many are made alike."""
        return len(self.copies)

    @property
    def steps(self) -> tuple[int, ...]:
        """The steps of the assembly that make it, each once."""
        return tuple(dict.fromkeys(join.step for join in self.joins))


@record
class Stage:
    """What is made before the next thing: the parts of the centre, by how they lie in it; the centre; a
    border, by its number from the inside out. A row that several stages use is made in the first of them."""

    what: Way | Literal["centre", "border"]
    border: int  # 0: of the centre
    rows: tuple[Row, ...]


@record
class SewnBlock:
    """How one block of a quilt is made, at the size at which the quilt uses it."""

    assembly: Assembly
    proof: Proof


@record
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

    def kept_for(self, row: Row) -> list[tuple[Stage, int]]:
        """How many copies of a row each stage after the first that uses it takes: they are kept until
        then."""
        used = [
            (stage, sum(each.batch * each.parts.count(row.makes) for each in stage.rows))
            for stage in self.stages
        ]
        return [each for each in used if each[1]][1:]
