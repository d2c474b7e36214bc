"""The drafting exercise: the block on graph paper with its ruling named, or its construction by ruler and
compass; and a page to draft it on, true to size."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import chain
from typing import Final

from ...drafting.model import Draft, Edge, Point
from ...measure.fractions import ruler_text
from ...measure.length import POINTS_PER_INCH
from ..arrange.block_drawing import column_name
from ..arrange.block_sheets import Body, finished_size, leaf_of
from ..arrange.furniture import Paper
from ..arrange.leaves import Leaf, paper_for
from ..arrange.options import SheetOptions
from ..arrange.paths import Placement, Spot, box_path, circle_path, open_path, ring_path, straight
from ..arrange.room import Box
from ..arrange.style import (
    BLACK,
    GREY,
    PALE,
    SEAM,
    SMALLEST,
    WHITE,
    centre_drop,
    line_mark,
    measure,
    set_text,
    solid_mark,
)
from ..page import Mark, PathMark, Segment
from .compass import Construction, construct
from .construction import Ruling, place_key, ruling_of
from .content import Chapter, List, Paragraph, Part, Picture
from .envelope_chapters import CutOut

TITLE: Final = "Drafting exercise"
SAFETY: Final = (
    "Compass points are sharp: close the compass when you lay it down; keep it from small children."
)

DRAWN: Final = 280.0  # points of the longer side of the drawing
FINE: Final = 0.25  # points of a line of the ruling
INCH_LINE: Final = 0.6  # of every inch's
LEAST_RULED: Final = 3.0  # points between lines: of a closer ruling only the inches are drawn
POINT: Final = 1.6  # radius of a named point
NAMED_MOST: Final = 60  # points named in the drawing: more hide it
AROUND: Final = 14.0  # points about the drawing for the names of its corners
NAME_TALL: Final = 7.0  # points of the plain ground under a name
BODY_INCH: Final = Fraction(1)


LAID: Final[dict[CutOut, str]] = {
    "template": " Then lay a template on its piece: its sewing line lies on the seams.",
    "paper shape": " Then lay a paper on its piece, print down: they agree.",
    "": "",
}
"""The last check of a drawing, with what was cut out for the block."""


def exercise_chapter(
    draft: Draft, options: SheetOptions, under: str, cut_out: CutOut = "template"
) -> Chapter:
    """The chapter, with a page to draft on."""
    ruling = ruling_of(draft)
    found = None if ruling else construct(draft)
    return Chapter(
        TITLE,
        tuple(_parts(draft, ruling, found, cut_out)),
        (_practice_leaf(draft, ruling, options, under),),
        joins=True,
        whole=True,
    )


def _parts(
    draft: Draft, ruling: Ruling | None, found: Construction | None, cut_out: CutOut
) -> Iterator[Part]:
    if ruling:
        yield Paragraph(f"On graph paper: {ruling.name} ruling.", strong=True)
        yield List(tuple(_graph_words(draft, ruling, cut_out)), "number")
    elif found:
        yield Paragraph("Not on a grid: by ruler and compass.", strong=True)
        yield List(
            (*found.steps, *_arc_words(draft, found), "Draw the seams, as the picture has them."), "number"
        )
    yield _picture(draft, ruling, found)


def _graph_words(draft: Draft, ruling: Ruling, cut_out: CutOut) -> Iterator[str]:
    """How it is drawn on its ruling."""
    step = float(ruling.step)
    across, down = (round(float(each) / step) for each in (draft.width, draft.height))
    size = finished_size(draft)
    yield (
        f"Every corner of this block lies on a crossing of {ruling.name} graph paper: {across} squares by "
        f"{down}."
    )
    yield f"Draw the outline, {size}, along lines of the paper. Mark each column and row of the block’s grid."
    yield "Draw the longest seams first, from crossing to crossing, then the shorter ones between them."
    if any(side.edge.arc for piece in draft.pieces for side in piece.ring):
        yield (
            "For each arc set the compass on its center, which lies on a crossing, too, and open it to the "
            "arc’s start."
        )
    yield f"Check: measure both diagonals, and count the pieces.{LAID[cut_out]}"


def _arc_words(draft: Draft, found: Construction) -> Iterator[str]:
    """Where the compass stands for each arc, and how wide it is open."""
    names = {place_key(place): name for name, place in (*found.known.items(), *found.found.items())}
    arcs: dict[str, None] = {}
    for piece in draft.pieces:
        for side in piece.ring:
            if side.edge.arc:
                center, radius = side.edge.arc.center, side.edge.arc.radius
                name = names.get(place_key(complex(float(center.x), float(center.y))), "")
                if name:
                    arcs[f"the compass on {name}, open to {ruler_text(round(radius, 3))}"] = None
    if arcs:
        yield f"Draw the arcs: {'; '.join(arcs)}."


# ---- the drawing -----------------------------------------------------------------------------------


def _picture(draft: Draft, ruling: Ruling | None, found: Construction | None) -> Picture:
    """The block's seams on the ruling, with the names of the points."""
    longest = max(float(draft.width), float(draft.height)) * POINTS_PER_INCH
    placement = Placement(0.0, AROUND, AROUND, min(1.0, DRAWN / longest))
    far = placement.spot_at(draft.width, draft.height)
    marks: list[Mark] = list(_ruling_marks(draft.width, draft.height, ruling, placement)) if ruling else []
    marks += [
        line_mark(_seams(draft, placement), "seam", SEAM),
        line_mark(ring_path(draft.outline, placement), "outline", 1.3),
    ]
    marks += _grid_names(draft, placement) if ruling else _names(found, placement) if found else []
    what = f"on {ruling.name} graph paper" if ruling else "with the points of its construction"
    caption = (
        f"Drawn at {placement.scale:.0%} of true size." if placement.scale < 1 else "Drawn true to size."
    )
    return Picture(tuple(marks), far.x + AROUND, far.y + AROUND, f"The seams of the block {what}.", caption)


