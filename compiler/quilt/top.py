"""A quilt's top as a draft of its own: every block is one piece, as every strip, post and triangle is.

So what presses and proves the order of sewing of a block does the same for a quilt. The order itself is that
of the rows in which the quilt was laid out.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final, NamedTuple

from ..cutting.needs import SizedBlock
from ..drafting.model import Draft, Member, Piece, Shape, Side, TrimRule
from ..drafting.pieces import graph_of
from ..drafting.shapes import match_shapes
from ..geometry.edge import Edge, Point
from ..sewing.naming import BLOCK, PLAIN
from ..sewing.order.likeness import poses_of, turns_of
from ..sewing.order.row_tree import InRows
from .ground import box
from .model import PlacedBlock, Quilt, QuiltPiece
from .touching import sides_of

ROW: Final = 2
"""Decimals of an inch by which middles lie in one row of reading order."""


class Top(NamedTuple):
    """The draft of a top; the rows in which its pieces are sewn; and in order of its shapes, what each is."""

    draft: Draft
    rows: InRows | int
    firsts: tuple[PlacedBlock | QuiltPiece, ...]  # the first of each kind


class _Item(NamedTuple):
    """A block or a piece of cloth, before it is numbered."""

    outline: tuple[Edge, ...]
    middle: Point
    placed: PlacedBlock | None
    cloth: QuiltPiece | None


def top_of(quilt: Quilt) -> Top:
    """The quilt's top as a draft."""
    order, items = zip(*_items(quilt), strict=True)
    number_of = {index: number for number, index in enumerate(order, 1)}
    rows = quilt.rows
    rows = number_of[rows] if isinstance(rows, int) else rows.numbered(number_of.__getitem__)
    sides = sides_of([each.outline for each in items], [quilt.allowance] * len(items))
    pieces = tuple(
        _piece(number, item, ring, quilt)
        for number, (item, ring) in enumerate(zip(items, sides, strict=True), 1)
    )
    shapes, firsts = _shapes(items, pieces, quilt.blocks)
    draft = Draft(
        quilt.title,
        quilt.version,
        quilt.width,
        quilt.height,
        box(Fraction(0), Fraction(0), quilt.width, quilt.height),
        (Fraction(0), quilt.width),
        (Fraction(0), quilt.height),
        pieces,
        shapes,
        (),
        TrimRule("none", dots=Fraction(0)),
        quilt.allowance,
        (),
        maker=quilt.maker,
        origin=quilt.origin,
        graph=graph_of(pieces),
    )
    return Top(draft, rows, firsts)


def _items(quilt: Quilt) -> list[tuple[int, _Item]]:
    """Everything that the top is sewn of, in reading order, by its number in the quilt's rows."""
    found = [_Item(each.outline, _middle(each.outline), each, None) for each in quilt.placed]
    found += [
        _Item(each.outline, _middle(each.outline), None, each) for each in quilt.pieces if each.block is None
    ]
    return sorted(
        enumerate(found), key=lambda each: tuple(round(float(at), ROW) for at in reversed(each[1].middle))
    )


def _middle(outline: Sequence[Edge]) -> Point:
    corners = [edge.start for edge in outline]
    return Point(
        sum(float(at.x) for at in corners) / len(corners), sum(float(at.y) for at in corners) / len(corners)
    )


def _piece(number: int, item: _Item, ring: tuple[Side, ...], quilt: Quilt) -> Piece:
    if item.placed is not None:
        name = fabric = quilt.blocks[item.placed.block].draft.title
    else:
        assert item.cloth is not None, "a piece is a block or cloth"
        name, fabric = item.cloth.what, item.cloth.fabric
    return Piece(number, name, fabric, ring, (), _area(item.outline), item.middle)


def _area(outline: Sequence[Edge]) -> float:
    return (
        sum(
            float(edge.start.x) * float(edge.end.y) - float(edge.end.x) * float(edge.start.y)
            for edge in outline
        )
        / 2
    )


# ---- what is alike -------------------------------------------------------------------------------


def _shapes(
    items: Sequence[_Item], pieces: Sequence[Piece], blocks: Sequence[SizedBlock]
) -> tuple[tuple[Shape, ...], tuple[PlacedBlock | QuiltPiece, ...]]:
    """The kinds of pieces as shapes: blocks Q1, Q2, ..., then cloth P1, P2, ... in order of first use."""
    shapes: list[Shape] = []
    firsts: list[PlacedBlock | QuiltPiece] = []
    for number, members in enumerate(_block_groups(items), 1):
        first = members[0][1]
        turns = _turns(blocks[first.block].draft, first)
        firsts.append(first)
        turned = tuple(
            Member(piece, (placed.turned - first.turned) % 360, False) for piece, placed in members
        )
        shapes.append(Shape(f"{BLOCK}{number}", turned, False, turns))
    number = 0
    for first_cloth, group in _cloth_groups(items, pieces):
        for shape in match_shapes(group):
            number += 1
            firsts.append(first_cloth)
            shapes.append(Shape(f"{PLAIN}{number}", shape.members, shape.reversible, shape.turns))
    return tuple(shapes), tuple(firsts)


def _turns(draft: Draft, placed: PlacedBlock) -> int:
    """How many turns carry a block in its fabrics onto itself: in a row that is turned it lies as before."""
    middle = complex(float(draft.width), float(draft.height)) / 2
    return turns_of(poses_of(draft, dict(placed.fabrics)), middle)


def _block_groups(items: Sequence[_Item]) -> list[list[tuple[int, PlacedBlock]]]:
    """Blocks made alike, with their numbers: a mirrored one is another block."""
    groups: dict[object, list[tuple[int, PlacedBlock]]] = {}
    for number, item in enumerate(items, 1):
        if item.placed is not None:
            key = (item.placed.block, item.placed.mirrored, item.placed.fabrics)
            groups.setdefault(key, []).append((number, item.placed))
    return list(groups.values())


def _cloth_groups(items: Sequence[_Item], pieces: Sequence[Piece]) -> list[tuple[QuiltPiece, list[Piece]]]:
    """Pieces of one cloth and one name in one part of the quilt, with the first of them."""
    groups: dict[object, tuple[QuiltPiece, list[Piece]]] = {}
    for item, piece in zip(items, pieces, strict=True):
        if item.cloth is not None:
            key = (item.cloth.fabric, item.cloth.part, item.cloth.what)
            groups.setdefault(key, (item.cloth, []))[1].append(piece)
    return list(groups.values())
