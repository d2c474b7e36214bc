"""The drafted block as a drawing: fabrics, grid, seams, outline, letters, and its size on dimension lines."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import chain
from math import sqrt
from typing import Final, Protocol

from ...drafting.model import Draft, Piece
from ...geometry.edge import Edge
from ...measure.length import POINTS_PER_INCH
from ...measure.record import record
from ...measure.tolerance import Number
from ...words.say import Say
from ..drawing.lettering import cap_height
from ..page import Mark, PathMark, Segment, TextMark
from .fills import Fill, texture_mark
from .label import SetLine
from .paths import Placement, Ring, Spot, box_path, closed, flat_ring, open_path, ring_path, straight
from .room import Line, Room, middle_of, place_lines
from .style import (
    BLACK,
    LABEL,
    PALE,
    RULING,
    SEAM,
    SMALLEST,
    WHITE,
    grey_text,
    lettering,
    line_mark,
    measure,
    set_text,
    solid_mark,
)
from .swatches import fills_of

OUTLINE: Final = 1.1

AROUND: Final = (22.0, 30.0, 38.0, 24.0)
"""Points kept left, above, right and below a drawing for the grid's names, 'top' and the dimension lines."""

PIECE_LETTERS: Final = (16.0, 13.0, 10.5, 8.5, SMALLEST)
"""Sizes of a template's letter in a piece, the largest that fits."""

NUMBER_GAP: Final = 3.0  # points between a letter and the number under it
PIECE_CLEAR: Final = 2.0
PLATE: Final = 1.5  # points of plain ground about lettering

DIMENSION_OFF: Final = 14.0  # points from the block to its dimension lines

RULED_GRID: Final = 4.0
"""Least points between grid lines that are drawn: closer ones are a grey wash."""

NAMED_GRID: Final = 11.0
"""Least points between grid lines that are named: closer names run together."""


class Ground(Protocol):
    """What is drawn about a block: its size and its grid's lines, in inches."""

    @property
    def width(self) -> Number:
        """From side to side."""

    @property
    def height(self) -> Number:
        """From top to foot."""

    @property
    def rules_across(self) -> tuple[Number, ...]:
        """Where its lines stand."""

    @property
    def rules_down(self) -> tuple[Number, ...]:
        """Where its lines lie."""


@record
class Drawing:
    """The marks of a drawing, and the pieces that were too small to letter."""

    marks: list[Mark]
    unlettered: tuple[int, ...]


def draw_block(draft: Draft, placement: Placement, avoid: Sequence[Ring] = ()) -> Drawing:
    """The block where the placement puts it, lettered clear of what is to be avoided."""
    fills = fills_of(draft)
    light = {fabric: fill for fabric, fill in fills.items() if not fill.dark}
    dark = {fabric: fill for fabric, fill in fills.items() if fill.dark}
    # The grid lies under dark fabrics, for a pale line on them would be taken for a seam.
    marks: list[Mark] = [*_fill_marks(draft, placement, light), grid_mark(draft, placement)]
    marks.extend(_fill_marks(draft, placement, dark))
    marks.extend(_seam_marks(draft, placement, fills))
    marks.append(line_mark(ring_path(draft.outline, placement), "outline", OUTLINE))
    letters, unlettered = _letter_marks(draft, placement, fills, avoid)
    return Drawing(marks + letters, unlettered)


def portray(draft: Draft, placement: Placement) -> list[Mark]:
    """The block as it looks when it is sewn: fabrics, seams and outline, and no letters."""
    fills = fills_of(draft)
    return [
        *_fill_marks(draft, placement, fills),
        *_seam_marks(draft, placement, fills),
        line_mark(ring_path(draft.outline, placement), "outline", OUTLINE),
    ]


def piece_rings(piece: Piece) -> tuple[tuple[Edge, ...], ...]:
    """The rings of a piece, its own first."""
    return tuple(tuple(side.edge for side in ring) for ring in (piece.ring, *piece.holes))


