"""The words on a template, broken to the lines that it has room for."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ...cutting.model import Template
from ...words.pages.labels import (
    THIS_SIDE_UP,
    cut_lines,
    grain_words,
    more_counts,
    more_grains,
    share_words,
    size_words,
)
from ...words.say import INCHES
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
    counts = list(cut_lines(template))
    if len(counts) > MOST_COUNTS:
        counts = [*counts[: MOST_COUNTS - 1], more_counts(len(counts) - MOST_COUNTS + 1)]
    words = [
        (line, True)
        for text in counts
        for line in _cut_short(break_lines(text, room, size, True), MOST_COUNT_LINES)
    ]
    if template.blocks:
        words.append((shorten(share_words(template.blocks), room, size), False))
    words.extend((line, False) for line in _title_lines(template, room, size))
    if template.maker:
        words.append((shorten(template.maker, room, size), False))
    if not template.reversible:
        words.append((THIS_SIDE_UP, False))
    if len(template.grain) > MOST_GRAINS:
        words.extend((line, False) for line in break_lines(more_grains(len(template.grain)), room, size))
    elif len(template.grain) > 1:
        for number, grain in enumerate(template.grain, 1):
            lines = break_lines(grain_words(number, grain), room, size)
            words.extend((line, False) for line in _cut_short(lines, MOST_GRAIN_LINES))
    return words


def _cut_short(lines: Sequence[str], most: int) -> list[str]:
    """The lines, as far as a template has room for them: the block's page says all."""
    if len(lines) <= most:
        return list(lines)
    return [*lines[: most - 1], lines[most - 1].rstrip(" ,…") + " …"]


def _title_lines(template: Template, room: float, size: float) -> list[str]:
    """Title, size and version on one line, else on two; a title too long for the first is shortened."""
    sized = size_words(INCHES, template)
    whole = f"{template.block_title} {sized}"
    if measure(whole, size) <= room:
        return [whole]
    return [shorten(template.block_title, room, size), shorten(sized, room, size)]
