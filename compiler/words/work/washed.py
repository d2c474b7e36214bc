"""What is told of a block that was measured after washing: in its drafted text, and by `draft`."""

from __future__ import annotations

from collections.abc import Sequence
from math import copysign
from typing import Final

from ...diagnostics.source import Source
from ...drafting.washed.model import GridGuess, Measured, Snapped
from ...drafting.washed.written import Remarks
from ...measure.tolerance import Number
from ..messages.washed import by_ruler, change_of, difference_text, drafted_text, washing_text
from ..say import INCHES, Say

READINGS: Final = "Readings"
GRIDS: Final = "Grids, the likeliest first"
READING_HEADS: Final = ("point", "read", "drafted", "which is", "misfit", "")


def remarks(source: Source, measured: Measured, say: Say = INCHES) -> Remarks:
    """A sentence on what was measured and one on what washing did; then a line for each reading, and one that
    lists the grids, the likeliest first."""
    lines = [_reading_line(say, source, each, measured) for each in measured.snapped]
    grids = measured.grids
    if grids and any(length is not None for length in grids[0].lengths):
        lines.append("grids, the likeliest first: " + "; ".join(grid_texts(say, grids)))
    washed = _size(say, measured, *_washed(measured))
    return Remarks(
        f"Drafted from a block of {washed}, {_read_to(say, measured)}. {washing_text(measured.shrinkage)}.",
        tuple(lines),
    )


def _reading_line(say: Say, source: Source, snapped: Snapped, measured: Measured) -> str:
    read = source.words(snapped.reading.span)
    return f"{snapped.reading.name}: read {read}, drafted {change_of(say, snapped, measured.ruler)}"


def grid_texts(say: Say, grids: Sequence[GridGuess]) -> list[str]:
    """The grids in their order; one that could hold the readings in several ways is told by its likeliest."""
    told: dict[tuple[int, int], str] = {}
    for each in grids:
        told.setdefault((each.across, each.down), _grid_text(say, each))
    return list(told.values())


def _grid_text(say: Say, grid: GridGuess) -> str:
    """`3 x 3 (off by 0.021in)`, with how many readings do not lie on it."""
    apart = f", {grid.off} not on it" if grid.off else ""
    return f"{grid.across} x {grid.down} (off by {say.fine(grid.misfit)}{apart})"


def sizes_text(say: Say, measured: Measured) -> str:
    """`Drafted 8in x 8in; now 7 3/4in x 7 3/4in, read to 1/16in.`"""
    drafted = _size(say, measured, measured.width, measured.height)
    washed = _size(say, measured, *_washed(measured))
    return f"Drafted {drafted}; now {washed}, {_read_to(say, measured)}."


def _washed(measured: Measured) -> tuple[Number, Number]:
    washed = measured.washed
    return washed.width.inches, (washed.height or washed.width).inches


def _size(say: Say, measured: Measured, width: Number, height: Number) -> str:
    return f"{by_ruler(say, width, measured.ruler)} x {by_ruler(say, height, measured.ruler)}"


def _read_to(say: Say, measured: Measured) -> str:
    return f"read to {by_ruler(say, measured.error, measured.ruler)}"


def reading_cells(say: Say, snapped: Snapped, measured: Measured) -> tuple[str, ...]:
    """A reading under READING_HEADS."""
    ruler, sign = measured.ruler, "-" if copysign(1, snapped.misfit) < 0 else "+"
    return (
        snapped.reading.name,
        by_ruler(say, snapped.reading.length, ruler),
        drafted_text(say, snapped, ruler),
        difference_text(say, snapped, ruler),
        sign + say.fine(abs(snapped.misfit)),
        "" if snapped.on_grid else "off the grid",
    )
