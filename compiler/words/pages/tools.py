"""Tools to cut and sew with, in words."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

CUTTER: Final = "Rotary cutter with a sharp blade, and a self-healing mat, 18in x 24in or larger."
TEMPLATE_TOOLS: Final = (
    "Template plastic or card, paper scissors, glue or tape, and a sharp pencil, for the templates.",
    "Fabric scissors, for what is cut round templates.",
)
ALL_BY_RULER: Final = (
    "Every piece here is cut by the ruler; the template sheets are for checking or handwork."
)
SEWING_TOOLS: Final = (
    "Sewing machine or needles, pins, thread, and a seam ripper.",
    "Iron and pressing board.",
)
TAPE: Final = "Measuring tape: measure the top through its middle before you trim the border strips."


def ruler(inches: int, marks: str, angles: Sequence[str]) -> str:
    """A ruler so long, with such marks, and lines at such angles."""
    lines = f", with lines at {' and '.join(angles)}" if angles else ""
    return (
        f"Acrylic ruler {inches}in long, marked every {marks}{lines}, thick enough that the blade does not "
        "ride up on it; a square ruler helps with small squares."
    )


def hole_punch(wide: str) -> str:
    """What makes the holes for dots."""
    return f"Hole punch, {wide}, or a thick needle, for the dots on the templates."
