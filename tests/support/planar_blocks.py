"""Blocks that lie flat and sew as badly as can be: wheels of partial seams, pinwheels in pinwheels, patches
of any outline, windows and what hangs in them.

Every one is a text in the language. Some are refused with a diagnostic, as slivers are or ends that hang;
what is left must have an order of sewing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import combinations
from math import cos, pi, sin
from random import Random
from typing import Final

from scipy.spatial import Delaunay

Cell = tuple[int, int]
Box = tuple[int, int, int, int]  # left, top, right, bottom

SIDES: Final = (3, 4, 5, 6, 8, 12)
ANGLES: Final = (0, 10, 20, 30, 45, 75, 140, 200)
SHARES: Final = ("1/4", "1/3", "2/5", "1/2", "3/5", "2/3", "3/4")


def planar_block(seed: int) -> str:
    """The text of one block."""
    chance = Random(seed)
    make = chance.choice(KINDS)
    body = "".join(f"  {line}\n" for line in make(chance))
    return f'edition 1\nblock "Flat {seed}" version 1 {{\n{body}}}\n'


# ---- about a centre ------------------------------------------------------------------------------


def wheel(chance: Random) -> list[str]:
    """Seams that lap round a centre: each copy starts or ends on the next one's."""
    sides = chance.choice(SIDES)
    corners = [f"corner{number}" for number in range(1, sides + 1)]
    head = f"outline regular {sides} side {chance.choice((5, 6, 7))}in"
    if chance.random() < 0.2:
        sides, head, corners = 4, "finished 12in", ["top-left", "top-right", "bottom-right", "bottom-left"]
    copies = chance.choice([each for each in (2, 3, 4, 6, 8, 12) if sides % each == 0] or [sides])
    names = ("inner", "fork", "reach", "crook")[: chance.randint(1, 4)]
    points = [f"point {name} = {_spoke(chance, corners)}" for name in names]
    return [head, *points, f"turn {copies} about center {{ {'  '.join(_laps(chance, names, corners))} }}"]


def _spoke(chance: Random, corners: list[str]) -> str:
    if chance.random() < 0.3:
        return f"{chance.choice((1, 2, 3))}in from center at {chance.choice(ANGLES)}deg"
    return f"{chance.choice(SHARES)} from center to {chance.choice(corners)}"


def _laps(chance: Random, names: tuple[str, ...], corners: list[str]) -> Iterator[str]:
    """One to three seams of a copy, each of which begins and ends on the outline or at a place of another."""
    known = [f"{which}{names[0]}" for which in ("", "next ", "previous ")]
    first = chance.choice((" -- ", " -- ", f" {chance.choice(('--', '~~'))} "))
    yield f"seam {known[1]}{first}{names[0]}" + (" around center" if "~~" in first else "")
    loose = list(names[1:])
    for _ in range(chance.randint(1, 3)):
        path = [chance.choice(known)]
        for name in loose[: chance.randint(0, 2)]:
            loose.remove(name)
            path.append(f"{chance.choice(('', '', 'next ', 'previous '))}{name}")
            known += [f"{which}{name}" for which in ("", "next ", "previous ")]
        ends = [*(each for each in known if each not in path), chance.choice(corners), "center"]
        path.append("outline" if len(path) > 1 and chance.random() < 0.25 else chance.choice(ends))
        yield f"seam {' -- '.join(path)}"


def rounds(chance: Random) -> list[str]:
    """Rings of closed lines about the centre with spokes that reach from one to another, bent and lapped."""
    count = chance.choice((3, 4, 5, 6, 8))
    lines = ["finished 16in"]
    radii = sorted(chance.sample(range(2, 8), chance.randint(2, 4)))
    turns = [chance.choice((0, 0, 11, 22, 30)) for _ in radii]
    inside = []
    for number, (radius, turn) in enumerate(zip(radii, turns, strict=True)):
        lines.append(f"point ring{number} = {radius}in from center at {turn}deg")
        if chance.random() < 0.25:
            lines.append(f"seam circle around center radius {radius}in")
        else:
            inside.append(f"seam ring{number} -- next ring{number}")
    for number in range(len(radii) - 1):
        if chance.random() < 0.8:
            inside.append(f"seam ring{number} -- {chance.choice(('', 'next ', 'previous '))}ring{number + 1}")
    if chance.random() < 0.6:
        inside.append(
            f"seam ring{len(radii) - 1} -- outline"
            if len(radii) == 1
            else f"seam ring{len(radii) - 2} -- ring{len(radii) - 1} -- outline"
        )
    if chance.random() < 0.4:
        inside.append(f"seam center -- {chance.choice(('', 'next '))}ring0")
    return [*lines, f"turn {count} about center {{ {'  '.join(inside)} }}"]


