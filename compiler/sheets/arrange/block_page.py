"""The first page: the block as large as the page allows, its fabrics, and the table of its templates."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor
from typing import Final

from ...cutting.model import Template
from ...drafting.model import Draft
from ...measure.length import POINTS_PER_INCH
from ..page import Mark
from .block_drawing import AROUND, draw_block, surround_marks
from .furniture import Paper
from .label_words import number_ranges
from .paths import Placement
from .room import Box
from .style import SMALLEST, set_text, shorten
from .swatches import SWATCH_ROW, swatch_marks, swatch_rows
from .table import table_marks, table_of

LISTED: Final = 32
"""Templates listed on the block's own page: the drawing keeps half of it. Others have pages of their own."""

NEAR_TRUE: Final = 1.25
"""A drawing that could be up to this many times true size is drawn true: that says more than a little more
size."""


@dataclass(frozen=True, slots=True)
class BlockPage:
    """The marks of the block's page, what it says of its scale, and the templates it had no room to list."""

    marks: list[Mark]
    scale: str
    left_over: tuple[Template, ...]


def block_page(draft: Draft, templates: Sequence[Template], paper: Paper) -> BlockPage:
    """The body of the first page."""
    left, top, right, bottom = paper.body
    table = table_of(templates[:LISTED], right - left)
    table_top = bottom - table.tall
    marks = table_marks(table, left, table_top)
    swatch_top = table_top - swatch_rows(draft, right - left) * SWATCH_ROW - 8
    marks.extend(swatch_marks(draft, left, right, swatch_top))
    room = (left, top, right, swatch_top - 6)
    scale = scale_for(draft, room)
    placement = centred(draft, room, scale)
    drawing = draw_block(draft, placement)
    marks = [*drawing.marks, *surround_marks(draft, placement), *marks]
    if drawing.unlettered:
        marks.append(_key_mark(draft, drawing.unlettered, left, swatch_top - 2, right - left))
    return BlockPage(marks, scale_words(scale), tuple(templates[LISTED:]))


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


def scale_words(scale: float) -> str:
    """What the page says of its scale."""
    if scale == 1:
        return "the drawing is true size"
    share = f"{scale * 100:.0f}" if scale >= 0.1 else f"{scale * 100:.2g}"
    return f"drawn at {share}% of true size"


def centred(draft: Draft, room: Box, scale: float) -> Placement:
    """The block in the middle of the room, with what stands about it."""
    left, top, right, bottom = room
    wide = float(draft.width) * POINTS_PER_INCH * scale
    tall = float(draft.height) * POINTS_PER_INCH * scale
    x = left + AROUND[0] + (right - left - AROUND[0] - AROUND[2] - wide) / 2
    y = top + AROUND[1] + (bottom - top - AROUND[1] - AROUND[3] - tall) / 2
    return Placement(0.0, x, y, scale)


def _key_mark(draft: Draft, unlettered: Sequence[int], left: float, y: float, wide: float) -> Mark:
    """Which pieces are too small to letter, and their templates."""
    words = []
    for shape in draft.shapes:
        numbers = sorted(member.piece for member in shape.members if member.piece in set(unlettered))
        if numbers:
            words.append(f"{shape.label} {number_ranges(numbers)}")
    text = "Too small to letter, counted along the rows from the top left: " + "; ".join(words)
    return set_text(
        left, y, shorten(text, wide, SMALLEST), SMALLEST, role="key", subject=" ".join(map(str, unlettered))
    )
