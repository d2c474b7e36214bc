r"""Cutting on a print with a direction: the cloth lies print up, and every piece as it lies in the quilt.

    ┌──────┐  ┌──────┐   the four ways that a half-square triangle may lie take two diagonals: both
    │    ／│  │＼    │   halves of a square serve where the quilt has both. A square cut twice holds a
    │  ／  │  │  ＼  │   quarter-square triangle of each of four ways. A stripe looks the same turned
    │／    │  │    ＼│   half round, so there either half serves for the other.
    └──────┘  └──────┘
     rising    falling
Inches, x right and y down.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Final

from ...measure.marks import mark_up
from ...measure.tolerance import ROUNDING
from ..handling import Box, Lies, LongWay, PartedOnPrint, PrintAlong, PrintUp, Slant, TemplateLaid
from ..needs import Fabric, Need, Way
from ..plan_model import Cut
from ..reasons import OFF_GRAIN, Aslant, NoRule
from .method import Method, on_mark, template_method
from .recognise import Figure, recognise

PARTED: Final = ("half-square-triangle", "half-rectangle-triangle", "quarter-square-triangle")
"""Kinds that are cut from boxes, corner to corner."""

FROM_STRIPS: Final = ("equilateral-triangle", "diamond", "parallelogram", "trapezoid", "hexagon")
"""Kinds that are cut from a strip, which lies across the cloth."""


def on_print(method: Method, need: Need, fabric: Fabric | None, step: Fraction) -> Method:
    """The method on the cloth: a template where its print will not go with the ruler's way."""
    if fabric is None or not fabric.is_directional:
        return method
    if method.kind == "template" and method.reason == OFF_GRAIN:
        return replace(method, reason=Aslant(_measured(need, step)))
    if method.kind in FROM_STRIPS and abs(recognise(need.outline, need.allowances).side(0).real) < ROUNDING:
        return template_method(need.outline, need.allowances, NoRule("a-strip-along-the-print"))
    return method


def _measured(need: Need, step: Fraction) -> tuple[Fraction, ...]:
    """What a square or rectangle that lies aslant measures, for who lays a ruler so."""
    figure = recognise(need.outline, need.allowances)
    if figure.kind not in ("square", "rectangle"):
        return ()
    sides = [
        abs(figure.side(at)) + figure.allowances[at - 1] + figure.allowances[(at + 1) % 4] for at in range(2)
    ]
    if not all(on_mark(side, step) for side in sides):
        return ()
    return tuple(dict.fromkeys(mark_up(side, step) for side in sides))


def with_print(cut: Cut, need: Need, fabric: Fabric | None, step: Fraction) -> Cut:
    """The cut on the cloth: how many boxes are cut which way, and how the pieces lie."""
    if fabric is None or not fabric.is_directional:
        return cut
    if cut.kind not in PARTED:
        return replace(cut, lies=_lies(cut, need, not fabric.one_way))
    slants = slants_of(cut.kind, need, fabric.one_way)
    spare = sum(count for _, count in slants) * cut.yields - cut.pieces
    box: Box = "rectangle" if cut.kind == "half-rectangle-triangle" else "square"
    return replace(
        cut,
        slants=slants,
        cuts=sum(count for _, count in slants),
        lies=None if fabric.one_way else PrintUp("triangle", True),
        then=(PartedOnPrint(box, slants, spare),),
    )


def slants_of(kind: str, need: Need, one_way: bool) -> tuple[tuple[Slant, int], ...]:
    """How many boxes are cut which way corner to corner: as few as hold every piece as it lies."""
    towards = Counter[complex]()
    for way in need.on_print:
        towards[corner_of(kind, need, way)] += way.count

    def boxes(one: complex) -> int:
        pair = towards[one], towards[-one]
        return max(pair) if one_way else ceil(sum(pair) / 2)

    if kind == "quarter-square-triangle":
        return (("both", max(boxes(1), boxes(1j))),)
    found: list[tuple[Slant, int]] = [("rising", boxes(-1 - 1j)), ("falling", boxes(1 - 1j))]
    return tuple(each for each in found if each[1])


def corner_of(kind: str, need: Need, way: Way) -> complex:
    """Where a triangle's right angle lies in the box it is cut from, from its middle: `1-1j` top right; of a
    quarter-square triangle, where its long side lies: `-1j` at the top."""
    figure = recognise(need.outline, need.allowances)
    first, two, three = figure.corners
    across = (two + three) / 2 - first
    if kind != "quarter-square-triangle":
        across = -across
    if way.reversed:
        across = complex(-across.real, across.imag)
    across *= (1, 1j, -1, -1j)[way.turned // 90 % 4]
    return complex(_sign(across.real, across), _sign(across.imag, across))


def _sign(part: float, whole: complex) -> int:
    return 0 if abs(part) < ROUNDING * abs(whole) else 1 if part > 0 else -1


def _lies(cut: Cut, need: Need, either: bool) -> Lies:
    """How the pieces lie on the print, `either` end up or one."""
    if cut.kind == "template":
        return _laid(need, either)
    if cut.outline:
        return PrintUp("strip", either)
    if cut.kind == "square":
        return PrintUp("square", either)
    if cut.kind == "strip":
        return LongWay(cut.width > cut.height, either)
    return PrintAlong(cut.width, cut.height, either)


def _laid(need: Need, either: bool) -> TemplateLaid:
    """How often a template is laid which way, turned to a tenth of a degree."""
    in_block = need.block is not None
    ways = Counter[tuple[bool, float]]()
    for way in need.on_print:
        drawn = -need.drawn if way.reversed else need.drawn
        turned = round((way.turned + (drawn if in_block else 0)) % 360, 1) % 360
        ways[way.reversed, turned] += way.count
    return TemplateLaid(tuple((*way, count) for way, count in ways.items()), in_block, either)


def figure_merges(figure: Figure) -> bool:
    """Whether pieces that lie a quarter turn apart are cut from the same boxes."""
    return figure.kind in ("half-square-triangle", "quarter-square-triangle") and figure.on_grain
