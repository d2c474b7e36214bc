"""What `draft` says of washed blocks: how each reading was drafted, as text for people and as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ... import __version__
from ...diagnostics.source import Source
from ...diagnostics.visible import visible
from ...drafting.washed.model import GridGuess, Measured, Snapped
from ...drafting.washed.written import drafted_source
from ...measure.length import change_percent
from ...words.messages.washed import washing_text
from ...words.say import INCHES
from ...words.work.washed import (
    GRIDS,
    READING_HEADS,
    READINGS,
    grid_texts,
    reading_cells,
    remarks,
    sizes_text,
)
from ..setting.text import plain_table
from ..setting.text_table import told, wrapped
from .report_numbers import Record, number

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


def washed_text(measures: Sequence[Measured]) -> str:
    """The report for people: every block, one after the other."""
    return "\n\n\n".join("\n".join(_lines(each)) for each in measures)


def _lines(measured: Measured) -> list[str]:
    lines = [
        *wrapped(visible(measured.block.title.text)),
        sizes_text(INCHES, measured),
        f"{washing_text(measured.shrinkage)}.",
    ]
    rows = [reading_cells(INCHES, each, measured) for each in measured.snapped]
    if rows:
        lines += ["", READINGS, *plain_table(READING_HEADS, rows)]
        lines += ["", GRIDS]
        lines += [
            line
            for place, each in enumerate(grid_texts(INCHES, measured.grids), 1)
            for line in told(str(place), each)
        ]
    return lines
