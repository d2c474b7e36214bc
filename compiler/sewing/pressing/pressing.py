"""Which way each seam's allowances lie: opposite where seams meet, toward the darker cloth where that is
free.

Where two seams come to one place of a later seam from both sides, their allowances lock if they lie opposite
ways (common practice: SOURCES 3.6). Each such meeting ties two seams together, so a direction for one
settles the other; what hangs together is turned as a whole, whichever way puts more of it behind the darker
cloth. A batch is pressed alike unless that would set two of its own seams against each other.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import sqrt
from typing import NamedTuple

from ...drafting.model import Draft
from ...geometry.stroke import Stroke, point_of, stretches, stroke_of
from ...measure.tolerance import EVEN, TOGETHER
from ..model import Assembly, Step
from ..order.squares import Squares
from ..proof.simulated import along_of
from .pressing_model import Meeting, Pressing, PressingPlan, Toward
from .pressing_ties import Seam, Ties


class End(NamedTuple):
    """Where a seam of one copy of a step ends: `away` leads into the seam, `first` toward its first part."""

    step: int
    copy: int
    at: complex
    away: complex
    first: complex


class Tie(NamedTuple):
    """Two seams that meet on a later one: they lie opposite if their ways agree (`same`) or differ."""

    one: End
    two: End
    across: int
    same: bool


def press(draft: Draft, assembly: Assembly, lightness: Mapping[str, float]) -> PressingPlan:
    """A direction for every seam. `lightness` of every role of the draft, on any scale: more is lighter."""
    cell = max(float(draft.width), float(draft.height)) / sqrt(len(draft.pieces))
    ties = list(_ties(assembly, cell))
    wishes = {step.step: _first_darker(draft, step, lightness) for step in assembly.steps}
    ways, opened = _settle(assembly, ties, wishes)
    tied = {(end.step, end.copy) for tie in ties for end in (tie.one, tie.two)}
    seams = tuple(_pressing(step, wishes[step.step], ways, opened, tied) for step in assembly.steps)
    return PressingPlan(seams, tuple(_meeting(tie, ways, opened) for tie in ties))


# ---- where seams meet ----------------------------------------------------------------------------


def _ties(assembly: Assembly, cell: float) -> Iterator[Tie]:
    """Every place where two seams come to a later seam from both sides, end to end."""
    seams = list(_seams(assembly))
    squares: Squares[End] = Squares(cell)
    for step, copy, strokes in seams:
        if not step.closed:
            for seam in stretches(strokes, TOGETHER):
                for end in _ends(step.step, copy, seam):
                    squares.put(end.at, end)
    for step, _, strokes in seams:
        for stroke in strokes:
            found = [
                end for at, end in squares.along(stroke) if end.step != step.step and _within(stroke, at)
            ]
            yield from _pairs(found, stroke, step.step)


def _seams(assembly: Assembly) -> Iterator[tuple[Step, int, list[Stroke]]]:
    """The seam of every copy of every step, where it lies in the block."""
    for step, unit in zip(assembly.steps, assembly.units, strict=True):
        own = [stroke_of(edge) for edge in step.seam]
        for number, copy in enumerate(unit.copies):
            yield step, number, [copy.motion.stroke(stroke) for stroke in own]


def _ends(step: int, copy: int, strokes: Sequence[Stroke]) -> tuple[End, End]:
    first, last = strokes[0], strokes[-1]
    return (
        End(step, copy, first.start, first.direction(0), first.direction(0) * 1j),
        End(step, copy, last.end, -last.direction(1), last.direction(1) * 1j),
    )


def _within(stroke: Stroke, place: complex) -> bool:
    if min(abs(place - stroke.start), abs(place - stroke.end)) <= TOGETHER:
        return False
    if stroke.center is None:
        relative = (place - stroke.start) / stroke.direction(0)
        return abs(relative.imag) <= TOGETHER and 0 < relative.real < stroke.length
    return along_of(stroke, place) is not None


def _pairs(ends: Sequence[End], seam: Stroke, across: int) -> Iterator[Tie]:
    """At each place of a seam, the ends on one side each with the end on the other that lies on it or
    opposite."""
    by_place: dict[tuple[int, int], list[End]] = {}
    for end in ends:
        by_place.setdefault((round(end.at.real / TOGETHER), round(end.at.imag / TOGETHER)), []).append(end)
    for here in by_place.values():
        along = _direction_at(seam, here[0].at)
        right = [end for end in here if (end.away / along).imag > EVEN]
        left = [end for end in here if (end.away / along).imag < -EVEN]
        for one in right:
            for two in left:
                if abs(one.away + two.away) <= EVEN:
                    yield Tie(one, two, across, _dot(one.first, two.first) < 0)
                elif abs(one.away - _folded(two.away, along)) <= EVEN:
                    yield Tie(one, two, across, _dot(one.first, _folded(two.first, along)) < 0)


def _direction_at(seam: Stroke, place: complex) -> complex:
    if seam.center is None:
        return seam.direction(0)
    return (place - seam.center) / seam.radius * (1j if seam.sweep > 0 else -1j)


def _folded(away: complex, along: complex) -> complex:
    """A direction as it lies once the cloth is folded over along a seam."""
    return (away / along).conjugate() * along


def _dot(one: complex, two: complex) -> float:
    return (one * two.conjugate()).real


# ---- settling ------------------------------------------------------------------------------------


def _settle(
    assembly: Assembly, ties: Sequence[Tie], darker: Mapping[int, float]
) -> tuple[dict[Seam, bool], set[Seam]]:
    """For each seam whether it lies toward its first part, and those that can only be pressed open."""
    batches = Ties()
    for tie in ties:
        batches.tie((tie.one.step, 0), (tie.two.step, 0), tie.same)
    apart = {step.step for step in assembly.steps if batches.torn((step.step, 0))}
    every = Ties()

    def variable(end: End) -> Seam:
        return end.step, end.copy if end.step in apart else 0

    opened: set[Seam] = set()
    for tie in ties:
        one, two = variable(tie.one), variable(tie.two)
        if not {one, two} & opened and not every.tie(one, two, tie.same):
            opened.add(max(one, two, key=lambda seam: (-_length(assembly, seam), seam)))
    wishes: dict[Seam, float] = {}
    for step in assembly.steps:
        for copy in range(step.batch):
            seam = (step.step, copy if step.step in apart else 0)
            wishes[seam] = wishes.get(seam, 0.0) + darker[step.step]
    leans = [((step, copy if step in apart else 0), lean) for step, copy, lean in _leans(assembly)]
    settled = every.settle(wishes, leans)
    ways = {
        (step.step, copy): settled[step.step, copy if step.step in apart else 0]
        for step in assembly.steps
        for copy in range(step.batch)
    }
    return ways, {(step, copy) for step, copy in ways if (step, copy if step in apart else 0) in opened}


def _leans(assembly: Assembly) -> list[tuple[int, int, float]]:
    """Step, copy, and how far the seam's first part lies to the left, or else above: in reading order. So,
    where all else is equal, the seams of the first row are all pressed to the left. Of a batch whose copies
    are turned about nothing is told: they are rather pressed alike."""
    turned = {
        step.step
        for step, unit in zip(assembly.steps, assembly.units, strict=True)
        if any(copy.turned for copy in unit.copies)
    }
    found = []
    for step, copy, strokes in _seams(assembly):
        if step.step in turned:
            continue
        longest = max(strokes, key=lambda stroke: round(stroke.length, 6))
        at, first = longest.at(0.5), longest.direction(0.5) * 1j
        lean = -first.real if abs(first.real) > EVEN else -first.imag
        found.append(((round(at.imag, 3), round(at.real, 3)), (step.step, copy, lean)))
    return [each for _, each in sorted(found)]


def _length(assembly: Assembly, seam: Seam) -> float:
    return round(assembly.steps[seam[0] - 1].seam_length, 6)


def _first_darker(draft: Draft, step: Step, lightness: Mapping[str, float]) -> float:
    """Lightness times inches by which the first part's side of a step's seam is the darker."""
    found = 0.0
    for half in step.path:
        own, other = (draft.pieces[draft.graph.face(each)].fabric for each in (half, half ^ 1))
        found += stroke_of(draft.graph.edge(half)).length * (lightness[other] - lightness[own])
    return round(found, 9)


def _pressing(
    step: Step, wish: float, ways: Mapping[Seam, bool], opened: set[Seam], tied: set[Seam]
) -> Pressing:
    seams = [(step.step, copy) for copy in range(step.batch)]
    found: list[Toward] = [
        "open" if seam in opened else "first" if ways[seam] else "second" for seam in seams
    ]
    if found[0] == "open":
        return Pressing(step.step, tuple(found), "open")
    if wish and (wish > 0) == ways[seams[0]]:
        return Pressing(step.step, tuple(found), "darker")
    return Pressing(step.step, tuple(found), "opposite" if seams[0] in tied else "either")


def _meeting(tie: Tie, ways: Mapping[Seam, bool], opened: set[Seam]) -> Meeting:
    one, two = (tie.one.step, tie.one.copy), (tie.two.step, tie.two.copy)
    agree = (ways[one] == ways[two]) == tie.same
    return Meeting(point_of(tie.one.at), (one[0], two[0]), tie.across, agree and not {one, two} & opened)
