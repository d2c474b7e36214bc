"""What stands under the picture of a quilt."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

TITLE: Final = "The quilt"
NOTES: Final = "notes"
NOTE: Final = (
    "A picture, not a pattern: cut by the cutting chart, and measure the quilt’s own top before you cut its "
    "borders."
)


def drawn_at(share: str) -> str:
    """`not to scale: drawn at 12% of true size`."""
    return f"not to scale: drawn at {share} of true size"


def more_fabrics(count: int) -> str:
    """Where the fabrics are that the page has no room for."""
    return f"{count} more fabrics are in the supply list."


def setting_line(setting: str) -> str:
    """How the blocks are set."""
    return f"Setting: {setting}."


def binding_words(bias: bool, wide: str, fabric: str) -> str:
    """Of what the binding is."""
    way = "bias" if bias else "straight"
    return f"Binding: {way} strips cut {wide} wide, of {fabric}; not in the finished size."


def block_words(size: str, blocks: Sequence[tuple[int, str]]) -> str:
    """`Blocks, 6in finished: 10 of Ohio Star, 10 of Spools.`"""
    return f"Blocks, {size} finished: {', '.join(f'{count} of {name}' for count, name in blocks)}."


def sashing_words(widths: Iterable[str], cloths: Iterable[str], posts: Sequence[str]) -> str:
    """How wide the sashing is and of what; and its posts."""
    words = f"Sashing: {' and '.join(widths)} finished, of {' and '.join(cloths)}"
    return f"{words}; posts of {' and '.join(posts)}." if posts else f"{words}."


def border_words(sides: Sequence[str], ends: Sequence[str]) -> tuple[str, ...]:
    """The borders, each with its width and cloth, at the sides and at top and bottom."""
    if not sides and not ends:
        return ()
    first, second = ", ".join(sides), ", ".join(ends)
    if first == second:
        return (f"Borders, finished, from the inside out: {first}.",)
    return (
        f"Borders, finished, from the inside out, at the sides: {first or 'none'}.",
        f"At top and bottom: {second or 'none'}.",
    )


def band(wide: str, what: str) -> str:
    """`4in Navy twill`: how wide a border is, and what it is of."""
    return f"{wide} {what}"


def of_block(block: str) -> str:
    """A border of blocks."""
    return f"of {block}"
