"""A top's steps as a maker tells them: rows of what lies side by side, then the centre, then the borders."""

from __future__ import annotations

from cmath import phase, rect
from collections.abc import Mapping, Sequence
from itertools import pairwise
from math import pi, radians
from typing import Final

from ..drafting.model import Draft
from ..drafting.stroke import place_of, stroke_of
from ..sewing.model import Assembly, Step
from .assembly_model import Row, Stage, Way
from .top import Box

MITRED_STRIPS: Final = 4  # of a border, one a side

PARALLEL: Final = 1e-3
"""Radians between the seams of one row."""

ROWS: Final[dict[Way, str]] = {
    "down": "Rows", "across": "Columns", "slantwise": "Slanted rows", "set in": "Units",
    "mitred": "Units",
}
"""What the parts of a centre are called by how they lie in it."""

Pieces = tuple[int, ...]


def stages_of(top: Draft, assembly: Assembly, boxes: Sequence[Box]) -> tuple[Stage, ...]:
    """The stages in the order of sewing. `boxes` are what borders go round, inmost first, then the whole."""
    teller = _Teller(top, assembly, boxes)
    rows = teller.rows()
    joining = _joining(rows, teller)
    staged: list[list[Row]] = [[] for _ in range(len(boxes) + 1)]
    for row in rows:
        ring = teller.ring(teller.pieces_of(row.makes))
        staged[ring + 1 if ring else int(row.makes in joining)].append(row)
    staged[2:] = [_mitred(found, assembly.steps) for found in staged[2:]]
    lies: Way = next((row.way for row in rows if row.makes in joining and row.parts), "down")
    titles = [ROWS[lies], "Centre", *(f"Border {number}" for number in range(1, len(boxes)))]
    return tuple(Stage(title, tuple(found)) for title, found in zip(titles, staged, strict=True) if found)


def _joining(rows: Sequence[Row], teller: _Teller) -> set[str]:
    """What joins the centre's rows; and, where that is only sewn round, as by corner triangles, what is."""
    found: set[str] = set()
    centre = [row for row in rows if teller.ring(teller.pieces_of(row.makes)) == 0]
    if not centre:
        return found
    whole = len(teller.pieces_of(centre[-1].makes))
    makes: str | None = centre[-1].makes
    while makes is not None:
        found.add(makes)
        row = next(each for each in centre if each.makes == makes)
        makes = next((part for part in row.parts
                      if part in teller.number and 2 * len(teller.pieces_of(part)) > whole), None)
    return found


def _mitred(rows: Sequence[Row], steps: Sequence[Step]) -> list[Row]:
    """A border's rows; of a mitred one, a single row: its strips are sewn on from dot to dot, then the mitres
    are closed."""
    corners = {step.step: step.set_in_count for step in steps}
    chain = next((rows[at:] for at in range(len(rows)) if _is_mitred(rows[at:], corners)), None)
    if chain is None:
        return list(rows)
    made = {row.makes for row in chain}
    first, last = chain[0], chain[-1]
    later = {part for row in chain[1:] for part in row.parts}
    between = first.parts[1:-1]  # two strips that were sewn on straight
    centre = next((part for part in between or first.parts if part not in later), first.parts[0])
    strips = [part for row in chain for part in row.parts if part not in made and part != centre]
    taken = tuple(sorted(step for row in chain for step in row.steps))
    longest = max(row.seam_length for row in chain)
    whole = Row(last.makes, (centre, *strips), taken, last.batch, "mitred", longest, last.finished,
                last.unfinished, (0.0,) * (1 + len(strips)))
    return [*rows[:-len(chain)], whole]


def _is_mitred(chain: Sequence[Row], corners: Mapping[int, int]) -> bool:
    """Whether rows, each sewn to the one before it, are four strips round a centre that turn at its four
    corners."""
    taken = [step for row in chain for step in row.steps]
    nested = all(one.makes in two.parts and len(two.parts) == 2 for one, two in pairwise(chain))
    return nested and len(taken) == MITRED_STRIPS == sum(corners[step] for step in taken)


