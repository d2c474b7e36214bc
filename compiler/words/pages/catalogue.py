"""The words of the catalogue of blocks, printed and for a browser."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ..phrases import count_of

KEYWORDS: Final = "quilt blocks, catalogue"
NOT_TRUE: Final = "pictures, not true to size"
EVERY_NAME: Final = "every name"
ITS_PAGES: Final = "and the pages it is on"
NAMES: Final = "names"
BY_TEMPLATES: Final = "cut with templates"


def titled(title: str, version: int) -> str:
    """`Vane`, or `Vane, version 2`."""
    return title if version == 1 else f"{title}, version {version}"


def from_to(first: str, last: str) -> str:
    """`Album to Vane`: the titles on a page."""
    return f"{first} to {last}"


def also_words(names: Sequence[str]) -> str:
    """The other names of a block."""
    return f"also {', '.join(names)}"


def size_and_counts(size: str, pieces: int, templates: int) -> str:
    """`12in · 17 pieces, 4 templates`."""
    return f"{size} · {count_of(pieces, 'piece')}, {count_of(templates, 'template')}"


def numbers_words(
    size: str, grid: tuple[int, int], pieces: int, templates: int, sharpest: str
) -> tuple[str, ...]:
    """`12in`, `4 x 4 grid`, `17 pieces`, `4 templates`, `sharpest 45°`; no grid of one cell, and no angle
    where `sharpest` is empty."""
    across, down = grid
    return (
        size,
        *((f"{across} x {down} grid",) if across * down > 1 else ()),
        count_of(pieces, "piece"),
        count_of(templates, "template"),
        *((f"sharpest {sharpest}",) if sharpest else ()),
    )


def on_page(titled: str, page: int) -> str:
    """`Album, page 3`."""
    return f"{titled}, page {page}"


def borne_by(name: str, pages: Sequence[str], *, own: bool) -> str:
    """`Wrench: Churn Dash, page 2`, with all blocks that bear the name; only the pages where it is the `own`
    name of the one block that does."""
    told = "; ".join(pages)
    return told if own else f"{name}: {told}"


def picture_words(title: str) -> str:
    """A picture, to those who do not see it."""
    return f"The block {title}."


def made_words(rotary: bool, foundation: bool, symmetry: str) -> str:
    """How a block can be made, and how it looks the same again."""
    ways = [way for way, can in (("cut by the ruler", rotary), ("sewn on foundations", foundation)) if can]
    return f"Can be {' and '.join(ways) or BY_TEMPLATES}; {symmetry}"


# ---- in a browser ----------------------------------------------------------------------------------

SKIP: Final = "Skip to the blocks"
BLOCKS: Final = "Blocks"
NAME: Final = "Name"
FAMILY: Final = "Family"
ANY_FAMILY: Final = "any"
MADE_BY: Final = "Can be made by"
ANY_WAY: Final = "any way"
SAME_BY: Final = "Symmetry"
ANYTHING: Final = "anything"
MOST_PIECES: Final = "Most pieces"
SHOW_ALL: Final = "Show all"
MORE: Final = "Family, notes"


def found_of(found: str, among: str) -> str:
    """`3 of 12 blocks`, of what the page's script counts."""
    return f"{found} of {among} blocks"


def shared_name(name: str, others: str) -> str:
    """Of a name that other blocks bear, too."""
    return f"{name} is also a name of {others}."


def more_of(title: str) -> str:
    """What MORE goes on with, to those who hear the page."""
    return f" of {title}"


def family_and_shelf(families: str, shelf: str) -> str:
    """`star; on the shelf library`."""
    return f"{families or 'no family'}; on the shelf {shelf}"
