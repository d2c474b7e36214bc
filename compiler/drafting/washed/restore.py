"""A washed block to the block as it was drafted: read, fit, snap, until nothing moves any more."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from math import gcd, lcm
from typing import Final

from ...language import tree
from ...words.messages import washed as complain
from ..context import Bench
from ..frame import Frame
from ..ground import lay_ground, once
from .amiss import all_said
from .fractions import as_written, ruler_for, simplest
from .grids import Side, likely_grids
from .model import GridGuess, Measured, Reading, Ruler, Shrinkage, Snapped
from .readings import Drafted, read_block, with_drafted

READ_TO: Final = Fraction(1, 16)
"""Inches: what an old quilt is read to where the file does not say (the finest mark of a tape measure)."""

READ_TO_MOST: Final = Fraction(1, 2)
"""Inches. A block read more coarsely than this can be drafted in any way one likes."""

CHANGE_MOST: Final = 0.2
"""Washing never changes a block by a fifth: cotton may shrink by ten per cent or more (Collins 1939)."""

USUAL: Final = Fraction(98, 100)
"""A scale between what most old cottons have kept, for guessing at a size."""

ROUNDS: Final = 6
"""Readings start where other readings end, and so on: each round settles one more of a chain."""


def restore(block: tree.Block, bench: Bench) -> Measured | None:
    """The block as drafted; None where it is not a washed block, or where a complaint was made."""
    washed = once(block.body, tree.Washed, "washed", bench)
    if washed is None or bench.failed:
        return None
    if not _says_size(block):
        bench.say(complain.size_before_missing(washed.span, _likely_size(washed)))
        return None
    frame = lay_ground(block, Bench(bench.frame))
    if frame is None:
        return None
    error = washed.read_to.inches if washed.read_to else READ_TO
    if washed.read_to and error > READ_TO_MOST:
        bench.say(complain.read_too_coarsely(washed.read_to.span, error, READ_TO_MOST))
        return None
    sizes = ((washed.width, frame.width), (washed.height or washed.width, frame.height))
    for size, drafted in sizes:
        if abs(float(size.inches) / float(drafted) - 1) > CHANGE_MOST:
            bench.say(complain.washed_too_far(size.span, size.inches, drafted))
            return None
    measured = _settle(block, washed, frame, error)
    for each in all_said(measured):
        bench.say(each)
    return measured


def _likely_size(washed: tree.Washed) -> tuple[int, int]:
    """Width and height in whole inches that the block may have been made to."""
    width, height = (
        max(round(each.inches / USUAL), 1) for each in (washed.width, washed.height or washed.width)
    )
    return width, height


def _says_size(block: tree.Block) -> bool:
    """Whether the block says how large it was made, apart from anything that was read."""
    return any(
        isinstance(each, tree.Finished | tree.OutlineRegular)
        or (isinstance(each, tree.Grid) and each.cell_width is not None)
        for each in block.body
    )


def _settle(block: tree.Block, washed: tree.Washed, frame: Frame, error: Fraction) -> Measured:
    """Reads and fits until the drafted lengths no longer change."""
    across, down = _sides(block, washed, frame)
    drafted: Drafted = {}
    ruler = ruler_for(frame.width)
    readings = read_block(block, frame, _by_size(block, frame, across, down))
    for _ in range(ROUNDS):
        grids = likely_grids(readings, across, down, float(error))
        snapped = _snap(readings, grids[0], float(error), max(float(frame.width), float(frame.height)), ruler)
        settled = {each.reading.phrase.span: _as_phrase(each) for each in snapped}
        if settled == drafted:
            break
        drafted = settled
        again = read_block(block, frame, drafted)
        if [each.origin for each in again] == [each.origin for each in readings]:
            readings = again
            break
        readings = again
    body = tuple(each for each in with_drafted(block.body, drafted) if not isinstance(each, tree.Washed))
    return Measured(
        washed,
        replace(block, body=body),
        frame.width,
        frame.height,
        error,
        ruler,
        grids[0].shrinkage,
        tuple(snapped),
        grids,
    )


def _sides(block: tree.Block, washed: tree.Washed, frame: Frame) -> tuple[Side, Side]:
    grid = next((each for each in block.body if isinstance(each, tree.Grid)), None)
    height = washed.height or washed.width
    return (
        Side(frame.width, washed.width.inches, _parts(grid.across) if grid else None),
        Side(frame.height, height.inches, _parts(grid.down) if grid else None),
    )


def _parts(divisions: tree.Divisions) -> int:
    """The equal parts in which all lines of a written grid lie."""
    whole = lcm(*(part.denominator for part in divisions.parts))
    parts = [int(part * whole) for part in divisions.parts]
    return sum(parts) // gcd(*parts)


def _by_size(block: tree.Block, frame: Frame, across: Side, down: Side) -> Drafted:
    """A first guess at every drafted length, by the washed size alone."""
    scales = [float(side.washed) / float(side.drafted) for side in (across, down)]
    shrinkage = Shrinkage(scales[0], scales[1])
    return {
        each.phrase.span: Fraction(float(each.length) / _scale(each, shrinkage))
        for each in read_block(block, frame, {})
    }


def _scale(reading: Reading, shrinkage: Shrinkage) -> float:
    """The scale along a reading; where it lies is not known, the mean of both."""
    if reading.origin is None:
        return (shrinkage.across + shrinkage.down) / 2
    return shrinkage.along(reading.step)


def _snap(
    readings: Sequence[Reading], grid: GridGuess, error: float, side: float, ruler: Ruler
) -> list[Snapped]:
    """Every reading with its drafted length: on the grid where it lies there, else the simplest that fits."""
    snapped = []
    for reading, length in zip(readings, grid.lengths, strict=True):
        scale = _scale(reading, grid.shrinkage)
        on_grid = length is not None
        if length is None:
            unwashed = float(reading.length) / scale
            drafted, share = simplest(reading, unwashed, error * (1 + unwashed / (2 * side)), ruler)
        else:
            drafted, share = as_written(reading, length, ruler)
        misfit = float(reading.length) - float(drafted) * scale
        snapped.append(Snapped(reading, drafted, share, misfit, on_grid))
    return snapped


def _as_phrase(snapped: Snapped) -> Fraction | tree.ShareAlong:
    phrase = snapped.reading.phrase
    if snapped.share is not None and isinstance(phrase, tree.LengthAlong):
        return tree.ShareAlong(
            share=snapped.share, origin=phrase.origin, toward=phrase.toward, span=phrase.span
        )
    return Fraction(snapped.length)