def _seams(draft: Draft, placement: Placement) -> tuple[Segment, ...]:
    """Every seam once."""
    edges: list[Edge] = [
        part.edge for piece in draft.pieces for ring in (piece.ring, *piece.holes) for side in ring for part
        in side.parts if part.neighbour is not None and part.neighbour > piece.number
    ]  # fmt: skip
    return tuple(chain(*(open_path((edge,), placement) for edge in edges))) or straight(
        (0.0, 0.0), (0.0, 0.0)
    )


def _ruling_marks(
    width: Fraction | float, height: Fraction | float, ruling: Ruling, placement: Placement
) -> Iterator[Mark]:
    """The ruling under the drawing, every inch heavier."""
    apart = float(ruling.step) * POINTS_PER_INCH * placement.scale
    steps = ((ruling.step, FINE, PALE),) if apart >= LEAST_RULED else ()
    for step, weight, colour in (*steps, (BODY_INCH, INCH_LINE, PALE)):
        path: list[Segment] = []
        for number in range(int(float(width) / float(step) + 1e-6) + 1):
            path += straight(placement.spot_at(number * step, 0), placement.spot_at(number * step, height))
        for number in range(int(float(height) / float(step) + 1e-6) + 1):
            path += straight(placement.spot_at(0, number * step), placement.spot_at(width, number * step))
        yield PathMark(tuple(path), colour, weight, (), None, "grid")


def _grid_names(draft: Draft, placement: Placement) -> list[Mark]:
    """Columns' letters above, rows' numbers beside."""
    marks: list[Mark] = []
    last = -20.0
    for number, x in enumerate(draft.rules_across):
        spot = placement.spot_at(x, 0)
        if spot.x - last > 12:
            marks.append(set_text(spot.x, spot.y - 5, column_name(number), SMALLEST, False, "middle"))
            last = spot.x
    last = -20.0
    for number, y in enumerate(draft.rules_down):
        spot = placement.spot_at(0, y)
        if spot.y - last > 10:
            marks.append(set_text(spot.x - 4, spot.y + 2.4, str(number + 1), SMALLEST, False, "end"))
            last = spot.y
    return marks


