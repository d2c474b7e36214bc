"""What makes a block hard to sew, each cause by itself; no score without its parts."""

from __future__ import annotations

from cmath import phase
from collections.abc import Sequence
from math import degrees, pi
from typing import Final, Literal

from ..cutting.model import Template
from ..drafting.model import Draft, Piece, Side
from ..drafting.shapes import carry
from ..geometry.stroke import is_corner, ring_strokes, turn_between
from ..measure.record import record
from ..measure.tolerance import Number
from .model import Assembly
from .order.seam_graph import SeamGraph

OFF_GRAIN: Final = 1.0
"""Degrees by which an edge may lean from the straight or cross grain before it counts as bias."""

POINT: Final = 4
"""Pieces whose corners come together before matching them takes care."""


@record
class Difficulty:
    """What makes a block hard, each cause by itself."""

    pieces: int
    templates: int
    smallest_angle: float  # degrees; 180 where no piece has a corner
    bias_outside: int  # edges of the block's outside that are off the straight of grain
    set_in_seams: int
    partial_seams: int  # those of the set-in seams that are sewn straight, an earlier seam left partly open
    seams_all_round: int  # those of the set-in seams that turn no corner, as round a circle
    curved_seams: int
    points_that_meet: int  # places where the corners of four pieces or more come together
    most_at_one_point: int


Trouble = Literal[
    "pieces",
    "shapes",
    "smallest-angle",
    "bias-edges",
    "set-in-seams",
    "seams-all-round",
    "partial-seams",
    "curved-seams",
    "points-that-meet",
    "most-at-one-point",
]


@record
class Cause:
    """One thing that makes a block hard: how many there are of it; of the smallest angle its degrees."""

    what: Trouble
    number: Number


def difficulty(draft: Draft, templates: Sequence[Template], assembly: Assembly) -> Difficulty:
    """Every cause, counted."""
    meeting = _corners_together(draft)
    return Difficulty(
        pieces=len(draft.pieces),
        templates=len(templates),
        smallest_angle=_smallest_angle(draft.pieces),
        bias_outside=_bias_outside(draft, templates),
        set_in_seams=assembly.set_in_seams,
        partial_seams=assembly.partial_seams,
        seams_all_round=assembly.seams_all_round,
        curved_seams=assembly.curved_seams,
        points_that_meet=sum(count >= POINT for count in meeting),
        most_at_one_point=max(meeting, default=0),
    )


def causes(found: Difficulty) -> tuple[Cause, ...]:
    """The causes that a block has, each with its count, or its degrees."""
    every: tuple[tuple[Trouble, Number], ...] = (
        ("pieces", found.pieces),
        ("shapes", found.templates),
        ("smallest-angle", found.smallest_angle if found.smallest_angle < 180 else 0),
        ("bias-edges", found.bias_outside),
        ("set-in-seams", found.set_in_seams - found.partial_seams - found.seams_all_round),
        ("seams-all-round", found.seams_all_round),
        ("partial-seams", found.partial_seams),
        ("curved-seams", found.curved_seams),
        ("points-that-meet", found.points_that_meet),
        ("most-at-one-point", found.most_at_one_point if found.points_that_meet else 0),
    )
    return tuple(Cause(what, number) for what, number in every if number)


def _smallest_angle(pieces: Sequence[Piece]) -> float:
    """Degrees of the sharpest corner of any piece."""
    smallest = 180.0
    for piece in pieces:
        for ring in (piece.ring, *piece.holes):
            strokes = ring_strokes([side.edge for side in ring])
            if len(strokes) > 1:
                turns = [turn_between(strokes[at - 1], stroke) for at, stroke in enumerate(strokes)]
                smallest = min([smallest, *(degrees(pi - turn) for turn in turns if is_corner(turn))])
    return round(smallest, 6)


def _corners_together(draft: Draft) -> list[int]:
    """At each place inside the block, how many pieces have a corner there."""
    graph = SeamGraph(draft)
    counted: dict[int, int] = {}
    outside = {place for link in graph.links if link.left < 0 for place in (link.start, link.end)}
    for rings in graph.rings:
        for ring in rings:
            for before, half in zip((ring[-1], *ring[:-1]), ring, strict=True):
                place = graph.place_at(half)
                turned = turn_between(graph.directed(before), graph.directed(half))
                if place not in outside and is_corner(turned):
                    counted[place] = counted.get(place, 0) + 1
    return list(counted.values())


def _bias_outside(draft: Draft, templates: Sequence[Template]) -> int:
    """Outer straight edges off the grain that their pieces are cut on; pieces cut free of grain do not
    count."""
    grain = {
        piece: (template.label, arrow.heading)
        for template in templates
        for arrow in template.grain
        for piece in arrow.pieces
    }
    shapes = {shape.label: shape for shape in draft.shapes}
    found = 0
    for piece in draft.pieces:
        outer = [side for side in piece.ring if side.outside and side.edge.arc is None]
        if not outer or piece.number not in grain:
            continue
        label, heading = grain[piece.number]
        shape = shapes[label]
        member = next(each for each in shape.members if each.piece == piece.number)
        way = carry(shape, draft.pieces, member)
        found += sum(_leaning(way.direction_back(_along(side)), heading) > OFF_GRAIN for side in outer)
    return found


def _along(side: Side) -> complex:
    start, end = side.edge.start, side.edge.end
    return complex(float(end.x - start.x), float(end.y - start.y))


def _leaning(along: complex, heading: float) -> float:
    """Degrees from a direction to the nearer of straight and cross grain."""
    leaning = (degrees(phase(along)) + 90 - heading) % 90
    return min(leaning, 90 - leaning)
