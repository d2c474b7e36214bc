"""What a writer can be told about the templates."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...diagnostics.diagnostic import Diagnostic, error, warning
from ...diagnostics.source import Span
from ...measure.tolerance import Number, near
from ..numbers import ruler_text

if TYPE_CHECKING:
    from ...drafting.model import Draft, Piece
    from ...drafting.whole_sides import WholeSide


def curve_too_tight(draft: Draft, piece: Piece, radius: float, allowance: Number) -> Diagnostic:
    """An inner curve whose radius is less than the allowance, so that its cut edge has nowhere to run."""
    return warning(
        "curve-tighter-than-allowance",
        f"An inner curve of {_name(piece)} has a radius of {ruler_text(radius)}, within its seam allowance.",
        place_of(draft, piece),
        f"the allowance is {ruler_text(allowance)}",
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


def no_room(draft: Draft, piece: Piece, side: WholeSide) -> Diagnostic:
    """Allowances so wide for their piece that no cut outline can be drawn for them: said at the `allowance`,
    or at the seam where none was written."""
    width = ruler_text(side.allowance)
    said = [span for stated, span in draft.allowances if near(stated, side.allowance)]
    sewn = [span for part in side.parts for span in part.origins]
    return error(
        "allowance-no-room",
        f"The seam allowance of {width} along an edge of {_name(piece)} has no room.",
        (said[-1:] or sewn[:1] or [place_of(draft, piece)])[0],
        "too wide for that edge" if said else f"the allowance is {width}",
        help="Write a narrower `allowance`, or divide the piece there by a seam.",
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
