"""What to mind with the tools that the work asks for."""

from __future__ import annotations

from collections.abc import Iterator

from ...words.pages.safety import AT_MACHINE, BY_HAND, MINDED, TITLE, safety_words
from ..arrange.options import SheetOptions
from ..content import Chapter, List
from ..quilts.tools import by_rotary
from ..work import Work


def safety(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """What to mind with the tools that are used, the rotary cutter and the sewing machine among them or not.
    Whatever its blocks are sewn by, a quilt's top is sewn by machine."""
    by_papers = work.alone and work.blocks[0].cut_out == "paper-shape"
    machine = not work.alone or work.blocks[0].needle(options) == "machine"
    texts = (
        *safety_words(by_rotary(work.plan) and not by_papers),
        *(AT_MACHINE if machine else BY_HAND),
        MINDED,
    )
    yield Chapter(TITLE, (List(texts),), joins=True)
