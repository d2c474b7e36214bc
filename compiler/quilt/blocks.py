"""What drafting a block at another size does to its pieces."""

from __future__ import annotations

from ..drafting.model import Draft


def narrowest(draft: Draft) -> float:
    """Inches across the largest circle that the draft's narrowest piece can hold: never more than four times
    its area over its border, and just that in a triangle."""
    return min(
        4 * float(piece.area) / sum(side.edge.length for ring in (piece.ring, *piece.holes) for side in ring)
        for piece in draft.pieces
    )
