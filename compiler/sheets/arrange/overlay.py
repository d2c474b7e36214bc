"""Two drafts laid upon each other: the new one in black lines, the old one in red dashes.

title                      under the block, every template that changed: its sewing and cutting lines,
+-----------+              new upon old, as the two lie in the block; then the verdict on each template
|  overlay  |
+-----------+              Dashes and lines stay apart in a black and white copy, too.
 A    B    C
A: keep your A ...
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from ...cutting.comparison import Comparison, Match
from ...cutting.model import Template
from ...drafting.model import Draft
from ...geometry.curves import box_of
from ...measure.length import POINTS_PER_INCH
from ...words.pages.overlay import draft_words, moved_words, overlay_title
from ...words.say import INCHES
from ...words.work.comparison import apart, verdict_lines
from ..page import Mark, Page, PathMark, Segment
from .paths import Placement, open_path, ring_path, straight
from .style import BLACK, LABEL, SMALLEST, break_lines, grey_text, measure, set_text, shorten

EDGE: Final = 14.0  # points of white all round
TITLE: Final = 13.0
HEAD_TALL: Final = 50.0
GAP: Final = 12.0
LINE: Final = 10.5
RED: Final = (0.75, 0.1, 0.1)
OLD_WIDTH: Final = 1.4
OLD_DASH: Final = (4.0, 2.5)
NEW_WIDTH: Final = 0.8
SAMPLE: Final = 26.0  # of a line in the legend
MOST_DRAWN: Final = 9  # changed templates drawn beside each other; all are told in words
ABREAST: Final = 3
LEAST_WIDE: Final = 260.0  # points: the title and the legend need as much


def overlay_page(comparison: Comparison, size: float) -> Page:
    """Both drafts as one page, the block `size` inches on its longer side."""
    old, new = comparison.old.draft, comparison.new.draft
    longest = max(float(each) for draft in (old, new) for each in (draft.width, draft.height))
    scale = size / longest
    wide = max(*(float(each.width) for each in (old, new))) * scale * POINTS_PER_INCH
    tall = max(*(float(each.height) for each in (old, new))) * scale * POINTS_PER_INCH
    page_wide = max(wide, LEAST_WIDE) + 2 * EDGE
    placement = Placement(0.0, (page_wide - wide) / 2, HEAD_TALL + EDGE, scale)
    marks = [
        *_head(comparison, page_wide),
        *_draft_marks(old, placement, new=False),
        *_draft_marks(new, placement, new=True),
        *_letters(new, placement),
    ]
    y = HEAD_TALL + EDGE + tall + GAP
    changed, y = _changed_marks(comparison.matches, page_wide, y)
    words, y = _verdicts(comparison, page_wide, y)
    title = overlay_title(new.title)
    return Page(page_wide, y + EDGE, title, (*marks, *changed, *words))


def _head(comparison: Comparison, page_wide: float) -> Iterable[Mark]:
    """The title, and what the two kinds of line mean."""
    old, new = comparison.old.draft, comparison.new.draft
    room = page_wide - 2 * EDGE
    yield set_text(EDGE, EDGE + 11, shorten(new.title, room, TITLE, True), TITLE, True)
    x, y = EDGE, EDGE + 29
    for draft, is_new in ((new, True), (old, False)):
        told = draft_words(draft.title, draft.version, named=draft.title != new.title, is_new=is_new)
        words = shorten(told, room / 2 - SAMPLE - 10, LABEL)
        yield _line(straight((x, y - 3), (x + SAMPLE, y - 3)), "legend", new=is_new)
        yield set_text(x + SAMPLE + 6, y, words, LABEL)
        x += SAMPLE + 6 + measure(words, LABEL) + 18


def _draft_marks(draft: Draft, placement: Placement, *, new: bool) -> Iterable[Mark]:
    """Every seam of a draft, once, and its outline: drawn twice, dashes would fill each other's gaps."""
    path = tuple(segment for edge, _, _ in draft.graph.between() for segment in open_path((edge,), placement))
    yield _line((*path, *ring_path(draft.outline, placement)), "seam" if new else "old-seam", new=new)


def _line(path: tuple[Segment, ...], role: str, *, new: bool, subject: str = "") -> Mark:
    colour, width, dash = (BLACK, NEW_WIDTH, ()) if new else (RED, OLD_WIDTH, OLD_DASH)
    return PathMark(path, colour, width, dash, None, role, subject)


def _letters(draft: Draft, placement: Placement) -> Iterable[Mark]:
    """The letter of its template in every new piece with room for it."""
    letters = {member.piece: shape.label for shape in draft.shapes for member in shape.members}
    for piece in draft.pieces:
        left, top, right, bottom = (float(each) for each in box_of([side.edge for side in piece.ring]))
        if min(right - left, bottom - top) * placement.scale * POINTS_PER_INCH >= 2.5 * SMALLEST:
            spot = placement.spot(piece.inside)
            yield set_text(
                spot.x,
                spot.y + 3,
                letters[piece.number],
                LABEL,
                False,
                "middle",
                role="letter",
                subject=str(piece.number),
            )


def _changed_marks(matches: Sequence[Match], page_wide: float, y: float) -> tuple[list[Mark], float]:
    """The templates that changed, three abreast; and where what follows begins."""
    changed = [
        (each.old, each.new, each)
        for each in matches
        if each.kind == "changed" and each.old is not None and each.new is not None
    ]
    marks: list[Mark] = []
    cell = (page_wide - 2 * EDGE) / ABREAST
    for start in range(0, min(len(changed), MOST_DRAWN), ABREAST):
        row = changed[start : min(start + ABREAST, MOST_DRAWN)]
        tallest = 0.0
        for place, (old, new, match) in enumerate(row):
            drawn, tall = _pair(old, new, match, EDGE + place * cell, y, cell - GAP)
            marks += drawn
            tallest = max(tallest, tall)
        y += tallest + GAP
    return marks, y


def _pair(
    old: Template, new: Template, match: Match, x: float, y: float, room: float
) -> tuple[list[Mark], float]:
    """One changed template, new upon old as they lie in the block, and how tall it is with its words."""
    left, top, right, bottom = (float(each) for each in box_of([*old.cut, *new.cut]))
    points = min(room / (right - left), room / (bottom - top))
    scale = points / POINTS_PER_INCH
    placement = Placement(0.0, x - left * points, y + LINE - top * points, scale)
    words = moved_words(new.label, apart(INCHES, match.distance) if match.distance else "")
    marks: list[Mark] = [set_text(x, y + LABEL - 2, shorten(words, room, LABEL), LABEL, True)]
    for template, is_new in ((old, False), (new, True)):
        for ring, role in ((template.cut, "cut"), (template.sew, "sew")):
            marks.append(
                _line(
                    ring_path(ring, placement),
                    role if is_new else f"old-{role}",
                    new=is_new,
                    subject=template.label,
                )
            )
    return marks, LINE + (bottom - top) * points


def _verdicts(comparison: Comparison, page_wide: float, y: float) -> tuple[list[Mark], float]:
    """What became of each template, in small print; and where the page may end."""
    lines = [
        line
        for told in verdict_lines(INCHES, comparison)
        for line in break_lines(told, page_wide - 2 * EDGE, SMALLEST + 1)
    ]
    marks: list[Mark] = [
        grey_text(EDGE, y + 8 + number * LINE, line, SMALLEST + 1) for number, line in enumerate(lines)
    ]
    return marks, y + 4 + len(lines) * LINE