def _fill_marks(draft: Draft, placement: Placement, fills: Mapping[str, Fill]) -> Iterable[Mark]:
    """For each fabric one path of all its pieces, filled, and its texture clipped to them."""
    corner, far = placement.spot_at(0, 0), placement.spot_at(draft.width, draft.height)
    for fabric, fill in fills.items():
        pieces = [piece for piece in draft.pieces if piece.fabric == fabric]
        path = tuple(chain(*(ring_path(ring, placement) for piece in pieces for ring in piece_rings(piece))))
        yield PathMark(path, None, 0.0, (), fill.ground, "fill", fabric)
        texture = texture_mark(fill, (corner.x, corner.y, far.x, far.y), path, fabric)
        if texture:
            yield texture


def grid_mark(draft: Ground, placement: Placement) -> Mark:
    """The lines of the drafting grid, as far as the block's box; of very close ones, some."""
    least = RULED_GRID / (POINTS_PER_INCH * placement.scale)
    segments: list[Segment] = []
    for x in apart(draft.rules_across, least):
        segments.extend(straight(placement.spot_at(x, 0), placement.spot_at(x, draft.height)))
    for y in apart(draft.rules_down, least):
        segments.extend(straight(placement.spot_at(0, y), placement.spot_at(draft.width, y)))
    return PathMark(tuple(segments), PALE, RULING, (), None, "grid")


def apart(numbers: Sequence[Number], least: float) -> list[Number]:
    """Those of ascending numbers that stand at least so far from the one kept before."""
    kept: list[Number] = []
    for number in numbers:
        if not kept or number - kept[-1] >= least:
            kept.append(number)
    return kept


def _seam_marks(draft: Draft, placement: Placement, fills: Mapping[str, Fill]) -> Iterable[Mark]:
    """Every seam once: black, but white between two fabrics on which black would be lost."""
    black: list[Segment] = []
    white: list[Segment] = []
    for edge, right, left in draft.graph.between():
        lost = all(fills[draft.pieces[face].fabric].dark for face in (right, left))
        (white if lost else black).extend(open_path((edge,), placement))
    for path, colour in ((black, BLACK), (white, WHITE)):
        if path:
            yield PathMark(tuple(path), colour, SEAM, (), None, "seam")


def _letter_marks(
    draft: Draft, placement: Placement, fills: Mapping[str, Fill], avoid: Sequence[Ring]
) -> tuple[list[Mark], tuple[int, ...]]:
    """The template's letter and the piece's number in every piece they fit."""
    letters = {member.piece: shape.label for shape in draft.shapes for member in shape.members}
    marks: list[Mark] = []
    unlettered: list[int] = []
    for piece in draft.pieces:
        wide = sqrt(float(piece.area)) * POINTS_PER_INCH * placement.scale
        found = None
        if wide > SMALLEST:  # a quick look first: ten thousand pieces may be too small to letter
            found = _lettered(piece, letters[piece.number], placement, fills[piece.fabric], avoid)
        if found is None:
            unlettered.append(piece.number)
        else:
            marks.extend(found)
    return marks, tuple(unlettered)


def _lettered(
    piece: Piece, letter: str, placement: Placement, fill: Fill, avoid: Sequence[Ring]
) -> list[Mark] | None:
    """The letter with the number under it, else the letter alone; None where neither fits."""
    room = Room(tuple(flat_ring(ring, placement) for ring in piece_rings(piece)))
    home = middle_of(room.rings[0])
    left, top, right, bottom = room.bounds()
    room = room.beside(*(ring for ring in avoid if left <= ring[0].x <= right and top <= ring[0].y <= bottom))
    for size, number_size in (
        *((size, SMALLEST) for size in PIECE_LETTERS[:-1]),
        *((size, 0.0) for size in PIECE_LETTERS[2:]),
    ):
        lines = [SetLine(letter, size, True, cap_height(size, True))]
        if number_size:
            drop = lines[0].baseline + cap_height(SMALLEST) + NUMBER_GAP
            lines.append(SetLine(str(piece.number), SMALLEST, False, drop))
        asked = [_tight(line) for line in lines]
        if asked[-1].bottom > bottom - top or max(line.width for line in asked) > right - left:
            continue
        spot = place_lines(room, asked, home, PIECE_CLEAR)
        if spot:
            return [*_plates(asked, spot, fill), *_set_in(lines, spot, fill, str(piece.number))]
    return None


def _tight(line: SetLine) -> Line:
    """The box of a line of capitals or figures: nothing falls below the baseline."""
    rise = cap_height(line.size, line.bold)
    return Line(measure(line.text, line.size, line.bold), line.baseline - rise, line.baseline)


