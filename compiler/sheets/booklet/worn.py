"""The fabrics in which a block is shown: its own roles, or those of a quilt that it is used in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from ...diagnostics.wording import count_of
from ...drafting.model import Draft
from ...quilt.model import Quilt
from ...sewing.foundation_model import Foundations
from ...sewing.model import Assembly
from ..arrange.fills import Fill, fills_for
from ..arrange.swatches import fabric_order
from ..quilts.drawing import quilt_fills
from ..quilts.tables import fabric_titles
from ..quilts.wearing import choices_of


@dataclass(frozen=True, slots=True)
class Worn:
    """What each role is called and the fills of those names; `words` say in which fabrics a quilt uses it.
    `always` is whether it uses it in no others."""

    names: Mapping[str, str]
    fills: Mapping[str, Fill]
    words: tuple[str, ...] = ()
    always: bool = True

    def assembly(self, made: Assembly) -> Assembly:
        """The same order of sewing, its cloths by their names."""
        pieces = tuple(replace(each, fabric=self.names[each.fabric]) for each in made.pieces)
        return replace(made, pieces=pieces)

    def foundations(self, found: Foundations) -> Foundations:
        """The same papers, their patches by the names of their cloths."""
        sections = (
            replace(section, patches=tuple(replace(each, fabric=self.names[each.fabric])
                                           for each in section.patches))
            for section in found.sections
        )  # fmt: skip
        return replace(found, sections=tuple(sections))


def own_roles(draft: Draft) -> Worn:
    """The block as its file has it."""
    roles = fabric_order(draft)
    return Worn({role: role for role in roles}, fills_for(roles))


def in_quilt(quilt: Quilt, index: int) -> Worn:
    """A block in the fabrics in which a quilt uses it most often."""
    counts = choices_of(quilt, index)
    most = max(counts, key=lambda each: counts[each])  # of equals the first placed
    titles, fills = fabric_titles(quilt), quilt_fills(quilt)
    chosen = dict(most)
    roles = fabric_order(quilt.blocks[index].draft)
    names = {role: titles.get(chosen.get(role, role), chosen.get(role, role)) for role in roles}
    shown = {titles.get(fabric, fabric): fill for fabric, fill in fills.items()}
    choices = [
        {role: titles.get(fabric, fabric) for role, fabric in each if role in roles} for each in counts
    ]
    words = tuple(_words(choices, list(counts.values()), names))
    return Worn(names, shown, words, len(counts) == 1)


def _words(choices: list[dict[str, str]], times: list[int], names: dict[str, str]) -> Iterator[str]:
    """In which fabrics the block is used, and how often."""
    if len(choices) == 1:
        yield f"In the fabrics of this quilt: {_listed(names)}."
        return
    yield (
        f"This quilt uses the block in {count_of(len(choices), 'choice')} of fabrics. "
        f"Shown is the most common: {_listed(names)}, {count_of(max(times), 'time')}."
    )
    others = [
        f"{_listed(choice)}, {count_of(count, 'time')}"
        for choice, count in zip(choices, times, strict=True) if choice != names
    ]
    yield f"Also: {'; '.join(others)}."


def _listed(names: Mapping[str, str]) -> str:
    return ", ".join(f"{role} is {name}" for role, name in names.items())
