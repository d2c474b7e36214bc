"""All sheets of one block: the block's own page, then its templates at true size.

Layout works in points as they should come out on paper. For a printer that shrinks, the page it fills is smaller
by what the check square measured, and every mark is enlarged by as much at the very end; so nothing in between
knows of the correction.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from ...cutting.model import Template
from ...drafting.model import Draft
from ...measure.fractions import ruler_text
from ..lettering import printable
from ..page import Document, Mark, Page, Segment, TextMark
from .block_page import block_page, table_height, table_marks
from .furniture import Heading, Paper, foot_marks, head_marks
from .legend import legend_of
from .options import SheetOptions
from .template_sheets import template_bodies

PAPERS: Final = {"letter": (612.0, 792.0), "a4": (210 / 25.4 * 72, 297 / 25.4 * 72)}

SAFETY: Final = {
    "block": "Scissors, blades and irons: follow the makers’ instructions and keep them from children.",
    "allowance": "Rotary blades are very sharp: cut away from yourself, close the blade after every cut, keep it from "
    "children; follow the maker’s instructions.",
    "finished": "Scissors are sharp: cut card away from your fingers, keep scissors and needles from children; follow "
    "the maker’s instructions.",
    "window": "Craft knives are sharp: cut on a mat, away from yourself, keep them from children; follow the maker’s "
    "instructions.",
}
"""One line for the work of the page."""


@dataclass(frozen=True, slots=True)
class Body:
    """One page before it has its head and foot."""

    title: str  # in bookmarks
    what: str
    below: str
    safety: str
    marks: list[Mark]


def arrange_block(draft: Draft, templates: Sequence[Template], options: SheetOptions) -> Document:
    """The sheets of a block: every template once, at true size when printed as the options foresee."""
    width, height = PAPERS[options.paper]
    paper = Paper(width * float(options.measured), height * float(options.measured))
    bodies = [*_block_bodies(draft, templates, paper), *_template_bodies(draft, templates, paper, options)]
    size = finished_size(draft)
    under = f"{size} finished · version {draft.version}"
    pages = []
    for number, body in enumerate(bodies, 1):
        heading = Heading(draft.title, under, body.what, body.below)
        signs = legend_of(body.marks, options, draft.trim.dots)
        marks = [
            *head_marks(paper, heading, number, len(bodies)),
            *body.marks,
            *foot_marks(paper, signs, body.safety, options.measured),
        ]
        if options.measured != 1:
            marks = [_enlarged(mark, 1 / float(options.measured)) for mark in marks]
        pages.append(Page(width, height, body.title, tuple(marks)))
    return Document(
        printable(draft.title), f"version {draft.version}, {size} finished", draft.maker, _keywords(draft), tuple(pages)
    )


def finished_size(draft: Draft) -> str:
    """`6in`, or `6in x 9in` where the sides differ."""
    wide, tall = ruler_text(draft.width), ruler_text(draft.height)
    return wide if wide == tall else f"{wide} x {tall}"


def _keywords(draft: Draft) -> str:
    return ", ".join(("patchwork", "quilt block", "templates", *draft.family, *draft.also))


def _block_bodies(draft: Draft, templates: Sequence[Template], paper: Paper) -> list[Body]:
    """The block's page, and pages for what its table of templates has no room for."""
    first = block_page(draft, templates, paper)
    bodies = [Body("Block", "the block", first.scale, SAFETY["block"], first.marks)]
    left, top, right, bottom = paper.body
    rest = list(first.left_over)
    while rest:
        count = len(rest)
        while table_height(count) > bottom - top:
            count -= 1
        marks = table_marks(rest[:count], (left, top, right, bottom))
        bodies.append(Body("Table of templates", "table of templates", "", SAFETY["block"], marks))
        rest = rest[count:]
    return bodies


def _template_bodies(
    draft: Draft, templates: Sequence[Template], paper: Paper, options: SheetOptions
) -> list[Body]:
    below = {
        "allowance": f"with {ruler_text(draft.allowance)} seam allowance",
        "finished": "finished size, for hand piecing: add the allowance as you cut",
        "window": "windows, for placing a motif: cut the inside out",
    }[options.kind]
    bodies = []
    for labels, marks in template_bodies(templates, paper, options):
        names = label_range(labels)
        bodies.append(Body(f"Templates {names}", f"templates {names}", below, SAFETY[options.kind], marks))
    return bodies


def label_range(labels: Sequence[str]) -> str:
    """`A`, or `A–C` for the first and the last of several."""
    return labels[0] if len(labels) == 1 else f"{labels[0]}–{labels[-1]}"


def _enlarged(mark: Mark, by: float) -> Mark:
    """The mark, larger about the page's corner, with its lines and letters."""
    if isinstance(mark, TextMark):
        return replace(mark, x=mark.x * by, y=mark.y * by, size=mark.size * by)
    clip = mark.clip and tuple(_larger(segment, by) for segment in mark.clip)
    dash = tuple(length * by for length in mark.dash)
    path = tuple(_larger(segment, by) for segment in mark.path)
    return replace(mark, path=path, clip=clip, dash=dash, width=mark.width * by)


def _larger(segment: Segment, by: float) -> Segment:
    return (segment[0], *(number * by for number in segment[1:]))  # type: ignore[return-value]