def _plates(asked: Sequence[Line], spot: Spot, fill: Fill) -> list[Mark]:
    """Plain ground behind each line of lettering, free of texture and grid; no wider than was asked for,
    or it would cover a seam that runs close."""
    boxes = []
    for line in asked:
        wide = line.width / 2 + PLATE
        boxes.append((spot.x - wide, spot.y + line.top - PLATE, spot.x + wide, spot.y + line.bottom + PLATE))
    return [PathMark(box_path(*box), None, 0.0, (), fill.ground, "plate") for box in boxes]


def _set_in(lines: Sequence[SetLine], spot: Spot, fill: Fill, subject: str) -> list[Mark]:
    return [
        TextMark(
            spot.x, spot.y + line.baseline, lettering(line.text), line.size, line.bold, "middle",
            fill.lettering, "piece", subject,
        )
        for line in lines
    ]  # fmt: skip


def surround_marks(draft: Ground, placement: Placement, say: Say) -> list[Mark]:
    """What stands about a drawing: grid names above and left, 'top', dimension lines right and below."""
    corner, far = placement.spot_at(0, 0), placement.spot_at(draft.width, draft.height)
    marks = [*_grid_names(draft, placement), *top_marks((corner.x + far.x) / 2, corner.y - 16)]
    marks.extend(dimension_marks(Spot(corner.x, far.y), far, say.length(draft.width)))
    marks.extend(dimension_marks(Spot(far.x, corner.y), far, say.length(draft.height)))
    return marks


def _grid_names(draft: Ground, placement: Placement) -> Iterable[Mark]:
    """Letters over the columns' lines and numbers beside the rows' lines, as a source names them."""
    last = -NAMED_GRID
    for number, x in enumerate(draft.rules_across):
        spot = placement.spot_at(x, 0)
        if spot.x - last >= NAMED_GRID:
            yield grey_text(spot.x, spot.y - 5, column_name(number), SMALLEST, "middle")
            last = spot.x
    last = -NAMED_GRID
    for number, y in enumerate(draft.rules_down):
        spot = placement.spot_at(0, y)
        if spot.y - last >= NAMED_GRID:
            yield grey_text(spot.x - 5, spot.y + 2.4, str(number + 1), SMALLEST, "end")
            last = spot.y


def column_name(number: int) -> str:
    """A, B, ..., Z, AA, AB... for 0, 1, ..."""
    name = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, 26)
        name = chr(ord("A") + rest) + name
    return name


def top_marks(x: float, y: float) -> list[Mark]:
    """A pointer to the block's top."""
    half = measure("top", LABEL) / 2
    tip = x - half - 7
    return [
        solid_mark(closed(((tip, y - 7), (tip + 3, y), (tip - 3, y))), "compass"),
        set_text(x, y, "top", LABEL, False, "middle"),
    ]


def dimension_marks(first: Spot, last: Spot, text: str) -> Iterable[Mark]:
    """A dimension line off the right or lower side from first to last, broken by the measure; where it is too
    short for that, the measure stands after it."""
    level = first.y == last.y
    length = last.x - first.x if level else last.y - first.y
    half = measure(text, LABEL) / 2 + 4 if level else 8.0
    off = DIMENSION_OFF

    def place(along: float, out: float) -> Spot:
        return Spot(first.x + along, first.y + out) if level else Spot(first.x + out, first.y + along)

    ticks = [(place(each, 4), place(each, off + 4)) for each in (0.0, length)]
    if length > 2 * half + 8:
        gap = (length / 2 - half, length / 2 + half)
        lines = [(place(0, off), place(gap[0], off)), (place(gap[1], off), place(length, off))]
        spot = place(length / 2, off if level else max(off, measure(text, LABEL) / 2 + 4))
        yield set_text(spot.x, spot.y + 3, text, LABEL, False, "middle")
    else:
        lines = [(place(0, off), place(length, off))]
        spot = place(length + 6, off) if level else place(length / 2, off + 7)
        yield set_text(spot.x, spot.y + 3, text, LABEL)
    yield line_mark(tuple(chain(*(straight(*line) for line in ticks + lines))), "dimension", 0.5)
