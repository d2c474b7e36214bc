"""Readings to the grids they most likely lie on, the likeliest first.

Each direction is searched by itself: for every grid and every shrinkage that the washed size allows, each
reading lies on the nearest line or, at a price, on none. The best of both directions are then put together,
and slanted readings, which bear on both and on how far the block leans, decide between them.

Costs are natural logarithms of odds against: a fine grid pays for its many lines, a coarse one for its
misfits, so that each reading has its say.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import product
from math import gcd, lcm, log, pi, sqrt
from typing import TYPE_CHECKING, Any, Final

from ...measure.record import record
from ...measure.tolerance import NEAR, Number
from .model import SPREAD, GridGuess, Reading, Shrinkage
from .shrinkage import LEAN_SPREAD, Observation, fit_shrinkage

if TYPE_CHECKING:
    import numpy as np

PARTS_MOST: Final = 24
"""Parts each way of the finest grid that is tried: quarter inches of a 6in block. Finer ones fit anything."""

FINER: Final = 4
"""A written grid is ruled at least so many times finer, where it is not finer itself than PARTS_MOST."""

RARE: Final = {1: 1.0, 11: 3.0, 13: 3.0, 14: 1.0, 15: 2.0, 16: 1.0, 18: 1.5, 20: 1.5, 24: 1.5}
"""What a number of parts pays for being seldom drafted (common practice, no published source): fours, fives,
sevens, nines and their doubles are the families of blocks. Others above 12 pay `RARE_ELSE`."""

RARE_ELSE: Final = 4.0

OFF_ODDS: Final = 0.05
"""The share of readings that lie on no line of the grid: narrow strips, slips of the pencil."""

NOT_SQUARE: Final = 2.5
"""What a grid pays whose cells are not square: about one block in twelve."""

CROSSING: Final = 2.5
"""What a slanted reading pays that ends where its line crosses a grid line, and not at a grid point."""

FURTHEST: Final = (0.88, 1.06)
"""Scales that are tried although the washed size says otherwise: cotton may shrink by ten per cent or more
(Collins 1939)."""

KEPT: Final = 8
"""Grids of each direction that go on to be paired."""

ANSWERS: Final = 5
"""Grids offered."""

UNLIKELY: Final = 8.0
"""Grids that cost so much more than the best are not offered: odds of three thousand to one."""


@record
class Side:
    """One direction of the block: its drafted and its washed length, and the parts its written grid has."""

    drafted: Number
    washed: Number
    parts: int | None  # None: no grid is written


@record
class _Ruled:
    """One direction ruled in so many parts: what it costs, with which scale, and where its readings lie."""

    parts: int
    cost: float
    scale: float
    lines: tuple[int | None, ...]  # the line that each straight reading of this direction ends on


def likely_grids(
    readings: Sequence[Reading], across: Side, down: Side, error: float
) -> tuple[GridGuess, ...]:
    """The likeliest grids, the best first; each holds other places than those before it."""
    ruled = {
        axis: _rule(side, [each for each in readings if each.axis == axis and each.origin], error, axis)
        for axis, side in (("across", across), ("down", down))
    }
    slanted = [each for each in readings if each.axis == "slanted" and each.origin and each.reach]
    tried = [
        _pair(one, other, readings, slanted, across, down, error)
        for one, other in _pairs(ruled["across"], ruled["down"], bool(slanted))
    ]
    answers: dict[tuple[float | None, ...], GridGuess] = {}
    for guess in sorted(tried, key=lambda each: (each.cost, each.across, each.down)):
        places = tuple(None if length is None else round(float(length), 6) for length in guess.lengths)
        answers.setdefault(places, guess)
    first, *others = answers.values()
    best = [first, *(each for each in others if each.cost <= first.cost + UNLIKELY)][:ANSWERS]
    return tuple(_told(each, readings, across, down, error) for each in best)


def _pairs(across: list[_Ruled], down: list[_Ruled], slanted: bool) -> list[tuple[_Ruled, _Ruled]]:
    """The pairs worth trying. Where there are slanted readings they alone may tell grids apart that hold the
    same straight ones, so that those are tried too, and all of alike parts."""
    pairs = dict.fromkeys(product(_apart(across)[:KEPT], _apart(down)[:KEPT]))
    if slanted:
        pairs |= dict.fromkeys(product(across[:KEPT], down[:KEPT]))
        pairs |= dict.fromkeys(pair for pair in product(across, down) if pair[0].parts == pair[1].parts)
    return list(pairs)


def _apart(ruled: list[_Ruled]) -> list[_Ruled]:
    """Those that put a reading somewhere else than all before them; all, where nothing was read."""
    places: dict[tuple[Fraction | None, ...], _Ruled] = {}
    for each in ruled:
        places.setdefault(
            tuple(None if line is None else Fraction(line, each.parts) for line in each.lines), each
        )
    return list(places.values()) if ruled[0].lines else ruled


# ---- one direction ----------------------------------------------------------------------------------------


def _candidates(side: Side) -> list[int]:
    if side.parts is None:
        return list(range(1, PARTS_MOST + 1))
    most = max(PARTS_MOST // side.parts, FINER) if side.parts <= PARTS_MOST else 1
    return [side.parts * times for times in range(1, most + 1)]


def _rule(side: Side, readings: list[Reading], error: float, axis: str) -> list[_Ruled]:
    """The direction ruled in each number of parts, the likeliest first."""
    import numpy as np

    length, washed, spread = float(side.drafted), float(side.washed), SPREAD * error
    scales = _scales(length, washed, error)
    sized = np.minimum((washed - scales * length) ** 2 / (2 * spread**2), _off(length, spread))
    starts, steps, read = _along(readings, axis)
    rulings = []
    for parts in _candidates(side):
        cell = length / parts
        drafted, lines = _nearest_lines(starts, steps, read, scales, cell)
        off = read[None, :] - scales[:, None] * drafted
        each = np.minimum(off**2 / (2 * spread**2) + log(parts), _off(length, spread))
        totals = each.sum(axis=1) + sized
        best = int(totals.argmin())
        on = each[best] < _off(length, spread) - NEAR
        rulings.append(
            _Ruled(
                parts,
                float(totals[best]) + _rare(parts, side.parts),
                float(scales[best]),
                tuple(int(line) if lies else None for line, lies in zip(lines[best], on, strict=True)),
            )
        )
    return sorted(rulings, key=lambda each: (each.cost, each.parts))


def _scales(length: float, washed: float, error: float) -> np.ndarray[Any, Any]:
    """Scales to try: finely where the washed size has it, coarsely elsewhere."""
    import numpy as np

    middle, reach = washed / length, 1.25 * error / length
    near = np.linspace(middle - reach, middle + reach, 21)
    far = np.linspace(*FURTHEST, 46)
    return np.concatenate((near, far))


def _off(length: float, spread: float) -> float:
    """What a reading costs that lies on no line: it could be anywhere along the side."""
    return max(log(length / (spread * sqrt(2 * pi))), 0.0) - log(OFF_ODDS)


def _rare(parts: int, written: int | None) -> float:
    if written is not None:
        return log(parts / written)  # the writer's own grid first, then its halves and thirds
    return RARE.get(parts, RARE_ELSE if parts > 12 else 0.0)


def _along(readings: list[Reading], axis: str) -> tuple[np.ndarray[Any, Any], ...]:
    """Where each reading starts along its direction, which way it goes (1 or -1), and what was read."""
    import numpy as np

    at = 0 if axis == "across" else 1
    starts = [float(each.origin.y if at else each.origin.x) for each in readings if each.origin]
    steps = [1.0 if each.step[at] > 0 else -1.0 for each in readings]
    return np.array(starts), np.array(steps), np.array([float(each.length) for each in readings])


def _nearest_lines(
    starts: np.ndarray[Any, Any],
    steps: np.ndarray[Any, Any],
    read: np.ndarray[Any, Any],
    scales: np.ndarray[Any, Any],
    cell: float,
) -> tuple[np.ndarray[Any, Any], ...]:
    """For each scale and reading the drafted length to the nearest grid line, and that line's number."""
    import numpy as np

    ends = starts[None, :] + steps[None, :] * read[None, :] / scales[:, None]
    lines = np.rint(ends / cell)
    drafted = steps[None, :] * (lines * cell - starts[None, :])
    lines = np.where(drafted <= NEAR, lines + steps[None, :], lines)  # a reading has some length
    return steps[None, :] * (lines * cell - starts[None, :]), lines


