"""The fewest set-in seams of a small block, found by trying every way of joining its pieces. Inches."""

from __future__ import annotations

from functools import cache
from math import inf

from piecewright.drafting.model import Draft

Spot = tuple[float, float]
Line = tuple[Spot, Spot]


def fewest_set_in(draft: Draft) -> int:
    """The fewest corners at which a last seam has to turn, over all orders of joining two by two."""
    shared: dict[tuple[int, int], list[Line]] = {}
    for piece in draft.pieces:
        for side in piece.ring:
            for part in side.parts:
                assert part.edge.arc is None, "only straight seams are tried"
                if part.neighbour is not None and part.neighbour > piece.number:
                    line = (_spot(part.edge.start), _spot(part.edge.end))
                    shared.setdefault((piece.number, part.neighbour), []).append(line)

    @cache
    def cost(one: frozenset[int], two: frozenset[int]) -> float:
        lines = [line for a in one for b in two for line in shared.get((min(a, b), max(a, b)), [])]
        return _turns(lines)

    @cache
    def least(parts: frozenset[frozenset[int]]) -> float:
        if len(parts) == 1:
            return 0
        ordered = sorted(parts, key=min)
        return min(
            (
                cost(one, two) + least(parts - {one, two} | {one | two})
                for at, one in enumerate(ordered)
                for two in ordered[at + 1 :]
                if cost(one, two) < inf
            ),
            default=inf,
        )

    return int(least(frozenset(frozenset([piece.number]) for piece in draft.pieces)))


def _spot(point) -> Spot:
    return round(float(point.x), 5), round(float(point.y), 5)


def _turns(lines: list[Line]) -> float:
    """Corners along lines that make one path; infinite where they make none, or more than one."""
    if not lines:
        return inf
    meets: dict[Spot, list[Line]] = {}
    for line in lines:
        for end in line:
            meets.setdefault(end, []).append(line)
    ends = [spot for spot, there in meets.items() if len(there) == 1]
    if len(ends) != 2 or any(len(there) > 2 for there in meets.values()) or len(meets) != len(lines) + 1:
        return inf
    return sum(_bend(there[0], there[1]) for there in meets.values() if len(there) == 2)


def _bend(one: Line, two: Line) -> bool:
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = two
    cross = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    return abs(cross) > 1e-4