# ---- rectangles ----------------------------------------------------------------------------------


def pinwheels(chance: Random) -> list[str]:
    """Pinwheels of four strips round a middle, in their own strips and middles again."""
    size = chance.choice((16, 24, 32))
    seams: list[str] = []
    stack: list[Box] = [(0, 0, size, size)]
    while stack:
        left, top, right, bottom = box = stack.pop()
        wide, high = right - left, bottom - top
        if min(wide, high) < 5 or (len(seams) > 3 and chance.random() < 0.25):
            continue
        stack += _spun(chance, box, seams) if chance.random() < 0.8 else _cut(chance, box, seams)
    return [f"finished {size}in", f"grid {size} x {size}", *seams]


def _spun(chance: Random, box: Box, seams: list[str]) -> list[Box]:
    left, top, right, bottom = box
    x1 = chance.randint(left + 1, right - 3)
    x2 = chance.randint(x1 + 1, right - 1)
    y1 = chance.randint(top + 1, bottom - 3)
    y2 = chance.randint(y1 + 1, bottom - 1)
    if chance.random() < 0.5:
        seams += [
            f"seam ({left}, {y1}) -- ({x2}, {y1})",
            f"seam ({x2}, {top}) -- ({x2}, {y2})",
            f"seam ({right}, {y2}) -- ({x1}, {y2})",
            f"seam ({x1}, {bottom}) -- ({x1}, {y1})",
        ]
        return [
            (left, top, x2, y1),
            (x2, top, right, y2),
            (x1, y2, right, bottom),
            (left, y1, x1, bottom),
            (x1, y1, x2, y2),
        ]
    seams += [
        f"seam ({x1}, {top}) -- ({x1}, {y2})",
        f"seam ({left}, {y2}) -- ({x2}, {y2})",
        f"seam ({x2}, {bottom}) -- ({x2}, {y1})",
        f"seam ({right}, {y1}) -- ({x1}, {y1})",
    ]
    return [
        (left, top, x1, y2),
        (left, y2, x2, bottom),
        (x2, y1, right, bottom),
        (x1, top, right, y1),
        (x1, y1, x2, y2),
    ]


def _cut(chance: Random, box: Box, seams: list[str]) -> list[Box]:
    left, top, right, bottom = box
    if chance.random() < 0.5:
        x = chance.randint(left + 1, right - 1)
        seams.append(f"seam ({x}, {top}) -- ({x}, {bottom})")
        return [(left, top, x, bottom), (x, top, right, bottom)]
    y = chance.randint(top + 1, bottom - 1)
    seams.append(f"seam ({left}, {y}) -- ({right}, {y})")
    return [(left, top, right, y), (left, y, right, bottom)]


# ---- any outline ---------------------------------------------------------------------------------


