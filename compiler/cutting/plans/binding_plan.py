"""Binding to strips: across the cloth, joined on the bias; or cut on the bias. Inches."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt
from typing import Final

from ...measure.tolerance import NEAR
from ..handling import AnyWay, CutOnBias, JoinOnBias
from ..needs import BindingNeed
from ..plan_model import Cut
from ..reasons import StripLength
from .lots import RECTANGLE, SQUARE, Cloth, Lot, strips_for

SEAM_ON_BIAS: Final = 2 * 0.25 * sqrt(2)
"""Inches of strip that joining two bias strips takes: 1/4in of allowance each, measured along the bias."""


def binding_cut(need: BindingNeed, index: int, cloth: Cloth) -> tuple[Cut, list[Lot]]:
    """The binding's cut, and its boxes. Straight strips lose the width they are cut at each join."""
    if need.bias:
        return _bias(need, index, cloth)
    thick = cloth.steps(need.strip_width)
    lots = strips_for(index, need.length, thick, cloth.inches(thick), cloth, upright=False, any_way=True)
    count = sum(lot.count for lot in lots)
    cut = Cut(
        index,
        need.fabric,
        "binding",
        "strip",
        cloth.inches(max(lot.width for lot in lots)),
        cloth.inches(thick),
        count,
        count,
        1,
        0.0,
        StripLength(cloth.inches(cloth.steps(need.length)), False),
        strip=cloth.inches(thick),
        joined=count,
        then=(JoinOnBias(),) if count > 1 else (),
        lies=None if cloth.turnable else AnyWay(),
    )
    return cut, lots


def _bias(need: BindingNeed, index: int, cloth: Cloth) -> tuple[Cut, list[Lot]]:
    """A square, or a length of cloth, cut into strips at 45 degrees."""
    strip = cloth.inches(cloth.steps(need.strip_width))
    width, height = bias_cloth(float(need.length), float(strip), cloth)
    count = len(bias_strips(float(cloth.inches(width)), float(cloth.inches(height)), float(strip)))
    cut = Cut(
        index,
        need.fabric,
        "binding",
        "strip",
        cloth.inches(width),
        cloth.inches(height),
        1,
        count,
        count,
        0.0,
        StripLength(cloth.inches(cloth.steps(need.length)), True),
        strip=strip,
        angle=45.0,
        then=(CutOnBias(count, strip),),
        lies=None if cloth.turnable else AnyWay(),
    )
    return cut, [Lot(index, width, height, 1, width != height, SQUARE if width == height else RECTANGLE)]


def bias_cloth(length: float, strip: float, cloth: Cloth) -> tuple[int, int]:
    """The smallest square, in ruler steps, that yields the length; beyond the cloth's width a rectangle of
    it."""
    span = cloth.spans[-1]
    side = cloth.steps(sqrt(length * strip))  # less can never do: the area alone is as much
    while side <= span and bias_yield(*(float(cloth.inches(side)),) * 2, strip) < length - NEAR:
        side += 1
    if side <= span:
        return side, side
    high = span
    while bias_yield(float(cloth.inches(span)), float(cloth.inches(high)), strip) < length - NEAR:
        high += max(1, int(Fraction(1, 2) / cloth.step))
    return span, high


def bias_yield(width: float, height: float, strip: float) -> float:
    """Inches of joined strip that a rectangle gives."""
    strips = bias_strips(width, height, strip)
    return max(0.0, sum(strips) - SEAM_ON_BIAS * (len(strips) - 1)) if strips else 0.0


def bias_strips(width: float, height: float, strip: float) -> list[float]:
    """The strips' own lengths along the middle, corner to corner. One across a corner counts its shorter
    edge."""
    lengths = []
    step = strip * sqrt(2)
    number = 0
    while (number + 1) * step <= width + height + NEAR:
        first, last = number * step, (number + 1) * step
        edges = [_chord(width, height, at) for at in (first, last)]
        bend = any(first < corner - NEAR and last > corner + NEAR for corner in (width, height))
        long = min(edges) if bend else sum(edges) / 2
        if long > 2 * strip:  # shorter ends are thrown away
            lengths.append(long)
        number += 1
    return lengths


def _chord(width: float, height: float, at: float) -> float:
    """Length of the line x + y = at inside the rectangle."""
    return sqrt(2) * max(0.0, min(at, width, height, width + height - at))
