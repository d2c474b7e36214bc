"""Codes of the order of sewing."""

from __future__ import annotations

from typing import Final

from .catalogue import Entry

SEWING: Final = (
    Entry(
        "block-does-not-sew",
        "A block that does not sew together as printed",
        "Before anything is printed, every block is cut and sewn again from the numbers that would be "
        "printed: cutting lines, allowances, seams, sizes, copies. Where that does not come out as drafted "
        "within 0.001in, nothing is printed. The fault is the compiler's, or lies in allowances so crowded "
        "that their cutting lines make no sense; the message names the step.",
    ),
)
