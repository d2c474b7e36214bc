"""What the marks on a page mean, in the few words of its legend."""

from __future__ import annotations

from typing import Final

from ...measure.tolerance import Number
from ..say import Say

CUT: Final = "cut"
SEW: Final = "sew"
WINDOW: Final = "cut along both lines"
FINISHED: Final = "cut, draw round, sew"
MATCH: Final = "match to its twin"
GRAIN: Final = "straight of grain"
JOIN: Final = "join a to a, b to b"
SEAM: Final = "seam"
GRID: Final = "grid of the draft"


def dot_words(say: Say, width: Number) -> str:
    """Dots that wide are punched through."""
    return f"punch {say.length(width)}, match dots"
