"""A block of straight seams drafted by its lines: light lines right across, and of them the seams.

Where few points can be found by ruler and compass, a line from edge to edge needs two measures and gives many
of them: the strips of a pineapple. Places are complex numbers in inches, x right and y down.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import sqrt
from typing import Final

from ....diagnostics.wording import one_of
from ....drafting.frame import rectangle
from ....drafting.model import Draft
from ....drafting.stroke import place_of
from ....measure.fractions import reads_exactly
from ...quilts.words import about
from .compass import LineKey, line_key
from .construction import SAME, corners_of, edges_of

LINES_MOST: Final = 60
"""Lines, beyond which a list of them is no help."""

CORNERS: Final = ("top left", "top right", "bottom right", "bottom left")


@dataclass(frozen=True, slots=True)
class Guides:
    """The light lines of a block, from edge to edge, and how they are drawn, a sentence each."""

    lines: tuple[tuple[complex, complex], ...]
    steps: tuple[str, ...]


def guides_of(draft: Draft) -> Guides | None:
    """The block's light lines; None where it has arcs, is no rectangle, has too many lines or slants that
    cut no corner off evenly."""
    edges = list(edges_of(draft))
    if draft.outline != rectangle(0, 0, draft.width, draft.height) or any(edge.arc for edge in edges):
        return None
    corners = corners_of(draft)
    sides = {line_key(one, other) for one, other in zip(corners, (*corners[1:], corners[0]), strict=True)}
    keyed = {line_key(place_of(edge.start), place_of(edge.end)): place_of(edge.start) for edge in edges}
    found = {key: _across(key, place, draft) for key, place in keyed.items() if key not in sides}
    steps = tuple(_steps(found, draft)) if len(found) <= LINES_MOST else ()
    return Guides(tuple(found.values()), steps) if steps else None


def _across(key: LineKey, place: complex, draft: Draft) -> tuple[complex, complex]:
    """Where a line through a place enters the block, and where it leaves it."""
    way = complex(key[0], key[1])
    low, high = float("-inf"), float("inf")
    for at, step, far in (
        (place.real, way.real, float(draft.width)),
        (place.imag, way.imag, float(draft.height)),
    ):
        if abs(step) > SAME:
            one, other = sorted((-at / step, (far - at) / step))
            low, high = max(low, one), min(high, other)
    return place + way * low, place + way * high


def _steps(found: dict[LineKey, tuple[complex, complex]], draft: Draft) -> Iterator[str]:
    """The lines in words: upright, level, across the corners. Nothing where one is none of them."""
    upright: list[float] = []
    level: list[float] = []
    cut_off: dict[str, list[float]] = {corner: [] for corner in CORNERS}
    for key, (start, end) in found.items():
        if abs(key[0]) < SAME:
            upright.append(start.real)
        elif abs(key[1]) < SAME:
            level.append(start.imag)
        elif not _through_corners(start, end, draft):
            corner = _corner(start, end, draft)
            if corner is None:
                return
            cut_off[corner[0]].append(corner[1])
    if upright and _lengths(upright) == _lengths(level):
        words = _lengths(upright)
        yield f"Draw light lines right across, upright {words} from the left; level ones as far from the top."
    else:
        for lengths, way, side in ((upright, "upright", "left"), (level, "level", "top")):
            if lengths:
                yield f"Draw light lines right across, {way}, {_lengths(lengths)} from the {side}."
    yield from _corner_words(cut_off)


def _corner_words(cut_off: dict[str, list[float]]) -> Iterator[str]:
    """The lines across the corners; alike at all four, said once."""
    told = {corner: tuple(_cut_off_words(lengths)) for corner, lengths in cut_off.items() if lengths}
    if len(told) == len(CORNERS) and len(set(told.values())) == 1:
        told = {"each": told[CORNERS[0]]}
    for corner, ways in told.items():
        where = f"From {corner} corner" if corner == "each" else f"From the {corner} corner"
        yield from (f"{where} measure {words}" for words in ways)


def _cut_off_words(lengths: Sequence[float]) -> Iterator[str]:
    """Where the lines across a corner pass: the furthest of even ones, and how far apart they are."""
    far = sorted(lengths, reverse=True)
    apart = {round((one - other) / sqrt(2), 5) for one, other in pairwise(far)}
    if len(far) > 2 and len(apart) == 1 and reads_exactly(far[0]) and reads_exactly(min(apart)):
        more = f"{len(far) - 1} more lines beside it, each {about(min(apart))} nearer the corner"
        yield f"{about(far[0])} along both sides and join the marks; then draw {more}."
        return
    yield f"{_lengths(far)} along both sides, and join the marks across it, each with its like."


def _through_corners(start: complex, end: complex, draft: Draft) -> bool:
    """Whether it is a diagonal, which is drawn already."""
    return all(min(abs(place - each) for each in corners_of(draft)) < SAME for place in (start, end))


def _corner(start: complex, end: complex, draft: Draft) -> tuple[str, float] | None:
    """The corner that a slanting line cuts off evenly, and how far from it along both sides."""
    for name, corner in zip(CORNERS, corners_of(draft), strict=True):
        one, other = start - corner, end - corner
        on_sides = min(abs(one.real), abs(one.imag)) < SAME and min(abs(other.real), abs(other.imag)) < SAME
        square = abs((one.conjugate() * other).real) < SAME
        if on_sides and square and abs(abs(one) - abs(other)) < SAME:
            return name, round(abs(one), 6)
    return None


def _lengths(lengths: Sequence[float]) -> str:
    return one_of([about(length) for length in sorted(lengths)], "and")
