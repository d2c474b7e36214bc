"""What you need for one block, and its cutting chart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import ceil, radians, sin, tan
from typing import Final, NamedTuple

from ...cutting.model import Template
from ...cutting.plan_model import Cut, CuttingPlan
from ...drafting.model import Draft
from ...measure.marks import RULER_STEP
from ...sewing.foundations.foundation_model import Foundations
from ...words.phrases import count_of
from ...words.say import by_ruler
from ...words.work.cuts import why_words
from ..arrange.block_sheets import finished_size
from ..arrange.swatches import fabric_order
from ..quilts.flow import Column, Row
from ..quilts.tools import tool_words
from ..quilts.words import ASLANT, cut_title, yield_words
from .block_cuts import block_cuts
from .content import Chapter, List, Paragraph, Part, Section, Table

SPARE: Final = 1.5
"""How much more cloth than the cuts cover is asked for: strips leave ends over, and one may go wrong."""

CLOTHS: Final = (
    ("a 5in square", 5, 5),
    ("a 10in square", 10, 10),
    ("a fat eighth, 9in x 21in", 9, 21),
    ("a fat quarter, 18in x 21in", 18, 21),
    ("1/2 yd, 18in x 42in", 18, 42),
    ("1 yd, 36in x 42in", 36, 42),
)
"""Pieces in which cloth is sold (common practice; fat quarter and fat eighth as in guides of the trade)."""

FABRIC_COLUMNS: Final = (
    Column("fabric", 150.0, bold=True),
    Column("pieces", 50.0, "end"),
    Column("have at hand", 170.0),
    Column("its cuts cover", 0.0),
)

CUT_COLUMNS: Final = (
    Column("template", 46.0, bold=True),
    Column("fabric", 70.0),
    Column("cut", 24.0, "end", bold=True),
    Column("what", 118.0, bold=True),
    Column("gives", 74.0),
    Column("why, and what then", 0.0),
)

CHART_NOTE: Final = (
    "Sizes are cut sizes, seam allowances counted in. Close the blade "
    "after every cut, cut away from yourself, keep it from children."
)


def block_plan(draft: Draft, templates: Sequence[Template], step: Fraction = RULER_STEP) -> CuttingPlan:
    """The block's cuts alone, without a plan for any cloth."""
    return CuttingPlan(block_cuts(draft, templates, step), (), step)


def needs_chapter(
    draft: Draft, templates: Sequence[Template], plan: CuttingPlan, found: Foundations | None, papers: bool
) -> Chapter:
    """What you need. `found`: the block is sewn on foundations; `papers`: over paper pieces by hand."""
    boxes = _patch_boxes(found) if found else _cut_boxes(plan)
    parts: list[Part] = [
        Paragraph(f"For one block, {finished_size(draft)} finished."),
        Section("Fabric", "for one block; multiply for more"),
        Table(FABRIC_COLUMNS, tuple(_fabric_rows(draft, boxes)), "Fabric for one block"),
        Section("Tools", "what these ways of cutting and sewing need"),
        List(FOUNDATION_TOOLS if found else PAPER_TOOLS if papers else tuple(tool_words(templates, plan))),
    ]
    return Chapter("What you need", tuple(parts))


class Box(NamedTuple):
    """What cuts take of the cloth: so many of a width along it and a height; `lead`: what is lost of a strip
    before the first, where they are cut aslant. Inches."""

    fabric: str
    width: float
    height: float
    times: int
    lead: float = 0.0

    @property
    def area(self) -> float:
        """Square inches of all of them."""
        return self.width * self.height * self.times


def _cut_boxes(plan: CuttingPlan) -> list[Box]:
    return [cut_box(cut) for cut in plan.cuts]


def cut_box(cut: Cut) -> Box:
    """Cuts aslant lie further apart along a strip than square across, and begin where its end is cut off."""
    tall = float(cut.strip or cut.height)
    if cut.kind in ASLANT and cut.angle:
        angle = radians(float(cut.angle))
        return Box(cut.fabric, float(cut.width) / sin(angle), tall, cut.cuts, tall / tan(angle))
    return Box(cut.fabric, float(cut.width), tall, cut.cuts)


