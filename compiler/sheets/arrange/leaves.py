"""Pages before they are numbered, and how they become the pages of one document.

A leaf has its body and foot, and the words of its head; the head itself is set when it is known how many
leaves there are. So the sheets of a block are pages of their own, or of a quilt's, without a change.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...measure.record import record
from ..page import Mark, Page
from ..paper import paper_named
from .enlarge import enlarged
from .furniture import Heading, Paper, head_marks
from .options import SheetOptions


@record
class Leaf:
    """One page without its head. `bookmark` names it, inside `part` where it belongs to one."""

    heading: Heading
    marks: tuple[Mark, ...]
    bookmark: str
    part: str = ""


def paper_for(options: SheetOptions) -> Paper:
    """The page to fill: smaller than the paper by what the printer shrinks."""
    sheet = paper_named(options.paper)
    by = float(options.measured)
    return Paper(sheet.width_points * by, sheet.height_points * by)


def bound(leaves: Sequence[Leaf], options: SheetOptions) -> tuple[Page, ...]:
    """The leaves as pages, numbered from the first to the last."""
    sheet, paper = paper_named(options.paper), paper_for(options)
    pages = []
    for number, leaf in enumerate(leaves, 1):
        marks: Iterable[Mark] = (*head_marks(paper, leaf.heading, number, len(leaves)), *leaf.marks)
        marks = (enlarged(mark, 1 / float(options.measured)) for mark in marks)
        title = leaf.bookmark[:1].upper() + leaf.bookmark[1:]
        pages.append(Page(sheet.width_points, sheet.height_points, title, tuple(marks), leaf.part))
    return tuple(pages)
