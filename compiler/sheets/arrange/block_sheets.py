"""All sheets of one block: the block's own page, then its templates at true size.

Layout works in points as they should come out on paper. For a printer that shrinks, the page it fills is
smaller by what the check square measured, and every mark is enlarged by as much at the very end; so nothing
in between knows of the correction.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from ...cutting.model import Template
from ...drafting.model import Draft
from ...measure.record import record
from ...words.pages.templates import (
    BLOCK,
    FABRICS,
    KEYWORDS,
    NOTES,
    SAFETY,
    TABLE,
    about_block,
    kind_words,
    size_and_version,
    templates_words,
    tiled_words,
)
from ...words.say import Say
from ..drawing.lettering import printable
from ..page import Document, Mark
from .block_page import BlockPage, block_page
from .furniture import Heading, Paper, foot_marks, map_marks
from .leaves import Leaf, bound, paper_for
from .legend import legend_of
from .notes import note_pages
from .options import SheetOptions
from .page_bound import bounded, pages_covered, refuse_too_many
from .swatches import SWATCH_ROW, fills_of, strip_marks, strip_of
from .table import pages_of
from .template_sheets import template_pages


@record
class Body:
    """One page before it has its head and foot."""

    what: str  # "templates A–C": at the head, and in bookmarks
    below: str
    safety: str
    marks: list[Mark]
    map: tuple[Mark, ...] = ()  # of tiles, for the foot


def arrange_block(draft: Draft, templates: Sequence[Template], options: SheetOptions) -> Document:
    """The sheets of a block: every template once, at true size when printed as the options foresee."""
    size = finished_size(draft, options.say)
    leaves = block_leaves(draft, templates, options, size_and_version(size, draft.version))
    about = about_block(size, draft.version)
    pages = bound(leaves, options)
    return bounded(Document(printable(draft.title), about, draft.maker, _keywords(draft), pages))


def block_leaves(
    draft: Draft, templates: Sequence[Template], options: SheetOptions, under: str, part: str = ""
) -> list[Leaf]:
    """The block's pages before they are numbered. `under` stands beneath the title."""
    paper = paper_for(options)
    bodies = _block_bodies(draft, templates, paper, options.say)
    bodies += _template_bodies(templates, draft.allowance, paper, options)
    return [leaf_of(body, draft.title, under, draft.trim.dots, paper, options, part) for body in bodies]


def template_leaves(
    templates: Sequence[Template],
    title: str,
    under: str,
    allowance: Fraction,
    options: SheetOptions,
    part: str,
) -> list[Leaf]:
    """Pages of templates that belong to no block."""
    paper = paper_for(options)
    bodies = _template_bodies(templates, allowance, paper, options)
    dots = templates[0].dot_width
    return [leaf_of(body, title, under, dots, paper, options, part) for body in bodies]


def leaf_of(
    body: Body, title: str, under: str, dots: Fraction, paper: Paper, options: SheetOptions, part: str
) -> Leaf:
    """The body with its foot, and the words of its head."""
    marks = (
        *body.marks,
        *foot_marks(paper, legend_of(body.marks, options, dots), body.safety, options),
        *map_marks(paper, body.map),
    )
    return Leaf(Heading(title, under, body.what, body.below), marks, body.what, part)


def finished_size(draft: Draft, say: Say) -> str:
    """`6in`, or `6in x 9in` where the sides differ."""
    wide, tall = say.length(draft.width), say.length(draft.height)
    return wide if wide == tall else f"{wide} x {tall}"


def _keywords(draft: Draft) -> str:
    return ", ".join((*KEYWORDS, *draft.family, *draft.also))


def _block_bodies(draft: Draft, templates: Sequence[Template], paper: Paper, say: Say) -> list[Body]:
    """The block's page, and pages for what it has no room for: notes, fabrics and templates."""
    first = block_page(draft, templates, paper, say)
    bodies = [Body(BLOCK, first.scale, SAFETY["block"], first.marks)]
    notes = note_pages(first.more_notes, paper.body)
    bodies += [Body(NOTES, "", SAFETY["block"], marks) for marks in notes]
    bodies += [Body(FABRICS, "", SAFETY["block"], marks) for marks in _fabric_pages(draft, first, paper)]
    more = pages_of(first.more_templates, paper.body, say)
    return [*bodies, *(Body(TABLE, "", SAFETY["block"], marks) for marks in more)]


def _fabric_pages(draft: Draft, first: BlockPage, paper: Paper) -> Iterator[list[Mark]]:
    """Swatches of the fabrics that the block's own page does not name."""
    left, top, right, bottom = paper.body
    fills, rest = fills_of(draft), first.more_fabrics
    while rest:
        strip = strip_of(rest, right - left, int((bottom - top) / SWATCH_ROW))
        yield strip_marks(strip, fills, left, top)
        rest = strip.left_over


def _template_bodies(
    templates: Sequence[Template], allowance: Fraction, paper: Paper, options: SheetOptions
) -> list[Body]:
    below = kind_words(options.say, options.kind, allowance)
    safety = SAFETY[options.kind]
    refuse_too_many(pages_covered(templates, paper, options), "templates-at-least")
    packed = template_pages(templates, paper, options)
    bodies: list[tuple[int, Body]] = []
    for page in packed.pages:
        what = templates_words([template.label for template in templates], page.templates)
        bodies.append((page.templates[0], Body(what, below, safety, page.marks)))
    if packed.oversize:
        from .tiled_sheets import tiled_pages, tiles_of

        tiles = sum(tiles_of(templates[number], paper, options) for number in packed.oversize)
        refuse_too_many(len(packed.pages) + tiles)
    for number in packed.oversize:
        for tile in tiled_pages(templates[number], paper, options):
            what = tiled_words(templates[number].label, tile.name)
            bodies.append((number, Body(what, below, safety, tile.marks, tile.map)))
    return [body for _, body in sorted(bodies, key=lambda each: each[0])]
