"""Things that go one of two ways, tied in pairs to go the same way or different ones."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from ...measure.tolerance import NO_WISH

Seam = tuple[int, int]
"""A step and one of its copies, counted from 0."""


class Ties:
    """Groups of seams, each with whether it goes as its group's first does. A group is torn once two ties
    contradict each other; the later tie is then left out."""

    def __init__(self) -> None:
        self._over: dict[
            Seam, tuple[Seam, bool]
        ] = {}  # what a seam follows, and whether it goes the same way
        self._torn: set[Seam] = set()

    def tie(self, one: Seam, two: Seam, same: bool) -> bool:
        """Ties two seams; False where earlier ties contradict it."""
        first, first_same = self._first(one)
        second, second_same = self._first(two)
        if first == second:
            if (first_same == second_same) == same:
                return True
            self._torn.add(first)
            return False
        low, high = min(first, second), max(first, second)
        self._over[high] = low, (first_same == second_same) == same
        if high in self._torn:
            self._torn.add(low)
        return True

    def torn(self, seam: Seam) -> bool:
        """Whether a seam's group has contradicting ties."""
        return self._first(seam)[0] in self._torn

    def settle(self, wishes: Mapping[Seam, float], leans: Iterable[tuple[Seam, float]]) -> dict[Seam, bool]:
        """Which way each seam goes: of a group's two ways, the one with the greater sum of wishes for True;
        where neither is, as the first of its seams leans: `leans` has them in order, more than 0 for True."""
        sums: dict[Seam, float] = {}
        for seam, wish in wishes.items():
            first, same = self._first(seam)
            sums[first] = sums.get(first, 0.0) + (wish if same else -wish)
        for seam, lean in leans:
            first, same = self._first(seam)
            if abs(sums[first]) <= NO_WISH:
                sums[first] = lean if same else -lean
        found = {}
        for seam in wishes:
            first, same = self._first(seam)
            found[seam] = (sums[first] >= 0) == same
        return found

    def _first(self, seam: Seam) -> tuple[Seam, bool]:
        """The first of a seam's group, and whether the seam goes as it does."""
        path, same = [], True
        while seam in self._over:
            path.append(seam)
            seam, step_same = self._over[seam]
            same = same == step_same
        rest = same
        for each in path:  # each follows the first directly from now on
            step_same = self._over[each][1]
            self._over[each] = seam, rest
            rest = rest == step_same
        return seam, same
