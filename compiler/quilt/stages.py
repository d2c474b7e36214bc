"""A top's steps as a maker tells them: rows of what lies side by side, then the centre, then the borders."""

from __future__ import annotations

from cmath import phase, rect
from collections.abc import Mapping, Sequence
from itertools import pairwise
from math import pi, radians
from typing import Final, NamedTuple

from ..drafting.model import Draft
from ..geometry.stroke import place_of, stroke_of
from ..measure.tolerance import EVEN
from ..sewing.model import Assembly, Step
from .assembly_model import Join, Row, Stage, Way
from .top import Box

MITRED_STRIPS: Final = 4  # of a border, one a side


ROWS: Final[dict[Way, str]] = {
    "down": "Rows",
    "across": "Columns",
    "slantwise": "Slanted rows",
    "set in": "Units",
    "mitred": "Units",
}
"""What the parts of a centre are called by how they lie in it."""

Pieces = tuple[int, ...]


def stages_of(top: Draft, assembly: Assembly, boxes: Sequence[Box]) -> tuple[Stage, ...]:
    """The stages in the order of sewing. `boxes` are what borders go round, inmost first, then the whole.

    A row belongs where the first of its copies is needed, so nothing is used before it is made.
    """
    teller = _Teller(top, assembly, boxes)
    rows = teller.rows()
    joining = _joining(rows, teller)
    staged: list[list[Row]] = [[] for _ in range(len(boxes) + 1)]
    for row in rows:
        ring = teller.first_ring(row)
        staged[ring + 1 if ring else int(row.makes in joining)].append(row)
    staged[2:] = [_mitred(found, assembly.steps) for found in staged[2:]]
    lies: Way = next((row.way for row in rows if row.makes in joining and row.parts), "down")
    titles = [ROWS[lies], "Centre", *(f"Border {number}" for number in range(1, len(boxes)))]
    return tuple(Stage(title, tuple(found)) for title, found in zip(titles, staged, strict=True) if found)


def _joining(rows: Sequence[Row], teller: _Teller) -> set[str]:
    """What joins the centre's rows; and, where that is only sewn round, as by corner triangles, what is."""
    found: set[str] = set()
    centre = [row for row in rows if teller.first_ring(row) == 0]
    if not centre:
        return found
    whole = len(teller.pieces_of(centre[-1].makes))
    makes: str | None = centre[-1].makes
    while makes is not None:
        found.add(makes)
        row = next(each for each in centre if each.makes == makes)
        makes = next(
            (part for part in row.parts if part in teller.number and 2 * len(teller.pieces_of(part)) > whole),
            None,
        )
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
    lying = [(part, place) for row in chain for part, place in zip(row.parts, row.places, strict=True)]
    parts = [each for each in lying if each[0] == centre]
    parts += [each for each in lying if each[0] not in made and each[0] != centre]
    joins = sorted((join for row in chain for join in row.joins), key=lambda join: join.step)
    longest = max(row.seam_length for row in chain)
    whole = Row(
        last.makes,
        tuple(part for part, _ in parts),
        tuple(place for _, place in parts),
        tuple(joins),
        last.copies,
        "mitred",
        longest,
        last.finished,
        last.unfinished,
        (0.0,) * len(parts),
    )
    return [*rows[: -len(chain)], whole]


def _is_mitred(chain: Sequence[Row], corners: Mapping[int, int]) -> bool:
    """Whether rows, each sewn to the one before it, are four strips round a centre that turn at its four
    corners."""
    taken = [step for row in chain for step in row.steps]
    nested = all(one.makes in two.parts and len(two.parts) == 2 for one, two in pairwise(chain))
    return nested and len(taken) == MITRED_STRIPS == sum(corners[step] for step in taken)


class _Lying(NamedTuple):
    """A part of a row: how far along it, a piece's number or a unit's id, its pieces, and the degrees
    clockwise by which it lies turned."""

    along: float
    name: str
    pieces: Pieces
    turned: float


