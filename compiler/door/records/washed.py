"""How the readings of washed blocks were drafted, for other programs."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ... import __version__
from ...diagnostics.source import Source
from ...drafting.washed.model import GridGuess, Measured, Snapped
from ...drafting.washed.written import drafted_source
from ...measure.length import change_percent
from ...words.work.washed import remarks
from .as_json import Record, number

PERCENT_DECIMALS: Final = 3
"""Of a change in washing: a thousandth of a per cent is a thousandth of an inch in eight feet."""


def washed_record(source: Source, measures: Sequence[Measured]) -> Record:
    """The report for programs: inches; percentages by ISO 5077, negative where a block shrank."""
    return {
        "piecewright": __version__,
        "blocks": [_block(source, each) for each in measures],
        "text": drafted_source(source, measures, remarks),
    }


def _block(source: Source, measured: Measured) -> Record:
    washed, fitted = measured.washed, measured.shrinkage
    return {
        "title": measured.block.title.text,
        "version": measured.block.version.value if measured.block.version else 1,
        "finished": {"width": number(measured.width), "height": number(measured.height)},
        "washed": {
            "width": number(washed.width.inches),
            "height": number((washed.height or washed.width).inches),
        },
        "read_to": number(measured.error),
        "change_percent": {"across": _percent(fitted.across), "down": _percent(fitted.down)},
        "lean": round(fitted.lean, 6),
        "readings": [_reading(source, each) for each in measured.snapped],
        "grids": [_grid(each) for each in measured.grids],
    }


def _percent(scale: float) -> float:
    return round(change_percent(1, scale), PERCENT_DECIMALS)


def _reading(source: Source, snapped: Snapped) -> Record:
    line, column = source.place(snapped.reading.span.start)
    return {
        "point": snapped.reading.name,
        "line": line,
        "column": column,
        "read": number(snapped.reading.length),
        "drafted": number(snapped.length),
        "share": str(snapped.share) if snapped.share is not None else None,
        "change": number(float(snapped.length) - float(snapped.reading.length)),
        "misfit": number(snapped.misfit),
        "on_grid": snapped.on_grid,
    }


def _grid(grid: GridGuess) -> Record:
    return {"across": grid.across, "down": grid.down, "misfit": number(grid.misfit), "off": grid.off}
