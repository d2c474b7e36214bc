"""Simulated cloth: cut by a printed outline, measured, and sewn edge to edge. Inches; places are complex.

Nothing here knows how the order of sewing was found. Whatever does not fit raises Misfit with the reason.
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import pi
from typing import Final

from ...drafting.model import Edge
from ...drafting.stroke import Stroke, place_of, stroke_of, turn_between
from ...measure.fractions import ruler_text

EXACT: Final = 0.001
"""Inches. What is sewn may stray so far from what is printed: the tolerance that is promised."""

SAMPLES: Final = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Shares of a run's length at which it must lie on the cloth it is said to be on."""

ENDS: Final = (0.0, 1.0)
"""Shares that do for a straight run on straight cloth: between them it strays no further."""


class Misfit(Exception):
    """What is printed cannot be sewn; the text says why, as a sentence without its step."""


@dataclass(frozen=True, slots=True)
class Motion:
    """How a cloth is laid down: turned about nothing, then moved."""

    turn: complex
    shift: complex

    def place(self, place: complex) -> complex:
        """Where a place comes to lie."""
        return place * self.turn + self.shift

    def stroke(self, stroke: Stroke) -> Stroke:
        """Where a line comes to lie."""
        center = None if stroke.center is None else self.place(stroke.center)
        return Stroke(self.place(stroke.start), self.place(stroke.end), center, stroke.sweep)

    def then(self, later: Motion) -> Motion:
        """This, and the later motion after it."""
        return Motion(self.turn * later.turn, later.place(self.shift))


Hem = tuple[Stroke, float]
"""A stretch of a cloth's sewing line with the cloth on its right, and the width of cloth left beyond it."""


@dataclass(frozen=True, slots=True)
class SewnCloth:
    """A piece of cloth, or several sewn together: the rings of its sewing line, outside first."""

    rings: tuple[tuple[Hem, ...], ...]


def turned_over(stroke: Stroke) -> Stroke:
    """The line on the back of the cloth: left and right change places."""
    def over(place: complex) -> complex:
        return -place.conjugate()

    center = None if stroke.center is None else over(stroke.center)
    return Stroke(over(stroke.start), over(stroke.end), center, -stroke.sweep)


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


# ---- sewing --------------------------------------------------------------------------------------


def laid(cloth: SewnCloth, motion: Motion) -> SewnCloth:
    """The cloth laid down elsewhere."""
    return SewnCloth(
        tuple(tuple((motion.stroke(stroke), width) for stroke, width in ring) for ring in cloth.rings)
    )


def motion_onto(own: Sequence[Stroke], wanted: Sequence[Stroke]) -> tuple[Motion, float]:
    """The motion that lays one path on another, and how far the two stray from each other when it is done."""
    if len(own) != len(wanted):
        raise Misfit(f"one side has {len(own)} edges and the seam {len(wanted)}")
    for one, two in zip(own, wanted, strict=True):
        if abs(one.length - two.length) > EXACT:
            raise Misfit(
                f"the seam is {ruler_text(two.length)} long and one side of it {ruler_text(one.length)}"
            )
        if (one.center is None) != (two.center is None):
            raise Misfit("a straight edge is to be sewn to a curved one")
    spots = [(one.at(share), two.at(share)) for one, two in zip(own, wanted, strict=True)
             for share in _sampled(one, two)]
    first = spots[0]
    last = max(spots, key=lambda spot: abs(spot[0] - first[0]))
    if abs(last[1] - first[1]) <= EXACT or abs(last[0] - first[0]) <= EXACT:
        raise Misfit("a seam has no length")
    turn = (last[1] - first[1]) / (last[0] - first[0])
    turn /= abs(turn)
    motion = Motion(turn, first[1] - first[0] * turn)
    stray = max(abs(motion.place(one) - two) for one, two in spots)
    if stray > EXACT:
        raise Misfit(f"the two sides of the seam lie {stray:.3f}in apart")
    return motion, stray


def _sampled(one: Stroke, two: Stroke) -> tuple[float, ...]:
    """The shares at which two runs are held against each other."""
    return ENDS if one.center is None and two.center is None else SAMPLES


def sewn(one: SewnCloth, two: SewnCloth, seam: Sequence[Stroke]) -> SewnCloth:
    """Both cloths, laid down, sewn along a seam that has the first on its right."""
    back = [stroke.reversed() for stroke in reversed(seam)]
    first_rest, first_width, first_others = _opened(one, seam)
    second_rest, second_width, second_others = _opened(two, back)
    for mine, theirs in zip(first_width, reversed(second_width), strict=True):
        if mine >= 0 and theirs >= 0 and abs(mine - theirs) > EXACT:
            raise Misfit(
                f"the allowance is {ruler_text(mine)} on one side and {ruler_text(theirs)} on the other"
            )
    ring = joined_hems([*first_rest, *second_rest])
    return SewnCloth((*((tuple(ring),) if ring else ()), *first_others, *second_others)
                     if not _is_window(one, first_others) else
                     (*first_others, *((tuple(ring),) if ring else ()), *second_others))


def _is_window(cloth: SewnCloth, others: Sequence[tuple[Hem, ...]]) -> bool:
    """Whether the ring that was opened is not the outside one."""
    return bool(others) and others[0] is cloth.rings[0]


def _opened(cloth: SewnCloth, seam: Sequence[Stroke]) -> tuple[list[Hem], list[float], list[tuple[Hem, ...]]]:
    """What is left of the ring that a seam lies on, the allowances along the seam, and the other rings."""
    for at, ring in enumerate(cloth.rings):
        for index, along in spots_on(ring, seam[0].start):
            found = _follow(ring, index, along, seam)
            if found:
                return found[0], found[1], [*cloth.rings[:at], *cloth.rings[at + 1:]]
    raise Misfit("an edge to be sewn is not on the outside of its part")


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


def _follow(ring: Sequence[Hem], index: int, along: float, seam: Sequence[Stroke]
            ) -> tuple[list[Hem], list[float]] | None:
    """The rest of the ring from the seam's end round to its start, if the whole seam lies on it from
    there."""
    turned = [_tail(ring[index], along), *ring[index + 1:], *ring[:index]]
    if along > EXACT:
        turned.append(_head(ring[index], along))
    at, offset, widths = 0, 0.0, []
    for run in seam:
        spent = spend(turned, at, offset, run)
        if spent is None:
            return None
        at, offset, beside, _ = spent
        known = [width for width in beside if width >= 0]
        if known and max(known) - min(known) > EXACT:
            raise Misfit(
                f"the allowance changes from {ruler_text(min(known))} to {ruler_text(max(known))} in it"
            )
        widths.append(known[0] if known else -1.0)
    rest = turned[at:]
    if rest and offset:
        rest[0] = _tail(rest[0], offset)
    return rest, widths


def spend(ring: Sequence[Hem], at: int, offset: float, run: Stroke
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
    return straight and abs(one[1] - two[1]) <= EXACT and abs(turn_between(one[0], two[0])) * min(
        one[0].length, two[0].length) <= EXACT / 10


def strokes_of(edges: Sequence[Edge]) -> list[Stroke]:
    """Printed edges as strokes; the numbers of an arc must agree with each other."""
    for edge in edges:
        if edge.arc is not None:
            center = place_of(edge.arc.center)
            for end in (edge.start, edge.end):
                if abs(abs(place_of(end) - center) - edge.arc.radius) > EXACT:
                    raise Misfit(f"an arc of {ruler_text(edge.arc.radius)} does not pass through its own end")
    return [stroke_of(edge) for edge in edges]
