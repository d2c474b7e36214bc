"""The words on a template: how many to cut of what, whose it is, which side is up, which grain is whose."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...cutting.model import FabricCount, GrainArrow, Template
from .style import break_lines, measure, shorten

MOST_COUNTS: Final = 9
"""Lines that say how many to cut; a template of more fabrics refers to the table."""

MOST_COUNT_LINES: Final = 3
"""Lines of one count: a fabric of a longer name is cut short, and told in full by the table."""

MOST_GRAIN_LINES: Final = 2
"""Lines that name the pieces of one of several grain arrows."""

MOST_GRAINS: Final = 6
"""Grain arrows whose pieces are named; of more, the table tells them."""


def words_of(template: Template, room: float, size: float) -> list[tuple[str, bool]]:
    """The lines under the letter, no wider than the room, and whether each is bold."""
    counts = [line for count in template.counts for line in _count_words(count)]
    if len(counts) > MOST_COUNTS:
        counts = [*counts[: MOST_COUNTS - 1], f"and {len(counts) - MOST_COUNTS + 1} more: see the table"]
    words = [
        (line, True)
        for text in counts
        for line in _cut_short(break_lines(text, room, size, True), MOST_COUNT_LINES)
    ]
    if template.share:
        words.append((shorten(f"for {template.share}", room, size), False))
    words.extend((line, False) for line in _title_lines(template, room, size))
    if template.maker:
        words.append((shorten(template.maker, room, size), False))
    if not template.reversible:
        words.append(("this side up", False))
    if len(template.grain) > MOST_GRAINS:
        whose = f"{len(template.grain)} arrows: see the table for their pieces"
        words.extend((line, False) for line in break_lines(whose, room, size))
    elif len(template.grain) > 1:
        for number, grain in enumerate(template.grain, 1):
            lines = break_lines(grain_words(number, grain), room, size)
            words.extend((line, False) for line in _cut_short(lines, MOST_GRAIN_LINES))
    return words


def grain_words(number: int, grain: GrainArrow) -> str:
    """Which pieces one of several arrows is for: `arrow 2: pieces 7, 10–12`."""
    return f"arrow {number}: {counted_pieces(grain.pieces)}"


def counted_pieces(numbers: Sequence[int]) -> str:
    """`piece 3`, or `pieces 1–4, 7`."""
    return f"{'piece' if len(numbers) == 1 else 'pieces'} {number_ranges(sorted(numbers))}"


def _cut_short(lines: Sequence[str], most: int) -> list[str]:
    """The lines, as far as a template has room for them: the block's page says all."""
    if len(lines) <= most:
        return list(lines)
    return [*lines[: most - 1], lines[most - 1].rstrip(" ,…") + " …"]


def number_ranges(numbers: Sequence[int]) -> str:
    """`1–4, 7, 9–12` for numbers in order."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs)


def _count_words(count: FabricCount) -> Iterator[str]:
    if count.cut:
        yield f"Cut {count.cut} of {count.fabric}"
        if count.reversed:
            yield f"and {count.reversed} reversed"
    elif count.reversed:
        yield f"Cut {count.reversed} of {count.fabric}, reversed"


def _title_lines(template: Template, room: float, size: float) -> list[str]:
    """Title, size and version on one line, else on two; a title too long for the first is shortened."""
    size_words = f"{template.finished_size} · v{template.version}"
    whole = f"{template.block_title} {size_words}"
    if measure(whole, size) <= room:
        return [whole]
    return [shorten(template.block_title, room, size), shorten(size_words, room, size)]
