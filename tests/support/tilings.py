"""Squares parted into rectangles: every tiling of a small grid, and every layout of generic seams."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from piecewright.drafting.model import Draft

from .check import draft_block

Cells = tuple[tuple[int, ...], ...]
Line = tuple[int, int, int, int]  # x, y, x, y in grid steps


def tilings(across: int, down: int) -> Iterator[Cells]:
    """Every tiling of the grid by rectangles, each cell with its rectangle's number."""

    def fill(cells: dict[tuple[int, int], int], number: int) -> Iterator[Cells]:
        free = next(((x, y) for y in range(down) for x in range(across) if (x, y) not in cells), None)
        if free is None:
            yield tuple(tuple(cells[x, y] for x in range(across)) for y in range(down))
            return
        left, top = free
        for right, bottom in product(range(left, across), range(top, down)):
            box = [(x, y) for x in range(left, right + 1) for y in range(top, bottom + 1)]
            if not any(cell in cells for cell in box):
                yield from fill({**cells, **dict.fromkeys(box, number)}, number + 1)

    yield from fill({}, 1)


def lines_of(cells: Cells) -> list[Line]:
    """The seams between a tiling's rectangles, each as long as it runs."""
    down, across = len(cells), len(cells[0])
    lines: list[Line] = []
    for y in range(1, down):
        lines += [(a, y, b, y) for a, b in _runs([cells[y - 1][x] != cells[y][x] for x in range(across)])]
    for x in range(1, across):
        lines += [(x, a, x, b) for a, b in _runs([cells[y][x - 1] != cells[y][x] for y in range(down)])]
    return lines


def _runs(drawn: list[bool]) -> Iterator[tuple[int, int]]:
    start = None
    for at, each in enumerate([*drawn, False]):
        if each and start is None:
            start = at
        elif not each and start is not None:
            yield start, at
            start = None


def generic_layouts(seams: int) -> list[tuple[Line, ...]]:
    """Every way of laying one level or upright seam through each of the points (1, 1), (2, 2), ... so that
    each ends on the outside or within another, and none cross. There are as many as Baxter numbers say."""
    size = seams + 1
    found = []
    for upright in product([False, True], repeat=seams):
        reaches = []
        for at in range(1, size):
            across = [0, *(other for other in range(1, size) if upright[other - 1] != upright[at - 1]), size]
            reaches.append([(a, b) for a in across if a < at for b in across if b > at])
        for reach in product(*reaches):
            lines = tuple(
                (at, a, at, b) if turned else (a, at, b, at)
                for at, (a, b), turned in zip(range(1, size), reach, upright, strict=True)
            )
            if _sound(lines, size):
                found.append(lines)
    return found


def _sound(lines: tuple[Line, ...], size: int) -> bool:
    for x1, y1, x2, y2 in lines:
        for x, y in ((x1, y1), (x2, y2)):
            inside = 0 < (y if x1 == x2 else x) < size
            if inside and not any(
                _within(line, x, y) for line in lines if (line[0] == line[2]) != (x1 == x2)
            ):
                return False
    return not any(_crosses(one, two) for one in lines for two in lines)


def _within(line: Line, x: int, y: int) -> bool:
    x1, y1, x2, y2 = line
    return (x1 == x and y1 < y < y2) if x1 == x2 else (y1 == y and x1 < x < x2)


def _crosses(one: Line, two: Line) -> bool:
    return one[0] == one[2] and two[1] == two[3] and two[0] < one[0] < two[2] and one[1] < two[1] < one[3]


def draft_lines(across: int, down: int, lines: list[Line] | tuple[Line, ...]) -> Draft:
    """The block with those seams, an inch a step."""
    seams = "\n".join(f"seam ({a}, {b}) -- ({c}, {d})" for a, b, c, d in lines)
    outcome = draft_block(f"finished {across}in x {down}in\ngrid {across} x {down}\n{seams}")
    assert outcome.value is not None, [each.message for each in outcome.diagnostics]
    return outcome.value[0]


def sewn_by_trying(cells: Cells) -> bool:
    """Whether a tiling sews with straight seams, found by trying every join of neighbouring rectangles."""
    down, across = len(cells), len(cells[0])
    start = frozenset(
        frozenset((x, y) for y in range(down) for x in range(across) if cells[y][x] == number)
        for number in {each for row in cells for each in row}
    )
    tried: set[frozenset] = set()
    stack = [start]
    while stack:
        parts = stack.pop()
        if len(parts) == 1:
            return True
        if parts in tried:
            continue
        tried.add(parts)
        ordered = sorted(parts, key=min)
        for at, one in enumerate(ordered):
            stack += [parts - {one, two} | {one | two} for two in ordered[at + 1 :] if _one_line(one, two)]
    return False


def _one_line(one: frozenset, two: frozenset) -> bool:
    """Whether two sets of cells meet along one unbroken straight line, and nowhere else."""
    upright = {(max(x, a), y) for x, y in one for a, b in two if b == y and abs(a - x) == 1}
    level = {(max(y, b), x) for x, y in one for a, b in two if a == x and abs(b - y) == 1}
    meetings = [each for each in (upright, level) if each]
    if len(meetings) != 1 or len({line for line, _ in meetings[0]}) != 1:
        return False
    along = sorted(at for _, at in meetings[0])
    return along[-1] - along[0] == len(along) - 1
