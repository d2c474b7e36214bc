"""What must always hold of a draft, and what is worth a remark.

`check_refit` asserts: pieces that do not tile the outline are a mistake in the compiler, not in the file.
"""

from __future__ import annotations

from collections.abc import Sequence

from ..diagnostics.source import Span
from ..geometry.curves import ring_area
from ..geometry.edge import Edge, Point
from ..geometry.faces import Faces
from ..geometry.motion import Transform, mirror_in, turn_about
from ..geometry.noding import Noded
from ..language import tree
from ..measure.tolerance import NEAR, SLIVER, Number
from ..words.messages import pieces as complain
from ..words.messages import units as complain_units
from .context import Bench
from .model import Piece
from .naming import FaceCloth
from .seams import DrawnLine
from .sketch import Placed

MOSTLY = 0.5
"""Share of named pieces above which an unnamed one is worth a remark."""


def check_slivers(graph: Noded, faces: Faces, lines: Sequence[DrawnLine], bench: Bench) -> None:
    """Complains of pieces nowhere as wide as SLIVER, at the last written of the seams round each. Only faces
    that are small for their border are looked at closely: a face's greatest inscribed circle is at most
    4 area / border across."""
    for face in faces.faces:
        if 4 * float(face.area) / face.polygon.length >= 2 * float(SLIVER):
            continue
        if face.polygon.buffer(-float(SLIVER) / 2 + NEAR).is_empty:
            width = 2 * float(face.area) / face.polygon.length
            bench.say(complain.sliver(_last_written(graph, face.ring, lines), face.inside, width))


def check_holes(graph: Noded, faces: Faces, lines: Sequence[DrawnLine], bench: Bench) -> None:
    """Notes pieces with holes, at the seams that make the first of the holes."""
    for face in faces.faces:
        if face.holes:
            bench.say(complain.piece_with_hole(_last_written(graph, face.holes[0], lines), face.inside))


