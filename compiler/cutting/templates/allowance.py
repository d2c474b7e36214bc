"""Finished outlines to cut outlines: every side moved outward by its own allowance, corners mitred.

    outward is to the left of a side, for the cloth lies to its right:

        mitre m                    at an inner corner v the two moved
         .-----------> moved b     sides cross instead, and what lies
        /  qb                      beyond the crossing drops away
    qa /   v---------> side b
      /   /

Arcs stay arcs about the same centre. Inches; places are complex numbers (see stroke).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from typing import Final, NamedTuple

from ...geometry.edge import Edge
from ...geometry.stroke import Stroke, doubled_area, ring_edges, stroke_of, turn_between
from ...measure.tolerance import CRUMB, NEAR, SMOOTH, Number
from .corners import STRAY, CornerJoin, Trim, join, moved_side, through_corner, trimmed
from .crossing import (
    SHOWN,
    carrier_meetings,
    distance,
    joined_up,
    on_carrier,
    outside,
    part_of,
    runs_along,
    share_of,
)
from .untangle import crosses_itself, untangled

BESIDE: Final = tuple(each / 8 for each in range(9))
"""Shares of a side's length at which it is asked what lies beside it."""


class Outset(NamedTuple):
    """The rings of a cut outline: the outer one, then any gaps that the allowances enclose; of a hole, the
    holes left. `overlaps` where the allowances of two sides ran into each other and were cleared up; `buried`
    are the sides that have none of their cut line left, `crowding` those whose own runs there instead, at
    another width, and `sound` says whether what is left has a reason to be there."""

    rings: tuple[tuple[Stroke, ...], ...]
    overlaps: bool
    sound: bool = True
    buried: tuple[int, ...] = ()
    crowding: tuple[int, ...] = ()


def outset(ring: Sequence[Edge], allowances: Sequence[Number]) -> tuple[Edge, ...]:
    """The cut outline of a clockwise ring; of a hole, anticlockwise, what is left of it: perhaps nothing."""
    strokes = [stroke_of(edge) for edge in ring]
    rings = outset_rings(strokes, [float(width) for width in allowances]).rings
    return ring_edges(rings[0]) if rings else ()


def outset_rings(
    ring: Sequence[Stroke], widths: Sequence[float], cuts: Sequence[Sequence[Trim]] = ()
) -> Outset:
    """All rings of the cut outline. `cuts` are the trims of the corner where each side starts."""
    moved = [moved_side(stroke, width) for stroke, width in zip(ring, widths, strict=True)]
    if len(ring) == 1 and abs(ring[0].end - ring[0].start) <= NEAR:
        closed = (ring[0].sweep > 0) or ring[0].radius - widths[0] > NEAR
        return Outset((tuple(moved),), False) if closed else Outset((), True, False, (0,))
    joins = [join(ring, moved, widths, at) for at in range(len(ring))]
    joins = [
        trimmed(join, moved[at - 1], moved[at], ring[at].start, cuts[at]) if cuts and cuts[at] else join
        for at, join in enumerate(joins)
    ]
    turns = [turn_between(ring[at - 1], ring[at]) for at in range(len(ring))]
    kept = [at for at in range(len(ring)) if not _closes(ring[at], widths[at])]
    inner = min(turns) < -SMOOTH or any(stroke.sweep < 0 for stroke in ring)
    plain = _assembled(moved, joins) if len(kept) == len(ring) else None
    if plain is not None and not (inner and crosses_itself(plain)):
        if all(
            (min(joins[at + 1 - len(ring)].leave, 1.0) - max(joins[at].enter, 0.0)) * side.length > SHOWN
            for at, side in enumerate(moved)
        ):
            return Outset((tuple(plain),), False)
        return _judged([plain], ring, widths, moved, dict(enumerate(joins)), False)
    for at, turned in enumerate(turns):
        if turned < -SMOOTH:
            joins[at] = through_corner(moved[at - 1], moved[at], ring[at].start)
    return _crowded(ring, widths, moved, joins, kept)


def _closes(stroke: Stroke, width: float) -> bool:
    """Whether an inner curve is so tight that its allowance closes it."""
    return stroke.sweep < 0 and stroke.radius - width <= NEAR


def _crowded(
    ring: Sequence[Stroke],
    widths: Sequence[float],
    moved: Sequence[Stroke],
    joins: Sequence[CornerJoin],
    kept: Sequence[int],
) -> Outset:
    """The rings where allowances run into each other, without the inner curves that theirs close."""
    if not kept:
        return Outset((), True, False, tuple(range(len(ring))))
    sides = [moved[at] for at in kept]
    own = [
        joins[at]
        if kept[each - 1] == (at - 1) % len(ring)
        else _across(ring[kept[each - 1]], ring[at], moved[kept[each - 1]], moved[at])
        for each, at in enumerate(kept)
    ]
    rings = untangled(_laid_end_to_end(sides, own), doubled_area(ring) < 0)
    tips = {at: each for at, each in zip(kept, own, strict=True) if each is joins[at] and not each.tangled}
    return _judged(rings, ring, widths, moved, tips, True)


