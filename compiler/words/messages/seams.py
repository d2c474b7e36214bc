"""Complaints about seams, arcs, outlines, turns and mirrors."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from ...diagnostics.diagnostic import Diagnostic, Label, error, note
from ...measure.tolerance import FAR, Number
from ..numbers import number_text
from ..places import at_place, outside_by
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from ...diagnostics.source import Span
    from ...geometry.edge import Point


@message
def seam_no_length(say: Say, span: Span) -> Diagnostic:
    """A hop from a place to itself."""
    return error("seam-no-length", "This seam ends where it starts.", span, help="Name two different places.")


@message
def arc_uneven(say: Say, span: Span, first: float, second: float) -> Diagnostic:
    """An arc whose ends are not equally far from its centre."""
    return error(
        "arc-uneven",
        f"The arc starts {say.length(first)} from its centre and ends {say.length(second)} from it.",
        span,
        f"{say.length(abs(first - second))} apart",
        help="Both ends must be equally far from the point after `around`; or use `through`.",
    )


@message
def arc_half_circle(say: Say, span: Span) -> Diagnostic:
    """Half a circle by `around`, which could go either way."""
    return error(
        "arc-half-circle",
        "This is exactly half a circle, which could bulge either way.",
        span,
        help="Say which by a point on it: `~~ Q through R`.",
    )


@message
def arc_straight(say: Say, span: Span) -> Diagnostic:
    """`through` a point on the straight line."""
    return error(
        "arc-straight",
        "These three points lie on one straight line, so there is no arc through them.",
        span,
        help="Write `--` for a straight seam.",
    )


@message
def arc_too_flat(say: Say, span: Span) -> Diagnostic:
    """`through` a point that lies off the straight line by next to nothing."""
    return error(
        "arc-too-flat",
        f"This arc is so flat that its centre lies more than {say.whole(FAR)} away.",
        span,
        help="Write `--` for a straight seam, or move the point after `through` further off the line.",
    )


@message
def outline_hop_first(say: Say, span: Span) -> Diagnostic:
    """`-- outline` with no direction."""
    return error(
        "outline-no-direction",
        "`-- outline` carries a seam straight on, and here it has no direction yet.",
        span,
        help="Put it after another hop, `seam center -- gate -- outline`, or say which way: "
        "`seam center at 22.5deg -- outline`.",
    )


@message
def through_misses(say: Say, span: Span) -> Diagnostic:
    """A line that does not cross the block."""
    return error(
        "seam-outside",
        "This line does not cross the block.",
        span,
        help="Its points may lie outside, but the line itself must run through the block.",
    )


@message
def smooth_needs_more(say: Say, span: Span, closed: bool) -> Diagnostic:
    """A smooth seam through two places only."""
    return error(
        "smooth-needs-more",
        "A smooth seam needs three places or more to know its curve.",
        span,
        help="Name another on its way. Through two places, draw an arc: `seam P ~~ Q through R`."
        if not closed
        else "Name another on its way round, or draw a circle: `seam circle around C through P`.",
    )


@message
def seam_outside(say: Say, span: Span, place: Point, size: tuple[Number, Number]) -> Diagnostic:
    """A seam that leaves the outline."""
    return error(
        "seam-outside",
        f"This seam leaves the block {outside_by(say, place, *size)}.",
        span,
        help="Points may lie outside, seams may not. `-- outline` ends a seam at the edge.",
    )


@message
def arc_bulges_out(say: Say, span: Span, place: Point, size: tuple[Number, Number]) -> Diagnostic:
    """An arc whose ends lie inside, and whose bulge does not."""
    return error(
        "seam-outside",
        f"This arc bulges out of the block {outside_by(say, place, *size)}; both its ends lie inside.",
        span,
        help="Let it curve the other way, or less: put the point after `around` on its other side, or the "
        "one after `through` inside the block.",
    )


@message
def copies_outside(
    say: Say,
    what: Literal["seam", "unit"],
    span: Span,
    turn: Span,
    place: Point,
    size: tuple[Number, Number],
    copy: int,
    repeated: bool,
) -> Diagnostic:
    """A copy that leaves the outline, furthest at a place."""
    name = "this seam" if what == "seam" else "what is placed here"
    return error(
        "copy-outside",
        f"Copy {copy + 1} of {name} leaves the block {outside_by(say, place, *size)}.",
        span,
        related=(Label(turn, "repeated here" if repeated else "turned here"),),
        help="Repeat it along a shorter line: `repeat 6 along P--Q` moves each copy a sixth of the way."
        if repeated
        else "Turn only part of the way round, as in `turn 6 of 15deg about P { ... }`.",
    )


@message
def seam_hangs(say: Say, span: Span, place: Point, away: float | None) -> Diagnostic:
    """A seam end that stops inside a piece."""
    if away is None:
        return error(
            "seam-hangs",
            f"This seam ends inside a piece, at {at_place(say, place)}.",
            span,
            help="Carry it on to a seam or the block's edge, or take it away.",
        )
    return error(
        "seam-hangs",
        f"This seam ends inside a piece, {say.about(away)} from the nearest seam.",
        span,
        f"it stops at {at_place(say, place)}",
        help="Carry it on to a seam or the block's edge, or take it away.",
    )


@message
def nearly_touches(say: Say, span: Span, place: Point, away: float) -> Diagnostic:
    """An end that misses a seam by less than anyone means."""
    return error(
        "seam-nearly-touches",
        f"This end nearly touches a seam: it is {say.length(round(away, 4))} off it, "
        f"at {at_place(say, place)}.",
        span,
        help="Build its point on the seam itself, with `meet` or `foot of`.",
    )


@message
def seam_divides_nothing(say: Say, span: Span) -> Diagnostic:
    """A seam with the same piece on both sides."""
    return error(
        "seam-divides-nothing",
        "This seam has the same piece on both sides.",
        span,
        help="Carry it on until it closes off a piece, or take it away.",
    )


@message
def crossing_unnamed(say: Say, span: Span, other: Span, place: Point) -> Diagnostic:
    """Two seams that cross where no point is named."""
    return note(
        "crossing-unnamed",
        f"Two seams cross at {at_place(say, place)}, where no point is named.",
        span,
        related=(Label(other, "the other seam"),) if other != span else (),
        help="Name the crossing with `meet` if it is meant.",
    )


@message
def turn_overlaps(say: Say, span: Span, count: int, step: Number) -> Diagnostic:
    """A part turn that goes more than once round."""
    return error(
        "turn-overlaps",
        f"{count} copies of {number_text(step)}deg go more than once round.",
        span,
        f"{number_text(count * step)}deg in all",
        help=f"At most {int(360 / step)} copies of {number_text(step)}deg fit.",
    )


@message
def row_in_turn(say: Say, span: Span, word: str, round_it: str) -> Diagnostic:
    """`row` inside `turn` or `mirror`."""
    return error(
        "row-in-turn",
        f"`{word}` cannot stand inside `{round_it}`: it fills the grid from the top.",
        span,
        help="Use `place ... in A1..B2` there, or put it outside.",
    )


@message
def outline_crosses_itself(say: Say, span: Span) -> Diagnostic:
    """An outline that is not a simple ring."""
    return error(
        "outline-crosses-itself",
        "This outline crosses or touches itself.",
        span,
        help="An outline goes round the block once.",
    )


@message
def outline_outside(say: Say, span: Span, width: Number, height: Number) -> Diagnostic:
    """An outline path that leaves the box of `finished`."""
    return error(
        "outline-outside",
        f"This outline leaves the {say.size(width, height)} of `finished`.",
        span,
        help="Make `finished` larger, or leave it out: the outline's own box then serves.",
    )
