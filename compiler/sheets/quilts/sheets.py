"""All sheets of one quilt: its picture, what you need, the counts, the cutting chart, the cutting
pictures, and every
block's templates, as one document or a part at a time."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final, Literal, get_args

from ...cutting.plan_model import CuttingPlan
from ...quilt.counting import ALLOWANCE
from ...quilt.model import Quilt
from ..arrange.block_sheets import block_leaves, template_leaves
from ..arrange.leaves import Leaf, bound, paper_for
from ..arrange.options import SheetOptions
from ..drawing.lettering import printable
from ..page import Document
from .chart import chart_leaves
from .counts import counts_leaves
from .cutting import cutting_leaves
from .picture import picture_leaves
from .supplies import supplies_leaves
from .tables import block_name, size_text
from .templates import setting_templates
from .wearing import worn_block

QuiltPart = Literal["picture", "supplies", "counts", "chart", "cutting", "templates"]
QUILT_PARTS: Final[tuple[QuiltPart, ...]] = get_args(QuiltPart)
"""The parts in the order of the document."""


def arrange_quilt(quilt: Quilt, plan: CuttingPlan, options: SheetOptions) -> Document:
    """The whole document."""
    leaves = [leaf for part in QUILT_PARTS for leaf in part_leaves(quilt, plan, part, options)]
    return _document(quilt, leaves, options)


def arrange_quilt_part(
    part: QuiltPart,
    quilt: Quilt,
    plan: CuttingPlan,
    options: SheetOptions,
) -> Document:
    """One part as a document of its own. It has no pages where a quilt of plain cloth has no templates."""
    return _document(quilt, part_leaves(quilt, plan, part, options), options)


def part_leaves(
    quilt: Quilt,
    plan: CuttingPlan,
    part: QuiltPart,
    options: SheetOptions,
) -> list[Leaf]:
    """One part's pages before they are numbered."""
    paper = paper_for(options)
    makers: dict[QuiltPart, Callable[[], list[Leaf]]] = {
        "picture": lambda: list(picture_leaves(quilt, paper)),
        "supplies": lambda: supplies_leaves(quilt, plan, paper),
        "counts": lambda: counts_leaves(quilt, plan, paper),
        "chart": lambda: chart_leaves(quilt, plan, paper),
        "cutting": lambda: cutting_leaves(quilt, plan, paper),
        "templates": lambda: list(_template_leaves(quilt, plan, options)),
    }
    return makers[part]()


def _template_leaves(quilt: Quilt, plan: CuttingPlan, options: SheetOptions) -> Iterator[Leaf]:
    """Every block's sheets, one copy of each; then templates that the setting and the borders need."""
    for index in range(len(quilt.blocks)):
        block = worn_block(quilt, index)
        draft = block.draft
        size = size_text(draft.width, draft.height)
        uses = quilt.block_counts[index]
        under = (
            f"{size} finished · version {draft.version} · counts are for one of the {uses} in {quilt.title}"
        )
        if uses == 1:
            under = f"{size} finished · version {draft.version} · one in {quilt.title}"
        part = f"Templates: {block_name(quilt, index)}"
        yield from block_leaves(draft, block.templates, options, under, part)
    own = setting_templates(quilt, plan)
    if own:
        size = size_text(quilt.width, quilt.height)
        under = f"{size} finished · version {quilt.version} · counts are for the whole quilt"
        yield from template_leaves(
            own, quilt.title, under, ALLOWANCE, options, "Templates: setting and borders"
        )


def _document(quilt: Quilt, leaves: list[Leaf], options: SheetOptions) -> Document:
    size = size_text(quilt.width, quilt.height)
    subject = f"version {quilt.version}, {size} finished"
    if quilt.colourway:
        subject += f", colourway {quilt.colourway}"
    titles = dict.fromkeys(block.draft.title for block in quilt.blocks)
    keywords = ", ".join(("patchwork", "quilt", "cutting plan", "templates", *titles))
    return Document(printable(quilt.title), subject, quilt.maker, keywords, bound(leaves, options))
