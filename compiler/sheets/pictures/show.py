"""The quilt as a picture for a screen or a letter: its title, the top, the swatches of its fabrics."""

from __future__ import annotations

from typing import Final

from ...measure.length import POINTS_PER_INCH
from ...quilt.model import Quilt
from ...words.say import Say
from ..arrange.enlarge import enlarged
from ..arrange.paths import Placement
from ..arrange.style import grey_text, set_text, shorten
from ..arrange.swatches import strip_marks
from ..page import Mark, Page
from ..quilts.tables import under_title
from .quilt import AROUND, draw_quilt, quilt_surround
from .quilt_pages import swatches_of

LAID_OUT: Final = 432.0
"""Points of the longer side that a picture is laid out at; then it is made as large as asked, type and
all."""

EDGE: Final = 12.0  # points of white all round
TITLE: Final = 13.0
TITLE_TALL: Final = 32.0
UNDER: Final = 8.0
BELOW: Final = 8.0  # between the drawing and its swatches
ROUNDS: Final = 4  # the swatches depend on the width, the width on the scale, and the scale on the swatches


def quilt_show(quilt: Quilt, size: float, say: Say) -> Page:
    """The quilt as one page whose longer side is `size` inches."""
    quilt_wide, quilt_tall = (float(side) * POINTS_PER_INCH for side in (quilt.width, quilt.height))
    across, wide, scale, down = 2 * EDGE + AROUND[0] + AROUND[2], LAID_OUT, 0.0, 0.0
    for _ in range(ROUNDS):
        strip, fills = swatches_of(quilt, wide - 2 * EDGE)
        down = 2 * EDGE + TITLE_TALL + AROUND[1] + AROUND[3] + BELOW + strip.tall
        scale = min((LAID_OUT - across) / quilt_wide, (LAID_OUT - down) / quilt_tall)
        wide = min(max(quilt_wide * scale + across, LAID_OUT / 2), LAID_OUT)
    placement = Placement(0.0, (wide - quilt_wide * scale - AROUND[2] + AROUND[0]) / 2,
                          EDGE + TITLE_TALL + AROUND[1], scale)  # fmt: skip
    below = placement.spot_at(0, quilt.height).y + AROUND[3] + BELOW
    room = wide - 2 * EDGE
    marks: list[Mark] = [
        set_text(EDGE, EDGE + 11, shorten(quilt.title, room, TITLE, True), TITLE, True),
        grey_text(EDGE, EDGE + 23, shorten(under_title(quilt, say), room, UNDER), UNDER),
        *draw_quilt(quilt, placement),
        *quilt_surround(quilt, placement, say),
        *strip_marks(strip, fills, EDGE, below),
    ]
    tall = LAID_OUT if wide < LAID_OUT else min(quilt_tall * scale + down, LAID_OUT)
    by = size * POINTS_PER_INCH / LAID_OUT
    return Page(wide * by, tall * by, quilt.title, tuple(enlarged(mark, by) for mark in marks))