def _patch_boxes(found: Foundations) -> list[Box]:
    return [
        Box(patch.fabric, float(patch.width), float(patch.height), 1)
        for section in found.sections
        for patch in section.patches
    ]


def _fabric_rows(draft: Draft, boxes: Sequence[Box]) -> Iterator[Row]:
    for fabric in fabric_order(draft):
        own = [each for each in boxes if each.fabric == fabric]
        pieces = sum(piece.fabric == fabric for piece in draft.pieces)
        area = sum(each.area for each in own)
        yield Row((fabric, str(pieces), cloth_words(own), f"{ceil(area):,} sq in"), fabric)


def cloth_words(boxes: Sequence[Box]) -> str:
    """The smallest piece of cloth, as it is sold, that the cuts come out of with some to spare."""
    area = SPARE * sum(each.area for each in boxes)
    short = max(min(each.width, each.height) for each in boxes)
    for words, low, high in CLOTHS:
        if area <= low * high and _in_strips(boxes, low, high):
            return words
    return f"{count_of(max(2, ceil(area / (36 * 42)), ceil(short / 36)), 'yard')}"


def _lying(box: Box) -> Box:
    """The box with its longer side along the strip, unless it is cut aslant."""
    if box.lead or box.width >= box.height:
        return box
    return box._replace(width=box.height, height=box.width)


def _in_strips(boxes: Sequence[Box], low: float, high: float) -> bool:
    """Whether the cuts come out of strips laid across a cloth of that size, the tallest first, one after
    another."""
    strips: list[float] = []  # what is left of each
    used = 0.0
    for box in sorted(map(_lying, boxes), key=lambda each: (-each.height, -each.width)):
        for _ in range(box.times):
            at = next((n for n, left in enumerate(strips) if left >= box.width), None)
            if at is None:
                strips.append(high - box.lead)
                used += box.height
                at = len(strips) - 1
            if strips[at] < box.width or used > low:
                return False
            strips[at] -= box.width
    return True


FOUNDATION_TOOLS: Final = (
    "Thin paper that goes through your printer and tears well, for the foundations.",
    "Rotary cutter, mat, and a ruler with a line for the allowance, to trim along the folded paper.",
    "Card or a second ruler, to fold the paper along.",
    "Sewing machine with a strong needle, size 90/14, thread, pins, and a seam ripper.",
    "Iron and pressing board.",
)
PAPER_TOOLS: Final = (
    "Light card or heavy paper that goes through your printer, for the papers, and paper scissors.",
    "Fabric scissors, fine needles, matching thread, basting thread or a glue pen, clips or pins.",
    "Iron and pressing board.",
)
"""Tools of a way of sewing (common practice, no published source)."""


def cutting_chapter(templates: Sequence[Template], plan: CuttingPlan) -> Chapter:
    """The cutting chart: every template in every fabric, by the ruler or round the template, and why."""
    labels = [template.label for template in templates]
    letters = [label for label, template in zip(labels, templates, strict=True) for _ in template.counts]
    rows = tuple(
        _cut_row(letter, cut, plan.ruler_step) for letter, cut in zip(letters, plan.cuts, strict=True)
    )
    intro = (
        "‘Cut’ is how many times you cut that size. Where a rule of the ruler serves, you need no template; "
        "the template then only checks the piece."
    )
    return Chapter(
        "Cutting chart",
        (Paragraph(intro), Table(CUT_COLUMNS, rows, "Cuts for one block")),
        note=CHART_NOTE,
        joins=True,
        whole=True,
    )


def _cut_row(letter: str, cut: Cut, step: Fraction) -> Row:
    why = why_words(by_ruler(step), cut)
    cells = (letter, cut.fabric, str(cut.cuts), cut_title(cut, step), yield_words(cut), why)
    return Row(cells, letter)
