"""The words of blocks that were found on the shelves."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Final

from ...diagnostics.visible import visible
from ..numbers import degrees_text
from ..phrases import count_of

if TYPE_CHECKING:
    from ...measure.tolerance import Number
    from ..say import Say

HEADS: Final = ("Title", "Grid", "Finished", "Pieces", "Templates", "Sharpest")
NO_SYMMETRY: Final = "no symmetry"


def below_words(family: Sequence[str], methods: Sequence[str], symmetry: str, also: Sequence[str]) -> str:
    """`star; ruler, foundation; mirror; also Weathercock`."""
    parts = [*family[:1], ", ".join(methods) or "templates only", symmetry]
    if also:
        parts.append(f"also {', '.join(visible(name) for name in also)}")
    return "; ".join(parts)


def role_words(roles: Sequence[str]) -> str:
    """`roles dark, light`."""
    return f"{'roles' if len(roles) > 1 else 'role'} {', '.join(roles)}"


def use_words(title: str, version: int, name: str) -> str:
    """`use "Ohio Star" version 1 as ohio-star`, as the language writes it."""
    written = title.replace("\\", "\\\\").replace('"', '\\"')
    return f'use "{written}" version {version} as {name}'


def size_words(say: Say, width: Number, height: Number) -> str:
    """`12in`, or `8in x 4in`."""
    wide, tall = say.length(width), say.length(height)
    return wide if wide == tall else f"{wide} x {tall}"


def sharpest_words(angle: float) -> str:
    """`22.5°`; a dash where no piece has a corner."""
    return degrees_text(angle) if angle < 180 else "-"


def count_words(found: int, among: int) -> str:
    """`12 of 124 blocks.`"""
    return f"{found} of {count_of(among, 'block')}."


def shared_words(shared: Mapping[str, Iterable[str]]) -> list[str]:
    """A line for every name that several blocks bear."""
    return [f"{visible(name)} is a name of {', '.join(map(visible, of))}." for name, of in shared.items()]
