"""The quilt's picture: as large as the page allows, with its fabrics, its setting and its borders in
words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import floor, inf
from typing import Final

from ...geometry.edge import Edge
from ...measure.length import POINTS_PER_INCH
from ...measure.tolerance import ALIKE
from ...quilt.model import Quilt
from ...words.numbers import ruler_text
from ...words.pages import picture as words
from ...words.pages.booklet import READ_ONLY
from ...words.phrases import one_of
from ...words.work.quilts import setting_words
from ..arrange.fills import Fill
from ..arrange.furniture import Paper
from ..arrange.leaves import Leaf
from ..arrange.notes import first_lines, note_lines, note_pages
from ..arrange.paths import Placement
from ..arrange.room import Box
from ..arrange.style import LABEL, set_text, shorten
from ..arrange.swatches import Strip, strip_marks, strip_of
from ..pictures.quilt import AROUND, draw_quilt, quilt_fills, quilt_surround, shown_fabrics
from ..quilts.tables import block_name, fabric_titles, size_text
from ..quilts.words import about
from ..setting.flow import whole_lines
from ..setting.open_page import note_lines as foot_lines
from ..setting.open_page import open_body, plain_leaf
from ..work import Work

MOST_SWATCH_ROWS: Final = 5
MOST_WORD_LINES: Final = 14
WORD_LINE: Final = 11.0
GAP: Final = 8.0


def picture_leaves(work: Work, paper: Paper, written: Sequence[str] = ()) -> Iterator[Leaf]:
    """The page of the picture, and pages for notes that it has no room for. `written`: what the writer has to
    say of the quilt."""
    quilt = work.quilt
    left, top, right, bottom = open_body(paper, len(foot_lines(paper, words.NOTE)))
    strip, fills = swatches_of(quilt, right - left)
    notes, more_notes = first_lines(note_lines(written, right - left))
    lines = [*word_lines(quilt, strip, right - left, MOST_WORD_LINES - len(notes)), *notes]
    words_top = bottom - len(lines) * WORD_LINE
    strip_top = words_top - strip.tall - GAP / 2
    placement = centred(quilt, (left, top, right, strip_top - GAP))
    marks = [
        *draw_quilt(quilt, placement),
        *quilt_surround(quilt, placement),
        *strip_marks(strip, fills, left, strip_top),
        *(set_text(left, words_top + 8 + row * WORD_LINE, line) for row, line in enumerate(lines)),
    ]
    head = (quilt.title, work.under, paper)
    below = words.drawn_at(scale_share(placement.scale))
    yield plain_leaf(*head, words.TITLE.lower(), below, marks, words.NOTE, words.TITLE)
    for page in note_pages(more_notes, open_body(paper)):
        yield plain_leaf(*head, words.NOTES, "", page, READ_ONLY, words.TITLE)


def swatches_of(quilt: Quilt, width: float) -> tuple[Strip, dict[str, Fill]]:
    """The swatches of the fabrics that show, by their titles."""
    titles, fills = fabric_titles(quilt), quilt_fills(quilt)
    shown = shown_fabrics(quilt)
    strip = strip_of([titles[name] for name in shown], width, MOST_SWATCH_ROWS)
    return strip, {titles[name]: fills[name] for name in shown}


def scale_share(scale: float) -> str:
    """`12%`, `0.8%`."""
    return f"{scale * 100:.0f}%" if scale >= 0.1 else f"{scale * 100:.2g}%"


def centred(quilt: Quilt, room: Box) -> Placement:
    """The quilt in the middle of the room, as large as it goes with what stands about it, in whole
    thousandths."""
    left, top, right, bottom = room
    across, down = right - left - AROUND[0] - AROUND[2], bottom - top - AROUND[1] - AROUND[3]
    wide, tall = (float(side) * POINTS_PER_INCH for side in (quilt.width, quilt.height))
    most = min(across / wide, down / tall)
    scale = min(floor(most * 1000) / 1000 or most, 1.0)
    x = left + AROUND[0] + (across - wide * scale) / 2
    y = top + AROUND[1] + (down - tall * scale) / 2
    return Placement(0.0, x, y, scale)


def word_lines(quilt: Quilt, strip: Strip, width: float, most: int) -> list[str]:
    """What stands under the picture, in lines: so many at most."""
    texts = [*quilt_words(quilt)]
    if strip.left_over:
        texts.append(words.more_fabrics(len(strip.left_over)))
    lines = [line for text in texts for line in whole_lines(text, width)]
    if len(lines) > most:
        lines = [*lines[: most - 1], shorten(lines[most - 1] + " …", width, LABEL)]
    return lines


def quilt_words(quilt: Quilt) -> Iterator[str]:
    """The setting, the blocks, the sashing and the borders, a line each."""
    yield words.setting_line(setting_words(quilt.setting))
    yield from _block_words(quilt)
    yield from _sashing_words(quilt)
    yield from words.border_words(
        *([f"{about(wide)} {what}" for wide, what in each] for each in border_bands(quilt))
    )
    if quilt.binding:
        cloth = fabric_titles(quilt)[quilt.binding.fabric]
        yield words.binding_words(quilt.binding.bias, ruler_text(quilt.binding.strip_width), cloth)


def _block_words(quilt: Quilt) -> Iterator[str]:
    """How many of each block, those of one size together."""
    sizes: dict[str, list[tuple[int, str]]] = {}
    for at, (block, count) in enumerate(zip(quilt.blocks, quilt.block_counts, strict=True)):
        size = size_text(block.draft.width, block.draft.height)
        sizes.setdefault(size, []).append((count, block_name(quilt, at)))
    return (words.block_words(size, blocks) for size, blocks in sizes.items())


def _sashing_words(quilt: Quilt) -> Iterator[str]:
    titles = fabric_titles(quilt)
    strips = [piece for piece in quilt.pieces if piece.what == "sashing-strip"]
    if strips:
        widths = dict.fromkeys(about(min(edge.length for edge in piece.outline)) for piece in strips)
        cloths = dict.fromkeys(titles[piece.fabric] for piece in strips)
        posts = dict.fromkeys(titles[piece.fabric] for piece in quilt.pieces if piece.part == "posts")
        yield words.sashing_words(widths, cloths, list(posts))


Bands = tuple[tuple[float, str], ...]


def border_bands(quilt: Quilt) -> tuple[Bands, Bands]:
    """Finished width and what each border is of, from the inside out: at the sides, and at top and bottom.

    Read off the picture: what lies on a line from the middle of a side toward the quilt's own middle; of a
    pieced border all that it is pieced of, but its corners.
    """
    titles = fabric_titles(quilt)
    boxes = [(_box(piece.outline), titles[piece.fabric]) for piece in quilt.pieces
             if piece.part == "border" and piece.block is None]  # fmt: skip
    boxes += [
        (_box(each.outline), f"of {block_name(quilt, each.block)}")
        for each in quilt.placed
        if each.part == "border"
    ]
    upright = [((top, left, bottom, right), what) for (left, top, right, bottom), what in boxes]
    wide, tall = float(quilt.width), float(quilt.height)
    sides, ends = _met(boxes, wide, tall), _met(upright, tall, wide)
    if len(sides) != len(ends):  # borders at two sides only
        return _bands(boxes, sides), _bands(upright, ends)
    return (
        _bands(boxes, sides, [(end[2], tall - end[2]) for end, _ in ends]),
        _bands(upright, ends, [(side[2], wide - side[2]) for side, _ in sides]),
    )


OFF_MIDDLE: Final = 0.47
"""The share of a side at which borders are read: the exact middle may lie on a seam."""


Named = tuple[Box, str]


def _met(boxes: Sequence[Named], wide: float, tall: float) -> list[Named]:
    """What lies on the line, from the inside out."""
    level = tall * OFF_MIDDLE
    met = [(box, what) for box, what in boxes if box[1] < level < box[3] and box[2] <= wide / 2]
    return sorted(met, key=lambda each: -each[0][0])


NOWHERE: Final = (inf, -inf)


def _bands(
    boxes: Sequence[Named], met: Sequence[Named], between: Sequence[tuple[float, float]] = ()
) -> Bands:
    """Width of each band and all that lies in it; `between`: where it runs without its corners."""
    bands = []
    for (box, what), (start, end) in zip(met, between or [NOWHERE] * len(met), strict=True):
        along = [
            name
            for other, name in boxes
            if max(abs(other[0] - box[0]), abs(other[2] - box[2]), start - other[1], other[3] - end) <= ALIKE
        ]
        names = sorted(dict.fromkeys(along or [what]), key=lambda name: (not name.startswith("of "), name))
        bands.append((round(box[2] - box[0], 9), one_of(names, "and")))
    return tuple(bands)


def _box(outline: Sequence[Edge]) -> Box:
    xs, ys = zip(*((float(edge.start.x), float(edge.start.y)) for edge in outline), strict=True)
    return min(xs), min(ys), max(xs), max(ys)
