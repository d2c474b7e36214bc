"""How a quilt is finished once its top is sewn: its back, the three layers, the quilting, the binding."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from ...cutting.needs import BackingNeed, BindingNeed
from ...words.pages import finish as words
from ..arrange.options import SheetOptions
from ..content import Chapter, List, Paragraph
from ..quilts.tables import fabric_titles
from ..work import Work
from .needs import binding_length

FOLDED: Final = Fraction(7, 4)
"""Inches: binding strips cut at least so wide go folded in half round the edge, narrower ones singly."""


def finish(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """What is done once the top is sewn, in order."""
    steps = List(tuple(_steps(work)), "number")
    yield Chapter(words.TITLE, (Paragraph(words.YOUR_TOP), steps), joins=True)


def _steps(work: Work) -> Iterator[str]:
    backing, binding = work.quilt.backing, work.quilt.binding
    yield _back_words(work, backing) if backing else words.NO_BACK
    yield words.LAID
    yield words.QUILTED
    if binding:
        yield _binding_words(work, binding)
        yield words.sewn_on(work.say)
        yield words.TURNED
    else:
        yield words.NO_BINDING


def _back_words(work: Work, backing: BackingNeed) -> str:
    """How the back is joined from its panels."""
    say = work.say
    size = f"{say.on_ruler(backing.width)} x {say.on_ruler(backing.height)}"
    panels = next((each.backing_panels for each in work.plan.fabrics if each.fabric == backing.fabric), ())
    if len(panels) < 2:
        return words.one_back(size)
    return words.joined_back(say, len(panels), say.on_ruler(panels[0][1]), size)


def _binding_words(work: Work, binding: BindingNeed) -> str:
    """How the binding is joined and folded."""
    strips = next((cut.pieces for cut in work.plan.cuts if cut.part == "binding"), 1)
    fabric, length = fabric_titles(work.quilt)[binding.fabric], binding_length(binding, work.say)
    return words.binding_words(work.say, strips, fabric, length, binding.strip_width >= FOLDED)
