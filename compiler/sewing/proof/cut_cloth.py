"""Cloth cut by a printed template: its allowance measured between the printed sewing and cutting lines, each
of which must have a reason to be there. Inches; places are complex."""

from __future__ import annotations

from cmath import phase
from collections.abc import Sequence
from math import pi
from typing import Final

from ...cutting.model import Template
from ...drafting.stroke import Stroke, place_of
from .misfit import Misfit
from .simulated import ENDS, EXACT, Hem, SewnCloth, along_of, distance_to, strokes_of, turned_over

POINTED: Final = 16.0
"""Allowances past a seam's end that a cutting line is carried on to a point at most."""

CHORDS: Final = 16
"""Chords that stand for each line where it's asked what a ring goes round: cutting lines lie further off."""

WIDEST: Final = 6.0
"""Inches. No allowance is wider; a cut edge further off belongs to another side."""


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
            raise Misfit("dot-off-corner", template.label)
    for mark in template.marks:
        on = [(line, along) for line in lines if (along := along_of(line, place_of(mark.at))) is not None]
        outward = [line.direction(along / line.length) * -1j for line, along in on]
        if all(abs(place_of(mark.toward) - each) > EXACT for each in outward):
            raise Misfit("mark-off-line", template.label)


def _turned_over(ring: Sequence[Hem]) -> list[Hem]:
    return [(turned_over(stroke).reversed(), width) for stroke, width in reversed(ring)]


def _check_closed(ring: Sequence[Stroke]) -> None:
    if any(abs(ring[at - 1].end - stroke.start) > EXACT for at, stroke in enumerate(ring)):
        raise Misfit("outline-open")


def _belongs_to(cut: Sequence[Stroke], lines: Sequence[Sequence[Stroke]]) -> int:
    """The window that a gap in the cloth lies in, by number; 0 where it lies in none, but in a bay of the
    outside."""
    middle = cut[0].at(0.5)
    return next((at for at, line in enumerate(lines) if at and _goes_round(line, middle)), 0)


def _goes_round(line: Sequence[Stroke], place: complex) -> bool:
    steps = [
        (stroke.at((at + 1) / CHORDS) - place) / (stroke.at(at / CHORDS) - place)
        for stroke in line
        for at in range(CHORDS)
    ]
    return abs(sum(phase(step) for step in steps)) > pi


def _measured_ring(sew: Sequence[Stroke], cut: Sequence[Stroke], every: Sequence[Stroke]) -> list[Hem]:
    """Each stretch of a sewing line with the width of cloth beyond it; -1 where the allowances of others, as
    at an inner corner, leave none of its cutting line to measure at."""
    _check_closed(sew)
    widths = [_width_beside(stroke, cut) for stroke in sew]
    usual = max((width for width in widths if width is not None), default=0.0)
    hems = list(zip(sew, widths, strict=True))
    if not all(
        _is_even(line, sew)
        or _cuts_corner(line, every)
        or _ends_square(line, hems)
        or _runs_past(line, hems)
        or _in_point(line, hems)
        for line in cut
    ):
        raise Misfit("cut-uneven")
    return [
        (stroke, -1.0 if width is None or (usual > EXACT and _swallowed(stroke, every, usual)) else width)
        for stroke, width in zip(sew, widths, strict=True)
    ]


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


def _in_point(cut: Stroke, hems: Sequence[tuple[Stroke, float | None]]) -> bool:
    """Whether a straight cutting line lies within the point of cloth past a corner: past the ends of both
    sewing lines that meet there, and no further out than either's allowance."""
    if cut.center is not None:
        return False
    known = max((width for _, width in hems if width is not None), default=0.0)
    for at, (after, after_width) in enumerate(hems):
        before, before_width = hems[at - 1]
        ahead, behind = before.direction(1), -after.direction(0)
        if all(
            min(((place - after.start) / way).real for way in (ahead, behind)) >= -EXACT
            and _out_of(before, 1.0, place) <= (known if before_width is None else before_width) + EXACT
            and _out_of(after, 0.0, place) <= (known if after_width is None else after_width) + EXACT
            for place in (cut.start, cut.end)
        ):
            return True
    return False


