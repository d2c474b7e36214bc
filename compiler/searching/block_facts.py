"""What a block is found by: its names, its size and grid, and what is to be cut and sewn.

In: a draft. Out: `BlockFacts`, plain words and numbers that are kept in an index, listed and searched.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import asdict, fields
from typing import Any, Final

from ..cutting.methods.rotary import template_method_of
from ..cutting.templates.making import make_templates
from ..diagnostics.diagnostic import Outcome
from ..drafting.design import symmetry_of
from ..drafting.fingerprint import fingerprint_of
from ..drafting.model import Draft
from ..measure.record import record
from ..sewing.difficulty import difficulty
from ..sewing.foundations.foundation import papers_refused
from ..sewing.order.assembly import assemble

ROTARY: Final = "rotary"
FOUNDATION: Final = "foundation"
METHODS: Final = (ROTARY, FOUNDATION)
"""Every template can be cut by a ruler; every seam is straight and none is set in, so that the block can be
sewn on paper foundations. With templates, or over paper pieces, every block can be made."""

QUARTER_TURN: Final = "quarter-turn"
HALF_TURN: Final = "half-turn"
THIRD_TURN: Final = "third-turn"
MIRROR: Final = "mirror"
NOTHING: Final = "none"
SYMMETRIES: Final = (QUARTER_TURN, HALF_TURN, THIRD_TURN, MIRROR, NOTHING)
"""How a block looks the same again, fabrics and all; `none`: only as it lies."""


@record
class BlockFacts:
    """One block. Lengths are inches, the smallest angle is in degrees (180: no piece has a corner)."""

    title: str
    version: int
    also: tuple[str, ...]
    family: tuple[str, ...]
    notes: tuple[str, ...]
    across: int  # of the grid; 1 by 1 where there is none
    down: int
    width: float
    height: float
    pieces: int
    templates: int
    smallest_angle: float
    methods: tuple[str, ...]
    turns: int  # in a whole turn it looks the same so often
    mirrors: bool
    fabrics: tuple[str, ...]
    fingerprint: str

    @property
    def names(self) -> tuple[str, ...]:
        """Its title and its other names."""
        return (self.title, *self.also)

    @property
    def symmetries(self) -> tuple[str, ...]:
        """Those of SYMMETRIES that it has."""
        found = [
            word
            for word, turns in ((QUARTER_TURN, 4), (HALF_TURN, 2), (THIRD_TURN, 3))
            if self.turns % turns == 0
        ]
        return tuple(found + [MIRROR] * self.mirrors) or (NOTHING,)


def facts_of(draft: Draft) -> Outcome[BlockFacts]:
    """The facts of a block; what keeps it from being cut, where something does."""
    made = make_templates(draft)
    if made.value is None:
        return Outcome(None, made.diagnostics)
    assembly = assemble(draft)
    symmetry = symmetry_of(draft)
    by_ruler = all(template_method_of(draft, each).kind != "template" for each in made.value)
    return Outcome(
        BlockFacts(
            title=draft.title,
            version=draft.version,
            also=draft.also,
            family=draft.family,
            notes=draft.notes,
            across=len(draft.rules_across) - 1,
            down=len(draft.rules_down) - 1,
            width=float(draft.width),
            height=float(draft.height),
            pieces=len(draft.pieces),
            templates=len(draft.shapes),
            smallest_angle=round(difficulty(draft, made.value, assembly).smallest_angle, 3),
            methods=(ROTARY,) * by_ruler + (FOUNDATION,) * (not papers_refused(draft, assembly)),
            turns=symmetry.turns,
            mirrors=symmetry.mirrors,
            fabrics=tuple(dict.fromkeys(piece.fabric for piece in draft.pieces)),
            fingerprint=fingerprint_of(draft),
        ),
        made.diagnostics,
    )


_NAMES: Final = tuple(each.name for each in fields(BlockFacts))


def record_of(facts: BlockFacts) -> dict[str, Any]:
    """The facts for JSON."""
    return asdict(facts)


def facts_from(record: Mapping[str, Any]) -> BlockFacts:
    """The facts again. KeyError where one is missing."""
    values: list[Any] = [record[name] for name in _NAMES]
    values = [tuple(each) if isinstance(each, list) else each for each in values]
    return BlockFacts(*values)


def shared_names(blocks: Iterable[BlockFacts]) -> dict[str, tuple[str, ...]]:
    """Every name that blocks of two or more titles bear, with those titles; capitals count for nothing."""
    borne: dict[str, tuple[str, dict[str, None]]] = {}
    for facts in blocks:
        for name in facts.names:
            borne.setdefault(name.casefold(), (name, {}))[1].setdefault(facts.title)
    return {name: tuple(titles) for name, titles in borne.values() if len(titles) > 1}
