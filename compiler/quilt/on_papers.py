"""A quilt with blocks sewn on paper foundations: their cloth is a rectangle for every patch, in place of the
pieces' own shapes. Inches."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from ..cutting.needs import Need, Part, SizedBlock
from ..drafting.frame import rectangle
from ..geometry.pose import Pose
from ..geometry.stroke import place_of
from ..measure.marks import mark_up
from ..sewing.foundations.foundation import CUT_STEP, foundations
from ..sewing.foundations.foundation_model import Foundations
from .assembly_model import QuiltAssembly
from .counting import PARTS
from .model import PlacedBlock, Quilt


def papers_of(
    quilt: Quilt, made: QuiltAssembly, on_paper: Callable[[SizedBlock], bool]
) -> dict[int, Foundations]:
    """The foundations of the blocks that are to be sewn so and can be, by the block's index."""
    found = {
        index: foundations(block.draft, made.blocks[index].assembly)
        for index, block in enumerate(quilt.blocks)
        if on_paper(block)
    }
    return {index: each for index, each in found.items() if each.possible}


def cut_for_papers(quilt: Quilt, papers: Mapping[int, Foundations]) -> Quilt:
    """The same quilt, the needs of its blocks on foundations being those of their patches: of each fabric and
    size together, of all copies of a block."""
    if not papers:
        return quilt
    order = {fabric.name: at for at, fabric in enumerate(quilt.fabrics)}
    needs = [need for need in quilt.needs if need.block not in papers]
    needs += _patch_needs(quilt, papers)
    needs.sort(key=lambda need: (order[need.fabric], PARTS.index(need.part)))
    return replace(quilt, needs=tuple(needs))


class _Like(NamedTuple):
    """What patches have in common that are cut together."""

    fabric: str
    part: Part
    block: int
    width: Fraction
    height: Fraction


def _patch_needs(quilt: Quilt, papers: Mapping[int, Foundations]) -> Iterator[Need]:
    prints = {fabric.name for fabric in quilt.fabrics if fabric.is_directional}
    groups: dict[_Like, dict[str, int]] = {}
    lying: dict[tuple[int, int, float, bool], tuple[Fraction, Fraction]] = {}
    for placed in quilt.placed:
        if placed.block not in papers:
            continue
        fabrics = dict(placed.fabrics)
        for patch in (patch for section in papers[placed.block].sections for patch in section.patches):
            fabric = fabrics[patch.fabric]
            size = patch.size
            if fabric in prints:
                key = placed.block, patch.piece, placed.turned, placed.mirrored
                if key not in lying:
                    lying[key] = _upright(quilt, placed, patch.piece, papers[placed.block].margin)
                size = lying[key]
            counts = groups.setdefault(_Like(fabric, placed.part, placed.block, *size), {})
            counts[patch.label] = counts.get(patch.label, 0) + 1
    for like, counts in groups.items():
        yield _patch_need(quilt, like, counts, papers[like.block].margin)


def _upright(quilt: Quilt, placed: PlacedBlock, piece: int, margin: Fraction) -> tuple[Fraction, Fraction]:
    """Across and down a print that stands up in the quilt: what covers a piece of the block as it lies."""
    draft = quilt.blocks[placed.block].draft
    places = [place_of(side.edge.start) for side in draft.pieces[piece - 1].ring]
    motion = Pose(placed.turned, placed.mirrored).motion()
    spots = [motion(place) for place in places]
    over = 2 * float(draft.allowance + margin)
    across, down = [spot.real for spot in spots], [spot.imag for spot in spots]
    return (
        mark_up(max(across) - min(across) + over, CUT_STEP),
        mark_up(max(down) - min(down) + over, CUT_STEP),
    )


def _patch_need(quilt: Quilt, like: _Like, counts: Mapping[str, int], margin: Fraction) -> Need:
    over = quilt.blocks[like.block].draft.allowance + margin
    outline = rectangle(Fraction(0), Fraction(0), like.width - 2 * over, like.height - 2 * over)
    return Need(
        like.fabric,
        like.part,
        "",
        outline,
        (over,) * len(outline),
        sum(counts.values()),
        0,
        True,
        block=like.block,
        margin=margin,
        patches=tuple(counts),
    )
