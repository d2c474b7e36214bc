"""Simulated cloth: cut by a printed outline, measured, and sewn edge to edge. Inches; places are complex.

Nothing here knows how the order of sewing was found. Whatever does not fit raises Misfit.
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Iterator, Sequence
from math import pi
from typing import Final, NamedTuple

from ...geometry.edge import Edge
from ...geometry.pose import Motion
from ...geometry.stroke import Stroke, doubled_area, place_of, stretches, stroke_of, turn_between
from ...measure.record import record
from ...measure.tolerance import EXACT
from .misfit import Misfit

SAMPLES: Final = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Shares of a run's length at which it must lie on the cloth it is said to be on."""

ENDS: Final = (0.0, 1.0)
"""Shares that do for a straight run on straight cloth: between them it strays no further."""


Hem = tuple[Stroke, float]
"""A stretch of a cloth's sewing line with the cloth on its right, and the width of cloth left beyond it."""


@record
class SewnCloth:
    """A piece of cloth, or several sewn together: the rings of its sewing line, outside first."""

    rings: tuple[tuple[Hem, ...], ...]


def distance_to(stroke: Stroke, place: complex) -> float:
    """Inches from a place to the nearest of a stroke."""
    ends = min(abs(place - stroke.start), abs(place - stroke.end))
    if stroke.center is not None:
        on_circle = (
            stroke.center + (place - stroke.center) / max(abs(place - stroke.center), EXACT) * stroke.radius
        )
        return abs(place - on_circle) if along_of(stroke, on_circle) is not None else ends
    relative = (place - stroke.start) / stroke.direction(0)
    return abs(relative.imag) if 0 <= relative.real <= stroke.length else ends


def back_along(seam: Sequence[Stroke]) -> list[Stroke]:
    """A seam the other way."""
    return [stroke.reversed() for stroke in reversed(seam)]


# ---- sewing --------------------------------------------------------------------------------------


def laid(cloth: SewnCloth, motion: Motion) -> SewnCloth:
    """The cloth laid down elsewhere."""
    return SewnCloth(
        tuple(tuple((motion.stroke(stroke), width) for stroke, width in ring) for ring in cloth.rings)
    )


def motion_onto(own: Sequence[Stroke], wanted: Sequence[Stroke]) -> tuple[Motion, float]:
    """The motion that lays one path on another, and how far the two stray from each other when it is done."""
    if len(own) != len(wanted):
        raise Misfit("edge-counts", len(own), len(wanted))
    for one, two in zip(own, wanted, strict=True):
        if abs(one.length - two.length) > EXACT:
            raise Misfit("side-lengths", lengths=(one.length, two.length))
        if (one.center is None) != (two.center is None):
            raise Misfit("straight-to-curved")
    spots = [
        (one.at(share), two.at(share))
        for one, two in zip(own, wanted, strict=True)
        for share in _sampled(one, two)
    ]
    first = spots[0]
    last = max(spots, key=lambda spot: abs(spot[0] - first[0]))
    if abs(last[1] - first[1]) <= EXACT or abs(last[0] - first[0]) <= EXACT:
        raise Misfit("no-length")
    turn = (last[1] - first[1]) / (last[0] - first[0])
    turn /= abs(turn)
    motion = Motion(turn, first[1] - first[0] * turn)
    stray = max(abs(motion(one) - two) for one, two in spots)
    if stray > EXACT:
        raise Misfit("sides-apart", lengths=(stray,))
    return motion, stray


def _sampled(one: Stroke, two: Stroke) -> tuple[float, ...]:
    """The shares at which two runs are held against each other."""
    return ENDS if one.center is None and two.center is None else SAMPLES


def sewn(one: SewnCloth, two: SewnCloth, seam: Sequence[Stroke]) -> SewnCloth:
    """Both cloths, laid down, sewn along a seam that has the first on its right; two seams where the halves
    of a ring are joined."""
    if len(stretches(seam, EXACT)) > 1:
        return _closed_ring(one, two, seam)
    back = back_along(seam)
    first, first_others = _opened(one, seam)
    second, second_others = _opened(two, back)
    _match_allowances(first.beside, second.beside[::-1])
    ring = joined_hems([*first.rest, *second.rest])
    rings = [*([tuple(ring)] if ring else []), *first_others, *second_others]
    if len(rings) > 1:
        outer = max(rings, key=lambda each: doubled_area([stroke for stroke, _ in each]))
        rings.remove(outer)
        rings.insert(0, outer)
    return SewnCloth(tuple(rings))


def _closed_ring(one: SewnCloth, two: SewnCloth, seam: Sequence[Stroke]) -> SewnCloth:
    """Two cloths sewn along several seams at once: what is left of both outlines is followed from end to
    end."""
    mine, left = _opened_along(one.rings[0], stretches(seam, EXACT))
    theirs, rest = _opened_along(two.rings[0], stretches(back_along(seam), EXACT))
    left += rest
    _match_allowances(mine, theirs[::-1])
    made = []
    while left:
        ring = left.pop(0)
        while abs(ring[-1][0].end - ring[0][0].start) > EXACT:
            end = ring[-1][0].end
            after = next((n for n, each in enumerate(left) if abs(each[0][0].start - end) <= EXACT), None)
            if after is None:
                raise Misfit("its-outline-open")
            ring = ring + left.pop(after)
        made.append(tuple(joined_hems(ring)))
    made.sort(key=lambda ring: -doubled_area([stroke for stroke, _ in ring]))
    return SewnCloth((*made, *one.rings[1:], *two.rings[1:]))