# ---- both directions --------------------------------------------------------------------------------------


def _pair(
    one: _Ruled,
    other: _Ruled,
    readings: Sequence[Reading],
    slanted: list[Reading],
    across: Side,
    down: Side,
    error: float,
) -> GridGuess:
    """Both directions ruled, with the slanted readings fitted to the two."""
    cells = float(across.drafted) / one.parts, float(down.drafted) / other.parts
    square = abs(cells[0] / cells[1] - 1) < 0.01
    cost, lean, slanting = _slanted(slanted, one, other, across, down, error)
    shrinkage = Shrinkage(one.scale, other.scale, lean)
    lines = {"across": iter(one.lines), "down": iter(other.lines), "slanted": iter(slanting)}
    lengths: list[Number | None] = []
    for each in readings:
        lost = each.origin is None or (each.axis == "slanted" and not each.reach)
        end = None if lost else next(lines[each.axis])
        if each.axis == "slanted" or end is None:
            lengths.append(end)
        else:
            side, ruled = (across, one) if each.axis == "across" else (down, other)
            lengths.append(_length_to(each, int(end), side.drafted, ruled.parts))
    cost += one.cost + other.cost + (0 if square else NOT_SQUARE)
    return GridGuess(one.parts, other.parts, 0.0, 0, cost, shrinkage, tuple(lengths))