def _last_written(graph: Noded, ring: Sequence[int], lines: Sequence[DrawnLine]) -> Span:
    """The words that drew a ring: those of its seams that stand last, else the title's, which drew the
    outline."""
    drawn = [lines[stroke] for half in ring for stroke in graph.links[half // 2].strokes]
    return max(drawn, key=lambda line: (not line.outline, line.origin.start)).origin


def check_names(faces: Faces, cloth: Sequence[FaceCloth], title: tree.Text, bench: Bench) -> None:
    """Notes faces that nothing names when most have a name."""
    unnamed = [face.inside for face, each in zip(faces.faces, cloth, strict=True) if each.origin is None]
    if unnamed and len(unnamed) < MOSTLY * len(cloth):
        places = sorted(unnamed, key=lambda p: (round(float(p.y), 3), round(float(p.x), 3)))
        bench.say(complain.faces_unnamed(title.span, places, len(unnamed)))


def check_refit(pieces: Sequence[Piece], outline: tuple[Edge, ...]) -> None:
    """Asserts that the finished pieces fill the outline exactly, and that each seam's two sides are one
    length."""
    whole = ring_area(outline)
    total: Number = 0
    for piece in pieces:
        total = total + piece.area
    slack = NEAR * max(1.0, sum(edge.length for edge in outline))
    assert abs(float(total - whole)) <= slack, (
        f"pieces come to {float(total)}, the outline to {float(whole)} sq in"
    )
    seams: dict[tuple[int, int], float] = {}
    outside = 0.0
    for piece in pieces:
        for ring in (piece.ring, *piece.holes):
            for side in ring:
                for part in side.parts:
                    if part.neighbour is None:
                        outside += part.edge.length
                        continue
                    key = (piece.number, part.neighbour)
                    seams[key] = seams.get(key, 0.0) + part.edge.length
    for (one, other), length in seams.items():
        back = seams.get((other, one), 0.0)
        assert abs(length - back) <= NEAR, (
            f"seam {one}-{other} is {length}in on one side, {back}in on the other"
        )
    around = sum(edge.length for edge in outline)
    assert abs(outside - around) <= slack, f"outer edges come to {outside}in, the outline to {around}in"


def check_symmetry(
    faces: Faces, cloth: Sequence[FaceCloth], placed: Sequence[Placed], owners: Sequence[int], bench: Bench
) -> None:
    """Notes the units that alone keep a block from looking the same turned or mirrored.

    By quarter turns a place has three others to agree with, so one that differs from three is named. By a
    mirror it has one, so a single pair that differs is named as a pair.
    """
    units = [number for number, each in enumerate(placed) if each.unit is not None]
    frame = bench.frame
    if len(units) < 4 or not frame.is_box or abs(float(frame.width - frame.height)) > NEAR:
        return
    look = _looks(faces, cloth, placed, owners)
    center = frame.predefined["center"]
    quarters = [turn_about(center, 90 * k) for k in range(4)]
    odd = _odd_by_turns(units, placed, look, quarters)
    if odd == []:
        return
    if odd is not None and len(odd) <= max(1, len(units) // 8):
        bench.say(
            complain_units.odd_unit(placed[odd[0]].origin, [_called(placed[each]) for each in odd], "turned")
        )
        return
    mirrors: tuple[tuple[tuple[Point, Point], complain_units.Symmetry], ...] = (
        ((frame.predefined["top"], frame.predefined["bottom"]), "mirrored-across"),
        ((frame.predefined["left"], frame.predefined["right"]), "mirrored-down"),
    )
    for line, symmetry in mirrors:
        pairs = _odd_pairs(units, placed, look, mirror_in(*line))
        if pairs is not None and len(pairs) == 1 and len(units) >= 6:
            bench.say(
                complain_units.odd_unit(
                    placed[pairs[0][0]].origin, [_called(placed[each]) for each in pairs[0]], symmetry
                )
            )
            return


def _called(placed: Placed) -> tuple[str, Point]:
    assert placed.unit is not None
    return placed.unit.use.alias.text, _middle(placed)


Look = frozenset[tuple[int, int, str]]


def _looks(
    faces: Faces, cloth: Sequence[FaceCloth], placed: Sequence[Placed], owners: Sequence[int]
) -> list[list[tuple[Point, str]]]:
    """For each unit, its faces' middles and fabrics."""
    look: list[list[tuple[Point, str]]] = [[] for _ in placed]
    for number, owner in enumerate(owners):
        if owner >= 0:
            look[owner].append((faces.faces[number].inside, cloth[number].fabric))
    return look


def _seen(look: list[tuple[Point, str]], carry: Transform) -> Look:
    """A unit's look after it is carried elsewhere, on a grid coarse enough for floats."""
    moved = [(carry(p), fabric) for p, fabric in look]
    return frozenset((round(float(p.x) * 100), round(float(p.y) * 100), fabric) for p, fabric in moved)


def _orbit(
    unit: int, placed: Sequence[Placed], by_middle: dict[tuple[int, int], int], carries: Sequence[Transform]
) -> list[int] | None:
    middle = _middle(placed[unit])
    orbit = []
    for carry in carries:
        at = carry(middle)
        other = by_middle.get((round(float(at.x) * 100), round(float(at.y) * 100)))
        if other is None:
            return None
        orbit.append(other)
    return orbit


def _middle(placed: Placed) -> Point:
    left, top, right, bottom = placed.box
    return Point((left + right) / 2, (top + bottom) / 2)


def _index(units: Sequence[int], placed: Sequence[Placed]) -> dict[tuple[int, int], int]:
    return {
        (round(float(m.x) * 100), round(float(m.y) * 100)): unit
        for unit in units
        for m in (_middle(placed[unit]),)
    }


def _odd_by_turns(
    units: Sequence[int],
    placed: Sequence[Placed],
    look: list[list[tuple[Point, str]]],
    quarters: Sequence[Transform],
) -> list[int] | None:
    """Units that differ where three others agree; None where the places themselves are not alike or the
    block is not nearly the same by quarter turns."""
    index = _index(units, placed)
    odd: list[int] = []
    for unit in units:
        orbit = _orbit(unit, placed, index, quarters)
        if orbit is None:
            return None
        if len(set(orbit)) < 4 or unit != min(orbit):
            continue
        seen = [_seen(look[other], quarters[(4 - k) % 4]) for k, other in enumerate(orbit)]
        counts = [seen.count(each) for each in seen]
        if max(counts) == 3:
            odd.append(orbit[counts.index(1)])
        elif max(counts) < 3:
            odd += orbit
    return odd


def _odd_pairs(
    units: Sequence[int], placed: Sequence[Placed], look: list[list[tuple[Point, str]]], mirror: Transform
) -> list[tuple[int, int]] | None:
    index = _index(units, placed)
    pairs: list[tuple[int, int]] = []
    for unit in units:
        orbit = _orbit(unit, placed, index, [mirror])
        if orbit is None:
            return None
        other = orbit[0]
        if unit <= other and _seen(look[unit], mirror) != _seen(look[other], Transform()):
            pairs.append((unit, other))
    return pairs