def _opened_along(
    ring: Sequence[Hem], seams: Sequence[Sequence[Stroke]]
) -> tuple[list[Hem], list[list[Hem]]]:
    """The stretches of a ring that several seams run over; and what is left of it, seam to seam."""
    for run in seams:
        for place in (run[0].start, run[-1].end):
            ring = [part for hem in ring for part in _parted(hem, place)]
    used: list[int] = []
    for run in seams:
        firsts = [at for at, (each, _) in enumerate(ring) if abs(each.start - run[0].start) <= EXACT]
        along = next((found for first in firsts if (found := _along(ring, first, run))), None)
        if along is None:
            raise Misfit("edge-inside")
        used += along
    return [ring[at] for at in used], _chains(ring, set(used))


def _chains(ring: Sequence[Hem], used: set[int]) -> list[list[Hem]]:
    """What is left of a ring, stretch by stretch, where some of it is sewn."""
    start = next(at for at in range(len(ring)) if at in used)
    chains: list[list[Hem]] = [[]]
    for at in (*range(start, len(ring)), *range(start)):
        if at in used:
            chains.append([])
        else:
            chains[-1].append(ring[at])
    return [chain for chain in chains if chain]


def _match_allowances(mine: Sequence[Hem], theirs: Sequence[Hem]) -> None:
    """Raises Misfit unless both sides of a seam have one allowance wherever both are known. Along its way a
    seam may change from one to another."""
    at = other = 0
    ends = [mine[0][0].length, theirs[0][0].length] if mine and theirs else [0.0, 0.0]
    while at < len(mine) and other < len(theirs):
        widths = mine[at][1], theirs[other][1]
        if min(widths) >= 0 and abs(widths[0] - widths[1]) > EXACT:
            raise Misfit("allowances-differ", lengths=widths)
        step = ends[0] - ends[1]
        if step <= EXACT:
            at += 1
            ends[0] += mine[at][0].length if at < len(mine) else 0.0
        if step >= -EXACT:
            other += 1
            ends[1] += theirs[other][0].length if other < len(theirs) else 0.0


class Opened(NamedTuple):
    """A ring that a seam takes stretches from: those, in order along the seam; what is left of it from the
    seam's end round to its start; and what is left as rings of their own, where the ring touches itself."""

    beside: list[Hem]
    rest: list[Hem]
    loops: list[tuple[Hem, ...]]


def _opened(cloth: SewnCloth, seam: Sequence[Stroke]) -> tuple[Opened, list[tuple[Hem, ...]]]:
    """The ring that a seam lies on, opened, and all other rings."""
    for at, ring in enumerate(cloth.rings):
        found = _taken(ring, seam)
        if found is not None:
            return found, [*cloth.rings[:at], *found.loops, *cloth.rings[at + 1 :]]
    raise Misfit("edge-inside")


def _taken(ring: Sequence[Hem], seam: Sequence[Stroke]) -> Opened | None:
    """The ring opened along a seam; None unless the whole seam lies on it."""
    for place in (seam[0].start, seam[-1].end):
        ring = [part for hem in ring for part in _parted(hem, place)]
    starts = [at for at, (stroke, _) in enumerate(ring) if abs(stroke.start - seam[0].start) <= EXACT]
    for first in starts:
        used = _along(ring, first, seam)
        if used:
            return _left(ring, used)
    return None


def _parted(hem: Hem, place: complex) -> list[Hem]:
    """A stretch in two, where it passes a place."""
    along = along_of(hem[0], place)
    if along is None or not EXACT < along < hem[0].length - EXACT:
        return [hem]
    return [_head(hem, along), _tail(hem, along)]


def _along(ring: Sequence[Hem], first: int, seam: Sequence[Stroke]) -> list[int] | None:
    """The stretches of a ring that a seam runs over, the first of them given; None where it leaves the
    ring."""
    used: list[int] = []
    for run in seam:
        done, whole = 0.0, run.length
        while whole - done > EXACT:
            ahead = (used[-1] + 1) % len(ring) if used else first
            at = ahead
            if not _covers(ring[at][0], run, done):
                if not used:
                    return None
                at = next((each for each, (stroke, _) in enumerate(ring) if _covers(stroke, run, done)), -1)
            if at < 0 or at in used:
                return None
            used.append(at)
            done += ring[at][0].length
    return used


def _covers(stroke: Stroke, run: Stroke, done: float) -> bool:
    """Whether a stretch lies on a run from so many inches along it, to no further than its end."""
    length, whole = stroke.length, run.length
    return done + length <= whole + EXACT and all(
        abs(run.at(min(1.0, (done + length * share) / whole)) - stroke.at(share)) <= EXACT
        for share in _sampled(run, stroke)
    )


