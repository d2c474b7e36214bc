"""The block as a picture for a screen or a letter: fabrics, templates' letters, and how each unit lies.

Every unit bears a small triangle at its own top. Its black half is the unit's own left, so that a mirrored
unit shows by its black half lying on the right:

      /|\\              /|\\
     /#| \\   upright   / |#\\   mirrored
    /##|  \\           /  |##\\
"""

from __future__ import annotations

from collections.abc import Iterable
from math import cos, radians, sin
from typing import Final

from ...drafting.model import Draft, UnitPlacement
from ...measure.length import POINTS_PER_INCH
from ...measure.record import record
from ...words.pages.templates import UNITS_TOP, more_fabrics, size_and_version
from ...words.say import Say
from ..page import Mark, Page, PathMark
from .block_drawing import AROUND, draw_block, surround_marks
from .block_sheets import finished_size
from .enlarge import enlarged
from .paths import Placement, Ring, Spot, closed
from .style import BLACK, SMALLEST, WHITE, break_lines, grey_text, set_text, shorten
from .swatches import Strip, fabric_order, fills_of, strip_marks, strip_of

LEAST_SIDE: Final = 288.0
"""Points of the longer side below which a picture is a larger one made smaller, type and all."""

EDGE: Final = 12.0  # points of white all round
TITLE: Final = 13.0
TITLE_TALL: Final = 32.0
TRIANGLE: Final = 4.5  # half the width of a unit's triangle, in points, where the unit is large enough
UNDER: Final = 8.0
WORDS_LINE: Final = 9.0
MOST_ROWS: Final = 3  # of swatches
ROUNDS: Final = 4
LEAST_TRIANGLE: Final = 1.5
MOST_AVOIDED: Final = (
    200  # units whose triangles the letters keep clear of; beyond, pieces are hardly lettered
)


@record
class _Layout:
    """How a picture is shared out, in points."""

    scale: float  # of the block
    width: float
    height: float
    strip: Strip
    words: tuple[str, ...]


def block_picture(draft: Draft, size: float, say: Say) -> Page:
    """The block as one page whose longer side is `size` inches."""
    longest = max(size * POINTS_PER_INCH, LEAST_SIDE)
    layout = _layout(draft, longest)
    block_wide = float(draft.width) * POINTS_PER_INCH * layout.scale
    x = (layout.width - block_wide - AROUND[2] - AROUND[0]) / 2 + AROUND[0]
    placement = Placement(0.0, x, EDGE + TITLE_TALL + AROUND[1], layout.scale)
    triangles = [triangle for unit in draft.units if (triangle := unit_triangle(unit, placement))]
    avoid = [ring for ring, _ in triangles] if len(triangles) <= MOST_AVOIDED else []
    marks: list[Mark] = [
        *_title_marks(draft, layout.width, say),
        *draw_block(draft, placement, avoid).marks,
        *(mark for ring, half in triangles for mark in _triangle_marks(ring, half)),
        *surround_marks(draft, placement, say),
    ]
    y = placement.spot_at(0, draft.height).y + AROUND[3] + 8
    marks.extend(strip_marks(layout.strip, fills_of(draft), EDGE, y))
    y += layout.strip.tall + 4
    marks.extend(
        grey_text(EDGE, y + 6 + row * WORDS_LINE, line, SMALLEST) for row, line in enumerate(layout.words)
    )
    by = size * POINTS_PER_INCH / longest
    title = f"{draft.title}, {finished_size(draft, say)}"
    return Page(layout.width * by, layout.height * by, title, tuple(enlarged(mark, by) for mark in marks))


def _title_marks(draft: Draft, width: float, say: Say) -> list[Mark]:
    room = width - 2 * EDGE
    under = size_and_version(finished_size(draft, say), draft.version)
    return [
        set_text(EDGE, EDGE + 11, shorten(draft.title, room, TITLE, True), TITLE, True),
        grey_text(EDGE, EDGE + 23, shorten(under, room, UNDER), UNDER),
    ]


def _layout(draft: Draft, longest: float) -> _Layout:
    """A layout whose longer side is as asked.

    What stands below depends on the width, the width on the block's scale, and the scale on what stands
    below; a few rounds settle it, and what is left over after them becomes white.
    """
    block_wide, block_tall = float(draft.width) * POINTS_PER_INCH, float(draft.height) * POINTS_PER_INCH
    across = 2 * EDGE + AROUND[0] + AROUND[2]
    wide = longest
    for _ in range(ROUNDS):
        strip, words = _below(draft, wide - 2 * EDGE)
        down = 2 * EDGE + TITLE_TALL + AROUND[1] + AROUND[3] + strip.tall + 12 + WORDS_LINE * len(words)
        scale = min((longest - across) / block_wide, (longest - down) / block_tall)
        wide = min(max(block_wide * scale + across, LEAST_SIDE / 2), longest)
    strip, words = _below(draft, wide - 2 * EDGE)
    down = 2 * EDGE + TITLE_TALL + AROUND[1] + AROUND[3] + strip.tall + 12 + WORDS_LINE * len(words)
    scale = min((wide - across) / block_wide, (longest - down) / block_tall)
    tall = block_tall * scale + down
    return _Layout(scale, wide, longest if wide < longest else min(tall, longest), strip, words)


def _below(draft: Draft, width: float) -> tuple[Strip, tuple[str, ...]]:
    """The swatches under the drawing, and the words about units and about fabrics left out."""
    strip = strip_of(fabric_order(draft), width, MOST_ROWS)
    words = break_lines(UNITS_TOP, width, SMALLEST) if draft.units else []
    if strip.left_over:
        words.append(more_fabrics(len(strip.left_over)))
    return strip, tuple(words)


def unit_triangle(unit: UnitPlacement, placement: Placement) -> tuple[Ring, Ring] | None:
    """The triangle inside the unit's box at its own top, and its left half; None where it is too small."""
    left, top, right, bottom = (float(each) for each in unit.box)
    corner, far = placement.spot_at(left, top), placement.spot_at(right, bottom)
    half_wide, half_tall = (far.x - corner.x) / 2, (far.y - corner.y) / 2
    size = min(TRIANGLE, half_wide / 4, half_tall / 4)
    if size < LEAST_TRIANGLE:
        return None
    up_x, up_y = sin(radians(unit.turned)), -cos(radians(unit.turned))
    side_x, side_y = (-up_y, up_x) if unit.mirrored else (up_y, -up_x)  # toward the unit's own left
    x, y = (corner.x + far.x) / 2, (corner.y + far.y) / 2
    out = half_wide * abs(up_x) + half_tall * abs(up_y) - 2.0

    def spot(along: float, aside: float) -> Spot:
        return Spot(x + up_x * along + side_x * aside, y + up_y * along + side_y * aside)

    tip, foot = spot(out, 0), spot(out - 1.6 * size, 0)
    own_left, own_right = spot(out - 1.6 * size, size), spot(out - 1.6 * size, -size)
    return (tip, own_left, own_right), (tip, own_left, foot)


def _triangle_marks(ring: Ring, half: Ring) -> Iterable[Mark]:
    yield PathMark(closed(ring), BLACK, 0.6, (), WHITE, "unit")
    yield PathMark(closed(half), None, 0.0, (), BLACK, "unit")
