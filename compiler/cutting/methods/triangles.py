"""Squares, rectangles and the triangles cut from them.

The trade's rules for triangles, + 7/8in and + 1 1/4in at 1/4in of allowance, lie 0.0214in and 0.0429in over
the exact by their nature: so a rule also holds where the finished size lies on a mark. Setting triangles are
cut over and trimmed: side squares are block x 1.414 + 1 1/4in, corner squares block / 1.414 + 7/8in, up to
the next mark (SOURCES 1.3). Inches.
"""

from __future__ import annotations

from fractions import Fraction
from math import sqrt
from typing import Final, Literal

from ...measure.marks import mark_up, to_trim
from ...measure.tolerance import NEAR, Number
from ..handling import MitreEnds, Parted
from ..reasons import Finished, Mitred, OnRuler, Patch, Strip, Sum
from ..shapes import Kind
from .method import ON_MARK, Method, Ruled, box_of, cut_corners, excess_of, on_mark, unmarked
from .recognise import Figure

ROOT_2: Final = sqrt(2)

TRADE_OVER: Final = 1 / 8
"""Inches that a rule may lie over the exact, a little of it lost in every fold: the trade's own lie 0.0429in
over at 1/4in of allowance, and 0.19cm where quarters of a centimetre are added at 0.75cm of it. The step of
the common ruler, so that rules hold for any allowance; it widens a seam of a square cut once by 1/28in at
most. What a coarser ruler adds beyond that is too much to sew in."""

MITRE_OVER: Final = Fraction(6)
"""Inches that a mitred strip is cut longer than its long edge (SOURCES 2.9: strip = side + 2 x width + 6);
15cm by a ruler in centimetres."""

TRADE_ROOT: Final = 1.414
"""The trade's square root of two, in its tables of setting triangles (SOURCES 1.3, trap 10.1)."""


def box_method(figure: Figure, step: Fraction, whole: Number | None, setting: bool) -> Ruled:
    """Squares and rectangles: cut strips, and cut them across."""
    left, top, right, bottom = box_of(cut_corners(figure))
    inside = box_of(figure.corners)
    sizes = []
    for exact, finished in ((right - left, inside[2] - inside[0]), (bottom - top, inside[3] - inside[1])):
        if not on_mark(exact, step):
            return unmarked(finished, exact, step, whole)
        sizes.append((mark_up(exact, step), exact))
    (width, wide), (height, high) = sizes
    kind: Kind = "square" if width == height else "rectangle"
    excess = excess_of(((width, wide), (height, high)))
    reason = Finished(inside[2] - inside[0], inside[3] - inside[1], kind == "square")
    return Method(kind, width, height, 1, excess, reason)


def strip_method(figure: Figure, step: Fraction) -> Method:
    """Borders and sashing: cut to the mark above, and trimmed to the quilt's own measure."""
    if figure.kind == "trapezoid":
        return _mitred(figure, step)
    width, height, excess = _up_to_marks(figure, step)
    kind: Kind = "square" if width == height and figure.kind == "square" else "strip"
    return Method(kind, width, height, 1, excess, Strip(excess > ON_MARK + NEAR))


def _mitred(figure: Figure, step: Fraction) -> Method:
    """A border strip with mitred ends: side + 2 x the border's width, and so much over (SOURCES 2.9)."""
    left, top, right, bottom = box_of(cut_corners(figure))
    along = figure.side(0)
    lies_across = abs(along.real) > abs(along.imag)
    exact = bottom - top if lies_across else right - left
    over = to_trim(MITRE_OVER, step)
    long, thick = mark_up(abs(along) + float(over), step), mark_up(exact, step)
    width, height = (long, thick) if lies_across else (thick, long)
    return Method(
        "strip",
        width,
        height,
        1,
        excess_of(((thick, exact),)),
        Mitred(abs(along), over),
        then=(MitreEnds(),),
    )


def patch_method(figure: Figure, step: Fraction, margin: Number) -> Method:
    """Cloth for patches of a foundation, which cover their pieces roughly: cut to the mark above."""
    width, height, excess = _up_to_marks(figure, step)
    reason = Patch(figure.allowances[0] - float(margin), margin, excess > ON_MARK + NEAR)
    return Method("square" if width == height else "rectangle", width, height, 1, excess, reason)


def _up_to_marks(figure: Figure, step: Fraction) -> tuple[Fraction, Fraction, float]:
    """The box of a cut figure up to the marks above, and by how much at most."""
    left, top, right, bottom = box_of(cut_corners(figure))
    width, height = mark_up(right - left, step), mark_up(bottom - top, step)
    return width, height, excess_of(((width, right - left), (height, bottom - top)))


def _of_square(
    kind: Kind,
    times: Literal["once", "twice"],
    sides: tuple[float, float, float],
    step: Fraction,
    whole: Number | None,
    beyond: float | None,
) -> Ruled:
    """Triangles cut from a square. `sides`: of the square with no allowance, exactly with it, and with none
    as the trade reckons it for triangles that are trimmed after sewing; `beyond`: of these, the allowance
    that is left beyond the points."""
    finished, exact, reckoned = sides
    mark = mark_up(exact, step)
    if beyond is not None:
        mark = max(mark, mark_up(reckoned + float(mark_up(exact - finished, step)), step))
    by_rule = on_mark(finished, step) and float(mark) - exact <= TRADE_OVER + NEAR
    if not (beyond is not None or on_mark(exact, step) or by_rule):
        return unmarked(finished, exact, step, whole)
    reason, then = Sum(finished, exact - finished, mark, times, beyond), (Parted("square", times),)
    return Method(kind, mark, mark, 2 if times == "once" else 4, float(mark) - exact, reason, then=then)


def half_square(figure: Figure, step: Fraction, whole: Number | None, setting: bool) -> Ruled:
    """A square cut once, corner to corner; its legs on the grain."""
    leg = abs(figure.side(0))
    exact = leg + figure.allowances[0] + figure.allowances[2] + figure.allowances[1] * ROOT_2
    beyond = figure.allowances[1] if setting else None
    return _of_square("half-square-triangle", "once", (leg, exact, leg), step, whole, beyond)


def quarter_square(figure: Figure, step: Fraction, whole: Number | None, setting: bool) -> Ruled:
    """A square cut twice, corner to corner; its long side on the grain."""
    long = abs(figure.side(1))
    exact = long + 2 * figure.allowances[1] + ROOT_2 * (figure.allowances[0] + figure.allowances[2])
    sides = long, exact, long * TRADE_ROOT / ROOT_2
    beyond = figure.allowances[1] if setting else None
    return _of_square("quarter-square-triangle", "twice", sides, step, whole, beyond)


def half_rectangle(figure: Figure, step: Fraction, whole: Number | None, setting: bool) -> Ruled:
    """A rectangle cut once, corner to corner. It has no trade rule: only the exact cut will do."""
    left, top, right, bottom = box_of(cut_corners(figure))
    finished = box_of(figure.corners)
    for low, high, size in (
        (left, right, finished[2] - finished[0]),
        (top, bottom, finished[3] - finished[1]),
    ):
        if not on_mark(high - low, step):
            return unmarked(size, high - low, step, whole)
    width, height = mark_up(right - left, step), mark_up(bottom - top, step)
    excess = excess_of(((width, right - left), (height, bottom - top)))
    return Method(
        "half-rectangle-triangle",
        width,
        height,
        2,
        excess,
        OnRuler(),
        then=(Parted("rectangle", "once"),),
    )
