"""The words of the counts."""

from __future__ import annotations

from typing import Final

from ..phrases import count_of

TITLE: Final = "Counts"
TEMPLATE: Final = "template"
PIECE: Final = "piece"
FABRIC: Final = "fabric"
CUT_AS: Final = "cut as"
AS_DRAWN: Final = "as drawn"
REVERSED: Final = "reversed"
PIECES: Final = "pieces"
IN_ALL: Final = "in all"
WHOLE: Final = "The whole top"
BY_FABRIC: Final = "Pieces by fabric"

INTRO: Final = (
    "Pieces of the quilt’s top, all blocks together. Reversed pieces are cut with the template turned over, "
    "or with the cloth face down."
)


def whole_words(blocks: int, pieces: int) -> str:
    """`20 blocks, 1,204 pieces`."""
    return f"{count_of(blocks, 'block')}, {pieces:,} pieces"


def group_words(size: str, version: int, times: int) -> str:
    """`6in finished · version 2 · 10 in the quilt`; nothing for a part of the setting."""
    return f"{size} finished · version {version} · {times} in the quilt" if times else ""


def caption(title: str) -> str:
    """`Pieces of Ohio Star`."""
    return f"Pieces of {title}"
