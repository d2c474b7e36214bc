"""Templates of the library's blocks, all of one cloth: what nesting is measured on."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache

from piecewright.cutting.methods.rotary import choose_cut
from piecewright.cutting.model import Template
from piecewright.cutting.needs import Need, SizedBlock
from piecewright.drafting.model import Draft
from piecewright.geometry.edge import Point
from piecewright.geometry.motion import turn_about
from piecewright.quilt.model import Quilt

from .library import compiled, library_sources
from .needs import quilt

BLOCKS = 12
ORIGIN = Point(Fraction(0), Fraction(0))
SETS = (
    "Drunkard's Path",
    "Fanny's Fan",
    "Mariner's Compass",
    "Mill Wheel",
    "Orange Peel",
    "Robbing Peter to Pay Paul",
    "Apple Core",
    "Octagon",
    "Rocky Road to Kansas",
    "Star of Bethlehem",
    "Star of the East",
    "Necktie",
    "Storm at Sea",
    "Spider's Web",
    "Cherry Basket",
    "The Tumbler",
    "Diamond in a Rectangle",
    "Snowball",
)
"""Curved shapes, kites, long triangles of two hands, shapes between the ruler's marks."""


@cache
def _blocks() -> dict[str, SizedBlock]:
    return {
        block.draft.title: SizedBlock(block.draft, block.templates)
        for source in library_sources()
        for block in compiled(source).value or ()
    }


def template_quilt(title: str) -> Quilt:
    """A quilt of twelve of the library's block: only what has no rotary rule, and of one cloth."""
    block = _blocks()[title]
    needs = [_need(block.draft, each) for each in block.templates]
    made = quilt([need for need in needs if choose_cut(need, whole=block.draft.width).kind == "template"])
    return replace(made, blocks=(block,))


def _need(draft: Draft, template: Template) -> Need:
    ring = draft.pieces[template.pieces[0] - 1].ring
    heading = template.grain[0].heading if template.grain else 0.0
    lies = turn_about(ORIGIN, -heading)
    return Need(
        "sand",
        "blocks",
        template.label,
        tuple(lies.edge(side.edge) for side in ring),
        tuple(side.allowance for side in ring),
        BLOCKS * template.cut_count,
        BLOCKS * template.reversed_count,
        template.reversible,
        block=0,
        label=template.label,
    )
