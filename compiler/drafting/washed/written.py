"""A washed block's text to the text of the block as drafted, ready to keep, with its readings in remarks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from ...diagnostics.source import Source
from ...language import tree
from ...language.edits import Edit, with_edits
from ...language.walk import nodes_in
from ...words.messages.washed import change_of, washing_text
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


def drafted_source(source: Source, measures: Sequence[Measured]) -> str:
    """The text with every washed block drafted. Words that were not read, and all remarks, stay."""
    return with_edits(source.text, (edit for each in measures for edit in _edits(source, each)))


def _edits(source: Source, measured: Measured) -> Iterator[Edit]:
    yield measured.washed.span, _story(source, measured)
    for each in measured.snapped:
        yield each.reading.span, length_words(each, measured)


def length_words(snapped: Snapped, measured: Measured) -> str:
    """What is written for a reading: `2 1/2in`, or `1/3` of the way."""
    if snapped.share is not None:
        return exact_text(snapped.share)
    assert isinstance(snapped.length, Fraction), "a length that is no share is exact"
    return measured.ruler.exact(snapped.length)


def _story(source: Source, measured: Measured) -> str:
    """What stands where `washed` stood: a note for the sheets, the grid found, the readings in remarks."""
    span = measured.washed.span
    line, column = source.place(span.start)
    margin = "\n" + " " * (column - 1 if not source.line(line)[: column - 1].strip() else 2)
    lines = [f'note "{story_text(measured)}"']
    if grid_to_write(measured) is not None:
        lines.append(f"grid {measured.grids[0].across} x {measured.grids[0].down}")
    lines += [f"# {each}" for each in (*reading_lines(source, measured), *grid_lines(measured.grids))]
    rest = source.text[span.end :].partition("\n")[0]
    return margin.join(lines) + (margin if rest.strip() and not rest.lstrip().startswith("#") else "")


def story_text(measured: Measured) -> str:
    """One sentence on what was measured and one on what washing did."""
    washed, ruler = measured.washed, measured.ruler
    height = washed.height or washed.width
    return (
        f"Drafted from a block of {ruler.text(washed.width.inches)} x {ruler.text(height.inches)}, "
        f"read to {ruler.text(measured.error)}. {washing_text(measured)}."
    )


def grid_to_write(measured: Measured) -> GridGuess | None:
    """The grid to be written into the block; None where it has one, or readings that lie on none."""
    best = measured.grids[0]
    if any(isinstance(node, ON_PAPER) for node in nodes_in(measured.block)):
        return None
    return best if any(each.on_grid for each in measured.snapped) and best.across * best.down > 1 else None


def reading_lines(source: Source, measured: Measured) -> Iterator[str]:
    """A line for each reading: as read, as drafted, and the difference."""
    for each in measured.snapped:
        words = source.text[each.reading.span.start : each.reading.span.end]
        yield f"{each.reading.name}: read {words}, drafted {change_of(each, measured.ruler)}"


def grid_lines(grids: Sequence[GridGuess]) -> Iterator[str]:
    """A line that lists the grids, the likeliest first."""
    if grids and any(length is not None for length in grids[0].lengths):
        yield "grids, the likeliest first: " + "; ".join(grid_texts(grids))


def grid_texts(grids: Sequence[GridGuess]) -> list[str]:
    """The grids in their order; one that could hold the readings in several ways is told by its likeliest."""
    told: dict[tuple[int, int], str] = {}
    for each in grids:
        told.setdefault((each.across, each.down), grid_text(each))
    return list(told.values())


def grid_text(grid: GridGuess) -> str:
    """`3 x 3 (off by 0.021in)`, with how many readings do not lie on it."""
    apart = f", {grid.off} not on it" if grid.off else ""
    return f"{grid.across} x {grid.down} (off by {grid.misfit:.3f}in{apart})"
