"""The drafting exercise: the block on graph paper with its ruling named, or its construction by ruler and
compass where that is short; and a page to draft it on, true to size."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Final

from ...drafting.model import Draft
from ...measure.length import POINTS_PER_INCH
from ...measure.tolerance import NEAR
from ...words.numbers import ruler_text
from ..arrange.block_sheets import Body, finished_size, leaf_of
from ..arrange.furniture import Paper
from ..arrange.leaves import Leaf, paper_for
from ..arrange.options import SheetOptions
from ..arrange.paths import Placement, box_path
from ..arrange.style import GREY
from ..content import Chapter, List, Paragraph, Part
from ..exercise.construction import Construction, construction_of
from ..exercise.ruling import Ruling, arc_centers, ruling_of
from ..page import Mark, PathMark
from ..pictures.exercise_picture import exercise_picture, ruling_marks
from .envelope_chapters import CutOut

TITLE: Final = "Drafting exercise"
SAFETY: Final = (
    "Compass points are sharp: close the compass when you lay it down; keep it from small children."
)

NONE: Final = (
    "There is none for this block: not every corner lies on a crossing of graph paper, and it has no short "
    "construction by ruler and compass."
)

SIZES: Final = (440.0, 360.0, 280.0)  # points of the longer side of the drawing, as the page has room

LAID: Final[dict[CutOut, str]] = {
    "template": " Then lay a template on its piece: its sewing line lies on the seams.",
    "paper shape": " Then lay a paper on its piece, print down: they agree.",
    "": "",
}
"""The last check of a drawing, with what was cut out for the block."""


def has_exercise(draft: Draft) -> bool:
    """Whether there is a way to draft the block that a class can follow."""
    return _way_of(draft) is not None


def exercise_chapter(
    draft: Draft, options: SheetOptions, under: str, cut_out: CutOut = "template"
) -> Chapter:
    """The chapter, with a page to draft on; or that there is none."""
    way = _way_of(draft)
    if way is None:
        return Chapter(TITLE, (Paragraph(NONE),), joins=True)
    paper = paper_for(options)
    parts = tuple(_parts(draft, way, cut_out, paper))
    sheets = tuple(_practice_leaves(draft, way, options, under))
    return Chapter(TITLE, parts, sheets, joins=True, whole=True)


def _way_of(draft: Draft) -> Ruling | Construction | None:
    """How the block is drafted: on graph paper if it can be."""
    return ruling_of(draft) or construction_of(draft)


def _parts(draft: Draft, way: Ruling | Construction, cut_out: CutOut, paper: Paper) -> Iterator[Part]:
    if isinstance(way, Ruling):
        yield Paragraph(f"On graph paper: {way.name} ruling.", strong=True)
        yield List(tuple(_graph_words(draft, way, cut_out, paper)), "number")
    else:
        yield Paragraph("Not on a grid: by ruler and compass.", strong=True)
        yield List(way.steps, "number")
    largest, *others = (exercise_picture(draft, way, size) for size in SIZES)
    yield replace(others[-1], larger=(largest, *others[:-1]))
    if not isinstance(way, Ruling) and not _fits(draft, paper):
        yield Paragraph(
            "The block is larger than a page: tape sheets of paper together for it, or draft it at half size "
            "with every measure halved."
        )


def _graph_words(draft: Draft, ruling: Ruling, cut_out: CutOut, paper: Paper) -> Iterator[str]:
    """How it is drawn on its ruling."""
    step = float(ruling.step)
    across, down = (round(float(each) / step) for each in (draft.width, draft.height))
    size = finished_size(draft)
    yield (
        f"Every corner of this block lies on a crossing of {ruling.name} graph paper: {across} squares by "
        f"{down}."
    )
    wide, tall = _ruled_size(ruling, paper)
    sheets = ceil(draft.width / wide) * ceil(draft.height / tall)
    if sheets > 1:
        yield (
            f"The sheet to draft on holds {ruler_text(wide)} x {ruler_text(tall)}: print it {sheets} times, "
            "and tape the sheets together, line on line."
        )
    yield f"Draw the outline, {size}, along lines of the paper. Mark each column and row of the block’s grid."
    sides = [side for piece in draft.pieces for side in piece.ring]
    if any(side.edge.arc is None and not side.outside for side in sides):
        yield "Draw the longest seams first, from crossing to crossing, then the shorter ones between them."
    if arc_centers(draft):
        yield (
            "For each arc set the compass on its center, a crossing that bears a small cross in the picture, "
            "and open it to the arc’s start."
        )
    counted = ", and count the pieces" if len(draft.pieces) > 1 else ""
    yield f"Check: measure both diagonals{counted}.{LAID[cut_out]}"


# ---- the page to draft on --------------------------------------------------------------------------


def _practice_leaves(
    draft: Draft, way: Ruling | Construction, options: SheetOptions, under: str
) -> Iterator[Leaf]:
    """A page of graph paper, true to size. Where the block lies on no ruling: its outline, if a page holds
    it."""
    paper = paper_for(options)
    if isinstance(way, Ruling):
        what = f"{way.name} graph paper"
        marks = _graph_page(way, paper)
    elif _fits(draft, paper):
        what, marks = "plain drafting paper", _plain_page(draft, paper)
    else:
        return
    yield leaf_of(
        Body(what, "true to size, to draft on", SAFETY, marks),
        draft.title,
        under,
        draft.trim.dots,
        paper,
        options,
        "",
    )


def _ruled_size(ruling: Ruling, paper: Paper) -> tuple[Fraction, Fraction]:
    """How wide and tall the ruling on a page is: as many squares as it holds. Inches."""
    left, top, right, bottom = paper.body
    step = float(ruling.step) * POINTS_PER_INCH
    return int((right - left) / step + NEAR) * ruling.step, int((bottom - top) / step + NEAR) * ruling.step


def _graph_page(ruling: Ruling, paper: Paper) -> list[Mark]:
    """As many squares of the ruling as the page holds."""
    left, top, right, _ = paper.body
    wide, tall = _ruled_size(ruling, paper)
    x = left + (right - left - float(wide) * POINTS_PER_INCH) / 2
    return list(ruling_marks(wide, tall, ruling, Placement(0.0, x, top)))


def _fits(draft: Draft, paper: Paper) -> bool:
    """Whether a page holds the block, true to size."""
    left, top, right, bottom = paper.body
    wide, tall = (float(each) * POINTS_PER_INCH for each in (draft.width, draft.height))
    return wide <= right - left and tall <= bottom - top


def _plain_page(draft: Draft, paper: Paper) -> list[Mark]:
    """The block's outline."""
    left, top, right, bottom = paper.body
    wide, tall = (float(each) * POINTS_PER_INCH for each in (draft.width, draft.height))
    x, y = (left + right - wide) / 2, (top + bottom - tall) / 2
    return [PathMark(box_path(x, y, x + wide, y + tall), GREY, 0.5, (), None, "outline")]