def _judged(
    rings: Sequence[Sequence[Stroke]],
    ring: Sequence[Stroke],
    widths: Sequence[float],
    moved: Sequence[Stroke],
    tips: Mapping[int, CornerJoin],
    overlaps: bool,
) -> Outset:
    """The rings, with the sides that have none of their cut line there, and whether all their lines have a
    reason; `tips` are the joins at the corners where sides start."""
    lines = [stroke for outline in rings for stroke in outline]
    buried = tuple(at for at, side in enumerate(moved) if not any(runs_along(line, side) for line in lines))
    shown = {width for at, width in enumerate(widths) if at not in buried}
    sound = bool(rings) and all(
        _has_place(line, ring, widths, moved, shown)
        or (
            not any(on_carrier(line, side) for side in moved)
            and any(
                _lies_on(line, tip.between) and _is_shown(line, ring, at, buried, max(shown, default=0.0))
                for at, tip in tips.items()
            )
        )
        for line in lines
    )
    beside = [line for line in lines if any(_runs_beside(line, at, ring) for at in buried)]
    crowding = tuple(at for at, side in enumerate(moved) if any(on_carrier(line, side) for line in beside))
    return Outset(tuple(tuple(each) for each in rings), overlaps, sound and not crowding, buried, crowding)


def _runs_beside(line: Stroke, at: int, ring: Sequence[Stroke]) -> bool:
    """Whether a cut line runs beside a side, even with it, and nothing of the ring lies nearer: a quilter
    takes their distance for the side's allowance."""
    width = outside(ring[at], line.at(0.5))
    if width <= CRUMB or not runs_along(line, even := moved_side(ring[at], width)):
        return False
    places = [even.at(share) for share in BESIDE]
    return any(
        distance(line, place) <= CRUMB and all(distance(side, place) >= width - CRUMB for side in ring)
        for place in places
    )


def _across(before: Stroke, after: Stroke, one: Stroke, two: Stroke) -> CornerJoin:
    """How one side leads into the next where all between them close: carried on until they meet, else
    straight."""
    best: tuple[float, CornerJoin] | None = None
    furthest = STRAY * (abs(two.start - one.end) + abs(after.start - before.end)) + NEAR
    for place in carrier_meetings(one, two):
        leave, enter = share_of(one, place), share_of(two, place)
        walk = abs(leave - 1) * one.length + abs(enter) * two.length
        if leave >= 1 and enter <= 0 and walk <= furthest and (best is None or walk < best[0]):
            best = walk, CornerJoin(leave, (), enter)
    return best[1] if best is not None else CornerJoin(1.0, (Stroke(one.end, two.start),), 0.0)


def _has_place(
    line: Stroke, ring: Sequence[Stroke], widths: Sequence[float], moved: Sequence[Stroke], shown: Set[float]
) -> bool:
    """Whether a cut line has a reason to be there.

    It runs along a moved side, or carries one on past its end at a width that is `shown` beside some side; or
    it trims a point, a corner of the ring being nearest to its middle; or it ends an allowance square to its
    side.
    """
    if any(
        on_carrier(line, side) and (width in shown or runs_along(line, side))
        for width, side in zip(widths, moved, strict=True)
    ):
        return True
    if line.center is not None:
        return False
    middle = line.at(0.5)
    nearest = min(distance(stroke, middle) for stroke in ring)
    if min(abs(stroke.start - middle) for stroke in ring) <= nearest + CRUMB:
        return True
    return any(_ends_square(line, stroke, side) for stroke, side in zip(ring, moved, strict=True))


def _lies_on(line: Stroke, strokes: Sequence[Stroke]) -> bool:
    """Whether a cut line is some of one of the strokes."""
    return any(
        max(distance(stroke, place) for place in (line.start, line.at(0.5), line.end)) <= CRUMB
        for stroke in strokes
    )


def _is_shown(line: Stroke, ring: Sequence[Stroke], at: int, buried: Sequence[int], most: float) -> bool:
    """Whether a line past the corner where a side starts lies no further out than the widest allowance that
    is shown, of such sides there as have none of their own cut line."""
    ends = (((at - 1) % len(ring), 1.0), (at, 0.0))
    return all(
        _out_of(ring[side], share, place) <= most + CRUMB
        for side, share in ends
        if side in buried
        for place in (line.start, line.end)
    )


def _out_of(stroke: Stroke, share: float, place: complex) -> float:
    """Inches that a place past an end of a side lies out of it: of an arc out of its circle or its tangent
    there, whichever is nearer."""
    tangent = -((place - stroke.at(share)) / stroke.direction(share)).imag
    return min(tangent, outside(stroke, place))


def _ends_square(cut: Stroke, stroke: Stroke, side: Stroke) -> bool:
    """Whether a cut line lies on the way from a side's end to that of its moved side, and reaches to
    there."""
    return any(
        min(abs(cut.start - out), abs(cut.end - out)) <= CRUMB
        and max(distance(Stroke(end, out), place) for place in (cut.start, cut.end)) <= CRUMB
        for end, out in ((stroke.start, side.start), (stroke.end, side.end))
        if abs(out - end) > CRUMB
    )


def _assembled(moved: Sequence[Stroke], joins: Sequence[CornerJoin]) -> list[Stroke] | None:
    """The cut outline where every side keeps its direction and no join is tangled, else None."""
    count = len(moved)
    for at in range(count):
        if joins[at].tangled or joins[at].enter >= joins[(at + 1) % count].leave:
            return None
    return joined_up(_laid_end_to_end(moved, joins))


def _laid_end_to_end(moved: Sequence[Stroke], joins: Sequence[CornerJoin]) -> list[Stroke]:
    laid: list[Stroke] = []
    for at, side in enumerate(moved):
        laid.extend(joins[at].between)
        laid.append(part_of(side, joins[at].enter, joins[(at + 1) % len(moved)].leave))
    return [stroke for stroke in laid if stroke.length > NEAR]