def _out_of(sew: Stroke, share: float, place: complex) -> float:
    """How far outside a sewing line a place lies: of an arc outside its circle or, where that is less,
    outside the straight line that carries it on from one of its ends."""
    straight = -((place - sew.at(share)) / sew.direction(share)).imag
    if sew.center is None:
        return straight
    return min(straight, (abs(place - sew.center) - sew.radius) * (1 if sew.sweep > 0 else -1))


def _runs_past(cut: Stroke, hems: Sequence[tuple[Stroke, float | None]]) -> bool:
    """Whether a cutting line carries on a sewing line's past its end, to a point, at an allowance of the
    outline: that of a seam whose own cutting line lies within the allowances of others."""
    known = [width for _, width in hems if width is not None and width > EXACT]
    for sew, _ in hems:
        if sew.center is None and cut.center is None:
            ends = [(place - sew.start) / sew.direction(0) for place in (cut.start, cut.end)]
            past = max(-ends[1].real, ends[0].real - sew.length)
            alike = ends[1].real > ends[0].real and abs((ends[0] - ends[1]).imag) <= EXACT
            out = -ends[0].imag if alike else 0.0
        elif sew.center is not None and cut.center is not None:
            alike = abs(cut.center - sew.center) <= EXACT and (cut.sweep > 0) == (sew.sweep > 0)
            past = min(
                abs(sew.end - sew.center - (cut.start - cut.center) / cut.radius * sew.radius),
                abs(sew.start - sew.center - (cut.end - cut.center) / cut.radius * sew.radius),
            )
            out = (cut.radius - sew.radius) * (1 if sew.sweep > 0 else -1) if alike else 0.0
        elif cut.center is None:
            past, out = 0.0, _carried_on(cut, sew)
        else:
            continue
        if past <= POINTED * out and any(abs(out - width) <= EXACT for width in known):
            return True
    return False


def _carried_on(cut: Stroke, sew: Stroke) -> float:
    """How far outside an arc a straight cutting line begins or ends square out from the arc's end, and goes
    on from there the way that the arc runs; 0 where it does not."""
    for share, near, far in ((1.0, cut.start, cut.end), (0.0, cut.end, cut.start)):
        ahead = sew.direction(share) * (1 if share else -1)
        first, last = ((place - sew.at(share)) / ahead for place in (near, far))
        if max(abs(first.real), abs(first.imag - last.imag)) <= EXACT < last.real:
            return abs(first.imag)
    return 0.0


def _ends_square(cut: Stroke, hems: Sequence[tuple[Stroke, float | None]]) -> bool:
    """Whether a straight cutting line starts or ends where some sewing line's own does, square beside the end
    of that sewing line, and lies all on the way there: the allowance of a wider side ends so at an inner
    corner."""
    if cut.center is not None:
        return False
    for stroke, width in hems:
        for share in ENDS:
            out = stroke.direction(share) * -1j
            reaches = [(place - stroke.at(share)) / out for place in (cut.start, cut.end)]
            if (
                width is not None
                and all(abs(reach.imag) <= EXACT <= reach.real <= width + EXACT for reach in reaches)
                and any(abs(reach.real - width) <= EXACT for reach in reaches)
            ):
                return True
    return False


def _swallowed(stroke: Stroke, every: Sequence[Stroke], width: float) -> bool:
    """Whether a stretch's cutting line would lie within the allowance of other stretches all along."""
    for share in (each / 8 for each in range(1, 8)):
        beyond = stroke.at(share) + stroke.direction(share) * -1j * width
        if all(other is stroke or distance_to(other, beyond) >= width - EXACT for other in every):
            return stroke.sweep < 0 and stroke.radius <= width + EXACT
    return True


def _width_beside(sew: Stroke, cut: Sequence[Stroke]) -> float | None:
    """How far beyond a sewing line the nearest cutting line runs that is even with it all along."""
    widths = [
        width
        for stroke in cut
        if (stroke.center is None) == (sew.center is None)
        for width in (_even_width(sew, stroke) if sew.center is None else _even_arc(sew, stroke))
    ]
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
    first = phase((cut.start - cut.center) / (sew.start - sew.center)) * (1 if sew.sweep > 0 else -1)
    shared = max(
        min(first + around + abs(cut.sweep), abs(sew.sweep)) - max(first + around, 0.0)
        for around in (-2 * pi, 0.0, 2 * pi)
    )
    if shared * min(cut.radius, sew.radius) <= EXACT:
        return []
    return [(cut.radius - sew.radius) * (1 if sew.sweep > 0 else -1)]
