"""The words of the cutting pictures."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from ...cutting.needs import Fabric

TITLE: Final = "Cutting pictures"
TO_SCALE: Final = "drawn to scale, not true to size"
FAT_QUARTER: Final = "Fat quarter"
SCRAP: Final = "Scrap"
LENGTH: Final = "Length"

NOTE: Final = (
    "Every cut runs from edge to edge of the piece it parts. Grey is left over. Small numbers are the step "
    "that begins there; dashed lines cut squares into triangles. Drawn to scale, not true to size. Close the "
    "blade after every cut, cut away from yourself, and keep it from children."
)


def of_cloth(used: str, wide: str) -> str:
    """`54 3/4in of cloth 42in wide`."""
    return f"{used} of cloth {wide} wide"


def drawn_at(share: str) -> str:
    """` · drawn at 12% of true size`."""
    return f" · drawn at {share} of true size"


def one_of(piece: str, number: int, count: int) -> str:
    """`Fat quarter 2 of 3`."""
    return f"{piece} {number} of {count}"


def print_words(fabric: Fabric) -> str:
    """Which way a print with a direction lies in the pictures."""
    if fabric.one_way:
        return " · the print stands up the page"
    return " · the stripes run up the page" if fabric.striped else ""