def _left(ring: Sequence[Hem], used: Sequence[int]) -> Opened:
    """What is left of a ring: followed round, and where a stretch is gone, from the same place on."""
    count, gone = len(ring), set(used)
    left = [at for at in range(count) if at not in gone]
    start = (used[-1] + 1) % count
    heads = [at for at in left if (at - 1) % count in gone and at != start]
    rest: list[Hem] = []
    loops: list[tuple[Hem, ...]] = []
    queue = ([start] if start in left else []) + heads
    taken: set[int] = set()
    for head in queue:
        if head in taken:
            continue
        chain, at = [], head
        while at >= 0 and at not in taken:
            taken.add(at)
            chain.append(ring[at])
            after = (at + 1) % count
            if after in gone:
                end = ring[at][0].end
                after = next(
                    (each for each in heads if each not in taken and abs(ring[each][0].start - end) <= EXACT),
                    -1,
                )
            at = after
        if head == start:
            rest = chain
        else:
            loops.append(tuple(chain))
    return Opened([ring[at] for at in used], rest, loops)


def spots_on(ring: Sequence[Hem], place: complex) -> Iterator[tuple[int, float]]:
    """Where on a ring a place lies: the stretch, and the inches along it."""
    for index, (stroke, _) in enumerate(ring):
        along = along_of(stroke, place)
        if along is not None and along < stroke.length - EXACT:
            yield index, along


def along_of(stroke: Stroke, place: complex) -> float | None:
    """How far along a stroke a place lies, None where it does not."""
    if stroke.center is None:
        relative = (place - stroke.start) / stroke.direction(0)
        inside = -EXACT <= relative.real <= stroke.length + EXACT
        return max(0.0, relative.real) if inside and abs(relative.imag) <= EXACT else None
    if abs(abs(place - stroke.center) - stroke.radius) > EXACT:
        return None
    turned = phase((place - stroke.center) / (stroke.start - stroke.center))
    if stroke.sweep < 0:
        turned = -turned
    if turned < -EXACT / stroke.radius:
        turned += 2 * pi
    along = max(0.0, turned * stroke.radius)
    return along if along <= stroke.length + EXACT else None


def spend(
    ring: Sequence[Hem], at: int, offset: float, run: Stroke
) -> tuple[int, float, list[float], float] | None:
    """Where on a ring a run ends that starts at a stretch and some inches along it; the allowances beside
    it, and how far it strays. None where it leaves the ring."""
    done, widths, stray, whole = 0.0, [], 0.0, run.length
    while whole - done > EXACT:
        if at == len(ring):
            return None
        stroke, width = ring[at]
        length = stroke.length
        taken = min(length - offset, whole - done)
        for share in _sampled(run, stroke):
            on_run = run.at(min(1.0, (done + taken * share) / whole))
            stray = max(stray, abs(on_run - stroke.at(min(1.0, (offset + taken * share) / length))))
        if stray > EXACT:
            return None
        widths.append(width)
        done += taken
        offset += taken
        if length - offset <= EXACT:
            at, offset = at + 1, 0.0
    return at, offset, widths, stray


def _tail(hem: Hem, along: float) -> Hem:
    stroke, width = hem
    share = along / stroke.length
    return Stroke(
        stroke.at(share) if share else stroke.start, stroke.end, stroke.center, stroke.sweep * (1 - share)
    ), width


def _head(hem: Hem, along: float) -> Hem:
    stroke, width = hem
    share = along / stroke.length
    return Stroke(stroke.start, stroke.at(share), stroke.center, stroke.sweep * share), width


def joined_hems(ring: list[Hem]) -> list[Hem]:
    """A ring's stretches that run straight on under one allowance made one; remnants of no length left
    out."""
    found: list[Hem] = []
    for hem in ring:
        if hem[0].length > EXACT:
            if found and _carries_on(found[-1], hem):
                found[-1] = Stroke(found[-1][0].start, hem[0].end), hem[1]
            else:
                found.append(hem)
    if len(found) > 2 and _carries_on(found[-1], found[0]):
        last = found.pop()
        found[0] = Stroke(last[0].start, found[0][0].end), last[1]
    return found


def _carries_on(one: Hem, two: Hem) -> bool:
    straight = one[0].center is None and two[0].center is None
    return (
        straight
        and abs(one[1] - two[1]) <= EXACT
        and abs(turn_between(one[0], two[0])) * min(one[0].length, two[0].length) <= EXACT / 10
    )


def strokes_of(edges: Sequence[Edge]) -> list[Stroke]:
    """Printed edges as strokes; the numbers of an arc must agree with each other."""
    for edge in edges:
        if edge.arc is not None:
            center = place_of(edge.arc.center)
            for end in (edge.start, edge.end):
                if abs(abs(place_of(end) - center) - edge.arc.radius) > EXACT:
                    raise Misfit("arc-misses-its-end", lengths=(float(edge.arc.radius),))
    return [stroke_of(edge) for edge in edges]