def cells(chance: Random) -> list[str]:
    """A grid whose cells are joined at random to patches of any outline, windows and rings among them."""
    most = chance.choice((4, 6, 9, 9, 14))
    across, down = chance.randint(3, most), chance.randint(3, most)
    every = [(x, y) for x in range(across) for y in range(down)]
    edges = [
        ((x, y), (x + a, y + b))
        for x, y in every
        for a, b in ((1, 0), (0, 1))
        if x + a < across and y + b < down
    ]
    patch = _merged(chance, every, edges, chance.randint(2, max(3, len(every) // 2)))
    seams = []
    for one, two in edges:
        if patch[one] != patch[two]:
            (x, y), start = two, two
            end = (x, y + 1) if one[0] != two[0] else (x + 1, y)
            seams.append(f"seam ({start[0]}, {start[1]}) -- ({end[0]}, {end[1]})")
    return [f"finished {2 * across}in x {2 * down}in", f"grid {across} x {down}", *seams]


def facets(chance: Random) -> list[str]:
    """A net of triangles on scattered points, joined at random to patches of any outline."""
    size = chance.choice((12, 16, 20, 32))
    corners = [(0, 0), (size, 0), (0, size), (size, size)]
    rim = [(side, chance.randint(2, size - 2)) for side in (0, size) for _ in range(chance.randint(0, 2))]
    rim += [(chance.randint(2, size - 2), side) for side in (0, size) for _ in range(chance.randint(0, 2))]
    inner = [
        (chance.randint(2, size - 2), chance.randint(2, size - 2)) for _ in range(chance.randint(3, size))
    ]
    points = list(dict.fromkeys([*corners, *rim, *_apart(inner)]))
    triangles = [tuple(sorted(map(int, each))) for each in Delaunay(points).simplices]
    sides: dict[tuple[int, int], list[int]] = {}
    for number, each in enumerate(triangles):
        for side in combinations(each, 2):
            sides.setdefault(side, []).append(number)
    shared = [(two, side) for side, two in sides.items() if len(two) == 2]
    patch = _merged(
        chance, range(len(triangles)), [tuple(two) for two, _ in shared], chance.randint(2, len(triangles))
    )
    seams = [
        f"seam ({points[a][0]}, {points[a][1]}) -- ({points[b][0]}, {points[b][1]})"
        for (one, two), (a, b) in shared
        if patch[one] != patch[two]
    ]
    return [f"finished {size}in", f"grid {size} x {size}", *seams]


def _apart(points: list[Cell]) -> list[Cell]:
    found: list[Cell] = []
    for x, y in points:
        if all(abs(x - a) + abs(y - b) > 2 for a, b in found):
            found.append((x, y))
    return found


def _merged(chance: Random, every, edges, left: int) -> dict:
    """Which patch each thing belongs to, when things next to each other have been joined until so many are
    left."""
    patch = {each: each for each in every}

    def root(each):
        while patch[each] != each:
            each = patch[each]
        return each

    count = len(patch)
    for one, two in chance.sample(edges, len(edges)):
        if count <= left:
            break
        if root(one) != root(two):
            patch[root(one)] = root(two)
            count -= 1
    return {each: root(each) for each in patch}


# ---- windows -------------------------------------------------------------------------------------


def windows(chance: Random) -> list[str]:
    """Closed lines and circles: apart, within one another, touching in a point, crossed by seams."""
    lines = ["finished 16in", "grid 16 x 16"]
    for _ in range(chance.randint(1, 3)):
        x, y, reach = chance.randint(2, 14), chance.randint(2, 14), chance.randint(1, 7)
        reach = min(reach, x, y, 16 - x, 16 - y)
        kind = chance.random()
        if kind < 0.25:
            lines.append(f"seam circle around ({x}, {y}) radius {reach}in")
        elif kind < 0.6:
            lines.append(
                f"seam ({x}, {y - reach}) -- ({x + reach}, {y}) -- ({x}, {y + reach}) -- "
                f"({x - reach}, {y}) -- ({x}, {y - reach})"
            )
        else:
            count = chance.choice((3, 5, 6))
            around = [2 * pi * at / count for at in range(count)]
            ring = [(round(x + reach * cos(at), 1), round(y + reach * sin(at), 1)) for at in around]
            lines.append("seam " + " -- ".join(f"({a}, {b})" for a, b in (*ring, ring[0])))
    for _ in range(chance.randint(0, 3)):
        ends = chance.sample(range(1, 16), 2)
        bend = f" -- ({chance.randint(1, 15)}, {chance.randint(1, 15)})" if chance.random() < 0.5 else ""
        lines.append(
            chance.choice(
                (
                    f"seam ({ends[0]}, 0){bend} -- ({ends[1]}, 16)",
                    f"seam (0, {ends[0]}){bend} -- (16, {ends[1]})",
                    f"seam ({ends[0]}, 0){bend} -- (16, {ends[1]})",
                    f"seam ({ends[0]}, 0){bend} -- ({ends[1]}, 0)"
                    if bend
                    else f"seam (0, {ends[0]}) -- ({ends[1]}, 0)",
                )
            )
        )
    return lines


def turned_cells(chance: Random) -> list[str]:
    """Seams on grid points turned about the centre: they cross, lap and close as they please."""
    size = 12
    spots = [(x, y) for x in range(0, size + 1, 2) for y in range(0, size + 1, 2)]
    seams = []
    for _ in range(chance.randint(1, 3)):
        path = chance.sample(spots, chance.randint(2, 5))
        if chance.random() < 0.6:
            path[0] = chance.choice([(0, 2), (4, 0), (12, 8), (6, 12)])
        path.append(path[0] if chance.random() < 0.4 else chance.choice([(0, 4), (8, 0), (12, 6), (2, 12)]))
        seams.append("seam " + " -- ".join(f"({x}, {y})" for x, y in path))
    return [
        "finished 12in",
        f"grid {size} x {size}",
        f"turn {chance.choice((2, 2, 4))} about center {{ {'  '.join(seams)} }}",
    ]


KINDS: Final[tuple[Callable[[Random], list[str]], ...]] = (
    wheel,
    wheel,
    wheel,
    rounds,
    pinwheels,
    cells,
    cells,
    facets,
    facets,
    windows,
    turned_cells,
)
