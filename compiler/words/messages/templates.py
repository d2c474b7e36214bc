"""What a writer can be told about the templates."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...diagnostics.diagnostic import Diagnostic, error, note, warning
from ...measure.marks import mark_up
from ..phrases import one_of
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ...diagnostics.source import Span
    from ...measure.tolerance import Number

PieceName = str | int
"""The name of a piece, or the number of one that has none."""


@message
def curve_too_tight(say: Say, span: Span, piece: PieceName, radius: float, allowance: Number) -> Diagnostic:
    """An inner curve whose radius is less than the allowance, so that its cut edge has nowhere to run."""
    return warning(
        "curve-tighter-than-allowance",
        f"An inner curve of {piece_name(piece)} has a radius of {say.length(radius)}, "
        "within its seam allowance.",
        span,
        f"the allowance is {say.length(allowance)}",
        help="Make the curve wider, or write a narrower `allowance` for it.",
    )


@message
def allowances_overlap(say: Say, span: Span, piece: PieceName) -> Diagnostic:
    """A notch or a mouth narrower than the two allowances in it."""
    return warning(
        "allowances-overlap",
        f"The seam allowances of {piece_name(piece)} run into each other at an inner corner.",
        span,
        help="Divide the piece there by a seam, or write a narrower `allowance`.",
    )


@message
def no_room(say: Say, span: Span, piece: PieceName, allowance: Number, written: bool) -> Diagnostic:
    """An allowance so wide for its piece that no cut outline can be drawn for it, told at the `allowance`,
    or at the seam where none was `written`."""
    width = say.length(allowance)
    return error(
        "allowance-no-room",
        f"The seam allowance of {width} along an edge of {piece_name(piece)} has no room.",
        span,
        "too wide for that edge" if written else f"the allowance is {width}",
        help="Write a narrower `allowance`, or divide the piece there by a seam.",
    )


def piece_name(piece: PieceName) -> str:
    """A piece as it is called, by its number where it has no name."""
    return f"piece {piece}" if isinstance(piece, int) else f"`{piece}`"


@message
def cuts_leave_ruler(say: Say, span: Span, title: str, cuts: Sequence[tuple[str, Number]]) -> Diagnostic:
    """A used block of which some cuts lie between two marks, and lay on one at the size it was drafted to;
    each by its template and a length that lies so."""
    (label, length), *more = cuts
    above = mark_up(length, say.ruler)
    others = f", and {one_of([each for each, _ in more], 'and')} likewise" if more else ""
    return note(
        "cuts-leave-ruler",
        f"At this size of `{title[:60]}`, {label} would be cut between {say.on_ruler(above - say.ruler)} and "
        f"{say.on_ruler(above)}{others}.",
        span,
        help="Cut it round its template; or choose a size by `piecewright resize`.",
    )
