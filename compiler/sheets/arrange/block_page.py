"""The first page: the block as large as the page allows, its fabrics, and the table of its templates."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import Final

from ...cutting.model import Template
from ...drafting.model import Draft, Edge
from ...measure.fractions import ruler_text
from ...measure.length import POINTS_PER_INCH
from ..page import Mark, PathMark
from .block_drawing import AROUND, draw_block, surround_marks
from .furniture import Paper
from .paths import Placement, flat_ring, straight
from .room import Box
from .style import LABEL, RULING, SMALLEST, grey_text, line_mark, set_text, shorten
from .swatches import SWATCH_ROW, swatch_marks, swatch_rows

ROW: Final = 12.5
COLUMN_GAP: Final = 18.0
LETTER_WIDE: Final = 30.0
SIZE_WIDE: Final = 92.0
NARROW_TABLE: Final = 330.0  # of one column: the eye finds its way across
MOST_ROWS: Final = 16
"""Rows of the table on the block's own page, in each of two columns: the drawing keeps half the page."""

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
    listed, left_over = tuple(templates[: 2 * MOST_ROWS]), tuple(templates[2 * MOST_ROWS :])
    table_tall = table_height(len(listed))
    table_top = bottom - table_tall
    marks = table_marks(listed, (left, table_top, right, bottom))
    swatch_top = table_top - swatch_rows(draft, right - left) * SWATCH_ROW - 8
    marks.extend(swatch_marks(draft, left, right, swatch_top))
    room = (left, top, right, swatch_top - 6)
    scale = scale_for(draft, room)
    placement = centred(draft, room, scale)
    drawing = draw_block(draft, placement)
    marks = [*drawing.marks, *surround_marks(draft, placement), *marks]
    if drawing.unlettered:
        marks.append(_key_mark(draft, drawing.unlettered, left, swatch_top - 2, right - left))
    return BlockPage(marks, scale_words(scale), left_over)


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
    return set_text(left, y, shorten(text, wide, SMALLEST), SMALLEST, role="key", subject=" ".join(map(str, unlettered)))


def number_ranges(numbers: Sequence[int]) -> str:
    """`1–4, 7, 9–12` for numbers in order."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(str(run[0]) if len(run) == 1 else f"{run[0]}–{run[-1]}" for run in runs)


def table_height(count: int) -> float:
    """Points that a table of so many templates takes: a heading and its rows, in one column or two."""
    rows = count if count <= 4 else ceil(count / 2)
    return (rows + 1) * ROW + 4


def table_marks(templates: Sequence[Template], box: Box) -> list[Mark]:
    """The table of templates: letter, how many to cut of what, and the size of its box."""
    left, top, right, _ = box
    columns = 1 if len(templates) <= 4 else 2
    rows = ceil(len(templates) / columns)
    wide = (right - left - COLUMN_GAP) / 2 if columns == 2 else NARROW_TABLE
    marks: list[Mark] = []
    for column in range(columns):
        x = left + column * (wide + COLUMN_GAP)
        marks.extend(_column_marks(templates[column * rows : (column + 1) * rows], x, top, wide))
    return marks


def _column_marks(templates: Sequence[Template], x: float, top: float, wide: float) -> list[Mark]:
    y = top + 9
    marks: list[Mark] = [
        grey_text(x, y, "template", SMALLEST),
        grey_text(x + LETTER_WIDE + 8, y, "cut", SMALLEST),
        grey_text(x + wide, y, "finished, its box", SMALLEST, "end"),
        line_mark(straight((x, y + 3.5), (x + wide, y + 3.5)), "rule", 0.5),
    ]
    for template in templates:
        y += ROW
        words = shorten(cut_words(template), wide - LETTER_WIDE - 8 - SIZE_WIDE, LABEL)
        marks.append(set_text(x, y, template.label, LABEL, True, role="table", subject=template.label))
        marks.append(set_text(x + LETTER_WIDE + 8, y, words, LABEL, role="table", subject=template.label))
        marks.append(set_text(x + wide, y, box_words(template.sew), LABEL, False, "end", role="table", subject=template.label))
        marks.append(PathMark(straight((x, y + 3.5), (x + wide, y + 3.5)), (0.75, 0.75, 0.75), RULING, (), None, "rule"))
    return marks


def cut_words(template: Template) -> str:
    """`4 of dark and 4 reversed, 2 of light`."""
    words = []
    for count in template.counts:
        if count.cut and count.reversed:
            words.append(f"{count.cut} of {count.fabric} and {count.reversed} reversed")
        elif count.cut:
            words.append(f"{count.cut} of {count.fabric}")
        elif count.reversed:
            words.append(f"{count.reversed} of {count.fabric}, reversed")
    return "; ".join(words)


def box_words(edges: Sequence[Edge]) -> str:
    """`1in x 3in`: the box round a finished outline, as it lies in the block."""
    ring = flat_ring(edges, Placement())
    xs, ys = [x / POINTS_PER_INCH for x, _ in ring], [y / POINTS_PER_INCH for _, y in ring]
    return f"{ruler_text(max(xs) - min(xs))} x {ruler_text(max(ys) - min(ys))}"
