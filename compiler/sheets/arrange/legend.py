"""The legend: the meaning of every kind of mark that a page carries, found from the marks themselves."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction
from typing import Final

from ...measure.length import POINTS_PER_INCH
from ...words.pages import legend as words
from ..page import Mark, PathMark
from .furniture import LEGEND_SAMPLE, Sign
from .options import SheetOptions
from .paths import Spot, closed, straight
from .style import BLACK, CUT, LEADER, PALE, RULING, SEAM, SEW, SEW_DASH, arrow_marks, dot_marks, line_mark

MATCH_HALF: Final = 4.5


def legend_of(marks: Iterable[Mark], options: SheetOptions, dot_width: Fraction) -> list[Sign]:
    """The signs of the marks used, in the order a quilter meets them."""
    used = {mark.role for mark in marks if isinstance(mark, PathMark)}
    cut_dash, sew_dash = (SEW_DASH, ()) if options.lines == "cut-dashed" else ((), SEW_DASH)
    known: list[tuple[str, Sign]] = [
        ("cut", Sign(_line(CUT, cut_dash), words.CUT)),
        ("sew", Sign(_line(SEW, sew_dash), words.SEW)),
    ]
    if options.kind == "window":
        known = [("cut", Sign(_line(CUT, ()), words.WINDOW))]
    if options.kind == "finished":
        known = [("sew", Sign(_line(CUT, ()), words.FINISHED))]
    width = float(dot_width) * POINTS_PER_INCH
    known += [
        (
            "dot",
            Sign(
                lambda x, y: dot_marks(Spot(x + LEGEND_SAMPLE / 2, y), width, "legend"),
                words.dot_words(options.say, dot_width),
            ),
        ),
        ("match", Sign(_match, words.MATCH)),
        (
            "grain",
            Sign(
                lambda x, y: arrow_marks(Spot(x, y), Spot(x + LEGEND_SAMPLE, y), "legend"),
                words.GRAIN,
            ),
        ),
        ("join", Sign(_join, words.JOIN)),
        ("seam", Sign(_line(SEAM, ()), words.SEAM)),
        ("grid", Sign(_grid, words.GRID)),
    ]
    return [sign for role, sign in known if role in used]


def _line(width: float, dash: tuple[float, ...]) -> Callable[[float, float], tuple[Mark, ...]]:
    return lambda x, y: (line_mark(straight((x, y), (x + LEGEND_SAMPLE, y)), "legend", width, dash),)


def _grid(x: float, y: float) -> tuple[Mark, ...]:
    return (PathMark(straight((x, y), (x + LEGEND_SAMPLE, y)), PALE, 2 * RULING, (), None, "legend"),)


def _match(x: float, y: float) -> tuple[Mark, ...]:
    middle = x + LEGEND_SAMPLE / 2
    return (
        line_mark(straight((x, y + 1), (x + LEGEND_SAMPLE, y + 1)), "legend", SEW, SEW_DASH),
        line_mark(straight((middle, y - MATCH_HALF), (middle, y + MATCH_HALF)), "legend", SEW),
    )


def _join(x: float, y: float) -> tuple[Mark, ...]:
    from ..packing.joins import GREY as JOIN_GREY

    middle, half = x + LEGEND_SAMPLE / 2, MATCH_HALF
    path = closed(((middle, y - half), (middle + half, y), (middle, y + half), (middle - half, y)))
    return (PathMark(path, BLACK, LEADER, (), JOIN_GREY, "legend"),)
