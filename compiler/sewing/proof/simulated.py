"""Simulated cloth: cut by a printed outline, measured, and sewn edge to edge. Inches; places are complex.

Nothing here knows how the order of sewing was found. Whatever does not fit raises Misfit with the reason.
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import pi
from typing import Final

from ...cutting.model import Template
from ...drafting.model import Edge
from ...drafting.stroke import Stroke, place_of, stroke_of, turn_between
from ...measure.fractions import ruler_text

EXACT: Final = 0.001
"""Inches. What is sewn may stray so far from what is printed: the tolerance that is promised."""

SAMPLES: Final = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Shares of a run's length at which it must lie on the cloth it is said to be on."""

ENDS: Final = (0.0, 1.0)
"""Shares that do for a straight run on straight cloth: between them it strays no further."""

CHORDS: Final = 16
"""Chords that stand for each line where it's asked what a ring goes round: cutting lines lie further off."""

WIDEST: Final = 6.0
"""Inches. No allowance is wider; a cut edge further off belongs to another side."""


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


def cut_out(template: Template, reversed_way: bool) -> SewnCloth:
    """The cloth cut by a template, its allowance measured between the printed sewing and cutting lines."""
    lines = [strokes_of(sew) for sew in (template.sew, *template.sew_holes)]
    every = [stroke for line in lines for stroke in line]
    cuts: list[list[Stroke]] = [[] for _ in lines]
    for cut in (template.cut, *template.cut_holes):
        ring = strokes_of(cut)
        _check_closed(ring)
        cuts[_belongs_to(ring, lines) if cut is not template.cut else 0] += ring
    rings = [_measured_ring(line, cut, every) for line, cut in zip(lines, cuts, strict=True)]
    _check_marks(template, every)
    if reversed_way:
        rings = [_turned_over(ring) for ring in rings]
    return SewnCloth(tuple(tuple(ring) for ring in rings))


def _check_marks(template: Template, lines: Sequence[Stroke]) -> None:
    """Dots lie on corners and match marks on the sewing line, pointing square out of it."""
    for dot in template.dots:
        if all(abs(place_of(dot) - line.start) > EXACT for line in lines):
            raise Misfit(f"a dot of template {template.label} lies on no corner")
    for mark in template.marks:
        on = [(line, along) for line in lines if (along := along_of(line, place_of(mark.at))) is not None]
        outward = [line.direction(along / line.length) * -1j for line, along in on]
        if all(abs(place_of(mark.toward) - each) > EXACT for each in outward):
            raise Misfit(f"a match mark of template {template.label} lies on no sewing line")


def _turned_over(ring: Sequence[Hem]) -> list[Hem]:
    return [(turned_over(stroke).reversed(), width) for stroke, width in reversed(ring)]


def turned_over(stroke: Stroke) -> Stroke:
    """The line on the back of the cloth: left and right change places."""
    def over(place: complex) -> complex:
        return -place.conjugate()

    center = None if stroke.center is None else over(stroke.center)
    return Stroke(over(stroke.start), over(stroke.end), center, -stroke.sweep)


def _check_closed(ring: Sequence[Stroke]) -> None:
    if any(abs(ring[at - 1].end - stroke.start) > EXACT for at, stroke in enumerate(ring)):
        raise Misfit("a printed outline is not closed")


def _belongs_to(cut: Sequence[Stroke], lines: Sequence[Sequence[Stroke]]) -> int:
    """The window that a gap in the cloth lies in, by number; 0 where it lies in none, but in a bay of the
    outside."""
    middle = cut[0].at(0.5)
    return next((at for at, line in enumerate(lines) if at and _goes_round(line, middle)), 0)


def _goes_round(line: Sequence[Stroke], place: complex) -> bool:
    steps = [
        (stroke.at((at + 1) / CHORDS) - place) / (stroke.at(at / CHORDS) - place)
        for stroke in line for at in range(CHORDS)
    ]
    return abs(sum(phase(step) for step in steps)) > pi


def _measured_ring(sew: Sequence[Stroke], cut: Sequence[Stroke], every: Sequence[Stroke]) -> list[Hem]:
    """Each stretch of a sewing line with the width of cloth beyond it; -1 where the allowances of others, as
    at an inner corner, leave none of its cutting line to measure at."""
    _check_closed(sew)
    widths = [_width_beside(stroke, cut) for stroke in sew]
    usual = max((width for width in widths if width is not None), default=0.0)
    if not all(_is_even(line, sew) or _cuts_corner(line, every) for line in cut):
        raise Misfit("a cutting line does not run even with its sewing line")
    return [(stroke, -1.0 if width is None or (usual > EXACT and _swallowed(stroke, every, usual)) else width)
            for stroke, width in zip(sew, widths, strict=True)]


def _is_even(cut: Stroke, sew: Sequence[Stroke]) -> bool:
    """Whether a cutting line runs even with some sewing line."""
    return any(_width_beside(stroke, (cut,)) is not None for stroke in sew)


def _cuts_corner(cut: Stroke, every: Sequence[Stroke]) -> bool:
    """Whether a cutting line trims a point: a corner of the sewing line is nearest to its middle."""
    if cut.center is not None:
        return False
    middle = cut.at(0.5)
    nearest = min(distance_to(stroke, middle) for stroke in every)
    return min(abs(stroke.start - middle) for stroke in every) <= nearest + EXACT / 100


def _swallowed(stroke: Stroke, every: Sequence[Stroke], width: float) -> bool:
    """Whether a stretch's cutting line would lie within the allowance of other stretches all along."""
    for share in (each / 8 for each in range(1, 8)):
        beyond = stroke.at(share) + stroke.direction(share) * -1j * width
        if all(other is stroke or distance_to(other, beyond) >= width - EXACT for other in every):
            return stroke.sweep < 0 and stroke.radius <= width + EXACT
    return True


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


def _width_beside(sew: Stroke, cut: Sequence[Stroke]) -> float | None:
    """How far beyond a sewing line the nearest cutting line runs that is even with it all along."""
    widths = [width for stroke in cut if (stroke.center is None) == (sew.center is None)
              for width in (_even_width(sew, stroke) if sew.center is None else _even_arc(sew, stroke))]
    return min((width for width in widths if -EXACT <= width <= WIDEST), default=None)


def _even_width(sew: Stroke, cut: Stroke) -> list[float]:
    ends = [(place - sew.start) / sew.direction(0) for place in (cut.start, cut.end)]
    shared = min(ends[1].real, sew.length) - max(ends[0].real, 0.0)
    even = shared > EXACT and abs(ends[0].imag - ends[1].imag) <= EXACT
    return [-ends[0].imag] if even else []


def _even_arc(sew: Stroke, cut: Stroke) -> list[float]:
    assert sew.center is not None and cut.center is not None, "both are arcs"
    if abs(cut.center - sew.center) > EXACT or (cut.sweep > 0) != (sew.sweep > 0):
        return []
    beside = [sew.center + (sew.at(share) - sew.center) / sew.radius * cut.radius for share in SAMPLES[1:-1]]
    if all(along_of(cut, place) is None for place in beside):
        return []
    return [(cut.radius - sew.radius) * (1 if sew.sweep > 0 else -1)]


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