class _Teller:
    """Rows found in an assembly."""

    def __init__(self, top: Draft, assembly: Assembly, boxes: Sequence[Box]) -> None:
        self.top = top
        self.assembly = assembly
        self.boxes = boxes
        self.kinds = {str(cloth.number): cloth.template for cloth in assembly.pieces}
        self.number = {step.makes: step.step for step in assembly.steps}
        self.turned = {(unit.id, copy.pieces[0]): copy.turned
                       for unit in assembly.units for copy in unit.copies}

    def pieces_of(self, makes: str) -> Pieces:
        """The pieces of a unit's first copy."""
        return self.assembly.units[self.number[makes] - 1].pieces

    def ring(self, pieces: Pieces) -> int:
        """0 for what lies in the centre, n for what reaches into the nth border."""
        places = [self.top.pieces[each - 1].inside for each in pieces]
        return next(number for number, box in enumerate(self.boxes) if all(map(box.holds, places)))

    def rows(self) -> list[Row]:
        """Every row in the order of sewing, with how many are made."""
        counts = {self.assembly.units[-1].id: 1} if self.assembly.units else {}
        rows: list[Row] = []
        for step, unit in zip(reversed(self.assembly.steps), reversed(self.assembly.units), strict=True):
            if unit.id not in counts:
                continue
            parts, steps, turned = self._row(step, unit.pieces)
            for name in parts:
                if name in self.number:
                    counts[name] = counts.get(name, 0) + counts[unit.id]
            longest = max(self.assembly.steps[each - 1].seam_length for each in steps)
            rows.append(Row(unit.id, tuple(self.kinds.get(name, name) for name in parts), steps,
                            counts[unit.id], _way(step), longest, unit.finished, unit.unfinished, turned))
        return rows[::-1]

    def _row(self, step: Step, pieces: Pieces) -> tuple[list[str], tuple[int, ...], tuple[float, ...]]:
        """The parts of a row in order, the steps that make it, and how its units lie turned; from its last
        step."""
        ring, heading = self.ring(pieces), _heading(step)
        framing = ring > 0 and self._holds_centre(pieces)  # strips made alike for all sides stay whole
        found: list[tuple[float, str, float]] = []
        steps: dict[int, None] = {}
        stack = [(step, pieces)]
        while stack:
            each, its = stack.pop()
            steps[each.step] = None
            first = len(self.pieces_of(each.parts[0])) if each.parts[0] in self.number else 1
            for name, own in zip(each.parts, (its[:first], its[first:]), strict=True):
                if name not in self.number:
                    found.append((self._along(own, heading), str(own[0]), 0.0))
                    continue
                inner = self.assembly.steps[self.number[name] - 1]
                if self.ring(own) == ring and not (framing and inner.batch > 1) and \
                        self._runs_on(step, inner, own):
                    stack.append((inner, own))
                else:
                    found.append((self._along(own, heading), name, self.turned[name, own[0]]))
        found.sort(key=lambda part: part[0])
        return [name for _, name, _ in found], tuple(sorted(steps)), tuple(turned for *_, turned in found)

    def _holds_centre(self, pieces: Pieces) -> bool:
        return any(self.boxes[0].holds(self.top.pieces[each - 1].inside) for each in pieces)

    def _runs_on(self, step: Step, inner: Step, pieces: Pieces) -> bool:
        """Whether the seam of a part, as it lies, runs as the row's seams do."""
        if step.set_in or inner.set_in:
            return False
        lies = _heading(inner) + radians(self.turned[inner.makes, pieces[0]])
        apart = (lies - _heading(step)) % pi
        return min(apart, pi - apart) < PARALLEL

    def _along(self, pieces: Pieces, heading: float) -> float:
        """How far along a row of such seams pieces lie: rightward, or downward."""
        middles = [place_of(self.top.pieces[number - 1].inside) for number in pieces]
        along = sum(middles) / len(middles) / rect(1, heading)
        return -along.imag if heading > PARALLEL else along.imag


def _heading(step: Step) -> float:
    """Radians of a step's seam, 0 level to just under pi."""
    turned = phase(stroke_of(step.seam[0]).direction(0)) % pi
    return 0.0 if pi - turned < PARALLEL else turned


def _way(step: Step) -> Way:
    if step.set_in:
        return "set in"
    heading = _heading(step)
    if heading < PARALLEL:
        return "down"
    return "across" if abs(heading - pi / 2) < PARALLEL else "slantwise"
