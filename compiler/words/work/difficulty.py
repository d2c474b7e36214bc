"""What makes a block hard to sew."""

from __future__ import annotations

from typing import Final

from ...measure.tolerance import near
from ...sewing.difficulty import Cause, Trouble
from ..numbers import number_text
from ..phrases import count_of

COUNTED: Final[dict[Trouble, tuple[str, str]]] = {
    "pieces": ("piece", "pieces"),
    "bias-edges": ("bias edge on the outside", "bias edges on the outside"),
    "set-in-seams": ("set-in seam", "set-in seams"),
    "seams-all-round": ("seam all round a window", "seams all round a window"),
    "partial-seams": ("partial seam", "partial seams"),
    "curved-seams": ("curved seam", "curved seams"),
    "points-that-meet": ("place where points meet", "places where points meet"),
}


def cause_words(cause: Cause, cut_out: str = "template") -> str:
    """`3 set-in seams`; `smallest angle 45°`."""
    if cause.what == "smallest-angle":
        return f"smallest angle {_degrees(float(cause.number))}°"
    if cause.what == "most-at-one-point":
        return f"up to {cause.number} pieces at one point"
    if cause.what == "shapes":
        return count_of(int(cause.number), cut_out)
    return count_of(int(cause.number), *COUNTED[cause.what])


def _degrees(angle: float) -> str:
    """`22.5`, `about 27`: to the half degree that a protractor shows, else to the nearest whole one."""
    return number_text(angle) if near(2 * angle, round(2 * angle)) else f"about {angle:.0f}"
