"""A block that cannot be finished, as a picture: what is sound of it, and its mistakes numbered where they
lie."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ...drafting.rough import RoughDraft
from ...geometry.curves import at_share
from ...geometry.edge import Point
from ...measure.length import POINTS_PER_INCH
from ...words.pages.templates import mistake_line, not_finished
from ...words.say import Say
from ..page import Mark, Page, PathMark, TextMark
from .block_drawing import AROUND, OUTLINE, grid_mark, surround_marks
from .enlarge import enlarged
from .paths import Placement, Spot, box_path, open_path, ring_path
from .picture import EDGE, LEAST_SIDE, TITLE, TITLE_TALL, UNDER, WORDS_LINE
from .style import (
    BLACK,
    GREY,
    SEAM,
    SMALLEST,
    WHITE,
    break_lines,
    grey_text,
    line_mark,
    measure,
    set_text,
    shorten,
)

MISTAKE: Final = (0.78, 0.1, 0.1)
HEAVY: Final = 2.6  # points: a line with a mistake, told from others without colour, too
RING: Final = 6.5  # points: half the side of the plate that bears a mistake's number
DOT: Final = 1.6  # points: half the side of a named point
MISTAKES_LISTED: Final = 12


def rough_picture(rough: RoughDraft, size: float, say: Say) -> Page:
    """The block as one page whose longer side is `size` inches or, where much is to be said, more."""
    wide = max(size * POINTS_PER_INCH, LEAST_SIDE)
    lines = [
        line
        for number, each in enumerate(rough.mistakes[:MISTAKES_LISTED], 1)
        for line in break_lines(mistake_line(say, number, each.diagnostic), wide - 2 * EDGE, SMALLEST)
    ]
    across = (wide - 2 * EDGE - AROUND[0] - AROUND[2]) / POINTS_PER_INCH
    scale = across / max(float(rough.width), float(rough.height))
    placement = Placement(0.0, EDGE + AROUND[0], EDGE + TITLE_TALL + AROUND[1], scale)
    far = placement.spot_at(rough.width, rough.height)
    y = far.y + AROUND[3] + 14
    marks: list[Mark] = [
        set_text(EDGE, EDGE + 11, shorten(rough.title, wide - 2 * EDGE, TITLE, True), TITLE, True),
        grey_text(EDGE, EDGE + 23, not_finished(len(rough.mistakes)), UNDER),
        *_block_marks(rough, placement),
        *surround_marks(rough, placement, say),
        *(set_text(EDGE, y + row * WORDS_LINE, line, SMALLEST) for row, line in enumerate(lines)),
    ]
    tall = y + len(lines) * WORDS_LINE + EDGE
    by = size * POINTS_PER_INCH / wide
    return Page(wide * by, tall * by, rough.title, tuple(enlarged(mark, by) for mark in marks))


def _block_marks(rough: RoughDraft, placement: Placement) -> Iterator[Mark]:
    corner, far = placement.spot_at(0, 0), placement.spot_at(rough.width, rough.height)
    room = box_path(corner.x - AROUND[0], corner.y - AROUND[0], far.x + AROUND[0], far.y + AROUND[0])
    yield grid_mark(rough, placement)
    for edge in rough.seams:
        yield PathMark(tuple(open_path((edge,), placement)), BLACK, SEAM, (), None, "seam", clip=room)
    yield line_mark(ring_path(rough.outline, placement), "outline", OUTLINE)
    for each in rough.mistakes:
        for edge in each.edges:
            yield PathMark(
                tuple(open_path((edge,), placement)), MISTAKE, HEAVY, (), None, "mistake", clip=room
            )
    for name, place in rough.points:
        spot = placement.spot(place)
        box = box_path(spot.x - DOT, spot.y - DOT, spot.x + DOT, spot.y + DOT)
        yield PathMark(box, None, 0.0, (), BLACK, "point", name)
        yield TextMark(spot.x + 3, spot.y - 3, name, SMALLEST, False, "start", BLACK, "point", name)
    for name, place in rough.pieces:
        spot, half = placement.spot(place), measure(name, SMALLEST) / 2 + 3
        x = max(min(spot.x, far.x - half), corner.x + half)  # a piece may be named at a corner of the block
        y = max(min(spot.y, far.y - SMALLEST), corner.y + SMALLEST)
        yield TextMark(x, y + 2.4, name, SMALLEST, False, "middle", GREY, "piece", name)
    for number, each in enumerate(rough.mistakes, 1):
        places = [*each.places, *(at_share(edge, 0.5) for edge in each.edges[:1])]
        for place in places:
            yield from _numbered(number, place, placement)


def _numbered(number: int, place: Point, placement: Placement) -> Iterator[Mark]:
    """A mistake's number on a plate beside its place."""
    spot = placement.spot(place)
    at = Spot(spot.x, spot.y - RING - 4)
    box = box_path(at.x - RING, at.y - RING, at.x + RING, at.y + RING)
    yield PathMark(box, MISTAKE, SEAM, (), WHITE, "mistake", str(number))
    yield TextMark(at.x, at.y + 2.6, str(number), SMALLEST, True, "middle", MISTAKE, "mistake", str(number))