class _Teller:
    """Rows found in an assembly."""

    def __init__(self, top: Draft, assembly: Assembly, boxes: Sequence[Box]) -> None:
        self.top = top
        self.assembly = assembly
        self.rings = [
            next(number for number, box in enumerate(boxes) if box.holds(piece.inside))
            for piece in top.pieces
        ]
        self.kinds = {str(cloth.number): cloth.template for cloth in assembly.pieces}
        self.number = {step.makes: step.step for step in assembly.steps}
        self.turned = {
            (unit.id, copy.pieces[0]): copy.turned for unit in assembly.units for copy in unit.copies
        }

    def pieces_of(self, makes: str) -> Pieces:
        """The pieces of a unit's first copy."""
        return self.assembly.units[self.number[makes] - 1].pieces

    def ring(self, pieces: Pieces) -> int:
        """0 for what lies in the centre, n for what reaches into the nth border."""
        return max(self.rings[each - 1] for each in pieces)

    def first_ring(self, row: Row) -> int:
        """The inmost ring in which a copy of the row is used."""
        return min(self.ring(copy.pieces) for copy in row.copies)

    def rows(self) -> list[Row]:
        """Every row in the order of sewing, with the copies that are made."""
        made: dict[str, list[Pieces]] = {}
        if self.assembly.units:
            made[self.assembly.units[-1].id] = [self.assembly.units[-1].pieces]
        rows: list[Row] = []
        for step, unit in zip(reversed(self.assembly.steps), reversed(self.assembly.units), strict=True):
            if unit.id not in made:
                continue
            lying, joins = self._row(step, unit.pieces)
            for pieces in made[unit.id]:
                there = dict(zip(unit.pieces, pieces, strict=True))
                for part in lying:
                    if part.name in self.number:
                        made.setdefault(part.name, []).append(tuple(there[each] for each in part.pieces))
            wanted = {min(pieces) for pieces in made[unit.id]}
            longest = max(self.assembly.steps[join.step - 1].seam_length for join in joins)
            rows.append(
                Row(
                    unit.id,
                    tuple(self.kinds.get(part.name, part.name) for part in lying),
                    tuple(part.pieces for part in lying),
                    joins,
                    tuple(copy for copy in unit.copies if min(copy.pieces) in wanted),
                    _way(step),
                    longest,
                    unit.finished,
                    unit.unfinished,
                    tuple(part.turned for part in lying),
                )
            )
        return rows[::-1]

    def _row(self, step: Step, pieces: Pieces) -> tuple[list[_Lying], tuple[Join, ...]]:
        """The parts of a row in order, and the joins that make it; from its last step."""
        ring, heading = self.ring(pieces), _heading(step)
        framing = ring > 0 and self._holds_centre(pieces)  # strips made alike for all sides stay whole
        found: list[_Lying] = []
        joins: list[Join] = []
        stack = [(step, pieces)]
        while stack:
            each, its = stack.pop()
            joins.append(Join(each.step, its))
            first = len(self.pieces_of(each.parts[0])) if each.parts[0] in self.number else 1
            for name, own in zip(each.parts, (its[:first], its[first:]), strict=True):
                along = self._along(own, heading)
                if name not in self.number:
                    found.append(_Lying(along, str(own[0]), own, 0.0))
                    continue
                inner = self.assembly.steps[self.number[name] - 1]
                if (
                    self.ring(own) == ring
                    and not (framing and inner.batch > 1)
                    and self._runs_on(step, inner, own)
                ):
                    stack.append((inner, own))
                else:
                    found.append(_Lying(along, name, own, self.turned[name, own[0]]))
        found.sort(key=lambda part: part.along)
        return found, tuple(sorted(joins, key=lambda join: join.step))

    def _holds_centre(self, pieces: Pieces) -> bool:
        return any(self.rings[each - 1] == 0 for each in pieces)

    def _runs_on(self, step: Step, inner: Step, pieces: Pieces) -> bool:
        """Whether the seam of a part, as it lies, runs as the row's seams do."""
        if step.set_in or inner.set_in:
            return False
        lies = _heading(inner) + radians(self.turned[inner.makes, pieces[0]])
        apart = (lies - _heading(step)) % pi
        return min(apart, pi - apart) < EVEN

    def _along(self, pieces: Pieces, heading: float) -> float:
        """How far along a row of such seams pieces lie: rightward, or downward."""
        middles = [place_of(self.top.pieces[number - 1].inside) for number in pieces]
        along = sum(middles) / len(middles) / rect(1, heading)
        return -along.imag if heading > EVEN else along.imag


def _heading(step: Step) -> float:
    """Radians of a step's seam, 0 level to just under pi."""
    turned = phase(stroke_of(step.seam[0]).direction(0)) % pi
    return 0.0 if pi - turned < EVEN else turned


def _way(step: Step) -> Way:
    if step.set_in:
        return "set in"
    heading = _heading(step)
    if heading < EVEN:
        return "down"
    return "across" if abs(heading - pi / 2) < EVEN else "slantwise"
