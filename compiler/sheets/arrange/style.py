"""The house style of sheets: weights of lines, sizes of type, and the small marks made of them.

Everything is in points. Black carries all meaning; grey only steps back.
"""

from __future__ import annotations

from functools import lru_cache
from math import atan2, cos, hypot, pi, sin
from typing import Final, Literal

from ..drawing.lettering import (
    CACHED_LINES,
    cap_height,
    fraction_glyphs,
    printable,
    width_of,
)
from ..page import Mark, PathMark, Segment, TextMark
from .paths import Spot, circle_path, closed, straight

BLACK: Final = (0.0, 0.0, 0.0)
GREY: Final = (0.3, 0.3, 0.3)  # small print: still 9 to 1 against the paper
PALE: Final = (0.75, 0.75, 0.75)  # grid ruling
WHITE: Final = (1.0, 1.0, 1.0)

MARGIN: Final = 36.0  # 1/2in

TITLE: Final = 18.0
HEADING: Final = 9.0
LABEL: Final = 8.5
SMALLEST: Final = 7.0  # the floor: smaller type does not survive a photocopier
LETTER: Final = 26.0  # of a template
LEADING: Final = 1.2  # from baseline to baseline, times the size

CUT: Final = 1.1
SEW: Final = 0.7
SEW_DASH: Final = (5.0, 3.0)
SEAM: Final = 0.8
RULING: Final = 0.25
LEADER: Final = 0.4
RULE: Final = 0.6
ARROW: Final = 0.8
DOT_LINE: Final = 0.5
SPECK: Final = 0.45  # radius of the point in the middle of a dot
HEAD_LONG: Final = 6.5
HEAD_WIDE: Final = 2.4  # half the width of an arrow's head

Anchor = Literal["start", "middle", "end"]


@lru_cache(maxsize=CACHED_LINES)
def lettering(text: str) -> str:
    """The text as it is set: letters the face has, fractions as the face draws them."""
    return fraction_glyphs(printable(text))


def set_text(
    x: float,
    y: float,
    text: str,
    size: float = LABEL,
    bold: bool = False,
    anchor: Anchor = "start",
    **rest: str,
) -> TextMark:
    """A line of text on the baseline (x, y), in black. `rest` may give its role and subject."""
    return TextMark(x, y, lettering(text), size, bold, anchor, **rest)  # type: ignore[arg-type]


def grey_text(x: float, y: float, text: str, size: float = HEADING, anchor: Anchor = "start") -> TextMark:
    """A line of small print."""
    return TextMark(x, y, lettering(text), size, False, anchor, GREY)


def measure(text: str, size: float, bold: bool = False) -> float:
    """How wide the line is set."""
    return width_of(lettering(text), size, bold)


def shorten(text: str, room: float, size: float, bold: bool = False) -> str:
    """The text, cut short with an ellipsis where it is wider than the room."""
    if measure(text, size, bold) <= room:
        return text
    least, most = 0, len(text)
    while least < most:  # the longest beginning that fits beside the ellipsis
        middle = (least + most + 1) // 2
        if measure(text[:middle].rstrip() + "…", size, bold) <= room:
            least = middle
        else:
            most = middle - 1
    return text[:least].rstrip(" ,;-") + "…"


def break_lines(text: str, room: float, size: float, bold: bool = False) -> list[str]:
    """The text in lines no wider than the room; a word wider than that is shortened."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and measure(longer, size, bold) <= room:
            lines[-1] = longer
        else:
            lines.append(shorten(word, room, size, bold))
    return lines


def centre_drop(size: float) -> float:
    """How far below a middle line the baseline stands so that bold capitals are centred on it."""
    return cap_height(size, True) / 2


def line_mark(
    path: tuple[Segment, ...], role: str, width: float, dash: tuple[float, ...] = (), subject: str = ""
) -> PathMark:
    """A black line."""
    return PathMark(path, BLACK, width, dash, None, role, subject)


def solid_mark(path: tuple[Segment, ...], role: str, subject: str = "") -> PathMark:
    """A black shape without a line."""
    return PathMark(path, None, 0.0, (), BLACK, role, subject)


def dot_marks(spot: Spot, width: float, role: str, subject: str = "") -> tuple[Mark, ...]:
    """A registration dot: a circle to punch, and a speck to stick the needle through."""
    return (
        line_mark(circle_path(*spot, width / 2), role, DOT_LINE, (), subject),
        solid_mark(circle_path(*spot, SPECK), role, subject),
    )


def arrow_marks(first: Spot, last: Spot, role: str, subject: str = "", heads: int = 2) -> tuple[Mark, ...]:
    """An arrow with filled heads, at both ends or (heads 1) at the last."""
    length = hypot(last.x - first.x, last.y - first.y)
    long = min(HEAD_LONG, length * 0.4)
    wide = HEAD_WIDE * long / HEAD_LONG
    turn = atan2(last.y - first.y, last.x - first.x)
    inset = long * 0.8
    shaft_first = _step(first, turn, inset) if heads == 2 else first
    shaft = straight(shaft_first, _step(last, turn, -inset))
    marks: list[Mark] = [line_mark(shaft, role, ARROW, (), subject)]
    marks.append(solid_mark(_head(last, turn, long, wide), role, subject))
    if heads == 2:
        marks.append(solid_mark(_head(first, turn + pi, long, wide), role, subject))
    return tuple(marks)


def _step(spot: Spot, turn: float, far: float) -> Spot:
    return Spot(spot.x + far * cos(turn), spot.y + far * sin(turn))


def _head(tip: Spot, turn: float, long: float, wide: float) -> tuple[Segment, ...]:
    """A filled head with its tip at `tip`, pointing along `turn` (radians clockwise from the right)."""
    foot = _step(tip, turn, -long)
    return closed((tip, _step(foot, turn + pi / 2, wide), _step(foot, turn - pi / 2, wide)))
