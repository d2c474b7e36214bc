"""A top's steps as a maker tells them: rows of what lies side by side, then the centre, then the borders."""

from __future__ import annotations

from cmath import phase, rect
from collections.abc import Mapping
from math import pi
from typing import NamedTuple

from ..geometry.stroke import place_of, stroke_of
from ..measure.tolerance import EVEN
from ..sewing.model import Assembly, Step
from ..sewing.order.row_parting import Joint
from ..sewing.order.row_tree import InRows, Way
from .assembly_model import Join, Row, Stage
from .top import Top

Pieces = tuple[int, ...]


def stages_of(top: Top, assembly: Assembly, joints: Mapping[int, Joint]) -> tuple[Stage, ...]:
    """The stages in the order of sewing.

    A row belongs where the first of its copies is needed, so nothing is used before it is made.
    """
    every = _Rows(top, assembly, joints)
    rows = every.rows()
    joining = {
        assembly.steps[step - 1].makes
        for step, joint in joints.items()
        if joint.row.joins and joint.low == 0 and joint.high == len(joint.row.parts)
    }
    borders = top.rows.ring if isinstance(top.rows, InRows) else 0
    staged: list[list[Row]] = [[] for _ in range(borders + 2)]
    for row in rows:
        ring = every.first_ring(row)
        staged[ring + 1 if ring else int(row.makes in joining)].append(row)
    lies: Way = next((row.way for row in rows if row.makes in joining), "down")
    stages = [
        Stage(lies, 0, tuple(staged[0])),
        Stage("centre", 0, tuple(staged[1])),
        *(Stage("border", number, tuple(found)) for number, found in enumerate(staged[2:], 1)),
    ]
    return tuple(stage for stage in stages if stage.rows)


class _RowPart(NamedTuple):
    """A part of a row: how far along it, a piece's number or a unit's id, its pieces, and the degrees
    clockwise by which it lies turned."""

    along: float
    name: str
    pieces: Pieces
    turned: float


class _Rows:
    """The rows of an assembly."""

    def __init__(self, top: Top, assembly: Assembly, joints: Mapping[int, Joint]) -> None:
        self.top = top.draft
        self.assembly = assembly
        self.joints = joints
        self.rings = [0] * len(top.draft.pieces)
        for row in top.rows.rows() if isinstance(top.rows, InRows) else ():
            for part in row.parts:
                if isinstance(part, int):
                    self.rings[part - 1] = row.ring
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
                    self.joints[step.step].row.way,
                    longest,
                    unit.finished,
                    unit.unfinished,
                    tuple(part.turned for part in lying),
                )
            )
        return rows[::-1]

    def _row(self, step: Step, pieces: Pieces) -> tuple[list[_RowPart], tuple[Join, ...]]:
        """The parts of a row in order, and the joins that make it; from its last step."""
        heading = _heading(step)
        found: list[_RowPart] = []
        joins: list[Join] = []
        stack = [(step, pieces)]
        while stack:
            each, its = stack.pop()
            joins.append(Join(each.step, its))
            first = len(self.pieces_of(each.parts[0])) if each.parts[0] in self.number else 1
            onward = self.joints[each.step].onward
            for name, own, goes_on in zip(each.parts, (its[:first], its[first:]), onward, strict=True):
                along = self._along(own, heading)
                if goes_on:
                    stack.append((self.assembly.steps[self.number[name] - 1], own))
                elif name in self.number:
                    found.append(_RowPart(along, name, own, self.turned[name, own[0]]))
                else:
                    found.append(_RowPart(along, str(own[0]), own, 0.0))
        if self.joints[step.step].row.way == "mitred":
            found = [part._replace(turned=0.0) for part in reversed(found)]
            found.sort(key=lambda part: self.ring(part.pieces))
        else:
            found.sort(key=lambda part: part.along)
        return found, tuple(sorted(joins, key=lambda join: join.step))

    def _along(self, pieces: Pieces, heading: float) -> float:
        """How far along a row of such seams pieces lie: rightward, or downward."""
        middles = [place_of(self.top.pieces[number - 1].inside) for number in pieces]
        along = sum(middles) / len(middles) / rect(1, heading)
        return -along.imag if heading > EVEN else along.imag


def _heading(step: Step) -> float:
    """Radians of a step's seam, 0 level to just under pi."""
    turned = phase(stroke_of(step.seam[0]).direction(0)) % pi
    return 0.0 if pi - turned < EVEN else turned
