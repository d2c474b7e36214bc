"""A washed block's text to the text of the block as drafted, ready to keep, with its readings in remarks."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from typing import Final

from ...diagnostics.source import Source
from ...language import tree
from ...language.edits import Edit, with_edits
from ...language.walk import nodes_in
from ...measure.record import record
from ...words.numbers import exact_text
from .model import GridGuess, Measured, Snapped

ON_PAPER: Final = (
    tree.Grid,
    tree.GridPoint,
    tree.GridSteps,
    tree.Row,
    tree.Alternate,
    tree.Place,
    tree.Rounds,
)
"""What is there where a block has a grid already, or would mean something else on another."""


@record
class Remarks:
    """What a drafted block says of how it was measured: a note for its sheets, and lines of remarks."""

    note: str
    lines: tuple[str, ...]


def drafted_source(
    source: Source, measures: Sequence[Measured], remarks: Callable[[Source, Measured], Remarks]
) -> str:
    """The text with every washed block drafted, and remarked on. Words that were not read, and all remarks
    that were there, stay."""
    edits = (edit for each in measures for edit in _edits(source, each, remarks(source, each)))
    return with_edits(source.text, edits)


def _edits(source: Source, measured: Measured, remarks: Remarks) -> Iterator[Edit]:
    yield measured.washed.span, _story(source, measured, remarks)
    for each in measured.snapped:
        yield each.reading.span, length_words(each, measured)


def length_words(snapped: Snapped, measured: Measured) -> str:
    """What is written for a reading: `2 1/2in`, or `1/3` of the way."""
    if snapped.share is not None:
        return exact_text(snapped.share)
    assert isinstance(snapped.length, Fraction), "a length that is no share is exact"
    return measured.ruler.exact(snapped.length)


def _story(source: Source, measured: Measured, remarks: Remarks) -> str:
    """What stands where `washed` stood: a note for the sheets, the grid found, the readings in remarks."""
    span = measured.washed.span
    line, column = source.place(span.start)
    margin = "\n" + " " * (column - 1 if not source.line(line)[: column - 1].strip() else 2)
    lines = [f'note "{remarks.note}"']
    if grid_to_write(measured) is not None:
        lines.append(f"grid {measured.grids[0].across} x {measured.grids[0].down}")
    lines += [f"# {each}" for each in remarks.lines]
    rest = source.text[span.end :].partition("\n")[0]
    return margin.join(lines) + (margin if rest.strip() and not rest.lstrip().startswith("#") else "")


def grid_to_write(measured: Measured) -> GridGuess | None:
    """The grid to be written into the block; None where it has one, or readings that lie on none."""
    best = measured.grids[0]
    if any(isinstance(node, ON_PAPER) for node in nodes_in(measured.block)):
        return None
    return best if any(each.on_grid for each in measured.snapped) and best.across * best.down > 1 else None
