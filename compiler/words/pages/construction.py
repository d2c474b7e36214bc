"""The words of a block's construction by ruler and compass, a step a sentence."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from ..phrases import one_of

if TYPE_CHECKING:
    from ...measure.tolerance import Number
    from ..say import Say

CENTER: Final = "center"
MIDDLES: Final = ("top", "right", "bottom", "left")
"""The names of the middles of the block's sides."""

SEAMS: Final = "Draw the seams, as the picture has them."


def outline_words(say: Say, width: Number, height: Number) -> str:
    """The first step."""
    size = (
        f"a square of {say.about(width)}"
        if width == height
        else f"a rectangle of {say.about(width)} x {say.about(height)}"
    )
    return f"Draw {size} with a sharp pencil, its corners true. Draw its diagonals: they cross in the center."


def even_grid(say: Say, across: int, down: int) -> str:
    """A grid of equal columns and of equal rows."""
    parts = f"{across} equal parts" + ("" if across == down else f" across and {down} down")
    units = "centimetres" if say.unit == "cm" else "inches"
    return _lettered(
        f"Divide the sides into {parts}: lay the ruler aslant from side to side so that it shows a "
        f"number of {units} that divides evenly, mark it, and draw lines through the marks."
    )


def uneven_grid(say: Say, across: Sequence[Number], down: Sequence[Number]) -> str:
    """Any other grid, by its lines from the left edge to the right, and from the top to the bottom."""
    marks = " and ".join(
        f"the {sides} {one_of([say.about(rule) for rule in rules[1:-1]], 'and')} from the {start}"
        for rules, sides, start in ((across, "top and bottom", "left"), (down, "sides", "top"))
        if len(rules) > 2
    )
    return _lettered(f"Mark {marks}, and draw lines through the marks.")


def _lettered(way: str) -> str:
    return f"{way} Columns are lettered from the left, rows numbered from the top."


def compass_words(names: Sequence[str]) -> str:
    """Points on the sides, as far from a corner as the corner is from the centre."""
    return (
        "Put the compass on a corner, open it to the center, and mark the two sides that meet there; "
        f"so from each corner. That gives {one_of(names, 'and')}."
    )


def parting_words(parted: Sequence[tuple[str, str, Sequence[str]]]) -> str:
    """Lines by the names of their ends, and of the points that part them evenly."""
    words = (
        f"{start}–{end} into {len(names) + 1} equal parts, at {one_of(names, 'and')}"
        for start, end, names in parted
    )
    return f"Divide lines evenly: {'; '.join(words)}."


def lines_words(lines: Sequence[tuple[str, str]]) -> str:
    """Lines by the names of two points on each."""
    return f"Draw light lines {one_of([f'{one}–{two}' for one, two in lines], 'and')}."


def measured_words(say: Say, places: Sequence[tuple[str, complex]]) -> str:
    """Points by their places in inches from the top left."""
    words = (f"{name} {say.about(place.real)} and {say.about(place.imag)}" for name, place in places)
    return f"Measure from the left and from the top: {'; '.join(words)}."


def arcs_words(say: Say, arcs: Sequence[tuple[str, float]]) -> str:
    """Arcs by the names of their centers and their radii in inches; what is told alike is told once."""
    words = dict.fromkeys(f"the compass on {name}, open to {say.about(radius)}" for name, radius in arcs)
    return f"Draw the arcs: {'; '.join(words)}."
