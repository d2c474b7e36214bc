"""The first page: the block as large as the page allows, its fabrics, and the table of its templates."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import floor
from typing import Final

from ...cutting.model import Template
from ...drafting.model import Draft
from ...measure.length import POINTS_PER_INCH
from ...measure.record import record
from ...words.pages.labels import too_small
from ...words.pages.templates import scale_words
from ...words.say import Say
from ..page import Mark
from .block_drawing import AROUND, Drawing, draw_block, surround_marks
from .furniture import Paper
from .notes import NOTE_LINE, first_lines, note_lines, note_marks
from .paths import Placement
from .room import Box
from .style import SMALLEST, break_lines, set_text, shorten
from .swatches import fabric_order, fills_of, strip_marks, strip_of
from .table import table_marks, table_of

LISTED: Final = 32
"""Templates listed on the block's own page: the drawing keeps half of it. Others have pages of their own."""

MOST_SWATCH_ROWS: Final = 6
TABLE_SHARE: Final = 0.42  # of the body's height: the most for the table
MOST_KEY_LINES: Final = 5
KEY_LINE: Final = 9.0  # points from line to line
GAP: Final = 8.0  # points between drawing, swatches and table

NEAR_TRUE: Final = 1.25
"""A drawing that could be up to this many times true size is drawn true: that says more than a little more
size."""


@record
class BlockPage:
    """The marks of the block's page, what it says of its scale, and what it had no room to name."""

    marks: list[Mark]
    scale: str
    more_templates: tuple[Template, ...]
    more_fabrics: tuple[str, ...]
    more_notes: list[str]  # in lines


def block_page(draft: Draft, templates: Sequence[Template], paper: Paper, say: Say) -> BlockPage:
    """The body of the first page: the drawing above, then its key, the notes, the swatches and the table."""
    left, top, right, bottom = paper.body
    fabrics = fabric_order(draft)
    strip = strip_of(fabrics, right - left, MOST_SWATCH_ROWS)
    listed = _listed(templates, right - left, (bottom - top) * TABLE_SHARE, say)
    table = table_of(templates[:listed], right - left, say)
    table_top = bottom - table.tall
    strip_top = table_top - strip.tall - GAP
    marks = [*table_marks(table, left, table_top), *strip_marks(strip, fills_of(draft), left, strip_top)]
    notes, more_notes = first_lines(note_lines(draft.notes, right - left))
    under = strip_top - len(notes) * NOTE_LINE - (GAP if notes else 0.0)
    marks.extend(note_marks(notes, left, under))
    room = (left, top, right, under - GAP)
    drawing, scale = _drawn(draft, room, say)
    if drawing.unlettered:
        lines = break_lines(_key(draft, drawing.unlettered), right - left, SMALLEST)[:MOST_KEY_LINES]
        room = (left, top, right, under - GAP - len(lines) * KEY_LINE)
        drawing, scale = _drawn(draft, room, say)
        marks.extend(_key_marks(draft, drawing.unlettered, (left, room[3], right, under)))
    more = tuple(templates[listed:])
    return BlockPage([*drawing.marks, *marks], scale_words(scale), more, strip.left_over, more_notes)


def _listed(templates: Sequence[Template], width: float, most: float, say: Say) -> int:
    """How many templates the table on the block's page lists, within a height in points."""
    count = min(len(templates), LISTED)
    while count and table_of(templates[:count], width, say).tall > most:
        count -= 1
    return count


def _drawn(draft: Draft, room: Box, say: Say) -> tuple[Drawing, float]:
    """The drawing with what stands about it, as large as the room allows; and its scale."""
    scale = scale_for(draft, room)
    placement = centred(draft, room, scale)
    drawing = draw_block(draft, placement)
    return replace(drawing, marks=[*drawing.marks, *surround_marks(draft, placement, say)]), scale


def scale_for(draft: Draft, room: Box) -> float:
    """The largest scale at which the block and its surroundings fit, in whole hundredths; 1 where near it."""
    left, top, right, bottom = room
    wide = (right - left - AROUND[0] - AROUND[2]) / (float(draft.width) * POINTS_PER_INCH)
    tall = (bottom - top - AROUND[1] - AROUND[3]) / (float(draft.height) * POINTS_PER_INCH)
    scale = min(wide, tall)
    if 1 <= scale < NEAR_TRUE:
        return 1.0
    whole = floor(scale * 100) / 100
    return whole if whole >= 0.1 else scale


def centred(draft: Draft, room: Box, scale: float) -> Placement:
    """The block in the middle of the room, with what stands about it."""
    left, top, right, bottom = room
    wide = float(draft.width) * POINTS_PER_INCH * scale
    tall = float(draft.height) * POINTS_PER_INCH * scale
    x = left + AROUND[0] + (right - left - AROUND[0] - AROUND[2] - wide) / 2
    y = top + AROUND[1] + (bottom - top - AROUND[1] - AROUND[3] - tall) / 2
    return Placement(0.0, x, y, scale)


def _key(draft: Draft, unlettered: Sequence[int]) -> str:
    """Which pieces are too small to letter, and their templates."""
    small = frozenset(unlettered)
    told = []
    for shape in draft.shapes:
        numbers = sorted(member.piece for member in shape.members if member.piece in small)
        if numbers:
            told.append((shape.label, numbers))
    return too_small(told)


def _key_marks(draft: Draft, unlettered: Sequence[int], box: Box) -> list[Mark]:
    left, top, right, _ = box
    lines = break_lines(_key(draft, unlettered), right - left, SMALLEST)
    if len(lines) > MOST_KEY_LINES:
        last = shorten(lines[MOST_KEY_LINES - 1] + " …", right - left, SMALLEST)
        lines = [*lines[: MOST_KEY_LINES - 1], last]
    subject = " ".join(map(str, unlettered))
    return [
        set_text(left, top + (row + 1) * KEY_LINE, line, SMALLEST, role="key", subject=subject)
        for row, line in enumerate(lines)
    ]
