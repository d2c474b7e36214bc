"""Which blocks are meant: conditions on their facts, all of which must hold."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import field
from fractions import Fraction
from typing import Final

from ..measure.record import record
from ..measure.tolerance import BOUND_SLACK
from .block_facts import BlockFacts


@record
class Range:
    """From `least` to `most`, both included; None: no bound."""

    least: Fraction | None = None
    most: Fraction | None = None

    def holds(self, value: float) -> bool:
        """Whether a value lies within."""
        return (self.least is None or value >= float(self.least) - BOUND_SLACK) and (
            self.most is None or value <= float(self.most) + BOUND_SLACK
        )


ANY: Final = Range()


@record
class Wanted:
    """What is looked for. Words stand in one name of the block, in any order, whole or begun."""

    words: tuple[str, ...] = ()
    families: tuple[str, ...] = ()  # one of them
    grid: tuple[int, int] | None = None
    pieces: Range = ANY
    templates: Range = ANY
    smallest_angle: Range = ANY
    size: Range = ANY  # of the longer side, inches
    methods: tuple[str, ...] = ()  # all of them
    symmetries: tuple[str, ...] = ()  # all of them
    _sought: tuple[str, ...] = field(init=False, default=())

    def __post_init__(self) -> None:
        object.__setattr__(self, "_sought", tuple(part for word in self.words for part in words_of(word)))

    def holds(self, facts: BlockFacts) -> bool:
        """Whether the block is one of those meant."""
        return (
            any(_begun(self._sought, name) for name in facts.names)
            and (not self.families or any(each in facts.family for each in self.families))
            and (self.grid is None or self.grid == (facts.across, facts.down))
            and self.pieces.holds(facts.pieces)
            and self.templates.holds(facts.templates)
            and self.smallest_angle.holds(facts.smallest_angle)
            and self.size.holds(max(facts.width, facts.height))
            and all(each in facts.methods for each in self.methods)
            and all(each in facts.symmetries for each in self.symmetries)
        )


def words_of(text: str) -> list[str]:
    """The words of a name as they are compared: no capitals, no apostrophes, no other signs."""
    return re.findall(r"\w+", text.casefold().replace("'", "").replace("’", ""))


def _begun(sought: Sequence[str], name: str) -> bool:
    """Whether each word begins a word of the name."""
    there = words_of(name)
    return all(any(word.startswith(each) for word in there) for each in sought)
