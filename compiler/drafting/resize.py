"""A draft at another size. Everything drafted scales; seam allowances, trims and dots do not."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from ..geometry.motion import Transform, stretch
from ..measure.tolerance import NEAR, Number
from .model import Draft, Part, Piece, Side
from .shapes import match_shapes


def resize(draft: Draft, width: Number, height: Number) -> Draft:
    """The draft at that width and height in inches. Stretching (other proportions) is for straight seams
    only."""
    across, down = width / draft.width, height / draft.height
    even = abs(float(across - down)) * max(float(draft.width), float(draft.height)) <= NEAR
    if even:
        down = across
        if abs(float(across) - 1) * max(float(draft.width), float(draft.height)) <= NEAR:
            return draft
    carry = stretch(across, down)
    pieces = tuple(_piece(piece, carry) for piece in draft.pieces)
    return replace(
        draft,
        width=width,
        height=height,
        outline=tuple(carry.edge(edge) for edge in draft.outline),
        rules_across=tuple(x * across for x in draft.rules_across),
        rules_down=tuple(y * down for y in draft.rules_down),
        pieces=pieces,
        graph=draft.graph.moved(carry),
        shapes=draft.shapes if even else match_shapes(pieces),
        units=tuple(
            replace(
                unit, box=(unit.box[0] * across, unit.box[1] * down, unit.box[2] * across, unit.box[3] * down)
            )
            for unit in draft.units
        ),
    )


def _piece(piece: Piece, carry: Transform) -> Piece:
    def side(old: Side) -> Side:
        parts = tuple(Part(carry.edge(part.edge), part.neighbour, part.origins) for part in old.parts)
        return Side(carry.edge(old.edge), parts, old.allowance)

    return replace(
        piece,
        ring=tuple(side(each) for each in piece.ring),
        holes=tuple(tuple(side(each) for each in hole) for hole in piece.holes),
        area=piece.area * carry.determinant,
        inside=carry(piece.inside),
        grain=_grain(piece.grain, carry),
    )


def _grain(grain: float | Literal["free"] | None, carry: Transform) -> float | Literal["free"] | None:
    """The heading asked for, which follows the line that it was asked along."""
    if grain is None or grain == "free" or carry.a == carry.d:
        return grain
    return carry.grain(grain)
