"""Complaints about seams, arcs, outlines, turns and mirrors."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...diagnostics.diagnostic import Diagnostic, Label, error, note
from ...measure.marks import nearest_mark
from ...measure.tolerance import FAR, Number
from ..numbers import number_text, reads_exactly, ruler_text

if TYPE_CHECKING:
    from ...diagnostics.source import Span
    from ...geometry.edge import Point


def seam_no_length(span: Span) -> Diagnostic:
    """A hop from a place to itself."""
    return error("seam-no-length", "This seam ends where it starts.", span, help="Name two different places.")


def arc_uneven(span: Span, first: float, second: float) -> Diagnostic:
    """An arc whose ends are not equally far from its centre."""
    return error(
        "arc-uneven",
        f"The arc starts {ruler_text(first)} from its centre and ends {ruler_text(second)} from it.",
        span,
        f"{ruler_text(abs(first - second))} apart",
        help="Both ends must be equally far from the point after `around`; or use `through`.",
    )


def arc_half_circle(span: Span) -> Diagnostic:
    """Half a circle by `around`, which could go either way."""
    return error(
        "arc-half-circle",
        "This is exactly half a circle, which could bulge either way.",
        span,
        help="Say which by a point on it: `~~ Q through R`.",
    )


def arc_straight(span: Span) -> Diagnostic:
    """`through` a point on the straight line."""
    return error(
        "arc-straight",
        "These three points lie on one straight line, so there is no arc through them.",
        span,
        help="Write `--` for a straight seam.",
    )


def arc_too_flat(span: Span) -> Diagnostic:
    """`through` a point that lies off the straight line by next to nothing."""
    return error(
        "arc-too-flat",
        f"This arc is so flat that its centre lies more than {FAR:,}in away.",
        span,
        help="Write `--` for a straight seam, or move the point after `through` further off the line.",
    )


def outline_hop_first(span: Span) -> Diagnostic:
    """`-- outline` with no direction."""
    return error(
        "outline-no-direction",
        "`-- outline` carries a seam straight on, and here it has no direction yet.",
        span,
        help="Put it after another hop: `seam center -- gate -- outline`.",
    )


def through_misses(span: Span) -> Diagnostic:
    """A line that does not cross the block."""
    return error(
        "seam-outside",
        "This line does not cross the block.",
        span,
        help="Its points may lie outside, but the line itself must run through the block.",
    )


def seam_outside(span: Span, where: str) -> Diagnostic:
    """A seam that leaves the outline."""
    return error(
        "seam-outside",
        f"This seam leaves the block {where}.",
        span,
        help="Points may lie outside, seams may not. `-- outline` ends a seam at the edge.",
    )


def copies_outside(what: str, span: Span, turn: Span, where: str, copy: int) -> Diagnostic:
    """A copy that leaves the outline."""
    return error(
        "copy-outside",
        f"Copy {copy + 1} of {what} leaves the block {where}.",
        span,
        related=(Label(turn, "turned here"),),
        help="Turn only part of the way round, as in `turn 6 of 15deg about P { ... }`.",
    )


def seam_hangs(span: Span, place: Point, away: float | None) -> Diagnostic:
    """A seam end that stops inside a piece."""
    if away is None:
        return error(
            "seam-hangs",
            f"This seam ends inside a piece, at {at_place(place)}.",
            span,
            help="Carry it on to a seam or the block's edge, or take it away.",
        )
    return error(
        "seam-hangs",
        f"This seam ends inside a piece, {ruler_text(away)} from the nearest seam.",
        span,
        f"it stops at {at_place(place)}",
        help="Carry it on to a seam or the block's edge, or take it away.",
    )


def nearly_touches(span: Span, place: Point, away: float) -> Diagnostic:
    """An end that misses a seam by less than anyone means."""
    return error(
        "seam-nearly-touches",
        f"This end nearly touches a seam: it is {number_text(round(away, 4))}in off it, "
        f"at {at_place(place)}.",
        span,
        help="Build its point on the seam itself, with `meet` or `foot of`.",
    )


def seam_divides_nothing(span: Span) -> Diagnostic:
    """A seam with the same piece on both sides."""
    return error(
        "seam-divides-nothing",
        "This seam has the same piece on both sides.",
        span,
        help="Carry it on until it closes off a piece, or take it away.",
    )


def crossing_unnamed(span: Span, other: Span, place: Point) -> Diagnostic:
    """Two seams that cross where no point is named."""
    return note(
        "crossing-unnamed",
        f"Two seams cross at {at_place(place)}, where no point is named.",
        span,
        related=(Label(other, "the other seam"),) if other != span else (),
        help="Name the crossing with `meet` if it is meant.",
    )


def turn_overlaps(span: Span, count: int, step: Number) -> Diagnostic:
    """A part turn that goes more than once round."""
    return error(
        "turn-overlaps",
        f"{count} copies of {number_text(step)}deg go more than once round.",
        span,
        f"{number_text(count * step)}deg in all",
        help=f"At most {int(360 / step)} copies of {number_text(step)}deg fit.",
    )


def row_in_turn(span: Span, word: str, round_it: str) -> Diagnostic:
    """`row` inside `turn` or `mirror`."""
    return error(
        "row-in-turn",
        f"`{word}` cannot stand inside `{round_it}`: it fills the grid from the top.",
        span,
        help="Use `place ... in A1..B2` there, or put it outside.",
    )


def outline_crosses_itself(span: Span) -> Diagnostic:
    """An outline that is not a simple ring."""
    return error(
        "outline-crosses-itself",
        "This outline crosses or touches itself.",
        span,
        help="An outline goes round the block once.",
    )


def outline_outside(span: Span, width: Number, height: Number) -> Diagnostic:
    """An outline path that leaves the box of `finished`."""
    return error(
        "outline-outside",
        f"This outline leaves the {ruler_text(width)} x {ruler_text(height)} of `finished`.",
        span,
        help="Make `finished` larger, or leave it out: the outline's own box then serves.",
    )


def at_place(place: Point) -> str:
    """Where a place is, as a ruler reads it: to the nearest mark where it lies on none."""
    return f"{_mark(place.x)} across, {_mark(place.y)} down"


def _mark(length: Number) -> str:
    return ruler_text(length) if reads_exactly(length) else f"about {ruler_text(nearest_mark(length))}"


def outside_by(place: Point, width: Number, height: Number) -> str:
    """Which side a place lies off, and how far."""
    off = {
        "at the left": -place.x,
        "at the top": -place.y,
        "at the right": place.x - width,
        "at the bottom": place.y - height,
    }
    side = max(off, key=lambda each: float(off[each]))
    return f"{side} by {ruler_text(off[side])}" if off[side] > 0 else f"at {at_place(place)}"
