"""What a writer can be told about the templates."""

from __future__ import annotations

from ...diagnostics.diagnostic import Diagnostic, warning
from ...diagnostics.source import Span
from ...drafting.model import Draft, Piece
from ...measure.fractions import ruler_text
from ...measure.tolerance import Number


def curve_too_tight(draft: Draft, piece: Piece, radius: float, allowance: Number) -> Diagnostic:
    """An inner curve whose radius is less than the allowance, so that its cut edge has nowhere to run."""
    return warning(
        "curve-tighter-than-allowance",
        f"An inner curve of {_name(piece)} has a radius of {ruler_text(radius)}, within its seam allowance.",
        place_of(draft, piece), f"the allowance is {ruler_text(allowance)}",
        help="Make the curve wider, or write a narrower `allowance` for it.",
    )


def allowances_overlap(draft: Draft, piece: Piece) -> Diagnostic:
    """A notch or a mouth narrower than the two allowances in it."""
    return warning(
        "allowances-overlap",
        f"The seam allowances of {_name(piece)} run into each other at an inner corner.",
        place_of(draft, piece),
        help="Divide the piece there by a seam, or write a narrower `allowance`.",
    )


def window_closes(draft: Draft, piece: Piece, allowance: Number) -> Diagnostic:
    """A hole too small for the allowance all round inside it."""
    return warning(
        "window-closes",
        f"A hole in {_name(piece)} is too small for a seam allowance of {ruler_text(allowance)} inside it.",
        place_of(draft, piece),
        help="Run a seam from the hole to the piece's edge, so that it can be sewn.",
    )


def _name(piece: Piece) -> str:
    return f"`{piece.name}`" if piece.name else f"piece {piece.number}"


def place_of(draft: Draft, piece: Piece) -> Span:
    """The writer's words for a piece: its statement, else a seam beside it, else the block's title."""
    if piece.origin is not None:
        return piece.origin
    for side in piece.ring:
        for part in side.parts:
            if part.origins:
                return part.origins[0]
    return draft.origin or Span("", 0, 0)
