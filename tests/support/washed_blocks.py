"""Random grid blocks, washed: drafted on paper, shrunk, leaning, and read again with a tape measure."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import hypot
from random import Random
from typing import Final

from piecewright.diagnostics.source import Source
from piecewright.drafting.context import Bench
from piecewright.drafting.frame import Frame
from piecewright.drafting.washed.model import GridGuess, Measured
from piecewright.drafting.washed.restore import restore
from piecewright.language.parser import parse
from piecewright.words.numbers import exact_text

MARK: Final = Fraction(1, 16)
"""Inches: what the readings are read to; each is off by up to one mark."""

SHRUNK_MOST: Final = 0.06
LEAN_MOST: Final = 0.02

SIZES: Final = (6, 7, 8, 9, 10, 12, 14, 15, 16)
PARTS: Final = (2, 3, 4, 5, 6, 7, 8, 9, 10, 12)
CELL_LEAST: Final = Fraction(3, 4)  # inches: patches smaller than this are rare in old quilts

GOES_ON: Final = 0.5  # of the readings along a line that was read before, those that go on from there

Walk = tuple[tuple[int, int], tuple[int, int]]
"""The corner that is read from, and the corner that is read towards."""

CORNERS: Final = {"top-left": (0, 0), "top-right": (1, 0), "bottom-left": (0, 1), "bottom-right": (1, 1)}


@dataclass(frozen=True, slots=True)
class WashedBlock:
    """A washed block's text, and the lengths that it was drafted with."""

    text: str
    drafted: tuple[float, ...]
    parts: tuple[int, int]


def washed_block(chance: Random) -> WashedBlock:
    """A block on a random grid, with 5 to 10 of its places read from its corners, or from one another."""
    width = Fraction(chance.choice(SIZES))
    across = chance.choice([parts for parts in PARTS if width / parts >= CELL_LEAST])
    down = (
        across
        if chance.random() < 0.8
        else chance.choice([parts for parts in PARTS if 3 <= width / across * parts <= 18])
    )
    height = width / across * down
    scales = (1 - chance.uniform(0, SHRUNK_MOST), 1 - chance.uniform(0, SHRUNK_MOST))
    lean = chance.uniform(-LEAN_MOST, LEAN_MOST)

    def read(right: Fraction, below: Fraction) -> Fraction:
        length = hypot(scales[0] * float(right) + lean * float(below), scales[1] * float(below))
        marks = [
            mark
            for mark in range(int(length * 16) - 2, int(length * 16) + 3)
            if abs(mark / 16 - length) <= float(MARK)
        ]
        return chance.choice(marks) * MARK

    lines, drafted = [], []
    last: dict[Walk, tuple[str, int]] = {}  # the point read last along each walk, and its grid line
    for number in range(chance.randint(5, 10)):
        start, end = walk = _walk(chance)
        step = (end[0] - start[0], end[1] - start[1])
        parts = across if step[0] else down
        origin, done = last[walk] if walk in last and chance.random() < GOES_ON else (_name(start), 0)
        line = chance.randint(done + 1, parts - 1) if done < parts - 1 else 0
        if not line:
            origin, done, line = _name(start), 0, chance.randint(1, parts - 1)
        share = Fraction(line - done, parts)
        right, below = share * width * step[0], share * height * step[1]
        drafted.append(hypot(float(right), float(below)))
        way = f"from {origin} to {_name(end)}"
        lines.append(f"  point p{number} = {exact_text(read(right, below))}in {way}")
        last[walk] = (f"p{number}", line)
    washed = [exact_text(read(*side)) for side in ((width, Fraction(0)), (Fraction(0), height))]
    text = "\n".join(
        (
            "edition 1",
            'block "Old" {',
            f"  finished {exact_text(width)}in x {exact_text(height)}in",
            f"  washed {washed[0]}in x {washed[1]}in read to 1/16in",
            *lines,
            "}\n",
        )
    )
    return WashedBlock(text, tuple(drafted), (across, down))


def _walk(chance: Random) -> Walk:
    """A corner, and the corner towards which is read: beside it, or one time in five across from it."""
    start = chance.choice(list(CORNERS.values()))
    if chance.random() < 0.2:
        return start, (1 - start[0], 1 - start[1])
    if chance.random() < 0.5:
        return start, (1 - start[0], start[1])
    return start, (start[0], 1 - start[1])


def _name(corner: tuple[int, int]) -> str:
    return next(name for name, at in CORNERS.items() if at == corner)


def measure(text: str) -> Measured:
    """The one washed block of a text, measured."""
    parsed = parse(Source("old.block", text))
    assert parsed.value is not None and not parsed.failed, parsed.diagnostics
    bench = Bench(Frame(*[Fraction(0)] * 2, (Fraction(0),) * 2, (Fraction(0),) * 2))
    measured = restore(parsed.value.blocks[0], bench)
    assert measured is not None, bench.diagnostics
    return measured


def place_of_truth(block: WashedBlock, grids: tuple[GridGuess, ...]) -> int | None:
    """Where among the grids offered the one stands that the block was drafted by; None where it does not."""
    for place, grid in enumerate(grids):
        if all(
            found is not None and abs(float(found) - true) < 1e-6
            for found, true in zip(grid.lengths, block.drafted, strict=True)
        ):
            return place
    return None
