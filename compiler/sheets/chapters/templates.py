"""Templates at true size: those of each block, and those of the setting and the borders."""

from __future__ import annotations

from collections.abc import Iterator

from ...quilt.counting import ALLOWANCE
from ...words.pages.booklet import SETTING_TEMPLATES, TEMPLATES, WHOLE_COUNTS
from ..arrange.block_sheets import block_leaves, template_leaves
from ..arrange.options import SheetOptions
from ..content import Chapter
from ..quilts.templates import setting_templates
from ..work import Work, WorkBlock


def block_templates(block: WorkBlock, options: SheetOptions) -> Chapter:
    """A block's page and its templates, one copy of each, in the quilt's cloths."""
    shown = block.dressed
    leaves = block_leaves(shown.draft, shown.templates, options, block.under_templates)
    return Chapter(block.titled(TEMPLATES), (), tuple(leaves))


def templates_of_setting(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """Those that the setting and the borders need, where there are any."""
    own = setting_templates(work.quilt, work.plan)
    if own:
        under = f"{work.under} · {WHOLE_COUNTS}"
        leaves = template_leaves(own, work.quilt.title, under, ALLOWANCE, options, "")
        yield Chapter(SETTING_TEMPLATES, (), tuple(leaves))


def templates(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """All of them."""
    for block in work.blocks:
        yield block_templates(block, options)
    if not work.alone:
        yield from templates_of_setting(work, options)
