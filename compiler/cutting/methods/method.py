"""What a cutting method is, and the measurements that every rule takes. Inches, x right and y down, straight
of grain up and down; places are complex numbers, corners clockwise (see geometry.stroke).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from ...geometry.curves import flattened
from ...geometry.edge import Edge
from ...measure.marks import mark_up
from ...measure.record import record
from ...measure.tolerance import NEAR, Number, near
from ..handling import Then
from ..reasons import OffMark, Reason, Share, TemplateReason
from ..shapes import Kind
from ..templates.allowance import outset
from .recognise import Figure

ON_MARK: Final = Fraction(1, 32)
"""Inches that a rule may give over the exact cut: what the width of a pencil line hides."""

PARTS: Final = (3, 5, 6, 7, 9, 10, 11, 12)
"""Shares of a whole number of inches that rulers in halves do not show."""


@record
class Method:
    """The way one shape is cut. `corners` is the cut outline where more than a box: a template, or slanted
    cuts."""

    kind: Kind
    width: Number
    height: Number
    yields: int
    excess: float
    reason: Reason
    strip: Number | None = None
    angle: float | None = None
    corners: tuple[complex, ...] = ()
    then: tuple[Then, ...] = ()


Ruled = Method | TemplateReason
"""What a rule of the ruler gives: the method, or why it does not hold here."""


def template_method(outline: Sequence[Edge], allowances: Sequence[Number], reason: Reason) -> Method:
    """A template's own box, for the reason given."""
    return template_as_cut(outset(outline, [Fraction(each) for each in allowances]), reason)


def template_as_cut(cut: Sequence[Edge], reason: Reason) -> Method:
    """The box of a cut outline, points trimmed or not."""
    corners = tuple(flat_corners(cut))
    left, top, right, bottom = box_of(corners)
    return Method("template", right - left, bottom - top, 1, 0.0, reason, corners=to_corner(corners))


def flat_corners(edges: Sequence[Edge]) -> list[complex]:
    """The corners of an outline, arcs as chords."""
    return [complex(float(p.x), float(p.y)) for edge in edges for p in flattened(edge)]


def cut_corners(figure: Figure) -> tuple[complex, ...]:
    """The corners of a convex cut outline, untrimmed: every side moved out by its allowance."""
    count = len(figure.corners)
    found = []
    for at in range(count):
        one, two = figure.side(at - 1), figure.side(at)
        before, after = figure.allowances[at - 1], figure.allowances[at]
        one, two = one / abs(one), two / abs(two)
        turned = (one.conjugate() * two).imag  # sine of the turn
        cosine = (one.conjugate() * two).real
        found.append(figure.corners[at] + one * -1j * before + one * ((after - before * cosine) / turned))
    return tuple(found)


def box_of(places: Sequence[complex]) -> tuple[float, float, float, float]:
    """Left, top, right, bottom."""
    xs, ys = [place.real for place in places], [place.imag for place in places]
    return min(xs), min(ys), max(xs), max(ys)


def to_corner(places: Sequence[complex]) -> tuple[complex, ...]:
    """The places moved so that their box starts at 0."""
    left, top, _, _ = box_of(places)
    return tuple(place - complex(left, top) for place in places)


def on_mark(length: Number, step: Fraction) -> bool:
    """Whether a length lies on the ruler's mark, or within ON_MARK under it."""
    return float(mark_up(length, step)) - float(length) <= ON_MARK + NEAR


def polygon_area(places: Sequence[complex]) -> float:
    """Square inches inside the corners."""
    following = [*places[1:], *places[:1]]
    return abs(sum((one.conjugate() * two).imag for one, two in zip(places, following, strict=True))) / 2


def excess_of(pairs: Sequence[tuple[Number, float]]) -> float:
    """How far the marks lie over the exact cuts at most, in inches. Pairs of mark and exact."""
    most = max(float(mark) - exact for mark, exact in pairs)
    return most if most > NEAR else 0.0


def unmarked(finished: Number, exact: Number, step: Fraction, whole: Number | None) -> Share | OffMark:
    """Why a length is not cut by the ruler: one third of 8in is 2.667in, which no ruler marks."""
    return _share(finished, step, whole) or OffMark(exact, mark_up(exact, step))


def _share(finished: Number, step: Fraction, whole: Number | None) -> Share | None:
    if near(mark_up(finished, step), finished):
        return None
    wholes = [whole] if whole is not None else [bottom * finished for bottom in PARTS]
    for each in wholes:
        for bottom in PARTS:
            top = round(float(finished) / float(each) * bottom)
            if 0 < top < min(bottom, 12) and near(float(each) * top / bottom, finished):
                if not near(each, round(float(each))) and whole is None:
                    continue
                return Share(top, bottom, each, finished)
    return None
