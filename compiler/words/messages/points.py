"""Complaints about points and lines."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final, Literal

from ...diagnostics.diagnostic import Diagnostic, Fix, Label, error, note
from ...measure.tolerance import FAR
from ..phrases import did_you_mean, nearest, one_of
from ..places import at_place
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from ...diagnostics.source import Span
    from ...geometry.edge import Point
    from ...language import tree

GRID_POINT_SMALL: Final = re.compile(r"[a-z]{1,2}[1-9][0-9]{0,2}")
"""A grid point in small letters."""

Pair = Literal["line", "direction", "circle"]
"""What two different points make."""

MEETINGS_SHOWN: Final = 2
"""Places of meeting that a message gives; a wave may cross an outline many times."""

RING_SHOWN = 6
"""Points of a ring that are named one by one: more do not fit a line."""


@message
def point_unknown(say: Say, at: tree.NamedPoint, known: Iterable[str]) -> Diagnostic:
    """A name that no point has."""
    names = list(known)
    if at.name == "centre":
        return error(
            "point-unknown",
            "There is no point called `centre` here.",
            at.span,
            help="Did you mean `center`?",
            fix=Fix("Write `center`", at.span, "center"),
        )
    if GRID_POINT_SMALL.fullmatch(at.name):
        right = at.name.upper()
        return error(
            "point-unknown",
            f"There is no point called `{at.name}` here.",
            at.span,
            help=f"Grid points have capital letters: did you mean `{right}`?",
            fix=Fix(f"Write `{right}`", at.span, right),
        )
    close = nearest(at.name, names)
    fix = Fix(f"Write `{close[0]}`", at.span, close[0]) if close else None
    help = did_you_mean(at.name, names) or f"Define it, as in `point {at.name} = 1in from A1 to B1`."
    return error("point-unknown", f"There is no point called `{at.name}` here.", at.span, help=help, fix=fix)


@message
def point_twice(say: Say, name: tree.Name, first: Span) -> Diagnostic:
    """Two points of one name in one place."""
    return error(
        "point-twice",
        f"There are two points called `{name.text}` here.",
        name.span,
        "named again",
        related=(Label(first, "first named here"),),
        help="Give one of them another name.",
    )


@message
def point_hides(say: Say, name: tree.Name, first: Span | None) -> Diagnostic:
    """A name that would hide a predefined or an outer point."""
    if first is None:
        return error(
            "point-hides",
            f"`{name.text}` is already a point of every block.",
            name.span,
            help="Give your point another name.",
        )
    return error(
        "point-hides",
        f"`{name.text}` would hide the point of that name outside.",
        name.span,
        related=(Label(first, "named here"),),
        help="Give the inner point another name.",
    )


@message
def point_cycle(say: Say, ring: Sequence[tree.Name], count: int) -> Diagnostic:
    """Points that define each other: so many, the first of them (RING_SHOWN at most) shown."""
    names = [f"`{each.text}`" for each in ring]
    chain = ", which needs ".join([*names[1:], names[0]])
    message = f"{names[0]} needs itself." if count == 1 else f"{names[0]} needs {chain}."
    if count > RING_SHOWN:
        message = f"{names[0]} needs {names[1]}, and so on through {count} points back to {names[0]}."
    return error(
        "point-cycle",
        message,
        ring[0].span,
        related=tuple(Label(each.span, "and this") for each in ring[1:]),
        help="Place one of them from the grid.",
    )


@message
def point_unused(say: Say, name: tree.Name) -> Diagnostic:
    """A point that nothing mentions."""
    return note(
        "point-unused",
        f"Nothing uses the point `{name.text}`.",
        name.span,
        help="Take it away if it is left over.",
    )


@message
def grid_point_off(say: Say, at: tree.GridPoint, across: int, down: int, last: str) -> Diagnostic:
    """A grid point beyond the grid."""
    return error(
        "grid-point-off",
        f"`{at.column}{at.row}` is off the grid, which ends at {last}.",
        at.span,
        help=f"A {across} x {down} grid has the points A1 to {last}: one more each way than its cells.",
    )


@message
def same_point_twice(say: Say, span: Span, what: Pair) -> Diagnostic:
    """A line or direction that wants two different points and has one."""
    return error(
        "line-one-point",
        f"A {what} needs two different points; these are one place.",
        span,
        help="Name another point for one of the two.",
    )


@message
def point_too_far(say: Say, span: Span) -> Diagnostic:
    """A point as far off as no block reaches."""
    return error(
        "point-too-far",
        f"This point lies more than {say.whole(FAR)} off the block.",
        span,
        help="Lines that are nearly parallel meet that far away, and shares of shares soon grow. "
        "Points may lie outside the block, but nearer.",
    )


@message
def lines_never_meet(say: Say, span: Span) -> Diagnostic:
    """Parallel lines."""
    return error(
        "lines-never-meet",
        "These two lines are parallel: they never meet.",
        span,
        help="Turn one of them, or name the place another way.",
    )


@message
def figures_never_meet(say: Say, span: Span, beyond: Sequence[Point]) -> Diagnostic:
    """A line, arc, circle or outline that does not reach another; `beyond`: where whole circles would."""
    if beyond:
        where = f"at {at_place(say, beyond[0])}"
        return error(
            "figures-never-meet",
            f"These two do not meet: they would {where}, but an arc ends before it.",
            span,
            help="An arc is only as long as it is drawn. Draw it further, or write "
            "`circle around P through Q`: a circle is whole.",
        )
    return error(
        "figures-never-meet",
        "These two do not meet anywhere.",
        span,
        help="Make the circle larger, or bring the two nearer to each other.",
    )


@message
def figures_along(say: Say, span: Span) -> Diagnostic:
    """Two arcs of one circle, or a line along the outline."""
    return error(
        "figures-never-meet",
        "These two run along each other: no one place is where they meet.",
        span,
        help="Name the place by one of its ends, or as a share of the way: `1/2 from A1 to B1`.",
    )


@message
def meet_twice(say: Say, span: Span, places: Sequence[Point], apart: Sequence[float]) -> Diagnostic:
    """Curves that meet in several places; `apart`: how far the first is from each of the others."""
    listed = one_of([f"at {at_place(say, each)}" for each in places[:MEETINGS_SHOWN]], "and")
    far = f", {say.about(apart[0])} apart" if len(places) == 2 else ""
    more = ", and elsewhere" if len(places) > MEETINGS_SHOWN else ""
    number = {2: "twice", 3: "three times"}.get(len(places), f"{len(places)} times")
    return error(
        "meet-twice",
        f"These two meet {number}{far}: {listed}{more}.",
        span,
        help="Say which is meant by a point that lies near it: `meet ..., ... nearest top`.",
    )


@message
def nearest_to_both(say: Say, span: Span, places: tuple[Point, Point]) -> Diagnostic:
    """A point that is as near to one meeting as to another."""
    one, other = (at_place(say, each) for each in places)
    return error(
        "meet-twice",
        f"This point lies as near to the meeting at {one} as to the one at {other}.",
        span,
        help="Name a point nearer to the one that is meant.",
    )


@message
def line_misses_outline(say: Say, span: Span) -> Diagnostic:
    """A line that meets the outline nowhere beyond its first point."""
    return error(
        "line-misses-outline",
        "This line does not meet the block's edge beyond its first point.",
        span,
        help="It runs from the first point onward: swap the two points, or turn the angle by 180deg.",
    )


@message
def next_outside_turn(say: Say, span: Span, word: str) -> Diagnostic:
    """`next` where nothing turns."""
    return error(
        "next-outside-turn",
        f"`{word}` needs a turn or repeat round it: it is the same point in the {word} copy.",
        span,
        help="Use it inside `turn 4 about center { ... }`.",
    )


@message
def outline_unknown_yet(say: Say, span: Span) -> Diagnostic:
    """A point that needs the outline, inside the outline."""
    return error(
        "outline-in-itself",
        "`meet ..., outline` has no place until the outline is known.",
        span,
        help="Write `finished` first, or go from `start`: `outline start -- (3in from start at 90deg) ...`.",
    )


@message
def corner_unknown(say: Say, at: tree.NamedPoint, corners: int) -> Diagnostic:
    """`corner7` of a hexagon."""
    if corners == 0:
        return error(
            "point-unknown",
            f"There is no point called `{at.name}` here.",
            at.span,
            help="Only a regular outline has numbered corners: `outline regular 6 side 3in`.",
        )
    return error(
        "point-unknown",
        f"There is no `{at.name}`: this outline has {corners} corners.",
        at.span,
        help=f"They are corner1, which points up, to corner{corners}, clockwise.",
    )
