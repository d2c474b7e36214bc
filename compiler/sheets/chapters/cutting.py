"""The cutting pictures, and the steps beside them once more for those who do not see them."""

from __future__ import annotations

from collections.abc import Iterator

from ...cutting.plan_model import ClothPlan
from ...words.pages.cutting import TITLE
from ...words.say import Say
from ..arrange.leaves import paper_for
from ..arrange.options import SheetOptions
from ..content import Chapter, List, Paragraph, Part, Section
from ..pictures.cutting_pages import cloth_title, cloth_words, cutting_leaves
from ..quilts.steps import step_lines
from ..work import Work


def cutting(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """The pictures of every cloth, with the order of the cuts."""
    leaves = cutting_leaves(work, paper_for(options))
    yield Chapter(TITLE, (), tuple(leaves), true_size=False, told=tuple(_told(work)))


def _told(work: Work) -> Iterator[Part]:
    for cuts in work.cuts:
        yield Section(cuts.title, cloth_words(cuts, work.say))
        for number, cloth in enumerate(cuts.plan.cloths, 1):
            title = cloth_title(cuts, cloth, number)
            if title:
                yield Paragraph(f"{title}:")
            yield List(tuple(_steps(work.say, cloth)), "number")


def _steps(say: Say, cloth: ClothPlan) -> Iterator[str]:
    """The steps, each with the strips that it is done to where they change."""
    over = ""
    for number, text in step_lines(say, cloth):
        if number:
            yield f"{over}{text}"
        over = "" if number else f"{text} "
