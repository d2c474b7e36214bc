"""The words at the head and foot of every page: which page it is, whether the printer was true to size."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from ..say import Say

INCH_SQUARE: Final = "1in"  # marks of those sizes, whatever lengths are told in
FIVE_CM_BARS: Final = "5cm each way"
MEASURE: Final = "Print at 100%. Measure before you cut:"
AS_BUILT: Final = (
    "if it is not exactly 1in, set the printer to",
    "‘actual size’, or build again with the size",
    "you measured.",
)
NOTES_GO_ON: Final = "The notes go on on the next page."


def page_words(what: str, number: int, count: int) -> str:
    """`templates A–C · page 2 of 3`."""
    return f"{what} · page {number} of {count}"


def check_lines(say: Say, measured: Fraction | float) -> tuple[str, ...]:
    """What to do where the square does not measure an inch; `measured`: what it did on an earlier print."""
    if measured == 1:
        return AS_BUILT
    return (
        f"the pages allow for 1in that printed as {say.length(measured)}.",
        "If it is not exactly 1in now, build once",
        "without that correction, and measure again.",
    )


def note_words(note: str) -> str:
    """A note that the writer of the block or quilt left."""
    return f"Note: {note}"
