"""One drawing that is larger than a page, shared out over tiles that are laid together again.

In: marks on a virtual page of any size. Out: tiles, each with its part of the marks, moved so that its own
top left corner is (0, 0), and its join marks. Points; x right, y down.

Neighbouring tiles overlap. Along the middle of each overlap runs the join line, on both tiles; half diamonds
stand on it, one half on each tile, with the same letter (`joins`):

    +-----------:---+             one tile is cut along its join line and laid on the other,
    |      1.1 a<:  |             line to line, so that the halves make whole diamonds:
    +-----------:---+
            +---:-----------+                 a < : > a
            |  :>a  1.2     |
            +---:-----------+
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from ..drawing.clipping import Box, Piece, Spot, at, box_path, clip_path, subpaths
from ..drawing.lettering import ascent, descent, width_of
from ..drawing.lines import left_of_anchor
from ..page import Mark, PathMark, Segment, TextMark
from .joins import join_marks
from .moving import moved_mark
from .tile_grid import Grid, Tile

Place = tuple[int, int]  # row, column

OUTLINES: Final = ("cut", "sew")  # roles of the lines round a template

CHORDS: Final = 32  # for a bend of a clip: on a page, far under a thousandth of an inch


def tile(marks: Sequence[Mark], grid: Grid, places: Sequence[Place] = ()) -> tuple[Tile, ...]:
    """The tiles at the places given; else those that show anything of the drawing, or lie in its outlines.
    Row by row.

    Lines are cut where a tile ends, and measure on it as on the drawing; their dashes start afresh. Lettering
    is not cut: each line stands on every tile that holds all of it, and where none does, on the one that
    holds its middle, moved inside.
    """
    every = [(row, column) for row in range(1, grid.rows + 1) for column in range(1, grid.columns + 1)]
    boxes = {place: grid.box(*place) for place in places or every}
    shown = {place: _part(marks, boxes, place) for place in boxes}
    kept = [place for place in boxes if places or shown[place] or _inside(marks, boxes[place])]
    joined = join_marks(grid, kept, lambda box, words: _is_clear(marks, box, words))
    return tuple(
        Tile(*place, boxes[place], _moved([*joined[place], *shown[place]], boxes[place])) for place in kept
    )


def _is_clear(marks: Sequence[Mark], box: Box, words: bool) -> bool:
    """Whether no line and no word of the drawing meets the box; of `words`, whether no word does."""
    for mark in marks:
        if isinstance(mark, PathMark):
            if not words and mark.stroke is not None and clip_path(mark.path, box):
                return False
        else:
            room = _text_box(mark)
            across = room.left < box.right and box.left < room.right
            if across and room.top < box.bottom and box.top < room.bottom:
                return False
    return True


def _part(marks: Sequence[Mark], boxes: dict[Place, Box], place: Place) -> list[Mark]:
    """What the tile shows of the marks, where they stand on the drawing."""
    part: list[Mark] = []
    for mark in marks:
        if isinstance(mark, PathMark):
            part.extend(_clipped(mark, boxes[place]))
        else:
            part.extend(_placed(mark, boxes, place))
    return part


def _clipped(mark: PathMark, box: Box) -> Iterator[PathMark]:
    """The mark's part in the box: its line cut exactly, its fill shown through a clip."""
    line = clip_path(mark.path, box)
    if line == mark.path:
        yield mark
        return
    if mark.fill is not None and _meets(mark.path, box):
        clip = box_path(box) if mark.clip is None else _narrowed(mark.clip, box)
        if clip:
            yield replace(mark, stroke=None, clip=clip)
    if mark.stroke is not None and line:
        yield replace(mark, path=line, fill=None)


