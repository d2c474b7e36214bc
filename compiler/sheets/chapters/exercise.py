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
from ...words.pages import exercise as words
from ...words.pages.booklet import DRAFT_ON, DRAFT_UNDER
from ...words.say import Say
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
from ..work import CutOut, Work, WorkBlock

SIZES: Final = (440.0, 360.0, 280.0)  # points of the longer side of the drawing, as the page has room


def has_exercise(block: WorkBlock, say: Say) -> bool:
    """Whether there is a way to draft the block that a class can follow."""
    return _way_of(block.draft, say) is not None


def exercise(block: WorkBlock, options: SheetOptions) -> Chapter:
    """The chapter, with a page to draft on; or that there is none. In a quilt one page of graph paper serves
    all blocks of its ruling: see `drafting_paper`."""
    way, title = _way_of(block.draft, options.say), block.titled(words.TITLE)
    if way is None:
        return Chapter(title, (Paragraph(words.NONE),), joins=True)
    parts = tuple(_parts(block.draft, way, block.cut_out, paper_for(options), options.say))
    own = block.work.alone or not isinstance(way, Ruling)
    sheets = tuple(_practice_leaves(block.draft, way, options, block.under)) if own else ()
    return Chapter(title, parts, sheets, joins=True, whole=True)


def drafting_paper(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """A quilt's graph papers, one of each ruling."""
    papers: dict[str, Leaf] = {}
    for block in work.blocks:
        way = _way_of(block.draft, options.say)
        if isinstance(way, Ruling):
            leaves = _practice_leaves(block.draft, way, options, DRAFT_UNDER, work.quilt.title)
            papers = dict.fromkeys([way.name], next(leaves)) | papers
    if papers and not work.alone:
        yield Chapter(DRAFT_ON, (), tuple(papers.values()))


def _way_of(draft: Draft, say: Say) -> Ruling | Construction | None:
    """How the block is drafted: on graph paper if it can be."""
    return ruling_of(draft, say.unit) or construction_of(draft, say)


def _parts(
    draft: Draft, way: Ruling | Construction, cut_out: CutOut, paper: Paper, say: Say
) -> Iterator[Part]:
    if isinstance(way, Ruling):
        yield Paragraph(words.on_ruling(way.name), strong=True)
        yield List(tuple(_graph_words(draft, way, cut_out, paper, say)), "number")
    else:
        yield Paragraph(words.BY_COMPASS, strong=True)
        yield List(way.steps, "number")
    largest, *others = (exercise_picture(draft, way, size) for size in SIZES)
    yield replace(others[-1], larger=(largest, *others[:-1]))
    if not isinstance(way, Ruling) and not _fits(draft, paper):
        yield Paragraph(words.TOO_LARGE)


def _graph_words(draft: Draft, ruling: Ruling, cut_out: CutOut, paper: Paper, say: Say) -> Iterator[str]:
    """How it is drawn on its ruling."""
    step = float(ruling.step)
    across, down = (round(float(each) / step) for each in (draft.width, draft.height))
    yield words.on_crossings(ruling.name, across, down)
    wide, tall = _ruled_size(ruling, paper)
    sheets = ceil(draft.width / wide) * ceil(draft.height / tall)
    if sheets > 1:
        yield words.taped(say.size(wide, tall), sheets)
    yield words.outline_words(finished_size(draft, say))
    sides = [side for piece in draft.pieces for side in piece.ring]
    if any(side.edge.arc is None and not side.outside for side in sides):
        yield words.LONGEST_FIRST
    if arc_centers(draft):
        yield words.ARCS
    yield words.check_words(len(draft.pieces) > 1, cut_out)


# ---- the page to draft on --------------------------------------------------------------------------


def _practice_leaves(
    draft: Draft, way: Ruling | Construction, options: SheetOptions, under: str, title: str = ""
) -> Iterator[Leaf]:
    """A page of graph paper, true to size. Where the block lies on no ruling: its outline, if a page holds
    it."""
    paper = paper_for(options)
    if isinstance(way, Ruling):
        what, marks = words.graph_paper(way.name), _graph_page(way, paper)
    elif _fits(draft, paper):
        what, marks = words.PLAIN_PAPER, _plain_page(draft, paper)
    else:
        return
    body = Body(what, words.TO_DRAFT_ON, words.SAFETY, marks)
    yield leaf_of(body, title or draft.title, under, draft.trim.dots, paper, options, "")


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
