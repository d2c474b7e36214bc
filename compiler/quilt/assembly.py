"""How a quilt goes together: its blocks, then the top that they are sewn into, proved by sewing it again."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Final

from ..cutting.needs import SizedBlock
from ..diagnostics.diagnostic import Outcome
from ..diagnostics.source import NOWHERE, Span
from ..drafting.model import Draft
from ..geometry.stroke import stroke_of
from ..measure.tolerance import NEAR
from ..sewing.model import Assembly, Proof, Size
from ..sewing.order.assembly import assemble, assemble_rows
from ..sewing.order.runs import sizes
from ..sewing.pressing.pressing import press
from ..sewing.proof.resew import prove
from ..words.messages import quilts as complain
from .assembly_model import Kind, QuiltAssembly, SewnBlock
from .model import PlacedBlock, Quilt
from .printed import printed_templates
from .stages import stages_of
from .top import Top, top_of

STRIPS: Final = ("sashing", "border")
"""Parts of a quilt toward which seams are pressed: plain strips lie flat, blocks and posts have seams."""


def assemble_quilts(quilts: Sequence[Quilt]) -> Outcome[tuple[QuiltAssembly, ...]]:
    """How each quilt goes together; an error where what is printed does not come out as laid out. What
    colourways share is sewn once."""
    known: dict[int, Outcome[SewnBlock]] = {}
    for block in (each for quilt in quilts for each in quilt.blocks):
        if id(block) not in known:
            known[id(block)] = _sew_block(block)
    found = [_assemble(quilt, [known[id(block)] for block in quilt.blocks]) for quilt in quilts]
    made = tuple(each.value for each in found if each.value is not None)
    return Outcome(made, tuple(said for each in found for said in each.diagnostics))


def _assemble(quilt: Quilt, sewn: Sequence[Outcome[SewnBlock]]) -> Outcome[QuiltAssembly]:
    odd = [
        complain.block_no_rectangle(_set_at(quilt, each), each.draft.title)
        for each in quilt.blocks
        if not _is_rectangle(each)
    ]
    made = tuple(each.value for each in sewn if each.value is not None)
    said = tuple(odd) + tuple(each for one in sewn for each in one.diagnostics)
    return Outcome(made, said).then(lambda blocks: _sew_top(quilt, blocks))


def _set_at(quilt: Quilt, block: SizedBlock) -> Span:
    """Where a quilt first sets a block of that title."""
    title = block.draft.title
    set_at = (
        need.origin
        for need in quilt.needs
        if need.block is not None and quilt.blocks[need.block].draft.title == title
    )
    return next(set_at, None) or quilt.origin or NOWHERE


def _sew_block(block: SizedBlock) -> Outcome[SewnBlock]:
    """One block at the size at which the quilt uses it, proved."""
    assembly = assemble(block.draft)
    return prove(block.draft, block.templates, assembly).then(
        lambda proof: Outcome(SewnBlock(assembly, proof))
    )


def _sew_top(quilt: Quilt, blocks: tuple[SewnBlock, ...]) -> Outcome[QuiltAssembly]:
    top = top_of(quilt)
    unfinished = [
        unfinished_size(block.draft, sewn.assembly) for block, sewn in zip(quilt.blocks, blocks, strict=True)
    ]
    said = [
        complain.allowances_differ(quilt.origin or NOWHERE, block.draft.title, over, quilt.allowance)
        for block, size in zip(quilt.blocks, unfinished, strict=True)
        if (over := _odd_allowance(block, size, quilt.allowance)) is not None
    ]
    assembly, joints = assemble_rows(top.draft, top.rows)
    templates = printed_templates(
        top,
        quilt.needs,
        quilt.blocks,
        [_usual(block, quilt.allowance) for block in quilt.blocks] if said else unfinished,
    )

    stages = stages_of(top, assembly, joints)
    mitred = [row.steps for stage in stages for row in stage.rows if row.way == "mitred"]

    def finish(proof: Proof) -> Outcome[QuiltAssembly]:
        return Outcome(
            QuiltAssembly(
                top.draft,
                _kinds(quilt, top, unfinished),
                blocks,
                assembly,
                press(top.draft, assembly, _lightness(quilt)),
                stages,
                _proof_of_all(quilt, blocks, proof),
            ),
            tuple(said),
        )

    return prove(top.draft, templates, assembly, mitred).then(finish)


def _is_rectangle(block: SizedBlock) -> bool:
    """Whether a block fills its cell."""
    draft = block.draft
    corners = {
        (float(at.x) / float(draft.width), float(at.y) / float(draft.height))
        for at in (edge.start for edge in draft.outline)
    }
    on_box = all(min(abs(share), abs(1 - share)) <= NEAR for corner in corners for share in corner)
    return on_box and len(draft.outline) == 4 and all(edge.arc is None for edge in draft.outline)


def unfinished_size(draft: Draft, assembly: Assembly) -> Size:
    """A block's printed size with the allowance on all sides."""
    if assembly.units:
        return assembly.units[-1].unfinished
    (piece,) = draft.pieces
    return sizes(tuple((stroke_of(side.edge), float(side.allowance)) for side in piece.ring))[1]


def _usual(block: SizedBlock, allowance: Fraction) -> Size:
    """A block's size with the allowance that the quilt's own pieces have."""
    return Size(float(block.draft.width + 2 * allowance), float(block.draft.height + 2 * allowance))


def _odd_allowance(block: SizedBlock, size: Size, allowance: Fraction) -> float | None:
    """What a block has over at its sides, where that is not what the quilt's own pieces have."""
    for over in (size.width - float(block.draft.width), size.height - float(block.draft.height)):
        if abs(over / 2 - float(allowance)) > NEAR:
            return over / 2
    return None


def _kinds(quilt: Quilt, top: Top, unfinished: Sequence[Size]) -> tuple[Kind, ...]:
    """What each shape of the top is."""
    kinds = []
    for shape, first in zip(top.draft.shapes, top.firsts, strict=True):
        piece = top.draft.pieces[shape.members[0].piece - 1]
        count = len(shape.members)
        if isinstance(first, PlacedBlock):
            draft = quilt.blocks[first.block].draft
            kinds.append(
                Kind(
                    shape.label,
                    draft.title,
                    draft.title,
                    first.part,
                    first.block,
                    first.mirrored,
                    first.fabrics,
                    count,
                    Size(float(draft.width), float(draft.height)),
                    unfinished[first.block],
                )
            )
            continue
        ring = tuple((stroke_of(side.edge), float(side.allowance)) for side in piece.ring)
        kinds.append(
            Kind(shape.label, first.what, first.fabric, first.part, None, False, (), count, *sizes(ring))
        )
    return tuple(kinds)


def _lightness(quilt: Quilt) -> Mapping[str, float]:
    """Strips as dark, blocks as light, all else between: pressing goes toward the strips."""
    known = {block.draft.title: 1.0 for block in quilt.blocks}
    for piece in quilt.pieces:
        if piece.block is None:
            known[piece.fabric] = min(known.get(piece.fabric, 0.5), 0.0 if piece.part in STRIPS else 0.5)
    return known


def _proof_of_all(quilt: Quilt, blocks: Sequence[SewnBlock], proof: Proof) -> Proof:
    """The proof with the pieces and seams inside the blocks counted."""
    inside = [blocks[each.block].proof for each in quilt.placed]
    pieces = proof.pieces + sum(each.pieces - 1 for each in inside)
    seams = proof.seams + sum(each.seams for each in inside)
    return Proof(pieces, seams, True, max(proof.furthest, *(each.furthest for each in inside), 0.0))
