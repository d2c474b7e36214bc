"""A laid-out top to its pieces and to what is to be cut: every piece of the picture is in one need."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Final

from ..cutting.model import GrainArrow, Template
from ..cutting.needs import Fabric, Need, Part, SingleKind, SizedBlock
from ..diagnostics.source import Span
from ..drafting.model import Part as SidePart
from ..drafting.model import Piece, Shape, Side
from ..drafting.shapes import match_shapes
from ..geometry.edge import Edge, Point
from ..geometry.motion import Transform, turn_about
from ..geometry.pose import Pose
from ..measure.angle import whole_degrees
from .cloths import Palette
from .directions import Bunch, bunches
from .ground import Single, Use
from .model import PlacedBlock, QuiltPiece

ALLOWANCE: Final = Fraction(1, 4)
"""Inches. Of every piece of a setting or border, where the quilt does not say; blocks state their own."""

PARTS: Final = ("blocks", "setting", "sashing", "posts", "border")
"""The parts of a top, in the order in which a cutter meets them."""

ORIGIN = Point(Fraction(0), Fraction(0))


@dataclass
class Tally:
    """How many of one template are cut of one fabric."""

    count: int = 0
    reversed: int = 0
    lying: dict[Pose, int] = field(default_factory=dict)  # on a print with a direction: so many of each way


@dataclass
class Counted:
    """The pieces of the top, and what is to be cut."""

    placed: list[PlacedBlock] = field(default_factory=list)
    pieces: list[QuiltPiece] = field(default_factory=list)
    needs: list[Need] = field(default_factory=list)


def count_top(
    uses: Sequence[Use],
    singles: Sequence[Single],
    blocks: Sequence[SizedBlock],
    palette: Palette,
    by_arrow: bool = True,
    allowance: Fraction = ALLOWANCE,
) -> Counted:
    """Everything in one colourway. `by_arrow`: pieces of one template that lie on the cloth by different
    arrows are needs of their own."""
    counted = Counted()
    tallies: dict[tuple[str, Part, int, str, int], Tally] = {}
    origins: dict[tuple[str, Part, int, str, int], Span | None] = {}
    looks = [_Look(block, by_arrow) for block in blocks]
    for use in uses:
        _count_block(use, blocks[use.block], looks[use.block], palette, counted, tallies, origins)
    for key, tally in tallies.items():
        fabric = palette.fabrics.get(key[0])
        counted.needs += _block_needs(key, tally, blocks[key[2]], origins[key], fabric)
    _count_singles(singles, palette, counted, allowance)
    order = {name: at for at, name in enumerate(palette.fabrics)}
    counted.needs.sort(key=lambda need: (order.get(need.fabric, len(order)), PARTS.index(need.part)))
    return counted


class _Look:
    """Template, arrow, hand and turn of every piece of a block."""

    def __init__(self, block: SizedBlock, by_arrow: bool) -> None:
        self.of: dict[int, tuple[Template, int, bool, Pose]] = {}
        by_label = {template.label: template for template in block.templates}
        for shape in block.draft.shapes:
            template = by_label[shape.label]
            for member in shape.members:
                arrows = template.grain if by_arrow else ()
                arrow = next((at for at, each in enumerate(arrows) if member.piece in each.pieces), 0)
                self.of[member.piece] = (
                    template,
                    arrow,
                    member.reversed and not shape.reversible,
                    member.pose,
                )


def _count_block(
    use: Use,
    block: SizedBlock,
    look: _Look,
    palette: Palette,
    counted: Counted,
    tallies: dict[tuple[str, Part, int, str, int], Tally],
    origins: dict[tuple[str, Part, int, str, int], Span | None],
) -> None:
    index, carry = use.block, use.transform
    fabrics: dict[str, str] = {}
    for piece in block.draft.pieces:
        role = piece.fabric
        if role not in fabrics:
            fabrics[role] = palette.fabric(use.renames.get(role, role), block.draft.title)
        template, arrow, back, way = look.of[piece.number]
        back = back != (carry.mirrors and not template.reversible)
        directed = _directed(palette.fabrics.get(fabrics[role]))
        key = (fabrics[role], use.part, index, template.label, 0 if directed else arrow)
        tally = tallies.setdefault(key, Tally())
        origins.setdefault(key, use.origin)
        if back:
            tally.reversed += 1
        else:
            tally.count += 1
        if directed:
            way = _carried(way, carry)
            tally.lying[way] = tally.lying.get(way, 0) + 1
        counted.pieces.append(
            QuiltPiece(
                _clockwise(tuple(carry.edge(side.edge) for side in piece.ring), carry.mirrors),
                fabrics[role],
                use.part,
                piece.name or "",
                index,
                f"{block.draft.title} {template.label}",
                back,
                tuple(
                    _clockwise(tuple(carry.edge(side.edge) for side in hole), carry.mirrors)
                    for hole in piece.holes
                ),
            )
        )
    outline = _clockwise(tuple(carry.edge(edge) for edge in block.draft.outline), carry.mirrors)
    counted.placed.append(
        PlacedBlock(index, outline, carry.turned % 360, carry.mirrors, tuple(fabrics.items()), use.part)
    )


def _clockwise(ring: tuple[Edge, ...], mirrored: bool) -> tuple[Edge, ...]:
    """A ring the way round that it ran before it was mirrored."""
    return tuple(edge.reversed() for edge in reversed(ring)) if mirrored else ring


def _directed(fabric: Fabric | None) -> bool:
    return fabric is not None and fabric.is_directional


def _carried(way: Pose, carry: Transform) -> Pose:
    """How a piece lies in the quilt that lies so in its block."""
    turned = carry.turned + (-way.turned if carry.mirrors else way.turned)
    return Pose(round(turned, 9) % 360, way.reversed != carry.mirrors)


def _block_needs(
    key: tuple[str, Part, int, str, int],
    tally: Tally,
    block: SizedBlock,
    origin: Span | None,
    fabric: Fabric | None,
) -> Iterator[Need]:
    """What is cut with one template from one fabric: one need; on a print with a direction, one for each way
    that is cut by itself."""
    name, part, index, label, arrow = key
    template = next(each for each in block.templates if each.label == label)
    piece = block.draft.pieces[template.pieces[0] - 1]
    lies = turn_about(ORIGIN, -_heading(template.grain, arrow))
    need = Need(
        name,
        part,
        piece.name or "",
        tuple(lies.edge(side.edge) for side in piece.ring),
        tuple(side.allowance for side in piece.ring),
        tally.count,
        tally.reversed,
        template.reversible,
        f"{block.draft.title} {label}",
        index,
        label,
        origin,
        holed=bool(piece.holes),
    )
    if fabric is None or not tally.lying:
        yield need
        return
    for bunch in bunches(piece, tally.lying, not fabric.one_way):
        yield _bunched(need, bunch)


def _bunched(need: Need, bunch: Bunch) -> Need:
    count, back = bunch.counts
    return replace(
        need, outline=bunch.outline, count=count, reversed=back, ways=bunch.ways, drawn=bunch.drawn
    )


def _heading(arrows: tuple[GrainArrow, ...], arrow: int) -> Fraction | float:
    return whole_degrees(arrows[arrow].heading) if arrows else Fraction(0)


def _count_singles(
    singles: Sequence[Single], palette: Palette, counted: Counted, allowance: Fraction
) -> None:
    groups: dict[tuple[str, Part, SingleKind, bool], list[Single]] = {}
    for each in singles:
        fabric = palette.fabric(each.word)
        groups.setdefault((fabric, each.part, each.what, each.unjoined), []).append(each)
        counted.pieces.append(QuiltPiece(each.outline, fabric, each.part, each.what))
    for (fabric, part, what, _), group in groups.items():
        pieces = [_as_piece(number, each, fabric, allowance) for number, each in enumerate(group, 1)]
        for shape in match_shapes(pieces):
            first = group[shape.members[0].piece - 1]
            need = _single_need(fabric, part, what, first, shape, allowance)
            cloth = palette.fabrics.get(fabric)
            if cloth is not None and cloth.is_directional:
                lying = Counter(member.pose for member in shape.members)
                counted.needs += [
                    _bunched(need, each)
                    for each in bunches(pieces[shape.members[0].piece - 1], lying, not cloth.one_way)
                ]
            else:
                counted.needs.append(need)


def _single_need(
    fabric: str, part: Part, what: SingleKind, first: Single, shape: Shape, allowance: Fraction
) -> Need:
    """Pieces of one shape that belong to no block."""
    lies = turn_about(ORIGIN, -Fraction(round(first.grain)))
    back = 0 if shape.reversible else sum(member.reversed for member in shape.members)
    return Need(
        fabric,
        part,
        what,
        tuple(lies.edge(edge) for edge in first.outline),
        (allowance,) * len(first.outline),
        len(shape.members) - back,
        back,
        shape.reversible,
        origin=first.origin,
        unjoined=first.unjoined,
    )


def _as_piece(number: int, single: Single, fabric: str, allowance: Fraction) -> Piece:
    sides = tuple(Side(edge, (SidePart(edge, None),), allowance) for edge in single.outline)
    x = sum((edge.start.x for edge in single.outline), Fraction(0)) / len(single.outline)
    y = sum((edge.start.y for edge in single.outline), Fraction(0)) / len(single.outline)
    return Piece(number, single.what, fabric, sides, (), 0, Point(x, y))
