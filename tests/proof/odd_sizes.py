"""Templates at odd sizes: every library block at many sizes from 2in to 20in, on both papers, in all three
kinds, with words of its own and with the longest that a file may say. Reads the pages as they are drawn.

On every page every mark lies within the margins; on pages of whole templates no outline and no line of words
meets another template's; and every template is printed, whole or in tiles. Run by hand for the whole count:

    python tests/proof/odd_sizes.py [SIZES=200] [SEED=1]
"""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, product
from math import hypot
from pathlib import Path
from random import Random
from time import process_time
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).parent.parent))

from piecewright.cutting.model import FabricCount, Template
from piecewright.cutting.templates.making import make_templates
from piecewright.drafting.model import Draft
from piecewright.drafting.resize import resize
from piecewright.language.limits import NAME_LETTERS, TITLE_LETTERS
from piecewright.sheets.arrange.beside import AWAY, words_box
from piecewright.sheets.arrange.block_sheets import arrange_block
from piecewright.sheets.arrange.cutout import outline_of
from piecewright.sheets.arrange.label import beside_lines
from piecewright.sheets.arrange.leaves import paper_for
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.arrange.paths import CHORD_ERROR
from piecewright.sheets.arrange.template_sheets import template_pages
from piecewright.sheets.page import Mark, Page, PathMark, TextMark
from shapely import box
from shapely.geometry import Polygon
from support.arranged import Box, extent, rings, tight_box
from support.library import library_drafts

SMALLEST, LARGEST = 2, 20  # inches
STEPS = 100  # sizes of an inch: 7.15in among them
PAPERS = ("letter", "a4")
KINDS = ("allowance", "finished", "window")
OPTIONS = tuple(SheetOptions(paper=paper, kind=kind) for paper, kind in product(PAPERS, KINDS))
WHOLE = 40  # of so many sizes one is set as a whole document
BEYOND = 0.6 + CHORD_ERROR * 72  # points: half a line, and by how much an arc bends out over its chords
EDGE = 17.5  # points: a quarter inch from the paper's edge, less half a line


class Try(NamedTuple):
    """A block at one size, to be set in one way."""

    where: str
    number: int
    draft: Draft
    templates: tuple[Template, ...]
    options: SheetOptions


def odd_sizes(title: str, count: int, seed: int = 1) -> list[Fraction]:
    """That many widths in inches, the same ones in every run; each block has its own."""
    random = Random(f"{title} {seed}")
    return sorted(Fraction(random.randint(SMALLEST * STEPS, LARGEST * STEPS), STEPS) for _ in range(count))


def at_width(draft: Draft, width: Fraction) -> tuple[Draft, tuple[Template, ...]] | None:
    """The block at that width and its templates; None where its allowances have no room at that size."""
    sized = resize(draft, width, draft.height * width / draft.width)
    made = make_templates(sized)
    return None if made.value is None else (sized, made.value)


def wordy(template: Template) -> Template:
    """The template with as many words as a quilt can give it: cut of many fabrics of long names."""
    fabrics = [f"{number} {'calico or gingham ' * 9}"[: 2 * NAME_LETTERS] for number in range(12)]
    return replace(
        template,
        block_title=("Long " * TITLE_LETTERS)[:TITLE_LETTERS],
        maker=("Maker " * TITLE_LETTERS)[:TITLE_LETTERS],
        blocks=1_000,
        counts=tuple(FabricCount(fabric, 100, 100) for fabric in fabrics),
    )


def faults(templates: Sequence[Template], pages: Sequence[Page]) -> Iterator[str]:
    """What is amiss with the pages of templates."""
    for number, page in enumerate(pages, 1):
        for mark in page.marks:
            left, top, right, bottom = _seen(mark)
            if min(left, top, page.width - right, page.height - bottom) < EDGE:
                yield f"page {number}: {mark.role} {mark.subject} leaves the paper"
        if "tile" not in page.title.casefold():
            labels = {each.label for each in templates}
            yield from (f"page {number}: {said}" for said in _meetings(page, labels))
    drawn = {mark.subject for page in pages for mark in page.marks if mark.role in ("cut", "sew")}
    yield from (f"template {each.label} is not printed" for each in templates if each.label not in drawn)


