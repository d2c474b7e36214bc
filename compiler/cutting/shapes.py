"""Shapes by the ways they are cut, as keys: words have the trade's name for each."""

from __future__ import annotations

from typing import Literal

Kind = Literal[
    "square",
    "rectangle",
    "half-square-triangle",
    "quarter-square-triangle",
    "half-rectangle-triangle",
    "equilateral-triangle",
    "diamond",
    "parallelogram",
    "trapezoid",
    "hexagon",
    "kite",
    "strip",
    "template",
]

Shape = Kind | Literal["panel", "piece"]
"""What is cut: a panel of a back, too, and a piece of no one shape."""

FigureKind = Kind | Literal["triangle", "four-sided-shape", "many-sided-shape", "curved-shape", "seam"]
"""What an outline is: the last have no way of their own; 'seam' has a straight side under two allowances."""
