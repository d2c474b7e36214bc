"""The catalogue as sheets to print: twenty pictures a page, and every name with the pages it is on.

+-------+-------+-------+-------+
| [##]  | [##]  | [##]  | [##]  |    five such rows
| Title | Title | Title | Title |
| 12in  | 8in   | 9in   | 6in   |
+-------+-------+-------+-------+
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...words.pages import catalogue as words
from ...words.phrases import count_of
from ..arrange.furniture import BODY_TOP, Heading, Paper
from ..arrange.leaves import Leaf, bound, paper_for
from ..arrange.options import SheetOptions
from ..arrange.style import HEADING, LABEL, MARGIN, SMALLEST, break_lines, grey_text, set_text, shorten
from ..page import Document, Mark
from ..reports.find_table import size_text
from .entries import Entry, borne, in_order, picture_of, titled

ACROSS: Final = 4
DOWN: Final = 5
GAP: Final = 12.0  # points between pictures
WORDS_TALL: Final = 46.0  # under a picture: title, numbers, two lines of other names
LINE: Final = 8.6
ALSO_LINES: Final = 2
NAMES_ACROSS: Final = 2
NAME_LINE: Final = 11.0
INDENT: Final = 8.0  # of a name's further lines


def contact_sheets(entries: Sequence[Entry], title: str, options: SheetOptions) -> Document:
    """The catalogue as a document. At least one entry."""
    ordered, paper = in_order(entries), paper_for(options)
    under = count_of(len(ordered), "block")
    per_page = ACROSS * DOWN
    shares = [ordered[at : at + per_page] for at in range(0, len(ordered), per_page)]
    page_of = {id(entry): number for number, share in enumerate(shares, 1) for entry in share}
    leaves = [_pictures(share, paper, title, under) for share in shares]
    lines = [_places(name, found, page_of) for name, found in borne(ordered).items()]
    leaves += _names(lines, paper, title, under)
    return Document(title, under, "", words.KEYWORDS, bound(leaves, options))


def _pictures(share: Sequence[Entry], paper: Paper, title: str, under: str) -> Leaf:
    left, top, right, _ = paper.body
    wide = (right - left - GAP * (ACROSS - 1)) / ACROSS
    tall = (paper.height - MARGIN - top) / DOWN
    marks: list[Mark] = []
    for number, entry in enumerate(share):
        x, y = left + number % ACROSS * (wide + GAP), top + number // ACROSS * tall
        marks += picture_of(entry.draft, wide, tall - WORDS_TALL - GAP / 2, x, y + GAP / 2)
        marks += _words(entry, x, y + tall - WORDS_TALL + LINE, wide)
    first, last = share[0].facts.title, share[-1].facts.title
    what = (
        first if first == last else words.from_to(shorten(first, 120, HEADING), shorten(last, 120, HEADING))
    )
    return Leaf(Heading(title, under, what, words.NOT_TRUE), tuple(marks), what)


def _words(entry: Entry, x: float, y: float, wide: float) -> Iterator[Mark]:
    """The lines under a picture, from its first baseline."""
    facts = entry.facts
    yield set_text(x, y, shorten(titled(facts), wide, LABEL, True), LABEL, True)
    line = words.size_and_counts(size_text(facts), facts.pieces, facts.templates)
    yield grey_text(x, y + LINE, shorten(line, wide, SMALLEST), SMALLEST)
    if facts.also:
        lines = break_lines(words.also_words(facts.also), wide, SMALLEST)
        if len(lines) > ALSO_LINES:
            lines = [*lines[: ALSO_LINES - 1], shorten(" ".join(lines[ALSO_LINES - 1 :]), wide, SMALLEST)]
        for number, told in enumerate(lines, 2):
            yield grey_text(x, y + number * LINE, told, SMALLEST)


def _places(name: str, found: Sequence[Entry], page_of: dict[int, int]) -> str:
    """`Album, page 3`; of another name `Wrench: Churn Dash, page 2`, with all blocks that bear it."""
    pages = [words.on_page(titled(each.facts), page_of[id(each)]) for each in found]
    return words.borne_by(name, pages, own=len(found) == 1 and found[0].facts.title == name)


def _names(lines: Sequence[str], paper: Paper, title: str, under: str) -> list[Leaf]:
    """Every name, in columns."""
    left, top, right, _ = paper.body
    wide = (right - left - GAP * (NAMES_ACROSS - 1)) / NAMES_ACROSS
    rows = int((paper.height - MARGIN - BODY_TOP) // NAME_LINE)
    broken = [
        (row, number) for line in lines for number, row in enumerate(break_lines(line, wide - INDENT, LABEL))
    ]
    leaves = []
    for start in range(0, len(broken), rows * NAMES_ACROSS):
        marks: list[Mark] = []
        for at, (row, number) in enumerate(broken[start : start + rows * NAMES_ACROSS]):
            x = left + at // rows * (wide + GAP) + (INDENT if number else 0)
            marks.append(set_text(x, top + (at % rows + 1) * NAME_LINE - 2, row, LABEL))
        heading = Heading(title, under, words.EVERY_NAME, words.ITS_PAGES)
        leaves.append(Leaf(heading, tuple(marks), words.NAMES))
    return leaves
