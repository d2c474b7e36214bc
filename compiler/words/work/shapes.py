"""What the trade calls shapes, and what a top is pieced of."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from ...cutting.shapes import Shape

SHAPES: Final[dict[Shape, str]] = {
    "square": "square",
    "rectangle": "rectangle",
    "half-square-triangle": "half-square triangle",
    "quarter-square-triangle": "quarter-square triangle",
    "half-rectangle-triangle": "half-rectangle triangle",
    "equilateral-triangle": "equilateral triangle",
    "diamond": "diamond",
    "parallelogram": "parallelogram",
    "trapezoid": "trapezoid",
    "hexagon": "hexagon",
    "kite": "kite",
    "strip": "strip",
    "template": "template",
    "panel": "panel",
    "piece": "piece",
}

SINGLES: Final[dict[str, str]] = {
    "side-triangle": "side triangle",
    "corner-triangle": "corner triangle",
    "sashing-strip": "sashing strip",
    "post": "post",
    "half-post": "half post",
    "border-strip": "border strip",
    "plain-square": "plain square",
    "plain-rectangle": "plain rectangle",
}


def shape_word(shape: Shape) -> str:
    """`half-square triangle`."""
    return SHAPES[shape]


def single_word(kind: str) -> str:
    """`sashing strip`, by its key (see cutting.needs)."""
    return SINGLES[kind]
