"""The fabrics in which a block is shown: its own roles, or those of a quilt that it is used in, as the other
pages of the quilt call and colour them.

Templates serve every use of a block, so their sheets name all the cloths of a role (`worn_block`); pictures
of its steps can show one choice, the most common (`in_quilt`).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from ...cutting.model import FabricCount
from ...cutting.needs import SizedBlock
from ...drafting.model import Draft, Dress
from ...measure.record import record
from ...quilt.model import Quilt
from ...sewing.foundations.foundation_model import Foundations
from ...sewing.model import Assembly
from ...words.pages import wearing as words
from ..arrange.fills import Fill
from ..arrange.swatches import fabric_order, fills_of
from ..pictures.quilt import fabric_names, own_titles, quilt_fills, stated_looks
from .tables import fabric_titles

TOLD_MOST: Final = 2  # cloths of one role that a label names: more are told by the chart


def worn_block(quilt: Quilt, index: int) -> SizedBlock:
    """The block with every role called what it is cut from in the quilt."""
    block, names = quilt.blocks[index], worn_words(quilt, index)
    times = quilt.block_counts[index]
    many = times if times > 1 else 0
    templates = (replace(each, counts=_merged(each.counts, names), blocks=many) for each in block.templates)
    return SizedBlock(_worn_draft(quilt, index, names), tuple(templates))


def worn_words(quilt: Quilt, index: int) -> dict[str, str]:
    """What the quilt's pages call each role of a block: `Navy twill`; `Navy twill or Rust dots` where it is
    set in both; `dark (5 fabrics)` where it is in more."""
    titles = fabric_titles(quilt)
    return {
        role: words.either([titles[name] for name in names])
        if len(names) <= TOLD_MOST
        else words.many_fabrics(role, len(names))
        for role, names in _cloths(quilt, index).items()
    }


@record
class Worn:
    """What each role is called and the fills of those names; `words` say in which fabrics a quilt uses it.
    `always` is whether it uses it in no others."""

    names: Mapping[str, str]
    fills: Mapping[str, Fill]
    dress: Dress | None = None
    words: tuple[str, ...] = ()
    always: bool = True
    prints: tuple[str, ...] = ()  # those of its fabrics whose print has a direction

    @property
    def lightness(self) -> dict[str, float]:
        """How light each role is as it is drawn: L*, 0 black to 100 white."""
        return {role: self.fills[name].lightness for role, name in self.names.items()}

    def draft(self, draft: Draft) -> Draft:
        """The same block, its pieces of those cloths."""
        pieces = tuple(replace(each, fabric=self.names[each.fabric]) for each in draft.pieces)
        return replace(draft, pieces=pieces, dress=self.dress)

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
    return Worn({role: role for role in fabric_order(draft)}, fills_of(draft), draft.dress)


def always_worn(draft: Draft, worn: Worn | None) -> Worn:
    """How a block is shown on what serves all its copies: in a quilt's fabrics where those are always the
    same, else in its own roles, with the same words."""
    if worn and not worn.always:
        return replace(own_roles(draft), words=worn.words, prints=worn.prints)
    return worn or own_roles(draft)


def in_quilt(quilt: Quilt, index: int) -> Worn:
    """A block in the fabrics in which a quilt uses it most often; of equals the first placed."""
    titles, fills = fabric_titles(quilt), quilt_fills(quilt)
    roles = fabric_order(quilt.blocks[index].draft)
    uses = [
        ({role: titles[dict(choice)[role]] for role in roles}, times)
        for choice, times in _choices(quilt, index).items()
    ]
    names, times = max(uses, key=lambda each: each[1])
    shown = {titles[fabric]: fill for fabric, fill in fills.items()}
    dress = _dress(quilt, tuple((titles[fabric], fabric) for fabric in fills))
    made = _made_words(quilt, index)
    worn = {name for name_of, _ in uses for name in name_of.values()}
    prints = tuple(
        titles[each.name] for each in quilt.fabrics if each.is_directional and titles[each.name] in worn
    )
    if len(uses) == 1:
        return Worn(names, shown, dress, (words.in_fabrics(names), *made), prints=prints)
    others = [(each, count) for each, count in uses if each != names]
    told = (*words.in_choices(names, times, others), *made)
    return Worn(names, shown, dress, told, always=False, prints=prints)


def _made_words(quilt: Quilt, index: int) -> tuple[str, ...]:
    """How many of a block are made, and how many of them mirrored; nothing where there is but one."""
    every = [placed.mirrored for placed in quilt.placed if placed.block == index]
    many = (words.make_words(len(every)),) if len(every) > 1 else ()
    return (*many, words.mirrored_words(len(every), sum(every))) if any(every) else many


def _choices(quilt: Quilt, index: int) -> dict[tuple[tuple[str, str], ...], int]:
    """Every choice of fabrics in which a quilt uses a block, role by role, with how often; the first placed
    first."""
    found: dict[tuple[tuple[str, str], ...], int] = {}
    for placed in quilt.placed:
        if placed.block == index:
            found[placed.fabrics] = found.get(placed.fabrics, 0) + 1
    return found


def _cloths(quilt: Quilt, index: int) -> dict[str, tuple[str, ...]]:
    """The fabrics that each role of a block is cut from, in order of mention."""
    order = fabric_names(quilt)
    found: dict[str, set[str]] = {}
    for choice in _choices(quilt, index):
        for role, fabric in choice:
            found.setdefault(role, set()).add(fabric)
    return {role: tuple(name for name in order if name in names) for role, names in found.items()}


def _worn_draft(quilt: Quilt, index: int, words: Mapping[str, str]) -> Draft:
    draft = quilt.blocks[index].draft
    names = {words[role]: names[0] for role, names in _cloths(quilt, index).items()}
    pieces = tuple(replace(piece, fabric=words[piece.fabric]) for piece in draft.pieces)
    return replace(draft, pieces=pieces, dress=_dress(quilt, tuple(names.items())))


def _dress(quilt: Quilt, names: tuple[tuple[str, str], ...]) -> Dress:
    """The quilt's cloths, by which a block's words for them are drawn."""
    return Dress(fabric_names(quilt), names, own_titles(quilt), tuple(stated_looks(quilt).items()))


def _merged(counts: Sequence[FabricCount], words: Mapping[str, str]) -> tuple[FabricCount, ...]:
    """Roles of one cloth are counted together."""
    found: dict[str, FabricCount] = {}
    for count in counts:
        word = words[count.fabric]
        so_far = found.get(word, FabricCount(word, 0, 0))
        found[word] = FabricCount(word, so_far.cut + count.cut, so_far.reversed + count.reversed)
    return tuple(found.values())
