"""What parts of a document are asked for by. Loads nothing: the command line's help has them, too."""

from __future__ import annotations

from typing import Final, Literal, get_args

BlockPart = Literal["needs", "chart", "templates", "foundation", "papers", "steps", "difficulty", "exercise",
"card", "safety", "glossary"]  # fmt: skip
BLOCK_PARTS: Final[tuple[BlockPart, ...]] = get_args(BlockPart)
"""What can be had alone of any work, in the order of a booklet."""

QuiltPart = Literal["picture", "supplies", "counts", "chart", "cutting", "templates"]
QUILT_PARTS: Final[tuple[QuiltPart, ...]] = get_args(QuiltPart)
"""The parts of a quilt's sheets, in order: each can be had alone."""

PARTS: Final = tuple(dict.fromkeys((*QUILT_PARTS, *BLOCK_PARTS)))
"""All of them."""
