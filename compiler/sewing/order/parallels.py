"""Of seams that run side by side across a region, the one that a quilter would sew last.

Rows are joined in the middle, so that a region falls into halves; a border is sewn on last, outermost of all;
and what is made for another part of the block as well is not cut through.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from ...measure.tolerance import HALVES
from .borders import Ring
from .chords import Chord, Seams, across
from .runs import is_rectangle

CORE: Final = 2.0
"""Times that what lies between two seams is wider than all else, where the rest are strips about it."""

LOG: Final = 2.5
"""Times that a strip of a frame is longer than wide, at the least."""

FAN_WAYS: Final = 3
"""Ways that the seams of a fan run, at the fewest."""

FAN_SEAMS: Final = 64
"""Seams of a fan that are weighed against each other, at the most."""


def by_width(rows: Sequence[Chord], outline: Ring) -> Chord | None:
    """The seam that halves a region by its width; else the outermost of those about a wide core; else
    None."""
    places = _places(rows, outline)
    middle = (places[0] + places[-1]) / 2
    for chord, place in zip(rows, places[1:-1], strict=True):
        if abs(place - middle) <= HALVES:
            return chord
    spans = [two - one for one, two in pairwise(places)]
    widest = max(range(len(spans)), key=lambda at: spans[at])
    strips = [span for at, span in enumerate(spans) if at != widest]
    if not 0 < widest < len(spans) - 1 or spans[widest] <= CORE * max(strips) + HALVES:
        return None
    core = (places[widest] + places[widest + 1]) / 2
    furthest = max(range(len(rows)), key=lambda at: (round(abs(places[at + 1] - core), 3), at))
    return rows[furthest]


def by_frame(rows: Sequence[Chord], outline: Ring, seams: Seams) -> Chord | None:
    """The seam along which a single long strip, as narrow as any row, is sewn to the edge of pieced ones."""
    places = _places(rows, outline)
    spans = [two - one for one, two in pairwise(places)]
    for chord, span in ((rows[-1], spans[-1]), (rows[0], spans[0])):
        length = sum(seams.graph.links[half // 2].stroke.length for half in chord.halves)
        narrow = span * LOG <= length and span <= min(spans) + HALVES
        if narrow and is_rectangle(outline) and _beside_one_piece(chord, seams):
            return chord
    return None


def _places(rows: Sequence[Chord], outline: Ring) -> list[float]:
    """Where a region starts, its seams lie and it ends, across the seams."""
    heading = rows[0].heading
    reach = [across(stroke.at(share), heading) for stroke, _ in outline for share in (0.0, 0.5)]
    return [min(reach), *(across(chord.middle, heading) for chord in rows), max(reach)]


def _beside_one_piece(chord: Chord, seams: Seams) -> bool:
    """Whether a seam parts off a single piece."""
    along = {half // 2 for half in chord.halves}
    ends = [(seams.graph.cloth(half), seams.graph.cloth(half ^ 1)) for half in chord.halves]
    for pieces in ({right for right, _ in ends}, {left for _, left in ends}):
        if len(pieces) == 1:
            (piece,) = pieces
            others = (half // 2 for ring in seams.graph.rings[piece] for half in ring)
            if all(seams.cut[each] or seams.graph.links[each].rim or each in along for each in others):
                return True
    return False


def fan(sets: Sequence[Sequence[Chord]]) -> list[Chord]:
    """All seams, where they spread in a fan: each way runs one, or two that face each other in a round."""
    seams = [chord for rows in sets for chord in rows]
    spread = len(sets) >= FAN_WAYS and len(seams) <= FAN_SEAMS and max(map(len, sets)) <= 2
    return seams if spread else []
