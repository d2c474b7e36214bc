"""What `draft` says of washed blocks: how each reading was drafted."""

from __future__ import annotations

from collections.abc import Sequence

from ...diagnostics.visible import visible
from ...drafting.washed.model import Measured
from ...words.messages.washed import washing_text
from ...words.say import INCHES
from ...words.work.washed import (
    GRIDS,
    READING_HEADS,
    READINGS,
    grid_texts,
    reading_cells,
    sizes_text,
)
from ..setting.text import plain_table
from ..setting.text_table import told, wrapped


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
