"""Stretches of one line, cut up at all their ends:

--------+--------
----+-------+----   four gaps between five stops
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from itertools import chain
from typing import NamedTuple


class Gaps(NamedTuple):
    """The ends along the line in rising order, each once, and which gaps after them each stretch covers."""

    stops: list[float]
    covered: list[range]


def gaps_between(stretches: Sequence[tuple[float, float]], slack: float) -> Gaps:
    """What stretches, each from a lower to a higher place along the line, are cut up into; ends no further
    apart than `slack` are one."""
    stops: list[float] = []
    for stop in sorted(chain(*stretches)):
        if not stops or stop - stops[-1] > slack:
            stops.append(stop)
    covered = [
        range(bisect_left(stops, start - slack), bisect_left(stops, end - slack)) for start, end in stretches
    ]
    return Gaps(stops, covered)
