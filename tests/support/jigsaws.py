"""Sheets cut apart by straight cuts from edge to edge, so that the least cloth for their boxes is known.

In the manner of Hopper's guillotine family (SOURCES 7.9): the boxes fill the sheet exactly.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from random import Random

from piecewright.cutting.plans.guillotine import Kind


def cut_apart(chance: Random, width: int, height: int, pieces: int, least: int) -> Iterator[tuple[int, int]]:
    """Boxes of about that number, none thinner than `least`."""
    if pieces <= 1 or max(width, height) < 2 * least:
        yield width, height
        return
    either = min(width, height) >= 2 * least
    across = chance.random() * (width + height) < height if either else height >= width
    length = height if across else width
    at = chance.randint(least, length - least)
    share = max(1, round(pieces * at / length))
    for part, many in ((at, share), (length - at, max(1, pieces - share))):
        yield from cut_apart(chance, *((width, part) if across else (part, height)), many, least)


def jigsaw(
    seed: int, sheets: int, width: int, height: int, pieces: int, least: int
) -> tuple[list[Kind], list[int]]:
    """Kinds and counts of the boxes of so many sheets, each cut into about that many pieces. All may turn."""
    chance = Random(seed)
    boxes = Counter(
        (min(box), max(box)) for _ in range(sheets) for box in cut_apart(chance, width, height, pieces, least)
    )
    return [Kind(*box, box[0] != box[1]) for box in boxes], list(boxes.values())
