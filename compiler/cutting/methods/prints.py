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
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Final

from ...measure.marks import mark_up
from ...measure.tolerance import ROUNDING
from ...words.phrases import count_of, one_of
from ..needs import Fabric, Need, Way
from ..plan_model import Cut, Slant
from .method import Method, on_mark, template_method
from .recognise import Figure, recognise
from .rotary_words import OFF_GRAIN, degrees_text, length_text

PARTED: Final = ("half-square triangle", "half-rectangle triangle", "quarter-square triangle")
"""Kinds that are cut from boxes, corner to corner."""

FROM_STRIPS: Final = ("equilateral triangle", "diamond", "parallelogram", "trapezoid", "hexagon")
"""Kinds that are cut from a strip, which lies across the cloth."""

DIAGONALS: Final[dict[Slant, str]] = {
    "rising": "from bottom left to top right", "falling": "from top left to bottom right",
    "both": "twice, corner to corner",
}  # fmt: skip

ASLANT: Final = "the print stands upright in the quilt, aslant to its sides"


def on_print(method: Method, need: Need, fabric: Fabric | None, step: Fraction) -> Method:
    """The method on the cloth: a template where its print will not go with the ruler's way."""
    if fabric is None or not fabric.is_directional:
        return method
    if method.kind == "template" and method.reason == OFF_GRAIN:
        return replace(method, reason=ASLANT + _square_words(need, step))
    if method.kind in FROM_STRIPS and abs(recognise(need.outline, need.allowances).side(0).real) < ROUNDING:
        return template_method(need.outline, need.allowances, "its strip would lie along the print")
    return method


def _square_words(need: Need, step: Fraction) -> str:
    """What a square or rectangle that lies aslant measures, for who lays a ruler so."""
    figure = recognise(need.outline, need.allowances)
    if figure.kind not in ("square", "rectangle"):
        return ""
    sides = [
        abs(figure.side(at)) + figure.allowances[at - 1] + figure.allowances[(at + 1) % 4] for at in range(2)
    ]
    if not all(on_mark(side, step) for side in sides):
        return ""
    marks = dict.fromkeys(length_text(mark_up(side, step), step) for side in sides)
    return f"; it measures {' x '.join(marks)}, laid so"


def with_print(cut: Cut, need: Need, fabric: Fabric | None, step: Fraction) -> Cut:
    """The cut on the cloth: how many boxes are cut which way, and in words how the pieces lie."""
    if fabric is None or not fabric.is_directional:
        return cut
    if cut.kind not in PARTED:
        return replace(cut, lies=_lies(cut, need, fabric, step))
    slants = slants_of(cut.kind, need, fabric.one_way)
    either = "" if fabric.one_way else "Each triangle may lie either end up."
    return replace(
        cut,
        slants=slants,
        cuts=sum(count for _, count in slants),
        lies=either,
        then=_parted_words(cut, slants),
    )


def slants_of(kind: str, need: Need, one_way: bool) -> tuple[tuple[Slant, int], ...]:
    """How many boxes are cut which way corner to corner: as few as hold every piece as it lies."""
    towards = Counter[complex]()
    for way in need.on_print:
        towards[corner_of(kind, need, way)] += way.count

    def boxes(one: complex) -> int:
        pair = towards[one], towards[-one]
        return max(pair) if one_way else ceil(sum(pair) / 2)

    if kind == "quarter-square triangle":
        return (("both", max(boxes(1), boxes(1j))),)
    found: list[tuple[Slant, int]] = [("rising", boxes(-1 - 1j)), ("falling", boxes(1 - 1j))]
    return tuple(each for each in found if each[1])


def corner_of(kind: str, need: Need, way: Way) -> complex:
    """Where a triangle's right angle lies in the box it is cut from, from its middle: `1-1j` top right; of a
    quarter-square triangle, where its long side lies: `-1j` at the top."""
    figure = recognise(need.outline, need.allowances)
    first, two, three = figure.corners
    across = (two + three) / 2 - first
    if kind != "quarter-square triangle":
        across = -across
    if way.reversed:
        across = complex(-across.real, across.imag)
    across *= (1, 1j, -1, -1j)[way.turned // 90 % 4]
    return complex(_sign(across.real, across), _sign(across.imag, across))


def _sign(part: float, whole: complex) -> int:
    return 0 if abs(part) < ROUNDING * abs(whole) else 1 if part > 0 else -1


def _parted_words(cut: Cut, slants: Sequence[tuple[Slant, int]]) -> str:
    """`With the print up, cut 5 of the squares once from bottom left to top right ...`."""
    box = "rectangle" if cut.kind == "half-rectangle triangle" else "square"
    if len(slants) == 1:
        ((slant, _),) = slants
        once = "" if slant == "both" else "once "
        words = f"With the print up, cut each {box} {once}{DIAGONALS[slant]}."
    else:
        ways = [
            f"{count} {f'of the {box}s ' if not at else ''}once {DIAGONALS[slant]}"
            for at, (slant, count) in enumerate(slants)
        ]
        words = f"With the print up, cut {one_of(ways, 'and')}."
    spare = sum(count for _, count in slants) * cut.yields - cut.pieces
    left = f" {count_of(spare, 'triangle')} {'is' if spare == 1 else 'are'} left over." if spare else ""
    return words + left


def _lies(cut: Cut, need: Need, fabric: Fabric, step: Fraction) -> str:
    """How the pieces lie on the print, in words."""
    either = "" if fabric.one_way else ", either end up"
    if cut.kind == "template":
        return _laid_words(need, either)
    if cut.outline:
        return f"Its strip lies across the cloth, the print up, and the picture shows each piece{either}."
    if cut.kind == "square":
        return f"Sew it with the print up{either}."
    across, along = (length_text(each, step) for each in (cut.width, cut.height))
    if cut.kind == "strip":
        way = "across the cloth" if cut.width > cut.height else "along the selvage"
        return f"Cut {way}, so that the print stands up in the quilt{either}."
    return f"The print runs along its {along}, across the cloth lie {across}{either}."


def _laid_words(need: Need, either: str) -> str:
    """`Lay the template 4 times as it is and 2 times turned 90° clockwise, from how it lies in the block, the
    print up.`"""
    told: dict[str, int] = {}
    for way in need.on_print:
        drawn = -need.drawn if way.reversed else need.drawn
        turned = round((way.turned + (drawn if need.block is not None else 0)) % 360, 1) % 360
        turn = f"turned {degrees_text(turned)} clockwise" if turned else ""
        words = " and ".join(filter(None, ("reversed" if way.reversed else "", turn))) or "as it is"
        told[words] = told.get(words, 0) + way.count
    if list(told) == ["as it is"]:
        lies = "as it lies in the block" if need.block is not None else "with its arrow up"
        return f"Lay the template {lies}, the print up{either}."
    frame = "how it lies in the block" if need.block is not None else "where its arrow points up"
    ways = [words if len(told) == 1 else f"{count} times {words}" for words, count in told.items()]
    return f"Lay the template {one_of(ways, 'and')}, from {frame}, the print up{either}."


def figure_merges(figure: Figure) -> bool:
    """Whether pieces that lie a quarter turn apart are cut from the same boxes."""
    return figure.kind in ("half-square triangle", "quarter-square triangle") and figure.on_grain
