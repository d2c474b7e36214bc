"""Complaints about pieces: names in no face, in two faces, in each other's faces."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from ...diagnostics.diagnostic import Diagnostic, Label, error, note
from ..numbers import number_text
from ..phrases import count_of, did_you_mean, one_of, quoted
from ..places import at_place, outside_by
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from ...diagnostics.source import Span
    from ...geometry.edge import Point
    from ...language import tree
    from ...measure.tolerance import Number


class BesideArc(NamedTuple):
    """How a place lies to an arc: inches from it, and whether within its circle; and whether another does."""

    away: float
    inside: bool
    other_inside: bool


@message
def place_outside(
    say: Say, name: tree.Name, span: Span, place: Point, size: tuple[Number, Number]
) -> Diagnostic:
    """A name outside the block."""
    return error(
        "piece-outside",
        f"`{name.text}` is named at a place that leaves the block {outside_by(say, place, *size)}.",
        span,
        help="Name the piece at a point inside it or on its edge.",
    )


@message
def place_on_edge(
    say: Say, name: tree.Name, span: Span, inside: Sequence[tuple[str | None, Point]]
) -> Diagnostic:
    """A name on an edge that several faces touch, each with its name and a place inside it in grid steps."""
    offers = [f"{what or 'one'} at ({number_text(p.x)}, {number_text(p.y)})" for what, p in inside[:4]]
    return error(
        "piece-ambiguous",
        f"`{name.text}` is named where {count_of(len(inside), 'piece')} touch.",
        span,
        help=f"Name it inside one: in grid steps, {one_of(offers)}.",
    )


@message
def piece_clash(
    say: Say,
    name: tree.Name,
    place: Span,
    other: tree.Name,
    first: Span,
    at: tuple[Point, Point],
    arc: BesideArc | None,
) -> Diagnostic:
    """Two statements in one face: where each names it, and how they lie to an arc at its edge."""
    here, there = (at_place(say, each) for each in at)
    help = "Draw the seam that is missing, or take one name away."
    if arc is not None:
        side = "inside" if arc.inside else "outside"
        other_side = "the same side" if arc.inside == arc.other_inside else "the other"
        help = (
            f"`{name.text}` lies {say.about(arc.away)} {side} the nearest arc, `{other.text}` on "
            f"{other_side}. Name a place on the arc's other side, or draw the seam that is missing."
        )
    return error(
        "piece-clash",
        f"`{name.text}` and `{other.text}` are one piece: no seam parts them.",
        place,
        here,
        related=(Label(first, f"`{other.text}` is named here, at {there}"),),
        help=help,
    )


@message
def piece_clash_same(say: Say, name: tree.Name, place: Span, first: Span) -> Diagnostic:
    """Two statements of equal names in one face."""
    return error(
        "piece-clash",
        f"Two statements name this one piece `{name.text}`.",
        place,
        related=(Label(first, "named here too"),),
        help="Take one of them away.",
    )


@message
def fabrics_clash(say: Say, name: tree.Name, place: Span, fabrics: Sequence[str]) -> Diagnostic:
    """Copies of one statement that fall in one face and want different fabrics."""
    return error(
        "piece-fabrics-clash",
        f"Copies of `{name.text}` fall in one piece, and it cannot be both {one_of(quoted(fabrics), 'and')}.",
        place,
        help="Draw the seam that parts the copies, or give one role.",
    )


@message
def piece_in_unit(say: Say, name: tree.Name, place: Span, title: str, unit: Span) -> Diagnostic:
    """A name in a piece that a used unit named already."""
    return error(
        "piece-in-unit",
        f'`{name.text}` is named inside the unit "{title[:60]}", which names its own pieces.',
        place,
        related=(Label(unit, "placed here"),),
        help="Change its fabric by `use ... with dark = pale`.",
    )


@message
def roles_without_turn(say: Say, statement: tree.PieceDef) -> Diagnostic:
    """Several roles and nothing to take turns round."""
    return error(
        "roles-without-turn",
        "Several roles take turns round the copies of a turn, and there is none here.",
        statement.roles[1].span,
        help="Give one role, or name the pieces in two statements.",
    )


@message
def faces_unnamed(say: Say, span: Span, places: Sequence[Point], count: int) -> Diagnostic:
    """Some faces without a name when most have one."""
    where = one_of([at_place(say, p) for p in places[:3]], "and")
    more = f" and {count - 3} more" if count > 3 else ""
    return note(
        "piece-unnamed",
        f"{count_of(count, 'piece')} {'has' if count == 1 else 'have'} no name, at {where}{more}.",
        span,
        help="Unnamed pieces are cut from `background`.",
    )


@message
def sliver(say: Say, span: Span, place: Point, width: float) -> Diagnostic:
    """A piece too narrow to cut or sew."""
    return error(
        "piece-sliver",
        f"A piece at {at_place(say, place)} is only {say.fine(width)} wide.",
        span,
        help="Two seams were probably meant to be one: build both from the same points.",
    )


@message
def piece_with_hole(say: Say, span: Span, place: Point) -> Diagnostic:
    """A ring."""
    return note(
        "piece-hole",
        f"The piece at {at_place(say, place)} has a hole, so it cannot be pieced with straight seams.",
        span,
        help="Part it with a seam, or plan to set the middle in or sew it on top.",
    )


@message
def piece_unknown(say: Say, name: tree.Name, known: Iterable[str]) -> Diagnostic:
    """`grain ... on` a piece that is not there."""
    names = list(known)
    return error(
        "piece-unknown",
        f"There is no piece called `{name.text}` here.",
        name.span,
        help=did_you_mean(name.text, names),
    )


@message
def allowance_nowhere(say: Say, span: Span) -> Diagnostic:
    """`allowance ... on` a path that no seam follows."""
    return error(
        "allowance-nowhere",
        "No edge of a piece lies on this path.",
        span,
        help="The path must run along a seam or along the block's edge.",
    )


@message
def allowance_wide(say: Say, span: Span, width: Number, most: Number, usual: Number) -> Diagnostic:
    """An allowance wider than anyone sews."""
    return error(
        "allowance-too-wide",
        f"An allowance of {say.length(width)} is more than {say.length(most)}.",
        span,
        help=f"Seams are sewn at {say.length(usual)} as a rule. Was another unit meant?",
    )
