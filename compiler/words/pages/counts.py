"""The words of the counts."""

from __future__ import annotations

from typing import Final

from ...measure.marks import metric, nearest_mark
from ...measure.tolerance import near
from ..numbers import reads_exactly
from ..phrases import count_of
from ..say import Say

TITLE: Final = "Counts"
TEMPLATE: Final = "template"
PIECE: Final = "piece"
FABRIC: Final = "fabric"
CUT_AS: Final = "cut as"
AS_DRAWN: Final = "as drawn"
REVERSED: Final = "reversed"
PIECES: Final = "pieces"
IN_ALL: Final = "in all"
WHOLE: Final = "The whole top"
BY_FABRIC: Final = "Pieces by fabric"

INTRO: Final = (
    "Pieces of the quilt’s top, all blocks together. Reversed pieces are cut with the template turned over, "
    "or with the cloth face down."
)


def whole_words(blocks: int, pieces: int) -> str:
    """`20 blocks, 1,204 pieces`."""
    return f"{count_of(blocks, 'block')}, {pieces:,} pieces"


def group_words(size: str, version: int, times: int) -> str:
    """`6in finished · version 2 · 10 in the quilt`; nothing for a part of the setting."""
    return f"{size} finished · version {version} · {times} in the quilt" if times else ""


def caption(title: str) -> str:
    """`Pieces of Ohio Star`."""
    return f"Pieces of {title}"


PART_WORDS: Final = {
    "blocks": "blocks", "setting": "setting", "sashing": "sashing", "posts": "posts", "border": "borders",
    "binding": "binding", "backing": "backing",
}  # fmt: skip
"""The parts of a quilt in the order in which they are counted, as headings name them."""


def under_quilt(size: str, version: int, colourway: str) -> str:
    """`60in x 72in finished · version 1 · colourway Sea`."""
    words = f"{size} finished · version {version}"
    return f"{words} · colourway {colourway}" if colourway else words


def under_block(size: str, version: int) -> str:
    """`6in finished · version 2`."""
    return f"{size} finished · version {version}"


def times_in(under: str, times: int, quilt: str) -> str:
    """`6in finished · version 2 · 10 times in Harbour Sampler`."""
    return f"{under} · {count_of(times, 'time')} in {quilt}"


def counts_for_one(under: str, times: int, quilt: str) -> str:
    """The same, saying what the counts on a block's templates are for."""
    uses = f"counts are for one of the {times}" if times > 1 else "one"
    return f"{under} · {uses} in {quilt}"


def block_of_size(title: str, size: str, version: int = 0) -> str:
    """`Ohio Star 9in version 2`: a block told from another of its title."""
    return f"{title} {size}{f' version {version}' if version else ''}"


def single_of_size(what: str, size: str) -> str:
    """`border strip, 4cm x 20cm`."""
    return f"{what}, {size}"


def in_border(what: str) -> str:
    """Of pieces in a border of blocks."""
    return f"{what} (border)".strip()


def single_purpose(what: str, where: str, template: str) -> str:
    """`plain square, border, template S1`."""
    return f"{what}{f', {where}' if where else ''}{f', template {template}' if template else ''}"


def block_purpose(block: str, piece: str, border: bool) -> str:
    """`Ohio Star A, point (border)`."""
    return f"{f'{block} ' if block else ''}{piece}{' (border)' if border else ''}"


def about_box(say: Say, short: float, long: float) -> str:
    """`about 1in x 36in`: the box round a finished shape; by the marks of a ruler in centimetres."""
    if metric(say.ruler):
        marks = [nearest_mark(each, say.ruler) for each in (short, long)]
        on_marks = all(near(mark, each) for mark, each in zip(marks, (short, long), strict=True))
        sides = dict.fromkeys(say.on_ruler(mark) for mark in marks)
        return f"{'' if on_marks else 'about '}{' x '.join(sides)}"
    exact = reads_exactly(short) and reads_exactly(long)
    sides = dict.fromkeys(say.length(each if exact else nearest_mark(each)) for each in (short, long))
    return f"{'' if exact else 'about '}{' x '.join(sides)}"


def chapter_of(block: str, title: str) -> str:
    """`Lock Gate: steps`."""
    return f"{block}: {title.lower()}"
