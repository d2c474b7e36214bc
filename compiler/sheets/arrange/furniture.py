"""What every page carries: head, foot, check square, legend and the words about them.

    title                                   what this page is
    size · version                             page n of m
    ---------------------------------------------------------
                        the body
    ---------------------------------------------------------
  | []  print at 100% ...         legend of the marks used
  |_______________________ 5cm              one line of safety

The two 5cm lines stand on the check square's own corner, one across and one up: a printer may shrink the
two ways differently.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from ...measure.length import POINTS_PER_INCH, UNITS
from ...measure.record import record
from ...words.pages.furniture import FIVE_CM_BARS, INCH_SQUARE, MEASURE, check_lines, page_words
from ..packing.moving import moved_mark
from ..page import Mark, PathMark
from .options import SheetOptions
from .paths import box_path, straight
from .room import Box
from .style import (
    BLACK,
    HEADING,
    LABEL,
    MARGIN,
    RULE,
    SEAM,
    SMALLEST,
    TITLE,
    break_lines,
    grey_text,
    line_mark,
    measure,
    set_text,
    shorten,
)

FIVE_CM: Final = float(5 * UNITS["cm"] * POINTS_PER_INCH)
"""5cm in points: 141.732."""

HEAD_RULE: Final = 72.0  # from the paper's top
BODY_TOP: Final = 82.0
FOOT_TALL: Final = 84.0  # from the foot's rule to the bottom margin
BODY_GAP: Final = 8.0  # between the body and the foot's rule
CHECK_LEFT: Final = 26.0  # the 5cm lines hang in the margin, clear of the body
WORDS_LEFT: Final = 114.0
MAP_LEFT: Final = 318.0
MAP_WIDE: Final = 80.0
MAP_TALL: Final = 55.0
LEGEND_ROW: Final = 13.5
LEGEND_TALL: Final = 46.0  # from the first sign to the last: two lines of safety stand below
LEGEND_WIDE: Final = 138.0  # the widest legend of a template page
LEGEND_SAMPLE: Final = 30.0
SAFETY_LEFT: Final = CHECK_LEFT + FIVE_CM + 24.0
TICK: Final = 4.0


@record
class Paper:
    """The page that layout fills: in points as printed, so true to size whatever the printer does."""

    width: float
    height: float

    @property
    def body(self) -> Box:
        """The room between head and foot."""
        return MARGIN, BODY_TOP, self.width - MARGIN, self.foot_rule - BODY_GAP

    @property
    def foot_rule(self) -> float:
        """Where the rule over the foot stands."""
        return self.height - MARGIN - FOOT_TALL


@record
class Heading:
    """The words at the head of a page. `title` names it in bookmarks too."""

    block: str
    under: str  # "6in finished · version 2"
    what: str  # "templates A–C"
    below: str  # "with 1/4in seam allowance"


@record
class Sign:
    """One line of a legend: a small drawing about (x, y), 30pt wide, and its meaning."""

    draw: Callable[[float, float], tuple[Mark, ...]]
    meaning: str


def head_marks(paper: Paper, heading: Heading, number: int, count: int) -> list[Mark]:
    """Title, size and version on the left; what this page is on the right; a rule."""
    right = paper.width - MARGIN
    what = page_words(heading.what, number, count)
    room = right - MARGIN - 18 - max(measure(what, HEADING), measure(heading.below, HEADING))
    return [
        set_text(MARGIN, 50, shorten(heading.block, room, TITLE, True), TITLE, True),
        grey_text(MARGIN, 64, shorten(heading.under, room, HEADING)),
        set_text(right, 50, what, HEADING, False, "end"),
        grey_text(right, 64, heading.below, HEADING, "end"),
        line_mark(straight((MARGIN, HEAD_RULE), (right, HEAD_RULE)), "rule", RULE),
    ]


def foot_marks(paper: Paper, signs: Sequence[Sign], safety: str, options: SheetOptions) -> list[Mark]:
    """The check square and bars with their words, the legend, and the line of safety."""
    right, base = paper.width - MARGIN, paper.height - MARGIN
    rule = straight((MARGIN, paper.foot_rule), (right, paper.foot_rule))
    return [
        line_mark(rule, "rule", RULE),
        *_check_marks(base),
        *_word_marks(base, options),
        *_legend_marks(paper, signs),
        *_safety_marks(right, base, safety),
    ]


def map_marks(paper: Paper, marks: Sequence[Mark]) -> list[Mark]:
    """The map of tiles in the foot, between the words and the legend."""
    left = min(MAP_LEFT, paper.width - MARGIN - LEGEND_WIDE - MAP_WIDE)
    return [moved_mark(mark, left, paper.foot_rule + 10) for mark in marks]


def _safety_marks(right: float, base: float, safety: str) -> list[Mark]:
    """The line of safety, in two where one is too wide."""
    room = right - SAFETY_LEFT
    rows = len(break_lines(safety, room, SMALLEST))
    even = measure(safety, SMALLEST) / rows * 1.08  # no last line of one word
    lines = break_lines(safety, min(room, max(even, room / 2)), SMALLEST) if rows > 1 else [safety]
    return [
        grey_text(right, base - 8.5 * (len(lines) - 1 - row), line, SMALLEST, "end")
        for row, line in enumerate(lines)
    ]


def _check_marks(base: float) -> list[Mark]:
    """The 1in square, and 5cm each way from its corner."""
    left, inch = CHECK_LEFT, float(POINTS_PER_INCH)
    far, high = left + FIVE_CM, base - FIVE_CM
    return [
        PathMark(box_path(left, base - inch, left + inch, base), BLACK, SEAM, (), None, "check-square"),
        PathMark(straight((left, high), (left, base), (far, base)), BLACK, SEAM, (), None, "check-bar"),
        line_mark(straight((left - TICK, high), (left + TICK, high)), "check-tick", SEAM),
        line_mark(straight((far, base - TICK), (far, base + TICK)), "check-tick", SEAM),
        set_text(left + inch / 2, base - inch / 2 + 3, INCH_SQUARE, LABEL, True, "middle"),
        set_text(far - 4, base - 5, FIVE_CM_BARS, LABEL, True, "end"),
    ]


def _word_marks(base: float, options: SheetOptions) -> list[Mark]:
    """What to do before cutting, and when the square is wrong."""
    top = base - POINTS_PER_INCH
    lines = check_lines(options.say, options.measured)
    return [
        set_text(WORDS_LEFT, top + 7, MEASURE, LABEL, True),
        *(set_text(WORDS_LEFT, top + 18.5 + 11 * row, line) for row, line in enumerate(lines)),
    ]


def _legend_marks(paper: Paper, signs: Sequence[Sign]) -> list[Mark]:
    """The signs in one column, ranged right; closer together where there are many."""
    if not signs:
        return []
    pitch = min(LEGEND_ROW, LEGEND_TALL / max(len(signs) - 1, 1))
    x = paper.width - MARGIN - max(measure(sign.meaning, LABEL) for sign in signs) - LEGEND_SAMPLE - 8
    marks: list[Mark] = []
    for row, sign in enumerate(signs):
        y = paper.foot_rule + 10.5 + row * pitch
        marks.extend(sign.draw(x, y))
        marks.append(set_text(x + LEGEND_SAMPLE + 8, y + 3, sign.meaning))
    return marks