def _seen(mark: Mark) -> Box:
    """The box of what is seen of a mark: where a clip shows a part of it, what both have in common."""
    seen = extent(mark) if isinstance(mark, PathMark) or mark.turned else tight_box(mark)
    if isinstance(mark, PathMark) and mark.clip is not None:
        whole = extent(replace(mark, clip=None))
        seen = max(seen[0], whole[0]), max(seen[1], whole[1]), min(seen[2], whole[2]), min(seen[3], whole[3])
    return seen


def _meetings(page: Page, labels: set[str]) -> Iterator[str]:
    """Templates that meet each other on a page, or each other's words."""
    covered: dict[str, list[Polygon]] = {}
    for mark in page.marks:
        if mark.subject in labels and mark.role in ("cut", "sew") and isinstance(mark, PathMark):
            covered.setdefault(mark.subject, []).extend(Polygon(ring) for ring in rings(mark)[:1])
        elif mark.subject in labels and mark.role == "label" and isinstance(mark, TextMark):
            covered.setdefault(mark.subject, []).append(box(*extent(mark)))
    for (one, shapes), (other, others) in combinations(covered.items(), 2):
        if any(shape.intersects(beside) for shape, beside in product(shapes, others)):
            yield f"{one} meets {other}"


def in_danger(template: Template, options: SheetOptions) -> bool:
    """Whether words beside it may decide if the template fits the page: others fit or are tiled anyhow."""
    left, top, right, bottom = paper_for(options).body
    xs, ys = zip(*outline_of(template, 0.0, options), strict=True)
    wide, tall = max(xs) - min(xs), max(ys) - min(ys)
    room = (right - left, bottom - top)
    words = max(words_box(beside_lines(template), len(template.grain))) + AWAY
    return hypot(wide, tall) + words >= min(room) and max(wide, tall) <= hypot(*room)


def lies_well(template: Template, options: SheetOptions) -> Iterator[str]:
    """What is amiss with a template on pages of its own: it is to be tiled, or all of it lies in the body
    (the words along a window's card lie inside its outline)."""
    paper = paper_for(options)
    left, top, right, bottom = paper.body
    laid = template_pages((template,), paper, options)
    if (len(laid.pages), laid.oversize) not in ((1, []), (0, [0])):
        yield f"template {template.label} on {len(laid.pages)} pages, {laid.oversize} to be tiled"
    for mark in (mark for page in laid.pages for mark in page.marks if mark.role != "ring"):
        x1, y1, x2, y2 = _seen(mark)
        if min(x1 - left, y1 - top, right - x2, bottom - y2) < -BEYOND:
            yield f"{mark.role} of {template.label} leaves the page's body"


def tries(title: str, draft: Draft, count: int, seed: int, *, every: bool) -> Iterator[Try]:
    """The block at so many sizes, every fourth with long words; in `every` option or in one after another."""
    for number, width in enumerate(odd_sizes(title, count, seed)):
        made = at_width(draft, width)
        if made is not None:
            sized, templates = made
            if number % 4 == 3:
                templates = tuple(map(wordy, templates))
            for options in OPTIONS if every else (OPTIONS[number % len(OPTIONS)],):
                where = f"{title} at {float(width)}in, {options.paper}, {options.kind}"
                yield Try(where, number, sized, templates, options)


def main(count: int, seed: int) -> int:
    """Every block at that many sizes, on every paper and in every kind: the faults, a line each. Templates
    that words might make too large each by itself at every size; the whole document at every fortieth."""
    found = tried = fitted = whole = 0
    for title, draft in library_drafts():
        print(f"{process_time():6.0f}s {title}", file=sys.stderr, flush=True)
        for each in tries(title, draft, count, seed, every=True):
            said: list[str] = []
            try:
                for template in each.templates:
                    if in_danger(template, each.options):
                        said += lies_well(template, each.options)
                        fitted += 1
                if each.number % WHOLE == 0:
                    pages = arrange_block(each.draft, each.templates, each.options).pages
                    said += faults(each.templates, pages[1:])
                    whole += 1
            except AssertionError as fault:
                said.append(repr(fault))
            tried, found = tried + 1, found + bool(said)
            for line in said:
                print(f"{each.where}: {line}", flush=True)
    print(
        f"{tried:,} settings of a block, {found} at fault; {fitted:,} templates laid by themselves, "
        f"{whole:,} whole documents; {process_time():.0f}s of CPU"
    )
    return int(found > 0)


if __name__ == "__main__":
    sys.exit(main(*(int(each) for each in (*sys.argv[1:], *("200", "1")[len(sys.argv) - 1 :]))))