def _length_to(reading: Reading, line: int, side: Number, parts: int) -> Number:
    """The drafted length from where a straight reading starts to a line of the grid; exact where its start
    is."""
    assert reading.origin is not None
    start = reading.origin.x if reading.axis == "across" else reading.origin.y
    length = side * line / parts - start
    return max(length, -length)


def _slanted(
    readings: list[Reading], one: _Ruled, other: _Ruled, across: Side, down: Side, error: float
) -> tuple[float, float, list[float | None]]:
    """What slanted readings cost on a grid, how far the block leans by them, and their drafted lengths."""
    import numpy as np

    if not readings:
        return 0.0, 0.0, []
    spread = SPREAD * error
    leans = np.linspace(-0.025, 0.025, 21)
    total = leans**2 / (2 * LEAN_SPREAD**2)
    chosen: list[tuple[np.ndarray[Any, Any], np.ndarray[Any, Any]]] = []
    for reading in readings:
        lengths, prices = _ends(reading, one, other, across, down)
        along = np.hypot(one.scale * reading.step[0] + leans * reading.step[1], other.scale * reading.step[1])
        off = float(reading.length) - along[:, None] * lengths[None, :]
        costs = off**2 / (2 * spread**2) + prices[None, :]
        most = _off(max(float(across.drafted), float(down.drafted)), spread)
        best = costs.argmin(axis=1) if len(lengths) else np.zeros(len(leans), dtype=int)
        least = costs[np.arange(len(leans)), best] if len(lengths) else np.full(len(leans), most)
        total = total + np.minimum(least, most)
        chosen.append((np.where(least < most, best, -1), lengths))
    at = int(total.argmin())
    return (
        float(total[at]),
        float(leans[at]),
        [float(lengths[best[at]]) if best[at] >= 0 else None for best, lengths in chosen],
    )


