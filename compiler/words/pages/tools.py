"""Tools to cut and sew with, in words."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ..numbers import degrees_text
from ..say import Say

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


def cutter(say: Say) -> str:
    """The rotary cutter and its mat, in the sizes that are sold (common practice, no published source)."""
    mat = "45cm x 60cm" if say.unit == "cm" else "18in x 24in"
    return f"Rotary cutter with a sharp blade, and a self-healing mat, {mat} or larger."


def ruler(say: Say, angles: Sequence[float]) -> str:
    """A ruler that reaches across folded cloth (common practice, no published source), with the reader's own
    marks, and lines at such angles."""
    lines = f", with lines at {' and '.join(map(degrees_text, angles))}" if angles else ""
    long = "60cm" if say.unit == "cm" else "24in"
    return (
        f"Acrylic ruler {long} long, marked every {say.on_ruler(say.ruler)}{lines}, thick enough that the "
        "blade does not ride up on it; a square ruler helps with small squares."
    )


def hole_punch(wide: str) -> str:
    """What makes the holes for dots."""
    return f"Hole punch, {wide}, or a thick needle, for the dots on the templates."