def _names(found: Construction, placement: Placement) -> list[Mark]:
    """The points that were found, and those they were found from, each with its name on plain ground."""
    named: Mapping[str, complex] = (
        found.known | found.found if len(found.known) + len(found.found) <= NAMED_MOST else found.known
    )
    spots = {name: placement.spot(Point(place.real, place.imag)) for name, place in named.items()}
    marks: list[Mark] = []
    taken: list[Box] = []
    for name, (x, y) in spots.items():
        half = measure(name, SMALLEST, True) / 2
        left, top, right, bottom = box = _name_box(x, y, half, taken, spots.values())
        taken.append(box)
        marks.append(solid_mark(circle_path(x, y, POINT), "point", name))
        marks.append(PathMark(box_path(left, top, right, bottom), None, 0.0, (), WHITE, "plate"))
        middle, line = (left + right) / 2, (top + bottom) / 2 + centre_drop(SMALLEST, True)
        marks.append(set_text(middle, line, name, SMALLEST, True, "middle", role="point", subject=name))
    return marks


def _name_box(x: float, y: float, half: float, taken: Sequence[Box], spots: Iterable[Spot]) -> Box:
    """Where a point's name stands: above to the right, or where else it meets no other name and no point."""
    beside = [
        (left, top, left + 2 * half + 2, top + NAME_TALL)
        for top in (y - 2 - NAME_TALL, y + 2)
        for left in (x + 3, x - 5 - 2 * half)
    ]
    met = [
        sum(_meet(box, other) for other in taken)
        + sum(box[0] < spot.x < box[2] and box[1] < spot.y < box[3] for spot in spots)
        for box in beside
    ]
    return beside[met.index(min(met))]


def _meet(one: Box, two: Box) -> bool:
    return one[0] < two[2] and two[0] < one[2] and one[1] < two[3] and two[1] < one[3]


# ---- the page to draft on --------------------------------------------------------------------------


def _practice_leaf(draft: Draft, ruling: Ruling | None, options: SheetOptions, under: str) -> Leaf:
    """A page of graph paper, true to size; a plain one where the block lies on no ruling."""
    paper = paper_for(options)
    if ruling:
        what = f"{ruling.name} graph paper"
        marks = _graph_page(ruling, paper)
    else:
        what, marks = "plain drafting paper", _plain_page(draft, paper)
    return leaf_of(
        Body(what, "true to size, to draft on", SAFETY, marks),
        draft.title,
        under,
        draft.trim.dots,
        paper,
        options,
        "",
    )


def _graph_page(ruling: Ruling, paper: Paper) -> list[Mark]:
    """Whole inches of ruling, as many as the page holds."""
    left, top, right, bottom = paper.body
    wide, tall = int((right - left) / POINTS_PER_INCH), int((bottom - top) / POINTS_PER_INCH)
    x = left + (right - left - wide * POINTS_PER_INCH) / 2
    return list(_ruling_marks(wide, tall, ruling, Placement(0.0, x, top)))


def _plain_page(draft: Draft, paper: Paper) -> list[Mark]:
    """The block's outline where the page holds it, else a corner to begin from."""
    left, top, right, bottom = paper.body
    wide, tall = (float(each) * POINTS_PER_INCH for each in (draft.width, draft.height))
    if wide <= right - left and tall <= bottom - top:
        x, y = (left + right - wide) / 2, (top + bottom - tall) / 2
        return [PathMark(box_path(x, y, x + wide, y + tall), GREY, 0.5, (), None, "outline")]
    corner = straight((left, bottom), (left, top), (right, top))
    words = "The block is larger than the page: draft a quarter of it, or tape sheets together."
    return [PathMark(corner, BLACK, 0.5, (), None, "outline"), set_text(left + 8, top + 14, words)]


def ruling_words(draft: Draft) -> str:
    """`quarter-inch graph paper`, or `by ruler and compass`: for the contents and the cover."""
    ruling = ruling_of(draft)
    return f"{ruling.name} graph paper" if ruling else "by ruler and compass"
