"""A block alone as a quilt of one: its roles are the fabrics, and there is nothing round it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Protocol

from ..cutting.model import Template
from ..cutting.needs import USABLE_WIDTH, Fabric, SizedBlock
from ..drafting.model import Draft, Member, Part, Piece, Shape, Side
from ..geometry.motion import IDENTITY
from ..measure.tolerance import Number
from ..sewing.model import Assembly, Cloth, Proof, Size
from ..sewing.naming import BLOCK
from ..sewing.pressing.pressing_model import PressingPlan
from .assembly import unfinished_size
from .assembly_model import Kind, QuiltAssembly, SewnBlock
from .cloths import Palette
from .counting import count_top
from .ground import Use
from .model import Quilt


class WholeBlock(Protocol):
    """What is read of a compiled block."""

    @property
    def draft(self) -> Draft:
        """The block drafted."""

    @property
    def templates(self) -> tuple[Template, ...]:
        """Its templates."""

    @property
    def assembly(self) -> Assembly:
        """How it goes together."""

    @property
    def proof(self) -> Proof:
        """What re-sewing it found."""


def quilt_of_one(draft: Draft, templates: Sequence[Template], width: Fraction = USABLE_WIDTH) -> Quilt:
    """The block as it is cut: each role a fabric off the bolt, usable for `width` inches.

    There is one need for each fabric of each template, in the order of the templates; all its pieces lie on
    the cloth by the template's first arrow.
    """
    block = SizedBlock(draft, tuple(templates))
    roles = dict.fromkeys(piece.fabric for piece in draft.pieces)
    fabrics = {role: Fabric(role, role, width, Fraction(0), origin=draft.origin) for role in roles}
    use = Use(0, {}, IDENTITY, "blocks", draft.origin)
    counted = count_top([use], [], [block], Palette(fabrics, {}), by_arrow=False)
    rows = [(template.label, count.fabric) for template in templates for count in template.counts]
    return Quilt(
        title=draft.title,
        version=draft.version,
        colourway="",
        width=draft.width,
        height=draft.height,
        blocks=(block,),
        placed=tuple(counted.placed),
        pieces=tuple(counted.pieces),
        needs=tuple(sorted(counted.needs, key=lambda need: rows.index((need.label, need.fabric)))),
        binding=None,
        backing=None,
        batting=None,
        fabrics=tuple(fabrics.values()),
        defaults=(),
        setting=None,
        maker=draft.maker,
        notes=draft.notes,
        origin=draft.origin,
        block_counts=(1,),
        rows=0,
    )


def on_cloth_of(quilt: Quilt, width: Fraction) -> Quilt:
    """The same from cloth of another usable width."""
    return replace(quilt, fabrics=tuple(replace(each, usable_width=width) for each in quilt.fabrics))


def assembly_of_one(quilt: Quilt, block: WholeBlock) -> QuiltAssembly:
    """A top that is the block: nothing is sewn to it."""
    draft, (placed,) = block.draft, quilt.placed
    sides = tuple(Side(edge, (Part(edge, None),), draft.allowance) for edge in draft.outline)
    area: Number = sum((piece.area for piece in draft.pieces), Fraction(0))
    whole = Piece(1, draft.title, draft.title, sides, (), area, draft.pieces[0].inside)
    shape = Shape(f"{BLOCK}1", (Member(1, 0, False),), False, 1)
    top = replace(draft, pieces=(whole,), shapes=(shape,), units=())
    kind = Kind(
        shape.label,
        draft.title,
        draft.title,
        placed.part,
        placed.block,
        placed.mirrored,
        placed.fabrics,
        1,
        Size(float(draft.width), float(draft.height)),
        unfinished_size(draft, block.assembly),
    )
    return QuiltAssembly(
        top,
        (kind,),
        (SewnBlock(block.assembly, block.proof),),
        Assembly((Cloth(1, shape.label, False, draft.title),), (), ()),
        PressingPlan((), ()),
        (),
        block.proof,
    )