def _narrowed(clip: tuple[Segment, ...], box: Box) -> tuple[Segment, ...]:
    """The clip, cut off at the box's sides one after another; bends as chords. Empty: outside."""
    path: list[Segment] = []
    for pieces, _ in subpaths(clip):
        ring = [spot for piece in pieces for spot in _chords(piece)]
        for axis, line, sign in ((0, box.left, 1), (0, box.right, -1), (1, box.top, 1), (1, box.bottom, -1)):
            ring = _cut_off(ring, axis, line, sign)
        if ring:
            path.extend((("M", *ring[0]), *(("L", *spot) for spot in ring[1:]), ("Z",)))
    return tuple(path)


def _chords(piece: Piece) -> list[Spot]:
    """The piece without its end, a bend as so many chords."""
    return [piece[0]] if len(piece) == 2 else [at(piece, number / CHORDS) for number in range(CHORDS)]


def _cut_off(ring: list[Spot], axis: int, line: float, sign: int) -> list[Spot]:
    """What of the ring lies on one side of a line across the axis (Sutherland and Hodgman's way)."""
    kept: list[Spot] = []
    for one, other in zip(ring, (*ring[1:], *ring[:1]), strict=True):
        a, b = sign * (one[axis] - line), sign * (other[axis] - line)
        if a >= 0:
            kept.append(one)
        if (a < 0) != (b < 0):
            share = a / (a - b)
            kept.append((one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share))
    return kept


def _meets(path: tuple[Segment, ...], box: Box) -> bool:
    """Whether the box around the path reaches into the other."""
    spots = [spot for pieces, _ in subpaths(path) for piece in pieces for spot in piece]
    xs, ys = [x for x, _ in spots], [y for _, y in spots]
    across = min(xs) < box.right and max(xs) > box.left
    return across and min(ys) < box.bottom and max(ys) > box.top


def _inside(marks: Sequence[Mark], box: Box) -> bool:
    """Whether the box's middle lies inside an outline: on such a tile no line need be seen."""
    middle = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    outlines = (mark for mark in marks if isinstance(mark, PathMark) and mark.role in OUTLINES)
    return any(_surrounds(mark.path, middle) for mark in outlines)


def _surrounds(path: tuple[Segment, ...], spot: Spot) -> bool:
    """Whether a line from the spot to the right crosses the path's closed parts an odd number of times."""
    x, y = spot
    ends = ((piece[0], piece[-1]) for pieces, closed in subpaths(path) if closed for piece in pieces)
    reached = [(one, other) for one, other in ends if (one[1] > y) != (other[1] > y)]
    return sum(x1 + (x2 - x1) * (y - y1) / (y2 - y1) > x for (x1, y1), (x2, y2) in reached) % 2 == 1


def _placed(mark: TextMark, boxes: dict[Place, Box], place: Place) -> Iterator[TextMark]:
    """The line of text, if it belongs on the tile; moved inside if no tile holds all of it."""
    room = _text_box(mark)
    if boxes[place].holds(room[:2]) and boxes[place].holds(room[2:]):
        yield mark
    elif not any(box.holds(room[:2]) and box.holds(room[2:]) for box in boxes.values()):
        middle = (room.left + room.right) / 2, (room.top + room.bottom) / 2
        if place == next((each for each, box in boxes.items() if box.holds(middle)), None):
            box = boxes[place]
            dx = max(box.left - room.left, min(0.0, box.right - room.right))
            dy = max(box.top - room.top, min(0.0, box.bottom - room.bottom))
            yield replace(mark, x=mark.x + dx, y=mark.y + dy)


def _text_box(mark: TextMark) -> Box:
    """The room of a level line; a turned one, a square about its anchor that holds it at any turn."""
    wide = width_of(mark.text, mark.size, mark.bold)
    if mark.turned:
        return Box(mark.x - wide, mark.y - wide, mark.x + wide, mark.y + wide)
    left = mark.x - left_of_anchor(mark)
    above, below = ascent(mark.size, mark.bold), descent(mark.size, mark.bold)
    return Box(left, mark.y - above, left + wide, mark.y + below)


def _moved(marks: Sequence[Mark], box: Box) -> tuple[Mark, ...]:
    """The marks, counted from the box's own corner."""
    return tuple(moved_mark(mark, -box.left, -box.top) for mark in marks)
