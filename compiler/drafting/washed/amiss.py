"""What a measured draft shows: sizes and readings that disagree with the others, and what was changed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ...diagnostics.diagnostic import Diagnostic
from ...measure.length import change_percent
from ...measure.tolerance import near
from ...words.messages import washed as complain
from .model import Disagreement, Measured, Snapped

AMISS: Final = 2
"""Marks by which a washed size may differ from what the readings make of it: one at each end."""

AGREEING_LEAST: Final = 2
"""Readings that must lie on the grid before another can be said to disagree with them."""


def all_said(measured: Measured) -> Iterator[Diagnostic]:
    """What there is to tell of a measured draft."""
    yield from _sizes_amiss(measured)
    for each in _disagreements(measured):
        yield complain.reading_disagrees(each, measured.ruler)
    changed = tuple(each for each in measured.snapped if not near(each.reading.length, each.length))
    yield complain.washed_drafted(
        measured.washed.span, measured.shrinkage, changed, len(measured.snapped), measured.ruler
    )


def _agreeing(measured: Measured, axis: str) -> list[Snapped]:
    """The readings along an axis that lie on the grid."""
    return [each for each in measured.snapped if each.on_grid and each.reading.axis == axis]


def _sizes_amiss(measured: Measured) -> Iterator[Diagnostic]:
    """A washed size that the readings contradict."""
    washed, fitted = measured.washed, measured.shrinkage
    for axis, length, drafted, scale in (
        ("across", washed.width, measured.width, fitted.across),
        ("down", washed.height, measured.height, fitted.down),
    ):
        agreeing = _agreeing(measured, axis)
        if length is None or len(agreeing) < AGREEING_LEAST:
            continue
        size = float(drafted) * scale
        if abs(size - float(length.inches)) > AMISS * float(measured.error):
            longest = max(agreeing, key=lambda each: each.reading.length)
            yield complain.size_amiss(length.span, axis, size, longest, measured.ruler)


def _disagreements(measured: Measured) -> Iterator[Disagreement]:
    """Readings that lie off the grid on which the others lie."""
    for each in measured.snapped:
        agreeing = _agreeing(measured, each.reading.axis)
        if (
            each.on_grid
            or each.reading.origin is None
            or each.reading.axis == "slanted"
            or len(agreeing) < AGREEING_LEAST
        ):
            continue
        yield _disagreement(each, max(agreeing, key=lambda other: float(other.length)), measured)


def _disagreement(odd: Snapped, other: Snapped, measured: Measured) -> Disagreement:
    across = odd.reading.axis == "across"
    grid = measured.grids[0]
    cell = float(measured.width) / grid.across if across else float(measured.height) / grid.down
    scale = measured.shrinkage.across if across else measured.shrinkage.down
    assert odd.reading.origin is not None
    start = float(odd.reading.origin.x if across else odd.reading.origin.y)
    way = odd.reading.step[0 if across else 1]
    end = start + way * float(odd.reading.length) / scale
    line = round(end / cell) * cell
    nearest = max(abs(line - start), cell)
    implied = change_percent(nearest, float(odd.reading.length))
    theirs = change_percent(float(other.length), float(other.reading.length))
    return Disagreement(odd, other, abs(end - line), cell, implied, theirs)