def _ends(
    reading: Reading, one: _Ruled, other: _Ruled, across: Side, down: Side
) -> tuple[np.ndarray[Any, Any], np.ndarray[Any, Any]]:
    """Drafted lengths at which a slanted line meets the grid, and the price of each as an answer."""
    import numpy as np

    assert reading.origin is not None
    meets: dict[int, list[float]] = {}  # by millionths of an inch: the lengths that end on a line there
    for start, step, side, parts in (
        (float(reading.origin.x), reading.step[0], float(across.drafted), one.parts),
        (float(reading.origin.y), reading.step[1], float(down.drafted), other.parts),
    ):
        for line in range(parts + 1):
            length = (side * line / parts - start) / step
            if length > NEAR:
                key = round(length / NEAR)
                near = next((each for each in (key, key - 1, key + 1) if each in meets), key)
                meets.setdefault(near, []).append(length)
    price = log(max(one.parts, other.parts))
    return (
        np.array([lengths[0] for lengths in meets.values()]),
        np.array([price + (0.0 if len(lengths) == 2 else CROSSING) for lengths in meets.values()]),
    )


# ---- what is told -----------------------------------------------------------------------------------------


def _told(guess: GridGuess, readings: Sequence[Reading], across: Side, down: Side, error: float) -> GridGuess:
    """The guess with its shrinkage fitted and its misfit; its grid no finer than its places need, with square
    cells where the sides allow."""
    seen = [
        (reading, float(length))
        for reading, length in zip(readings, guess.lengths, strict=True)
        if length is not None
    ]
    fitted = fit_shrinkage(
        [
            Observation(float(across.drafted), (1.0, 0.0), float(across.washed)),
            Observation(float(down.drafted), (0.0, 1.0), float(down.washed)),
            *(Observation(length, reading.step, float(reading.length)) for reading, length in seen),
        ],
        error,
    )
    squares = [(float(reading.length) - length * fitted.along(reading.step)) ** 2 for reading, length in seen]
    misfit = sqrt(sum(squares) / len(squares)) if squares else 0.0
    columns = _parts_needed(seen, across, guess.across, 0)
    rows = _parts_needed(seen, down, guess.down, 1)
    columns, rows = _squared(columns, rows, across.drafted, down.drafted)
    return replace(
        guess,
        across=columns,
        down=rows,
        shrinkage=fitted,
        misfit=misfit,
        off=sum(each.origin is not None for each in readings) - len(seen),
    )


def _parts_needed(seen: list[tuple[Reading, float]], side: Side, parts: int, at: int) -> int:
    """The fewest parts that a side can be ruled in to hold every place found, and where readings start."""
    needed = side.parts or 1
    for reading, length in seen:
        assert reading.origin is not None
        start = float(reading.origin.y if at else reading.origin.x)
        for place, most in ((start + length * reading.step[at], parts), (start, PARTS_MOST)):
            share = Fraction(place / float(side.drafted)).limit_denominator(most)
            if abs(float(share * side.drafted) - place) <= NEAR and lcm(needed, share.denominator) <= max(
                PARTS_MOST, parts
            ):
                needed = lcm(needed, share.denominator)
    return needed


def _squared(columns: int, rows: int, width: Number, height: Number) -> tuple[int, int]:
    """The fewest columns and rows that hold these and make square cells; these where that takes too many."""
    ratio = Fraction(float(width) / float(height)).limit_denominator(PARTS_MOST)
    times = lcm(columns // gcd(columns, ratio.numerator), rows // gcd(rows, ratio.denominator))
    square = ratio.numerator * times, ratio.denominator * times
    exact = abs(float(ratio) * float(height) - float(width)) <= NEAR
    return square if exact and max(square) <= PARTS_MOST else (columns, rows)
