"""What sheets are made of: a planned quilt, and how its maker sews each of its blocks. A block alone is the
quilt of one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final, Literal, get_args

from ..cutting.model import Template
from ..cutting.needs import SizedBlock
from ..cutting.plan_model import Cut, CuttingPlan
from ..drafting.model import Draft
from ..planning import PlannedQuilt
from ..sewing.foundations.foundation import foundations
from ..sewing.foundations.foundation_model import Foundations
from ..words.pages import counts as words
from ..words.say import INCHES, Say
from .arrange.options import SheetOptions
from .quilts.tables import FabricCuts, block_name, fabric_cuts, size_text, under_title
from .quilts.wearing import Worn, in_quilt, own_roles, worn_block

Way = Literal["templates", "foundation", "papers"]
WAYS: Final[tuple[Way, ...]] = get_args(Way)
"""How a block is to be sewn: with templates or the ruler, on paper foundations, or over paper pieces."""

CutOut = Literal["template", "paper-shape", ""]
"""What there is one of for each shape, by the way a block is sewn; on foundations nothing."""

Needle = Literal["machine", "hand", "papers"]
"""What sews a block: a machine, a needle along the marked line, or a needle over paper pieces."""

WayFor = Callable[[SizedBlock], Way]
"""The maker's choice for a block."""


def with_templates(block: SizedBlock) -> Way:
    """The way of who has chosen none."""
    return "templates"


class Work:
    """A planned quilt, or a block alone as a quilt of one, and how each of its blocks is sewn."""

    def __init__(self, planned: PlannedQuilt, way_for: WayFor = with_templates, say: Say = INCHES) -> None:
        """`say`: to whom it is told, with the ruler that it is cut by."""
        self.say = say
        self.planned, self.quilt, self.assembly = planned, planned.quilt, planned.assembly
        ways = [way_for(block) for block in self.quilt.blocks]
        self.blocks = tuple(WorkBlock(self, index, way) for index, way in enumerate(ways))

    @property
    def alone(self) -> bool:
        """Whether it is a block and no quilt: nothing is set."""
        return not self.quilt.setting

    @cached_property
    def plan(self) -> CuttingPlan:
        """Its plan, without offers to sew many units at a time by machine for blocks that are sewn over
        papers."""
        plan = self.planned.plan
        return replace(plan, cuts=tuple(
            replace(cut, offers=()) if cut.offers and self.is_over_papers(cut) else cut for cut in plan.cuts
        ))  # fmt: skip

    @cached_property
    def cuts(self) -> tuple[FabricCuts, ...]:
        """What is cut of each fabric."""
        return fabric_cuts(self.quilt, self.plan, self.say)

    def is_over_papers(self, cut: Cut) -> bool:
        """Whether a cut is for a block that is sewn over papers."""
        block = self.quilt.needs[cut.need].block if cut.need >= 0 else None
        return block is not None and self.blocks[block].cut_out == "paper-shape"

    @property
    def under(self) -> str:
        """`60in x 72in finished · version 1 · colourway Sea`."""
        return under_title(self.quilt, self.say)


@dataclass(frozen=True)
class WorkBlock:
    """One block of a work, at the size at which it is used there, by its index."""

    work: Work
    index: int
    way: Way

    @property
    def draft(self) -> Draft:
        """The block drafted, in its own roles."""
        return self.work.quilt.blocks[self.index].draft

    @property
    def templates(self) -> tuple[Template, ...]:
        """Its templates, in its own roles."""
        return self.work.quilt.blocks[self.index].templates

    @property
    def name(self) -> str:
        """Its title, with its size or version where two would have one name."""
        return block_name(self.work.quilt, self.index, self.work.say)

    @property
    def times(self) -> int:
        """How many of it there are."""
        return self.work.quilt.block_counts[self.index]

    @property
    def mirrored(self) -> int:
        """How many of those lie mirrored."""
        return sum(placed.mirrored for placed in self.work.quilt.placed if placed.block == self.index)

    @cached_property
    def found(self) -> Foundations:
        """Its foundations, or why there are none."""
        planned = self.work.planned.papers.get(self.index)
        return planned or foundations(self.draft, self.work.assembly.blocks[self.index].assembly)

    @property
    def on_paper(self) -> bool:
        """Whether it is sewn on foundations, and can be."""
        return self.way == "foundation" and self.index in self.work.planned.papers

    @property
    def cut_out(self) -> CutOut:
        """What is cut out once for each shape."""
        if self.way == "papers":
            return "paper-shape"
        return "" if self.on_paper else "template"

    def needle(self, options: SheetOptions) -> Needle:
        """What sews it: templates of finished size are for sewing by hand."""
        if self.way == "papers":
            return "papers"
        return "hand" if options.kind == "finished" else "machine"

    @cached_property
    def worn(self) -> Worn:
        """The fabrics in which it is shown."""
        return own_roles(self.draft) if self.work.alone else in_quilt(self.work.quilt, self.index)

    @cached_property
    def dressed(self) -> SizedBlock:
        """The block with every role called what it is cut from, for what serves all its copies."""
        block = self.work.quilt.blocks[self.index]
        return block if self.work.alone else worn_block(self.work.quilt, self.index)

    @property
    def under(self) -> str:
        """What stands under its title: `6in finished · version 2 · 10 times in Harbour Sampler`."""
        if self.work.alone:
            return self._under
        return words.times_in(self._under, self.times, self.work.quilt.title)

    @property
    def under_templates(self) -> str:
        """The same, saying what the counts on its templates are for."""
        if self.work.alone:
            return self._under
        return words.counts_for_one(self._under, self.times, self.work.quilt.title)

    @property
    def _under(self) -> str:
        size = size_text(self.work.say, self.draft.width, self.draft.height)
        return words.under_block(size, self.draft.version)

    def titled(self, title: str) -> str:
        """A chapter's title: `Steps`; in a quilt `Lock Gate: steps`."""
        return title if self.work.alone else words.chapter_of(self.name, title)
