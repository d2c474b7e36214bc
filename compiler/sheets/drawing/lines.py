"""Where a line of text begins, for every writer alike."""

from __future__ import annotations

from typing import Final

from ..page import TextMark
from .lettering import width_of

SHARE: Final = {"start": 0.0, "middle": 0.5, "end": 1.0}  # of a line's width that lies left of its anchor


def left_of_anchor(mark: TextMark) -> float:
    """How many points of the line lie left of its anchor, along its baseline."""
    return SHARE[mark.anchor] * width_of(mark.text, mark.size, mark.bold) if mark.anchor != "start" else 0.0
